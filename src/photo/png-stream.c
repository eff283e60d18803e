/* png-stream.c: rows into a PNG
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/png-stream.h"

#include "photo/source.h"

#include "wearmark-config.h"

#include <errno.h>
#include <math.h>
#include <png.h>
#include <setjmp.h>
#include <string.h>

/* Measured on a marked 12-megapixel photo: an eighth of the time of libpng's
 * default for a tenth more bytes (tests/photo/test-png-write.c repeats it). */
#define LEVEL 1
#define FILTER PNG_FILTER_SUB

#define MAX_TEXTS 8

struct _WmPngStream
{
  png_structp png;
  png_infop info;
  FILE *file;
  GByteArray *bytes;
  char *name;
  jmp_buf jump;
  int error_number;
};

typedef void (*Work) (WmPngStream *self, gconstpointer data);

/* libpng leaves on errors by longjmp (): everything that calls it runs in here. */
static gboolean
run_guarded (WmPngStream *self, Work work, gconstpointer data)
{
  if (setjmp (self->jump) != 0)
    return FALSE;

  work (self, data);
  return TRUE;
}

static void
on_error (png_structp png, png_const_charp message)
{
  WmPngStream *self = png_get_error_ptr (png);

  longjmp (self->jump, 1);
}

static void
on_warning (png_structp png, png_const_charp message)
{
}

static void
on_write (png_structp png, png_bytep data, png_size_t length)
{
  WmPngStream *self = png_get_io_ptr (png);

  if (self->file == NULL)
    g_byte_array_append (self->bytes, data, (guint)length);
  else if (fwrite (data, 1, length, self->file) != length)
    {
      self->error_number = errno;
      png_error (png, "write");
    }
}

static void
on_flush (png_structp png)
{
}

static gboolean
fail (WmPngStream *self, GError **error)
{
  wm_photo_set_errno (error, self->error_number != 0 ? self->error_number : ENOMEM,
                      self->name);
  return FALSE;
}

static void
add_text (png_text *texts, int *count, const char *keyword, const char *text)
{
  png_text *at = &texts[*count];

  if (text == NULL || *text == '\0')
    return;

  at->key = (char *)keyword;
  at->text = (char *)text;
  at->compression = PNG_TEXT_COMPRESSION_NONE;
  if (!g_str_is_ascii (text))
    {
      at->compression = PNG_ITXT_COMPRESSION_NONE;
      at->lang = (char *)"";
      at->lang_key = (char *)"";
    }
  (*count)++;
}

static char *
format_created (const WmPngNote *note)
{
  g_autoptr (GDateTime) when = NULL;

  if (!note->has_created)
    return NULL;
  when = g_date_time_new_from_unix_utc (note->created_us / G_USEC_PER_SEC);
  return when == NULL ? NULL : g_date_time_format (when, "%Y-%m-%dT%H:%M:%SZ");
}

typedef struct
{
  int width, height;
  const WmPngNote *note;
  const char *created;
  double mm_per_px;
} Header;

static void
write_header (WmPngStream *self, gconstpointer data)
{
  const Header *header = data;
  png_text texts[MAX_TEXTS];
  int count = 0;

  memset (texts, 0, sizeof texts);

  /* Our own limit, not libpng's of a million: pictures may be long and narrow. */
  png_set_user_limits (self->png, 0x7fffffff, 0x7fffffff);
  png_set_write_fn (self->png, self, on_write, on_flush);
  png_set_compression_level (self->png, LEVEL);
  png_set_filter (self->png, PNG_FILTER_TYPE_BASE, FILTER);

  png_set_IHDR (self->png, self->info, (png_uint_32)header->width,
                (png_uint_32)header->height, 8, PNG_COLOR_TYPE_RGB, PNG_INTERLACE_NONE,
                PNG_COMPRESSION_TYPE_DEFAULT, PNG_FILTER_TYPE_DEFAULT);
  png_set_sRGB_gAMA_and_cHRM (self->png, self->info, PNG_sRGB_INTENT_PERCEPTUAL);
  if (header->mm_per_px > 0)
    {
      png_uint_32 per_metre = (png_uint_32)lround (1000.0 / header->mm_per_px);

      png_set_pHYs (self->png, self->info, per_metre, per_metre, PNG_RESOLUTION_METER);
    }

  if (header->note != NULL)
    {
      add_text (texts, &count, "Title", header->note->title);
      add_text (texts, &count, "Source", header->note->source);
      add_text (texts, &count, "Description", header->note->description);
      add_text (texts, &count, "Comment", header->note->comment);
      add_text (texts, &count, "Creation Time", header->created);
    }
  add_text (texts, &count, "Software",
            header->note != NULL && header->note->software != NULL
                ? header->note->software
                : "Wearmark " WM_VERSION);
  png_set_text (self->png, self->info, texts, count);

  png_write_info (self->png, self->info);
  png_set_bgr (self->png);
  png_set_filler (self->png, 0, PNG_FILLER_AFTER);
}

WmPngStream *
wm_png_stream_new (FILE *file, GByteArray *bytes, int width, int height,
                   const WmPngNote *note, double out_mm_per_px, const char *name,
                   GError **error)
{
  g_autoptr (WmPngStream) self = g_new0 (WmPngStream, 1);
  g_autofree char *created = note != NULL ? format_created (note) : NULL;
  Header header = { width, height, note, created, out_mm_per_px };

  self->file = file;
  self->bytes = bytes;
  self->name = g_strdup (name);
  self->png = png_create_write_struct (PNG_LIBPNG_VER_STRING, self, on_error, on_warning);
  if (self->png != NULL)
    self->info = png_create_info_struct (self->png);
  if (self->info == NULL || !run_guarded (self, write_header, &header))
    {
      fail (self, error);
      return NULL;
    }

  return g_steal_pointer (&self);
}

typedef struct
{
  const guint8 *rows;
  gsize stride;
  int count;
} Rows;

static void
write_rows (WmPngStream *self, gconstpointer data)
{
  const Rows *rows = data;

  for (int y = 0; y < rows->count; y++)
    png_write_row (self->png, rows->rows + y * rows->stride);
}

static void
write_end (WmPngStream *self, gconstpointer unused)
{
  png_write_end (self->png, self->info);
}

gboolean
wm_png_stream_write (WmPngStream *self, const guint8 *rows, gsize stride, int count,
                     GError **error)
{
  Rows wanted = { rows, stride, count };

  return run_guarded (self, write_rows, &wanted) || fail (self, error);
}

gboolean
wm_png_stream_finish (WmPngStream *self, GError **error)
{
  return run_guarded (self, write_end, NULL) || fail (self, error);
}

void
wm_png_stream_free (WmPngStream *self)
{
  if (self == NULL)
    return;
  png_destroy_write_struct (&self->png, &self->info);
  g_free (self->name);
  g_free (self);
}
