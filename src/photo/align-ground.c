/* align-ground.c: which part of a photo is the piece, which the ground
 *
 * Four things are measured at each place: lightness, two colour shares and how
 * busy the picture is. A place that is darker than the ground may be in a shadow,
 * which leaves the colours as they are: it is judged by the other three. A plane of each
 * over the photo (light falls off across the cloth) and their covariance are fitted to
 * the border and refitted to everything that looks the same; what lies far from that is
 * the piece.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/align-ground.h"

#include <math.h>
#include <string.h>

#include "photo/align-matrix.h"

#define N_CUES 4

/* Border that shows the ground, share of the shorter side: photos of a whole
 * piece leave about that much (our rendered and real layouts). */
#define BORDER_SHARE 0.10

/* Squared distances. NEAR: what is nearer is ground (chi-square of 4 cues passes
 * 16 three times in 1,000). FAR: what is farther is certainly not; a part of the
 * piece has at least one such place. Cloth has longer tails than chi-square, and
 * white metal on grey felt reaches no more than 18 to 40 (both measured on the
 * campaign). */
#define NEAR 16.0
#define FAR 36.0

/* A normal sample of 4 cues is nearer than this nine times in ten (chi-square). */
#define TRIM 7.8

/* How much the ground may vary for itself (conditional standard deviations of
 * the cues at the border) and still be one ground: felt, linen, velvet, leather,
 * paper and baize of the campaign reach 0.73 in the sum of squares below, photos
 * with no plain surround (graf, leuven, aloe, fruits) 1.3 to 10. */
#define MOST_LIGHTNESS 1.0
#define MOST_COLOUR 0.2
#define MOST_BUSY 0.4

/* Below or above these shares of the photo the answer is not believed. */
#define LEAST_SHARE 0.004
#define MOST_SHARE 0.75

/* Parts smaller than this share of the photo are specks of the cloth. */
#define SPECK_SHARE 0.0008

typedef struct
{
  int width;
  int height;
  WmPlane *cue[N_CUES];
  double plane[N_CUES][3];
  double inverse[N_CUES * N_CUES];
  double shadow_inverse[(N_CUES - 1) * (N_CUES - 1)]; /* without lightness */
  gboolean is_smooth;
  WmPlane *distance;
} Ground;

static void
clear_ground (Ground *g)
{
  for (int c = 0; c < N_CUES; c++)
    wm_plane_free (g->cue[c]);
  wm_plane_free (g->distance);
}

/* Mean slope of the ground, grey levels a pixel, up to which it is as smooth as
 * the camera's noise: its busyness then says little, least of all in a shadow. */
#define SMOOTH_SLOPE 2.5
#define SMOOTH_DOUBT 0.5

/* How busy: mean slope at level 1 within one pixel of level 2. */
static WmPlane *
measure_slope (const WmPlane *fine, int width, int height)
{
  WmPlane *out = wm_plane_new (width, height);
  gsize stride = (gsize)fine->width;

  for (int y = 0; y < height; y++)
    for (int x = 0; x < width; x++)
      {
        int fx = MIN (2 * x, fine->width - 3);
        int fy = MIN (2 * y, fine->height - 3);
        const float *p = fine->v + (gsize)MAX (fy, 0) * stride + (gsize)MAX (fx, 0);
        const float *q = p + stride;
        float sum = fabsf (p[1] - p[0]) + fabsf (p[2] - p[1]) + fabsf (q[1] - q[0])
                    + fabsf (q[2] - q[1]) + fabsf (q[0] - p[0]) + fabsf (q[1] - p[1])
                    + fabsf (q[stride] - q[0]) + fabsf (q[stride + 1] - q[1]);

        out->v[(gsize)y * (gsize)width + (gsize)x] = sum / 8.0f;
      }
  return out;
}

static inline gboolean
is_border (const Ground *g, int x, int y)
{
  int margin = MAX ((int)(BORDER_SHARE * MIN (g->width, g->height)), 1);

  return x < margin || y < margin || x >= g->width - margin || y >= g->height - margin;
}

static double
measure_border_slope (const Ground *g)
{
  double sum = 0;
  int n = 0;

  for (int y = 0; y < g->height; y++)
    for (int x = 0; x < g->width; x++)
      if (is_border (g, x, y))
        {
          sum += g->cue[3]->v[(gsize)y * (gsize)g->width + x];
          n++;
        }
  return n > 0 ? sum / n : 0;
}

static void
measure_cues (Ground *g, const WmPhotoPlanes *planes)
{
  const WmPlane *grey = planes->grey[WM_GROUND_LEVEL];
  WmPlane *raw[N_CUES];

  g->width = grey->width;
  g->height = grey->height;
  if (planes->red != NULL)
    {
      g->width = MIN (g->width, planes->red->width);
      g->height = MIN (g->height, planes->red->height);
    }
  for (int c = 0; c < 3; c++)
    raw[c] = wm_plane_new (g->width, g->height);
  for (int y = 0; y < g->height; y++)
    for (int x = 0; x < g->width; x++)
      {
        gsize at = (gsize)y * (gsize)g->width + (gsize)x;

        raw[0]->v[at] = sqrtf (grey->v[(gsize)y * (gsize)grey->width + (gsize)x]);
        if (planes->red != NULL)
          {
            gsize from = (gsize)y * (gsize)planes->red->width + (gsize)x;
            float r = planes->red->v[from] + 3.0f;
            float u = planes->green->v[from] + 3.0f;
            float b = planes->blue->v[from] + 3.0f;

            raw[1]->v[at] = logf (r / u);
            raw[2]->v[at] = logf (b / u);
          }
      }
  raw[3] = measure_slope (planes->grey[1], g->width, g->height);
  for (int c = 0; c < N_CUES; c++)
    {
      g->cue[c] = wm_plane_blur (raw[c], c == 3 ? 2.0f : 1.0f);
      wm_plane_free (raw[c]);
    }
  g->is_smooth = measure_border_slope (g) < SMOOTH_SLOPE;
  /* as a share of the lightness, so that a shadow does not change it */
  for (int y = 0; y < g->height; y++)
    for (int x = 0; x < g->width; x++)
      {
        float *slope = g->cue[3]->v + (gsize)y * (gsize)g->width + x;

        *slope =
            logf ((*slope + 0.5f) / (grey->v[(gsize)y * (gsize)grey->width + x] + 12.0f));
      }
  g->distance = wm_plane_new (g->width, g->height);
}

static inline double
residual (const Ground *g, int c, int x, int y)
{
  return g->cue[c]->v[(gsize)y * (gsize)g->width + (gsize)x]
         - (g->plane[c][0] + g->plane[c][1] * x + g->plane[c][2] * y);
}

/* Fits planes and covariance to the chosen places: the border when @limit is
 * 0, the border nearer than -@limit when it is below, else everything nearer than
 * @limit. FALSE when there are too few. */
static gboolean
fit_ground (Ground *g, double limit)
{
  double a[9] = { 0 }, b[N_CUES][3] = { { 0 } };
  double cov[N_CUES * N_CUES] = { 0 };
  double rest[(N_CUES - 1) * (N_CUES - 1)];
  double unused[N_CUES] = { 0 };
  int n = 0;

  for (int pass = 0; pass < 2; pass++)
    {
      n = 0;
      for (int y = 0; y < g->height; y += 2)
        for (int x = 0; x < g->width; x += 2)
          {
            gsize at = (gsize)y * (gsize)g->width + (gsize)x;
            double basis[3] = { 1, x, y }, r[N_CUES];

            if (limit > 0
                    ? g->distance->v[at] > limit
                    : !is_border (g, x, y) || (limit < 0 && g->distance->v[at] > -limit))
              continue;
            n++;
            if (pass == 0)
              {
                for (int i = 0; i < 3; i++)
                  for (int j = 0; j < 3; j++)
                    a[3 * i + j] += basis[i] * basis[j];
                for (int c = 0; c < N_CUES; c++)
                  for (int i = 0; i < 3; i++)
                    b[c][i] += basis[i] * g->cue[c]->v[at];
                continue;
              }
            for (int c = 0; c < N_CUES; c++)
              r[c] = residual (g, c, x, y);
            for (int i = 0; i < N_CUES; i++)
              for (int j = 0; j < N_CUES; j++)
                cov[i * N_CUES + j] += r[i] * r[j];
          }
      if (n < 50)
        return FALSE;
      for (int c = 0; pass == 0 && c < N_CUES; c++)
        {
          double copy[9];

          memcpy (copy, a, sizeof a);
          memcpy (g->plane[c], b[c], sizeof b[c]);
          if (!wm_solve_symmetric (copy, g->plane[c], 3, NULL))
            return FALSE;
        }
    }
  for (int k = 0; k < N_CUES * N_CUES; k++)
    cov[k] /= n;
  /* floors: one grey step in 100 at mid grey, 2 % in a colour share, 10 % in
   * busyness are not a difference */
  cov[0] += 0.1 * 0.1;
  cov[N_CUES + 1] += 0.02 * 0.02;
  cov[2 * N_CUES + 2] += 0.02 * 0.02;
  cov[3 * N_CUES + 3] += g->is_smooth ? SMOOTH_DOUBT * SMOOTH_DOUBT : 0.1 * 0.1;
  for (int i = 1; i < N_CUES; i++)
    for (int j = 1; j < N_CUES; j++)
      rest[(i - 1) * (N_CUES - 1) + j - 1] = cov[i * N_CUES + j];
  return wm_solve_symmetric (cov, unused, N_CUES, g->inverse)
         && wm_solve_symmetric (rest, unused, N_CUES - 1, g->shadow_inverse);
}

static gboolean
is_one_ground (const Ground *g)
{
  const double most[N_CUES] = { MOST_LIGHTNESS, MOST_COLOUR, MOST_COLOUR, MOST_BUSY };
  double sum = 0;

  for (int c = 0; c < (g->is_smooth ? N_CUES - 1 : N_CUES); c++)
    sum += 1 / (g->inverse[c * N_CUES + c] * most[c] * most[c]);
  return sum < 1;
}

static void
measure_distance (Ground *g)
{
  for (int y = 0; y < g->height; y++)
    for (int x = 0; x < g->width; x++)
      {
        double r[N_CUES], d = 0;

        for (int c = 0; c < N_CUES; c++)
          r[c] = residual (g, c, x, y);
        if (r[0] >= 0)
          for (int i = 0; i < N_CUES; i++)
            for (int j = 0; j < N_CUES; j++)
              d += r[i] * r[j] * g->inverse[i * N_CUES + j];
        else
          {
            for (int i = 1; i < N_CUES; i++)
              for (int j = 1; j < N_CUES; j++)
                d += r[i] * r[j] * g->shadow_inverse[(i - 1) * (N_CUES - 1) + j - 1];
          }
        g->distance->v[(gsize)y * (gsize)g->width + (gsize)x] = (float)d;
      }
}

/* Leaves out parts of fewer than @least pixels or with no place beyond FAR. */
static void
drop_specks (WmPlane *mask, const WmPlane *distance, int least)
{
  int n = mask->width * mask->height;
  g_autofree guint8 *seen = g_new0 (guint8, (gsize)n);
  g_autofree int *stack = g_new (int, (gsize)n);

  for (int start = 0; start < n; start++)
    {
      int count = 0, top = 1;
      float farthest = 0;

      if (seen[start] || mask->v[start] < 0.5f)
        continue;
      stack[0] = start;
      seen[start] = 1;
      /* the stack doubles as the list of the part: [0, top) all belong to it */
      while (count < top)
        {
          int at = stack[count++];
          int x = at % mask->width;

          farthest = MAX (farthest, distance->v[at]);
          const int near[4] = { at - 1, at + 1, at - mask->width, at + mask->width };
          const gboolean ok[4] = { x > 0, x < mask->width - 1, near[2] >= 0,
                                   near[3] < n };

          for (int k = 0; k < 4; k++)
            if (ok[k] && !seen[near[k]] && mask->v[near[k]] > 0.5f)
              {
                seen[near[k]] = 1;
                stack[top++] = near[k];
              }
        }
      if (top < least || farthest < FAR)
        for (int k = 0; k < top; k++)
          mask->v[stack[k]] = 0.0f;
    }
}

/* The cues are blurred, so the parts reach a pixel or two out over the cloth, and a
 * cloth that lies 1 mm lower moves differently in a tilted photo. Taken back by so
 * many pixels; measured on the pairs photographed by hand: with 0, 1 and 2 the right
 * ones were 4, 5 and 6 of 7. */
#define NARROW 2

static void
narrow (WmPlane *mask)
{
  int w = mask->width, h = mask->height;
  g_autofree float *copy = g_memdup2 (mask->v, sizeof (float) * (gsize)w * (gsize)h);

  for (int y = 0; y < h; y++)
    for (int x = 0; x < w; x++)
      for (int k = -NARROW; k <= NARROW && mask->v[y * w + x] > 0; k++)
        if (copy[CLAMP (y + k, 0, h - 1) * w + x] < 0.5f
            || copy[y * w + CLAMP (x + k, 0, w - 1)] < 0.5f)
          mask->v[y * w + x] = 0;
}

static void
summarise (WmPieceMask *self)
{
  WmPlane *mask = self->mask;
  double n = 0, x1 = 0, y1 = 0, r2 = 0;
  double cell = 1 << WM_GROUND_LEVEL;

  for (int y = 0; y < mask->height; y++)
    for (int x = 0; x < mask->width; x++)
      if (mask->v[y * mask->width + x] > 0.5f)
        {
          n++;
          x1 += x + 0.5;
          y1 += y + 0.5;
          r2 += (x + 0.5) * (x + 0.5) + (y + 0.5) * (y + 0.5);
        }
  self->share = n / ((double)mask->width * mask->height);
  if (n > 0)
    {
      x1 /= n;
      y1 /= n;
      self->centre = (WmPoint) { x1 * cell, y1 * cell };
      self->radius = sqrt (fmax (r2 / n - x1 * x1 - y1 * y1, 0.0)) * cell;
    }
}

WmPieceMask *
wm_piece_mask_new (const WmPhotoPlanes *planes)
{
  WmPieceMask *self = g_new0 (WmPieceMask, 1);
  Ground g = { 0 };
  gboolean fitted;

  measure_cues (&g, planes);
  fitted = fit_ground (&g, 0);
  /* a ruler or a chain may cross the border: what is farther than most of it is
   * left out, twice */
  for (int pass = 0; fitted && pass < 2; pass++)
    {
      measure_distance (&g);
      fitted = fit_ground (&g, -TRIM);
    }
  fitted = fitted && is_one_ground (&g);
  for (int pass = 0; fitted && pass < 3; pass++)
    {
      measure_distance (&g);
      if (pass < 2)
        fitted = fit_ground (&g, NEAR);
    }
  self->mask = wm_plane_new (g.width, g.height);
  for (int k = 0; fitted && k < g.width * g.height; k++)
    self->mask->v[k] = g.distance->v[k] > NEAR ? 1.0f : 0.0f;
  drop_specks (self->mask, g.distance, (int)(SPECK_SHARE * g.width * g.height));
  narrow (self->mask);
  summarise (self);
  if (!(self->share > LEAST_SHARE && self->share < MOST_SHARE))
    {
      for (int k = 0; k < g.width * g.height; k++)
        self->mask->v[k] = 1.0f;
      summarise (self);
      self->share = 0;
    }
  clear_ground (&g);
  return self;
}

void
wm_piece_mask_free (WmPieceMask *self)
{
  if (self == NULL)
    return;
  wm_plane_free (self->mask);
  g_free (self);
}
