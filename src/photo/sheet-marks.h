/* sheet-marks.h: square frames with dots, as they show on a photo
 *
 * Private to the sheet finder.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/pixels.h"
#include "reckon/point.h"

typedef struct
{
  int n_dots;         /* 1 to 4 */
  WmPoint corners[4]; /* px of the pixels looked at, clockwise */
  WmPoint middle;     /* where the diagonals cross */
  double side_px;     /* mean */
} WmSheetMark;

/* (element-type WmSheetMark) Every form on @pixels that may be a mark. */
GArray *wm_sheet_marks_find (WmPixels *pixels);

/* Where the diagonals of a convex quadrilateral cross. */
WmPoint wm_sheet_middle (const WmPoint corners[4]);
