/* test-next-check.c: when to come back
 *
 * Expected values: W1 (34 months, capped to the customary 12) and W6 (3.95, so 3) of
 * the worked wear cases.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/next-check.h"

#include <string.h>

#include "near.h"

static WmForecast
forecast_from (double t1, double t2, double h0, double h1, double h2, double u)
{
  const WmVisitReading visits[] = { { 0, { h0, u } },
                                    { t1, { h1, u } },
                                    { t2, { h2, u } } };
  WmForecast f;

  g_assert_cmpint (wm_forecast (visits, 3, 0.80, -1.0, &f, NULL), ==, WM_OK);
  return f;
}

static void
test_customary_caps (void)
{
  WmForecast w1 = forecast_from (1.5, 3, 1.42, 1.33, 1.25, 0.02);
  WmNextCheck check;
  WmDate due;

  g_assert_cmpint (wm_next_check (&w1, 20782, 12, NULL, 0, &check, NULL), ==, WM_OK);
  g_assert_cmpint ((int)check.forecast_months, ==, 34);
  g_assert_cmpint (check.months, ==, 12);
  g_assert_cmpint (check.reason, ==, WM_CHECK_CUSTOMARY);
  due = wm_day_to_date (check.due_day);
  g_assert_cmpint (due.year * 10000 + due.month * 100 + due.day, ==, 20271125);
}

static void
test_forecast_shortens (void)
{
  WmForecast w6 = forecast_from (.5, 1, 1.10, 1.02, 0.95, 0.015);
  WmNextCheck check;

  g_assert_cmpint (wm_next_check (&w6, 20782, 12, NULL, 0, &check, NULL), ==, WM_OK);
  wm_assert_near (check.forecast_months, 3.95, 0.006);
  g_assert_cmpint (check.months, ==, 3);
  g_assert_cmpint (check.reason, ==, WM_CHECK_FORECAST);
}

static void
test_due_now_and_no_wear (void)
{
  WmForecast thin = forecast_from (1.5, 3, 1.00, 0.90, 0.81, 0.02);
  WmForecast grown = forecast_from (1, 2, 1.20, 1.21, 1.23, 0.02);
  WmNextCheck check;

  g_assert_cmpint (wm_next_check (&thin, 20782, 12, NULL, 0, &check, NULL), ==, WM_OK);
  g_assert_cmpint (check.reason, ==, WM_CHECK_DUE_NOW);
  g_assert_cmpint (check.due_day, ==, 20782);
  g_assert_cmpint (wm_next_check (&grown, 20782, 12, NULL, 0, &check, NULL), ==, WM_OK);
  g_assert_cmpint (check.reason, ==, WM_CHECK_CUSTOMARY);
  g_assert_cmpint (check.months, ==, 12);
}

static void
test_factors (void)
{
  const double half_and_three_quarters[] = { 0.5, 0.75 };
  const double many[] = { 0.5, 0.5, 0.5, 0.5 };
  WmNextCheck check;

  g_assert_cmpint (wm_next_check (NULL, 0, 12, half_and_three_quarters, 2, &check, NULL),
                   ==, WM_OK);
  g_assert_cmpint (check.months, ==, 4);
  g_assert_cmpint (check.reason, ==, WM_CHECK_SHORTENED);
  g_assert_cmpint (wm_next_check (NULL, 0, 12, many, 4, &check, NULL), ==, WM_OK);
  g_assert_cmpint (check.months, ==, WM_NEXT_CHECK_FLOOR_MONTHS);
  /* The floor never lengthens a customary interval that is shorter still. */
  g_assert_cmpint (wm_next_check (NULL, 0, 1, many, 4, &check, NULL), ==, WM_OK);
  g_assert_cmpint (check.months, ==, 1);
}

/* Never beyond the customary interval, whatever the forecast. */
static void
test_never_beyond_customary (void)
{
  for (int customary = 1; customary <= 60; customary++)
    for (double loss = 0.001; loss < 0.5; loss *= 1.7)
      {
        WmForecast f = forecast_from (1, 2, 2.0, 2.0 - loss, 2.0 - 2.0 * loss, 0.005);
        WmNextCheck check;

        g_assert_cmpint (wm_next_check (&f, 20782, customary, NULL, 0, &check, NULL), ==,
                         WM_OK);
        g_assert_cmpint (check.months, <=, customary);
        g_assert_cmpint (check.months, >=, check.reason == WM_CHECK_DUE_NOW ? 0 : 1);
      }
}

static void
test_refusals (void)
{
  const double more[] = { 1.5 };
  const double none[] = { 0.0 };
  const char *which = NULL;
  WmNextCheck check;

  g_assert_cmpint (wm_next_check (NULL, 0, 0, NULL, 0, &check, &which), ==,
                   WM_OUT_OF_RANGE);
  g_assert_cmpstr (which, ==, "customary_months");
  g_assert_cmpint (wm_next_check (NULL, 0, 12, more, 1, &check, &which), ==,
                   WM_OUT_OF_RANGE);
  g_assert_cmpstr (which, ==, "factors");
  g_assert_cmpint (wm_next_check (NULL, 0, 12, none, 1, &check, &which), ==,
                   WM_NOT_POSITIVE);
}

static void
test_reasons (void)
{
  for (int r = WM_CHECK_CUSTOMARY; r <= WM_CHECK_DUE_NOW; r++)
    {
      const char *text = wm_check_reason_text (r);

      g_assert_cmpint (strstr (text, "%d") != NULL, ==, r != WM_CHECK_DUE_NOW);
      for (int other = WM_CHECK_CUSTOMARY; other < r; other++)
        g_assert_cmpstr (text, !=, wm_check_reason_text (other));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reckon/next-check/customary-caps", test_customary_caps);
  g_test_add_func ("/reckon/next-check/forecast-shortens", test_forecast_shortens);
  g_test_add_func ("/reckon/next-check/due-now", test_due_now_and_no_wear);
  g_test_add_func ("/reckon/next-check/factors", test_factors);
  g_test_add_func ("/reckon/next-check/never-beyond-customary",
                   test_never_beyond_customary);
  g_test_add_func ("/reckon/next-check/refusals", test_refusals);
  g_test_add_func ("/reckon/next-check/reasons", test_reasons);
  return g_test_run ();
}
