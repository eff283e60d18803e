/* point.h: a place on a photo
 *
 * Photo pixels of the upright photo: origin at the top left corner of the
 * first pixel, x right, y down (so the middle of the first pixel is 0.5, 0.5).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

typedef struct
{
  double x;
  double y;
} WmPoint;
