/* tiles.h: one photo as a pyramid of tiles, for panning and zooming
 *
 * Level 0 is the photo at true pixels, each next level half of it (rounded up),
 * the last fits one tile. Tiles are WM_TILE px square, those at the right and
 * lower edge smaller; upright, sRGB. Tiles of level 0 hold exactly the pixels of
 * a full decode.
 *
 * A store works on WM_TILE_THREADS threads of its own; its functions are for the
 * thread that made it (the interface thread), where the callbacks come back
 * through the default main context.
 *
 * What is kept:
 *   memory: decoded tiles up to WM_TILE_MEMORY bytes over all stores of the
 *     program, the least lately used go first; for each open store its preview (at
 *     most 32 MB) and, for a JPEG of more than 8 megapixels, about the file's size
 *     (making that takes three bytes a pixel for some tenths of a second);
 *   disk: under @cache_dir (may be NULL: then nothing is kept), files named by
 *     the photo's SHA-256, at most WM_TILE_DISK bytes, the least lately used go
 *     first. May be deleted at any time, and is never trusted: every block has a
 *     checksum, and what does not agree is made again from the photo.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/pixels.h"
#include "photo/probe.h"

#include <gio/gio.h>

#define WM_TILE 512
#define WM_TILE_THREADS 2
#define WM_TILE_MEMORY (192 * 1024 * 1024)
#define WM_TILE_DISK (G_GINT64_CONSTANT (2) * 1024 * 1024 * 1024)

typedef struct _WmTileStore WmTileStore;

/**
 * WmTileReady:
 * @tile: (transfer none): the pixels; NULL when the photo can not be read
 * @error: why, when @tile is NULL; else NULL
 *
 * Called once for each tile asked for and not cancelled.
 */
typedef void (*WmTileReady) (WmTileStore *store, int level, int column, int row,
                             WmPixels *tile, const GError *error, gpointer user_data);

/**
 * wm_tile_store_new:
 * @path: the original
 * @sha256: its hash in lower case hexadecimal; NULL: nothing is kept on disk
 * @cache_dir: the archive's cache folder, or NULL
 *
 * Probes the file (a few ms); decodes nothing yet.
 *
 * Returns: (transfer full): a store, or NULL with a WM_PHOTO_ERROR
 */
WmTileStore *wm_tile_store_new (const char *path, const char *sha256,
                                const char *cache_dir, GError **error);
WmTileStore *wm_tile_store_ref (WmTileStore *self);

/* The last reference cancels what is running; no callback comes after it. */
void wm_tile_store_unref (WmTileStore *self);

const WmPhotoFacts *wm_tile_store_get_facts (WmTileStore *self);
int wm_tile_store_get_levels (WmTileStore *self);

/* Size of a level in px. */
void wm_tile_store_get_level_size (WmTileStore *self, int level, int *width, int *height);

/* The level to draw when one photo px covers @view_px_per_photo_px device px: the
 * coarsest that still has a pixel for each device pixel. */
int wm_tile_store_level_for_scale (WmTileStore *self, double view_px_per_photo_px);

/* (transfer full): the tile when it is in memory, else NULL. Never blocks; for
 * snapshot (). */
WmPixels *wm_tile_store_peek (WmTileStore *self, int level, int column, int row);

/**
 * wm_tile_store_request:
 * @priority: less is sooner (for instance the distance from the view's middle)
 *
 * Asks for a tile; @ready is called from the main context, also when the tile is
 * already there. Asking again for one that is waiting only changes its priority.
 */
void wm_tile_store_request (WmTileStore *self, int level, int column, int row,
                            int priority, WmTileReady ready, gpointer user_data);

/* Forgets every request that has not begun (the view moved on). */
void wm_tile_store_cancel_waiting (WmTileStore *self);

/**
 * wm_tile_store_get_preview_async:
 *
 * The whole photo at about WM_PREVIEW px: from the cache folder when it is there,
 * else decoded and kept. The first thing to show.
 */
void wm_tile_store_get_preview_async (WmTileStore *self, GCancellable *cancellable,
                                      GAsyncReadyCallback callback, gpointer user_data);
WmPixels *wm_tile_store_get_preview_finish (WmTileStore *self, GAsyncResult *result,
                                            GError **error);

/* Bytes of decoded tiles held now by all stores; never above WM_TILE_MEMORY. */
gsize wm_tile_memory_used (void);

/**
 * wm_tiles_prepare:
 *
 * For import, off the interface thread: makes what the fine levels are read from and
 * keeps it in the cache folder, so that the first look at true pixels is quick too. A
 * few tenths of a second for 48 megapixels. Failing is no error.
 */
void wm_tiles_prepare (const char *path, const char *sha256, const char *cache_dir,
                       GCancellable *cancellable);

/* A tile, made by the calling thread (any) and waited for: for tests and exports. */
WmPixels *wm_tile_store_get_now (WmTileStore *self, int level, int column, int row,
                                 GCancellable *cancellable, GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (WmTileStore, wm_tile_store_unref)
