/* next-check.c: the next check date and its reason
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/next-check.h"

#include <math.h>

#include "reckon/words.h"

/* Months that survive the factors; factors shorten, never to under the floor, and
 * never lengthen. */
static int
shortened (int customary, const double *factors, int n)
{
  double months = customary;

  for (int i = 0; i < n; i++)
    months *= factors[i];

  months = fmax (floor (months + 1e-9), WM_NEXT_CHECK_FLOOR_MONTHS);
  return months < customary ? (int)months : customary;
}

static WmResult
check_inputs (long visit_day, int customary, const double *factors, int n,
              const char **which)
{
  const WmInputBound months =
      WM_FROM ("customary_months", wm_exact (customary), 1.0, 120.0);
  const WmInputBound day = WM_FROM ("visit", wm_exact (visit_day), -719162.0, 2932896.0);
  WmResult result = wm_bounds_check (&months, 1, which);

  if (result == WM_OK)
    result = wm_bounds_check (&day, 1, which);

  for (int i = 0; i < n && result == WM_OK; i++)
    {
      const WmInputBound factor = WM_ABOVE ("factors", wm_exact (factors[i]), 0.0, 1.0);

      result = wm_bounds_check (&factor, 1, which);
    }

  return result;
}

/* Months the forecast allows from the last visit, unrounded; NaN when it has no say. */
static double
forecast_months (const WmForecast *f)
{
  if (f == NULL || (f->kind != WM_FORECAST_DATED && f->kind != WM_FORECAST_FAR))
    return NAN;

  return WM_NEXT_CHECK_SHARE * (f->careful_years - f->last_years) * 12.0;
}

WmResult
wm_next_check (const WmForecast *forecast, long visit_day, int customary_months,
               const double *factors, int n_factors, WmNextCheck *out, const char **which)
{
  WmNextCheck check = { 0 };
  WmResult result = check_inputs (visit_day, customary_months, factors, n_factors, which);

  if (result != WM_OK)
    return result;

  check.customary_months = shortened (customary_months, factors, n_factors);
  check.forecast_months = forecast_months (forecast);
  check.months = check.customary_months;
  check.reason =
      check.months < customary_months ? WM_CHECK_SHORTENED : WM_CHECK_CUSTOMARY;

  if (forecast != NULL && forecast->kind == WM_FORECAST_DUE_NOW)
    {
      check.months = 0;
      check.reason = WM_CHECK_DUE_NOW;
    }
  else if (check.forecast_months < check.customary_months)
    {
      check.months = (int)fmax (1.0, floor (check.forecast_months));
      check.reason = WM_CHECK_FORECAST;
    }

  check.due_day = wm_day_add_months (visit_day, check.months);
  *out = check;
  return WM_OK;
}

const char *
wm_check_reason_text (WmCheckReason reason)
{
  switch (reason)
    {
    case WM_CHECK_SHORTENED:
      return N_ ("In %d months: sooner than usual for such a piece, because of its "
                 "condition and the way it is worn.");
    case WM_CHECK_FORECAST:
      return N_ ("In %d months: at the wear measured so far, half of the careful time "
                 "until the least allowed thickness will then have passed.");
    case WM_CHECK_DUE_NOW:
      return N_ ("Now: the part may already be under the least allowed thickness.");
    case WM_CHECK_CUSTOMARY:
    default:
      return N_ ("In %d months: the usual interval for such a piece.");
    }
}
