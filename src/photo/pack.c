/* pack.c: the fine tiles of a photo that is no usual JPEG
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/pack.h"

#include "photo/atomic-file.h"
#include "photo/row-source.h"
#include "photo/tiles.h"

#include <errno.h>
#include <string.h>
#include <zlib.h>

/* The file: this head, the tiles, and at the end their places with a CRC-32 each and
 * one over them all. Little-endian. */
#define MAGIC "WMPACK01"
#define MAX_LEVELS 16

typedef struct
{
  char magic[8];
  guint32 width, height, levels, tiles;
  guint64 index_at;
  guint32 index_sum;
  guint32 unused;
} Head;

typedef struct
{
  guint64 at;
  guint32 size;
  guint32 sum;
} Place;

struct _WmPack
{
  WmSource *source;
  Head head;
  Place *places;
  int first[MAX_LEVELS + 1]; /* number of the first tile of a level */
};

static int
level_side (int side, int level)
{
  return (int)(((gint64)side - 1) >> level) + 1;
}

static int
tiles_along (int side, int level)
{
  return (level_side (side, level) - 1) / WM_TILE + 1;
}

static int
tiles_of (int width, int height, int level)
{
  return tiles_along (width, level) * tiles_along (height, level);
}

/* Differences to the pixel on the left, three bytes a pixel: deflate at level 1 then
 * finds runs in smooth metal (as the sub filter of PNG). */
static gsize
filter_tile (WmPixels *strip, int left, int width, int height, guint8 *out)
{
  guint8 *to = out;

  for (int y = 0; y < height; y++)
    {
      const guint8 *p = strip->data + y * strip->stride + (gsize)left * 4;
      guint8 before[3] = { 0 };

      for (int x = 0; x < width; x++, p += 4)
        for (int c = 0; c < 3; c++)
          {
            *to++ = (guint8)(p[c] - before[c]);
            before[c] = p[c];
          }
    }

  return (gsize)(to - out);
}

static void
unfilter_tile (const guint8 *from, WmPixels *tile)
{
  for (int y = 0; y < tile->height; y++)
    {
      guint8 *p = tile->data + y * tile->stride;
      guint8 before[3] = { 0 };

      for (int x = 0; x < tile->width; x++, p += 4)
        {
          for (int c = 0; c < 3; c++)
            p[c] = before[c] = (guint8)(before[c] + *from++);
          p[3] = 255;
        }
    }
}

typedef struct
{
  WmPixels *strip; /* WM_TILE rows of this level */
  int width, height;
  int filled; /* rows of the strip */
  int row;    /* of tiles */
} Level;

typedef struct
{
  WmAtomicFile *file;
  Level levels[MAX_LEVELS];
  int n_levels;
  Place *places;
  int first[MAX_LEVELS + 1];
  guint64 at;
  guint8 *raw, *packed;
} Builder;

static gboolean
write_bytes (Builder *self, const void *bytes, gsize size, GError **error)
{
  if (fwrite (bytes, 1, size, self->file->stream) == size)
    return TRUE;

  wm_photo_set_errno (error, errno, self->file->name);
  return FALSE;
}

static gboolean
write_row_of_tiles (Builder *self, int level, GError **error)
{
  Level *at = &self->levels[level];
  int columns = (at->width - 1) / WM_TILE + 1;

  for (int column = 0; column < columns; column++)
    {
      int width = MIN (WM_TILE, at->width - column * WM_TILE);
      gsize raw = filter_tile (at->strip, column * WM_TILE, width, at->filled, self->raw);
      uLongf size = compressBound (WM_TILE * WM_TILE * 3);
      Place *place = &self->places[self->first[level] + at->row * columns + column];

      compress2 (self->packed, &size, self->raw, raw, 1);
      place->at = self->at;
      place->size = (guint32)size;
      place->sum = (guint32)crc32_z (0, self->packed, size);
      self->at += size;
      if (!write_bytes (self, self->packed, size, error))
        return FALSE;
    }

  return TRUE;
}

/* Half of the strip's rows, each pixel the mean of four, put into the next level. */
static void
halve (const Level *from, Level *to)
{
  int rows = (from->filled + 1) / 2;

  for (int y = 0; y < rows; y++)
    {
      const guint8 *a = from->strip->data + (gsize)(2 * y) * from->strip->stride;
      const guint8 *b = 2 * y + 1 < from->filled ? a + from->strip->stride : a;
      guint8 *out = to->strip->data + (gsize)(to->filled + y) * to->strip->stride;

      for (int x = 0; x < to->width; x++)
        for (int c = 0; c < 4; c++)
          {
            int left = 8 * x + c;
            int right = 2 * x + 1 < from->width ? left + 4 : left;

            out[4 * x + c] = (guint8)((a[left] + a[right] + b[left] + b[right] + 2) / 4);
          }
    }
  to->filled += rows;
}

static gboolean
finish_strip (Builder *self, int level, GError **error)
{
  Level *at = &self->levels[level];
  gboolean is_last = at->row * WM_TILE + at->filled >= at->height;

  if (at->filled == 0 || !write_row_of_tiles (self, level, error))
    return at->filled == 0;

  if (level + 1 < self->n_levels)
    {
      Level *next = &self->levels[level + 1];

      halve (at, next);
      if ((next->filled == WM_TILE || is_last) && !finish_strip (self, level + 1, error))
        return FALSE;
    }
  at->filled = 0;
  at->row++;
  return TRUE;
}

static gboolean
prepare (Builder *self, int width, int height, int levels)
{
  self->n_levels = levels;
  self->at = sizeof (Head);
  for (int i = 0; i < levels; i++)
    {
      Level *level = &self->levels[i];

      level->width = level_side (width, i);
      level->height = level_side (height, i);
      level->strip = wm_pixels_new (level->width, WM_TILE);
      self->first[i + 1] = self->first[i] + tiles_of (width, height, i);
      if (level->strip == NULL)
        return FALSE;
    }

  self->places = g_new0 (Place, self->first[levels]);
  self->raw = g_malloc (WM_TILE * WM_TILE * 3);
  self->packed = g_malloc (compressBound (WM_TILE * WM_TILE * 3));
  return TRUE;
}

static gboolean
write_all (Builder *self, WmRowSource *rows, GError **error)
{
  Level *fine = &self->levels[0];
  Head head = { .magic = MAGIC,
                .width = (guint32)fine->width,
                .height = (guint32)fine->height,
                .levels = (guint32)self->n_levels,
                .tiles = (guint32)self->first[self->n_levels] };
  gsize index_size = head.tiles * sizeof (Place);

  if (!write_bytes (self, &head, sizeof head, error))
    return FALSE;

  for (int top = 0; top < fine->height; top += WM_TILE)
    {
      fine->filled = MIN (WM_TILE, fine->height - top);
      if (!wm_row_source_read (rows, fine->strip, fine->filled, error)
          || !finish_strip (self, 0, error))
        return FALSE;
    }

  head.index_at = self->at;
  head.index_sum = (guint32)crc32_z (0, (const guint8 *)self->places, index_size);
  if (!write_bytes (self, self->places, index_size, error))
    return FALSE;
  if (fseek (self->file->stream, 0, SEEK_SET) != 0)
    {
      wm_photo_set_errno (error, errno, self->file->name);
      return FALSE;
    }
  return write_bytes (self, &head, sizeof head, error);
}

gboolean
wm_pack_build (const char *photo, const char *path, int levels, GCancellable *cancellable,
               GError **error)
{
  g_autoptr (WmRowSource) rows = wm_row_source_new (photo, 0, cancellable, error);
  g_autoptr (WmAtomicFile) file = NULL;
  Builder builder = { 0 };
  gboolean done = FALSE;

  g_return_val_if_fail (levels >= 1 && levels <= MAX_LEVELS, FALSE);
  if (rows == NULL)
    return FALSE;
  file = wm_atomic_file_new (path, error);
  if (file == NULL)
    return FALSE;

  builder.file = file;
  if (prepare (&builder, wm_row_source_get_width (rows), wm_row_source_get_height (rows),
               levels))
    done = write_all (&builder, rows, error);
  else
    wm_photo_set_error (error, WM_PHOTO_ERROR_NO_MEMORY, file->name, NULL);

  for (int i = 0; i < levels; i++)
    g_clear_pointer (&builder.levels[i].strip, wm_pixels_unref);
  g_free (builder.places);
  g_free (builder.raw);
  g_free (builder.packed);
  return done && wm_atomic_file_commit (file, FALSE, error);
}

static gboolean
read_index (WmPack *self, int width, int height, int levels)
{
  gsize size;

  if (!wm_source_read_exactly (self->source, 0, &self->head, sizeof self->head)
      || memcmp (self->head.magic, MAGIC, sizeof self->head.magic) != 0
      || self->head.width != (guint32)width || self->head.height != (guint32)height
      || self->head.levels != (guint32)levels
      || self->head.tiles != (guint32)self->first[levels])
    return FALSE;

  size = self->head.tiles * sizeof (Place);
  self->places = g_malloc (size);
  return wm_source_read_exactly (self->source, (gint64)self->head.index_at, self->places,
                                 size)
         && crc32_z (0, (const guint8 *)self->places, size) == self->head.index_sum;
}

WmPack *
wm_pack_open (const char *path, int width, int height, int levels)
{
  g_autoptr (WmPack) self = g_new0 (WmPack, 1);

  self->source = wm_source_open (path, NULL);
  if (self->source == NULL || levels > MAX_LEVELS)
    return NULL;

  for (int i = 0; i < levels; i++)
    self->first[i + 1] = self->first[i] + tiles_of (width, height, i);
  return read_index (self, width, height, levels) ? g_steal_pointer (&self) : NULL;
}

void
wm_pack_free (WmPack *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->source, wm_source_free);
  g_free (self->places);
  g_free (self);
}

WmPixels *
wm_pack_read (WmPack *self, int level, int column, int row)
{
  int width = level_side ((int)self->head.width, level);
  int height = level_side ((int)self->head.height, level);
  int columns = (width - 1) / WM_TILE + 1;
  const Place *place = &self->places[self->first[level] + row * columns + column];
  g_autoptr (WmPixels) tile = wm_pixels_new (MIN (WM_TILE, width - column * WM_TILE),
                                             MIN (WM_TILE, height - row * WM_TILE));
  g_autofree guint8 *packed = NULL;
  g_autofree guint8 *raw = NULL;
  uLongf size;

  if (tile == NULL || place->size > compressBound (WM_TILE * WM_TILE * 3))
    return NULL;

  packed = g_malloc (place->size);
  size = (uLongf)tile->width * tile->height * 3;
  raw = g_malloc (size);
  if (!wm_source_read_exactly (self->source, (gint64)place->at, packed, place->size)
      || crc32_z (0, packed, place->size) != place->sum
      || uncompress (raw, &size, packed, place->size) != Z_OK
      || size != (uLongf)tile->width * tile->height * 3)
    return NULL;

  unfilter_tile (raw, tile);
  return g_steal_pointer (&tile);
}
