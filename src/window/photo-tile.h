/* photo-tile.h: one photo in the strip
 *
 * Signals:
 *   chosen (void)                        clicked, or activated by key
 *   menu (void)                          its details are wanted
 *   dropped (WmPhoto *, gboolean behind) another photo was let go on it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <adwaita.h>

#include "window/moment-page.h"

/* View px of a tile (look book, picture 01), and of the flat strip at 1000x640. */
#define WM_TILE_WIDTH 108
#define WM_TILE_HEIGHT 72
#define WM_TILE_NARROW_WIDTH 42
#define WM_TILE_NARROW_HEIGHT 28

#define WM_TYPE_PHOTO_TILE (wm_photo_tile_get_type ())
G_DECLARE_FINAL_TYPE (WmPhotoTile, wm_photo_tile, WM, PHOTO_TILE, AdwBin)

WmPhotoTile *
wm_photo_tile_new (WmArchive *archive, WmPhoto *photo, const char *title, guint n_marks);
WmPhoto *wm_photo_tile_get_photo (WmPhotoTile *self);
void wm_photo_tile_set_room (WmPhotoTile *self, WmRoom room);
void wm_photo_tile_set_current (WmPhotoTile *self, gboolean current);
void wm_photo_tile_focus (WmPhotoTile *self);
