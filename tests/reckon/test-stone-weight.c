/* test-stone-weight.c: carat from millimetres
 *
 * Expected values: worked numbers of the published estimating tables named in the trade
 * reference (3.66 ct for 10.0 x 6.0, 0.819 ct for 6.08 x 3.63); the sphere is geometry.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/stone-weight.h"

#include <string.h>

#include "near.h"

static double
carat_of (WmStoneCut cut, double length, double width, double depth, double gravity)
{
  WmStoneMeasures stone = {
    cut, wm_exact (length), wm_exact (width), wm_exact (depth), wm_exact (gravity), 0.0
  };
  WmStoneWeight weight;

  g_assert_cmpint (wm_stone_weight (&stone, &weight, NULL), ==, WM_OK);
  return weight.carat.value;
}

static void
test_worked (void)
{
  const struct
  {
    WmStoneCut cut;
    double length, width, depth, gravity, carat, allowed;
  } rows[] = {
    { WM_STONE_CUT_ROUND, 10, 10, 6, 0, 3.66, .0006 },
    { WM_STONE_CUT_ROUND, 6.5, 6.5, 3.9, 0, 1.005, .0006 },
    { WM_STONE_CUT_ROUND, 6.08, 6.08, 3.63, 0, 0.819, .0006 },
    { WM_STONE_CUT_ROUND_OLD, 10, 10, 6, 0, 4.02, .0006 },
    { WM_STONE_CUT_OVAL, 8, 6, 3.7, 0, 1.124, .0006 },
    { WM_STONE_CUT_EMERALD, 7.5, 5, 3.4, 0, 1.173, .0006 },
    { WM_STONE_CUT_EMERALD, 7, 5, 3.4, 0, 1.066, .0006 },
    { WM_STONE_CUT_MARQUISE, 10, 5, 3, 0, 0.870, .0006 },
    { WM_STONE_CUT_PEAR, 9, 6, 3.6, 0, 1.166, .0006 },
    { WM_STONE_CUT_PRINCESS, 5.5, 5.5, 4, 0, 1.004, .0006 },
    { WM_STONE_CUT_HEART, 6, 6, 3.6, 0, 0.765, .0006 },
    { WM_STONE_CUT_TRIANGLE, 6, 6, 2.6, 0, 0.534, .0006 },
    { WM_STONE_CUT_BAGUETTE, 4, 2, 1.2, 0, 0.088, .0006 },
    { WM_STONE_CUT_TAPERED, 4, 1.75, 1.2, 0, 0.077, .0006 },
    { WM_STONE_CUT_ROUND, 6, 6, 4, 3.06, 0.793, .0006 },
    { WM_STONE_CUT_OVAL, 8, 6, 4, 4.00, 1.568, .0006 },
    { WM_STONE_CUT_EMERALD, 10, 8, 5.5, 2.66, 2.926, .0006 },
    { WM_STONE_CUT_CABOCHON, 10, 8, 4, 2.15, 1.789, .0006 },
    { WM_STONE_CUT_SPHERE, 8, 0, 0, 2.70, 3.619, .0006 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    wm_assert_near (carat_of (rows[i].cut, rows[i].length, rows[i].width, rows[i].depth,
                              rows[i].gravity),
                    rows[i].carat, rows[i].allowed);
}

static void
test_emerald_factors (void)
{
  const double rows[][2] = {
    { 1.0, .0080 }, { 1.5, .0092 }, { 2.0, .0100 }, { 2.5, .0106 }
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    wm_assert_relative (carat_of (WM_STONE_CUT_EMERALD, 4 * rows[i][0], 4, 2.5, 0),
                        4 * rows[i][0] * 4 * 2.5 * rows[i][1], 1e-12);
}

/* The sphere: 4/3 pi r^3 at its gravity, five carats a gram. */
static void
test_sphere_is_geometry (void)
{
  for (double d = 2; d < 15; d += 1)
    wm_assert_relative (carat_of (WM_STONE_CUT_SPHERE, d, 0, 0, 2.7),
                        G_PI * d * d * d / 6 * 2.7 / 1000 * WM_CARAT_PER_GRAM, 1e-12);
}

static void
test_uncertainty (void)
{
  WmStoneMeasures stone = { WM_STONE_CUT_ROUND, { 6.5, 0.02 }, { 6.5, 0.02 },
                            { 3.9, 0.05 },      { 0, 0 },      3.0 };
  WmStoneWeight weight;
  double expected;

  g_assert_cmpint (wm_stone_weight (&stone, &weight, NULL), ==, WM_OK);
  wm_assert_relative (weight.carat.value, 6.5 * 6.5 * 3.9 * 0.0061 * 1.03, 1e-12);
  /* Mean of two diameters: each counts once, 2 d/mean over two. */
  expected = sqrt (2 * pow (0.02 / 6.5, 2) + pow (0.05 / 3.9, 2) + pow (0.05, 2));
  wm_assert_relative (weight.carat.u / weight.carat.value, expected, 1e-6);
}

static void
test_refusals (void)
{
  const struct
  {
    WmStoneMeasures stone;
    WmResult result;
    const char *which;
  } rows[] = {
    { { WM_STONE_CUT_CABOCHON, { 8, 0 }, { 6, 0 }, { 3, 0 }, { 0, 0 }, 0 },
      WM_UNKNOWN_INPUT,
      "cut" },
    { { WM_STONE_CUT_PRINCESS, { 5, 0 }, { 5, 0 }, { 3, 0 }, { 4, 0 }, 0 },
      WM_UNKNOWN_INPUT,
      "cut" },
    { { (WmStoneCut)99, { 5, 0 }, { 5, 0 }, { 3, 0 }, { 4, 0 }, 0 },
      WM_UNKNOWN_INPUT,
      "cut" },
    { { WM_STONE_CUT_OVAL, { 5, 0 }, { 7, 0 }, { 3, 0 }, { 0, 0 }, 0 },
      WM_CONTRADICTION,
      "width" },
    { { WM_STONE_CUT_MARQUISE, { 9, 0 }, { 2, 0 }, { 1, 0 }, { 0, 0 }, 0 },
      WM_OUT_OF_RANGE,
      "length" },
    { { WM_STONE_CUT_ROUND, { 0, 0 }, { 5, 0 }, { 3, 0 }, { 0, 0 }, 0 },
      WM_NOT_POSITIVE,
      "length" },
    { { WM_STONE_CUT_ROUND, { 5, 0 }, { 5, 0 }, { -3, 0 }, { 0, 0 }, 0 },
      WM_NOT_POSITIVE,
      "depth" },
    { { WM_STONE_CUT_ROUND, { 5, 0 }, { NAN, 0 }, { 3, 0 }, { 0, 0 }, 0 },
      WM_NOT_A_NUMBER,
      "width" },
    { { WM_STONE_CUT_ROUND, { 5, 0 }, { 5, 0 }, { 3, 0 }, { 0.5, 0 }, 0 },
      WM_OUT_OF_RANGE,
      "specific_gravity" },
    { { WM_STONE_CUT_ROUND, { 5, 0 }, { 5, 0 }, { 3, 0 }, { 0, 0 }, 50 },
      WM_OUT_OF_RANGE,
      "correction" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const char *which = NULL;
      WmStoneWeight weight;

      g_assert_cmpint (wm_stone_weight (&rows[i].stone, &weight, &which), ==,
                       rows[i].result);
      g_assert_cmpstr (which, ==, rows[i].which);
    }
}

static void
test_names (void)
{
  for (int c = 0; c < WM_N_STONE_CUTS; c++)
    {
      g_assert_cmpuint (strlen (wm_stone_cut_key (c)), >, 2);
      g_assert_cmpuint (strlen (wm_stone_cut_text (c)), >, 2);
      for (int other = 0; other < c; other++)
        g_assert_cmpstr (wm_stone_cut_key (c), !=, wm_stone_cut_key (other));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reckon/stone-weight/worked", test_worked);
  g_test_add_func ("/reckon/stone-weight/emerald-factors", test_emerald_factors);
  g_test_add_func ("/reckon/stone-weight/sphere", test_sphere_is_geometry);
  g_test_add_func ("/reckon/stone-weight/uncertainty", test_uncertainty);
  g_test_add_func ("/reckon/stone-weight/refusals", test_refusals);
  g_test_add_func ("/reckon/stone-weight/names", test_names);
  return g_test_run ();
}
