/* focus.c: how wide the edges of a picture are
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/focus.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* First and second smoothing, px. The second is twice the first: the ratio of slopes
 * then runs from 2 (a perfect edge) to 1 over the blurs that matter, 0 to 5 px. In a
 * grainy picture both are wider by the noise over NOISE_OF_ONE, up to WIDEST: else what
 * is picked as an edge is steep by its noise; wider still, and fine links count as
 * one. (Both numbers by trial on the photos of test-judge.c.) */
#define SMOOTH_P 0.8
#define SMOOTH_Q 1.6
#define NOISE_OF_ONE 1.5
#define WIDEST 1.6
#define REACH 8 /* px of kernel on each side: 3 times SMOOTH_Q, made WIDEST */

/* Slopes below this are shading, not edges (grey levels a px; our choice: a step of
 * 25 levels blurred by 3 px still passes). */
#define LEAST_STRENGTH 3.0

/* And below this many times what the noise makes of itself: one pixel in a million
 * of pure noise passes. */
#define NOISE_TIMES 5.0

/* Slope that noise of 1 has after the first smoothing at its narrowest (0.26, measured
 * on white noise; falls with the square of the width). */
#define NOISE_SLOPE 0.26

/* Beside pixels this bright a slope is cut off by the sensor. */
#define BURNT 250

#define STRIP_ROWS 128

/* Of larger pictures only every second, third ... strip is looked at: half a million
 * edges say no more than a quarter of a million. */
#define ENOUGH_PIXELS 6000000

#define MOST_BLUR 12.0

typedef struct
{
  int width, rows; /* rows with a margin above and below */
  int margin;
  double wide_p, wide_q; /* the two smoothings, px */
  float least;           /* strength of an edge */
  float *luma, *p, *q, *half;
} Strip;

static int
make_kernel (double sigma, float *kernel)
{
  int reach = (int)ceil (3 * sigma);
  double sum = 0;

  for (int i = -reach; i <= reach; i++)
    sum += exp (-i * i / (2 * sigma * sigma));
  for (int i = -reach; i <= reach; i++)
    kernel[i + reach] = (float)(exp (-i * i / (2 * sigma * sigma)) / sum);
  return reach;
}

/* One row smoothed along itself; the ends repeat their last pixel. */
static void
smooth_row (const float *from, float *to, int width, const float *kernel, int reach,
            float *padded)
{
  for (int i = 0; i < reach; i++)
    {
      padded[i] = from[0];
      padded[width + reach + i] = from[width - 1];
    }
  memcpy (padded + reach, from, (gsize)width * sizeof *from);

  memset (to, 0, (gsize)width * sizeof *to);
  for (int i = 0; i <= 2 * reach; i++)
    {
      float weight = kernel[i];

      for (int x = 0; x < width; x++)
        to[x] += weight * padded[x + i];
    }
}

static void
smooth (Strip *strip, double sigma, float *out)
{
  float kernel[2 * REACH + 1];
  int reach = make_kernel (sigma, kernel);
  int width = strip->width;
  g_autofree float *padded = g_new (float, width + 2 * REACH);

  for (int y = 0; y < strip->rows; y++)
    smooth_row (strip->luma + (gsize)y * width, strip->half + (gsize)y * width, width,
                kernel, reach, padded);

  for (int y = 0; y < strip->rows; y++)
    {
      float *to = out + (gsize)y * width;

      memset (to, 0, (gsize)width * sizeof *to);
      for (int i = -reach; i <= reach; i++)
        {
          const float *from =
              strip->half + (gsize)CLAMP (y + i, 0, strip->rows - 1) * width;
          float weight = kernel[i + reach];

          for (int x = 0; x < width; x++)
            to[x] += weight * from[x];
        }
    }
}

/* Rec. 601 luma of the coded values, as the reference's readers make grey. */
static float
luma_at (WmPixels *pixels, int x, int y)
{
  const guint8 *p = pixels->data + (gsize)y * pixels->stride + (gsize)x * 4;

  return 0.114f * p[0] + 0.587f * p[1] + 0.299f * p[2];
}

static void
load_strip (Strip *strip, WmPixels *pixels, int top)
{
  for (int y = 0; y < strip->rows; y++)
    {
      int row = CLAMP (top + y, 0, pixels->height - 1);
      float *to = strip->luma + (gsize)y * strip->width;

      for (int x = 0; x < strip->width; x++)
        to[x] = luma_at (pixels, x, row);
    }
}

static gboolean
is_burnt (const Strip *strip, int x, int y)
{
  for (int dy = -2; dy <= 2; dy++)
    for (int dx = -2; dx <= 2; dx++)
      if (strip->luma[(gsize)(y + dy) * strip->width + x + dx] >= BURNT)
        return TRUE;

  return FALSE;
}

static float
slope (const float *plane, int width, gsize at, float *gx, float *gy)
{
  *gx = (plane[at + 1] - plane[at - 1]) / 2;
  *gy = (plane[at + (gsize)width] - plane[at - (gsize)width]) / 2;
  return sqrtf (*gx * *gx + *gy * *gy);
}

/* Whether the slope is steepest here, compared with one step on along it. */
static gboolean
is_crest (const float *plane, int width, gsize at, float strength, float gx, float gy)
{
  float ax, ay;
  gssize step_x = fabsf (gx) > 0.4f * fabsf (gy) ? (gx > 0 ? 1 : -1) : 0;
  gssize step_y = fabsf (gy) > 0.4f * fabsf (gx) ? (gy > 0 ? 1 : -1) : 0;
  gssize step = step_x + step_y * width;

  return slope (plane, width, (gsize)((gssize)at + step), &ax, &ay) <= strength
         && slope (plane, width, (gsize)((gssize)at - step), &ax, &ay) < strength;
}

static gboolean
measure (const Strip *strip, int x, int y, WmEdge *edge)
{
  double p2 = strip->wide_p * strip->wide_p, q2 = strip->wide_q * strip->wide_q;
  gsize at = (gsize)y * strip->width + x;
  float gx, gy, hx, hy;
  float sharp = slope (strip->p, strip->width, at, &gx, &gy);
  double blurred, r2, s2, angle;

  if (sharp < strip->least || !is_crest (strip->p, strip->width, at, sharp, gx, gy))
    return FALSE;

  blurred = slope (strip->q, strip->width, at, &hx, &hy);
  r2 = sharp * sharp / MAX (blurred * blurred, 1e-6);
  if (r2 <= 1.001)
    s2 = MOST_BLUR * MOST_BLUR;
  else
    s2 = (q2 - r2 * p2) / (r2 - 1);

  /* Lines and corners fall off faster than a step: they count as sharp. */
  edge->sigma = (float)MIN (sqrt (MAX (s2, 0)), MOST_BLUR);
  edge->strength = sharp;
  edge->is_burnt = is_burnt (strip, x, y);
  angle = atan2 (gy, gx) / G_PI;
  edge->direction =
      (guint8)((int)floor ((angle + 1) * WM_EDGE_DIRECTIONS + 0.5) % WM_EDGE_DIRECTIONS);
  return TRUE;
}

static void
begin_strip (Strip *strip, int width, double noise)
{
  double wider = CLAMP (noise / NOISE_OF_ONE, 1, WIDEST);
  gsize size;

  strip->wide_p = SMOOTH_P * wider;
  strip->wide_q = SMOOTH_Q * wider;
  strip->least = (float)MAX (LEAST_STRENGTH / wider,
                             NOISE_TIMES * noise * NOISE_SLOPE / (wider * wider));
  strip->margin = (int)ceil (3 * strip->wide_q) + 2;
  strip->width = width;
  strip->rows = STRIP_ROWS + 2 * strip->margin;
  size = (gsize)strip->rows * width;
  strip->luma = g_new (float, size);
  strip->p = g_new (float, size);
  strip->q = g_new (float, size);
  strip->half = g_new (float, size);
}

static void
end_strip (Strip *strip)
{
  g_free (strip->luma);
  g_free (strip->p);
  g_free (strip->q);
  g_free (strip->half);
}

GArray *
wm_edges_find (WmPixels *pixels, guint most)
{
  GArray *edges = g_array_new (FALSE, FALSE, sizeof (WmEdge));
  Strip strip = { 0 };
  int margin;
  guint seen = 0, every = 1;
  int step =
      STRIP_ROWS * (1 + (int)((gint64)pixels->width * pixels->height / ENOUGH_PIXELS));

  begin_strip (&strip, pixels->width, wm_noise_estimate (pixels));
  margin = strip.margin;
  for (int top = 0; top < pixels->height; top += step)
    {
      int rows = MIN (STRIP_ROWS, pixels->height - top);

      load_strip (&strip, pixels, top - margin);
      smooth (&strip, strip.wide_p, strip.p);
      smooth (&strip, strip.wide_q, strip.q);

      for (int y = 0; y < rows; y++)
        for (int x = margin; x < pixels->width - margin; x++)
          {
            WmEdge edge;

            if (top + y < margin || top + y >= pixels->height - margin
                || !measure (&strip, x, y + margin, &edge) || seen++ % every != 0)
              continue;
            edge.x = (guint16)x;
            edge.y = (guint16)(top + y);
            g_array_append_val (edges, edge);

            /* Too many: keep every second one, and half of those to come. */
            if (edges->len >= most)
              {
                for (guint i = 0; i < edges->len / 2; i++)
                  g_array_index (edges, WmEdge, i) = g_array_index (edges, WmEdge, 2 * i);
                g_array_set_size (edges, edges->len / 2);
                every *= 2;
              }
          }
    }
  end_strip (&strip);
  return edges;
}

double
wm_noise_estimate (WmPixels *pixels)
{
  guint counts[1024] = { 0 };
  guint total = 0, sum = 0, at = 0;

  if (pixels->width < 3 || pixels->height < 3)
    return 0;

  /* Every third row is enough for a median. */
  for (int y = 1; y < pixels->height - 1; y += 3)
    for (int x = 1; x < pixels->width - 1; x++)
      {
        float n = luma_at (pixels, x - 1, y - 1) - 2 * luma_at (pixels, x, y - 1)
                  + luma_at (pixels, x + 1, y - 1) - 2 * luma_at (pixels, x - 1, y)
                  + 4 * luma_at (pixels, x, y) - 2 * luma_at (pixels, x + 1, y)
                  + luma_at (pixels, x - 1, y + 1) - 2 * luma_at (pixels, x, y + 1)
                  + luma_at (pixels, x + 1, y + 1);

        counts[MIN (1023, (int)(fabsf (n) * 4))]++;
        total++;
      }

  while (at < 1023 && (sum += counts[at]) < total / 2)
    at++;

  /* The operator makes 6 of noise of 1; a normal distribution's median is 0.6745. */
  return (at + 0.5) / 4 / (6 * 0.6745) - 0.125 / (6 * 0.6745);
}

static int
compare_floats (gconstpointer a, gconstpointer b)
{
  float first = *(const float *)a, second = *(const float *)b;

  return (first > second) - (first < second);
}

static double
percentile (GArray *values, double share)
{
  g_array_sort (values, compare_floats);
  return g_array_index (values, float, (guint)((values->len - 1) * share));
}

/* Whether this edge counts: burnt ones only where there are too few others, as round a
 * piece on white paper. */
static gboolean
counts (const WmEdge *edge, gboolean with_burnt)
{
  return with_burnt || !edge->is_burnt;
}

static gboolean
needs_burnt (const GArray *edges, guint least)
{
  guint clean = 0;

  for (guint i = 0; i < edges->len && clean < least; i++)
    clean += !g_array_index (edges, WmEdge, i).is_burnt;
  return clean < least;
}

double
wm_edges_blur (const GArray *edges, guint least)
{
  g_autoptr (GArray) strengths = g_array_new (FALSE, FALSE, sizeof (float));
  g_autoptr (GArray) blurs = g_array_new (FALSE, FALSE, sizeof (float));
  gboolean with_burnt = needs_burnt (edges, least);
  double strong;

  for (guint i = 0; i < edges->len; i++)
    if (counts (&g_array_index (edges, WmEdge, i), with_burnt))
      g_array_append_val (strengths, g_array_index (edges, WmEdge, i).strength);
  if (strengths->len < least)
    return NAN;

  /* What is in focus has the steepest edges; the background's do not count. */
  strong = 0.4 * percentile (strengths, 0.98);
  for (guint i = 0; i < edges->len; i++)
    if (counts (&g_array_index (edges, WmEdge, i), with_burnt)
        && g_array_index (edges, WmEdge, i).strength >= strong)
      g_array_append_val (blurs, g_array_index (edges, WmEdge, i).sigma);

  return blurs->len < least / 4 + 1 ? NAN : percentile (blurs, 0.5);
}

double
wm_edges_blur_along (const GArray *edges, int direction, guint least)
{
  g_autoptr (GArray) blurs = g_array_new (FALSE, FALSE, sizeof (float));
  gboolean with_burnt = needs_burnt (edges, least);

  for (guint i = 0; i < edges->len; i++)
    if (g_array_index (edges, WmEdge, i).direction == direction
        && counts (&g_array_index (edges, WmEdge, i), with_burnt))
      g_array_append_val (blurs, g_array_index (edges, WmEdge, i).sigma);

  /* The sharper quarter: what lies out of focus is blurred in every direction. */
  return blurs->len < least ? NAN : percentile (blurs, 0.25);
}
