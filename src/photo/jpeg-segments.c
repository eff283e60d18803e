/* jpeg-segments.c: the header of a JPEG, read segment by segment
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/jpeg-segments.h"

#include <string.h>

/* 255 ICC chunks, 255 of extended XMP and room for the rest. */
#define MAX_SEGMENTS 2048

/* Fill bytes (0xFF) between segments are allowed; so many are not honest. */
#define MAX_FILL 4096

static gboolean
is_bare_marker (int marker)
{
  return marker == 0x01 || (marker >= 0xD0 && marker <= 0xD8);
}

/* Finds the next marker at or after *@at; returns its code or -1 at the end. Bytes
 * between segments that are no marker are skipped, as libjpeg does. */
static int
next_marker (WmSource *source, gint64 *at)
{
  guint8 b[2];

  for (int skipped = 0; skipped < MAX_FILL; skipped++)
    {
      if (!wm_source_read_exactly (source, *at, b, 2))
        return -1;
      if (b[0] == 0xFF && b[1] != 0xFF && b[1] != 0x00)
        return b[1];
      (*at)++;
    }

  return -1;
}

gint64
wm_jpeg_segments_walk (WmSource *source, WmJpegSegment visit, gpointer user_data,
                       GError **error)
{
  gint64 at = 0;

  for (int i = 0; i < MAX_SEGMENTS; i++)
    {
      int marker = next_marker (source, &at);
      guint8 b[2];
      gint64 length;

      if (marker < 0)
        {
          wm_photo_set_error (error,
                              at >= source->size - 1 ? WM_PHOTO_ERROR_TRUNCATED
                                                     : WM_PHOTO_ERROR_LYING,
                              source->name, NULL);
          return -1;
        }
      if (is_bare_marker (marker))
        {
          at += 2;
          continue;
        }
      if (marker == 0xD9)
        break;

      if (!wm_source_read_exactly (source, at + 2, b, 2))
        {
          wm_photo_set_error (error, WM_PHOTO_ERROR_TRUNCATED, source->name, NULL);
          return -1;
        }
      length = 2 + (b[0] << 8 | b[1]);
      if (length < 4)
        break;
      if (at + length > source->size)
        {
          wm_photo_set_error (error, WM_PHOTO_ERROR_TRUNCATED, source->name, NULL);
          return -1;
        }
      if (marker == 0xDA)
        return at;
      if (visit != NULL && !visit (source, marker, at, length, user_data))
        break;
      at += length;
    }

  wm_photo_set_error (error, WM_PHOTO_ERROR_LYING, source->name, NULL);
  return -1;
}

static gboolean
read_frame (WmSource *source, int marker, gint64 at, gint64 length, WmJpegHeader *out)
{
  guint8 b[10 + 3 * 4];
  gsize got = wm_source_read (source, at, b, sizeof b);

  if (got < 13 || length < 13)
    return FALSE;

  out->sof = marker;
  out->precision = b[4];
  out->height = b[5] << 8 | b[6];
  out->width = b[7] << 8 | b[8];
  out->components = b[9];
  if (out->components < 1 || out->components > 4 || got < 10 + 3 * (gsize)out->components)
    return FALSE;

  for (int i = 0; i < out->components; i++)
    {
      int h = b[11 + 3 * i] >> 4, v = b[11 + 3 * i] & 15;

      out->max_h = MAX (out->max_h, h);
      out->max_v = MAX (out->max_v, v);
      out->blocks_per_mcu += h * v;
    }

  return out->max_h > 0 && out->max_v > 0;
}

static void
read_jfif (const guint8 *b, WmJpegHeader *out)
{
  int density = b[12] << 8 | b[13];

  out->has_jfif = TRUE;
  if (b[11] == 1)
    out->dpi = density;
  else if (b[11] == 2)
    out->dpi = density * 2.54;
}

static gboolean
visit_header (WmSource *source, int marker, gint64 at, gint64 length, gpointer user_data)
{
  WmJpegHeader *out = user_data;
  guint8 b[20] = { 0 };
  gsize got = wm_source_read (source, at, b, MIN (sizeof b, (gsize)length));

  if (marker >= 0xC0 && marker <= 0xCF && marker != 0xC4 && marker != 0xC8
      && marker != 0xCC)
    return out->sof == 0 && read_frame (source, marker, at, length, out);

  if (marker == 0xE0 && got >= 16 && memcmp (b + 4, "JFIF", 5) == 0)
    read_jfif (b, out);
  else if (marker == 0xE1 && got >= 18 && out->exif_at == 0
           && memcmp (b + 4, "Exif\0", 5) == 0)
    {
      out->exif_at = at + 10;
      out->exif_length = length - 10;
    }
  else if (marker == 0xE2 && got >= 18 && memcmp (b + 4, "ICC_PROFILE", 12) == 0)
    out->has_icc = TRUE;
  else if (marker == 0xEE && got >= 16 && memcmp (b + 4, "Adobe", 5) == 0)
    out->adobe_transform = b[15];

  return TRUE;
}

gboolean
wm_jpeg_header_read (WmSource *source, WmJpegHeader *out, GError **error)
{
  memset (out, 0, sizeof *out);
  out->adobe_transform = -1;

  out->scan_at = wm_jpeg_segments_walk (source, visit_header, out, error);
  if (out->scan_at < 0)
    return FALSE;

  if (out->sof == 0)
    {
      wm_photo_set_error (error, WM_PHOTO_ERROR_LYING, source->name, NULL);
      return FALSE;
    }

  return TRUE;
}
