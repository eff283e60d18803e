/* test-value.c: bounds and propagation
 *
 * Expected values: the law of propagation written out by hand for sums, products and
 * powers (GUM 5.1.2, 5.1.6).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/value.h"

#include <string.h>

#include "near.h"

static void
model (const double *x, double *y, const void *fixed)
{
  y[0] = x[0] + x[1];
  y[1] = x[0] * x[1];
  y[2] = pow (x[0], 3.0);
  y[3] = x[0] > 2.0 ? NAN : x[0];
}

static void
test_propagate (void)
{
  const WmValue x[] = { wm_value (2.0, 0.03), wm_value (5.0, 0.04) };
  WmValue y[4];

  wm_propagate (model, NULL, x, 2, y, 4, WM_STEP_SLOPE);
  wm_assert_relative (y[0].u, 0.05, 1e-9);
  wm_assert_relative (y[1].u, 10.0 * hypot (0.03 / 2.0, 0.04 / 5.0), 1e-9);
  wm_assert_relative (y[2].u, 3.0 * 4.0 * 0.03, 1e-8);
  /* No answer above 2: the difference from below counts. */
  wm_assert_relative (y[3].u, 0.03, 1e-9);
}

static void
test_exact_inputs (void)
{
  const WmValue x[] = { wm_exact (2.0), wm_exact (5.0) };
  WmValue y[4];

  wm_propagate (model, NULL, x, 2, y, 4, WM_STEP_WHOLE);
  g_assert_cmpfloat (y[1].value, ==, 10.0);
  g_assert_cmpfloat (y[1].u, ==, 0.0);
}

static void
test_bounds (void)
{
  const struct
  {
    WmValue value;
    WmResult expected;
  } rows[] = {
    { { 1.0, 0.1 }, WM_OK },
    { { 10.0, 0.0 }, WM_OK },
    { { 0.0, 0.0 }, WM_NOT_POSITIVE },
    { { -1.0, 0.0 }, WM_NOT_POSITIVE },
    { { 10.1, 0.0 }, WM_OUT_OF_RANGE },
    { { NAN, 0.0 }, WM_NOT_A_NUMBER },
    { { INFINITY, 0.0 }, WM_NOT_A_NUMBER },
    { { 1.0, NAN }, WM_NOT_A_NUMBER },
    { { 1.0, -0.1 }, WM_OUT_OF_RANGE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const WmInputBound bound = WM_ABOVE ("length", rows[i].value, 0.0, 10.0);
      const char *which = NULL;

      g_assert_cmpint (wm_bounds_check (&bound, 1, &which), ==, rows[i].expected);
      g_assert_cmpstr (which, ==, rows[i].expected == WM_OK ? NULL : "length");
      g_assert_cmpint (wm_bounds_check (&bound, 1, NULL), ==, rows[i].expected);
    }
}

static void
test_every_result_has_words (void)
{
  for (int r = WM_OK; r <= WM_WRONG_UNIT; r++)
    {
      g_assert_cmpuint (strlen (wm_result_text (r)), >, 3);
      g_assert_cmpstr (wm_result_key (r), !=, "unknown");
      for (int other = WM_OK; other < r; other++)
        g_assert_cmpstr (wm_result_key (r), !=, wm_result_key (other));
    }

  g_assert_cmpstr (wm_result_key ((WmResult)999), ==, "unknown");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reckon/value/propagate", test_propagate);
  g_test_add_func ("/reckon/value/exact-inputs", test_exact_inputs);
  g_test_add_func ("/reckon/value/bounds", test_bounds);
  g_test_add_func ("/reckon/value/every-result-has-words", test_every_result_has_words);
  return g_test_run ();
}
