/* test-line-fit.c: straight lines
 *
 * Expected values: NIST Statistical Reference Datasets, linear regression, Norris
 * (certified, 15 digits); predictions of the same data from R 4.2 and SciPy; the weighted
 * example of the GSL manual, run again here with GSL.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/line-fit.h"

#include <gsl/gsl_fit.h>

#include "reckon/forecast.h"

#include "near.h"

static const double norris[36][2] = {
  { 0.2, 0.1 },     { 337.4, 338.8 }, { 118.2, 118.1 }, { 884.6, 888.0 },
  { 10.1, 9.2 },    { 226.5, 228.1 }, { 666.3, 668.5 }, { 996.3, 998.5 },
  { 448.6, 449.1 }, { 777.0, 778.9 }, { 558.2, 559.2 }, { 0.4, 0.3 },
  { 0.6, 0.1 },     { 775.5, 778.1 }, { 666.9, 668.8 }, { 338.0, 339.3 },
  { 447.5, 448.9 }, { 11.6, 10.8 },   { 556.0, 557.7 }, { 228.1, 228.3 },
  { 995.8, 998.0 }, { 887.6, 888.8 }, { 120.2, 119.6 }, { 0.3, 0.3 },
  { 0.3, 0.6 },     { 556.8, 557.6 }, { 339.1, 339.3 }, { 887.2, 888.0 },
  { 999.0, 998.5 }, { 779.0, 778.9 }, { 11.1, 10.2 },   { 118.3, 117.6 },
  { 229.2, 228.9 }, { 669.1, 668.4 }, { 448.9, 449.2 }, { 0.5, 0.2 },
};

static WmLineFit
fit_norris (void)
{
  double x[36];
  double y[36];
  WmLineFit fit;

  for (int i = 0; i < 36; i++)
    {
      x[i] = norris[i][0];
      y[i] = norris[i][1];
    }

  g_assert_cmpint (wm_line_fit_ordinary (x, y, 36, &fit, NULL), ==, WM_OK);
  return fit;
}

static void
test_norris (void)
{
  WmLineFit fit = fit_norris ();

  wm_assert_relative (fit.a, -0.262323073774029, 1e-12);
  wm_assert_relative (fit.u_a, 0.232818234301152, 1e-12);
  wm_assert_relative (fit.b, 1.00211681802045, 1e-13);
  wm_assert_relative (fit.u_b, 0.429796848199937e-03, 1e-12);
  wm_assert_relative (fit.scatter, 0.884796396144373, 1e-12);
  wm_assert_relative (fit.r2, 0.999993745883712, 1e-13);
  wm_assert_relative (fit.chi2, 26.6173985294224, 1e-12);
  wm_assert_relative (fit.cov_ab, -7.743275363157e-05, 1e-11);
  wm_assert_relative (fit.x_mean, 419.177777777778, 1e-13);
  wm_assert_relative (fit.sxx, 4237993.02222222, 1e-13);
  g_assert_cmpint (fit.degrees, ==, 34);
}

static void
test_norris_prediction (void)
{
  const double rows[][4] = {
    { 0, -0.262323073774, -2.12165354328, 1.59700739573 },
    { 500, 500.796085936453, 498.97179405418, 502.62037781872 },
    { 1200, 1202.277858550771, 1200.33152963451, 1204.22418746704 },
  };
  WmLineFit fit = fit_norris ();
  double t = wm_quantile_t (0.975, 34);

  wm_assert_near (t, 2.0322445093, 0.6e-10);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      double u = 0.0;
      double y = wm_line_fit_at (&fit, rows[i][0], 0.0, &u);

      wm_assert_near (y, rows[i][1], 1e-10);
      wm_assert_near (y - t * u, rows[i][2], 1e-9);
      wm_assert_near (y + t * u, rows[i][3], 1e-9);
    }
}

/* Moving the zero of x by two thousand (a calendar year) must not cost digits. */
static void
test_far_zero (void)
{
  double x[36];
  double y[36];
  WmLineFit fit;

  for (int i = 0; i < 36; i++)
    {
      x[i] = norris[i][0] + 1048576.0;
      y[i] = norris[i][1];
    }

  g_assert_cmpint (wm_line_fit_ordinary (x, y, 36, &fit, NULL), ==, WM_OK);
  wm_assert_relative (fit.b, 1.00211681802045, 1e-10);
  wm_assert_relative (fit.scatter, 0.884796396144373, 1e-9);
}

static void
test_gsl_example (void)
{
  const double x[] = { 1970, 1980, 1990, 2000 };
  const double y[] = { 12, 11, 14, 13 };
  const double w[] = { 0.1, 0.2, 0.3, 0.4 };
  double u[4];
  double c0, c1, c00, c01, c11, chi2;
  WmLineFit fit;

  for (int i = 0; i < 4; i++)
    u[i] = 1.0 / sqrt (w[i]);

  g_assert_cmpint (wm_line_fit_weighted (x, y, u, 4, &fit, NULL), ==, WM_OK);
  wm_assert_relative (fit.a, -106.6, 1e-11);
  wm_assert_relative (fit.b, 0.06, 1e-11);
  wm_assert_relative (fit.u_a * fit.u_a, 39602.0, 1e-11);
  wm_assert_relative (fit.cov_ab, -19.9, 1e-11);
  wm_assert_relative (fit.u_b * fit.u_b, 0.01, 1e-11);
  wm_assert_relative (fit.chi2, 0.8, 1e-11);

  gsl_fit_wlinear (x, 1, w, 1, y, 1, 4, &c0, &c1, &c00, &c01, &c11, &chi2);
  wm_assert_relative (fit.a, c0, 1e-11);
  wm_assert_relative (fit.b, c1, 1e-11);
  wm_assert_relative (fit.u_a * fit.u_a, c00, 1e-9);
  wm_assert_relative (fit.chi2, chi2, 1e-9);
}

static void
test_refusals (void)
{
  const double x[] = { 0, 1, 2 };
  const double same[] = { 1, 1, 1 };
  const double y[] = { 3, 2, 1 };
  const double gap[] = { 3, NAN, 1 };
  const double u[] = { 0.1, 0.1, 0.1 };
  const double zero[] = { 0.1, 0.0, 0.1 };
  const char *which = NULL;
  WmLineFit fit;

  g_assert_cmpint (wm_line_fit_weighted (x, y, u, 1, &fit, &which), ==, WM_TOO_FEW);
  g_assert_cmpint (wm_line_fit_ordinary (x, y, 2, &fit, &which), ==, WM_TOO_FEW);
  g_assert_cmpint (wm_line_fit_weighted (same, y, u, 3, &fit, &which), ==, WM_DEGENERATE);
  g_assert_cmpstr (which, ==, "x");
  g_assert_cmpint (wm_line_fit_weighted (x, gap, u, 3, &fit, &which), ==,
                   WM_NOT_A_NUMBER);
  g_assert_cmpstr (which, ==, "y");
  g_assert_cmpint (wm_line_fit_weighted (x, y, zero, 3, &fit, &which), ==,
                   WM_NOT_POSITIVE);
  g_assert_cmpstr (which, ==, "u");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reckon/line-fit/norris", test_norris);
  g_test_add_func ("/reckon/line-fit/norris-prediction", test_norris_prediction);
  g_test_add_func ("/reckon/line-fit/far-zero", test_far_zero);
  g_test_add_func ("/reckon/line-fit/gsl-example", test_gsl_example);
  g_test_add_func ("/reckon/line-fit/refusals", test_refusals);
  return g_test_run ();
}
