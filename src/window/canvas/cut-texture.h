/* cut-texture.h: a texture that can be drawn part by part, each by its own map
 *
 * A perspective can not be drawn by every one of GTK's renderers; small parts drawn each
 * by an affine map can. The parts share the pixels.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "photo/pixels.h"
#include "window/canvas/frame-map.h"

typedef struct
{
  GdkTexture *whole;
  GBytes *bytes;
  int width, height;
  gsize stride;
  int n_parts;        /* a side; 0: not cut */
  GdkTexture **parts; /* n_parts x n_parts, row by row; of a part that is shown */
} WmCutTexture;

void wm_cut_texture_init (WmCutTexture *self, WmPixels *pixels);
void wm_cut_texture_clear (WmCutTexture *self);

/* Draws it over @box (photo px) as @map and @view say. */
void
wm_cut_texture_snapshot (WmCutTexture *self, GtkSnapshot *snapshot, const WmFrameMap *map,
                         const WmViewTransform *view, const double box[4]);
