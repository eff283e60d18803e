/* test-fineness.c: finenesses of ISO 9202 and what an alloy may be marked
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/fineness.h"

#include <math.h>

static WmTrade *
load (void)
{
  g_autoptr (GError) error = NULL;
  WmTrade *trade = wm_trade_new_with_shop (NULL, NULL, &error);

  g_assert_no_error (error);
  return trade;
}

/* ISO 9202:2014 and later, table of finenesses; cited from memory (the standard's
 * text was not at hand), as the table itself says. */
static void
test_standard_lists (void)
{
  static const struct
  {
    const char *metal;
    guint values[10];
  } lists[] = {
    { "gold", { 333, 375, 417, 585, 750, 800, 916, 990, 999 } },
    { "silver", { 800, 830, 925, 958, 999 } },
    { "platinum", { 600, 750, 800, 850, 900, 950, 999 } },
    { "palladium", { 500, 950, 999 } },
  };
  g_autoptr (WmTrade) trade = load ();

  for (gsize i = 0; i < G_N_ELEMENTS (lists); i++)
    {
      guint n_standard = 0;
      guint n_listed = 0;

      for (guint ppt = 0; ppt <= 1000; ppt++)
        if (wm_fineness_is_standard (trade, lists[i].metal, ppt))
          n_standard++;
      for (; lists[i].values[n_listed] != 0; n_listed++)
        g_assert_true (
            wm_fineness_is_standard (trade, lists[i].metal, lists[i].values[n_listed]));
      g_assert_cmpuint (n_standard, ==, n_listed);
    }
  g_assert_false (wm_fineness_is_standard (trade, "tin", 999));
}

/* The legal standards of the United Kingdom (Hallmarking Convention, country
 * profile) are all among those of ISO 9202. */
static void
test_united_kingdom (void)
{
  static const guint gold[] = { 375, 585, 750, 916, 990, 999 };
  static const guint silver[] = { 800, 925, 958, 999 };
  static const guint platinum[] = { 850, 900, 950, 999 };
  g_autoptr (WmTrade) trade = load ();

  for (gsize i = 0; i < G_N_ELEMENTS (gold); i++)
    g_assert_true (wm_fineness_is_standard (trade, "gold", gold[i]));
  for (gsize i = 0; i < G_N_ELEMENTS (silver); i++)
    g_assert_true (wm_fineness_is_standard (trade, "silver", silver[i]));
  for (gsize i = 0; i < G_N_ELEMENTS (platinum); i++)
    g_assert_true (wm_fineness_is_standard (trade, "platinum", platinum[i]));
}

/* No minus tolerance: Finnish Safety and Chemicals Agency, fineness requirements. */
static void
test_mark_has_no_minus_tolerance (void)
{
  g_autoptr (WmTrade) trade = load ();
  guint mark = 0;

  g_assert_true (wm_fineness_mark_for (trade, "gold", 585.0, &mark));
  g_assert_cmpuint (mark, ==, 585);
  g_assert_true (wm_fineness_mark_for (trade, "gold", 584.9, &mark));
  g_assert_cmpuint (mark, ==, 417);
  g_assert_true (wm_fineness_mark_for (trade, "gold", 1000.0, &mark));
  g_assert_cmpuint (mark, ==, 999);
  g_assert_true (wm_fineness_mark_for (trade, "silver", 924.0, &mark));
  g_assert_cmpuint (mark, ==, 830);

  mark = 7;
  g_assert_false (wm_fineness_mark_for (trade, "gold", 332.9, &mark));
  g_assert_false (wm_fineness_mark_for (trade, "gold", 1000.1, &mark));
  g_assert_false (wm_fineness_mark_for (trade, "gold", -1.0, &mark));
  g_assert_false (wm_fineness_mark_for (trade, "gold", NAN, &mark));
  g_assert_false (wm_fineness_mark_for (trade, "tin", 999.0, &mark));
  g_assert_cmpuint (mark, ==, 7);
}

/* Exact: 24 karat is the whole. */
static void
test_karat (void)
{
  g_assert_cmpfloat_with_epsilon (wm_fineness_from_karat (18), 750.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (wm_fineness_from_karat (14), 583.333333333, 1e-8);
  g_assert_cmpfloat_with_epsilon (wm_fineness_from_karat (24), 1000.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (wm_fineness_from_karat (0), 0.0, 1e-12);
  g_assert_true (isnan (wm_fineness_from_karat (24.1)));
  g_assert_true (isnan (wm_fineness_from_karat (-1)));
  g_assert_true (isnan (wm_fineness_from_karat (NAN)));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/fineness/standard", test_standard_lists);
  g_test_add_func ("/trade/fineness/united-kingdom", test_united_kingdom);
  g_test_add_func ("/trade/fineness/mark", test_mark_has_no_minus_tolerance);
  g_test_add_func ("/trade/fineness/karat", test_karat);
  return g_test_run ();
}
