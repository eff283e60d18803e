/* test-plane.c: lengths through a known rectangle
 *
 * Expected values: cases R1 and R2 from OpenCV 4.6 getPerspectiveTransform and
 * findHomography (agreeing to 1e-13), uncertainties from the numerical Jacobian with a
 * Monte Carlo run of 20,000 draws beside them; GSL's singular values as a second way to
 * the same matrix.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/plane.h"

#include <gsl/gsl_linalg.h>

#include "near.h"

static WmPlane
plane_r1 (double u_corner)
{
  WmPlane plane = {
    .corners = { { 412, 318 }, { 1610, 275 }, { 1702, 1124 }, { 355, 1190 } },
    .width_mm = { 85.5, 0.05 },
    .height_mm = { 54.0, 0.05 },
    .u_corner_px = u_corner,
  };

  return plane;
}

static WmPlane
plane_r2 (void)
{
  WmPlane plane = {
    .corners = { { 120, 80 }, { 520, 140 }, { 560, 420 }, { 60, 380 } },
    .width_mm = { 100, 0 },
    .height_mm = { 60, 0 },
  };

  return plane;
}

static void
assert_maps (const WmPlane *plane, double x, double y, double mm_x, double mm_y)
{
  WmPoint mm = { 0, 0 };

  g_assert_cmpint (wm_plane_map (plane, (WmPoint) { x, y }, &mm), ==, WM_OK);
  wm_assert_near (mm.x, mm_x, 1e-9);
  wm_assert_near (mm.y, mm_y, 1e-9);
}

static void
test_r1 (void)
{
  static const double expected[9] = {
    7.329721961682e-02,  4.791217337338e-03, -3.172206159540e+01,
    2.617625896579e-03,  7.292827497910e-02, -2.426965331275e+01,
    -1.034570116453e-05, 1.500556831154e-04, 1.0
  };
  WmPlane plane = plane_r1 (1.0);

  g_assert_cmpint (wm_plane_solve (&plane, NULL), ==, WM_OK);
  for (int i = 0; i < 9; i++)
    wm_assert_relative (plane.matrix[i], expected[i], 1e-9);

  assert_maps (&plane, 1000, 700, 41.042556029955, 26.854796394962);
  assert_maps (&plane, 600, 600, 13.960728685489, 19.429214120230);
  assert_maps (&plane, 1500, 400, 76.725676620591, 8.451952197060);
}

static void
test_r2 (void)
{
  WmPlane plane = plane_r2 ();

  g_assert_cmpint (wm_plane_solve (&plane, NULL), ==, WM_OK);
  wm_assert_relative (plane.matrix[0], 0.22547226837, 1e-9);
  wm_assert_relative (plane.matrix[2], -30.664228498, 1e-9);
  wm_assert_relative (plane.matrix[5], -15.550674229, 1e-9);
  wm_assert_relative (plane.matrix[6], -3.5856188629e-4, 1e-9);
  wm_assert_relative (plane.matrix[7], 8.2427090387e-4, 1e-9);
  assert_maps (&plane, 300, 250, 43.9245355699, 32.6508011659);
}

/* The same matrix as the least singular vector of the plain equations (GSL). */
static void
test_against_gsl (void)
{
  WmPlane plane = plane_r2 ();
  const WmPoint to[4] = { { 0, 0 }, { 100, 0 }, { 100, 60 }, { 0, 60 } };
  gsl_matrix *a = gsl_matrix_calloc (9, 9);
  gsl_matrix *v = gsl_matrix_alloc (9, 9);
  gsl_vector *s = gsl_vector_alloc (9);
  gsl_vector *work = gsl_vector_alloc (9);

  for (int i = 0; i < 4; i++)
    {
      double x = plane.corners[i].x / 300.0;
      double y = plane.corners[i].y / 300.0;
      const double rows[2][9] = {
        { 0, 0, 0, -x, -y, -1, to[i].y * x, to[i].y * y, to[i].y },
        { x, y, 1, 0, 0, 0, -to[i].x * x, -to[i].x * y, -to[i].x }
      };

      for (int r = 0; r < 2; r++)
        for (int c = 0; c < 9; c++)
          gsl_matrix_set (a, 2 * i + r, c, rows[r][c]);
    }

  gsl_linalg_SV_decomp (a, v, s, work);
  g_assert_cmpint (wm_plane_solve (&plane, NULL), ==, WM_OK);
  for (int i = 0; i < 9; i++)
    {
      double scale = i % 3 == 2 ? 1.0 : 1.0 / 300.0;

      wm_assert_relative (plane.matrix[i],
                          gsl_matrix_get (v, i, 8) / gsl_matrix_get (v, 8, 8) * scale,
                          1e-8);
    }

  gsl_matrix_free (a);
  gsl_matrix_free (v);
  gsl_vector_free (s);
  gsl_vector_free (work);
}

static void
test_uncertainty (void)
{
  const struct
  {
    double u_px;
    WmPoint a, b;
    double length, corners, reference, ends, u, monte_carlo;
  } rows[] = {
    { 1.0,
      { 600, 600 },
      { 1500, 400 },
      63.717650,
      0.062417,
      0.036198,
      0.098086,
      0.121767,
      0.121518 },
    { 1.0,
      { 1000, 700 },
      { 1060, 700 },
      4.046094,
      0.003213,
      0.002362,
      0.095378,
      0.095461,
      0.095425 },
    { 0.5,
      { 1000, 700 },
      { 1060, 700 },
      4.046094,
      0.001606,
      0.002362,
      0.047689,
      0.047774,
      0.047767 },
    { 1.0,
      { 2000, 1400 },
      { 2060, 1400 },
      3.756657,
      0.014086,
      0.002192,
      0.089058,
      0.090191,
      0.090366 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      WmPlane plane = plane_r1 (rows[i].u_px);
      WmLength length;

      g_assert_cmpint (wm_plane_solve (&plane, NULL), ==, WM_OK);
      g_assert_cmpint (wm_plane_measure (&plane, NULL, rows[i].a, rows[i].b, rows[i].u_px,
                                         &length, NULL),
                       ==, WM_OK);
      wm_assert_near (length.value_mm, rows[i].length, 0.6e-6);
      wm_assert_near (length.from_reference_points_mm, rows[i].corners, 1e-6);
      wm_assert_near (length.from_reference_mm, rows[i].reference, 1e-6);
      wm_assert_near (length.from_ends_mm, rows[i].ends, 1e-6);
      wm_assert_near (length.u_mm, rows[i].u, 1e-6);
      wm_assert_relative (length.u_mm, rows[i].monte_carlo, 0.01);
    }
}

static void
test_far_outside_warns (void)
{
  WmPlane plane = plane_r1 (1.0);
  WmLength length;

  g_assert_cmpint (wm_plane_solve (&plane, NULL), ==, WM_OK);
  g_assert_cmpint (wm_plane_measure (&plane, NULL, (WmPoint) { 2500, 700 },
                                     (WmPoint) { 2600, 700 }, 1.0, &length, NULL),
                   ==, WM_OK);
  g_assert_cmpuint (length.warnings & WM_LENGTH_FAR_OUTSIDE, !=, 0);
}

static void
test_refusals (void)
{
  const struct
  {
    WmPoint corners[4];
    double width, u;
    WmResult result;
    const char *which;
  } rows[] = {
    /* three on a line; crossing itself; a dent; too small; not a number */
    { { { 0, 0 }, { 100, 0 }, { 200, 0 }, { 0, 100 } }, 10, 1, WM_DEGENERATE, "plane" },
    { { { 0, 0 }, { 100, 100 }, { 100, 0 }, { 0, 100 } }, 10, 1, WM_DEGENERATE, "plane" },
    { { { 0, 0 }, { 200, 0 }, { 60, 60 }, { 0, 200 } }, 10, 1, WM_DEGENERATE, "plane" },
    { { { 0, 0 }, { 40, 0 }, { 40, 40 }, { 0, 40 } }, 10, 1, WM_TOO_SHORT, "plane" },
    { { { NAN, 0 }, { 90, 0 }, { 90, 90 }, { 0, 90 } }, 10, 1, WM_NOT_A_NUMBER, "plane" },
    { { { 0, 0 }, { 90, 0 }, { 90, 90 }, { 0, 90 } }, 0, 1, WM_NOT_POSITIVE, "plane_mm" },
    { { { 0, 0 }, { 90, 0 }, { 90, 90 }, { 0, 90 } },
      10,
      -1,
      WM_NOT_POSITIVE,
      "u_point_px" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      WmPlane plane = { .width_mm = { rows[i].width, 0 },
                        .height_mm = { 10, 0 },
                        .u_corner_px = rows[i].u };
      const char *which = NULL;

      for (int k = 0; k < 4; k++)
        plane.corners[k] = rows[i].corners[k];

      g_assert_cmpint (wm_plane_solve (&plane, &which), ==, rows[i].result);
      g_assert_cmpstr (which, ==, rows[i].which);
    }
}

static void
test_horizon (void)
{
  WmPlane plane = plane_r2 ();
  WmPoint mm;
  WmLength length;
  const char *which = NULL;

  g_assert_cmpint (wm_plane_solve (&plane, NULL), ==, WM_OK);
  /* The denominator of R2 vanishes at x = 1 / 3.5856e-4 on the line y = 0. */
  g_assert_cmpint (wm_plane_map (&plane, (WmPoint) { 2788, 0 }, &mm), ==,
                   WM_OUT_OF_RANGE);
  g_assert_cmpint (wm_plane_map (&plane, (WmPoint) { 9000, 0 }, &mm), ==,
                   WM_OUT_OF_RANGE);
  g_assert_cmpint (wm_plane_measure (&plane, NULL, (WmPoint) { 300, 250 },
                                     (WmPoint) { 2788, 0 }, 1.0, &length, &which),
                   ==, WM_OUT_OF_RANGE);
  g_assert_cmpstr (which, ==, "span");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reckon/plane/r1", test_r1);
  g_test_add_func ("/reckon/plane/r2", test_r2);
  g_test_add_func ("/reckon/plane/against-gsl", test_against_gsl);
  g_test_add_func ("/reckon/plane/uncertainty", test_uncertainty);
  g_test_add_func ("/reckon/plane/far-outside-warns", test_far_outside_warns);
  g_test_add_func ("/reckon/plane/refusals", test_refusals);
  g_test_add_func ("/reckon/plane/horizon", test_horizon);
  return g_test_run ();
}
