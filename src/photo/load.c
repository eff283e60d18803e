/* load.c: pictures decoded into pixels
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/load.h"

#include "photo/guard.h"
#include "photo/jpeg-read.h"
#include "photo/open.h"
#include "photo/orient.h"
#include "photo/photo-start.h"
#include "photo/probe-source.h"

#include <math.h>

#define MAX_OUT 16384

/* Photo px decoded round a region, so that smoothing at its edge sees what is
 * really there. */
#define REGION_MARGIN 8

static WmPixels *
finish_upright (WmPixels *stored, int orientation, const char *name, GError **error)
{
  WmPixels *upright;

  if (stored == NULL)
    return NULL;
  upright = wm_pixels_upright (stored, orientation);
  if (upright == NULL)
    wm_photo_set_error (error, WM_PHOTO_ERROR_NO_MEMORY, name, NULL);

  return upright;
}

static WmPixels *
scale_pixels (WmPixels *pixels, int width, int height, const char *name,
              GCancellable *cancellable, GError **error)
{
  g_autoptr (WmPixels) from = pixels;
  g_autoptr (WmVipsImage) image = NULL;

  if (from == NULL || (from->width == width && from->height == height))
    return g_steal_pointer (&from);

  image = wm_vips_scale_to (wm_pixels_to_vips (from), width, height, name, error);
  return image == NULL ? NULL : wm_vips_to_pixels (image, name, cancellable, error);
}

/* The stored picture at exactly this size. */
static WmPixels *
decode_to (WmSource *source, const WmPhotoFacts *facts, int width, int height,
           GCancellable *cancellable, GError **error)
{
  if (wm_jpeg_is_usual (facts))
    {
      int denom = 8;

      while (denom > 1
             && ((facts->coded_width - 1) / denom + 1 < width
                 || (facts->coded_height - 1) / denom + 1 < height))
        denom /= 2;
      return scale_pixels (wm_jpeg_decode (source, denom, NULL, cancellable, error),
                           width, height, source->name, cancellable, error);
    }
  else
    {
      g_autoptr (WmVipsImage) image =
          wm_photo_open_srgb (source, facts->format, FALSE, error);

      if (image != NULL)
        image = wm_vips_scale_to (g_steal_pointer (&image), width, height, source->name,
                                  error);
      return image == NULL ? NULL
                           : wm_vips_to_pixels (image, source->name, cancellable, error);
    }
}

static WmPixels *
load_scaled (WmSource *source, const WmPhotoFacts *facts, double scale,
             GCancellable *cancellable, GError **error)
{
  int width = MAX (1, (int)lround (facts->coded_width * scale));
  int height = MAX (1, (int)lround (facts->coded_height * scale));

  return finish_upright (decode_to (source, facts, width, height, cancellable, error),
                         facts->orientation, source->name, error);
}

static WmPixels *
load_fit (WmSource *source, int max_width, int max_height, GCancellable *cancellable,
          GError **error)
{
  g_autoptr (WmPhotoFacts) facts = wm_photo_probe_source (source, error);
  double scale;

  if (facts == NULL)
    return NULL;

  scale = MIN ((double)max_width / facts->width, (double)max_height / facts->height);
  return load_scaled (source, facts, MIN (scale, 1.0), cancellable, error);
}

WmPixels *
wm_photo_load_fit (const char *path, int max_width, int max_height,
                   GCancellable *cancellable, GError **error)
{
  g_autoptr (WmSource) source = wm_source_open (path, error);

  g_return_val_if_fail (max_width > 0 && max_height > 0, NULL);
  return source == NULL ? NULL
                        : load_fit (source, max_width, max_height, cancellable, error);
}

WmPixels *
wm_photo_load_bytes_fit (GBytes *bytes, const char *name, int max_width, int max_height,
                         GCancellable *cancellable, GError **error)
{
  g_autoptr (WmSource) source = wm_source_new_bytes (bytes, name, error);

  g_return_val_if_fail (max_width > 0 && max_height > 0, NULL);
  return source == NULL ? NULL
                        : load_fit (source, max_width, max_height, cancellable, error);
}

WmPixels *
wm_photo_load_about (const char *path, int long_side, GCancellable *cancellable,
                     GError **error)
{
  g_autoptr (WmSource) source = wm_source_open (path, error);
  g_autoptr (WmPhotoFacts) facts = NULL;
  int longest, denom = 1;

  if (source != NULL)
    facts = wm_photo_probe_source (source, error);
  if (facts == NULL)
    return NULL;

  longest = MAX (facts->width, facts->height);
  if (!wm_jpeg_is_usual (facts) || longest > long_side * 8 * G_SQRT2)
    return load_scaled (source, facts, MIN (1.0, (double)long_side / longest),
                        cancellable, error);

  while (denom < 8 && longest > long_side * denom * G_SQRT2)
    denom *= 2;
  return finish_upright (wm_jpeg_decode (source, denom, NULL, cancellable, error),
                         facts->orientation, source->name, error);
}

/* The stored pixels of a coded rectangle, scaled down by @denom (1, 2, 4, 8). */
static WmPixels *
decode_part (WmSource *source, const WmPhotoFacts *facts, WmRect coded, int denom,
             GCancellable *cancellable, GError **error)
{
  g_autoptr (WmVipsImage) image = NULL;
  VipsImage *part = NULL;

  if (wm_jpeg_is_usual (facts))
    {
      WmRect window = { coded.x / denom, coded.y / denom, (coded.width - 1) / denom + 1,
                        (coded.height - 1) / denom + 1 };

      return wm_jpeg_decode (source, denom, &window, cancellable, error);
    }

  image = wm_photo_open_srgb (source, facts->format, FALSE, error);
  if (image == NULL)
    return NULL;
  if (vips_extract_area (image, &part, coded.x, coded.y, coded.width, coded.height, NULL))
    {
      wm_vips_set_error (error, source->name, cancellable);
      return NULL;
    }

  g_object_unref (image);
  image = wm_vips_scale_to (part, (coded.width - 1) / denom + 1,
                            (coded.height - 1) / denom + 1, source->name, error);
  return image == NULL ? NULL
                       : wm_vips_to_pixels (image, source->name, cancellable, error);
}

/* Draws the wanted part of @part (which shows @whole of the photo) to its size. */
static WmPixels *
resample (WmPixels *part, WmRect whole, double x, double y, double width, double height,
          int out_width, int out_height)
{
  WmPixels *out = wm_pixels_new (out_width, out_height);
  cairo_surface_t *from, *to;
  cairo_pattern_t *pattern;
  cairo_matrix_t matrix;
  cairo_t *cr;

  if (out == NULL)
    return NULL;

  from = wm_pixels_get_surface (part);
  to = wm_pixels_get_surface (out);
  cr = cairo_create (to);
  pattern = cairo_pattern_create_for_surface (from);
  cairo_matrix_init_scale (&matrix, (double)part->width / whole.width,
                           (double)part->height / whole.height);
  cairo_matrix_translate (&matrix, x - whole.x, y - whole.y);
  cairo_matrix_scale (&matrix, width / out_width, height / out_height);
  cairo_pattern_set_matrix (pattern, &matrix);
  cairo_pattern_set_extend (pattern, CAIRO_EXTEND_PAD);
  cairo_pattern_set_filter (pattern,
                            matrix.xx < 1 ? CAIRO_FILTER_BEST : CAIRO_FILTER_GOOD);
  cairo_set_source (cr, pattern);
  cairo_set_operator (cr, CAIRO_OPERATOR_SOURCE);
  cairo_paint (cr);

  cairo_pattern_destroy (pattern);
  cairo_destroy (cr);
  cairo_surface_destroy (to);
  cairo_surface_destroy (from);
  return out;
}

/* The stored rectangle to decode for a region: grown by a margin and to multiples of
 * @denom; @whole says what of the upright photo it shows. */
static WmRect
frame_region (const WmPhotoFacts *facts, double x, double y, double width, double height,
              int denom, WmRect *whole)
{
  static const int inverse[9] = { 1, 1, 2, 3, 4, 5, 8, 7, 6 };
  int margin = REGION_MARGIN * denom;
  int left = MAX (0, (int)floor (x) - margin);
  int top = MAX (0, (int)floor (y) - margin);
  int right = MIN (facts->width, (int)ceil (x + width) + margin);
  int bottom = MIN (facts->height, (int)ceil (y + height) + margin);
  WmRect upright = { left, top, right - left, bottom - top };
  WmRect coded = wm_rect_to_coded (upright, facts->orientation, facts->coded_width,
                                   facts->coded_height);

  right = MIN (facts->coded_width, ((coded.x + coded.width - 1) / denom + 1) * denom);
  bottom = MIN (facts->coded_height, ((coded.y + coded.height - 1) / denom + 1) * denom);
  coded.x = coded.x / denom * denom;
  coded.y = coded.y / denom * denom;
  coded.width = right - coded.x;
  coded.height = bottom - coded.y;

  *whole =
      wm_rect_to_coded (coded, inverse[facts->orientation], facts->width, facts->height);
  return coded;
}

WmPixels *
wm_photo_load_region (const char *path, double x, double y, double width, double height,
                      int out_width, int out_height, GCancellable *cancellable,
                      GError **error)
{
  g_autoptr (WmSource) source = wm_source_open (path, error);
  g_autoptr (WmPhotoFacts) facts = NULL;
  g_autoptr (WmPixels) part = NULL;
  WmPixels *out;
  WmRect whole, coded;
  int denom = 1;

  g_return_val_if_fail (out_width > 0 && out_width <= MAX_OUT, NULL);
  g_return_val_if_fail (out_height > 0 && out_height <= MAX_OUT, NULL);

  if (source != NULL)
    facts = wm_photo_probe_source (source, error);
  if (facts == NULL)
    return NULL;

  width = MIN (x + width, facts->width) - MAX (x, 0);
  height = MIN (y + height, facts->height) - MAX (y, 0);
  x = MAX (x, 0);
  y = MAX (y, 0);
  if (!(width > 0 && height > 0))
    {
      wm_photo_set_error (error, WM_PHOTO_ERROR_LYING, source->name, NULL);
      return NULL;
    }

  while (denom < 8 && width / (denom * 2) >= out_width
         && height / (denom * 2) >= out_height)
    denom *= 2;
  coded = frame_region (facts, x, y, width, height, denom, &whole);

  part = finish_upright (decode_part (source, facts, coded, denom, cancellable, error),
                         facts->orientation, source->name, error);
  if (part == NULL)
    return NULL;

  out = resample (part, whole, x, y, width, height, out_width, out_height);
  if (out == NULL)
    wm_photo_set_error (error, WM_PHOTO_ERROR_NO_MEMORY, source->name, NULL);
  return out;
}

static int
ignore_region (VipsRegion *region, VipsRect *area, void *unused)
{
  return 0;
}

static void
on_check_progress (VipsImage *image, VipsProgress *progress, GCancellable *cancellable)
{
  if (g_cancellable_is_cancelled (cancellable))
    vips_image_set_kill (image, TRUE);
}

static gboolean
check_with_vips (WmSource *source, const WmPhotoFacts *facts, GCancellable *cancellable,
                 GError **error)
{
  g_autoptr (WmVipsImage) image = wm_photo_open (source, facts->format, TRUE, error);
  int failed;

  if (image == NULL)
    return FALSE;

  vips_image_set_progress (image, TRUE);
  g_signal_connect (image, "eval", G_CALLBACK (on_check_progress), cancellable);
  failed = vips_sink_disc (image, ignore_region, NULL);
  g_signal_handlers_disconnect_by_func (image, on_check_progress, cancellable);
  vips_image_set_progress (image, FALSE);
  if (failed)
    wm_vips_set_error (error, source->name, cancellable);

  return !failed;
}

static gboolean
check_jpeg (WmSource *source, GCancellable *cancellable, GError **error)
{
  /* At an eighth: every code is read, hardly any pixel is made. */
  g_autoptr (WmJpegReader) reader =
      wm_jpeg_reader_new (source, 8, NULL, cancellable, error);
  g_autofree guint8 *row = NULL;
  int height;

  if (reader == NULL)
    return FALSE;

  row = g_malloc ((gsize)wm_jpeg_reader_get_width (reader) * 4);
  height = wm_jpeg_reader_get_height (reader);
  for (int y = 0; y < height; y++)
    {
      if (g_cancellable_set_error_if_cancelled (cancellable, error)
          || !wm_jpeg_reader_read (reader, row, 0, 1, error))
        return FALSE;
    }

  return wm_jpeg_reader_check (reader, error);
}

gboolean
wm_photo_check_whole_here (const char *path, GCancellable *cancellable, GError **error)
{
  g_autoptr (WmSource) source = wm_source_open (path, error);
  g_autoptr (WmPhotoFacts) facts = NULL;

  if (source != NULL)
    facts = wm_photo_probe_source (source, error);
  if (facts == NULL)
    return FALSE;

  if (wm_jpeg_is_usual (facts))
    return check_jpeg (source, cancellable, error);

  return check_with_vips (source, facts, cancellable, error);
}

gboolean
wm_photo_check_whole (const char *path, GCancellable *cancellable, GError **error)
{
  gboolean was_read;
  gboolean is_whole = wm_guard_check (path, &was_read, cancellable, error);

  return was_read ? is_whole : wm_photo_check_whole_here (path, cancellable, error);
}
