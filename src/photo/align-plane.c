/* align-plane.c: one grey plane of a photo and its pyramid
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/align-plane.h"

#include <math.h>
#include <string.h>

/* Luma weights of ITU-R BT.601, in 1/256. */
#define RED_256 77
#define GREEN_256 150
#define BLUE_256 29

/* Level 2 has one pixel for 4 x 4 of level 0. */
#define COLOUR_BLOCK 4

WmPlane *
wm_plane_new (int width, int height)
{
  WmPlane *plane = g_new (WmPlane, 1);

  plane->width = width;
  plane->height = height;
  plane->v = g_new0 (float, (gsize)width *(gsize)height);
  return plane;
}

void
wm_plane_free (WmPlane *plane)
{
  if (plane == NULL)
    return;
  g_free (plane->v);
  g_free (plane);
}

WM_FAST_KERNEL static void
halve_row (const float *a, const float *b, float *out, int n)
{
  for (int x = 0; x < n; x++)
    out[x] = 0.25f * (a[2 * x] + a[2 * x + 1] + b[2 * x] + b[2 * x + 1]);
}

WmPlane *
wm_plane_halve (const WmPlane *plane)
{
  WmPlane *half = wm_plane_new (MAX (plane->width / 2, 1), MAX (plane->height / 2, 1));

  if (plane->width < 2 || plane->height < 2)
    {
      half->v[0] = plane->v[0];
      return half;
    }
  for (int y = 0; y < half->height; y++)
    {
      const float *row = plane->v + (gsize)(2 * y) * (gsize)plane->width;

      halve_row (row, row + plane->width, half->v + (gsize)y * (gsize)half->width,
                 half->width);
    }
  return half;
}

WM_FAST_KERNEL static void
blur_line (const float *padded, const float *kernel, int radius, float *out, int n)
{
  for (int x = 0; x < n; x++)
    out[x] = kernel[0] * padded[x + radius];
  for (int k = 1; k <= radius; k++)
    for (int x = 0; x < n; x++)
      out[x] += kernel[k] * (padded[x + radius - k] + padded[x + radius + k]);
}

/* @rows: the 2 radius + 1 rows that meet in this one */
WM_FAST_KERNEL static void
blur_across (const float *const *rows, const float *kernel, int radius, float *out, int n)
{
  const float *middle = rows[radius];

  for (int x = 0; x < n; x++)
    out[x] = kernel[0] * middle[x];
  for (int k = 1; k <= radius; k++)
    {
      const float *a = rows[radius - k];
      const float *b = rows[radius + k];

      for (int x = 0; x < n; x++)
        out[x] += kernel[k] * (a[x] + b[x]);
    }
}

static int
make_kernel (float sigma, float *kernel, int most)
{
  int radius = CLAMP ((int)ceilf (3.0f * sigma), 1, most);
  float sum = 0.0f;

  for (int k = 0; k <= radius; k++)
    {
      kernel[k] = expf (-0.5f * (float)(k * k) / (sigma * sigma));
      sum += k == 0 ? kernel[k] : 2.0f * kernel[k];
    }
  for (int k = 0; k <= radius; k++)
    kernel[k] /= sum;
  return radius;
}

#define MAX_RADIUS 24

WmPlane *
wm_plane_blur (const WmPlane *plane, float sigma)
{
  g_autoptr (WmPlane) scratch = wm_plane_new (plane->width, plane->height);
  WmPlane *out = wm_plane_new (plane->width, plane->height);

  wm_plane_blur_into (plane, sigma, scratch, out);
  return out;
}

void
wm_plane_blur_into (const WmPlane *plane, float sigma, WmPlane *scratch, WmPlane *out)
{
  int w = plane->width;
  int h = plane->height;
  float kernel[MAX_RADIUS + 1];
  int radius = make_kernel (sigma, kernel, MAX_RADIUS);
  g_autofree float *padded = g_new (float, (gsize)w + 2 * MAX_RADIUS);

  for (int y = 0; y < h; y++)
    {
      const float *row = plane->v + (gsize)y * (gsize)w;

      for (int k = 0; k < radius; k++)
        {
          padded[k] = row[0];
          padded[radius + w + k] = row[w - 1];
        }
      memcpy (padded + radius, row, sizeof (float) * (gsize)w);
      blur_line (padded, kernel, radius, scratch->v + (gsize)y * (gsize)w, w);
    }
  for (int y = 0; y < h; y++)
    {
      const float *rows[2 * MAX_RADIUS + 1];

      for (int k = -radius; k <= radius; k++)
        rows[radius + k] = scratch->v + (gsize)CLAMP (y + k, 0, h - 1) * (gsize)w;
      blur_across (rows, kernel, radius, out->v + (gsize)y * (gsize)w, w);
    }
}

WM_FAST_KERNEL static void
luma_row (const guint8 *row, int bands, float *out, int n)
{
  if (bands == 1)
    for (int x = 0; x < n; x++)
      out[x] = (float)row[x];
  else if (bands == 3)
    for (int x = 0; x < n; x++)
      out[x] = (float)(RED_256 * row[3 * x] + GREEN_256 * row[3 * x + 1]
                       + BLUE_256 * row[3 * x + 2])
               * (1.0f / 256.0f);
  else
    for (int x = 0; x < n; x++)
      out[x] = (float)(BLUE_256 * row[4 * x] + GREEN_256 * row[4 * x + 1]
                       + RED_256 * row[4 * x + 2])
               * (1.0f / 256.0f);
}

static void
add_colour_row (const guint8 *row, int bands, float *sum, int blocks)
{
  int red = bands == 4 ? 2 : 0;

  for (int b = 0; b < blocks; b++)
    {
      const guint8 *p = row + (gsize)b * COLOUR_BLOCK * (gsize)bands;
      int r = 0, g = 0, u = 0;

      /* every second pixel is enough for a mean colour */
      for (int x = 0; x < COLOUR_BLOCK; x += 2, p += 2 * bands)
        {
          r += p[red];
          g += p[1];
          u += p[2 - red];
        }
      sum[3 * b] += (float)r;
      sum[3 * b + 1] += (float)g;
      sum[3 * b + 2] += (float)u;
    }
}

static void
make_colours (WmPhotoPlanes *planes, const WmAlignImage *image)
{
  int w = MAX (image->width / COLOUR_BLOCK, 1);
  int h = MAX (image->height / COLOUR_BLOCK, 1);
  g_autofree float *sum = g_new (float, 3 * (gsize)w);

  if (image->bands < 3 || image->width < COLOUR_BLOCK || image->height < COLOUR_BLOCK)
    return;

  planes->red = wm_plane_new (w, h);
  planes->green = wm_plane_new (w, h);
  planes->blue = wm_plane_new (w, h);
  for (int y = 0; y < h; y++)
    {
      gsize at = (gsize)y * (gsize)w;

      memset (sum, 0, sizeof (float) * 3 * (gsize)w);
      for (int k = 0; k < COLOUR_BLOCK; k += 2)
        add_colour_row (image->pixels + (gsize)(y * COLOUR_BLOCK + k) * image->stride,
                        image->bands, sum, w);
      for (int x = 0; x < w; x++)
        {
          planes->red->v[at + (gsize)x] = sum[3 * x] / 4.0f;
          planes->green->v[at + (gsize)x] = sum[3 * x + 1] / 4.0f;
          planes->blue->v[at + (gsize)x] = sum[3 * x + 2] / 4.0f;
        }
    }
}

/* A copy of @image reduced by the whole factor @by, mean over the pixels. */
static guint8 *
reduce_image (const WmAlignImage *image, int by, WmAlignImage *out)
{
  int w = image->width / by;
  int h = image->height / by;
  int bands = image->bands;
  guint8 *pixels = g_malloc ((gsize)w * (gsize)h * (gsize)bands);
  unsigned area = (unsigned)(by * by);

  for (int y = 0; y < h; y++)
    for (int x = 0; x < w; x++)
      for (int b = 0; b < bands; b++)
        {
          unsigned sum = area / 2;

          for (int j = 0; j < by; j++)
            {
              const guint8 *p = image->pixels + (gsize)(y * by + j) * image->stride
                                + (gsize)(x * by) * (gsize)bands + b;
              for (int i = 0; i < by; i++)
                sum += p[(gsize)i * (gsize)bands];
            }
          pixels[((gsize)y * (gsize)w + (gsize)x) * (gsize)bands + (gsize)b] =
              (guint8)(sum / area);
        }
  *out = (WmAlignImage) { pixels, w, h, (gsize)w * (gsize)bands, bands };
  return pixels;
}

int
wm_photo_planes_reduction (const WmAlignImage *image)
{
  /* up to a quarter over the working size is worked on as it is */
  int most = WM_ALIGN_WORK_PX * 5 / 4;

  return MAX ((MAX (image->width, image->height) + most - 1) / most, 1);
}

WmPhotoPlanes *
wm_photo_planes_new (const WmAlignImage *image)
{
  WmPhotoPlanes *planes;
  WmAlignImage work = *image;
  g_autofree guint8 *reduced = NULL;
  int by = wm_photo_planes_reduction (image);

  if (image->pixels == NULL || image->width < 1 || image->height < 1
      || (image->bands != 1 && image->bands != 3 && image->bands != 4))
    return NULL;
  if (by > 1 && MIN (image->width, image->height) >= by)
    reduced = reduce_image (image, by, &work);
  else
    by = 1;

  planes = g_new0 (WmPhotoPlanes, 1);
  planes->factor = by;
  planes->grey[0] = wm_plane_new (work.width, work.height);
  for (int y = 0; y < work.height; y++)
    luma_row (work.pixels + (gsize)y * work.stride, work.bands,
              planes->grey[0]->v + (gsize)y * (gsize)work.width, work.width);
  for (int k = 1; k < WM_PLANE_LEVELS; k++)
    planes->grey[k] = wm_plane_halve (planes->grey[k - 1]);
  make_colours (planes, &work);
  return planes;
}

void
wm_photo_planes_free (WmPhotoPlanes *planes)
{
  if (planes == NULL)
    return;
  for (int k = 0; k < WM_PLANE_LEVELS; k++)
    wm_plane_free (planes->grey[k]);
  wm_plane_free (planes->red);
  wm_plane_free (planes->green);
  wm_plane_free (planes->blue);
  g_free (planes);
}
