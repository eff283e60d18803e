/* thumbnail.c: previews and thumbnails kept in the archive's cache folder
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/thumbnail.h"

#include "photo/cache-folder.h"
#include "photo/jpeg-out.h"
#include "photo/load.h"
#include "photo/open.h"
#include "photo/tiles.h"

#include <math.h>

/* High, because tiles of the coarse levels are cut from the preview. */
#define QUALITY 90

static char *
kept_path (const char *cache_dir, const char *sha256, int size)
{
  g_autofree char *ending = g_strdup_printf ("-%d.jpg", size);

  return wm_cache_path (cache_dir, size == WM_PREVIEW ? "preview" : "thumbnail", sha256,
                        ending);
}

static WmPixels *
load_kept (const char *cache_dir, const char *sha256, int size, GCancellable *cancellable)
{
  g_autofree char *path = kept_path (cache_dir, sha256, size);
  g_autoptr (GBytes) bytes = wm_cache_load (path);

  return bytes == NULL ? NULL
                       : wm_photo_load_bytes_fit (bytes, path, G_MAXUINT16, G_MAXUINT16,
                                                  cancellable, NULL);
}

static void
keep (const char *cache_dir, const char *sha256, int size, WmPixels *pixels)
{
  g_autofree char *path = kept_path (cache_dir, sha256, size);
  g_autoptr (GBytes) bytes = NULL;

  if (path != NULL)
    bytes = wm_jpeg_encode (pixels, QUALITY, NULL);
  if (bytes != NULL)
    wm_cache_store (cache_dir, path, bytes);
}

static WmPixels *
shrink (WmPixels *pixels, int long_side, const char *name, GCancellable *cancellable,
        GError **error)
{
  double scale = (double)long_side / MAX (pixels->width, pixels->height);
  g_autoptr (WmVipsImage) image = NULL;

  if (scale >= 1)
    return wm_pixels_ref (pixels);

  image = wm_vips_scale_to (wm_pixels_to_vips (pixels),
                            MAX (1, (int)lround (pixels->width * scale)),
                            MAX (1, (int)lround (pixels->height * scale)), name, error);
  return image == NULL ? NULL : wm_vips_to_pixels (image, name, cancellable, error);
}

static WmPixels *
make_thumbnail (const char *cache_dir, const char *sha256, const char *original, int size,
                GCancellable *cancellable, GError **error)
{
  /* The small one from the large one when that is there: a hundredth of the work. */
  g_autoptr (WmPixels) larger =
      size == WM_THUMBNAIL_SMALL
          ? load_kept (cache_dir, sha256, WM_THUMBNAIL_LARGE, cancellable)
          : NULL;
  WmPixels *pixels;

  if (larger != NULL)
    pixels = shrink (larger, size, original, cancellable, error);
  else
    pixels = wm_photo_load_fit (original, size, size, cancellable, error);

  if (pixels != NULL)
    keep (cache_dir, sha256, size, pixels);
  return pixels;
}

WmPixels *
wm_thumbnail_load (const char *cache_dir, const char *sha256, const char *original,
                   int px, GCancellable *cancellable, GError **error)
{
  int size = px <= WM_THUMBNAIL_SMALL   ? WM_THUMBNAIL_SMALL
             : px <= WM_THUMBNAIL_LARGE ? WM_THUMBNAIL_LARGE
                                        : WM_PREVIEW;
  WmPixels *pixels;

  if (g_cancellable_set_error_if_cancelled (cancellable, error))
    return NULL;

  pixels = load_kept (cache_dir, sha256, size, cancellable);
  if (pixels != NULL)
    return pixels;
  if (size != WM_PREVIEW)
    return make_thumbnail (cache_dir, sha256, original, size, cancellable, error);

  pixels = wm_photo_load_about (original, WM_PREVIEW, cancellable, error);
  if (pixels != NULL)
    keep (cache_dir, sha256, WM_PREVIEW, pixels);
  return pixels;
}

WmPixels *
wm_thumbnail_make_all (const char *cache_dir, const char *sha256, const char *original,
                       GCancellable *cancellable, GError **error)
{
  g_autoptr (WmPixels) preview =
      wm_photo_load_about (original, WM_PREVIEW, cancellable, error);
  g_autoptr (WmPixels) large = NULL;
  g_autoptr (WmPixels) small = NULL;

  if (preview == NULL)
    return NULL;

  large = shrink (preview, WM_THUMBNAIL_LARGE, original, cancellable, error);
  if (large == NULL)
    return NULL;
  small = shrink (large, WM_THUMBNAIL_SMALL, original, cancellable, error);
  if (small == NULL)
    return NULL;

  if (cache_dir != NULL && sha256 != NULL)
    wm_tiles_prepare (original, sha256, cache_dir, cancellable);
  keep (cache_dir, sha256, WM_PREVIEW, preview);
  keep (cache_dir, sha256, WM_THUMBNAIL_LARGE, large);
  keep (cache_dir, sha256, WM_THUMBNAIL_SMALL, small);
  return g_steal_pointer (&preview);
}
