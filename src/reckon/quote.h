/* quote.h: what a repair costs, exact to the minor unit
 *
 * Pure computation: no I/O, no GLib, no state; safe on any thread.
 *
 * 64-bit integers throughout, never binary floating point. Weights in mg, time in
 * minutes, loss and tax in basis points, money in minor units (0, 2 or 3 decimals by
 * currency). One rounding a line: metal = mg price_per_g (10000 + loss) / 10^7, labour =
 * minutes rate / 60; tax per quote or per line, as the local rule says (a setting).
 *
 * Source: IEEE 754 and ISO 80000-1, rounding half to even; ISO 4217 for the decimals
 * (from memory).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <stdint.h>

#include "reckon/result.h"

typedef enum
{
  WM_ROUND_HALF_EVEN = 0,
  WM_ROUND_HALF_UP = 1 /* away from zero */
} WmRounding;

typedef enum
{
  WM_TAX_ON_TOTAL = 0,
  WM_TAX_PER_LINE = 1
} WmTaxRule;

typedef struct
{
  int64_t metal_mg;
  int64_t price_per_g_minor;
  int64_t loss_bp; /* added for filing and sprue, 0..9999 */
  int64_t minutes;
  int64_t rate_per_hour_minor;
  int64_t parts_minor;
  int is_declined; /* by the customer: reckoned, not added to the total */
} WmQuoteLine;

typedef struct
{
  int64_t metal_minor;
  int64_t labour_minor;
  int64_t parts_minor;
  int64_t net_minor;
  int64_t tax_minor; /* 0 unless tax is per line */
} WmQuoteLineSum;

typedef struct
{
  int64_t net_minor; /* of the lines not declined */
  int64_t tax_minor;
  int64_t total_minor;
} WmQuoteSum;

/**
 * wm_money_divide:
 * @divisor: above 0
 *
 * Returns: @amount / @divisor rounded to a whole number
 */
int64_t wm_money_divide (int64_t amount, int64_t divisor, WmRounding rounding);

/**
 * wm_quote_line:
 *
 * Returns: WM_OK; WM_NOT_POSITIVE for a negative input; WM_OUT_OF_RANGE (@which loss)
 * from 100 % on; WM_TOO_BIG when a product leaves 64 bits; @which metal_mg, price_per_g,
 * loss, minutes, rate_per_hour, parts
 */
WmResult wm_quote_line (const WmQuoteLine *line, WmRounding rounding, WmQuoteLineSum *out,
                        const char **which);

/**
 * wm_quote:
 * @sums: (out) (optional): one for each line
 * @tax_bp: 0..10000
 *
 * Returns: as wm_quote_line; WM_OUT_OF_RANGE (@which tax)
 */
WmResult
wm_quote (const WmQuoteLine *lines, int n_lines, int64_t tax_bp, WmTaxRule tax_rule,
          WmRounding rounding, WmQuoteLineSum *sums, WmQuoteSum *out, const char **which);

/**
 * wm_money_split:
 * @weights: @n of them, 0 or more, not all 0
 * @shares: (out): adding up to @total exactly
 *
 * Each share is rounded down; what is left goes one by one to the largest remainders, the
 * first of equals first.
 *
 * Returns: WM_OK; WM_TOO_FEW, WM_NOT_POSITIVE, WM_TOO_BIG with @which total or weights
 */
WmResult wm_money_split (int64_t total, const int64_t *weights, int n, int64_t *shares,
                         const char **which);

#define WM_MONEY_TEXT_MAX 40

/**
 * wm_money_text:
 * @decimals: of the currency, 0..4
 * @text: (out): at least WM_MONEY_TEXT_MAX bytes, such as "-12.05"
 */
void wm_money_text (int64_t minor, int decimals, char *text);
