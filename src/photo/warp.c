/* warp.c: the after photo drawn in the frame of the before photo
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/warp.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n.h>

#include "photo/align-matrix.h"
#include "photo/atomic-file.h"
#include "photo/load.h"
#include "photo/png-stream.h"

/* Samples along each side of a pixel, at most: enough to show the after photo at
 * an eighth of its size without flicker. */
#define MOST_SAMPLES 8

/* Rows written at a time, so that memory does not grow with the photo. */
#define STRIP 128

/* The after photo is held whole while it is written: 400 MB. */
#define MOST_PIXELS 100e6

/* Adds the four bytes at (x, y), bilinear, times 65536; FALSE outside. */
static inline gboolean
add_sample (const WmPixels *p, double x, double y, guint32 sum[4])
{
  double px = x - 0.5, py = y - 0.5;
  int ix, iy, fx, fy, right;
  const guint8 *a, *b;

  if (!(x >= 0) || !(y >= 0) || x > p->width || y > p->height)
    return FALSE;
  px = CLAMP (px, 0, p->width - 1);
  py = CLAMP (py, 0, p->height - 1);
  ix = (int)px;
  iy = (int)py;
  fx = (int)((px - ix) * 256);
  fy = (int)((py - iy) * 256);
  a = p->data + (gsize)iy * p->stride + (gsize)ix * 4;
  b = iy + 1 < p->height ? a + p->stride : a;
  right = ix + 1 < p->width ? 4 : 0;
  for (int k = 0; k < 4; k++)
    sum[k] += (guint32)((256 - fy) * ((256 - fx) * a[k] + fx * a[k + right])
                        + fy * ((256 - fx) * b[k] + fx * b[k + right]));
  return TRUE;
}

/* One pixel whose top left corner is (x, y) in units of the result. */
static void
warp_pixel (const WmPixels *after, const double m[9], int x, int y, int samples,
            guint8 *out)
{
  guint64 total[4] = { 0 };
  guint64 divide = (guint64)(samples * samples) * 65536;

  for (int j = 0; j < samples; j++)
    {
      guint32 sum[4] = { 0 };
      double v = y + (j + 0.5) / samples;

      for (int i = 0; i < samples; i++)
        {
          double u = x + (i + 0.5) / samples;
          double w = m[6] * u + m[7] * v + m[8];

          if (w > 1e-9)
            add_sample (after, (m[0] * u + m[1] * v + m[2]) / w,
                        (m[3] * u + m[4] * v + m[5]) / w, sum);
        }
      for (int k = 0; k < 4; k++)
        total[k] += sum[k];
    }
  for (int k = 0; k < 4; k++)
    out[k] = (guint8)((total[k] + divide / 2) / divide);
}

/* How many samples a side the smallest detail of @after asks for. */
static int
count_samples (const double m[9], int width, int height)
{
  double most = 0;

  for (int k = 0; k < 5; k++)
    {
      WmPoint at = { width * (k == 4 ? 0.5 : k & 1), height * (k == 4 ? 0.5 : k >> 1) };

      most = fmax (most, fabs (wm_matrix_scale_at (m, at)));
    }
  return (int)CLAMP (ceil (most - 0.25), 1, MOST_SAMPLES);
}

WmPixels *
wm_warp_region (const WmPixels *after, double after_scale, const double matrix[9],
                double x_img_px, double y_img_px, double scale, int width, int height)
{
  double inverse[9], m[9];
  double place[9] = { scale, 0, x_img_px, 0, scale, y_img_px, 0, 0, 1 };
  double shrink[9] = { 1 / after_scale, 0, 0, 0, 1 / after_scale, 0, 0, 0, 1 };
  WmPixels *out;
  int samples;

  if (!(scale > 0) || !(after_scale > 0) || !isfinite (x_img_px) || !isfinite (y_img_px)
      || !wm_align_invert (matrix, inverse))
    return NULL;
  /* result pixels to pixels of @after */
  wm_matrix_multiply (inverse, place, m);
  wm_matrix_multiply (shrink, m, m);
  out = wm_pixels_new (width, height);
  if (out == NULL)
    return NULL;
  samples = count_samples (m, width, height);
  for (int y = 0; y < height; y++)
    for (int x = 0; x < width; x++)
      warp_pixel (after, m, x, y, samples,
                  out->data + (gsize)y * out->stride + (gsize)x * 4);
  return out;
}

/* Premultiplied pixels laid on white. */
static void
lay_on_white (WmPixels *pixels)
{
  for (int y = 0; y < pixels->height; y++)
    {
      guint8 *p = pixels->data + (gsize)y * pixels->stride;

      for (int x = 0; x < pixels->width; x++, p += 4)
        {
          for (int k = 0; k < 3; k++)
            p[k] = (guint8)MIN (p[k] + 255 - p[3], 255);
          p[3] = 255;
        }
    }
}

static gboolean
write_strips (const WmPixels *after, double after_scale, const double matrix[9],
              int width, int height, WmPngStream *png, GCancellable *cancellable,
              GError **error)
{
  for (int y = 0; y < height; y += STRIP)
    {
      int rows = MIN (STRIP, height - y);
      g_autoptr (WmPixels) strip = NULL;

      if (g_cancellable_set_error_if_cancelled (cancellable, error))
        return FALSE;
      strip = wm_warp_region (after, after_scale, matrix, 0, y, 1, width, rows);
      if (strip == NULL)
        {
          g_set_error_literal (
              error, WM_PHOTO_ERROR, WM_PHOTO_ERROR_NO_MEMORY,
              _ ("The aligned photo could not be drawn: not enough memory, or"
                 " the photos can not be laid on each other. Close other"
                 " programs or align the two photos again."));
          return FALSE;
        }
      lay_on_white (strip);
      if (!wm_png_stream_write (png, strip->data, strip->stride, rows, error))
        return FALSE;
    }
  return wm_png_stream_finish (png, error);
}

gboolean
wm_warp_photo (const char *before_path, const char *after_path, const double matrix[9],
               const char *png_path, GCancellable *cancellable, GError **error)
{
  g_autoptr (WmPhotoFacts) before = wm_photo_probe_file (before_path, error);
  g_autoptr (WmPhotoFacts) facts = NULL;
  g_autoptr (WmPixels) after = NULL;
  g_autoptr (WmAtomicFile) file = NULL;
  g_autoptr (WmPngStream) png = NULL;
  double shrink;

  if (before == NULL)
    return FALSE;
  facts = wm_photo_probe_file (after_path, error);
  if (facts == NULL)
    return FALSE;
  shrink = fmin (1, sqrt (MOST_PIXELS / ((double)facts->width * facts->height)));
  after = wm_photo_load_fit (after_path, (int)fmax (1, facts->width * shrink),
                             (int)fmax (1, facts->height * shrink), cancellable, error);
  if (after == NULL)
    return FALSE;

  file = wm_atomic_file_new (png_path, error);
  if (file == NULL)
    return FALSE;
  png = wm_png_stream_new (file->stream, NULL, before->width, before->height, NULL, 0,
                           file->name, error);
  return png != NULL
         && write_strips (after, (double)facts->width / after->width, matrix,
                          before->width, before->height, png, cancellable, error)
         && wm_atomic_file_commit (file, TRUE, error);
}
