/* jpeg-transcode.c: the same JPEG with a restart at every row of blocks
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/jpeg-transcode.h"

#include <setjmp.h>
#include <stdio.h>

#include <jpeglib.h>

#include <jerror.h>

/* As jpeg-read.c: a picture of endless scans is refused. */
#define MAX_SCANS 100

typedef struct
{
  struct jpeg_decompress_struct from;
  struct jpeg_compress_struct to;
  struct jpeg_error_mgr errors;
  struct jpeg_progress_mgr progress;
  jmp_buf jump;
  GBytes *input;
  GCancellable *cancellable;
  unsigned char *out;
  unsigned long size;
  gboolean is_damaged;
} Transcoder;

static void
on_error_exit (j_common_ptr cinfo)
{
  Transcoder *self = cinfo->client_data;

  longjmp (self->jump, 1);
}

static void
on_message (j_common_ptr cinfo, int level)
{
  Transcoder *self = cinfo->client_data;

  /* Strips of a damaged picture would hide where the damage is: not made. */
  if (level < 0 && cinfo->err->msg_code != JWRN_EXTRANEOUS_DATA)
    self->is_damaged = TRUE;
}

static void
on_progress (j_common_ptr cinfo)
{
  Transcoder *self = cinfo->client_data;

  if (g_cancellable_is_cancelled (self->cancellable)
      || (cinfo->is_decompressor && self->from.input_scan_number > MAX_SCANS))
    longjmp (self->jump, 1);
}

static void
copy_profile (Transcoder *self)
{
  for (jpeg_saved_marker_ptr m = self->from.marker_list; m != NULL; m = m->next)
    if (m->data_length > 14 && memcmp (m->data, "ICC_PROFILE", 12) == 0)
      jpeg_write_marker (&self->to, JPEG_APP0 + 2, m->data, m->data_length);
}

static void
transcode (Transcoder *self)
{
  jvirt_barray_ptr *coefficients;
  gsize size;
  const void *data = g_bytes_get_data (self->input, &size);

  jpeg_create_decompress (&self->from);
  self->from.client_data = self;
  self->from.progress = &self->progress;
  jpeg_create_compress (&self->to);
  self->to.client_data = self;
  self->to.progress = &self->progress;

  jpeg_mem_src (&self->from, data, size);
  jpeg_save_markers (&self->from, JPEG_APP0 + 2, 0xFFFF);
  jpeg_read_header (&self->from, TRUE);
  coefficients = jpeg_read_coefficients (&self->from);

  jpeg_copy_critical_parameters (&self->from, &self->to);
  self->to.arith_code = FALSE;
  self->to.restart_in_rows = 1;
  jpeg_mem_dest (&self->to, &self->out, &self->size);
  jpeg_write_coefficients (&self->to, coefficients);
  copy_profile (self);
  jpeg_finish_compress (&self->to);
  jpeg_finish_decompress (&self->from);
}

static gboolean
run (Transcoder *self)
{
  if (setjmp (self->jump) != 0)
    return FALSE;

  transcode (self);
  return TRUE;
}

static GBytes *
read_all (WmSource *source, GError **error)
{
  guint8 *data;

  if (source->bytes != NULL)
    return g_bytes_ref (source->bytes);

  data = g_try_malloc ((gsize)source->size);
  if (data == NULL)
    {
      wm_photo_set_error (error, WM_PHOTO_ERROR_NO_MEMORY, source->name, NULL);
      return NULL;
    }
  return g_bytes_new_take (data, wm_source_read (source, 0, data, (gsize)source->size));
}

GBytes *
wm_jpeg_with_restarts (WmSource *jpeg, GCancellable *cancellable, GError **error)
{
  g_autoptr (GBytes) input = read_all (jpeg, error);
  Transcoder transcoder = { .input = input, .cancellable = cancellable };
  gboolean done;

  if (input == NULL)
    return NULL;

  transcoder.from.err = transcoder.to.err = jpeg_std_error (&transcoder.errors);
  transcoder.errors.error_exit = on_error_exit;
  transcoder.errors.emit_message = on_message;
  transcoder.progress.progress_monitor = on_progress;
  transcoder.from.client_data = transcoder.to.client_data = &transcoder;

  done = run (&transcoder);
  jpeg_destroy_compress (&transcoder.to);
  jpeg_destroy_decompress (&transcoder.from);

  if (done && !transcoder.is_damaged)
    return g_bytes_new_with_free_func (transcoder.out, transcoder.size, free,
                                       transcoder.out);

  free (transcoder.out);
  if (!g_cancellable_set_error_if_cancelled (cancellable, error))
    wm_photo_set_error (error, WM_PHOTO_ERROR_LYING, jpeg->name, NULL);
  return NULL;
}
