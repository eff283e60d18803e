/* next-check.h: when to come back, and why
 *
 * Pure computation: no I/O, no GLib, no clock.
 *
 * The shorter of half the careful time the forecast gives and the customary interval;
 * whole months, rounded down, at least one. The customary interval is never exceeded.
 *
 * Source: the share of one half and the shortening factors are our own proposal; the
 * customary intervals are common practice (trade tables).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/day.h"
#include "reckon/forecast.h"

/* Share of the careful time after which the part is looked at again. */
#define WM_NEXT_CHECK_SHARE 0.5
/* Shortening factors never bring the customary interval under this. */
#define WM_NEXT_CHECK_FLOOR_MONTHS 2

typedef enum
{
  WM_CHECK_CUSTOMARY = 0, /* no forecast, or it allows longer than is customary */
  WM_CHECK_SHORTENED,     /* customary interval, shortened by how the piece is worn */
  WM_CHECK_FORECAST,      /* the forecast asks for less than is customary */
  WM_CHECK_DUE_NOW        /* the careful bound is under the minimum: mend it first */
} WmCheckReason;

typedef struct
{
  int months;   /* from the visit; 0 for DUE_NOW */
  long due_day; /* day number; the visit's own for DUE_NOW */
  WmCheckReason reason;
  int customary_months;   /* after shortening */
  double forecast_months; /* what the forecast alone would give, unrounded; NaN if none */
} WmNextCheck;

/**
 * wm_next_check:
 * @forecast: (nullable): of the part that wears fastest
 * @visit_day: day number of this visit
 * @customary_months: for this type of piece, 1..120
 * @factors: (nullable): @n_factors shortening factors, each above 0 up to 1, multiplied
 *
 * Returns: WM_OK; WM_OUT_OF_RANGE, WM_NOT_POSITIVE or WM_NOT_A_NUMBER with @which
 * customary_months or factors
 */
WmResult wm_next_check (const WmForecast *forecast, long visit_day, int customary_months,
                        const double *factors, int n_factors, WmNextCheck *out,
                        const char **which);

/**
 * wm_check_reason_text:
 *
 * Returns: the sentence for the customer, to be translated; with one %d for the months in
 * all but DUE_NOW. Static.
 */
const char *wm_check_reason_text (WmCheckReason reason);
