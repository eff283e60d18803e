/* chance.h: chance that something fails before the next check, and what it would cost
 *
 * Pure computation: no I/O, no GLib, no state; safe on any thread.
 *
 * Independent items in series: 1 - product (1 - p). Items worn alike are not
 * independent: the bounds greatest p <= P <= sum of p hold whatever they share.
 * Weibull wear-out: chance in (t, t + d] given survival to t. From a measured margin: the
 * normal distribution. From the shop's own archive, k of n: Wilson and Clopper-Pearson
 * intervals. Expected loss = sum p value: holds even when items are not independent;
 * a declared value, never an appraisal.
 * Valid for p in 0..1; under 5 cases no percentage is given. Archive counts need equal
 * follow-up.
 *
 * Source: Wilson 1927, Clopper and Pearson 1934, Weibull 1951 (from memory); checked
 * against SciPy and R (test-chance.c).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <stdint.h>

#include "reckon/value.h"

#define WM_CHANCE_LEAST_CASES 5

typedef struct
{
  double chance;   /* items independent */
  double at_least; /* whatever they share */
  double at_most;
} WmSeriesChance;

/**
 * wm_chance_series:
 * @p: @n chances, each 0..1, 1..100000 of them
 *
 * Returns: WM_OK; WM_TOO_FEW, WM_NOT_A_NUMBER, WM_OUT_OF_RANGE with @which p
 */
WmResult
wm_chance_series (const double *p, int n, WmSeriesChance *out, const char **which);

/**
 * wm_chance_equal:
 * @count: of alike items, 1..100000
 *
 * Returns: as wm_chance_series, @which p or count
 */
WmResult wm_chance_equal (double p, int count, WmSeriesChance *out, const char **which);

/**
 * wm_chance_weibull:
 * @shape: above 0, over 1 for wear-out; @scale, @age, @ahead in years
 *
 * Returns: WM_OK and the chance of failing within @ahead after surviving to @age;
 * otherwise
 * @which shape, scale, age, ahead
 */
WmResult wm_chance_weibull (double shape, double scale, double age, double ahead,
                            double *chance, const char **which);

/**
 * wm_chance_margin:
 * @expected: predicted value with its standard uncertainty, above 0
 *
 * Returns: WM_OK and the chance that the true value is under @minimum; @which expected,
 * minimum
 */
WmResult
wm_chance_margin (WmValue expected, double minimum, double *chance, const char **which);

typedef struct
{
  double share; /* k / n */
  double wilson_low, wilson_high;
  double exact_low, exact_high; /* Clopper-Pearson */
} WmEvidence;

/**
 * wm_evidence:
 * @failed of @seen: 0..seen, seen at least WM_CHANCE_LEAST_CASES
 * @level: two-sided, above 0.5 and under 1, such as 0.95
 *
 * Returns: WM_OK; WM_TOO_FEW (@which seen): show "k of n" instead; WM_CONTRADICTION
 * (@which failed); @which also level
 */
WmResult
wm_evidence (int failed, int seen, double level, WmEvidence *out, const char **which);

/**
 * wm_value_at_risk:
 * @p: @n chances 0..1
 * @value_minor: @n values in minor units of one currency, 0 or more
 *
 * Returns: WM_OK and the expected loss in minor units, rounded half to even; WM_TOO_BIG
 * (@which value); otherwise @which p, value
 */
WmResult wm_value_at_risk (const double *p, const int64_t *value_minor, int n,
                           int64_t *loss_minor, const char **which);
