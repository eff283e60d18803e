/* test-stock.c: stock metal
 *
 * Expected values: worked numbers of the trade (computed outside), geometry; densities of
 * the elements as printed in handbooks.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/stock.h"

#include "near.h"

static void
test_weights (void)
{
  const struct
  {
    WmStockShape shape;
    double a, b, length, density, grams, allowed;
  } rows[] = {
    { WM_STOCK_ROUND, 1.2, 0, 100, 15.4, 1.742, 0.0006 },
    { WM_STOCK_SHEET, 20, 0.8, 30, 10.36, 4.973, 0.0006 },
    { WM_STOCK_SQUARE, 1.0, 0, 100, 20.7, 2.070, 1e-9 },
    { WM_STOCK_TUBE, 3.0, 2.2, 20, 15.4, 1.006, 0.0006 },
    { WM_STOCK_SPHERE, 5, 0, 0, 19.3, 1.263, 0.0006 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      WmValue grams;

      g_assert_cmpint (wm_stock_weight (rows[i].shape, wm_exact (rows[i].a),
                                        wm_exact (rows[i].b), wm_exact (rows[i].length),
                                        wm_exact (rows[i].density), &grams, NULL),
                       ==, WM_OK);
      wm_assert_near (grams.value, rows[i].grams, rows[i].allowed);
    }
}

static void
test_strip (void)
{
  const struct
  {
    double wire, thickness;
    WmStripEdge edge;
    double width;
  } rows[] = { { 1.0, 0.5, WM_EDGE_SQUARE, 1.571 },
               { 1.0, 0.5, WM_EDGE_ROUND, 1.678 },
               { 0.8, 0.4, WM_EDGE_ROUND, 1.342 } };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      WmValue width, back;

      g_assert_cmpint (wm_strip_from_wire (wm_value (rows[i].wire, 0.01),
                                           wm_exact (rows[i].thickness), rows[i].edge,
                                           &width, NULL),
                       ==, WM_OK);
      wm_assert_near (width.value, rows[i].width, 0.0006);
      g_assert_cmpint (wm_wire_for_strip (wm_exact (width.value),
                                          wm_exact (rows[i].thickness), rows[i].edge,
                                          &back, NULL),
                       ==, WM_OK);
      wm_assert_relative (back.value, rows[i].wire, 1e-12);
    }
}

static void
test_drawn (void)
{
  WmDrawn d;

  g_assert_cmpint (wm_drawn_wire (wm_exact (1.5), wm_exact (1.0), &d, NULL), ==, WM_OK);
  wm_assert_relative (d.length_factor.value, 2.25, 1e-12);
  wm_assert_near (d.reduction_percent.value, 55.6, 0.06);
}

/* h/d 0.25 leaves 0.8045 of the area (table of worn round wire). */
static void
test_refill (void)
{
  WmValue grams;
  const char *which = NULL;

  g_assert_cmpint (wm_refill_weight (wm_exact (2), wm_exact (1.5), wm_exact (10),
                                     wm_exact (15.4), &grams, NULL),
                   ==, WM_OK);
  wm_assert_relative (grams.value, (1 - 0.8045) * G_PI * 10 * 15.4 / 1000, 3e-4);
  g_assert_cmpint (wm_refill_weight (wm_exact (2), wm_exact (2), wm_exact (10),
                                     wm_exact (15.4), &grams, NULL),
                   ==, WM_OK);
  wm_assert_near (grams.value, 0, 1e-12);
  g_assert_cmpint (wm_refill_weight (wm_exact (2), wm_exact (2.1), wm_exact (10),
                                     wm_exact (15.4), &grams, &which),
                   ==, WM_LARGER_THAN_NEW);
  g_assert_cmpstr (which, ==, "kept");
}

static void
test_alloys (void)
{
  const WmAlloyPart pt[] = { { 950, 21.45 }, { 50, 12.45 } };
  const WmAlloyPart ag[] = { { 925, 10.49 }, { 75, 8.96 } };
  const WmAlloyPart au[] = { { 750, 19.3 }, { 125, 10.49 }, { 125, 8.96 } };
  const WmAlloyPart half[] = { { 500, 19.3 } };
  const char *which = NULL;
  double density = 0;

  g_assert_cmpint (wm_alloy_density (pt, 2, &density, NULL), ==, WM_OK);
  wm_assert_near (density, 20.70, 0.006);
  g_assert_cmpint (wm_alloy_density (ag, 2, &density, NULL), ==, WM_OK);
  wm_assert_near (density, 10.36, 0.006);
  g_assert_cmpint (wm_alloy_density (au, 3, &density, NULL), ==, WM_OK);
  wm_assert_near (density, 15.45, 0.006);
  g_assert_cmpint (wm_alloy_density (half, 1, &density, &which), ==, WM_CONTRADICTION);
  g_assert_cmpstr (which, ==, "parts");
}

static void
test_refusals (void)
{
  const char *which = NULL;
  WmValue v;
  WmDrawn d;

  g_assert_cmpint (wm_stock_weight (WM_STOCK_TUBE, wm_exact (2), wm_exact (2),
                                    wm_exact (9), wm_exact (15), &v, &which),
                   ==, WM_CONTRADICTION);
  g_assert_cmpstr (which, ==, "second");
  g_assert_cmpint (wm_stock_weight (WM_STOCK_ROUND, wm_exact (2), wm_exact (0),
                                    wm_exact (9), wm_exact (50), &v, &which),
                   ==, WM_OUT_OF_RANGE);
  g_assert_cmpstr (which, ==, "density");
  g_assert_cmpint (wm_stock_weight ((WmStockShape)9, wm_exact (2), wm_exact (0),
                                    wm_exact (9), wm_exact (5), &v, &which),
                   ==, WM_UNKNOWN_INPUT);
  g_assert_cmpint (
      wm_strip_from_wire (wm_exact (1), wm_exact (1.1), WM_EDGE_SQUARE, &v, &which), ==,
      WM_CONTRADICTION);
  g_assert_cmpstr (which, ==, "thickness");
  g_assert_cmpint (
      wm_wire_for_strip (wm_exact (0.9), wm_exact (1), WM_EDGE_ROUND, &v, &which), ==,
      WM_CONTRADICTION);
  g_assert_cmpstr (which, ==, "width");
  g_assert_cmpint (wm_drawn_wire (wm_exact (1), wm_exact (2), &d, &which), ==,
                   WM_CONTRADICTION);
  g_assert_cmpint (wm_drawn_wire (wm_exact (NAN), wm_exact (2), &d, &which), ==,
                   WM_NOT_A_NUMBER);
  g_assert_cmpstr (which, ==, "from");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reckon/stock/weights", test_weights);
  g_test_add_func ("/reckon/stock/strip", test_strip);
  g_test_add_func ("/reckon/stock/drawn", test_drawn);
  g_test_add_func ("/reckon/stock/refill", test_refill);
  g_test_add_func ("/reckon/stock/alloys", test_alloys);
  g_test_add_func ("/reckon/stock/refusals", test_refusals);
  return g_test_run ();
}
