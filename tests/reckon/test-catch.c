/* test-catch.c: notch and catch
 *
 * Expected values: ratios and Inglis factors worked by hand; insertion forces of the
 * snap-fit formula (NumPy).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/catch.h"

#include "near.h"

static void
test_notch (void)
{
  const struct
  {
    double depth, pull, bending, stiff;
    int is_too_deep;
  } rows[] = { { .05, .857143, .734694, .629738, 0 },
               { .10, .714286, .510204, .364431, 0 },
               { .15, .571429, .326531, .186589, 1 } };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      WmNotch notch;

      g_assert_cmpint (
          wm_notch (wm_exact (.35), wm_exact (rows[i].depth), wm_exact (0), &notch, NULL),
          ==, WM_OK);
      wm_assert_near (notch.pull_left.value, rows[i].pull, 0.6e-6);
      wm_assert_near (notch.bending_left.value, rows[i].bending, 0.6e-6);
      wm_assert_near (notch.stiff_left.value, rows[i].stiff, 0.6e-6);
      g_assert_cmpint (notch.is_too_deep, ==, rows[i].is_too_deep);
      g_assert_true (isnan (notch.concentration.value));
    }
}

static void
test_inglis (void)
{
  const double rows[][3] = { { .1, .05, 3.828427 }, { .1, .1, 3.0 }, { .2, .05, 5.0 } };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      WmNotch notch;

      g_assert_cmpint (wm_notch (wm_exact (1), wm_exact (rows[i][0]),
                                 wm_exact (rows[i][1]), &notch, NULL),
                       ==, WM_OK);
      wm_assert_near (notch.concentration.value, rows[i][2], 0.6e-6);
    }
}

static WmCatch
catch_of (double friction, double front, double back)
{
  WmCatch c = { .notch_depth_mm = { 0.5, 0.03 },
                .catch_height_mm = { 0.6, 0.03 },
                .slack_mm = { 0.05, 0.02 },
                .set_mm = { 0.04, 0.01 },
                .force_n = { 3.0, 0.0 },
                .friction = { friction, 0.0 },
                .front_deg = { front, 0.0 },
                .back_deg = { back, 0.0 },
                .width_mm = { 3.0, 0.0 },
                .yield_mpa = { 300.0, 0.0 } };

  return c;
}

static void
test_slopes (void)
{
  const double rows[][3] = {
    { .2, 30, 2.6365 }, { .2, 45, 4.5 }, { .2, 60, 8.8682 }, { .3, 30, 3.1834 }
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      WmCatch c = catch_of (rows[i][0], rows[i][1], rows[i][1]);
      WmCatchHold hold;

      g_assert_cmpint (wm_catch_hold (&c, &hold, NULL), ==, WM_OK);
      wm_assert_near (hold.push_in_n.value, rows[i][2], 0.6e-4);
      wm_assert_near (hold.pull_out_n.value, rows[i][2], 0.6e-4);
      g_assert_false (hold.locks);
      g_assert_true (hold.needs_hold_test);
    }
}

/* Near atan (1/friction), 78.690 degrees for 0.2, the number is useless: none is given.
 */
static void
test_lock (void)
{
  WmCatch c = catch_of (.2, 30, 78.3);
  WmCatchHold hold;
  const char *which = NULL;

  g_assert_cmpint (wm_catch_hold (&c, &hold, NULL), ==, WM_OK);
  g_assert_true (hold.locks);
  g_assert_true (isnan (hold.pull_out_n.value));
  wm_assert_near (hold.engaged_mm.value, 0.41, 1e-12);
  wm_assert_near (hold.engaged_mm.u, sqrt (.0009 + .0004 + .0001), 1e-9);
  wm_assert_relative (hold.shear_n.value, 0.58 * 300 * 3.0 * 0.41, 1e-12);
  g_assert_false (hold.needs_hold_test);

  c.back_deg.value = 90;
  g_assert_cmpint (wm_catch_hold (&c, &hold, NULL), ==, WM_OK);
  g_assert_true (hold.locks);

  c.front_deg.value = 79;
  g_assert_cmpint (wm_catch_hold (&c, &hold, &which), ==, WM_NO_NUMBER_HONEST);
  g_assert_cmpstr (which, ==, "front");
}

static void
test_little_engagement_needs_a_test (void)
{
  WmCatch c = catch_of (.2, 30, 90);
  WmCatchHold hold;

  c.set_mm.value = 0.22;
  g_assert_cmpint (wm_catch_hold (&c, &hold, NULL), ==, WM_OK);
  g_assert_true (hold.needs_hold_test);

  /* Set beyond the notch: it does not catch at all. */
  c.set_mm.value = 0.6;
  g_assert_cmpint (wm_catch_hold (&c, &hold, NULL), ==, WM_OK);
  g_assert_cmpfloat (hold.engaged_mm.value, <, 0.0);
  g_assert_cmpfloat (hold.shear_n.value, ==, 0.0);
}

static void
test_refusals (void)
{
  WmCatch c = catch_of (.2, 30, 60);
  WmCatchHold hold;
  WmNotch notch;
  const char *which = NULL;

  g_assert_cmpint (wm_notch (wm_exact (.3), wm_exact (.3), wm_exact (0), &notch, &which),
                   ==, WM_CONTRADICTION);
  g_assert_cmpstr (which, ==, "depth");
  g_assert_cmpint (wm_notch (wm_exact (0), wm_exact (.3), wm_exact (0), &notch, &which),
                   ==, WM_NOT_POSITIVE);
  g_assert_cmpint (wm_notch (wm_exact (1), wm_exact (NAN), wm_exact (0), &notch, &which),
                   ==, WM_NOT_A_NUMBER);

  c.friction.value = -0.1;
  g_assert_cmpint (wm_catch_hold (&c, &hold, &which), ==, WM_NOT_POSITIVE);
  g_assert_cmpstr (which, ==, "friction");
  c.friction.value = 0.2;
  c.back_deg.value = 91;
  g_assert_cmpint (wm_catch_hold (&c, &hold, &which), ==, WM_OUT_OF_RANGE);
  g_assert_cmpstr (which, ==, "back");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reckon/catch/notch", test_notch);
  g_test_add_func ("/reckon/catch/inglis", test_inglis);
  g_test_add_func ("/reckon/catch/slopes", test_slopes);
  g_test_add_func ("/reckon/catch/lock", test_lock);
  g_test_add_func ("/reckon/catch/little-engagement",
                   test_little_engagement_needs_a_test);
  g_test_add_func ("/reckon/catch/refusals", test_refusals);
  return g_test_run ();
}
