/* chance.c: chances in series, evidence, value at risk
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/chance.h"

#include <gsl/gsl_cdf.h>
#include <math.h>

#define MAX_ITEMS 100000

static WmResult
check_chances (const double *p, int n, const char **which)
{
  WmResult result = WM_OK;

  if (n < 1 || n > MAX_ITEMS)
    return wm_refuse (n < 1 ? WM_TOO_FEW : WM_OUT_OF_RANGE, "p", which);

  for (int i = 0; i < n && result == WM_OK; i++)
    {
      const WmInputBound bound = WM_FROM ("p", wm_exact (p[i]), 0.0, 1.0);

      result = wm_bounds_check (&bound, 1, which);
    }

  return result;
}

WmResult
wm_chance_series (const double *p, int n, WmSeriesChance *out, const char **which)
{
  double log_survival = 0.0;
  double greatest = 0.0;
  double sum = 0.0;
  WmResult result = check_chances (p, n, which);

  if (result != WM_OK)
    return result;

  for (int i = 0; i < n; i++)
    {
      log_survival += log1p (-p[i]);
      greatest = fmax (greatest, p[i]);
      sum += p[i];
    }

  *out = (WmSeriesChance) { -expm1 (log_survival), greatest, fmin (1.0, sum) };
  return WM_OK;
}

WmResult
wm_chance_equal (double p, int count, WmSeriesChance *out, const char **which)
{
  WmResult result = check_chances (&p, 1, which);

  if (result != WM_OK)
    return result;

  if (count < 1 || count > MAX_ITEMS)
    return wm_refuse (count < 1 ? WM_NOT_POSITIVE : WM_OUT_OF_RANGE, "count", which);

  *out = (WmSeriesChance) { -expm1 (count * log1p (-p)), p, fmin (1.0, count * p) };
  return WM_OK;
}

WmResult
wm_chance_weibull (double shape, double scale, double age, double ahead, double *chance,
                   const char **which)
{
  const WmInputBound bounds[] = {
    WM_ABOVE ("shape", wm_exact (shape), 0.0, 50.0),
    WM_ABOVE ("scale", wm_exact (scale), 0.0, 1000.0),
    WM_FROM ("age", wm_exact (age), 0.0, 1000.0),
    WM_ABOVE ("ahead", wm_exact (ahead), 0.0, 1000.0),
  };
  WmResult result = wm_bounds_check (bounds, 4, which);

  if (result != WM_OK)
    return result;

  *chance = -expm1 (pow (age / scale, shape) - pow ((age + ahead) / scale, shape));
  return WM_OK;
}

WmResult
wm_chance_margin (WmValue expected, double minimum, double *chance, const char **which)
{
  const WmInputBound bounds[] = {
    WM_FROM ("expected", expected, -1e6, 1e6),
    WM_ABOVE ("expected", wm_exact (expected.u), 0.0, 1e6),
    WM_FROM ("minimum", wm_exact (minimum), -1e6, 1e6),
  };
  WmResult result = wm_bounds_check (bounds, 3, which);

  if (result != WM_OK)
    return result;

  *chance = gsl_cdf_ugaussian_P ((minimum - expected.value) / expected.u);
  return WM_OK;
}

/* Beta quantile by bisection on the distribution: always settles, unlike the library's
 * Newton steps far in the tails. */
static double
beta_quantile (double p, double a, double b)
{
  double low = 0.0;
  double high = 1.0;

  for (int i = 0; i < 200; i++)
    {
      double middle = 0.5 * (low + high);

      if (gsl_cdf_beta_P (middle, a, b) < p)
        low = middle;
      else
        high = middle;
    }

  return 0.5 * (low + high);
}

WmResult
wm_evidence (int failed, int seen, double level, WmEvidence *out, const char **which)
{
  const WmInputBound bound = WM_FROM ("level", wm_exact (level), 0.5, 0.999999);
  double n = seen;
  double share, z, middle, half, scale, tail;
  WmResult result = wm_bounds_check (&bound, 1, which);

  if (result != WM_OK)
    return result;

  if (seen < WM_CHANCE_LEAST_CASES)
    return wm_refuse (WM_TOO_FEW, "seen", which);

  if (seen > 10000000)
    return wm_refuse (WM_OUT_OF_RANGE, "seen", which);

  if (failed < 0 || failed > seen)
    return wm_refuse (WM_CONTRADICTION, "failed", which);

  share = failed / n;
  tail = (1.0 - level) / 2.0;
  z = -gsl_cdf_ugaussian_Pinv (tail);
  scale = 1.0 + z * z / n;
  middle = share + z * z / (2.0 * n);
  half = z * sqrt (share * (1.0 - share) / n + z * z / (4.0 * n * n));

  out->share = share;
  out->wilson_low = failed == 0 ? 0.0 : fmax (0.0, (middle - half) / scale);
  out->wilson_high = failed == seen ? 1.0 : fmin (1.0, (middle + half) / scale);
  out->exact_low = failed == 0 ? 0.0 : beta_quantile (tail, failed, n - failed + 1.0);
  out->exact_high =
      failed == seen ? 1.0 : beta_quantile (1.0 - tail, failed + 1.0, n - failed);
  return WM_OK;
}

WmResult
wm_value_at_risk (const double *p, const int64_t *value_minor, int n, int64_t *loss_minor,
                  const char **which)
{
  long double sum = 0.0L;
  WmResult result = check_chances (p, n, which);

  if (result != WM_OK)
    return result;

  for (int i = 0; i < n; i++)
    {
      if (value_minor[i] < 0)
        return wm_refuse (WM_NOT_POSITIVE, "value", which);

      sum += (long double)p[i] * (long double)value_minor[i];
    }

  if (sum > 9.2e18L)
    return wm_refuse (WM_TOO_BIG, "value", which);

  /* Half to even: the processor's rounding, which nothing here changes. */
  *loss_minor = (int64_t)llrintl (sum);
  return WM_OK;
}
