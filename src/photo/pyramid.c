/* pyramid.c: tiles made, from whatever is quickest at hand
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/pyramid.h"

#include "photo/cache-folder.h"
#include "photo/jpeg-read.h"
#include "photo/open.h"
#include "photo/pack.h"
#include "photo/probe-source.h"
#include "photo/strips.h"
#include "photo/thumbnail.h"
#include "photo/tile-memory.h"
#include "photo/tiles.h"

#include <glib/gstdio.h>
#include <string.h>
#include <unistd.h>

/* Up to here a JPEG is decoded as quickly from itself as from strips. */
#define STRIPS_FROM_PIXELS 8000000

struct _WmPyramid
{
  char *path, *sha256, *cache_dir;
  char *name; /* fit to be shown */
  WmPhotoFacts *facts;
  guint64 owner;
  int levels;
  int coarse; /* first level that is cut from the preview */

  GMutex mutex; /* over the rest; decoding happens outside */
  GMutex looking;
  GMutex making;
  WmPixels *preview;
  WmStrips *strips;
  WmPack *pack;
  gboolean has_looked; /* for strips in the cache folder */
  gboolean has_failed; /* strips can not be made: not tried again */
  char *own_pack;      /* a pack of our own, when there is no cache folder */
};

static int
level_side (int side, int level)
{
  return (int)(((gint64)side - 1) >> level) + 1;
}

/* As wm_photo_load_about () does: how long the preview will be. */
static int
preview_side (const WmPhotoFacts *facts)
{
  int longest = MAX (facts->width, facts->height);
  int denom = 1;

  if (!wm_jpeg_is_usual (facts) || longest > WM_PREVIEW * 8 * G_SQRT2)
    return MIN (longest, WM_PREVIEW);
  while (denom < 8 && longest > WM_PREVIEW * denom * G_SQRT2)
    denom *= 2;
  return (longest - 1) / denom + 1;
}

WmPyramid *
wm_pyramid_new (const char *path, const char *sha256, const char *cache_dir,
                GError **error)
{
  WmPhotoFacts *facts = wm_photo_probe_file (path, error);
  WmPyramid *self;
  int longest;

  if (facts == NULL)
    return NULL;

  self = g_new0 (WmPyramid, 1);
  self->facts = facts;
  self->path = g_strdup (path);
  self->name = wm_photo_display_name (path);
  self->sha256 = g_strdup (sha256);
  self->cache_dir = g_strdup (cache_dir);
  self->owner = wm_tile_memory_new_owner ();
  g_mutex_init (&self->mutex);
  g_mutex_init (&self->looking);
  g_mutex_init (&self->making);

  longest = MAX (facts->width, facts->height);
  self->levels = 1;
  while (level_side (longest, self->levels - 1) > WM_TILE)
    self->levels++;

  /* Level 0 is never cut from the preview: that one is compressed again. */
  self->coarse = 1;
  while (level_side (longest, self->coarse) > preview_side (facts))
    self->coarse++;

  return self;
}

void
wm_pyramid_free (WmPyramid *self)
{
  if (self == NULL)
    return;
  wm_tile_memory_drop (self->owner);
  g_clear_pointer (&self->preview, wm_pixels_unref);
  g_clear_pointer (&self->strips, wm_strips_free);
  g_clear_pointer (&self->pack, wm_pack_free);
  if (self->own_pack != NULL)
    g_unlink (self->own_pack);
  g_free (self->own_pack);
  g_clear_pointer (&self->facts, wm_photo_facts_free);
  g_mutex_clear (&self->mutex);
  g_mutex_clear (&self->looking);
  g_mutex_clear (&self->making);
  g_free (self->path);
  g_free (self->name);
  g_free (self->sha256);
  g_free (self->cache_dir);
  g_free (self);
}

const WmPhotoFacts *
wm_pyramid_get_facts (WmPyramid *self)
{
  return self->facts;
}

int
wm_pyramid_get_levels (WmPyramid *self)
{
  return self->levels;
}

guint64
wm_pyramid_get_owner (WmPyramid *self)
{
  return self->owner;
}

void
wm_pyramid_get_level_size (WmPyramid *self, int level, int *width, int *height)
{
  *width = level_side (self->facts->width, level);
  *height = level_side (self->facts->height, level);
}

gboolean
wm_pyramid_share_band (WmPyramid *self, int column_a, int row_a, int column_b, int row_b)
{
  return self->facts->orientation > 4 ? column_a == column_b : row_a == row_b;
}

static WmRect
tile_rect (WmPyramid *self, int level, int column, int row)
{
  int width, height;

  wm_pyramid_get_level_size (self, level, &width, &height);
  return (WmRect) { column * WM_TILE, row * WM_TILE,
                    MIN (WM_TILE, width - column * WM_TILE),
                    MIN (WM_TILE, height - row * WM_TILE) };
}

static WmPixels *
cut (WmPixels *from, WmRect area, int left, int top)
{
  WmPixels *tile = wm_pixels_new (area.width, area.height);

  for (int y = 0; tile != NULL && y < area.height; y++)
    memcpy (tile->data + y * tile->stride,
            from->data + (gsize)(area.y - top + y) * from->stride
                + (gsize)(area.x - left) * 4,
            tile->stride);
  return tile;
}

/* Cuts tiles out of @pixels, whose top left corner is at @left, @top of the level. */
static WmPixels *
hand_out (WmPyramid *self, WmPixels *pixels, int level, int left, int top,
          const int *columns, const int *rows, int count, GError **error)
{
  WmPixels *first = NULL;

  for (int i = 0; i < count; i++)
    {
      WmPixels *tile =
          cut (pixels, tile_rect (self, level, columns[i], rows[i]), left, top);

      if (tile == NULL)
        continue;
      wm_tile_memory_put (self->owner, level, columns[i], rows[i], tile);
      if (i == 0)
        first = tile;
      else
        wm_pixels_unref (tile);
    }

  if (first == NULL)
    wm_photo_set_error (error, WM_PHOTO_ERROR_NO_MEMORY, self->name, NULL);
  return first;
}

WmPixels *
wm_pyramid_get_preview (WmPyramid *self, GCancellable *cancellable, GError **error)
{
  WmPixels *preview;

  g_mutex_lock (&self->mutex);
  preview = self->preview != NULL ? wm_pixels_ref (self->preview) : NULL;
  g_mutex_unlock (&self->mutex);
  if (preview != NULL)
    return preview;

  preview = wm_thumbnail_load (self->cache_dir, self->sha256, self->path, WM_PREVIEW,
                               cancellable, error);
  if (preview == NULL)
    return NULL;

  g_mutex_lock (&self->mutex);
  if (self->preview == NULL)
    self->preview = wm_pixels_ref (preview);
  g_mutex_unlock (&self->mutex);
  return preview;
}

/* Cuts the whole level at once: scaling it again for each band would cost more. */
static WmPixels *
make_coarse (WmPyramid *self, int level, int column, int row, GCancellable *cancellable,
             GError **error)
{
  g_autoptr (WmPixels) preview = wm_pyramid_get_preview (self, cancellable, error);
  g_autoptr (WmPixels) pixels = NULL;
  g_autoptr (WmVipsImage) image = NULL;
  g_autofree int *columns = NULL;
  g_autofree int *rows = NULL;
  int width, height, across, count = 1;

  if (preview == NULL)
    return NULL;

  wm_pyramid_get_level_size (self, level, &width, &height);
  image =
      wm_vips_scale_to (wm_pixels_to_vips (preview), width, height, self->name, error);
  if (image != NULL)
    pixels = wm_vips_to_pixels (image, self->name, cancellable, error);
  if (pixels == NULL)
    return NULL;

  across = (width - 1) / WM_TILE + 1;
  columns = g_new (int, across *((height - 1) / WM_TILE + 1));
  rows = g_new (int, across *((height - 1) / WM_TILE + 1));
  columns[0] = column;
  rows[0] = row;
  for (int i = 0; i < across * ((height - 1) / WM_TILE + 1); i++)
    if (i % across != column || i / across != row)
      {
        columns[count] = i % across;
        rows[count++] = i / across;
      }

  return hand_out (self, pixels, level, 0, 0, columns, rows, count, error);
}

static WmRect
join (WmRect a, WmRect b)
{
  int right = MAX (a.x + a.width, b.x + b.width);
  int bottom = MAX (a.y + a.height, b.y + b.height);
  int x = MIN (a.x, b.x), y = MIN (a.y, b.y);

  return (WmRect) { x, y, right - x, bottom - y };
}

static char *
strips_path (WmPyramid *self)
{
  return wm_cache_path (self->cache_dir, "tiles", self->sha256, ".strips");
}

static WmStrips *
load_strips (WmPyramid *self)
{
  g_autofree char *path = strips_path (self);
  g_autoptr (GBytes) bytes = wm_cache_load (path);

  return bytes == NULL
             ? NULL
             : wm_strips_new (bytes, self->facts->coded_width, self->facts->coded_height);
}

static WmStrips *
make_strips (WmPyramid *self, GCancellable *cancellable)
{
  g_autofree char *path = strips_path (self);
  g_autoptr (WmSource) source = wm_source_open (self->path, NULL);
  g_autoptr (GBytes) bytes = NULL;

  if (source != NULL)
    bytes = wm_strips_build (source, cancellable, NULL);
  if (bytes == NULL)
    return NULL;

  wm_cache_store (self->cache_dir, path, bytes);
  return wm_strips_new (bytes, self->facts->coded_width, self->facts->coded_height);
}

/* Strips that are kept are worth waiting for (some ms); those still to be made are
 * not: then the photo itself is read. */
static WmStrips *
get_strips (WmPyramid *self)
{
  WmStrips *strips;

  g_mutex_lock (&self->looking);
  if (!self->has_looked)
    {
      self->has_looked = TRUE;
      strips = load_strips (self);
      g_mutex_lock (&self->mutex);
      self->strips = strips;
      g_mutex_unlock (&self->mutex);
    }
  g_mutex_unlock (&self->looking);

  g_mutex_lock (&self->mutex);
  strips = self->strips;
  g_mutex_unlock (&self->mutex);
  return strips;
}

static WmPixels *
make_from_jpeg (WmPyramid *self, int level, const int *columns, const int *rows,
                int count, GCancellable *cancellable, GError **error)
{
  WmRect area = tile_rect (self, level, columns[0], rows[0]);
  g_autoptr (WmPixels) pixels = NULL;
  WmStrips *strips;
  WmRect coded;

  for (int i = 1; i < count; i++)
    area = join (area, tile_rect (self, level, columns[i], rows[i]));
  coded = wm_rect_to_coded (area, self->facts->orientation,
                            level_side (self->facts->coded_width, level),
                            level_side (self->facts->coded_height, level));

  strips = get_strips (self);
  if (strips != NULL)
    pixels = wm_strips_decode (strips, 1 << level, &coded, cancellable, NULL);

  if (pixels == NULL)
    {
      g_autoptr (WmSource) source = wm_source_open (self->path, error);

      if (source != NULL)
        pixels = wm_jpeg_decode (source, 1 << level, &coded, cancellable, error);
    }
  if (pixels != NULL)
    pixels = wm_pixels_upright (g_steal_pointer (&pixels), self->facts->orientation);
  return pixels == NULL ? NULL
                        : hand_out (self, pixels, level, area.x, area.y, columns, rows,
                                    count, error);
}

static gboolean
build_pack (WmPyramid *self, const char *path, GCancellable *cancellable, GError **error)
{
  if (!wm_pack_build (self->path, path, self->coarse, cancellable, error))
    return FALSE;

  self->pack = wm_pack_open (path, self->facts->width, self->facts->height, self->coarse);
  if (self->pack == NULL)
    wm_photo_set_error (error, WM_PHOTO_ERROR_IO, self->name, NULL);
  return self->pack != NULL;
}

static gboolean
build_kept_pack (WmPyramid *self, const char *kept, GCancellable *cancellable)
{
  g_autofree char *folder = g_path_get_dirname (kept);

  if (g_mkdir_with_parents (folder, 0700) != 0
      || !build_pack (self, kept, cancellable, NULL))
    return FALSE;

  wm_cache_wrote (self->cache_dir, (gint64)self->facts->width * self->facts->height * 2);
  return TRUE;
}

static gboolean
build_own_pack (WmPyramid *self, GCancellable *cancellable, GError **error)
{
  if (self->own_pack == NULL)
    {
      int fd = g_file_open_tmp ("wearmark-XXXXXX", &self->own_pack, error);

      if (fd < 0)
        return FALSE;
      close (fd);
    }

  return build_pack (self, self->own_pack, cancellable, error);
}

/* The pack in the cache folder, or one made there, or one of our own in the system's
 * temporary folder when nothing can be kept. Called with making locked. */
static gboolean
ensure_pack (WmPyramid *self, gboolean again, GCancellable *cancellable, GError **error)
{
  g_autofree char *kept = wm_cache_path (self->cache_dir, "tiles", self->sha256, ".pack");

  if (self->pack != NULL && !again)
    return TRUE;
  g_clear_pointer (&self->pack, wm_pack_free);
  if (kept != NULL && !again)
    self->pack =
        wm_pack_open (kept, self->facts->width, self->facts->height, self->coarse);
  if (self->pack != NULL)
    {
      wm_cache_touch (kept);
      return TRUE;
    }

  if (kept != NULL && build_kept_pack (self, kept, cancellable))
    return TRUE;
  if (g_cancellable_set_error_if_cancelled (cancellable, error))
    return FALSE;
  return build_own_pack (self, cancellable, error);
}

static WmPixels *
make_from_pack (WmPyramid *self, int level, const int *columns, const int *rows,
                int count, GCancellable *cancellable, GError **error)
{
  WmPixels *first = NULL;

  /* One thread reads at a time: a damaged pack is made again under the same lock. */
  g_mutex_lock (&self->making);
  for (int i = 0; i < count; i++)
    {
      g_autoptr (WmPixels) tile = NULL;

      for (int attempt = 0; tile == NULL && attempt < 2; attempt++)
        {
          if (!ensure_pack (self, attempt > 0, cancellable, error))
            break;
          tile = wm_pack_read (self->pack, level, columns[i], rows[i]);
        }
      if (tile == NULL)
        break;
      wm_tile_memory_put (self->owner, level, columns[i], rows[i], tile);
      if (i == 0)
        first = g_steal_pointer (&tile);
    }
  g_mutex_unlock (&self->making);

  if (first == NULL && error != NULL && *error == NULL)
    wm_photo_set_error (error, WM_PHOTO_ERROR_IO, self->name, NULL);
  return first;
}

WmPixels *
wm_pyramid_make (WmPyramid *self, int level, const int *columns, const int *rows,
                 int count, GCancellable *cancellable, GError **error)
{
  if (level >= self->coarse)
    return make_coarse (self, level, columns[0], rows[0], cancellable, error);
  if (wm_jpeg_is_usual (self->facts))
    return make_from_jpeg (self, level, columns, rows, count, cancellable, error);

  return make_from_pack (self, level, columns, rows, count, cancellable, error);
}

gboolean
wm_pyramid_wants_preparing (WmPyramid *self)
{
  gint64 pixels = (gint64)self->facts->width * self->facts->height;
  gboolean wants;

  g_mutex_lock (&self->mutex);
  wants = wm_jpeg_is_usual (self->facts) && pixels > STRIPS_FROM_PIXELS
          && pixels <= WM_STRIPS_MAX_PIXELS && self->strips == NULL && !self->has_failed;
  g_mutex_unlock (&self->mutex);
  return wants;
}

void
wm_pyramid_prepare (WmPyramid *self, GCancellable *cancellable)
{
  WmStrips *strips;

  if (!wm_jpeg_is_usual (self->facts))
    {
      g_mutex_lock (&self->making);
      ensure_pack (self, FALSE, cancellable, NULL);
      g_mutex_unlock (&self->making);
      return;
    }

  g_mutex_lock (&self->making);
  get_strips (self);
  if (wm_pyramid_wants_preparing (self))
    {
      strips = make_strips (self, cancellable);
      g_mutex_lock (&self->mutex);
      self->strips = strips;
      self->has_failed = strips == NULL && !g_cancellable_is_cancelled (cancellable);
      g_mutex_unlock (&self->mutex);
    }
  g_mutex_unlock (&self->making);
}
