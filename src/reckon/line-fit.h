/* line-fit.h: a straight line through points, weighted or not
 *
 * Pure computation: no I/O, no GLib, no state; safe on any thread.
 *
 * y = a + b x by least squares in the centred form (the uncentred sums lose digits
 * when x is a calendar year). Weighted: w = 1/u^2, uncertainties from the u given.
 * Ordinary: scatter estimated from the residuals.
 *
 * Source: Draper and Smith, Applied Regression Analysis (from memory); checked against
 * NIST Statistical Reference Datasets, Norris, and the worked example of the GSL
 * manual (test-line-fit.c).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/value.h"

typedef struct
{
  int n;
  double a, b; /* intercept at x = 0, slope */
  double u_a, u_b;
  double cov_ab;
  double x_mean; /* weighted */
  double y_mean;
  double weight_sum; /* W: sum of weights; 1 each when ordinary */
  double sxx;        /* S: weighted sum of squares of x about its mean */
  double chi2;       /* weighted residual sum of squares (plain RSS when ordinary) */
  int degrees;       /* n - 2 */
  double scatter;    /* ordinary: residual standard deviation; weighted: 1 */
  double r2;         /* ordinary: share of the variance explained; weighted: NaN */
} WmLineFit;

/**
 * wm_line_fit_weighted:
 * @u: standard uncertainty of each y, above 0
 *
 * Returns: WM_OK; WM_TOO_FEW under 2 points; WM_DEGENERATE when all x are equal;
 * WM_NOT_A_NUMBER; WM_NOT_POSITIVE (a u of 0 or less); @which is x, y or u
 */
WmResult wm_line_fit_weighted (const double *x, const double *y, const double *u, int n,
                               WmLineFit *out, const char **which);

/**
 * wm_line_fit_ordinary:
 *
 * Returns: as wm_line_fit_weighted; WM_TOO_FEW under 3 points (no scatter from two)
 */
WmResult wm_line_fit_ordinary (const double *x, const double *y, int n, WmLineFit *out,
                               const char **which);

/**
 * wm_line_fit_at:
 * @u_new: standard uncertainty of a new observation in the weighted case; not read in the
 * ordinary case, where the scatter counts
 * @u_predicted: (out): of a new observation at @x
 *
 * Returns: a + b x
 */
double wm_line_fit_at (const WmLineFit *fit, double x, double u_new, double *u_predicted);
