/* span-profile.c: grey along a span, and the span snapped to the metal's edges
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/span-profile.h"

#include "photo/load.h"

#include <math.h>

/* Lines a pixel apart on either side of the span that are averaged: noise falls to less
 * than half, and an edge 20 degrees askew is smeared by under a pixel. */
#define LINES_EACH_SIDE 2

/* Beyond the reach the filter and the height of the step still look some way out. */
#define MARGIN_BEYOND_REACH 12.0

static const double *
linear_table (void)
{
  static gsize once = 0;
  static double table[256];

  if (g_once_init_enter (&once))
    {
      for (int i = 0; i < 256; i++)
        table[i] = wm_linear_from_srgb (i / 255.0);
      g_once_init_leave (&once, 1);
    }

  return table;
}

/* Relative luminance of one pixel, 0..1 (weights of IEC 61966-2-1). */
static double
light_at (WmPixels *pixels, int x, int y)
{
  const double *table = linear_table ();
  const guint8 *p = pixels->data + CLAMP (y, 0, pixels->height - 1) * pixels->stride
                    + CLAMP (x, 0, pixels->width - 1) * 4;

  return 0.0722 * table[p[0]] + 0.7152 * table[p[1]] + 0.2126 * table[p[2]];
}

/* Between the middles of pixels, which lie at half numbers. */
static double
light_between (WmPixels *pixels, double x, double y)
{
  int left = (int)floor (x - 0.5);
  int top = (int)floor (y - 0.5);
  double fx = x - 0.5 - left;
  double fy = y - 0.5 - top;

  return (1.0 - fy)
             * ((1.0 - fx) * light_at (pixels, left, top)
                + fx * light_at (pixels, left + 1, top))
         + fy
               * ((1.0 - fx) * light_at (pixels, left, top + 1)
                  + fx * light_at (pixels, left + 1, top + 1));
}

double *
wm_pixels_span_profile (WmPixels *pixels, WmPoint a, WmPoint b, double margin,
                        double samples_per_px, int *n, double *start)
{
  double length = hypot (b.x - a.x, b.y - a.y);
  double dx = length > 0.0 ? (b.x - a.x) / length : 1.0;
  double dy = length > 0.0 ? (b.y - a.y) / length : 0.0;
  int before = (int)ceil (margin * samples_per_px);
  double *grey;

  *n = 2 * before + (int)ceil (length * samples_per_px) + 1;
  *start = before;
  grey = g_new (double, *n);

  for (int i = 0; i < *n; i++)
    {
      double along = (i - before) / samples_per_px;
      double sum = 0.0;

      for (int k = -LINES_EACH_SIDE; k <= LINES_EACH_SIDE; k++)
        sum +=
            light_between (pixels, a.x + along * dx - k * dy, a.y + along * dy + k * dx);

      grey[i] = sum / (2 * LINES_EACH_SIDE + 1);
    }

  return grey;
}

/* The part of the photo round the span, and where it begins. */
static WmPixels *
load_round_span (const char *path, WmPoint a, WmPoint b, double margin, WmPoint *origin,
                 GCancellable *cancellable, GError **error)
{
  g_autoptr (WmPhotoFacts) facts = wm_photo_probe_file (path, error);
  double left, top, right, bottom;

  if (facts == NULL)
    return NULL;

  left = floor (CLAMP (fmin (a.x, b.x) - margin, 0, facts->width - 1));
  top = floor (CLAMP (fmin (a.y, b.y) - margin, 0, facts->height - 1));
  right = ceil (CLAMP (fmax (a.x, b.x) + margin, left + 1, facts->width));
  bottom = ceil (CLAMP (fmax (a.y, b.y) + margin, top + 1, facts->height));
  *origin = (WmPoint) { left, top };

  return wm_photo_load_region (path, left, top, right - left, bottom - top, right - left,
                               bottom - top, cancellable, error);
}

static WmPoint
on_span (WmPoint a, WmPoint b, double along_px)
{
  double length = hypot (b.x - a.x, b.y - a.y);

  return (WmPoint) { a.x + (b.x - a.x) / length * along_px,
                     a.y + (b.y - a.y) / length * along_px };
}

gboolean
wm_photo_snap_span (const char *path, WmPoint *a, WmPoint *b, double reach_px,
                    double u_px[2], WmResult *result, GCancellable *cancellable,
                    GError **error)
{
  double length = hypot (b->x - a->x, b->y - a->y);
  double margin = reach_px + MARGIN_BEYOND_REACH;
  double per_px = MIN (1.0, (WM_EDGE_MAX_SAMPLES - 8) / (length + 2.0 * margin));
  g_autoptr (WmPixels) pixels = NULL;
  g_autofree double *grey = NULL;
  WmPoint origin, from, to;
  WmEdge first, second;
  double start;
  int n;

  *result = length > 0.0 ? WM_OK : WM_TOO_SHORT;
  if (*result != WM_OK)
    return FALSE;

  pixels = load_round_span (path, *a, *b, margin, &origin, cancellable, error);
  if (pixels == NULL)
    return FALSE;

  from = (WmPoint) { a->x - origin.x, a->y - origin.y };
  to = (WmPoint) { b->x - origin.x, b->y - origin.y };
  grey = wm_pixels_span_profile (pixels, from, to, margin, per_px, &n, &start);
  *result = wm_edge_snap_span (grey, n, per_px, start, start + length * per_px, reach_px,
                               &first, &second, NULL);
  if (*result != WM_OK)
    return FALSE;

  from = on_span (*a, *b, (first.at - start) / per_px);
  to = on_span (*a, *b, (second.at - start) / per_px);
  *a = from;
  *b = to;
  u_px[0] = first.u_px;
  u_px[1] = second.u_px;
  return TRUE;
}
