/* align-points.c: the matrix from pairs of points placed by hand
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/align.h"

#include <math.h>

#include "photo/align-matrix.h"

/* Points count as on one line when they leave it by less than this share of
 * their extent: a slip of the hand of 1 pixel in 100 must not decide the tilt. */
#define LEAST_BREADTH 0.02

/* Ratio of the smaller to the larger extent of the points, 0 when they coincide. */
static double
measure_breadth (const WmPoint *p, int n)
{
  double x = 0, y = 0, xx = 0, xy = 0, yy = 0, half, diff;

  for (int k = 0; k < n; k++)
    {
      x += p[k].x / n;
      y += p[k].y / n;
    }
  for (int k = 0; k < n; k++)
    {
      xx += (p[k].x - x) * (p[k].x - x);
      xy += (p[k].x - x) * (p[k].y - y);
      yy += (p[k].y - y) * (p[k].y - y);
    }
  half = 0.5 * (xx + yy);
  diff = sqrt (0.25 * (xx - yy) * (xx - yy) + xy * xy);
  return half + diff > 0 ? sqrt (fmax (half - diff, 0) / (half + diff)) : 0;
}

/* With four points no three may lie on a line, or the tilt is not determined. Two
 * always lie on one; they only must not coincide, which the fit itself sees. */
static gboolean
has_enough_breadth (const WmPoint *p, int n)
{
  if (n == 2)
    return TRUE;
  if (measure_breadth (p, n) < LEAST_BREADTH)
    return FALSE;
  for (int skip = 0; n == 4 && skip < 4; skip++)
    {
      WmPoint three[3];

      for (int k = 0, m = 0; k < 4; k++)
        if (k != skip)
          three[m++] = p[k];
      if (measure_breadth (three, 3) < LEAST_BREADTH)
        return FALSE;
    }
  return TRUE;
}

double
wm_align_measure_points (const double matrix[9], const WmPoint *before,
                         const WmPoint *after, int n)
{
  double sum = 0;

  for (int k = 0; k < n; k++)
    {
      WmPoint p = wm_align_map (matrix, after[k]);

      sum += (p.x - before[k].x) * (p.x - before[k].x)
             + (p.y - before[k].y) * (p.y - before[k].y);
    }
  return n > 0 ? sqrt (sum / n) : 0;
}

WmResult
wm_align_from_points (const WmPoint *before, const WmPoint *after, int n,
                      double matrix[9], double *residual_px)
{
  WmFitKind kind = n == 2   ? WM_FIT_SIMILARITY
                   : n == 3 ? WM_FIT_AFFINE
                            : WM_FIT_PROJECTIVE;
  double m[9];

  if (n < 2)
    return WM_TOO_FEW;
  for (int k = 0; k < n; k++)
    if (!isfinite (before[k].x) || !isfinite (before[k].y) || !isfinite (after[k].x)
        || !isfinite (after[k].y))
      return WM_NOT_A_NUMBER;
  if (!has_enough_breadth (before, n) || !has_enough_breadth (after, n)
      || !wm_matrix_fit (kind, after, before, NULL, n, m))
    return WM_DEGENERATE;
  for (int k = 0; k < n; k++)
    {
      WmPoint p = wm_align_map (m, after[k]);

      if (!(wm_matrix_scale_at (m, after[k]) > 0) || !isfinite (p.x) || !isfinite (p.y))
        return WM_DEGENERATE;
    }
  for (int k = 0; k < 9; k++)
    matrix[k] = m[k];
  if (residual_px != NULL)
    *residual_px = n <= 4 ? 0 : wm_align_measure_points (m, before, after, n);
  return WM_OK;
}
