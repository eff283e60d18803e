/* mark-layout.h: where the discs go
 *
 * Pure: no drawing, no clock. Worst severity first; each disc tries 16 directions
 * at 3.5, 5 and 7 R from its tip. Never over a tip, a form (its own or another's),
 * another disc (gap 0.6 R), a taken area or outside the view; among what is left:
 * least crossing of leaders, then least metal covered, then shortest. A disc stays
 * where it was while that place is free; a pinned one stays in any case.
 *
 * When none of the 48 places is free it looks further out, in rings 2 R apart,
 * then over a grid of the whole view; only when the view is really full is a disc
 * put where it overlaps least, and then says so (crowded).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/point.h"
#include "reckon/severity.h"
#include "reckon/shape.h"

#include <glib.h>

#define WM_LAYOUT_GAP 0.6 /* R between what two discs paint */

typedef struct
{
  double x, y, width, height;
} WmLayoutBox;

typedef struct
{
  WmSeverity severity;
  WmShape shape;
  const WmPoint *points; /* view space */
  gsize n_points;        /* at least 1 */
  gboolean has_disc;     /* in: disc holds where it was */
  gboolean is_pinned;    /* in: disc holds where it was dragged to */
  WmPoint disc;          /* in and out: middle of the disc, view space */
  gboolean crowded;      /* out: it overlaps something */
} WmLayoutMark;

typedef struct
{
  double width, height;     /* of the view; discs stay wholly inside */
  double radius;            /* R, above 0 */
  const WmLayoutBox *taken; /* bars and plates that lie over the photo; or NULL */
  gsize n_taken;
  const guint8 *metal; /* 0 background .. 255 metal, row by row, stretched over
                        * the view; or NULL */
  int metal_columns, metal_rows;
} WmLayoutView;

/**
 * wm_mark_layout:
 *
 * Sets disc and crowded of every mark. A mark none of whose points is in the view
 * gets its disc 3.5 R beside its first point and takes no room. When the photo was
 * moved or zoomed, the caller moves the old discs along with their tips before.
 *
 * Returns: how many are crowded; 0 is the usual
 */
int wm_mark_layout (WmLayoutMark *marks, gsize n_marks, const WmLayoutView *view);

/* Whether two discs of radius R keep their gap. */
gboolean wm_layout_discs_clear (WmPoint a, WmPoint b, double radius);
