/* edge.c: which edge was meant, and where exactly it lies
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/edge.h"

#include <math.h>

#include "reckon/edge-profile.h"

/* A step under 3 % of white (coded) is dirt, not an edge (our own choice). */
#define MIN_CONTRAST 0.03
/* And it must stand this many noise widths out of the noise. */
#define MIN_SIGNAL 5.0
/* Peaks a filter of this width can have within the largest reach. */
#define MAX_CANDIDATES 64
/* A peak a quarter as steep as the steepest in reach is texture beside an edge (our own
 * choice). */
#define LEAST_STEEPNESS 0.10
/* Pixels are squares: no photo is sharper than a blur of 0.3 px (a square pixel's
 * standard deviation is 0.29). */
#define LEAST_BLUR2 0.09
/* The camera's own curve is not known, so the correction for coding is trusted to half.
 */
#define SHIFT_TRUST 0.5
/* From a fifth of white on (coded) an edge is as clear as it can be. */
#define CLEAR_CONTRAST 0.2
/* How likely it is that the edge that was meant can not be seen, against a clear one
 * right at the mark (tuned on rendered metal, see the header). */
#define UNSEEN_SCORE 0.10
/* Two edges of the same sign are rarely the two sides of one piece of metal (our own
 * choice). */
#define SAME_SIGN_SHARE 0.3

/* One place where the slope peaks. */
typedef struct
{
  WmEdge edge;
  WmEdgeStep step;
  double steepness;
  double score; /* how likely it is the one that was meant */
} Candidate;

typedef struct
{
  Candidate list[MAX_CANDIDATES];
  int n;
  double near; /* where the end was placed */
  double hand; /* how far off that may be: standard deviation, samples */
} Candidates;

static WmResult
check_profile (const WmLightProfile *light, double reach_px, const char **which)
{
  const WmInputBound bounds[] = {
    WM_ABOVE ("profile", wm_exact (light->samples_per_px), 0.0, 8.0),
    WM_FROM ("reach_px", wm_exact (reach_px), 1.0, 200.0),
  };

  if (light->n < 16 || light->n > WM_EDGE_MAX_SAMPLES)
    return wm_refuse (light->n < 16 ? WM_TOO_FEW : WM_OUT_OF_RANGE, "profile", which);

  if (light->n_channels != 1 && light->n_channels != WM_EDGE_CHANNELS)
    return wm_refuse (WM_OUT_OF_RANGE, "profile", which);

  for (int i = 0; i < light->n * light->n_channels; i++)
    if (!isfinite (light->light[i]))
      return wm_refuse (WM_NOT_A_NUMBER, "profile", which);

  return wm_bounds_check (bounds, 2, which);
}

/* The step's sign: brighter with rising index or darker; of a pure change of colour, that
 * of its strongest channels. */
static int
sign_of (const WmEdgeProfile *p, const WmEdgeStep *step)
{
  double sum = 0.0;

  for (int c = 0; c < p->n_channels; c++)
    sum += step->direction[c];

  return sum < 0.0 ? -1 : 1;
}

/* Refines the peak round sample i: a parabola through the logarithms of the slope along
 * the step, exact for a blurred step, whose slope is itself a Gaussian. */
static int
refine_peak (const WmEdgeProfile *p, int i, Candidate *c)
{
  double left = wm_edge_slope (p, &c->step, i - 1);
  double middle = wm_edge_slope (p, &c->step, i);
  double right = wm_edge_slope (p, &c->step, i + 1);
  double curvature, blur2, shift, noise_px;

  if (!(left > 0.0 && middle > 0.0 && right > 0.0))
    return 0;

  curvature = log (left * right / (middle * middle));
  if (curvature >= 0.0)
    return 0;

  /* What is left of the peak's width without the filter is the photo's own blur. */
  blur2 =
      fmax (-1.0 / curvature - p->blur * p->blur, LEAST_BLUR2 * p->per_px * p->per_px);
  shift = wm_edge_coded_shift (p, &c->step, sqrt (blur2));
  noise_px = wm_edge_noise_of_place (p, curvature * middle) / p->per_px;

  c->edge.at = i + fmax (-1.0, fmin (1.0, 0.5 * log (left / right) / curvature)) - shift;
  c->edge.contrast = sign_of (p, &c->step) * c->step.height;
  c->edge.u_seen_px =
      sqrt (noise_px * noise_px + pow (SHIFT_TRUST * shift / p->per_px, 2.0)
            + WM_EDGE_MODEL_U_PX * WM_EDGE_MODEL_U_PX);
  return 1;
}

/* Whether an edge worth the name peaks at sample i. */
static int
find_peak (const WmEdgeProfile *p, int i, int sign, Candidate *c)
{
  double noise = p->noise / sqrt (p->blur * 2.0 * sqrt (M_PI));

  c->steepness = wm_edge_steepness (p, i);
  if (c->steepness < wm_edge_steepness (p, i - 1)
      || c->steepness <= wm_edge_steepness (p, i + 1))
    return 0;

  wm_edge_step_at (p, i, &c->step);
  if (c->step.height < fmax (MIN_CONTRAST, MIN_SIGNAL * noise)
      || (sign != 0 && sign_of (p, &c->step) != sign))
    return 0;

  return refine_peak (p, i, c);
}

static void
drop_texture (Candidates *all)
{
  double steepest = 0.0;
  int kept = 0;

  for (int i = 0; i < all->n; i++)
    steepest = fmax (steepest, all->list[i].steepness);

  for (int i = 0; i < all->n; i++)
    if (all->list[i].steepness >= LEAST_STEEPNESS * steepest)
      all->list[kept++] = all->list[i];

  all->n = kept;
}

/* All edges within reach of the mark. Clear ones count, and near ones. */
static void
find_candidates (const WmEdgeProfile *p, double near, double reach, int sign,
                 Candidates *all)
{
  all->n = 0;
  all->near = near;
  all->hand = reach * WM_EDGE_HAND_SHARE;

  for (int i = (int)ceil (near - reach); i <= (int)floor (near + reach); i++)
    {
      Candidate *c = &all->list[all->n];
      double off;

      if (i < 1 || i > p->n - 2 || all->n == MAX_CANDIDATES || !find_peak (p, i, sign, c))
        continue;

      off = (c->edge.at - near) / all->hand;
      c->score = fmin (1.0, c->step.height / CLEAR_CONTRAST) * exp (-0.5 * off * off);
      all->n++;
    }

  drop_texture (all);
}

/* The edge with the doubt which of several was meant added to its uncertainty, and
 * whether the one that was meant is seen at all: metal that mirrors its ground has no
 * outline. */
static WmEdge
with_doubt (const WmEdgeProfile *p, const Candidates *all, int chosen)
{
  WmEdge edge = all->list[chosen].edge;
  double unseen = edge.at - all->near;
  double sum = UNSEEN_SCORE;
  double spread = UNSEEN_SCORE * (unseen * unseen + all->hand * all->hand);

  for (int i = 0; i < all->n; i++)
    {
      double off = all->list[i].edge.at - edge.at;

      sum += all->list[i].score;
      spread += all->list[i].score * off * off;
    }

  edge.u_px = hypot (edge.u_seen_px, sqrt (spread / sum) / p->per_px);
  return edge;
}

/* No edge to be seen: the end stays, as uncertain as the hand. */
static WmEdge
as_placed (const WmEdgeProfile *p, const Candidates *all)
{
  double hand_px = all->hand / p->per_px;
  WmEdge edge = { all->near, hand_px, hand_px, 0.0 };

  return edge;
}

/* Likelier than that the edge is not seen; -1 when none is. */
static int
best_of (const Candidates *all)
{
  int best = -1;

  for (int i = 0; i < all->n; i++)
    if (all->list[i].score > (best < 0 ? UNSEEN_SCORE : all->list[best].score))
      best = i;

  return best;
}

WmResult
wm_edge_find (const WmLightProfile *profile, double near, double reach_px, int sign,
              WmEdge *out, const char **which)
{
  WmResult result = check_profile (profile, reach_px, which);
  WmEdgeProfile p;
  Candidates all;
  int best;

  if (result != WM_OK)
    return result;

  if (!(near >= 0.0 && near <= profile->n - 1))
    return wm_refuse (WM_OUT_OF_RANGE, "profile", which);

  wm_edge_profile_make (profile, &p);
  find_candidates (&p, near, reach_px * p.per_px, sign, &all);
  best = best_of (&all);
  if (best < 0)
    return wm_refuse (WM_NO_EDGE, "profile", which);

  *out = with_doubt (&p, &all, best);
  return WM_OK;
}

/* How well two edges go together as the two sides of one piece of metal. */
static double
pair_score (const WmEdgeProfile *p, const Candidate *a, const Candidate *b)
{
  double along = 0.0;

  if (b->edge.at <= a->edge.at || a->score < UNSEEN_SCORE || b->score < UNSEEN_SCORE)
    return 0.0;

  for (int c = 0; c < p->n_channels; c++)
    along += a->step.direction[c] * b->step.direction[c];

  return a->score * b->score * (along > 0.0 ? SAME_SIGN_SHARE : 1.0);
}

WmResult
wm_edge_snap_span (const WmLightProfile *profile, double start, double end,
                   double reach_px, WmEdge *first, WmEdge *second, const char **which)
{
  Candidates firsts, seconds;
  int best_first = 0, best_second = 0;
  double best = 0.0;
  double reach;
  WmEdgeProfile p;
  WmResult result = check_profile (profile, reach_px, which);

  if (result != WM_OK)
    return result;

  if (!(start >= 0.0 && start < end && end <= profile->n - 1))
    return wm_refuse (WM_OUT_OF_RANGE, "profile", which);

  wm_edge_profile_make (profile, &p);
  /* Never reach past the middle of the span: that edge belongs to the other end. */
  reach = fmin (reach_px * p.per_px, 0.5 * (end - start));
  find_candidates (&p, start, reach, 0, &firsts);
  find_candidates (&p, end, reach, 0, &seconds);

  for (int i = 0; i < firsts.n; i++)
    for (int k = 0; k < seconds.n; k++)
      {
        double score = pair_score (&p, &firsts.list[i], &seconds.list[k]);

        if (score > best)
          {
            best = score;
            best_first = i;
            best_second = k;
          }
      }

  if (best <= 0.0)
    {
      best_first = best_of (&firsts);
      best_second = best_of (&seconds);
    }

  if (best_first < 0 && best_second < 0)
    return wm_refuse (WM_NO_EDGE, "profile", which);

  *first =
      best_first >= 0 ? with_doubt (&p, &firsts, best_first) : as_placed (&p, &firsts);
  *second = best_second >= 0 ? with_doubt (&p, &seconds, best_second)
                             : as_placed (&p, &seconds);
  return WM_OK;
}
