/* forecast.h: how fast a part gets thinner, and when it is too thin
 *
 * Pure computation: no I/O, no GLib, no state; safe on any thread. Times are years from
 * any zero the caller likes (days / 365.2425); dates are in day.h.
 *
 * Weighted straight line through the visits' readings. Where the readings scatter more
 * than their uncertainties allow (chi^2 beyond its 95 % point) all uncertainties are
 * multiplied by the Birge ratio and Student's t takes the normal's place; they are never
 * shrunk. The careful date is where the one-sided 95 % lower prediction bound reaches the
 * minimum (bisection).
 * Valid for one measured place without a repair between the visits and for steady
 * wear; a date is given only when the visits span three months or more.
 *
 * Source: Draper and Smith; Birge 1932; Fieller 1954 (all from memory); quantiles from
 * GSL; checked against NIST Norris, R and SciPy (test-forecast.c).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/line-fit.h"

/* One-sided level of the careful date. */
#define WM_FORECAST_LEVEL 0.95
/* Beyond this the answer is printed as "beyond 30 years". */
#define WM_FORECAST_FARTHEST_YEARS 30.0
/* Visits closer together than a quarter of a year give no date. */
#define WM_FORECAST_LEAST_SPAN_YEARS 0.25
#define WM_FORECAST_MAX_VISITS 200

typedef struct
{
  double at_years;
  WmValue left_mm; /* u above 0 */
} WmVisitReading;

typedef enum
{
  WM_FORECAST_DATED = 0, /* careful_years holds */
  WM_FORECAST_DUE_NOW,   /* the careful bound is at or under the minimum already */
  WM_FORECAST_NO_WEAR,   /* the line does not go down: noise of measuring */
  WM_FORECAST_TOO_CLOSE, /* visits span under three months: no date */
  WM_FORECAST_FAR        /* beyond 30 years after the last visit */
} WmForecastKind;

typedef struct
{
  WmForecastKind kind;
  WmLineFit fit;        /* its uncertainties as stated, before the Birge ratio */
  WmValue loss_mm_year; /* thinning per year, positive when it wears; u with Birge */
  double birge;         /* 1 when the readings agree with their uncertainties */
  double k;             /* one-sided quantile used: z, or t when birge is over 1 */
  double chi2_limit;    /* 95 % point for the degrees; NaN with none */
  double g;             /* k^2 u_b^2 / b^2; 1 or more: no wear shown yet */
  int is_wear_shown;    /* g under 1 */
  double u_reading_mm;  /* of the reading that is forecast */
  double first_years, last_years;
  double minimum_mm;
  double central_years; /* the line itself reaches the minimum; NaN if never */
  double careful_years; /* the lower bound does; NaN unless DATED or FAR */
} WmForecast;

/**
 * wm_forecast:
 * @visits: at least 2, at most WM_FORECAST_MAX_VISITS, any order
 * @minimum_mm: least thickness allowed, above 0
 * @u_reading_mm: standard uncertainty of the reading to come, 0 or more; negative: that
 * of the last visit
 *
 * Returns: WM_OK; WM_TOO_FEW; WM_DEGENERATE (all on one date); WM_NOT_POSITIVE (a reading
 * or its uncertainty); WM_NOT_A_NUMBER; WM_OUT_OF_RANGE; @which is visits or minimum
 */
WmResult wm_forecast (const WmVisitReading *visits, int n, double minimum_mm,
                      double u_reading_mm, WmForecast *out, const char **which);

/**
 * wm_forecast_band:
 *
 * One sample of the plot: the line and the one-sided bounds either side at @at_years.
 */
void wm_forecast_band (const WmForecast *forecast, double at_years, double *central_mm,
                       double *lower_mm, double *upper_mm);

/**
 * wm_forecast_chance:
 *
 * Returns: chance that a reading at @at_years is under the minimum, 0..1 (normal
 * distribution)
 */
double wm_forecast_chance (const WmForecast *forecast, double at_years);

typedef struct
{
  WmValue loss_mm_year;
  double central_years; /* from this visit to the minimum; NaN if it never wears */
  double careful_years;
} WmSingleForecast;

/**
 * wm_forecast_single:
 * @made_mm: as made, with a generous uncertainty when it is nominal
 * @left_mm: now
 * @age_years: how long it was worn, above 0
 *
 * A stated assumption, not a trend: wear at an even pace since it was made.
 *
 * Returns: WM_OK; WM_LARGER_THAN_NEW (@which left) ; otherwise with @which made, left,
 * age, minimum. careful_years is 0 when the minimum is reached already.
 */
WmResult
wm_forecast_single (WmValue made_mm, WmValue left_mm, WmValue age_years,
                    double minimum_mm, WmSingleForecast *out, const char **which);

/**
 * wm_quantile_t / wm_quantile_z / wm_quantile_chi2:
 *
 * Lower-tail quantiles: P (X <= result) = @p, 0 < @p < 1, @degrees 1 or more.
 */
double wm_quantile_z (double p);
double wm_quantile_t (double p, int degrees);
double wm_quantile_chi2 (double p, int degrees);
