/* test-forecast.c: wear over the visits
 *
 * Expected values: cases W1 to W6 worked with SciPy and R; quantile tables of Student's t
 * and chi^2 (every statistics book, recomputed with SciPy).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/forecast.h"

#include <gsl/gsl_cdf.h>
#include <string.h>

#include "near.h"

#define V(t, h, u)                                                                       \
  {                                                                                      \
    t, { h, u }                                                                          \
  }

static const WmVisitReading w1[] = { V (0, 1.42, 0.02), V (1.5, 1.33, 0.02),
                                     V (3, 1.25, 0.02) };
static const WmVisitReading w2[] = { V (0, 1.50, .03), V (1, 1.46, .02), V (2, 1.43, .02),
                                     V (3.1, 1.37, .015), V (4, 1.34, .015) };
static const WmVisitReading w3[] = { V (0, 1.30, .03), V (2, 1.24, .03) };
static const WmVisitReading w4[] = { V (0, 1.50, .02), V (1, 1.45, .02), V (2, 1.30, .02),
                                     V (3, 1.31, .02) };
static const WmVisitReading w5[] = { V (0, 1.20, .02), V (1, 1.21, .02),
                                     V (2, 1.23, .02) };
static const WmVisitReading w6[] = { V (0, 1.10, .015), V (.5, 1.02, .015),
                                     V (1, 0.95, .015) };

static WmForecast
forecast_of (const WmVisitReading *visits, int n, double minimum)
{
  WmForecast f;

  g_assert_cmpint (wm_forecast (visits, n, minimum, -1.0, &f, NULL), ==, WM_OK);
  return f;
}

static void
test_w1 (void)
{
  WmForecast f = forecast_of (w1, 3, 0.80);
  double central, lower, upper, u;

  wm_assert_near (f.fit.a, 1.418333, 0.6e-6);
  wm_assert_near (f.fit.u_a, 0.018257, 0.6e-6);
  wm_assert_near (f.loss_mm_year.value, 0.056667, 0.6e-6);
  wm_assert_near (f.loss_mm_year.u, 0.009428, 0.6e-6);
  wm_assert_near (f.fit.chi2, 0.04167, 0.6e-5);
  wm_assert_near (f.central_years, 10.911765, 0.6e-6);
  wm_assert_near (f.careful_years, 8.803592, 0.6e-6);
  wm_assert_near (f.g, 0.074894, 0.6e-6);
  g_assert_true (f.is_wear_shown);
  g_assert_cmpint (f.kind, ==, WM_FORECAST_DATED);

  wm_forecast_band (&f, 4.0, &central, &lower, &upper);
  wm_assert_near (central, 1.191667, 0.6e-6);
  wm_assert_near (lower, 1.137389, 0.6e-6);
  wm_assert_near (upper, 2 * 1.191667 - 1.137389, 1.2e-6);
  wm_line_fit_at (&f.fit, 4.0, 0.02, &u);
  wm_assert_near (u, 0.032998, 0.6e-6);
  wm_assert_near (wm_forecast_chance (&f, 8.0), 0.005876, 0.6e-6);
  wm_assert_near (forecast_of (w1, 3, 1.10).careful_years, 4.547612, 0.6e-6);
}

/* The closed form: the earlier root of the quadratic printed for W1. */
static void
test_w1_closed_form (void)
{
  WmForecast f = forecast_of (w1, 3, 0.80);
  double t = f.careful_years;

  wm_assert_near (0.00297061835964 * t * t - 0.0693562995234 * t + 0.380352045911, 0.0,
                  1e-10);
}

static void
test_others (void)
{
  WmForecast f = forecast_of (w2, 5, 0.80);

  wm_assert_near (f.fit.a, 1.502883, 0.6e-6);
  wm_assert_near (f.fit.b, -0.0411500, 0.6e-7);
  wm_assert_near (f.fit.u_b, 0.0063715, 0.6e-7);
  wm_assert_near (f.fit.chi2, 0.377240, 0.6e-6);
  wm_assert_near (f.central_years, 17.081013, 0.6e-6);
  wm_assert_near (f.careful_years, 14.079636, 0.6e-6);
  g_assert_cmpfloat (f.birge, ==, 1.0);

  f = forecast_of (w3, 2, 0.80);
  wm_assert_near (f.careful_years, 8.131255, 0.6e-6);
  wm_assert_near (f.g, 1.352772, 0.6e-6);
  g_assert_false (f.is_wear_shown);

  f = forecast_of (w5, 3, 0.80);
  g_assert_cmpint (f.kind, ==, WM_FORECAST_NO_WEAR);
  g_assert_true (isnan (f.careful_years));
  g_assert_true (isnan (f.central_years));
  wm_assert_near (f.loss_mm_year.value, -0.015, 1e-12);

  f = forecast_of (w6, 3, 0.80);
  wm_assert_near (f.central_years, 1.988889, 0.6e-6);
  wm_assert_near (f.careful_years, 1.659085, 0.6e-6);
}

static void
test_inconsistent (void)
{
  WmForecast f = forecast_of (w4, 4, 0.80);

  wm_assert_near (f.fit.chi2, 10.700, 0.6e-3);
  wm_assert_near (f.birge, 2.313007, 0.6e-6);
  wm_assert_near (f.k, 2.9200, 0.6e-4);
  wm_assert_near (f.central_years, 9.694444, 0.6e-6);
  wm_assert_near (f.careful_years, 5.638097, 0.6e-6);
  wm_assert_near (f.loss_mm_year.u, 2.313007 * 0.008944, 1e-5);
}

static void
test_kinds (void)
{
  const WmVisitReading close[] = { V (0, 1.30, .005), V (0.2, 1.20, .005) };
  const WmVisitReading slow[] = { V (0, 2.000, .001), V (5, 1.999, .001),
                                  V (10, 1.998, .001) };
  WmForecast f = forecast_of (w1, 3, 1.24);

  g_assert_cmpint (f.kind, ==, WM_FORECAST_DUE_NOW);
  g_assert_cmpint (forecast_of (close, 2, 0.8).kind, ==, WM_FORECAST_TOO_CLOSE);
  f = forecast_of (slow, 3, 0.8);
  g_assert_cmpint (f.kind, ==, WM_FORECAST_FAR);
  g_assert_cmpfloat (f.careful_years, >, 40.0);
}

static void
test_single (void)
{
  WmSingleForecast f;
  const char *which = NULL;

  g_assert_cmpint (wm_forecast_single (wm_value (1.80, 0.09), wm_value (1.42, 0.02),
                                       wm_value (12, 3), 0.80, &f, NULL),
                   ==, WM_OK);
  wm_assert_near (f.loss_mm_year.value, 0.031667, 0.6e-6);
  wm_assert_near (f.loss_mm_year.u, 0.011032, 0.6e-6);
  wm_assert_near (f.central_years, 19.5789, 0.6e-4);
  wm_assert_near (f.careful_years, 11.7858, 0.6e-3);

  g_assert_cmpint (wm_forecast_single (wm_value (1.2, 0.01), wm_value (1.4, 0.01),
                                       wm_value (12, 3), 0.80, &f, &which),
                   ==, WM_LARGER_THAN_NEW);
  g_assert_cmpstr (which, ==, "left");
  g_assert_cmpint (wm_forecast_single (wm_value (1.8, 0.01), wm_value (1.4, 0.01),
                                       wm_value (0, 3), 0.80, &f, &which),
                   ==, WM_NOT_POSITIVE);
  g_assert_cmpstr (which, ==, "age");
}

/* Order of the visits, zero of time and unit of length do not matter. */
static void
test_properties (void)
{
  WmVisitReading turned[5];
  WmVisitReading later[5];
  WmForecast f = forecast_of (w2, 5, 0.80);

  for (int i = 0; i < 5; i++)
    {
      turned[i] = w2[4 - i];
      later[i] = w2[i];
      later[i].at_years += 2020.0;
    }

  wm_assert_relative (forecast_of (turned, 5, 0.8).careful_years, f.careful_years, 1e-12);
  wm_assert_near (forecast_of (later, 5, 0.8).careful_years - 2020.0, f.careful_years,
                  1e-8);
  g_assert_cmpfloat (f.careful_years, <, f.central_years);

  for (double minimum = 0.3; minimum < 1.2; minimum += 0.1)
    {
      WmForecast low = forecast_of (w2, 5, minimum);
      WmForecast high = forecast_of (w2, 5, minimum + 0.05);

      g_assert_cmpfloat (high.careful_years, <, low.careful_years);
    }
}

static void
test_refusals (void)
{
  const WmVisitReading same[] = { V (1, 1.3, .02), V (1, 1.2, .02) };
  const WmVisitReading gap[] = { V (0, 1.3, .02), V (1, NAN, .02) };
  const WmVisitReading sure[] = { V (0, 1.3, .02), V (1, 1.2, 0) };
  const WmVisitReading gone[] = { V (0, 1.3, .02), V (1, -1.2, .02) };
  const struct
  {
    const WmVisitReading *visits;
    int n;
    double minimum;
    WmResult result;
    const char *which;
  } rows[] = {
    { w1, 1, 0.8, WM_TOO_FEW, "visits" },
    { w1, 0, 0.8, WM_TOO_FEW, "visits" },
    { same, 2, 0.8, WM_DEGENERATE, "visits" },
    { gap, 2, 0.8, WM_NOT_A_NUMBER, "visits" },
    { sure, 2, 0.8, WM_NOT_POSITIVE, "visits" },
    { gone, 2, 0.8, WM_NOT_POSITIVE, "visits" },
    { w1, 3, 0.0, WM_NOT_POSITIVE, "minimum" },
    { w1, 3, NAN, WM_NOT_A_NUMBER, "minimum" },
    { w1, 3, 1000.0, WM_OUT_OF_RANGE, "minimum" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const char *which = NULL;
      WmForecast f;

      g_assert_cmpint (
          wm_forecast (rows[i].visits, rows[i].n, rows[i].minimum, -1.0, &f, &which), ==,
          rows[i].result);
      g_assert_cmpstr (which, ==, rows[i].which);
    }
}

static void
test_quantiles (void)
{
  const struct
  {
    int degrees;
    double t90, t95, t975, t995, chi95, chi99;
  } rows[] = {
    { 1, 3.0777, 6.3138, 12.7062, 63.6567, 3.84146, 6.63490 },
    { 2, 1.8856, 2.9200, 4.3027, 9.9248, 5.99146, 9.21034 },
    { 3, 1.6377, 2.3534, 3.1824, 5.8409, 7.81473, 11.34487 },
    { 4, 1.5332, 2.1318, 2.7764, 4.6041, 9.48773, 13.27670 },
    { 5, 1.4759, 2.0150, 2.5706, 4.0321, 11.07050, 15.08627 },
    { 10, 1.3722, 1.8125, 2.2281, 3.1693, 18.30704, 23.20925 },
    { 20, 1.3253, 1.7247, 2.0860, 2.8453, 0, 0 },
    { 30, 1.3104, 1.6973, 2.0423, 2.7500, 0, 0 },
    { 60, 1.2958, 1.6706, 2.0003, 2.6603, 0, 0 },
    { 120, 1.2886, 1.6577, 1.9799, 2.6174, 0, 0 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      wm_assert_near (wm_quantile_t (0.90, rows[i].degrees), rows[i].t90, 0.6e-4);
      wm_assert_near (wm_quantile_t (0.95, rows[i].degrees), rows[i].t95, 0.6e-4);
      wm_assert_near (wm_quantile_t (0.975, rows[i].degrees), rows[i].t975, 0.6e-4);
      wm_assert_near (wm_quantile_t (0.995, rows[i].degrees), rows[i].t995, 0.6e-4);
      if (rows[i].chi95 > 0)
        {
          wm_assert_near (wm_quantile_chi2 (0.95, rows[i].degrees), rows[i].chi95,
                          0.6e-5);
          wm_assert_near (wm_quantile_chi2 (0.99, rows[i].degrees), rows[i].chi99,
                          0.6e-5);
        }
    }

  wm_assert_near (wm_quantile_z (0.90), 1.281552, 0.6e-6);
  wm_assert_near (wm_quantile_z (0.95), 1.644854, 0.6e-6);
  wm_assert_near (wm_quantile_z (0.975), 1.959964, 0.6e-6);
  wm_assert_near (wm_quantile_z (0.995), 2.575829, 0.6e-6);
}

/* Quantile and distribution undo each other for every number of visits that is allowed:
 * the library's iteration settles everywhere it is used. */
static void
test_quantiles_settle (void)
{
  for (int degrees = 1; degrees <= WM_FORECAST_MAX_VISITS; degrees++)
    {
      wm_assert_near (
          gsl_cdf_tdist_P (wm_quantile_t (WM_FORECAST_LEVEL, degrees), degrees),
          WM_FORECAST_LEVEL, 1e-9);
      wm_assert_near (gsl_cdf_chisq_P (wm_quantile_chi2 (0.95, degrees), degrees), 0.95,
                      1e-9);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reckon/forecast/w1", test_w1);
  g_test_add_func ("/reckon/forecast/w1-closed-form", test_w1_closed_form);
  g_test_add_func ("/reckon/forecast/others", test_others);
  g_test_add_func ("/reckon/forecast/inconsistent", test_inconsistent);
  g_test_add_func ("/reckon/forecast/kinds", test_kinds);
  g_test_add_func ("/reckon/forecast/single", test_single);
  g_test_add_func ("/reckon/forecast/properties", test_properties);
  g_test_add_func ("/reckon/forecast/refusals", test_refusals);
  g_test_add_func ("/reckon/forecast/quantiles", test_quantiles);
  g_test_add_func ("/reckon/forecast/quantiles-settle", test_quantiles_settle);
  return g_test_run ();
}
