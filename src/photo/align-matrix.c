/* align-matrix.c: 3x3 matrices between photos
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/align-matrix.h"

#include <math.h>
#include <string.h>

#include <gsl/gsl_linalg.h>

void
wm_matrix_identity (double m[9])
{
  static const double one[9] = { 1, 0, 0, 0, 1, 0, 0, 0, 1 };

  memcpy (m, one, sizeof one);
}

void
wm_matrix_multiply (const double a[9], const double b[9], double out[9])
{
  double r[9];

  for (int i = 0; i < 3; i++)
    for (int j = 0; j < 3; j++)
      r[3 * i + j] = a[3 * i] * b[j] + a[3 * i + 1] * b[3 + j] + a[3 * i + 2] * b[6 + j];
  memcpy (out, r, sizeof r);
}

void
wm_matrix_rescale (const double m[9], double from, double to, double out[9])
{
  double a[9] = { to, 0, 0, 0, to, 0, 0, 0, 1 };
  double b[9] = { 1 / from, 0, 0, 0, 1 / from, 0, 0, 0, 1 };
  double r[9];

  wm_matrix_multiply (a, m, r);
  wm_matrix_multiply (r, b, r);
  memcpy (out, r, sizeof r);
}

WmPoint
wm_align_map (const double m[9], WmPoint p)
{
  double w = m[6] * p.x + m[7] * p.y + m[8];

  return (WmPoint) { (m[0] * p.x + m[1] * p.y + m[2]) / w,
                     (m[3] * p.x + m[4] * p.y + m[5]) / w };
}

gboolean
wm_align_invert (const double m[9], double inverse[9])
{
  double c[9] = { m[4] * m[8] - m[5] * m[7], m[2] * m[7] - m[1] * m[8],
                  m[1] * m[5] - m[2] * m[4], m[5] * m[6] - m[3] * m[8],
                  m[0] * m[8] - m[2] * m[6], m[2] * m[3] - m[0] * m[5],
                  m[3] * m[7] - m[4] * m[6], m[1] * m[6] - m[0] * m[7],
                  m[0] * m[4] - m[1] * m[3] };
  double det = m[0] * c[0] + m[1] * c[3] + m[2] * c[6];
  double by = fabs (c[8]) > 1e-300 ? c[8] : det;

  if (!isfinite (det) || fabs (det) < 1e-15 || fabs (by) < 1e-300)
    return FALSE;
  /* a matrix between photos means the same whatever its size: last one is 1 */
  for (int k = 0; k < 9; k++)
    inverse[k] = c[k] / by;
  return TRUE;
}

gboolean
wm_solve_symmetric (double *a, double *b, int n, double *inverse)
{
  gsl_matrix_view av = gsl_matrix_view_array (a, (size_t)n, (size_t)n);
  gsl_vector_view bv = gsl_vector_view_array (b, (size_t)n);
  double largest = 0.0;

  for (int i = 0; i < n; i++)
    {
      if (!isfinite (a[i * n + i]))
        return FALSE;
      largest = fmax (largest, a[i * n + i]);
    }
  /* GSL calls its error handler on a matrix that is not positive: factor by
   * hand first, cheaply, to know */
  g_autofree double *l = g_memdup2 (a, sizeof (double) * (gsize)(n * n));
  for (int j = 0; j < n; j++)
    {
      double d = l[j * n + j];

      for (int k = 0; k < j; k++)
        d -= l[j * n + k] * l[j * n + k];
      if (!(d > 1e-13 * largest))
        return FALSE;
      l[j * n + j] = sqrt (d);
      for (int i = j + 1; i < n; i++)
        {
          double s = l[i * n + j];

          for (int k = 0; k < j; k++)
            s -= l[i * n + k] * l[j * n + k];
          l[i * n + j] = s / l[j * n + j];
        }
    }
  gsl_linalg_cholesky_decomp1 (&av.matrix);
  gsl_linalg_cholesky_svx (&av.matrix, &bv.vector);
  if (inverse != NULL)
    {
      gsl_matrix_view iv = gsl_matrix_view_array (inverse, (size_t)n, (size_t)n);

      gsl_matrix_memcpy (&iv.matrix, &av.matrix);
      gsl_linalg_cholesky_invert (&iv.matrix);
    }
  return TRUE;
}

/* Shift and size that bring the points to the origin and about 1 apart. */
static gboolean
normalise_points (const WmPoint *p, const double *weights, int n, double out[9])
{
  double sum = 0, x = 0, y = 0, spread = 0;

  for (int i = 0; i < n; i++)
    {
      double w = weights != NULL ? weights[i] : 1.0;

      sum += w;
      x += w * p[i].x;
      y += w * p[i].y;
    }
  if (!(sum > 0))
    return FALSE;
  x /= sum;
  y /= sum;
  for (int i = 0; i < n; i++)
    spread += (weights != NULL ? weights[i] : 1.0)
              * ((p[i].x - x) * (p[i].x - x) + (p[i].y - y) * (p[i].y - y));
  spread = sqrt (spread / sum);
  if (!(spread > 1e-9) || !isfinite (spread))
    return FALSE;
  double m[9] = { 1 / spread, 0, -x / spread, 0, 1 / spread, -y / spread, 0, 0, 1 };
  memcpy (out, m, sizeof m);
  return TRUE;
}

static int
fill_rows (WmFitKind kind, WmPoint f, WmPoint t, double rx[8], double ry[8])
{
  memset (rx, 0, 8 * sizeof (double));
  memset (ry, 0, 8 * sizeof (double));
  if (kind == WM_FIT_SIMILARITY)
    {
      double x[4] = { f.x, -f.y, 1, 0 };
      double y[4] = { f.y, f.x, 0, 1 };

      memcpy (rx, x, sizeof x);
      memcpy (ry, y, sizeof y);
      return 4;
    }
  rx[0] = ry[3] = f.x;
  rx[1] = ry[4] = f.y;
  rx[2] = ry[5] = 1;
  if (kind == WM_FIT_AFFINE)
    return 6;
  rx[6] = -f.x * t.x;
  rx[7] = -f.y * t.x;
  ry[6] = -f.x * t.y;
  ry[7] = -f.y * t.y;
  return 8;
}

static void
unpack_fit (WmFitKind kind, const double *s, double m[9])
{
  if (kind == WM_FIT_SIMILARITY)
    {
      double r[9] = { s[0], -s[1], s[2], s[1], s[0], s[3], 0, 0, 1 };

      memcpy (m, r, sizeof r);
      return;
    }
  memcpy (m, s, 6 * sizeof (double));
  m[6] = kind == WM_FIT_PROJECTIVE ? s[6] : 0;
  m[7] = kind == WM_FIT_PROJECTIVE ? s[7] : 0;
  m[8] = 1;
}

/* One least squares pass in normalised coordinates. For a projective fit the
 * rows are divided by the last pass' denominator, so that distances count. */
static gboolean
solve_pass (WmFitKind kind, const WmPoint *from, const WmPoint *to, const double *weights,
            int n, const double nf[9], const double nt[9], double m[9], gboolean first)
{
  double a[64] = { 0 };
  double b[8] = { 0 };
  int k = 0;

  for (int i = 0; i < n; i++)
    {
      WmPoint f = wm_align_map (nf, from[i]);
      WmPoint t = wm_align_map (nt, to[i]);
      double rx[8], ry[8];
      double d = first ? 1.0 : m[6] * f.x + m[7] * f.y + 1.0;
      double w = (weights != NULL ? weights[i] : 1.0) / fmax (d * d, 1e-6);

      k = fill_rows (kind, f, t, rx, ry);
      for (int r = 0; r < k; r++)
        {
          for (int c = 0; c < k; c++)
            a[r * k + c] += w * (rx[r] * rx[c] + ry[r] * ry[c]);
          b[r] += w * (rx[r] * t.x + ry[r] * t.y);
        }
    }
  if (n < 2 || !wm_solve_symmetric (a, b, k, NULL))
    return FALSE;
  unpack_fit (kind, b, m);
  return TRUE;
}

gboolean
wm_matrix_fit (WmFitKind kind, const WmPoint *from, const WmPoint *to,
               const double *weights, int n, double m[9])
{
  double nf[9], nt[9], back[9], r[9];
  int passes = kind == WM_FIT_PROJECTIVE ? 3 : 1;

  if (!normalise_points (from, weights, n, nf) || !normalise_points (to, weights, n, nt)
      || !wm_align_invert (nt, back))
    return FALSE;
  for (int pass = 0; pass < passes; pass++)
    if (!solve_pass (kind, from, to, weights, n, nf, nt, r, pass == 0))
      return FALSE;

  wm_matrix_multiply (back, r, r);
  wm_matrix_multiply (r, nf, r);
  if (!(fabs (r[8]) > 1e-12) || !isfinite (r[8]))
    return FALSE;
  for (int k = 0; k < 9; k++)
    m[k] = r[k] / r[8];
  return TRUE;
}

/* Derivative of @m at @at: d[0..3] = dX/dx dX/dy dY/dx dY/dy; FALSE when the
 * place is beyond the horizon. */
static gboolean
derive_at (const double m[9], WmPoint at, double d[4])
{
  double w = m[6] * at.x + m[7] * at.y + m[8];
  WmPoint p = wm_align_map (m, at);

  if (!(w > 1e-6))
    return FALSE;
  d[0] = (m[0] - p.x * m[6]) / w;
  d[1] = (m[1] - p.x * m[7]) / w;
  d[2] = (m[3] - p.y * m[6]) / w;
  d[3] = (m[4] - p.y * m[7]) / w;
  return TRUE;
}

double
wm_matrix_scale_at (const double m[9], WmPoint at)
{
  double d[4], det;

  if (!derive_at (m, at, d))
    return 0.0;
  det = d[0] * d[3] - d[1] * d[2];
  return det >= 0 ? sqrt (det) : -sqrt (-det);
}

gboolean
wm_matrix_is_plausible (const double m[9], double width, double height, WmPoint centre)
{
  const WmPoint corners[4] = { { 0, 0 }, { width, 0 }, { 0, height }, { width, height } };
  double d[4], det, half, diff;

  for (int k = 0; k < 9; k++)
    if (!isfinite (m[k]))
      return FALSE;
  for (int k = 0; k < 4; k++)
    if (!(m[6] * corners[k].x + m[7] * corners[k].y + m[8] > 0.25 * m[8]))
      return FALSE;
  if (!derive_at (m, centre, d))
    return FALSE;
  det = d[0] * d[3] - d[1] * d[2];
  if (!(det > 0.35 * 0.35) || det > 2.9 * 2.9)
    return FALSE;
  /* singular values s1 >= s2: s1^2 + s2^2 = half * 2, s1 s2 = det */
  half = 0.5 * (d[0] * d[0] + d[1] * d[1] + d[2] * d[2] + d[3] * d[3]);
  diff = sqrt (fmax (half * half - det * det, 0.0));
  return (half + diff) <= 1.7 * 1.7 * (half - diff) || half + diff <= 1.7 * 1.7 * 1e-12;
}
