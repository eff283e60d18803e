/* jpeg-out.c: JPEG bytes for pages and for mail
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/jpeg-out.h"

#include "photo/icc.h"
#include "photo/jpeg-segments.h"
#include "photo/load.h"
#include "photo/probe-source.h"

#include <setjmp.h>
#include <stdio.h>
#include <string.h>

#include <jpeglib.h>

/* From this quality on colour is kept at full resolution: prints are looked at
 * closely. */
#define FULL_COLOUR_QUALITY 90

/* A profile in one segment, as nearly all are; more are joined. */
#define MAX_PROFILE (4 * 1024 * 1024)

/* Photos larger than this are never passed through whole. */
#define MAX_STRIPPED (G_GINT64_CONSTANT (512) * 1024 * 1024)

static gboolean
collect_profile (WmSource *source, int marker, gint64 at, gint64 length,
                 gpointer user_data)
{
  GByteArray *profile = user_data;
  guint8 head[18];
  guint before = profile->len;

  if (marker != 0xE2 || length < 18 || profile->len + length > MAX_PROFILE
      || !wm_source_read_exactly (source, at, head, sizeof head)
      || memcmp (head + 4, "ICC_PROFILE", 12) != 0)
    return TRUE;

  g_byte_array_set_size (profile, before + (guint)(length - 18));
  return wm_source_read_exactly (source, at + 18, profile->data + before,
                                 (gsize)(length - 18));
}

static gboolean
has_only_srgb (WmSource *source)
{
  g_autoptr (GByteArray) profile = g_byte_array_new ();

  return wm_jpeg_segments_walk (source, collect_profile, profile, NULL) >= 0
         && profile->len > 0 && wm_icc_is_srgb (profile->data, profile->len);
}

gboolean
wm_jpeg_can_pass_through (const char *path)
{
  g_autoptr (WmSource) source = wm_source_open (path, NULL);
  g_autoptr (WmPhotoFacts) facts = NULL;
  WmJpegHeader header;

  if (source != NULL)
    facts = wm_photo_probe_source (source, NULL);
  if (facts == NULL || facts->format != WM_PHOTO_JPEG || facts->orientation != 1
      || facts->is_cmyk || !wm_jpeg_header_read (source, &header, NULL))
    return FALSE;

  /* Arithmetic coding is not in PDF's DCTDecode; 2 components have no meaning. */
  if ((header.sof != 0xC0 && header.sof != 0xC1 && header.sof != 0xC2)
      || header.components == 2)
    return FALSE;

  return !header.has_icc || has_only_srgb (source);
}

/* Keeps what decoding needs (and JFIF, ICC, Adobe), drops what tells tales. */
static gboolean
keep_segment (WmSource *source, int marker, gint64 at, gint64 length, gpointer user_data)
{
  GByteArray *kept = user_data;
  guint8 head[16] = { 0 };
  guint before = kept->len;

  wm_source_read (source, at, head, sizeof head);
  if (marker == 0xFE
      || (marker >= 0xE1 && marker <= 0xEF && marker != 0xE2 && marker != 0xEE))
    return TRUE;
  if (marker == 0xE2 && memcmp (head + 4, "ICC_PROFILE", 11) != 0)
    return TRUE;

  g_byte_array_set_size (kept, before + (guint)length);
  return wm_source_read_exactly (source, at, kept->data + before, (gsize)length);
}

/* Past the end of the picture some cameras add previews and films, with their own
 * location: the bytes end with the end marker of this picture. Inside a scan 0xFF is
 * followed by 0 or a restart marker; between scans there are segments. */
static gsize
find_end (const guint8 *b, gsize size)
{
  gsize at = 0;

  while (at + 1 < size)
    {
      const guint8 *found = memchr (b + at, 0xFF, size - at - 1);

      if (found == NULL)
        break;
      at = (gsize)(found - b);
      if (b[at + 1] == 0xD9)
        return at + 2;
      if (b[at + 1] >= 0xC0 && b[at + 1] != 0xFF && at + 3 < size
          && !(b[at + 1] >= 0xD0 && b[at + 1] <= 0xD8))
        at += 2 + (gsize)(b[at + 2] << 8 | b[at + 3]);
      else
        at += b[at + 1] == 0xFF ? 1 : 2;
    }

  return size;
}

GBytes *
wm_jpeg_load_stripped (const char *path, GError **error)
{
  g_autoptr (WmSource) source = wm_source_open (path, error);
  g_autoptr (GByteArray) kept = g_byte_array_new ();
  static const guint8 soi[2] = { 0xFF, 0xD8 };
  gint64 scan_at;
  guint before;
  gsize rest;

  if (source == NULL)
    return NULL;
  if (source->size > MAX_STRIPPED)
    {
      wm_photo_set_error (error, WM_PHOTO_ERROR_TOO_LARGE, source->name, NULL);
      return NULL;
    }

  g_byte_array_append (kept, soi, sizeof soi);
  scan_at = wm_jpeg_segments_walk (source, keep_segment, kept, error);
  if (scan_at < 0)
    return NULL;

  before = kept->len;
  rest = (gsize)(source->size - scan_at);
  g_byte_array_set_size (kept, before + (guint)rest);
  if (!wm_source_read_exactly (source, scan_at, kept->data + before, rest))
    {
      wm_photo_set_error (error, WM_PHOTO_ERROR_TRUNCATED, source->name, NULL);
      return NULL;
    }

  g_byte_array_set_size (kept, before + (guint)find_end (kept->data + before, rest));
  return g_byte_array_free_to_bytes (g_steal_pointer (&kept));
}

typedef struct
{
  struct jpeg_compress_struct cinfo;
  struct jpeg_error_mgr errors;
  jmp_buf jump;
  unsigned char *out;
  unsigned long size;
  WmPixels *pixels;
  int quality;
} Encoder;

static void
on_error_exit (j_common_ptr cinfo)
{
  Encoder *self = cinfo->client_data;

  longjmp (self->jump, 1);
}

static void
on_message (j_common_ptr cinfo, int level)
{
}

static void
encode (Encoder *self)
{
  struct jpeg_compress_struct *cinfo = &self->cinfo;

  jpeg_create_compress (cinfo);
  cinfo->client_data = self;
  jpeg_mem_dest (cinfo, &self->out, &self->size);
  cinfo->image_width = (JDIMENSION)self->pixels->width;
  cinfo->image_height = (JDIMENSION)self->pixels->height;
  cinfo->input_components = 4;
  cinfo->in_color_space = JCS_EXT_BGRX;
  jpeg_set_defaults (cinfo);
  jpeg_set_quality (cinfo, self->quality, TRUE);
  if (self->quality >= FULL_COLOUR_QUALITY)
    cinfo->comp_info[0].h_samp_factor = cinfo->comp_info[0].v_samp_factor = 1;

  jpeg_start_compress (cinfo, TRUE);
  while (cinfo->next_scanline < cinfo->image_height)
    {
      JSAMPROW row = self->pixels->data + cinfo->next_scanline * self->pixels->stride;

      jpeg_write_scanlines (cinfo, &row, 1);
    }
  jpeg_finish_compress (cinfo);
}

static gboolean
run_encoder (Encoder *self)
{
  if (setjmp (self->jump) != 0)
    return FALSE;

  encode (self);
  return TRUE;
}

GBytes *
wm_jpeg_encode (WmPixels *pixels, int quality, GError **error)
{
  Encoder encoder = { .pixels = pixels, .quality = CLAMP (quality, 1, 100) };
  gboolean done;

  encoder.cinfo.err = jpeg_std_error (&encoder.errors);
  encoder.errors.error_exit = on_error_exit;
  encoder.errors.emit_message = on_message;
  encoder.cinfo.client_data = &encoder;

  done = run_encoder (&encoder);
  jpeg_destroy_compress (&encoder.cinfo);
  if (!done)
    {
      free (encoder.out);
      wm_photo_set_error (error, WM_PHOTO_ERROR_NO_MEMORY, "JPEG", NULL);
      return NULL;
    }

  return g_bytes_new_with_free_func (encoder.out, encoder.size, free, encoder.out);
}

GBytes *
wm_jpeg_for_mail (const char *path, int long_side, int quality, int *out_width,
                  int *out_height, GCancellable *cancellable, GError **error)
{
  g_autoptr (WmPixels) pixels =
      wm_photo_load_fit (path, long_side, long_side, cancellable, error);

  if (pixels == NULL)
    return NULL;

  if (out_width != NULL)
    *out_width = pixels->width;
  if (out_height != NULL)
    *out_height = pixels->height;
  return wm_jpeg_encode (pixels, quality, error);
}
