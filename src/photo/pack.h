/* pack.h: the fine tiles of a photo that is no usual JPEG, in one file
 *
 * Inside this room only. PNG, TIFF, WebP and HEIC can not be read from the middle:
 * their tiles are made once, all in one pass from the top down (memory is a strip of
 * tiles a level), and kept without loss, each with its own checksum.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/pixels.h"

#include <gio/gio.h>

typedef struct _WmPack WmPack;

/**
 * wm_pack_build:
 * @photo: the original
 * @path: of the file; its folder exists
 * @levels: how many levels to make, from level 0 on
 */
gboolean wm_pack_build (const char *photo, const char *path, int levels,
                        GCancellable *cancellable, GError **error);

/* NULL when it is not there, damaged, or of another picture. */
WmPack *wm_pack_open (const char *path, int width, int height, int levels);
void wm_pack_free (WmPack *self);

/* NULL when the tile's bytes are damaged. Any thread. */
WmPixels *wm_pack_read (WmPack *self, int level, int column, int row);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (WmPack, wm_pack_free)
