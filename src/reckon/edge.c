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
/* Peaks a filter of this width can have within the largest reach. */
#define MAX_CANDIDATES 64
/* A peak a quarter as steep as the steepest in reach is texture beside an edge (our own
 * choice). */
#define LEAST_STEEPNESS 0.25
/* Two edges of the same sign are rarely the two sides of one piece of metal (our own
 * choice). */
#define SAME_SIGN_SHARE 0.3

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

/* One place where the slope peaks. */
typedef struct
{
  WmEdge edge;
  double slope; /* at the peak, grey per sample, signed */
  double score; /* how likely it is the one that was meant */
} Candidate;

typedef struct
{
  Candidate list[MAX_CANDIDATES];
  int n;
} Candidates;

/* The peak round sample i, refined; false when it is none or not an edge. */
static int
refine_peak (const Profile *p, int i, Candidate *c)
{
  double left = slope_at (p, i - 1);
  double middle = slope_at (p, i);
  double right = slope_at (p, i + 1);
  double curvature, noise;

  if (fabs (middle) < fabs (left) || fabs (middle) <= fabs (right)
      || !(left * middle > 0.0 && right * middle > 0.0))
    return 0;

  /* A parabola through the logarithms: exact for the slope of a blurred step, which is
   * itself a Gaussian. */
  curvature = log (left * right / (middle * middle));
  if (curvature >= 0.0)
    return 0;

  c->slope = middle;
  c->edge.at = i + 0.5 * log (left / right) / curvature;
  c->edge.contrast = step_height (p, c->edge.at);
  noise = p->noise / sqrt (p->blur * 2.0 * sqrt (M_PI));
  if (fabs (c->edge.contrast) < MIN_CONTRAST
      || fabs (c->edge.contrast) < MIN_SIGNAL * noise || c->edge.contrast * middle < 0.0)
    return 0;

  c->edge.u_px =
      hypot (noise_of_place (p, curvature * middle) / p->per_px, WM_EDGE_MODEL_U_PX);
  return 1;
}

static void
drop_texture (Candidates *all)
{
  double steepest = 0.0;
  int kept = 0;

  for (int i = 0; i < all->n; i++)
    steepest = fmax (steepest, fabs (all->list[i].slope));

  for (int i = 0; i < all->n; i++)
    if (fabs (all->list[i].slope) >= LEAST_STEEPNESS * steepest)
      all->list[kept++] = all->list[i];

  all->n = kept;
}

/* All edges within reach of the mark. Steep ones count, and near ones: a hand is off by
 * a third of the reach as a rule, so an edge at its end needs to be far steeper. */
static void
find_candidates (const Profile *p, double near, double reach, int sign, Candidates *all)
{
  double hand = reach / 3.0;

  all->n = 0;
  for (int i = (int)ceil (near - reach); i <= (int)floor (near + reach); i++)
    {
      Candidate *c = &all->list[all->n];
      double off;

      if (i < 1 || i > p->n - 2 || all->n == MAX_CANDIDATES || !refine_peak (p, i, c)
          || c->slope * sign < 0.0)
        continue;

      off = (c->edge.at - near) / hand;
      c->score = fabs (c->slope) * exp (-0.5 * off * off);
      all->n++;
    }

  drop_texture (all);
}

/* The edge with the doubt which of several was meant added to its uncertainty: the
 * spread of all of them by their scores. */
static WmEdge
with_doubt (const Profile *p, const Candidates *all, int chosen)
{
  WmEdge edge = all->list[chosen].edge;
  double sum = 0.0;
  double spread = 0.0;

  for (int i = 0; i < all->n; i++)
    {
      double off = (all->list[i].edge.at - edge.at) / p->per_px;

      sum += all->list[i].score;
      spread += all->list[i].score * off * off;
    }

  edge.u_px = hypot (edge.u_px, sqrt (spread / sum));
  return edge;
}

static int
best_of (const Candidates *all)
{
  int best = -1;

  for (int i = 0; i < all->n; i++)
    if (best < 0 || all->list[i].score > all->list[best].score)
      best = i;

  return best;
}

WmResult
wm_edge_find (const double *grey, int n, double samples_per_px, double near,
              double reach_px, int sign, WmEdge *out, const char **which)
{
  WmResult result = check_profile (grey, n, samples_per_px, reach_px, which);
  Candidates all;
  Profile p;

  if (result != WM_OK)
    return result;

  if (!(near >= 0.0 && near <= n - 1))
    return wm_refuse (WM_OUT_OF_RANGE, "profile", which);

  p = make_profile (grey, n, samples_per_px);
  find_candidates (&p, near, reach_px * samples_per_px, sign, &all);
  if (all.n == 0)
    return wm_refuse (WM_NO_EDGE, "profile", which);

  *out = with_doubt (&p, &all, best_of (&all));
  return WM_OK;
}

/* The likeliest pair; false when no two edges stand in the right order. */
static int
best_pair (const Candidates *firsts, const Candidates *seconds, int *first, int *second)
{
  double best = 0.0;

  for (int i = 0; i < firsts->n; i++)
    for (int k = 0; k < seconds->n; k++)
      {
        const Candidate *a = &firsts->list[i];
        const Candidate *b = &seconds->list[k];
        double score = a->score * b->score;

        if (b->edge.at <= a->edge.at)
          continue;

        if (a->slope * b->slope > 0.0)
          score *= SAME_SIGN_SHARE;

        if (score > best)
          {
            best = score;
            *first = i;
            *second = k;
          }
      }

  return best > 0.0;
}

WmResult
wm_edge_snap_span (const double *grey, int n, double samples_per_px, double start,
                   double end, double reach_px, WmEdge *first, WmEdge *second,
                   const char **which)
{
  Candidates firsts, seconds;
  int i = 0, k = 0;
  double reach;
  Profile p;
  WmResult result = check_profile (grey, n, samples_per_px, reach_px, which);

  if (result != WM_OK)
    return result;

  if (!(start >= 0.0 && start < end && end <= n - 1))
    return wm_refuse (WM_OUT_OF_RANGE, "profile", which);

  p = make_profile (grey, n, samples_per_px);
  /* Never reach past the middle of the span: that edge belongs to the other end. */
  reach = fmin (reach_px * samples_per_px, 0.5 * (end - start));
  find_candidates (&p, start, reach, 0, &firsts);
  find_candidates (&p, end, reach, 0, &seconds);
  if (!best_pair (&firsts, &seconds, &i, &k))
    return wm_refuse (WM_NO_EDGE, "profile", which);

  *first = with_doubt (&p, &firsts, i);
  *second = with_doubt (&p, &seconds, k);
  return WM_OK;
}
