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
#define CHANNELS 3

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

/* One channel of one pixel as light, 0..1; the border repeats. Channel 0 is red. */
static double
light_at (WmPixels *pixels, int x, int y, int channel)
{
  const guint8 *p = pixels->data + CLAMP (y, 0, pixels->height - 1) * pixels->stride
                    + CLAMP (x, 0, pixels->width - 1) * 4;

  return linear_table ()[p[2 - channel]];
}

/* Between the middles of pixels, which lie at half numbers. */
static double
light_between (WmPixels *pixels, double x, double y, int channel)
{
  int left = (int)floor (x - 0.5);
  int top = (int)floor (y - 0.5);
  double fx = x - 0.5 - left;
  double fy = y - 0.5 - top;

  return (1.0 - fy)
             * ((1.0 - fx) * light_at (pixels, left, top, channel)
                + fx * light_at (pixels, left + 1, top, channel))
         + fy
               * ((1.0 - fx) * light_at (pixels, left, top + 1, channel)
                  + fx * light_at (pixels, left + 1, top + 1, channel));
}

double *
wm_pixels_span_profile (WmPixels *pixels, WmPoint a, WmPoint b, double margin,
                        double samples_per_px, int *n, double *start)
{
  double length = hypot (b.x - a.x, b.y - a.y);
  double dx = length > 0.0 ? (b.x - a.x) / length : 1.0;
  double dy = length > 0.0 ? (b.y - a.y) / length : 0.0;
  int before = (int)ceil (margin * samples_per_px);
  double *light;

  *n = 2 * before + (int)ceil (length * samples_per_px) + 1;
  *start = before;
  light = g_new (double, *n *CHANNELS);

  for (int i = 0; i < *n * CHANNELS; i++)
    {
      double along = (i / CHANNELS - before) / samples_per_px;
      double sum = 0.0;

      for (int k = -LINES_EACH_SIDE; k <= LINES_EACH_SIDE; k++)
        sum += light_between (pixels, a.x + along * dx - k * dy,
                              a.y + along * dy + k * dx, i % CHANNELS);

      light[i] = sum / (2 * LINES_EACH_SIDE + 1);
    }

  return light;
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

static WmSnappedEnd
end_from_edge (const WmEdge *edge, WmPoint a, WmPoint b, double start, double per_px)
{
  WmSnappedEnd end = { on_span (a, b, (edge->at - start) / per_px), edge->u_px,
                       edge->u_seen_px, edge->contrast != 0.0 };

  return end;
}

gboolean
wm_photo_snap_span (const char *path, WmPoint a, WmPoint b, double reach_px,
                    WmSnappedEnd ends[2], WmResult *result, GCancellable *cancellable,
                    GError **error)
{
  double length = hypot (b.x - a.x, b.y - a.y);
  double margin = reach_px + MARGIN_BEYOND_REACH;
  double per_px = MIN (1.0, (WM_EDGE_MAX_SAMPLES - 8) / (length + 2.0 * margin));
  g_autoptr (WmPixels) pixels = NULL;
  g_autofree double *light = NULL;
  WmLightProfile profile;
  WmEdge first, second;
  WmPoint origin;
  double start;
  int n;

  *result = length > 0.0 ? WM_OK : WM_TOO_SHORT;
  if (*result != WM_OK)
    return FALSE;

  pixels = load_round_span (path, a, b, margin, &origin, cancellable, error);
  if (pixels == NULL)
    return FALSE;

  light = wm_pixels_span_profile (pixels, (WmPoint) { a.x - origin.x, a.y - origin.y },
                                  (WmPoint) { b.x - origin.x, b.y - origin.y }, margin,
                                  per_px, &n, &start);
  profile = (WmLightProfile) { light, n, CHANNELS, per_px };
  *result = wm_edge_snap_span (&profile, start, start + length * per_px, reach_px, &first,
                               &second, NULL);
  if (*result != WM_OK)
    return FALSE;

  ends[0] = end_from_edge (&first, a, b, start, per_px);
  ends[1] = end_from_edge (&second, a, b, start, per_px);
  return TRUE;
}
