/* forecast.c: wear over the visits
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/forecast.h"

#include <gsl/gsl_cdf.h>
#include <math.h>

#define MAX_MM 100.0
#define MAX_YEARS 5000.0

double
wm_quantile_z (double p)
{
  return gsl_cdf_ugaussian_Pinv (p);
}

double
wm_quantile_t (double p, int degrees)
{
  return gsl_cdf_tdist_Pinv (p, degrees);
}

double
wm_quantile_chi2 (double p, int degrees)
{
  return gsl_cdf_chisq_Pinv (p, degrees);
}

static WmResult
check_visits (const WmVisitReading *visits, int n, double minimum_mm, const char **which)
{
  const WmInputBound minimum = WM_ABOVE ("minimum", wm_exact (minimum_mm), 0.0, MAX_MM);

  if (n < 2)
    return wm_refuse (WM_TOO_FEW, "visits", which);

  if (n > WM_FORECAST_MAX_VISITS)
    return wm_refuse (WM_OUT_OF_RANGE, "visits", which);

  for (int i = 0; i < n; i++)
    {
      const WmInputBound bounds[] = {
        WM_FROM ("visits", wm_exact (visits[i].at_years), -MAX_YEARS, MAX_YEARS),
        WM_ABOVE ("visits", visits[i].left_mm, 0.0, MAX_MM),
        WM_ABOVE ("visits", wm_exact (visits[i].left_mm.u), 0.0, MAX_MM),
      };
      WmResult result = wm_bounds_check (bounds, 3, which);

      if (result != WM_OK)
        return result;
    }

  return wm_bounds_check (&minimum, 1, which);
}

/* Scatter against stated uncertainties: Birge ratio and quantile. */
static void
judge_scatter (WmForecast *f)
{
  int degrees = f->fit.degrees;

  f->birge = 1.0;
  f->k = wm_quantile_z (WM_FORECAST_LEVEL);
  f->chi2_limit = degrees > 0 ? wm_quantile_chi2 (0.95, degrees) : NAN;

  if (degrees > 0 && f->fit.chi2 > f->chi2_limit)
    {
      f->birge = sqrt (f->fit.chi2 / degrees);
      f->k = wm_quantile_t (WM_FORECAST_LEVEL, degrees);
    }

  f->loss_mm_year = wm_value (-f->fit.b, f->birge * f->fit.u_b);
  f->g = pow (f->k * f->loss_mm_year.u / f->fit.b, 2.0);
  f->is_wear_shown = f->fit.b < 0.0 && f->g < 1.0;
}

void
wm_forecast_band (const WmForecast *forecast, double at_years, double *central_mm,
                  double *lower_mm, double *upper_mm)
{
  double u = 0.0;

  *central_mm = wm_line_fit_at (&forecast->fit, at_years, forecast->u_reading_mm, &u);
  *lower_mm = *central_mm - forecast->k * forecast->birge * u;
  *upper_mm = *central_mm + forecast->k * forecast->birge * u;
}

double
wm_forecast_chance (const WmForecast *forecast, double at_years)
{
  double u = 0.0;
  double left = wm_line_fit_at (&forecast->fit, at_years, forecast->u_reading_mm, &u);

  return gsl_cdf_ugaussian_P ((forecast->minimum_mm - left) / (forecast->birge * u));
}

static double
lower_margin (const WmForecast *f, double at_years)
{
  double central, lower, upper;

  wm_forecast_band (f, at_years, &central, &lower, &upper);
  return lower - f->minimum_mm;
}

/* The lower bound falls without end where the line falls, so one sign change. */
static double
find_crossing (const WmForecast *f, double low, double high)
{
  for (int i = 0; i < 200; i++)
    {
      double middle = 0.5 * (low + high);

      if (lower_margin (f, middle) > 0.0)
        low = middle;
      else
        high = middle;
    }

  return 0.5 * (low + high);
}

static void
find_dates (WmForecast *f)
{
  double farthest = f->last_years + WM_FORECAST_FARTHEST_YEARS;

  f->central_years = f->careful_years = NAN;

  if (f->fit.b < 0.0)
    f->central_years = (f->minimum_mm - f->fit.y_mean) / f->fit.b + f->fit.x_mean;

  if (lower_margin (f, f->last_years) <= 0.0)
    f->kind = WM_FORECAST_DUE_NOW;
  else if (f->fit.b >= 0.0)
    f->kind = WM_FORECAST_NO_WEAR;
  else if (f->last_years - f->first_years < WM_FORECAST_LEAST_SPAN_YEARS)
    f->kind = WM_FORECAST_TOO_CLOSE;
  else
    {
      int is_far = lower_margin (f, farthest) > 0.0;

      f->kind = is_far ? WM_FORECAST_FAR : WM_FORECAST_DATED;
      /* Past the central date the bound is surely under the minimum. */
      f->careful_years = find_crossing (f, f->last_years, f->central_years);
    }
}

WmResult
wm_forecast (const WmVisitReading *visits, int n, double minimum_mm, double u_reading_mm,
             WmForecast *out, const char **which)
{
  double x[WM_FORECAST_MAX_VISITS];
  double y[WM_FORECAST_MAX_VISITS];
  double u[WM_FORECAST_MAX_VISITS];
  int last = 0;
  WmForecast f = { .minimum_mm = minimum_mm };
  WmResult result = check_visits (visits, n, minimum_mm, which);

  if (result == WM_OK && !isfinite (u_reading_mm))
    result = wm_refuse (WM_NOT_A_NUMBER, "u_reading", which);
  if (result != WM_OK)
    return result;

  f.first_years = visits[0].at_years;
  for (int i = 0; i < n; i++)
    {
      x[i] = visits[i].at_years;
      y[i] = visits[i].left_mm.value;
      u[i] = visits[i].left_mm.u;
      if (x[i] >= x[last])
        last = i;
      if (x[i] < f.first_years)
        f.first_years = x[i];
    }

  f.last_years = x[last];
  f.u_reading_mm = u_reading_mm >= 0.0 ? u_reading_mm : u[last];
  result = wm_line_fit_weighted (x, y, u, n, &f.fit, NULL);
  if (result != WM_OK)
    return wm_refuse (result, "visits", which);

  judge_scatter (&f);
  find_dates (&f);
  *out = f;
  return WM_OK;
}

WmResult
wm_forecast_single (WmValue made_mm, WmValue left_mm, WmValue age_years,
                    double minimum_mm, WmSingleForecast *out, const char **which)
{
  const WmInputBound bounds[] = {
    WM_ABOVE ("made", made_mm, 0.0, MAX_MM),
    WM_ABOVE ("left", left_mm, 0.0, MAX_MM),
    WM_ABOVE ("age", age_years, 0.0, MAX_YEARS),
    WM_ABOVE ("minimum", wm_exact (minimum_mm), 0.0, MAX_MM),
  };
  double k = wm_quantile_z (WM_FORECAST_LEVEL);
  double rate, u_rate, careful;
  WmResult result = wm_bounds_check (bounds, 4, which);

  if (result != WM_OK)
    return result;

  if (left_mm.value - made_mm.value > WM_COVERAGE_FACTOR * hypot (made_mm.u, left_mm.u))
    return wm_refuse (WM_LARGER_THAN_NEW, "left", which);

  rate = (made_mm.value - left_mm.value) / age_years.value;
  u_rate = sqrt (made_mm.u * made_mm.u + left_mm.u * left_mm.u
                 + rate * age_years.u * rate * age_years.u)
           / age_years.value;
  careful = rate + k * u_rate > 0.0
                ? (left_mm.value - k * left_mm.u - minimum_mm) / (rate + k * u_rate)
                : NAN;

  out->loss_mm_year = wm_value (rate, u_rate);
  out->central_years = rate > 0.0 ? fmax (0.0, (left_mm.value - minimum_mm) / rate) : NAN;
  out->careful_years = isnan (careful) ? NAN : fmax (0.0, careful);
  return WM_OK;
}
