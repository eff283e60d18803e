/* align-fit.c: the matrix that agrees with where the places were found
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/align-track.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#define UNKNOWNS 8
#define ROUNDS 12

/* Less alike than this is not the same place: different places of a piece
 * reach 0.3 to 0.4 with their best shift (campaign). */
#define LEAST_LIKENESS 0.45

/* Agrees: within so many pixels of the level, as far as the place can tell. */
#define AGREES_PX 1.0

#define LEAST_PLACES 8

/* How far hand-held photos of a piece differ from a shift, a turn and a size, for
 * weak priors that matter only where the places say nothing: squeeze 10 %, and
 * 6 % change of size across the piece's radius (20 degrees of tilt at a
 * distance of ten times the piece's radius give half of that). */
#define PRIOR_SHAPE 0.10
#define PRIOR_HORIZON 0.06

/* What the change of the matrix does to a place at (u, v) of the piece. */
static void
fill_rows (double u, double v, double rx[UNKNOWNS], double ry[UNKNOWNS])
{
  const double x[UNKNOWNS] = { 1, 0, u, -v, u, v, u * u, u * v };
  const double y[UNKNOWNS] = { 0, 1, v, u, -v, u, u * v, v * v };

  memcpy (rx, x, sizeof x);
  memcpy (ry, y, sizeof y);
}

static inline double
weigh (double r2, double scale2)
{
  double t = 1 - r2 / scale2;

  return t > 0 ? t * t : 0; /* Tukey's biweight */
}

typedef struct
{
  const WmSighting *sightings;
  int n;
  WmPoint centre;
  double radius;
  double delta[UNKNOWNS]; /* level 0 pixels at the radius */
  double inverse[UNKNOWNS * UNKNOWNS];
  double scale; /* level 0 pixels */
} Fit;

static void
foretell (const Fit *fit, WmPoint at, double *x, double *y)
{
  double rx[UNKNOWNS], ry[UNKNOWNS];

  fill_rows ((at.x - fit->centre.x) / fit->radius, (at.y - fit->centre.y) / fit->radius,
             rx, ry);
  *x = *y = 0;
  for (int k = 0; k < UNKNOWNS; k++)
    {
      *x += rx[k] * fit->delta[k];
      *y += ry[k] * fit->delta[k];
    }
}

static double
off_of (const Fit *fit, const WmSighting *s)
{
  double x, y;

  foretell (fit, s->at, &x, &y);
  return wm_place_off2 (&s->place, s->shift.x - x, s->shift.y - y);
}

static void
add_place (const Fit *fit, const WmSighting *s, double weight, double *a, double *b)
{
  double rx[UNKNOWNS], ry[UNKNOWNS];
  double cx = s->place.across_x, cy = s->place.across_y, l = s->place.along;
  double axx = cx * cx + l * cy * cy;
  double axy = cx * cy * (1 - l);
  double ayy = cy * cy + l * cx * cx;

  fill_rows ((s->at.x - fit->centre.x) / fit->radius,
             (s->at.y - fit->centre.y) / fit->radius, rx, ry);
  for (int i = 0; i < UNKNOWNS; i++)
    {
      double px = axx * rx[i] + axy * ry[i];
      double py = axy * rx[i] + ayy * ry[i];

      for (int j = 0; j < UNKNOWNS; j++)
        a[i * UNKNOWNS + j] += weight * (px * rx[j] + py * ry[j]);
      b[i] += weight * (px * s->shift.x + py * s->shift.y);
    }
}

static gboolean
solve_round (Fit *fit)
{
  double a[UNKNOWNS * UNKNOWNS] = { 0 };
  double b[UNKNOWNS] = { 0 };
  int used = 0;

  for (int k = 0; k < fit->n; k++)
    {
      const WmSighting *s = &fit->sightings[k];
      double w;

      if (s->likeness < LEAST_LIKENESS)
        continue;
      w = weigh (off_of (fit, s), fit->scale * fit->scale) * s->likeness * s->likeness;
      if (w <= 0)
        continue;
      add_place (fit, s, w, a, b);
      used++;
    }
  if (used < LEAST_PLACES)
    return FALSE;
  /* in units where one place found to 1 pixel weighs 1 */
  for (int k = 0; k < 4; k++)
    a[k * UNKNOWNS + k] += 1e-6;
  for (int k = 4; k < 6; k++)
    a[k * UNKNOWNS + k] += 1 / (PRIOR_SHAPE * PRIOR_SHAPE * fit->radius * fit->radius);
  for (int k = 6; k < 8; k++)
    a[k * UNKNOWNS + k] +=
        1 / (PRIOR_HORIZON * PRIOR_HORIZON * fit->radius * fit->radius);
  memcpy (fit->delta, b, sizeof b);
  return wm_solve_symmetric (a, fit->delta, UNKNOWNS, fit->inverse);
}

static int
compare_doubles (const void *a, const void *b)
{
  double p = *(const double *)a;
  double q = *(const double *)b;

  return p < q ? -1 : p > q ? 1 : 0;
}

/* Root mean square over the piece of the uncertainty of what is foretold; each
 * place is taken to be good to @sigma. */
static double
reckon_doubt (const Fit *fit, double sigma)
{
  double sum = 0;
  int n = 0;

  for (int k = 0; k < fit->n; k++)
    {
      const WmSighting *s = &fit->sightings[k];
      double rx[UNKNOWNS], ry[UNKNOWNS];

      if (s->likeness < -1)
        continue;
      fill_rows ((s->at.x - fit->centre.x) / fit->radius,
                 (s->at.y - fit->centre.y) / fit->radius, rx, ry);
      for (int i = 0; i < UNKNOWNS; i++)
        for (int j = 0; j < UNKNOWNS; j++)
          sum += fit->inverse[i * UNKNOWNS + j] * (rx[i] * rx[j] + ry[i] * ry[j]);
      n++;
    }
  return n > 0 ? sigma * sqrt (sum / n) : INFINITY;
}

/* The piece in PARTS x PARTS parts; one counts when it was tried at several
 * places, and is found when enough of them agree: by accident one in eight
 * does (different pieces of the campaign). */
#define PARTS 6
#define PART_TRIED 3
#define PART_SHARE 0.25

static double
measure_spread (const Fit *fit, const WmSighting *sightings)
{
  int tried[PARTS][PARTS] = { { 0 } }, agreed[PARTS][PARTS] = { { 0 } };
  int parts = 0, found = 0;

  for (int k = 0; k < fit->n; k++)
    {
      const WmSighting *s = &sightings[k];
      /* the piece reaches about twice its root mean square extent */
      double u = (s->at.x - fit->centre.x) / (4 * fit->radius) + 0.5;
      double v = (s->at.y - fit->centre.y) / (4 * fit->radius) + 0.5;
      int i = CLAMP ((int)(u * PARTS), 0, PARTS - 1);
      int j = CLAMP ((int)(v * PARTS), 0, PARTS - 1);

      tried[j][i] += s->likeness >= -1;
      agreed[j][i] += s->agrees;
    }
  for (int k = 0; k < PARTS * PARTS; k++)
    {
      int t = tried[k / PARTS][k % PARTS];

      if (t < PART_TRIED)
        continue;
      parts++;
      found += agreed[k / PARTS][k % PARTS] >= PART_SHARE * t;
    }
  return parts > 0 ? (double)found / parts : 0;
}

static void
judge (const Fit *fit, WmSighting *sightings, double factor, WmTrack *track)
{
  g_autofree double *offs = g_new (double, (gsize)fit->n + 1);
  int agreed = 0;
  double tried = 0, share = 0;

  *track = (WmTrack) { 0 };
  for (int k = 0; k < fit->n; k++)
    {
      WmSighting *s = &sightings[k];

      if (s->likeness < -1)
        continue;
      track->tried++;
      tried += wm_place_weight (&s->place);
      s->off = sqrt (off_of (fit, s));
      s->agrees = s->likeness >= LEAST_LIKENESS && s->off < AGREES_PX * factor;
      if (!s->agrees)
        continue;
      offs[agreed++] = s->off;
      share += wm_place_weight (&s->place);
    }
  track->agreed = agreed;
  track->share = tried > 0 ? share / tried : 0;
  track->spread = measure_spread (fit, sightings);
  qsort (offs, (size_t)agreed, sizeof *offs, compare_doubles);
  track->residual_px = agreed > 0 ? offs[agreed / 2] : 0;
  /* a place is good to what is left over (median to sigma: 1.48), never better
   * than a fifth of a pixel */
  track->doubt_px = reckon_doubt (fit, fmax (1.48 * track->residual_px, 0.2 * factor));
}

void
wm_track_judge (WmSighting *sightings, int n, int level, WmTrack *track)
{
  Fit fit = { .sightings = sightings, .n = n, .radius = 1 };

  judge (&fit, sightings, 1 << level, track);
}

/* to_after := to_after * (identity + what was found), in the before photo. */
static void
move_matrix (const Fit *fit, double to_after[9])
{
  const double *d = fit->delta;
  double r = fit->radius;
  double change[9] = { 1 + (d[2] + d[4]) / r,
                       (-d[3] + d[5]) / r,
                       d[0] / r,
                       (d[3] + d[5]) / r,
                       1 + (d[2] - d[4]) / r,
                       d[1] / r,
                       -d[6] / r,
                       -d[7] / r,
                       1 };
  double in[9] = { 1 / r, 0, -fit->centre.x / r, 0, 1 / r, -fit->centre.y / r, 0, 0, 1 };
  double out[9] = { r, 0, fit->centre.x, 0, r, fit->centre.y, 0, 0, 1 };
  double m[9];

  wm_matrix_multiply (change, in, m);
  wm_matrix_multiply (out, m, m);
  wm_matrix_multiply (to_after, m, m);
  for (int k = 0; k < 9; k++)
    to_after[k] = m[k] / m[8];
}

gboolean
wm_track_fit (WmSighting *sightings, int n, int level, WmPoint centre, double radius,
              double to_after[9], WmTrack *track)
{
  double factor = 1 << level;
  Fit fit = {
    .sightings = sightings, .n = n, .centre = centre, .radius = fmax (radius, 8 * factor)
  };

  *track = (WmTrack) { 0 };
  for (int round = 0; round < ROUNDS; round++)
    {
      /* from all that was looked at down to what agrees */
      fit.scale = factor * fmax (2.0, (WM_TRACK_REACH + 2) * pow (0.7, round));
      if (!solve_round (&fit))
        return FALSE;
    }
  judge (&fit, sightings, factor, track);
  move_matrix (&fit, to_after);
  return TRUE;
}
