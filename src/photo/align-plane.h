/* align-plane.h: one grey plane of a photo and its pyramid
 *
 * Private to the alignment. Coordinates are continuous pixels (the middle of
 * the first pixel is 0.5, 0.5), so that a place at half size is simply half.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

#include "photo/align.h"

/* Levels of the pyramid: 1600, 800, 400, 200 and 100 pixels long. */
#define WM_PLANE_LEVELS 5

typedef struct
{
  int width;
  int height;
  float *v; /* width x height, row by row; owned */
} WmPlane;

/**
 * WmPhotoPlanes:
 * @grey: luma 0 to 255, level 0 at the working size, each next one half
 * @red, @green, @blue: means at level 2, 0 to 255 (NULL for a grey photo)
 * @factor: pixels of the photo given per pixel of level 0, 1 or more
 */
typedef struct
{
  WmPlane *grey[WM_PLANE_LEVELS];
  WmPlane *red;
  WmPlane *green;
  WmPlane *blue;
  double factor;
} WmPhotoPlanes;

WmPlane *wm_plane_new (int width, int height); /* zeroed */
void wm_plane_free (WmPlane *plane);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (WmPlane, wm_plane_free)

/* Mean over 2x2 pixels; an odd last row or column is left out. */
WmPlane *wm_plane_halve (const WmPlane *plane);

/* Gauss, @sigma in pixels, edges repeated. */
WmPlane *wm_plane_blur (const WmPlane *plane, float sigma);

/* Whole factor by which @image is reduced before the work, 1 or more. */
int wm_photo_planes_reduction (const WmAlignImage *image);

/* The same into @out, which has the size of @plane, by way of @scratch (as large);
 * spares the pages of new planes, which cost as much as the blur. */
void
wm_plane_blur_into (const WmPlane *plane, float sigma, WmPlane *scratch, WmPlane *out);

/* All planes of @image, reduced to WM_ALIGN_WORK_PX; NULL if it has no pixels. */
WmPhotoPlanes *wm_photo_planes_new (const WmAlignImage *image);
void wm_photo_planes_free (WmPhotoPlanes *planes);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (WmPhotoPlanes, wm_photo_planes_free)

/* Bilinear between pixel middles; @x, @y are held inside the plane. */
static inline float
wm_plane_sample (const WmPlane *plane, float x, float y)
{
  float px = CLAMP (x - 0.5f, 0.0f, (float)plane->width - 1.001f);
  float py = CLAMP (y - 0.5f, 0.0f, (float)plane->height - 1.001f);
  int ix = (int)px;
  int iy = (int)py;
  float fx = px - (float)ix;
  float fy = py - (float)iy;
  const float *a = plane->v + (gsize)iy * (gsize)plane->width + ix;
  const float *b = a + plane->width;

  return (1.0f - fy) * (a[0] + fx * (a[1] - a[0])) + fy * (b[0] + fx * (b[1] - b[0]));
}

/* Kernels that gain from wider registers are also compiled for them and
 * chosen when the program starts. Not under the address sanitizer, which is
 * not ready yet when that choice is made. */
#if defined(__x86_64__) && defined(__GNUC__) && !defined(__clang__)                      \
    && !defined(__SANITIZE_ADDRESS__)
#  define WM_FAST_KERNEL __attribute__ ((target_clones ("arch=x86-64-v3", "default")))
#else
#  define WM_FAST_KERNEL
#endif
