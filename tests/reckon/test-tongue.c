/* test-tongue.c: the spring tongue
 *
 * Expected values: worked tongues (NumPy), the set from numerical integration of the
 * curvature, repeated here in another way.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/tongue.h"

#include "near.h"

static WmTongueLoad
load_of (double b, double t, double l, double d, double e, double yield)
{
  WmTongue tongue = { wm_exact (b), wm_exact (t), wm_exact (l),
                      wm_exact (d), wm_exact (e), wm_exact (yield) };
  WmTongueLoad load;

  g_assert_cmpint (wm_tongue_load (&tongue, &load, NULL), ==, WM_OK);
  return load;
}

static void
test_worked (void)
{
  const struct
  {
    double b, t, l, d, e, yield;
    double k, force, strain, stress, yield_press, yield_force, set;
    int takes_set, is_hinge;
  } rows[] = {
    { 4, .35, 9, .30, 170000, 400, 9.9983, 2.9995, .001944, 330.6, .3630, 3.630, 0, 0,
      0 },
    { 4, .35, 9, .60, 170000, 400, 9.9983, 5.2098, .003889, 661.1, .3630, 3.630, .0789, 1,
      0 },
    { 4, .35, 9, .30, 170000, 200, 9.9983, 2.6049, .001944, 330.6, .1815, 1.815, .0395, 1,
      0 },
    { 4, .35, 9, .60, 170000, 200, 9.9983, 2.7222, .003889, 661.1, .1815, 1.815, .3277, 1,
      1 },
    { 4, .40, 9, .50, 95000, 350, 8.3402, 4.1701, .003704, 351.9, .4974, 4.148, 1e-7, 0,
      0 },
    { 4, .40, 9, .50, 95000, 150, 8.3402, 2.6667, .003704, 351.9, .2132, 1.778, .1803, 1,
      1 },
    { 5, .50, 12, .50, 80000, 250, 7.2338, 3.6169, .002604, 208.3, .6000, 4.340, 0, 0,
      0 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      WmTongueLoad load =
          load_of (rows[i].b, rows[i].t, rows[i].l, rows[i].d, rows[i].e, rows[i].yield);

      wm_assert_near (load.stiffness_n_mm.value, rows[i].k, 0.6e-4);
      wm_assert_near (load.force_n.value, rows[i].force, 0.6e-4);
      wm_assert_near (load.strain.value, rows[i].strain, 0.6e-6);
      wm_assert_near (load.elastic_mpa.value, rows[i].stress, 0.06);
      wm_assert_near (load.yield_press_mm.value, rows[i].yield_press, 0.6e-4);
      wm_assert_near (load.yield_force_n.value, rows[i].yield_force, 0.6e-3);
      wm_assert_near (load.set_mm.value, rows[i].set, 0.6e-4);
      g_assert_cmpint (load.takes_set, ==, rows[i].takes_set);
      g_assert_cmpint (load.is_hinge, ==, rows[i].is_hinge);
    }
}

/* Force at a deflection by integrating the elastic-plastic curvature along the leaf:
 * inside the elastic core M = My (3 - (ky/k)^2) / 2, so k = ky / sqrt (3 - 2 M/My). */
static double
tip_press (double force_ratio)
{
  const int n = 400000;
  double sum = 0.0;

  for (int i = 0; i < n; i++)
    {
      double x = (i + 0.5) / n;
      double m = force_ratio * x;
      double curvature = m <= 1.0 ? m : 1.0 / sqrt (3.0 - 2.0 * m);

      sum += curvature * x / n;
    }

  return 3.0 * sum; /* over the yield press, which is 1/3 in these units */
}

static void
test_set_by_integration (void)
{
  for (double f = 1.05; f < 1.46; f += 0.1)
    {
      double press = tip_press (f);
      WmTongueLoad load = load_of (4, .35, 9, press * 0.3630252, 170000, 400);

      wm_assert_relative (load.force_n.value / load.yield_force_n.value, f, 1e-4);
      wm_assert_relative (load.set_mm.value, (press - f) * load.yield_press_mm.value,
                          1e-2);
    }
}

static void
test_properties (void)
{
  double before = -1.0;

  /* The set never shrinks with the press, nor does the force; softer sets more. */
  for (double d = 0.05; d < 1.6; d += 0.05)
    {
      WmTongueLoad hard = load_of (4, .35, 9, d, 170000, 400);
      WmTongueLoad soft = load_of (4, .35, 9, d, 170000, 200);

      g_assert_cmpfloat (hard.set_mm.value, >=, before - 1e-12);
      g_assert_cmpfloat (soft.set_mm.value, >=, hard.set_mm.value - 1e-12);
      g_assert_cmpfloat (hard.set_mm.value, <, d);
      g_assert_cmpfloat (hard.force_n.value, <=, hard.limit_force_n.value * (1 + 1e-12));
      wm_assert_relative (soft.stiffness_n_mm.value, hard.stiffness_n_mm.value, 1e-12);
      before = hard.set_mm.value;
    }
}

/* A press just under the yield press, known only roughly, may set: said so. */
static void
test_uncertain_press_warns (void)
{
  WmTongue tongue = { wm_exact (4),          wm_exact (.35),    wm_exact (9),
                      wm_value (.355, 0.02), wm_exact (170000), wm_exact (400) };
  WmTongueLoad load;

  g_assert_cmpint (wm_tongue_load (&tongue, &load, NULL), ==, WM_OK);
  g_assert_cmpfloat (load.set_mm.value, <, 1e-9);
  g_assert_true (load.takes_set);
}

static void
test_without_yield (void)
{
  WmTongueLoad load = load_of (4, .35, 9, .30, 170000, 0);

  wm_assert_near (load.force_n.value, 2.9995, 0.6e-4);
  g_assert_true (isnan (load.set_mm.value));
  g_assert_true (isnan (load.limit_force_n.value));
  g_assert_false (load.takes_set);
}

static void
test_refusals (void)
{
  const struct
  {
    double b, t, l, d, e, yield;
    WmResult result;
    const char *which;
  } rows[] = {
    { 4, .35, 1.7, .1, 1e5, 300, WM_OUT_OF_RANGE, "length" },
    { 4, .35, 9, 1.9, 1e5, 300, WM_OUT_OF_RANGE, "press" },
    { 0, .35, 9, .3, 1e5, 300, WM_NOT_POSITIVE, "width" },
    { 4, -.35, 9, .3, 1e5, 300, WM_NOT_POSITIVE, "thickness" },
    { 4, .35, 9, -.3, 1e5, 300, WM_NOT_POSITIVE, "press" },
    { 4, .35, 9, .3, NAN, 300, WM_NOT_A_NUMBER, "modulus_mpa" },
    { 4, .35, 9, .3, 1e5, -1, WM_NOT_POSITIVE, "yield_mpa" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      WmTongue tongue = { wm_exact (rows[i].b), wm_exact (rows[i].t),
                          wm_exact (rows[i].l), wm_exact (rows[i].d),
                          wm_exact (rows[i].e), wm_exact (rows[i].yield) };
      const char *which = NULL;
      WmTongueLoad load;

      g_assert_cmpint (wm_tongue_load (&tongue, &load, &which), ==, rows[i].result);
      g_assert_cmpstr (which, ==, rows[i].which);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reckon/tongue/worked", test_worked);
  g_test_add_func ("/reckon/tongue/set-by-integration", test_set_by_integration);
  g_test_add_func ("/reckon/tongue/properties", test_properties);
  g_test_add_func ("/reckon/tongue/uncertain-press-warns", test_uncertain_press_warns);
  g_test_add_func ("/reckon/tongue/without-yield", test_without_yield);
  g_test_add_func ("/reckon/tongue/refusals", test_refusals);
  return g_test_run ();
}
