/* quote.c: money in whole minor units
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/quote.h"

#include <inttypes.h>
#include <stdio.h>

#include "reckon/value.h"

#define BP 10000
#define MG_PER_G 1000
#define MINUTES_PER_HOUR 60
#define MAX_SHARES 1000

int64_t
wm_money_divide (int64_t amount, int64_t divisor, WmRounding rounding)
{
  uint64_t size = amount < 0 ? 0 - (uint64_t)amount : (uint64_t)amount;
  uint64_t by = (uint64_t)divisor;
  uint64_t quotient = size / by;
  uint64_t rest = size % by;
  uint64_t other = by - rest;

  /* rest against its complement: twice the rest could leave 64 bits. */
  if (rest > other
      || (rest == other && (rounding == WM_ROUND_HALF_UP || quotient % 2 == 1)))
    quotient++;

  return amount < 0 ? (int64_t)(0 - quotient) : (int64_t)quotient;
}

/* a * b / divisor, rounded once; WM_TOO_BIG when the product leaves 64 bits. */
static WmResult
scaled (int64_t a, int64_t b, int64_t divisor, WmRounding rounding, int64_t *out)
{
  int64_t product;

  if (__builtin_mul_overflow (a, b, &product))
    return WM_TOO_BIG;

  *out = wm_money_divide (product, divisor, rounding);
  return WM_OK;
}

static WmResult
check_line (const WmQuoteLine *line, const char **which)
{
  const struct
  {
    int64_t amount;
    const char *input;
  } rows[] = {
    { line->metal_mg, "metal_mg" },
    { line->price_per_g_minor, "price_per_g" },
    { line->loss_bp, "loss" },
    { line->minutes, "minutes" },
    { line->rate_per_hour_minor, "rate_per_hour" },
    { line->parts_minor, "parts" },
  };

  for (int i = 0; i < 6; i++)
    if (rows[i].amount < 0)
      return wm_refuse (WM_NOT_POSITIVE, rows[i].input, which);

  if (line->loss_bp >= BP)
    return wm_refuse (WM_OUT_OF_RANGE, "loss", which);

  return WM_OK;
}

WmResult
wm_quote_line (const WmQuoteLine *line, WmRounding rounding, WmQuoteLineSum *out,
               const char **which)
{
  WmQuoteLineSum sum = { .parts_minor = line->parts_minor };
  int64_t value;
  WmResult result = check_line (line, which);

  if (result != WM_OK)
    return result;

  if (__builtin_mul_overflow (line->metal_mg, line->price_per_g_minor, &value)
      || scaled (value, BP + line->loss_bp, (int64_t)MG_PER_G * BP, rounding,
                 &sum.metal_minor)
             != WM_OK)
    return wm_refuse (WM_TOO_BIG, "price_per_g", which);

  if (scaled (line->minutes, line->rate_per_hour_minor, MINUTES_PER_HOUR, rounding,
              &sum.labour_minor)
      != WM_OK)
    return wm_refuse (WM_TOO_BIG, "rate_per_hour", which);

  if (__builtin_add_overflow (sum.metal_minor, sum.labour_minor, &sum.net_minor)
      || __builtin_add_overflow (sum.net_minor, sum.parts_minor, &sum.net_minor))
    return wm_refuse (WM_TOO_BIG, "parts", which);

  *out = sum;
  return WM_OK;
}

/* Adds one line to the total; its tax when tax goes by line. */
static WmResult
add_line (const WmQuoteLine *line, int64_t tax_bp, WmTaxRule tax_rule,
          WmRounding rounding, WmQuoteLineSum *sum, WmQuoteSum *total, const char **which)
{
  WmResult result = wm_quote_line (line, rounding, sum, which);

  if (result != WM_OK)
    return result;

  if (tax_rule == WM_TAX_PER_LINE
      && scaled (sum->net_minor, tax_bp, BP, rounding, &sum->tax_minor) != WM_OK)
    return wm_refuse (WM_TOO_BIG, "tax", which);

  if (line->is_declined)
    return WM_OK;

  if (__builtin_add_overflow (total->net_minor, sum->net_minor, &total->net_minor)
      || __builtin_add_overflow (total->tax_minor, sum->tax_minor, &total->tax_minor))
    return wm_refuse (WM_TOO_BIG, "parts", which);

  return WM_OK;
}

WmResult
wm_quote (const WmQuoteLine *lines, int n_lines, int64_t tax_bp, WmTaxRule tax_rule,
          WmRounding rounding, WmQuoteLineSum *sums, WmQuoteSum *out, const char **which)
{
  WmQuoteSum total = { 0 };

  if (tax_bp < 0 || tax_bp > BP)
    return wm_refuse (WM_OUT_OF_RANGE, "tax", which);

  for (int i = 0; i < n_lines; i++)
    {
      WmQuoteLineSum sum;
      WmResult result =
          add_line (&lines[i], tax_bp, tax_rule, rounding, &sum, &total, which);

      if (result != WM_OK)
        return result;

      if (sums != NULL)
        sums[i] = sum;
    }

  if (tax_rule == WM_TAX_ON_TOTAL
      && scaled (total.net_minor, tax_bp, BP, rounding, &total.tax_minor) != WM_OK)
    return wm_refuse (WM_TOO_BIG, "tax", which);

  if (__builtin_add_overflow (total.net_minor, total.tax_minor, &total.total_minor))
    return wm_refuse (WM_TOO_BIG, "tax", which);

  *out = total;
  return WM_OK;
}

WmResult
wm_money_split (int64_t total, const int64_t *weights, int n, int64_t *shares,
                const char **which)
{
  int64_t rest[MAX_SHARES];
  int64_t sum = 0;
  int64_t left = total;

  if (total < 0)
    return wm_refuse (WM_NOT_POSITIVE, "total", which);

  if (n < 1 || n > MAX_SHARES)
    return wm_refuse (n < 1 ? WM_TOO_FEW : WM_OUT_OF_RANGE, "weights", which);

  for (int i = 0; i < n; i++)
    if (weights[i] < 0)
      return wm_refuse (WM_NOT_POSITIVE, "weights", which);
    else if (__builtin_add_overflow (sum, weights[i], &sum))
      return wm_refuse (WM_TOO_BIG, "weights", which);

  if (sum == 0)
    return wm_refuse (WM_NOT_POSITIVE, "weights", which);

  for (int i = 0; i < n; i++)
    {
      int64_t product;

      if (__builtin_mul_overflow (total, weights[i], &product))
        return wm_refuse (WM_TOO_BIG, "total", which);

      shares[i] = product / sum;
      rest[i] = product % sum;
      left -= shares[i];
    }

  for (; left > 0; left--)
    {
      int most = 0;

      for (int i = 1; i < n; i++)
        if (rest[i] > rest[most])
          most = i;

      shares[most]++;
      rest[most] = -1;
    }

  return WM_OK;
}

void
wm_money_text (int64_t minor, int decimals, char *text)
{
  uint64_t size = minor < 0 ? 0 - (uint64_t)minor : (uint64_t)minor;
  uint64_t unit = 1;

  for (int i = 0; i < decimals; i++)
    unit *= 10;

  if (decimals == 0)
    snprintf (text, WM_MONEY_TEXT_MAX, "%s%" PRIu64, minor < 0 ? "-" : "", size);
  else
    snprintf (text, WM_MONEY_TEXT_MAX, "%s%" PRIu64 ".%0*" PRIu64, minor < 0 ? "-" : "",
              size / unit, decimals, size % unit);
}
