/* edge.c: sub-pixel edge on a grey profile
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/edge.h"

#include <math.h>
#include <stdlib.h>

/* Filter reaches four blur widths either way: beyond, a Gaussian is under 4e-4. */
#define TAPS_IN_BLUR 4.0
/* A step under 3 % of white is dirt, not an edge (our own choice). */
#define MIN_CONTRAST 0.03
/* And it must stand this many noise widths out of the noise. */
#define MIN_SIGNAL 5.0
/* Below one grey step of an 8-bit photo no noise estimate is believed: 1/255/sqrt 12. */
#define QUANTISATION_U 0.00113

/* The profile and its filter. */
typedef struct
{
  const double *grey;
  int n;
  double per_px;
  double blur;  /* in samples */
  double noise; /* standard deviation of a sample */
} Profile;

double
wm_linear_from_srgb (double coded)
{
  return coded <= 0.04045 ? coded / 12.92 : pow ((coded + 0.055) / 1.055, 2.4);
}

static double
sample (const Profile *p, int i)
{
  if (i < 0)
    return p->grey[0];

  return p->grey[i < p->n ? i : p->n - 1];
}

/* Slope of the smoothed profile at sample i, grey per sample. */
static double
slope_at (const Profile *p, int i)
{
  int taps = (int)ceil (TAPS_IN_BLUR * p->blur);
  double sum = 0.0;
  double weight = 0.0;

  for (int k = 1; k <= taps; k++)
    {
      double g = k * exp (-0.5 * k * k / (p->blur * p->blur));

      sum += g * (sample (p, i + k) - sample (p, i - k));
      weight += 2.0 * k * g;
    }

  return sum / weight;
}

static int
compare_doubles (const void *a, const void *b)
{
  double x = *(const double *)a;
  double y = *(const double *)b;

  return (x > y) - (x < y);
}

/* Noise from second differences one pixel apart: their median is blind to edges.
 * Factors: 0.6745 turns a median of |normal| into its sd, sqrt 6 the second difference.
 */
static double
find_noise (const Profile *p)
{
  double second[WM_EDGE_MAX_SAMPLES];
  int gap = (int)fmax (1.0, round (p->per_px));
  int n = 0;

  for (int i = gap; i + gap < p->n; i++)
    second[n++] = fabs (p->grey[i - gap] - 2.0 * p->grey[i] + p->grey[i + gap]);

  if (n == 0)
    return QUANTISATION_U;

  qsort (second, n, sizeof second[0], compare_doubles);
  return fmax (QUANTISATION_U, second[n / 2] / 0.6745 / sqrt (6.0));
}

static WmResult
check_profile (const double *grey, int n, double samples_per_px, double reach_px,
               const char **which)
{
  const WmInputBound bounds[] = {
    WM_ABOVE ("profile", wm_exact (samples_per_px), 0.0, 8.0),
    WM_FROM ("reach_px", wm_exact (reach_px), 1.0, 200.0),
  };

  if (n < 16 || n > WM_EDGE_MAX_SAMPLES)
    return wm_refuse (n < 16 ? WM_TOO_FEW : WM_OUT_OF_RANGE, "profile", which);

  for (int i = 0; i < n; i++)
    if (!isfinite (grey[i]))
      return wm_refuse (WM_NOT_A_NUMBER, "profile", which);

  return wm_bounds_check (bounds, 2, which);
}

static Profile
make_profile (const double *grey, int n, double samples_per_px)
{
  Profile p = { grey, n, samples_per_px, WM_EDGE_BLUR_PX * samples_per_px, 0.0 };

  p.noise = find_noise (&p);
  return p;
}

/* The step's height: mean of the two pixels beyond the blur on either side. */
static double
step_height (const Profile *p, double at)
{
  double before = 0.0;
  double after = 0.0;
  int count = 0;

  for (double d = 2.0 * p->blur; d <= 2.0 * p->blur + 2.0 * p->per_px; d += 1.0)
    {
      before += sample (p, (int)round (at - d));
      after += sample (p, (int)round (at + d));
      count++;
    }

  return (after - before) / count;
}

/* Standard deviation of the slope's own slope, and so of the place where it vanishes,
 * for white noise (derived: int G''^2 = 3 / (8 sqrt pi s^5) a sample). */
static double
noise_of_place (const Profile *p, double curvature)
{
  double s = p->blur;
  double sd = p->noise * sqrt (3.0 / (8.0 * sqrt (M_PI) * s * s * s * s * s));

  return sd / fmax (fabs (curvature), 1e-12);
}

/* The steepest place near the mark, places far from it counting less. */
static int
steepest (const Profile *p, double near, double reach, int sign)
{
  int best = -1;
  double best_score = 0.0;

  for (int i = (int)ceil (near - reach); i <= (int)floor (near + reach); i++)
    {
      double slope = slope_at (p, i);
      double off = (i - near) / reach;
      double score = fabs (slope) * exp (-0.5 * off * off);

      if (i < 1 || i > p->n - 2 || (sign != 0 && slope * sign < 0.0))
        continue;

      /* Only a real peak: the end of the reach is not an edge. */
      if (fabs (slope) < fabs (slope_at (p, i - 1))
          || fabs (slope) < fabs (slope_at (p, i + 1)))
        continue;

      if (score > best_score)
        {
          best = i;
          best_score = score;
        }
    }

  return best;
}

static WmResult
find_edge (const Profile *p, double near, double reach, int sign, WmEdge *out)
{
  int i = steepest (p, near, reach, sign);
  double left, middle, right, curvature, noise;

  if (i < 0)
    return WM_NO_EDGE;

  /* A parabola through the logarithms: exact for the slope of a blurred step, which is
   * itself a Gaussian. */
  left = slope_at (p, i - 1);
  middle = slope_at (p, i);
  right = slope_at (p, i + 1);
  if (!(left * middle > 0.0 && right * middle > 0.0))
    return WM_NO_EDGE;

  curvature = log (left * right / (middle * middle));
  if (curvature >= 0.0)
    return WM_NO_EDGE;

  out->at = i + 0.5 * log (left / right) / curvature;
  curvature *= middle;
  out->contrast = step_height (p, out->at);
  noise = p->noise / sqrt (p->blur * 2.0 * sqrt (M_PI));
  if (fabs (out->contrast) < MIN_CONTRAST || fabs (out->contrast) < MIN_SIGNAL * noise
      || out->contrast * middle < 0.0)
    return WM_NO_EDGE;

  out->u_px = hypot (noise_of_place (p, curvature) / p->per_px, WM_EDGE_MODEL_U_PX);
  return WM_OK;
}

WmResult
wm_edge_find (const double *grey, int n, double samples_per_px, double near,
              double reach_px, int sign, WmEdge *out, const char **which)
{
  WmResult result = check_profile (grey, n, samples_per_px, reach_px, which);
  WmEdge edge;
  Profile p;

  if (result != WM_OK)
    return result;

  if (!(near >= 0.0 && near <= n - 1))
    return wm_refuse (WM_OUT_OF_RANGE, "profile", which);

  p = make_profile (grey, n, samples_per_px);
  result = find_edge (&p, near, reach_px * samples_per_px, sign, &edge);
  if (result != WM_OK)
    return wm_refuse (result, "profile", which);

  *out = edge;
  return WM_OK;
}

/* Both edges with the given signs; how clear the weaker of them is, 0 for none. */
static double
try_pair (const Profile *p, double start, double end, double reach, int sign, WmEdge *two)
{
  if (find_edge (p, start, reach, sign, &two[0]) != WM_OK
      || find_edge (p, end, reach, -sign, &two[1]) != WM_OK || two[1].at <= two[0].at)
    return 0.0;

  return fmin (fabs (two[0].contrast), fabs (two[1].contrast));
}

WmResult
wm_edge_snap_span (const double *grey, int n, double samples_per_px, double start,
                   double end, double reach_px, WmEdge *first, WmEdge *second,
                   const char **which)
{
  WmEdge rising[2];
  WmEdge falling[2];
  WmEdge *pair = rising;
  double up, down, reach;
  Profile p;
  WmResult result = check_profile (grey, n, samples_per_px, reach_px, which);

  if (result != WM_OK)
    return result;

  if (!(start >= 0.0 && start < end && end <= n - 1))
    return wm_refuse (WM_OUT_OF_RANGE, "profile", which);

  p = make_profile (grey, n, samples_per_px);
  /* Never reach past the middle of the span: that edge belongs to the other end. */
  reach = fmin (reach_px * samples_per_px, 0.5 * (end - start));
  up = try_pair (&p, start, end, reach, 1, rising);
  down = try_pair (&p, start, end, reach, -1, falling);

  if (down > up)
    pair = falling;
  else if (up == 0.0
           && (find_edge (&p, start, reach, 0, &rising[0]) != WM_OK
               || find_edge (&p, end, reach, 0, &rising[1]) != WM_OK))
    return wm_refuse (WM_NO_EDGE, "profile", which);

  if (pair[1].at <= pair[0].at)
    return wm_refuse (WM_CONTRADICTION, "profile", which);

  *first = pair[0];
  *second = pair[1];
  return WM_OK;
}
