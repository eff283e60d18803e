/* tile-layer.h: a photo as textures, placed by a view transform
 *
 * Keeps a texture for each tile in use; asks the photo room for those that are
 * missing, nearest first; covers a tile that is not ready by coarser ones and, at
 * the last, by the preview. Main thread only.
 *
 * Signals:
 *   changed (void)                 something new can be drawn
 *   failed (const GError *)        the photo can not be read; once
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "photo/tiles.h"
#include "window/canvas/view-transform.h"

#define WM_TYPE_TILE_LAYER (wm_tile_layer_get_type ())
G_DECLARE_FINAL_TYPE (WmTileLayer, wm_tile_layer, WM, TILE_LAYER, GObject)

/* As wm_tile_store_new (). Returns: (transfer full): NULL with a WM_PHOTO_ERROR */
WmTileLayer *wm_tile_layer_new (const char *path, const char *sha256,
                                const char *cache_dir, GError **error);

/**
 * wm_tile_layer_set_frame:
 * @matrix: (nullable): photo px to frame px, row by row; NULL: the photo is its own frame
 * @width, @height: of the frame, px
 *
 * Lays the photo in the frame of another: views and facts are of that frame from now on.
 * Nothing is made again, so it may change while something is dragged.
 *
 * Returns: FALSE, and nothing changed, when @matrix can not be inverted
 */
gboolean wm_tile_layer_set_frame (WmTileLayer *self, const double *matrix, double width,
                                  double height);

/* Those of the file; width and height are the frame's. */
const WmPhotoFacts *wm_tile_layer_get_facts (WmTileLayer *self);

/* (nullable) (transfer none): the whole photo at about WM_PREVIEW px, when it is ready;
 * NULL for a photo that lies in another's frame. */
WmPixels *wm_tile_layer_get_preview (WmTileLayer *self);

/* A few coarse pixels laid over the whole photo, premultiplied; NULL: none. */
void wm_tile_layer_set_tint (WmTileLayer *self, WmPixels *tint);

/**
 * wm_tile_layer_want:
 * @views: what is looked at now (the canvas, the loupe)
 * @scale: device px per view px
 *
 * Asks for the tiles that these views need and have not got, and forgets requests
 * for others. To be called when a view moves, not while drawing.
 */
void wm_tile_layer_want (WmTileLayer *self, const WmViewTransform *const *views,
                         guint n_views, double scale);

/* Places what is ready; the clip is the caller's. Allocates nothing but nodes. */
void wm_tile_layer_snapshot (WmTileLayer *self, GtkSnapshot *snapshot,
                             const WmViewTransform *view, double scale);

/* Whether every tile that @view needs is ready: for tests and timing. */
gboolean
wm_tile_layer_is_complete (WmTileLayer *self, const WmViewTransform *view, double scale);
