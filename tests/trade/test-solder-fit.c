/* test-solder-fit.c: fineness of solders against the hallmarking table
 *
 * Expected values: the United Kingdom table as quoted in the trade reference, section
 * 2.2 (R13): 750 for gold of 750 and above, 500 for white gold, 585 and 375 for those,
 * 650 for silver of every standard.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/solder-fit.h"

#include <math.h>

static WmTrade *trade;

static void
test_least (void)
{
  static const struct
  {
    const char *metal;
    double fineness; /* stamped on the piece; NaN: the alloy's own */
    double least;
    const char *advice;
  } rows[] = {
    { "au916y", NAN, 750, "sf_1" },  { "au750y", NAN, 750, "sf_1" },
    { "au750wn", NAN, 500, "sf_3" }, { "au585y", NAN, 585, "sf_4" },
    { "au585r", NAN, 585, "sf_4" },  { "au585wp", NAN, 500, "sf_5" },
    { "au375y", NAN, 375, "sf_6" },  { "au585y", 375, 375, "sf_6" },
    { "ag925", NAN, 650, "sf_7" },   { "ag935d", NAN, 650, "sf_7" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const WmMetal *metal = wm_trade_find_metal (trade, rows[i].metal);
      const char *advice = NULL;

      g_assert_nonnull (metal);
      g_assert_cmpfloat (
          wm_trade_least_solder_fineness (metal, rows[i].fineness, &advice), ==,
          rows[i].least);
      g_assert_cmpstr (advice, ==, rows[i].advice);
      g_assert_nonnull (wm_trade_find_advice (trade, advice));
    }
  g_assert_true (isnan (wm_trade_least_solder_fineness (
      wm_trade_find_metal (trade, "pt950ru"), NAN, NULL)));
}

static void
test_too_low (void)
{
  const WmMetal *gold = wm_trade_find_metal (trade, "au750y");
  const WmMetal *silver = wm_trade_find_metal (trade, "ag925");

  g_assert_true (
      wm_trade_solder_is_too_low (wm_trade_find_solder (trade, "au14_m"), gold, NAN));
  g_assert_false (
      wm_trade_solder_is_too_low (wm_trade_find_solder (trade, "au18_e"), gold, NAN));
  g_assert_true (
      wm_trade_solder_is_too_low (wm_trade_find_solder (trade, "ag_xe"), silver, NAN));
  g_assert_false (
      wm_trade_solder_is_too_low (wm_trade_find_solder (trade, "ag_e"), silver, NAN));
}

static void
test_colour (void)
{
  g_assert_cmpstr (wm_trade_metal_colour (wm_trade_find_metal (trade, "au750r")), ==,
                   "rose");
  g_assert_cmpstr (wm_trade_metal_colour (wm_trade_find_metal (trade, "au585wn")), ==,
                   "white");
  g_assert_null (wm_trade_metal_colour (wm_trade_find_metal (trade, "ag925")));
}

int
main (int argc, char **argv)
{
  int result;

  g_test_init (&argc, &argv, NULL);
  trade = wm_trade_new_with_shop (NULL, NULL, NULL);
  g_assert_nonnull (trade);
  g_test_add_func ("/trade/solder-fit/least", test_least);
  g_test_add_func ("/trade/solder-fit/too-low", test_too_low);
  g_test_add_func ("/trade/solder-fit/colour", test_colour);
  result = g_test_run ();
  wm_trade_unref (trade);
  return result;
}
