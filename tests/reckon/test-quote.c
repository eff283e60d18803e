/* test-quote.c: money
 *
 * Expected values: exact decimal arithmetic outside; rounding rows of IEEE 754 half to
 * even.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/quote.h"

#include <string.h>

#include "near.h"

static void
test_divide (void)
{
  const struct
  {
    int64_t amount, by, even, up;
  } rows[] = {
    { 5, 2, 2, 3 },
    { 7, 2, 4, 4 },
    { -5, 2, -2, -3 },
    { -7, 2, -4, -4 },
    { 1, 3, 0, 0 },
    { 2, 3, 1, 1 },
    { 10, 4, 2, 3 },
    { 6, 4, 2, 2 },
    /* thousandths to hundredths: 0.125 0.135 2.345 2.355 -2.345 1.005 */
    { 125, 10, 12, 13 },
    { 135, 10, 14, 14 },
    { 2345, 10, 234, 235 },
    { 2355, 10, 236, 236 },
    { -2345, 10, -234, -235 },
    { 1005, 10, 100, 101 },
    { INT64_MIN, 1, INT64_MIN, INT64_MIN },
    { INT64_MAX, INT64_MAX, 1, 1 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_assert_cmpint (wm_money_divide (rows[i].amount, rows[i].by, WM_ROUND_HALF_EVEN),
                       ==, rows[i].even);
      g_assert_cmpint (wm_money_divide (rows[i].amount, rows[i].by, WM_ROUND_HALF_UP), ==,
                       rows[i].up);
    }
}

static void
test_quotes (void)
{
  const struct
  {
    WmQuoteLine line;
    int64_t tax_bp;
    int64_t metal, labour, net, tax, total;
  } rows[] = {
    { { 1850, 6240, 800, 75, 6500, 1650, 0 }, 2000, 12468, 8125, 22243, 4449, 26692 },
    { { 420, 3815, 500, 35, 5400, 0, 0 }, 1900, 1682, 3150, 4832, 918, 5750 },
    { { 2500, 9000, 1000, 20, 6000, 0, 0 }, 810, 24750, 2000, 26750, 2167, 28917 },
    { { 1850, 9800, 800, 75, 9000, 800, 0 }, 1000, 19580, 11250, 31630, 3163, 34793 },
    { { 1850, 24150, 800, 75, 18000, 1500, 0 }, 0, 48252, 22500, 72252, 0, 72252 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      WmQuoteLineSum line;
      WmQuoteSum sum;

      g_assert_cmpint (wm_quote (&rows[i].line, 1, rows[i].tax_bp, WM_TAX_ON_TOTAL,
                                 WM_ROUND_HALF_EVEN, &line, &sum, NULL),
                       ==, WM_OK);
      g_assert_cmpint (line.metal_minor, ==, rows[i].metal);
      g_assert_cmpint (line.labour_minor, ==, rows[i].labour);
      g_assert_cmpint (sum.net_minor, ==, rows[i].net);
      g_assert_cmpint (sum.tax_minor, ==, rows[i].tax);
      g_assert_cmpint (sum.total_minor, ==, rows[i].total);
    }
}

/* A declined line is reckoned but not charged; tax by line and on the total differ by
 * roundings only. */
static void
test_lines (void)
{
  const WmQuoteLine lines[] = { { 420, 3815, 500, 35, 5400, 0, 0 },
                                { 1850, 6240, 800, 75, 6500, 1650, 1 },
                                { 0, 0, 0, 20, 6000, 333, 0 } };
  WmQuoteLineSum sums[3];
  WmQuoteSum total, by_line;

  g_assert_cmpint (
      wm_quote (lines, 3, 1900, WM_TAX_ON_TOTAL, WM_ROUND_HALF_EVEN, sums, &total, NULL),
      ==, WM_OK);
  g_assert_cmpint (sums[1].net_minor, ==, 22243);
  g_assert_cmpint (total.net_minor, ==, 4832 + 2333);
  g_assert_cmpint (total.tax_minor, ==, 1361); /* 7165 x 0.19 = 1361.35 */
  g_assert_cmpint (wm_quote (lines, 3, 1900, WM_TAX_PER_LINE, WM_ROUND_HALF_EVEN, sums,
                             &by_line, NULL),
                   ==, WM_OK);
  g_assert_cmpint (by_line.tax_minor, ==, 918 + 443); /* 918.08 and 443.27 */
  g_assert_cmpint (by_line.net_minor, ==, total.net_minor);
}

static void
test_split (void)
{
  const int64_t thirds[] = { 1, 1, 1 };
  const int64_t shares[] = { 50, 30, 20 };
  int64_t out[3];

  g_assert_cmpint (wm_money_split (1000, thirds, 3, out, NULL), ==, WM_OK);
  g_assert_cmpint (out[0], ==, 334);
  g_assert_cmpint (out[1], ==, 333);
  g_assert_cmpint (out[2], ==, 333);
  g_assert_cmpint (wm_money_split (1999, shares, 3, out, NULL), ==, WM_OK);
  g_assert_cmpint (out[0], ==, 999);
  g_assert_cmpint (out[1], ==, 600);
  g_assert_cmpint (out[2], ==, 400);

  for (int64_t total = 0; total < 500; total++)
    {
      g_assert_cmpint (wm_money_split (total, shares, 3, out, NULL), ==, WM_OK);
      g_assert_cmpint (out[0] + out[1] + out[2], ==, total);
    }
}

static void
test_text (void)
{
  const struct
  {
    int64_t minor;
    int decimals;
    const char *text;
  } rows[] = { { 12468, 2, "124.68" },
               { 5, 2, "0.05" },
               { -1205, 2, "-12.05" },
               { 34793, 0, "34793" },
               { 72252, 3, "72.252" },
               { 0, 2, "0.00" },
               { INT64_MIN, 2, "-92233720368547758.08" } };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      char text[WM_MONEY_TEXT_MAX];

      wm_money_text (rows[i].minor, rows[i].decimals, text);
      g_assert_cmpstr (text, ==, rows[i].text);
    }
}

static void
test_refusals (void)
{
  const struct
  {
    WmQuoteLine line;
    int64_t tax;
    WmResult result;
    const char *which;
  } rows[] = {
    { { -1, 1, 0, 0, 0, 0, 0 }, 0, WM_NOT_POSITIVE, "metal_mg" },
    { { 1, -1, 0, 0, 0, 0, 0 }, 0, WM_NOT_POSITIVE, "price_per_g" },
    { { 1, 1, 0, -5, 0, 0, 0 }, 0, WM_NOT_POSITIVE, "minutes" },
    { { 1, 1, 10000, 0, 0, 0, 0 }, 0, WM_OUT_OF_RANGE, "loss" },
    { { INT64_MAX, 2, 0, 0, 0, 0, 0 }, 0, WM_TOO_BIG, "price_per_g" },
    { { INT64_MAX / 2, 2, 0, 0, 0, 0, 0 }, 0, WM_TOO_BIG, "price_per_g" },
    { { 0, 0, 0, INT64_MAX, 2, 0, 0 }, 0, WM_TOO_BIG, "rate_per_hour" },
    { { 0, 0, 0, 0, 0, INT64_MAX, 0 }, 2000, WM_TOO_BIG, "tax" },
    { { 0, 0, 0, 0, 0, 1, 0 }, -1, WM_OUT_OF_RANGE, "tax" },
  };
  const int64_t none[] = { 0, 0 };
  int64_t out[2];

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const char *which = NULL;
      WmQuoteSum sum = { .total_minor = -7 };

      g_assert_cmpint (wm_quote (&rows[i].line, 1, rows[i].tax, WM_TAX_ON_TOTAL,
                                 WM_ROUND_HALF_EVEN, NULL, &sum, &which),
                       ==, rows[i].result);
      g_assert_cmpstr (which, ==, rows[i].which);
      g_assert_cmpint (sum.total_minor, ==, -7);
    }

  g_assert_cmpint (wm_money_split (10, none, 2, out, NULL), ==, WM_NOT_POSITIVE);
  g_assert_cmpint (wm_money_split (-10, none, 2, out, NULL), ==, WM_NOT_POSITIVE);
  g_assert_cmpint (wm_money_split (10, none, 0, out, NULL), ==, WM_TOO_FEW);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reckon/quote/divide", test_divide);
  g_test_add_func ("/reckon/quote/quotes", test_quotes);
  g_test_add_func ("/reckon/quote/lines", test_lines);
  g_test_add_func ("/reckon/quote/split", test_split);
  g_test_add_func ("/reckon/quote/text", test_text);
  g_test_add_func ("/reckon/quote/refusals", test_refusals);
  return g_test_run ();
}
