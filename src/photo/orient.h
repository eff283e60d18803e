/* orient.h: from the stored picture to the upright one, by EXIF orientation
 *
 * Inside this room only. The eight ways are those of the reckoning reference,
 * section 11 (CIPA DC-008), where another reader agreed on all of them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/pixels.h"

typedef struct
{
  int x, y, width, height;
} WmRect;

/* Takes @pixels over; gives the upright ones, or NULL without memory. */
WmPixels *wm_pixels_upright (WmPixels *pixels, int orientation);

/* The stored rectangle that shows as @upright; @coded_width and _height are those of
 * the whole stored picture. */
WmRect
wm_rect_to_coded (WmRect upright, int orientation, int coded_width, int coded_height);
