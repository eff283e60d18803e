/* png-chunks.c: the header of a PNG, read chunk by chunk
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/png-chunks.h"

#include <string.h>

/* libpng writes 8 KiB of data a chunk: a 500-megapixel picture of 2 GB has
 * 250,000. Past this many the rest is left to libpng. */
#define MAX_CHUNKS 400000

/* The most that deflate can unpack from one byte (zlib's own documentation). */
#define DEFLATE_MOST 1032

static guint32
get_32 (const guint8 *b)
{
  return (guint32)b[0] << 24 | (guint32)b[1] << 16 | (guint32)b[2] << 8 | b[3];
}

static gboolean
read_ihdr (WmSource *source, WmPngHeader *out)
{
  guint8 b[25];

  if (!wm_source_read_exactly (source, 8, b, sizeof b) || get_32 (b) != 13
      || memcmp (b + 4, "IHDR", 4) != 0)
    return FALSE;

  out->width = get_32 (b + 8);
  out->height = get_32 (b + 12);
  out->depth = b[16];
  out->colour_type = b[17];
  out->is_interlaced = b[20] == 1;
  return out->width > 0 && out->height > 0 && out->width <= G_MAXINT32
         && out->height <= G_MAXINT32;
}

static void
take_chunk (WmSource *source, const char *type, gint64 at, guint32 length,
            WmPngHeader *out)
{
  guint8 b[9];

  if (strcmp (type, "IDAT") == 0)
    out->data_bytes += length;
  else if (strcmp (type, "IEND") == 0)
    out->has_end = TRUE;
  else if (strcmp (type, "iCCP") == 0)
    out->has_icc = TRUE;
  else if (strcmp (type, "acTL") == 0 && length >= 8
           && wm_source_read_exactly (source, at, b, 4))
    out->frames = (int)CLAMP (get_32 (b), 1, 1000000);
  else if (strcmp (type, "pHYs") == 0 && length == 9
           && wm_source_read_exactly (source, at, b, 9) && b[8] == 1)
    out->dpi = get_32 (b) * 0.0254;
  else if (strcmp (type, "eXIf") == 0 && out->exif_at == 0)
    {
      out->exif_at = at;
      out->exif_length = length;
    }
}

static int
samples_of (int colour_type)
{
  return colour_type == 2 ? 3 : colour_type == 4 ? 2 : colour_type == 6 ? 4 : 1;
}

/* Whether so few compressed bytes can unpack to the rows the header announces. */
static gboolean
has_bytes_for_rows (const WmPngHeader *header)
{
  gint64 row_bits =
      (gint64)header->width * samples_of (header->colour_type) * header->depth;
  double raw = (double)header->height * (double)(row_bits / 8 + 1);

  return raw <= (double)header->data_bytes * DEFLATE_MOST + DEFLATE_MOST;
}

gboolean
wm_png_header_read (WmSource *source, WmPngHeader *out, GError **error)
{
  gint64 at = 8;
  gboolean is_cut = FALSE;
  int chunks = 0;

  memset (out, 0, sizeof *out);
  out->frames = 1;
  if (!read_ihdr (source, out))
    {
      wm_photo_set_error (
          error, source->size < 33 ? WM_PHOTO_ERROR_TRUNCATED : WM_PHOTO_ERROR_LYING,
          source->name, NULL);
      return FALSE;
    }

  while (!out->has_end && !is_cut && chunks++ < MAX_CHUNKS)
    {
      guint8 b[8];
      char type[5] = { 0 };
      guint32 length;

      is_cut = !wm_source_read_exactly (source, at, b, 8);
      if (is_cut)
        break;
      length = get_32 (b);
      memcpy (type, b + 4, 4);
      is_cut = length > G_MAXINT32 || at + 12 + (gint64)length > source->size;
      if (is_cut)
        break;
      take_chunk (source, type, at + 8, length, out);
      at += 12 + (gint64)length;
    }

  if (is_cut)
    {
      wm_photo_set_error (error, WM_PHOTO_ERROR_TRUNCATED, source->name, NULL);
      return FALSE;
    }
  if (chunks < MAX_CHUNKS && !has_bytes_for_rows (out))
    {
      wm_photo_set_error (error, WM_PHOTO_ERROR_LYING, source->name, NULL);
      return FALSE;
    }

  return TRUE;
}
