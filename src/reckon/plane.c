/* plane.c: the 3x3 matrix from photo pixels to millimetres, and lengths through it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/plane.h"

#include <math.h>
#include <string.h>

#include "reckon/scale.h"

#define N_EQUATIONS 8
/* A triangle of corners under this share of the whole is a line in practice. */
#define MIN_TRIANGLE_SHARE 0.01
/* Near the horizon a pixel is worth any length: refuse under a tenth of the
 * denominator at the rectangle's middle. */
#define MIN_HORIZON_SHARE 0.1
#define FAR_OUTSIDE 0.5
#define MAX_PX 1e6
#define MAX_MM 1e4

/* Shift and scale that bring four points to mean 0, mean distance sqrt 2. */
typedef struct
{
  double x, y, scale;
} Norm;

static Norm
find_norm (const WmPoint *p)
{
  Norm norm = { 0.0, 0.0, 0.0 };
  double distance = 0.0;

  for (int i = 0; i < 4; i++)
    {
      norm.x += p[i].x / 4.0;
      norm.y += p[i].y / 4.0;
    }

  for (int i = 0; i < 4; i++)
    distance += hypot (p[i].x - norm.x, p[i].y - norm.y) / 4.0;

  norm.scale = distance > 0.0 ? sqrt (2.0) / distance : 1.0;
  return norm;
}

/* Gauss with row exchange; false when a pivot vanishes. m is n rows of n + 1. */
static int
solve_linear (double m[N_EQUATIONS][N_EQUATIONS + 1], double *x)
{
  for (int c = 0; c < N_EQUATIONS; c++)
    {
      int best = c;

      for (int r = c + 1; r < N_EQUATIONS; r++)
        if (fabs (m[r][c]) > fabs (m[best][c]))
          best = r;

      if (!(fabs (m[best][c]) > 1e-12))
        return 0;

      for (int k = 0; k <= N_EQUATIONS; k++)
        {
          double swap = m[c][k];

          m[c][k] = m[best][k];
          m[best][k] = swap;
        }

      for (int r = c + 1; r < N_EQUATIONS; r++)
        {
          double share = m[r][c] / m[c][c];

          for (int k = c; k <= N_EQUATIONS; k++)
            m[r][k] -= share * m[c][k];
        }
    }

  for (int r = N_EQUATIONS - 1; r >= 0; r--)
    {
      x[r] = m[r][N_EQUATIONS];
      for (int k = r + 1; k < N_EQUATIONS; k++)
        x[r] -= m[r][k] * x[k];
      x[r] /= m[r][r];
    }

  return 1;
}

static void
multiply (const double *a, const double *b, double *out)
{
  for (int r = 0; r < 3; r++)
    for (int c = 0; c < 3; c++)
      out[3 * r + c] =
          a[3 * r] * b[c] + a[3 * r + 1] * b[3 + c] + a[3 * r + 2] * b[6 + c];
}

/* Two equations a pair, last element of the normalised matrix set to 1: the middle of
 * a convex quadrilateral never maps to infinity, so it is not 0. */
static int
find_matrix (const WmPoint *from, const WmPoint *to, double *matrix)
{
  Norm nf = find_norm (from);
  Norm nt = find_norm (to);
  double m[N_EQUATIONS][N_EQUATIONS + 1];
  double h[9];
  double half[9];

  for (int i = 0; i < 4; i++)
    {
      double x = (from[i].x - nf.x) * nf.scale;
      double y = (from[i].y - nf.y) * nf.scale;
      double u = (to[i].x - nt.x) * nt.scale;
      double v = (to[i].y - nt.y) * nt.scale;
      const double rows[2][N_EQUATIONS + 1] = {
        { x, y, 1, 0, 0, 0, -u * x, -u * y, u },
        { 0, 0, 0, x, y, 1, -v * x, -v * y, v },
      };

      memcpy (m[2 * i], rows, sizeof rows);
    }

  if (!solve_linear (m, h))
    return 0;

  h[8] = 1.0;
  {
    const double into[9] = { nf.scale, 0,        -nf.scale * nf.x,
                             0,        nf.scale, -nf.scale * nf.y,
                             0,        0,        1 };
    const double back[9] = { 1 / nt.scale, 0, nt.x, 0, 1 / nt.scale, nt.y, 0, 0, 1 };
    double whole[9];

    multiply (h, into, half);
    multiply (back, half, whole);
    for (int i = 0; i < 9; i++)
      matrix[i] = whole[i] / whole[8];
  }

  return isfinite (matrix[0]) && isfinite (matrix[8]);
}

static double
triangle (WmPoint a, WmPoint b, WmPoint c)
{
  return 0.5 * ((b.x - a.x) * (c.y - a.y) - (c.x - a.x) * (b.y - a.y));
}

/* Convex, in order, and no three corners nearly on a line. */
static int
is_quadrilateral (const WmPoint *p)
{
  double whole = triangle (p[0], p[1], p[2]) + triangle (p[0], p[2], p[3]);

  for (int i = 0; i < 4; i++)
    {
      double t = triangle (p[i], p[(i + 1) % 4], p[(i + 2) % 4]);

      if (!(t * whole > 0.0) || fabs (t) < MIN_TRIANGLE_SHARE * fabs (whole))
        return 0;
    }

  return 1;
}

static void
rectangle_corners (double width, double height, WmPoint *to)
{
  const WmPoint corners[4] = { { 0, 0 }, { width, 0 }, { width, height }, { 0, height } };

  memcpy (to, corners, sizeof corners);
}

WmResult
wm_plane_solve (WmPlane *plane, const char **which)
{
  const WmInputBound sizes[] = {
    WM_ABOVE ("plane_mm", plane->width_mm, 0.0, MAX_MM),
    WM_ABOVE ("plane_mm", plane->height_mm, 0.0, MAX_MM),
    WM_FROM ("u_point_px", wm_exact (plane->u_corner_px), 0.0, 1000.0),
  };
  WmPoint to[4];
  WmResult result = WM_OK;

  for (int i = 0; i < 4 && result == WM_OK; i++)
    {
      const WmInputBound corner[] = {
        WM_FROM ("plane", wm_exact (plane->corners[i].x), -MAX_PX, MAX_PX),
        WM_FROM ("plane", wm_exact (plane->corners[i].y), -MAX_PX, MAX_PX),
      };

      result = wm_bounds_check (corner, 2, which);
    }

  if (result == WM_OK)
    result = wm_bounds_check (sizes, 3, which);
  if (result != WM_OK)
    return result;

  if (!is_quadrilateral (plane->corners))
    return wm_refuse (WM_DEGENERATE, "plane", which);

  for (int i = 0; i < 4; i++)
    {
      WmPoint p = plane->corners[i];
      WmPoint q = plane->corners[(i + 1) % 4];

      if (hypot (q.x - p.x, q.y - p.y) < WM_MIN_RULER_PX)
        return wm_refuse (WM_TOO_SHORT, "plane", which);
    }

  rectangle_corners (plane->width_mm.value, plane->height_mm.value, to);
  if (!find_matrix (plane->corners, to, plane->matrix))
    return wm_refuse (WM_DEGENERATE, "plane", which);

  return WM_OK;
}

static double
denominator (const double *m, WmPoint px)
{
  return m[6] * px.x + m[7] * px.y + m[8];
}

static WmPoint
map_point (const double *m, WmPoint px)
{
  double w = denominator (m, px);
  WmPoint mm = { (m[0] * px.x + m[1] * px.y + m[2]) / w,
                 (m[3] * px.x + m[4] * px.y + m[5]) / w };

  return mm;
}

static WmPoint
middle_of (const WmPoint *p)
{
  WmPoint middle = { (p[0].x + p[1].x + p[2].x + p[3].x) / 4.0,
                     (p[0].y + p[1].y + p[2].y + p[3].y) / 4.0 };

  return middle;
}

WmResult
wm_plane_map (const WmPlane *plane, WmPoint px, WmPoint *mm)
{
  double w = denominator (plane->matrix, px);
  double w_middle = denominator (plane->matrix, middle_of (plane->corners));

  if (!isfinite (px.x) || !isfinite (px.y))
    return WM_NOT_A_NUMBER;

  if (w * w_middle <= 0.0 || fabs (w) < MIN_HORIZON_SHARE * fabs (w_middle))
    return WM_OUT_OF_RANGE;

  *mm = map_point (plane->matrix, px);
  return WM_OK;
}

/* x: four corners, width, height, two ends. */
static void
length_model (const double *x, double *y, const void *fixed)
{
  WmPoint from[4];
  WmPoint to[4];
  WmPoint a, b;
  double matrix[9];

  for (int i = 0; i < 4; i++)
    {
      from[i].x = x[2 * i];
      from[i].y = x[2 * i + 1];
    }

  rectangle_corners (x[8], x[9], to);
  if (!find_matrix (from, to, matrix))
    {
      y[0] = NAN;
      return;
    }

  a = map_point (matrix, (WmPoint) { x[10], x[11] });
  b = map_point (matrix, (WmPoint) { x[12], x[13] });
  y[0] = hypot (b.x - a.x, b.y - a.y);
}

/* Uncertainty when only inputs first..last carry any. */
static double
part_of_budget (const WmValue *all, int first, int last)
{
  WmValue x[14];
  WmValue y;

  for (int i = 0; i < 14; i++)
    x[i] = i >= first && i <= last ? all[i] : wm_exact (all[i].value);

  wm_propagate (length_model, NULL, x, 14, &y, 1, WM_STEP_SLOPE);
  return y.u;
}

static int
is_far_outside (const WmPlane *plane, WmPoint mm)
{
  double w = plane->width_mm.value;
  double h = plane->height_mm.value;

  return mm.x < -FAR_OUTSIDE * w || mm.x > (1.0 + FAR_OUTSIDE) * w
         || mm.y < -FAR_OUTSIDE * h || mm.y > (1.0 + FAR_OUTSIDE) * h;
}

/* Both ends mapped, or why they can not be. */
static WmResult
map_ends (const WmPlane *plane, WmPoint a, WmPoint b, double u_end_px, WmPoint *mm,
          const char **which)
{
  const WmInputBound end = WM_FROM ("u_end_px", wm_exact (u_end_px), 0.0, 1000.0);
  double span_px = hypot (b.x - a.x, b.y - a.y);
  WmResult result = wm_bounds_check (&end, 1, which);

  if (result != WM_OK)
    return result;

  result = wm_plane_map (plane, a, &mm[0]);
  if (result == WM_OK)
    result = wm_plane_map (plane, b, &mm[1]);
  if (result != WM_OK)
    return wm_refuse (result, "span", which);

  if (span_px == 0.0 || span_px < 10.0 * u_end_px)
    return wm_refuse (WM_TOO_SHORT, "span", which);

  return WM_OK;
}

WmResult
wm_plane_measure (const WmPlane *plane, const WmLie *lie, WmPoint a, WmPoint b,
                  double u_end_px, WmLength *out, const char **which)
{
  WmPoint mm[2];
  WmValue x[14];
  WmLength length;
  WmResult result = map_ends (plane, a, b, u_end_px, mm, which);

  if (result == WM_OK && lie != NULL)
    result = wm_lie_check (lie, which);
  if (result != WM_OK)
    return result;

  for (int i = 0; i < 4; i++)
    {
      x[2 * i] = wm_value (plane->corners[i].x, plane->u_corner_px);
      x[2 * i + 1] = wm_value (plane->corners[i].y, plane->u_corner_px);
    }

  x[8] = plane->width_mm;
  x[9] = plane->height_mm;
  x[10] = wm_value (a.x, u_end_px);
  x[11] = wm_value (a.y, u_end_px);
  x[12] = wm_value (b.x, u_end_px);
  x[13] = wm_value (b.y, u_end_px);

  memset (&length, 0, sizeof length);
  length.raw_mm = hypot (mm[1].x - mm[0].x, mm[1].y - mm[0].y);
  length.from_reference_points_mm = part_of_budget (x, 0, 7);
  length.from_reference_mm = part_of_budget (x, 8, 9);
  length.from_ends_mm = part_of_budget (x, 10, 13);
  if (is_far_outside (plane, mm[0]) || is_far_outside (plane, mm[1]))
    length.warnings |= WM_LENGTH_FAR_OUTSIDE;

  wm_length_finish (&length, lie);
  *out = length;
  return WM_OK;
}
