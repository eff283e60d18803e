/* jpeg-read.c: JPEGs decoded row by row
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/jpeg-read.h"

#include "photo/icc.h"

#include <setjmp.h>
#include <stdio.h>

#include <jpeglib.h>

#include <jerror.h>

#define INPUT_BYTES 65536

/* A progressive JPEG may repeat scans without end, each walking the whole picture.
 * Real ones have about ten. */
#define MAX_SCANS 100
#define MAX_SCAN_PIXELS G_GINT64_CONSTANT (4000000000)

struct _WmJpegReader
{
  struct jpeg_decompress_struct cinfo;
  struct jpeg_error_mgr errors;
  struct jpeg_source_mgr input;
  struct jpeg_progress_mgr progress;
  jmp_buf jump;
  WmSource *source;
  gint64 offset;
  guint8 buffer[INPUT_BYTES];
  GCancellable *cancellable;
  WmRect window; /* scaled px of the stored picture */
  int column;    /* where the window's left edge is in a decoded row */
  guint8 *row;   /* one decoded row, when it is wider than the window */
  WmIccToSrgb *colours;
  gboolean is_at_end; /* bytes were missing */
  gboolean is_damaged;
  gboolean is_stopped; /* cancelled, or too many scans */
  int fatal;           /* libjpeg's own code */
};

typedef void (*Work) (WmJpegReader *self, gpointer data);

/* libjpeg leaves on errors by longjmp (): everything that calls it runs in here. */
static gboolean
run_guarded (WmJpegReader *self, Work work, gpointer data)
{
  if (setjmp (self->jump) != 0)
    return FALSE;

  work (self, data);
  return TRUE;
}

static void
on_error_exit (j_common_ptr cinfo)
{
  WmJpegReader *self = cinfo->client_data;

  self->fatal = cinfo->err->msg_code;
  longjmp (self->jump, 1);
}

static void
on_message (j_common_ptr cinfo, int level)
{
  WmJpegReader *self = cinfo->client_data;

  if (level >= 0)
    return;

  switch (cinfo->err->msg_code)
    {
    case JWRN_JPEG_EOF:
      self->is_at_end = TRUE;
      break;
    /* Common in honest files: bytes between segments, odd headers. */
    case JWRN_EXTRANEOUS_DATA:
    case JWRN_ADOBE_XFORM:
    case JWRN_JFIF_MAJOR:
    case JWRN_BOGUS_ICC:
    case JWRN_TOO_MUCH_DATA:
      break;
    default:
      self->is_damaged = TRUE;
      break;
    }
}

static void
on_progress (j_common_ptr cinfo)
{
  WmJpegReader *self = cinfo->client_data;
  gint64 pixels = (gint64)self->cinfo.image_width * self->cinfo.image_height;
  int scans = self->cinfo.input_scan_number;

  if (!g_cancellable_is_cancelled (self->cancellable) && scans <= MAX_SCANS
      && scans * pixels <= MAX_SCAN_PIXELS + pixels)
    return;

  self->is_stopped = TRUE;
  longjmp (self->jump, 1);
}

static void
on_init_source (j_decompress_ptr cinfo)
{
}

static boolean
on_fill_input (j_decompress_ptr cinfo)
{
  WmJpegReader *self = cinfo->client_data;
  gsize got = wm_source_read (self->source, self->offset, self->buffer, INPUT_BYTES);

  if (got == 0)
    {
      /* The way of libjpeg's own sources: pretend an end, and warn. */
      if (self->offset == 0)
        ERREXIT (cinfo, JERR_INPUT_EMPTY);
      WARNMS (cinfo, JWRN_JPEG_EOF);
      self->buffer[0] = 0xFF;
      self->buffer[1] = JPEG_EOI;
      got = 2;
    }
  else
    self->offset += (gint64)got;

  self->input.next_input_byte = self->buffer;
  self->input.bytes_in_buffer = got;
  return TRUE;
}

static void
on_skip_input (j_decompress_ptr cinfo, long count)
{
  WmJpegReader *self = cinfo->client_data;

  if (count <= 0)
    return;
  if ((gsize)count <= self->input.bytes_in_buffer)
    {
      self->input.next_input_byte += count;
      self->input.bytes_in_buffer -= count;
      return;
    }

  self->offset += count - (long)self->input.bytes_in_buffer;
  self->input.bytes_in_buffer = 0;
  on_fill_input (cinfo);
}

static void
read_header (WmJpegReader *self, gpointer unused)
{
  jpeg_create_decompress (&self->cinfo);
  self->cinfo.client_data = self;
  self->progress.progress_monitor = on_progress;
  self->cinfo.progress = &self->progress;

  self->input.init_source = on_init_source;
  self->input.fill_input_buffer = on_fill_input;
  self->input.skip_input_data = on_skip_input;
  self->input.resync_to_restart = jpeg_resync_to_restart;
  self->input.term_source = on_init_source;
  self->cinfo.src = &self->input;

  jpeg_save_markers (&self->cinfo, JPEG_APP0 + 2, 0xFFFF);
  jpeg_read_header (&self->cinfo, TRUE);
}

static void
read_profile (WmJpegReader *self, gpointer unused)
{
  JOCTET *profile = NULL;
  unsigned int length = 0;

  if (self->cinfo.num_components == 3
      && jpeg_read_icc_profile (&self->cinfo, &profile, &length))
    {
      self->colours = wm_icc_to_srgb_new (profile, length);
      free (profile);
    }
}

static void
start (WmJpegReader *self, gpointer data)
{
  const WmRect *window = data;
  struct jpeg_decompress_struct *cinfo = &self->cinfo;
  WmRect whole;

  cinfo->out_color_space = JCS_EXT_BGRA;
  jpeg_start_decompress (cinfo);

  whole = (WmRect) { 0, 0, (int)cinfo->output_width, (int)cinfo->output_height };
  self->window = window != NULL ? *window : whole;
  if (self->window.width < whole.width)
    {
      JDIMENSION x = (JDIMENSION)self->window.x;
      JDIMENSION width = (JDIMENSION)self->window.width;

      /* Widened to whole blocks, and by one more each side: chroma is smoothed
       * across block edges. */
      JDIMENSION margin = 32;
      x = x > margin ? x - margin : 0;
      width = MIN ((JDIMENSION)(self->window.x + self->window.width) + margin,
                   (JDIMENSION)whole.width)
              - x;
      jpeg_crop_scanline (cinfo, &x, &width);
      self->column = self->window.x - (int)x;
    }
  if (self->window.y > 0)
    jpeg_skip_scanlines (cinfo, (JDIMENSION)self->window.y);
}

static gboolean
fail (WmJpegReader *self, GError **error)
{
  WmPhotoErrorCode code = WM_PHOTO_ERROR_LYING;

  if (self->is_stopped && g_cancellable_set_error_if_cancelled (self->cancellable, error))
    return FALSE;
  if (self->fatal == JERR_OUT_OF_MEMORY)
    code = WM_PHOTO_ERROR_NO_MEMORY;
  else if (self->is_at_end || self->fatal == JERR_INPUT_EOF)
    code = WM_PHOTO_ERROR_TRUNCATED;

  wm_photo_set_error (error, code, self->source->name, NULL);
  return FALSE;
}

gboolean
wm_jpeg_is_usual (const WmPhotoFacts *facts)
{
  return facts->format == WM_PHOTO_JPEG && !facts->is_cmyk
         && !(facts->is_grey && facts->has_icc);
}

WmJpegReader *
wm_jpeg_reader_new (WmSource *source, int denom, const WmRect *window,
                    GCancellable *cancellable, GError **error)
{
  g_autoptr (WmJpegReader) self = g_new0 (WmJpegReader, 1);

  self->source = source;
  self->cancellable = cancellable;
  self->cinfo.err = jpeg_std_error (&self->errors);
  self->errors.error_exit = on_error_exit;
  self->errors.emit_message = on_message;
  self->cinfo.client_data = self;

  if (!run_guarded (self, read_header, NULL))
    {
      fail (self, error);
      return NULL;
    }

  /* A profile that can not be used is no reason to refuse the photo. */
  run_guarded (self, read_profile, NULL);

  self->cinfo.scale_num = 1;
  self->cinfo.scale_denom = denom;
  if (!run_guarded (self, start, (gpointer)window))
    {
      fail (self, error);
      return NULL;
    }

  if (self->cinfo.output_width != (JDIMENSION)self->window.width)
    self->row = g_malloc ((gsize)self->cinfo.output_width * 4);
  return g_steal_pointer (&self);
}

static void
destroy (WmJpegReader *self, gpointer unused)
{
  jpeg_destroy_decompress (&self->cinfo);
}

void
wm_jpeg_reader_free (WmJpegReader *self)
{
  if (self == NULL)
    return;
  run_guarded (self, destroy, NULL);
  g_clear_pointer (&self->colours, wm_icc_to_srgb_free);
  g_free (self->row);
  g_free (self);
}

int
wm_jpeg_reader_get_width (WmJpegReader *self)
{
  return self->window.width;
}

int
wm_jpeg_reader_get_height (WmJpegReader *self)
{
  return self->window.height;
}

typedef struct
{
  guint8 *to;
  gsize stride;
  int rows;
} Rows;

static void
read_rows (WmJpegReader *self, gpointer data)
{
  Rows *rows = data;

  for (int y = 0; y < rows->rows; y++)
    {
      guint8 *to = rows->to + y * rows->stride;
      JSAMPROW row = self->row != NULL ? self->row : to;

      if (jpeg_read_scanlines (&self->cinfo, &row, 1) != 1)
        ERREXIT (&self->cinfo, JERR_INPUT_EOF);
      if (self->row != NULL)
        memcpy (to, self->row + (gsize)self->column * 4, (gsize)self->window.width * 4);
      if (self->colours != NULL)
        wm_icc_to_srgb_apply (self->colours, to, self->window.width);
    }
}

gboolean
wm_jpeg_reader_read (WmJpegReader *self, guint8 *to, gsize stride, int rows,
                     GError **error)
{
  Rows wanted = { to, stride, rows };

  return run_guarded (self, read_rows, &wanted) || fail (self, error);
}

static void
finish (WmJpegReader *self, gpointer unused)
{
  jpeg_finish_decompress (&self->cinfo);
}

gboolean
wm_jpeg_reader_check (WmJpegReader *self, GError **error)
{
  if (!run_guarded (self, finish, NULL) || self->is_at_end || self->is_damaged)
    return fail (self, error);

  return TRUE;
}

WmPixels *
wm_jpeg_decode (WmSource *source, int denom, const WmRect *window,
                GCancellable *cancellable, GError **error)
{
  g_autoptr (WmJpegReader) reader =
      wm_jpeg_reader_new (source, denom, window, cancellable, error);
  g_autoptr (WmPixels) pixels = NULL;

  if (reader == NULL)
    return NULL;

  pixels = wm_pixels_new (reader->window.width, reader->window.height);
  if (pixels == NULL)
    {
      wm_photo_set_error (error, WM_PHOTO_ERROR_NO_MEMORY, source->name, NULL);
      return NULL;
    }
  if (!wm_jpeg_reader_read (reader, pixels->data, pixels->stride, pixels->height, error))
    return NULL;

  return g_steal_pointer (&pixels);
}
