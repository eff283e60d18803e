/* test-align-points.c: the matrix from points placed by hand, and its arithmetic
 *
 * Expected matrices are worked out by hand in the comments.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <math.h>
#include <string.h>

#include "photo/align-matrix.h"

static void
assert_carries (const double m[9], const WmPoint *after, const WmPoint *before, int n)
{
  for (int k = 0; k < n; k++)
    {
      WmPoint p = wm_align_map (m, after[k]);

      g_assert_cmpfloat_with_epsilon (p.x, before[k].x, 1e-7);
      g_assert_cmpfloat_with_epsilon (p.y, before[k].y, 1e-7);
    }
}

/* Two points, the same quarter turn and size as below: the first two of them. */
static void
test_two_points (void)
{
  const WmPoint after[] = { { 0, 0 }, { 100, 0 } };
  const WmPoint before[] = { { 10, 5 }, { 10, -195 } };
  const double expected[9] = { 0, 2, 10, -2, 0, 5, 0, 0, 1 };
  double m[9];

  g_assert_cmpint (wm_align_from_points (before, after, 2, m, NULL), ==, WM_OK);
  for (int k = 0; k < 9; k++)
    g_assert_cmpfloat_with_epsilon (m[k], expected[k], 1e-9);
}

/* Three points: x' = 2 y + 10, y' = -2 x + 5 (a quarter turn, twice the size). */
static void
test_three_points (void)
{
  const WmPoint after[] = { { 0, 0 }, { 100, 0 }, { 0, 50 } };
  const WmPoint before[] = { { 10, 5 }, { 10, -195 }, { 110, 5 } };
  const double expected[9] = { 0, 2, 10, -2, 0, 5, 0, 0, 1 };
  double m[9], residual = -1;

  g_assert_cmpint (wm_align_from_points (before, after, 3, m, &residual), ==, WM_OK);
  for (int k = 0; k < 9; k++)
    g_assert_cmpfloat_with_epsilon (m[k], expected[k], 1e-9);
  g_assert_cmpfloat (residual, ==, 0);
}

/* Four points: the unit square onto a trapezium. With x' = x / (1 + y / 2) and
 * y' = 1.5 y / (1 + y / 2) its far corners come to (0, 1) and (2/3, 1). */
static void
test_four_points (void)
{
  const WmPoint after[] = { { 0, 0 }, { 1, 0 }, { 1, 1 }, { 0, 1 } };
  const WmPoint before[] = { { 0, 0 }, { 1, 0 }, { 2.0 / 3, 1 }, { 0, 1 } };
  const double expected[9] = { 1, 0, 0, 0, 1.5, 0, 0, 0.5, 1 };
  double m[9], inverse[9], product[9];

  g_assert_cmpint (wm_align_from_points (before, after, 4, m, NULL), ==, WM_OK);
  for (int k = 0; k < 9; k++)
    g_assert_cmpfloat_with_epsilon (m[k], expected[k], 1e-9);
  assert_carries (m, after, before, 4);
  g_assert_true (wm_align_invert (m, inverse));
  wm_matrix_multiply (m, inverse, product);
  for (int k = 0; k < 9; k++)
    g_assert_cmpfloat_with_epsilon (product[k], (k % 4 == 0) * product[8], 1e-9);
  assert_carries (inverse, before, after, 4);
}

/* A shift of (7, -3); one of nine points in a square grid is 6 px off in x. A
 * projective fit takes up part of it; what is left over is below 6 / 3 = 2 px rms
 * (nothing taken up) and above 0. */
static void
test_many_points (void)
{
  WmPoint after[9], before[9];
  double m[9], residual = -1;

  for (int k = 0; k < 9; k++)
    {
      after[k] = (WmPoint) { 200 * (k % 3), 200 * (k / 3) };
      before[k] = (WmPoint) { after[k].x + 7, after[k].y - 3 };
    }
  g_assert_cmpint (wm_align_from_points (before, after, 9, m, &residual), ==, WM_OK);
  g_assert_cmpfloat (residual, <, 1e-7);
  before[4].x += 6;
  g_assert_cmpint (wm_align_from_points (before, after, 9, m, &residual), ==, WM_OK);
  g_assert_cmpfloat (residual, >, 0.5);
  g_assert_cmpfloat (residual, <, 2);
}

/* Two of four points 3 and 4 px off: 25 / 4 square px in the mean, 2.5 px rms. */
static void
test_measure_points (void)
{
  const double shift[9] = { 1, 0, 7, 0, 1, -3, 0, 0, 1 };
  const WmPoint after[] = { { 0, 0 }, { 100, 0 }, { 100, 100 }, { 0, 100 } };
  const WmPoint before[] = { { 7, -3 }, { 110, -3 }, { 107, 97 }, { 7, 93 } };

  g_assert_cmpfloat_with_epsilon (wm_align_measure_points (shift, before, after, 4), 2.5,
                                  1e-12);
}

static void
test_refusals (void)
{
  const WmPoint good[] = { { 0, 0 }, { 100, 0 }, { 100, 100 }, { 0, 100 } };
  const WmPoint line[] = { { 0, 0 }, { 50, 50 }, { 100, 100 }, { 150, 150 } };
  const WmPoint three_on_line[] = { { 0, 0 }, { 50, 0 }, { 100, 0 }, { 0, 100 } };
  const WmPoint same[] = { { 5, 5 }, { 5, 5 }, { 5, 5 }, { 5, 5 } };
  const WmPoint exchanged[] = { { 100, 0 }, { 0, 0 }, { 100, 100 }, { 0, 100 } };
  const WmPoint mirrored[] = { { 100, 0 }, { 0, 0 }, { 0, 100 }, { 100, 100 } };
  const WmPoint nan_point[] = { { 0, 0 }, { NAN, 0 }, { 100, 100 }, { 0, 100 } };
  double m[9] = { 42 };

  g_assert_cmpint (wm_align_from_points (good, good, 1, m, NULL), ==, WM_TOO_FEW);
  g_assert_cmpint (wm_align_from_points (good, same, 2, m, NULL), ==, WM_DEGENERATE);
  g_assert_cmpint (wm_align_from_points (same, good, 2, m, NULL), ==, WM_DEGENERATE);
  g_assert_cmpint (wm_align_from_points (good, nan_point, 4, m, NULL), ==,
                   WM_NOT_A_NUMBER);
  g_assert_cmpint (wm_align_from_points (good, line, 4, m, NULL), ==, WM_DEGENERATE);
  g_assert_cmpint (wm_align_from_points (line, good, 3, m, NULL), ==, WM_DEGENERATE);
  g_assert_cmpint (wm_align_from_points (good, same, 4, m, NULL), ==, WM_DEGENERATE);
  g_assert_cmpint (wm_align_from_points (good, three_on_line, 4, m, NULL), ==,
                   WM_DEGENERATE);
  g_assert_cmpint (wm_align_from_points (good, exchanged, 4, m, NULL), ==, WM_DEGENERATE);
  g_assert_cmpint (wm_align_from_points (good, mirrored, 4, m, NULL), ==, WM_DEGENERATE);
  g_assert_cmpfloat (m[0], ==, 42);
}

static void
test_invert_refuses (void)
{
  const double flat[9] = { 1, 2, 3, 2, 4, 6, 0, 0, 1 };
  double inverse[9] = { 42 };

  g_assert_false (wm_align_invert (flat, inverse));
  g_assert_cmpfloat (inverse[0], ==, 42);
}

static void
test_plausible (void)
{
  const double turned[9] = { 0, -1, 700, 1, 0, 20, 0, 0, 1 };
  const double over[9] = { -1, 0, 800, 0, 1, 0, 0, 0, 1 };
  const double tiny[9] = { 0.3, 0, 0, 0, 0.3, 0, 0, 0, 1 };
  const double squeezed[9] = { 1, 0, 0, 0, 0.55, 0, 0, 0, 1 };
  const double horizon[9] = { 1, 0, 0, 0, 1, 0, -2e-3, 0, 1 };

  g_assert_true (wm_matrix_is_plausible (turned, 800, 600, (WmPoint) { 400, 300 }));
  g_assert_false (wm_matrix_is_plausible (over, 800, 600, (WmPoint) { 400, 300 }));
  g_assert_false (wm_matrix_is_plausible (tiny, 800, 600, (WmPoint) { 400, 300 }));
  g_assert_false (wm_matrix_is_plausible (squeezed, 800, 600, (WmPoint) { 400, 300 }));
  g_assert_false (wm_matrix_is_plausible (horizon, 800, 600, (WmPoint) { 400, 300 }));
}

static void
test_reasons (void)
{
  for (int k = WM_ALIGN_FOUND; k <= WM_ALIGN_WANDERED; k++)
    {
      g_assert_cmpuint (strlen (wm_align_reason_text (k)), >, 20);
      for (int j = WM_ALIGN_FOUND; j < k; j++)
        g_assert_cmpstr (wm_align_reason_name (j), !=, wm_align_reason_name (k));
    }
  g_assert_cmpstr (wm_align_reason_name (WM_ALIGN_NO_MATCH), ==, "no-match");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/photo/align/points/two", test_two_points);
  g_test_add_func ("/photo/align/points/three", test_three_points);
  g_test_add_func ("/photo/align/points/four", test_four_points);
  g_test_add_func ("/photo/align/points/many", test_many_points);
  g_test_add_func ("/photo/align/points/measure", test_measure_points);
  g_test_add_func ("/photo/align/points/refusals", test_refusals);
  g_test_add_func ("/photo/align/matrix/invert-refuses", test_invert_refuses);
  g_test_add_func ("/photo/align/matrix/plausible", test_plausible);
  g_test_add_func ("/photo/align/reasons", test_reasons);
  return g_test_run ();
}
