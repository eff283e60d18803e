/* line-fit.c: straight line by least squares, centred
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/line-fit.h"

#include <math.h>

static double
weight_of (const double *u, int i)
{
  return u == NULL ? 1.0 : 1.0 / (u[i] * u[i]);
}

static WmResult
check_points (const double *x, const double *y, const double *u, int n, int least,
              const char **which)
{
  int differ = 0;

  if (n < least)
    return wm_refuse (WM_TOO_FEW, "x", which);

  for (int i = 0; i < n; i++)
    {
      if (!isfinite (x[i]))
        return wm_refuse (WM_NOT_A_NUMBER, "x", which);
      if (!isfinite (y[i]))
        return wm_refuse (WM_NOT_A_NUMBER, "y", which);
      if (u != NULL && !isfinite (u[i]))
        return wm_refuse (WM_NOT_A_NUMBER, "u", which);
      if (u != NULL && u[i] <= 0.0)
        return wm_refuse (WM_NOT_POSITIVE, "u", which);
      if (x[i] != x[0])
        differ = 1;
    }

  return differ ? WM_OK : wm_refuse (WM_DEGENERATE, "x", which);
}

static void
solve (const double *x, const double *y, const double *u, int n, WmLineFit *fit)
{
  double sxy = 0.0;

  *fit = (WmLineFit) { .n = n, .degrees = n - 2, .scatter = 1.0, .r2 = NAN };

  for (int i = 0; i < n; i++)
    {
      double w = weight_of (u, i);

      fit->weight_sum += w;
      fit->x_mean += w * x[i];
      fit->y_mean += w * y[i];
    }

  fit->x_mean /= fit->weight_sum;
  fit->y_mean /= fit->weight_sum;

  for (int i = 0; i < n; i++)
    {
      double w = weight_of (u, i);
      double dx = x[i] - fit->x_mean;

      fit->sxx += w * dx * dx;
      sxy += w * dx * (y[i] - fit->y_mean);
    }

  fit->b = sxy / fit->sxx;
  fit->a = fit->y_mean - fit->b * fit->x_mean;

  for (int i = 0; i < n; i++)
    {
      double rest = (y[i] - fit->y_mean) - fit->b * (x[i] - fit->x_mean);

      fit->chi2 += weight_of (u, i) * rest * rest;
    }
}

/* Standard uncertainties for residual standard deviation s. */
static void
finish (WmLineFit *fit, double s)
{
  fit->scatter = s;
  fit->u_b = s / sqrt (fit->sxx);
  fit->u_a = s * sqrt (1.0 / fit->weight_sum + fit->x_mean * fit->x_mean / fit->sxx);
  fit->cov_ab = -s * s * fit->x_mean / fit->sxx;
}

WmResult
wm_line_fit_weighted (const double *x, const double *y, const double *u, int n,
                      WmLineFit *out, const char **which)
{
  WmLineFit fit;
  WmResult result = check_points (x, y, u, n, 2, which);

  if (result != WM_OK)
    return result;

  solve (x, y, u, n, &fit);
  if (!(fit.sxx > 0.0) || !isfinite (fit.b))
    return wm_refuse (WM_DEGENERATE, "x", which);

  finish (&fit, 1.0);
  *out = fit;
  return WM_OK;
}

WmResult
wm_line_fit_ordinary (const double *x, const double *y, int n, WmLineFit *out,
                      const char **which)
{
  WmLineFit fit;
  double total = 0.0;
  WmResult result = check_points (x, y, NULL, n, 3, which);

  if (result != WM_OK)
    return result;

  solve (x, y, NULL, n, &fit);
  if (!(fit.sxx > 0.0) || !isfinite (fit.b))
    return wm_refuse (WM_DEGENERATE, "x", which);

  for (int i = 0; i < n; i++)
    total += (y[i] - fit.y_mean) * (y[i] - fit.y_mean);

  fit.r2 = total > 0.0 ? 1.0 - fit.chi2 / total : NAN;
  finish (&fit, sqrt (fit.chi2 / fit.degrees));
  *out = fit;
  return WM_OK;
}

double
wm_line_fit_at (const WmLineFit *fit, double x, double u_new, double *u_predicted)
{
  double dx = x - fit->x_mean;
  double share = 1.0 / fit->weight_sum + dx * dx / fit->sxx;
  double own = isnan (fit->r2) ? u_new * u_new : fit->scatter * fit->scatter;

  *u_predicted = sqrt (own + fit->scatter * fit->scatter * share);
  return fit->y_mean + fit->b * dx;
}
