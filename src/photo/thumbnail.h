/* thumbnail.h: previews and thumbnails kept in the archive's cache folder
 *
 * Files: CACHE/preview/ab/SHA256-2000.jpg, CACHE/thumbnail/ab/SHA256-128.jpg and
 * -384.jpg. Made from the original when missing or damaged, so the folder may be
 * deleted at any time. All functions block and are safe on any thread.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/pixels.h"

#include <gio/gio.h>

#define WM_PREVIEW 2000        /* long side of the preview, px, about */
#define WM_THUMBNAIL_SMALL 128 /* lists; long side, px */
#define WM_THUMBNAIL_LARGE 384 /* strip and take-in, also at twice the scale */

/**
 * wm_thumbnail_load:
 * @cache_dir: the archive's cache folder, or NULL to keep nothing
 * @sha256: hash of the original in lower case hexadecimal, or NULL to keep nothing
 * @original: path of the original; only opened when the cache has nothing
 * @px: wished long side; the smallest kept size that reaches it is returned
 *   (WM_THUMBNAIL_SMALL, WM_THUMBNAIL_LARGE, else the preview)
 */
WmPixels *
wm_thumbnail_load (const char *cache_dir, const char *sha256, const char *original,
                   int px, GCancellable *cancellable, GError **error);

/**
 * wm_thumbnail_make_all:
 *
 * For import: decodes the original once, scaled, and keeps the preview and both
 * thumbnails, and what true pixels are read from (wm_tiles_prepare ()); returns the
 * preview for the first view. A full disk or read-only cache is no error: the pixels
 * are still returned.
 */
WmPixels *
wm_thumbnail_make_all (const char *cache_dir, const char *sha256, const char *original,
                       GCancellable *cancellable, GError **error);
