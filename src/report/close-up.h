/* close-up.h: the same place of the piece before and after, shown alike
 *
 * The one place for the geometry of matched close-ups: same spot, same size, same turn,
 * same scale. The report, the counter view, the page of the proof and the pictures of
 * the command line show what this says. Boxes have any unit; "mm" is the report's.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "report/photo-box.h"

typedef struct
{
  gboolean is_there;
  WmBoxView view; /* photo pixels to the box */
  WmMark *mark;   /* (nullable) borrowed: in register, but nothing was marked there */
} WmCloseUp;

typedef struct
{
  WmCloseUp before;
  WmCloseUp after;
  gboolean in_register; /* the after photo is laid on the before one by their pairing */
  gboolean same_scale;  /* in register, or both scales are known */
  WmPoint centre;       /* photo pixels of the before photo, in the middle of the box */
} WmCloseUps;

/**
 * wm_close_ups_find:
 * @width, @height: of the box both are shown in
 *
 * Where a finding is marked on photos that are in register, those two; else a mark before
 * whose photo is in register with an after photo, marked there or not; else the last mark
 * of each moment.
 */
void wm_close_ups_find (WmVisitData *data, const WmFinding *finding, double width,
                        double height, WmCloseUps *out);
