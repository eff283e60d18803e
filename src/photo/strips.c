/* strips.c: a JPEG whose rows can be decoded one by one
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/strips.h"

#include "photo/jpeg-read.h"
#include "photo/jpeg-segments.h"
#include "photo/jpeg-transcode.h"

#include <string.h>

/* The bytes: this head, then the offset of each strip and of the end (counted from
 * where the strips begin), then the JPEG's header, then the strips. Little-endian
 * numbers; the cache folder adds a checksum over all. */
#define MAGIC "WMSTRIP1"

typedef struct
{
  char magic[8];
  guint32 width, height;
  guint32 row_height; /* px of one row of blocks */
  guint32 rows;
  guint32 header_size; /* of the JPEG's header */
  guint32 frame_at;    /* of the frame's height in that header */
} Head;

struct _WmStrips
{
  GBytes *bytes;
  Head head;
  const guint32 *offsets;
  const guint8 *header;
  const guint8 *strips;
};

static void
add_offset (GByteArray *offsets, gsize value)
{
  guint32 offset = (guint32)value;

  g_byte_array_append (offsets, (const guint8 *)&offset, sizeof offset);
}

/* Copies the scan without its restart markers, noting where each was. */
static gboolean
split_scan (const guint8 *scan, gsize size, GByteArray *offsets, GByteArray *strips)
{
  gsize from = 0, at = 0;

  add_offset (offsets, 0);
  while (at + 1 < size)
    {
      const guint8 *found = memchr (scan + at, 0xFF, size - at - 1);

      if (found == NULL)
        return FALSE;
      at = (gsize)(found - scan);
      if (scan[at + 1] == 0x00 || scan[at + 1] == 0xFF)
        {
          at += scan[at + 1] == 0xFF ? 1 : 2;
          continue;
        }

      g_byte_array_append (strips, scan + from, (guint)(at - from));
      add_offset (offsets, strips->len);
      if (scan[at + 1] == 0xD9)
        return TRUE;
      if (scan[at + 1] < 0xD0 || scan[at + 1] > 0xD7)
        return FALSE;
      at += 2;
      from = at;
    }

  return FALSE;
}

/* Where in the header the frame's height stands. */
static gboolean
note_frame (WmSource *source, int marker, gint64 at, gint64 length, gpointer user_data)
{
  if (marker == 0xC0 || marker == 0xC1)
    *(gint64 *)user_data = at + 5;

  return TRUE;
}

GBytes *
wm_strips_build (WmSource *jpeg, GCancellable *cancellable, GError **error)
{
  g_autoptr (GBytes) copy = wm_jpeg_with_restarts (jpeg, cancellable, error);
  g_autoptr (WmSource) source = NULL;
  g_autoptr (GByteArray) out = g_byte_array_new ();
  g_autoptr (GByteArray) strips = g_byte_array_new ();
  Head head = { .magic = MAGIC };
  WmJpegHeader header;
  gint64 frame_at = 0;
  guint8 length[2];
  gsize size;
  const guint8 *data;

  if (copy == NULL)
    return NULL;
  data = g_bytes_get_data (copy, &size);
  source = wm_source_new_bytes (copy, jpeg->name, error);
  if (source == NULL || !wm_jpeg_header_read (source, &header, error)
      || wm_jpeg_segments_walk (source, note_frame, &frame_at, error) < 0)
    return NULL;

  wm_source_read (source, header.scan_at + 2, length, 2);
  head.width = (guint32)header.width;
  head.height = (guint32)header.height;
  head.row_height = 8 * (guint32)header.max_v;
  head.rows = (head.height - 1) / head.row_height + 1;
  head.header_size = (guint32)header.scan_at + 2 + (guint32)(length[0] << 8 | length[1]);
  head.frame_at = (guint32)frame_at;

  g_byte_array_append (out, (const guint8 *)&head, sizeof head);
  if (!split_scan (data + head.header_size, size - head.header_size, out, strips)
      || out->len != sizeof head + (head.rows + 1) * sizeof (guint32))
    {
      wm_photo_set_error (error, WM_PHOTO_ERROR_LYING, jpeg->name, NULL);
      return NULL;
    }

  g_byte_array_append (out, data, head.header_size);
  g_byte_array_append (out, strips->data, strips->len);
  return g_byte_array_free_to_bytes (g_steal_pointer (&out));
}

static gboolean
is_sound (const WmStrips *self, gsize size)
{
  const Head *head = &self->head;
  gsize start;

  if (memcmp (head->magic, MAGIC, sizeof head->magic) != 0 || head->row_height < 8
      || head->row_height > 32 || head->height < 1
      || head->rows != (head->height - 1) / head->row_height + 1)
    return FALSE;

  start = sizeof *head + (head->rows + 1) * sizeof (guint32) + (gsize)head->header_size;
  if (start > size || head->frame_at + 2 > head->header_size)
    return FALSE;

  for (guint32 i = 0; i < head->rows; i++)
    if (self->offsets[i] > self->offsets[i + 1])
      return FALSE;

  return start + self->offsets[head->rows] == size;
}

WmStrips *
wm_strips_new (GBytes *bytes, int coded_width, int coded_height)
{
  g_autoptr (WmStrips) self = g_new0 (WmStrips, 1);
  gsize size;
  const guint8 *data = g_bytes_get_data (bytes, &size);

  self->bytes = g_bytes_ref (bytes);
  if (size < sizeof self->head)
    return NULL;
  memcpy (&self->head, data, sizeof self->head);
  if (self->head.rows > 65535
      || sizeof self->head + (self->head.rows + 1) * sizeof (guint32) > size)
    return NULL;

  self->offsets = (const guint32 *)(gconstpointer)(data + sizeof self->head);
  self->header = data + sizeof self->head + (self->head.rows + 1) * sizeof (guint32);
  self->strips = self->header + self->head.header_size;
  if (!is_sound (self, size) || self->head.width != (guint32)coded_width
      || self->head.height != (guint32)coded_height)
    return NULL;

  return g_steal_pointer (&self);
}

void
wm_strips_free (WmStrips *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->bytes, g_bytes_unref);
  g_free (self);
}

/* A JPEG of the rows of blocks @first to @last, with its own height and restarts
 * counted from 0. */
static GBytes *
assemble (const WmStrips *self, guint32 first, guint32 last)
{
  const Head *head = &self->head;
  g_autoptr (GByteArray) out = g_byte_array_new ();
  guint32 height =
      MIN ((last + 1) * head->row_height, head->height) - first * head->row_height;
  guint8 marker[2] = { 0xFF, 0 };

  g_byte_array_append (out, self->header, head->header_size);
  out->data[head->frame_at] = (guint8)(height >> 8);
  out->data[head->frame_at + 1] = (guint8)(height & 255);

  for (guint32 i = first; i <= last; i++)
    {
      g_byte_array_append (out, self->strips + self->offsets[i],
                           self->offsets[i + 1] - self->offsets[i]);
      marker[1] = i == last ? 0xD9 : (guint8)(0xD0 + (i - first) % 8);
      g_byte_array_append (out, marker, 2);
    }

  return g_byte_array_free_to_bytes (g_steal_pointer (&out));
}

WmPixels *
wm_strips_decode (WmStrips *self, int denom, const WmRect *window,
                  GCancellable *cancellable, GError **error)
{
  int row = (int)self->head.row_height / denom;
  int last_row = (int)self->head.rows - 1;
  /* One row of blocks more on each side: chroma is smoothed across them. */
  int first = MAX (0, window->y / row - 1);
  int last = MIN (last_row, (window->y + window->height - 1) / row + 1);
  WmRect inside = *window;
  g_autoptr (GBytes) bytes = assemble (self, (guint32)first, (guint32)last);
  g_autoptr (WmSource) source = wm_source_new_bytes (bytes, "strips", error);

  if (source == NULL)
    return NULL;

  inside.y -= first * row;
  return wm_jpeg_decode (source, denom, &inside, cancellable, error);
}
