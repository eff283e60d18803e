/* align-ground.h: which part of a photo is the piece, which the ground
 *
 * Private to the alignment. The ground (cloth, paper, tray) is what the border
 * of the photo looks like; the piece is what does not. Shadows belong to
 * the ground.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/align-plane.h"

/* One level of the pyramid for everything here: 400 pixels long. */
#define WM_GROUND_LEVEL 2

/**
 * WmPieceMask:
 * @mask: 1 on the piece, 0 on the ground, level 2
 * @share: share of the photo that is piece; 0 when it could not be told apart
 *   and @mask is 1 everywhere
 * @centre, @radius: middle and root mean square extent, level 0 pixels
 */
typedef struct
{
  WmPlane *mask;
  double share;
  WmPoint centre;
  double radius;
} WmPieceMask;

WmPieceMask *wm_piece_mask_new (const WmPhotoPlanes *planes);
void wm_piece_mask_free (WmPieceMask *mask);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (WmPieceMask, wm_piece_mask_free)

/* @x, @y: level 0 pixels */
static inline gboolean
wm_piece_mask_has (const WmPieceMask *self, double x, double y)
{
  int ix = (int)(x / (1 << WM_GROUND_LEVEL));
  int iy = (int)(y / (1 << WM_GROUND_LEVEL));

  return ix >= 0 && iy >= 0 && ix < self->mask->width && iy < self->mask->height
         && self->mask->v[(gsize)iy * (gsize)self->mask->width + (gsize)ix] > 0.5f;
}
