/* likeness.h: do two photos show the same thing from the same side?
 *
 * For telling a burst, or the frames of a focus stack, from the next view of the
 * piece. Compares coarse grey pictures, so focus, grain and a hand's tremble do not
 * count. Pure computation: any thread.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/pixels.h"

/* Cells along the longer side: a claw is hardly left at that, the piece's outline is not.
 */
#define WM_LIKENESS_SIDE 48

/* From here on two photos count as the same view: tests/photo/test-likeness.c measures
 * 0.94 and more for one view blurred, moved and lit otherwise, 0.83 and less for
 * different views of the sample pieces. */
#define WM_LIKENESS_SAME 0.88

typedef struct
{
  int columns, rows; /* 0: there was no picture */
  float grey[WM_LIKENESS_SIDE * WM_LIKENESS_SIDE];
} WmLikeness;

/* @pixels: a thumbnail will do */
void wm_likeness_take (WmPixels *pixels, WmLikeness *out);

/* 1 the same .. 0 nothing in common (a negative correlation is 0): the best correlation
 * of the two over small shifts. */
double wm_likeness_compare (const WmLikeness *a, const WmLikeness *b);
