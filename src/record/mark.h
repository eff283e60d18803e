/* mark.h: a place on a photo, tied to a check
 *
 * points are upright photo pixels as SVG writes them: "812.5,300 820,311".
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "record/record.h"

#define WM_MARK_SPOT "spot"
#define WM_MARK_LINE "line"
#define WM_MARK_OUTLINE "outline"
#define WM_MARK_SPAN "span"

#define WM_TYPE_MARK (wm_mark_get_type ())
G_DECLARE_FINAL_TYPE (WmMark, wm_mark, WM, MARK, WmRecord)

/* Members are read freely and written through the properties of the same name. */
struct _WmMark
{
  WmRecord parent_instance;

  WmId photo_id;
  WmId check_id; /* none while the mark waits for a check */
  char *shape;   /* one of the WM_MARK_ words */
  char *points;  /* spot: 1, line: 2 or more, outline: 3 or more, span: 2 */
  double disc_x; /* upright photo pixels; NaN: the program places the disc */
  double disc_y;
  WmId carried_from;  /* mark of another photo or visit this was taken over from */
  gboolean confirmed; /* FALSE: carried over and not yet accepted */
};

WmMark *wm_mark_new (void);
