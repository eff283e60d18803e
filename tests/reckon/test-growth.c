/* test-growth.c: how much a measured place has changed between two visits
 *
 * Source of the numbers: worked by hand from GUM 5.2.2 (y = x2 - x1, so
 * u^2 = u1^2 + u2^2 - 2 r u1 u2); the classic limits r = 0 and r = 1 of its note.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/growth.h"
#include "tests/reckon/near.h"

static void
test_nothing_shared (void)
{
  WmGrowth growth;

  g_assert_cmpint (
      wm_growth_between (wm_value (0.71, 0.03), wm_value (0.62, 0.04), 0, &growth, NULL),
      ==, WM_OK);
  wm_assert_near (growth.change.value, -0.09, 1e-12);
  wm_assert_near (growth.change.u, 0.05, 1e-12); /* 3, 4, 5 */
  g_assert_false (growth.is_told);               /* 0.09 is not over 0.10 */
  wm_assert_near (growth.shared_u, 0, 0);
}

/* All of it is the scale's: what is left is the scale's share of the change. */
static void
test_all_shared (void)
{
  WmGrowth growth;

  g_assert_cmpint (wm_growth_between (wm_value (1.00, 0.02), wm_value (0.80, 0.016), 0.02,
                                      &growth, NULL),
                   ==, WM_OK);
  wm_assert_near (growth.change.u, 0.02 * 0.20, 1e-12);
  g_assert_true (growth.is_told);
}

/* GUM's r for a common part s in both: r = s^2 / (u1 u2) when s is the same. */
static void
test_partly_shared (void)
{
  WmGrowth growth;
  double s = 0.01 * 1.0;
  double u1 = 0.03;
  double u2 = 0.02;

  g_assert_cmpint (
      wm_growth_between (wm_value (1.0, u1), wm_value (1.0, u2), 0.01, &growth, NULL), ==,
      WM_OK);
  wm_assert_relative (growth.change.u, sqrt (u1 * u1 + u2 * u2 - 2 * s * s), 1e-12);
  wm_assert_near (growth.change.value, 0, 0);
  g_assert_false (growth.is_told);
}

/* A scale said to be worse than the whole reading can not take out more than there is. */
static void
test_never_below_nothing (void)
{
  WmGrowth growth;

  g_assert_cmpint (wm_growth_between (wm_value (1.0, 0.001), wm_value (0.9, 0.001), 0.5,
                                      &growth, NULL),
                   ==, WM_OK);
  wm_assert_near (growth.change.u, 0, 1e-12);
}

static void
test_refuses (void)
{
  static const struct
  {
    WmValue earlier, later;
    double shared;
    WmResult result;
    const char *which;
  } rows[] = {
    { { 0, 0 }, { 1, 0 }, 0, WM_NOT_POSITIVE, "earlier_mm" },
    { { 1, 0 }, { NAN, 0 }, 0, WM_NOT_A_NUMBER, "later_mm" },
    { { 1, 0 }, { 1, NAN }, 0, WM_NOT_A_NUMBER, "later_mm" },
    { { 1, 0 }, { 1, 0 }, -0.1, WM_NOT_POSITIVE, "shared_relative" },
    { { 1, 0 }, { 1, 0 }, 1.1, WM_OUT_OF_RANGE, "shared_relative" },
    { { 5000, 0 }, { 1, 0 }, 0, WM_OUT_OF_RANGE, "earlier_mm" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      WmGrowth growth = { .shared_u = 7 };
      const char *which = NULL;

      g_assert_cmpint (wm_growth_between (rows[i].earlier, rows[i].later, rows[i].shared,
                                          &growth, &which),
                       ==, rows[i].result);
      g_assert_cmpstr (which, ==, rows[i].which);
      g_assert_cmpfloat (growth.shared_u, ==, 7);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reckon/growth/nothing-shared", test_nothing_shared);
  g_test_add_func ("/reckon/growth/all-shared", test_all_shared);
  g_test_add_func ("/reckon/growth/partly-shared", test_partly_shared);
  g_test_add_func ("/reckon/growth/never-below-nothing", test_never_below_nothing);
  g_test_add_func ("/reckon/growth/refuses", test_refuses);
  return g_test_run ();
}
