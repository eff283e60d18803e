/* topic-wear.c: fit, forecast and next check, as topics
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/topics.h"

#include "reckon/forecast.h"
#include "reckon/next-check.h"
#include "reckon/words.h"

#define MAX_POINTS WM_FORECAST_MAX_VISITS
/* Samples of the plotted band. */
#define N_BAND 25

static const WmTopicInput line_fit_inputs[] = {
  { "points", WM_INPUT_ROWS,
    "::", N_ ("x:y, or x:y:u with each y's standard uncertainty"), WM_REQUIRED, 0, 0 },
  { "at", WM_INPUT_NUMBER, "", N_ ("predict at this x"), 0, -1e9, 1e9 },
};

static const WmTopicOutput line_fit_outputs[] = {
  { "intercept", "", N_ ("intercept"), 0 },
  { "slope", "", N_ ("slope"), 0 },
  { "covariance", "", N_ ("covariance of the two"), 0 },
  { "chi2", "", N_ ("residual sum of squares, weighted if uncertainties are given"), 0 },
  { "degrees", "", N_ ("degrees of freedom"), 0 },
  { "scatter", "", N_ ("residual standard deviation"), 0 },
  { "r2", "", N_ ("share of the variance explained"), 0 },
  { "predicted", "", N_ ("new observation at x"), 0 },
};

static WmResult
run_line_fit (const WmTopicGiven *in, WmTopicAnswer *out, const char **which)
{
  double x[MAX_POINTS], y[MAX_POINTS], u[MAX_POINTS];
  int n = in[0].n_rows;
  int is_weighted = n > 0 && !isnan (in[0].numbers[2]);
  double u_predicted = 0.0;
  double predicted;
  WmLineFit fit;
  WmResult result;

  if (n > MAX_POINTS)
    return wm_refuse (WM_OUT_OF_RANGE, "points", which);

  for (int i = 0; i < n; i++)
    {
      x[i] = in[0].numbers[3 * i];
      y[i] = in[0].numbers[3 * i + 1];
      u[i] = in[0].numbers[3 * i + 2];
    }

  result = is_weighted ? wm_line_fit_weighted (x, y, u, n, &fit, NULL)
                       : wm_line_fit_ordinary (x, y, n, &fit, NULL);
  if (result != WM_OK)
    return wm_refuse (result, "points", which);

  wm_answer_value (out, 0, 0, wm_value (fit.a, fit.u_a));
  wm_answer_value (out, 1, 0, wm_value (fit.b, fit.u_b));
  wm_answer_number (out, 2, 0, fit.cov_ab);
  wm_answer_number (out, 3, 0, fit.chi2);
  wm_answer_number (out, 4, 0, fit.degrees);
  if (!is_weighted)
    {
      wm_answer_number (out, 5, 0, fit.scatter);
      wm_answer_number (out, 6, 0, fit.r2);
    }

  if (in[1].is_given)
    {
      predicted = wm_line_fit_at (&fit, in[1].value.value, in[1].value.u, &u_predicted);
      wm_answer_value (out, 7, 0, wm_value (predicted, u_predicted));
    }

  return WM_OK;
}

const WmTopic wm_topic_line_fit = {
  "line-fit",
  N_ ("Straight line through points"),
  N_ ("Uncertainties of x small against those of y."),
  N_ ("Draper and Smith, Applied Regression Analysis; NIST StRD, Norris"),
  line_fit_inputs,
  WM_TOPIC_ROWS_OF (line_fit_inputs),
  line_fit_outputs,
  WM_TOPIC_ROWS_OF (line_fit_outputs),
  run_line_fit,
};

static const WmTopicInput forecast_inputs[] = {
  { "visits", WM_INPUT_ROWS, "years:mm:mm",
    N_ ("date or years, thickness, its standard uncertainty"), WM_REQUIRED, 0, 0 },
  { "minimum", WM_INPUT_NUMBER, "mm", N_ ("least thickness allowed"), WM_REQUIRED, 0,
    100 },
  { "u_reading", WM_INPUT_NUMBER, "mm",
    N_ ("standard uncertainty of the reading to come; the last one's when not given"), -1,
    0, 10 },
};

enum
{
  LOSS,
  CENTRAL,
  CAREFUL,
  CENTRAL_ON,
  CAREFUL_ON,
  BIRGE,
  CHI2,
  CHI2_LIMIT,
  G,
  KIND,
  BAND_YEARS,
  BAND_CENTRAL,
  BAND_LOWER,
  BAND_UPPER
};

static const WmTopicOutput forecast_outputs[] = {
  [LOSS] = { "loss", "mm/year", N_ ("thinning a year"), 0 },
  [CENTRAL] = { "central", "years",
                N_ ("the line reaches the minimum; dated visits count from the first"),
                0 },
  [CAREFUL] = { "careful", "years",
                N_ ("the 95 % lower bound reaches the minimum; counted likewise"), 0 },
  [CENTRAL_ON] = { "central_on", "date", N_ ("the line reaches the minimum on"), 0 },
  [CAREFUL_ON] = { "careful_on", "date", N_ ("the lower bound reaches the minimum on"),
                   0 },
  [BIRGE] = { "birge", "", N_ ("scatter over stated uncertainty (Birge ratio)"), 0 },
  [CHI2] = { "chi2", "", N_ ("weighted residual sum of squares"), 0 },
  [CHI2_LIMIT] = { "chi2_limit", "", N_ ("its 95 % point"), 0 },
  [G] = { "g", "", N_ ("1 or more: no wear shown yet"), 0 },
  [KIND] = { "says", "word", N_ ("in words"), 0 },
  [BAND_YEARS] = { "plot_years", "years", N_ ("plot: time"), 1 },
  [BAND_CENTRAL] = { "plot_central", "mm", N_ ("plot: line"), 1 },
  [BAND_LOWER] = { "plot_lower", "mm", N_ ("plot: lower bound"), 1 },
  [BAND_UPPER] = { "plot_upper", "mm", N_ ("plot: upper bound"), 1 },
};

static const char *
forecast_words (const WmForecast *f)
{
  switch (f->kind)
    {
    case WM_FORECAST_DUE_NOW:
      return N_ ("It may be under the least allowed thickness already.");
    case WM_FORECAST_NO_WEAR:
      return N_ ("No wear shown: the differences are noise of measuring.");
    case WM_FORECAST_TOO_CLOSE:
      return N_ ("The visits lie too close together for a date.");
    case WM_FORECAST_FAR:
      return N_ ("Beyond 30 years.");
    case WM_FORECAST_DATED:
    default:
      break;
    }

  if (f->birge > 1.0)
    return N_ ("The readings scatter more than their uncertainties allow; the bound was "
               "widened.");

  return f->is_wear_shown ? N_ ("Wear is shown by the readings.")
                          : N_ ("No wear shown yet; the careful date still holds.");
}

/* Dated visits count from the first of them. */
static double
zero_of (const WmTopicGiven *rows)
{
  double zero = INFINITY;

  for (int i = 0; i < rows->n_rows; i++)
    zero = fmin (zero, rows->numbers[3 * i]);

  return rows->has_dates && isfinite (zero) ? zero : 0.0;
}

static WmResult
forecast_from_rows (const WmTopicGiven *rows, double minimum_mm, double u_reading_mm,
                    WmForecast *f, const char **which)
{
  WmVisitReading visits[WM_FORECAST_MAX_VISITS];
  double zero = zero_of (rows);
  int n = rows->n_rows;

  if (n > WM_FORECAST_MAX_VISITS)
    return wm_refuse (WM_OUT_OF_RANGE, "visits", which);

  for (int i = 0; i < n; i++)
    {
      const double *row = &rows->numbers[3 * i];

      visits[i] = (WmVisitReading) { row[0] - zero, { row[1], row[2] } };
    }

  return wm_forecast (visits, n, minimum_mm, u_reading_mm, f, which);
}

static void
answer_band (const WmForecast *f, WmTopicAnswer *out)
{
  double end = isnan (f->careful_years) ? f->last_years + 5.0 : f->careful_years;
  double step = (end - f->first_years) * 1.1 / (N_BAND - 1);

  for (int i = 0; i < N_BAND; i++)
    {
      double at = f->first_years + i * step;
      double central, lower, upper;

      wm_forecast_band (f, at, &central, &lower, &upper);
      wm_answer_number (out, BAND_YEARS, i, at);
      wm_answer_number (out, BAND_CENTRAL, i, central);
      wm_answer_number (out, BAND_LOWER, i, lower);
      wm_answer_number (out, BAND_UPPER, i, upper);
    }
}

static WmResult
run_forecast (const WmTopicGiven *in, WmTopicAnswer *out, const char **which)
{
  int has_date;
  WmForecast f;
  WmResult result =
      forecast_from_rows (&in[0], in[1].value.value, in[2].value.value, &f, which);

  if (result != WM_OK)
    return result;

  /* A date is promised only where the span of the visits carries one. */
  has_date = f.kind == WM_FORECAST_DATED || f.kind == WM_FORECAST_FAR;
  wm_answer_value (out, LOSS, 0, f.loss_mm_year);
  if (has_date)
    {
      wm_answer_number (out, CENTRAL, 0, f.central_years);
      wm_answer_number (out, CAREFUL, 0, f.careful_years);
    }

  if (has_date && in[0].has_dates && f.kind == WM_FORECAST_DATED)
    {
      wm_answer_number (out, CAREFUL_ON, 0,
                        wm_day_from_years (0, zero_of (&in[0]) + f.careful_years));
      if (f.central_years < f.last_years + 1000.0)
        wm_answer_number (out, CENTRAL_ON, 0,
                          wm_day_from_years (0, zero_of (&in[0]) + f.central_years));
    }

  wm_answer_number (out, BIRGE, 0, f.birge);
  wm_answer_number (out, CHI2, 0, f.fit.chi2);
  if (!isnan (f.chi2_limit))
    wm_answer_number (out, CHI2_LIMIT, 0, f.chi2_limit);
  if (isfinite (f.g))
    wm_answer_number (out, G, 0, f.g);
  wm_answer_word (out, KIND, 0, forecast_words (&f));
  answer_band (&f, out);
  return WM_OK;
}

const WmTopic wm_topic_forecast = {
  "forecast",
  N_ ("Wear forecast from several visits"),
  N_ ("One measured place, no repair between the visits, steady wear."),
  N_ ("Weighted least squares; Draper and Smith; Birge 1932; NIST StRD, Norris"),
  forecast_inputs,
  WM_TOPIC_ROWS_OF (forecast_inputs),
  forecast_outputs,
  WM_TOPIC_ROWS_OF (forecast_outputs),
  run_forecast,
};

static const WmTopicInput wear_once_inputs[] = {
  { "made", WM_INPUT_NUMBER, "mm", N_ ("thickness as made"), WM_REQUIRED, 0, 100 },
  { "left", WM_INPUT_NUMBER, "mm", N_ ("thickness now"), WM_REQUIRED, 0, 100 },
  { "age", WM_INPUT_NUMBER, "years", N_ ("worn for"), WM_REQUIRED, 0, 5000 },
  { "minimum", WM_INPUT_NUMBER, "mm", N_ ("least thickness allowed"), WM_REQUIRED, 0,
    100 },
};

static const WmTopicOutput wear_once_outputs[] = {
  { "loss", "mm/year", N_ ("thinning a year, assumed even"), 0 },
  { "central", "years", N_ ("from now to the minimum"), 0 },
  { "careful", "years", N_ ("the same, careful"), 0 },
  { "says", "word", N_ ("in words"), 0 },
};

static WmResult
run_wear_once (const WmTopicGiven *in, WmTopicAnswer *out, const char **which)
{
  WmSingleForecast f;
  WmResult result = wm_forecast_single (in[0].value, in[1].value, in[2].value,
                                        in[3].value.value, &f, which);

  if (result != WM_OK)
    return result;

  wm_answer_value (out, 0, 0, f.loss_mm_year);
  if (!isnan (f.central_years))
    wm_answer_number (out, 1, 0, f.central_years);
  if (!isnan (f.careful_years))
    wm_answer_number (out, 2, 0, f.careful_years);
  wm_answer_word (out, 3, 0,
                  N_ ("Assumes even wear since it was made; a second visit will tell."));
  return WM_OK;
}

const WmTopic wm_topic_wear_once = {
  "wear-once",
  N_ ("Wear from one visit and a stated assumption"),
  N_ ("Even wear since it was made: an assumption, not a trend."),
  N_ ("Law of propagation, GUM 5.1.2"),
  wear_once_inputs,
  WM_TOPIC_ROWS_OF (wear_once_inputs),
  wear_once_outputs,
  WM_TOPIC_ROWS_OF (wear_once_outputs),
  run_wear_once,
};

static const WmTopicInput next_check_inputs[] = {
  { "visit", WM_INPUT_DATE, "date", N_ ("date of this visit"), WM_REQUIRED, 0, 0 },
  { "customary_months", WM_INPUT_WHOLE, "months", N_ ("customary interval"), WM_REQUIRED,
    1, 120 },
  { "factors", WM_INPUT_ROWS, "", N_ ("shortening factors"), 0, 0, 0 },
  { "visits", WM_INPUT_ROWS, "years:mm:mm",
    N_ ("date or years, thickness, its standard uncertainty"), 0, 0, 0 },
  { "minimum", WM_INPUT_NUMBER, "mm", N_ ("least thickness allowed"), 0, 0, 100 },
};

static const WmTopicOutput next_check_outputs[] = {
  { "months", "months", N_ ("come back in"), 0 },
  { "due_on", "date", N_ ("come back on"), 0 },
  { "reason", "word", N_ ("reason, %d = the months"), 0 },
  { "customary_months", "months", N_ ("customary interval after shortening"), 0 },
  { "forecast_months", "months", N_ ("what the forecast alone would give"), 0 },
};

static WmResult
run_next_check (const WmTopicGiven *in, WmTopicAnswer *out, const char **which)
{
  WmForecast f;
  int has_forecast = in[3].n_rows > 0;
  WmNextCheck check;
  WmResult result = WM_OK;

  if (has_forecast)
    result = forecast_from_rows (&in[3], in[4].value.value, -1.0, &f, which);
  if (result == WM_OK)
    result = wm_next_check (has_forecast ? &f : NULL, (long)in[0].value.value,
                            (int)in[1].value.value, in[2].numbers, in[2].n_rows, &check,
                            which);
  if (result != WM_OK)
    return result;

  wm_answer_number (out, 0, 0, check.months);
  wm_answer_number (out, 1, 0, check.due_day);
  wm_answer_word (out, 2, 0, wm_check_reason_text (check.reason));
  wm_answer_number (out, 3, 0, check.customary_months);
  if (!isnan (check.forecast_months))
    wm_answer_number (out, 4, 0, check.forecast_months);
  return WM_OK;
}

const WmTopic wm_topic_next_check = {
  "next-check",
  N_ ("Next check date"),
  N_ ("Never later than the customary interval."),
  N_ ("Half of the careful time: our own proposal; intervals: common practice"),
  next_check_inputs,
  WM_TOPIC_ROWS_OF (next_check_inputs),
  next_check_outputs,
  WM_TOPIC_ROWS_OF (next_check_outputs),
  run_next_check,
};
