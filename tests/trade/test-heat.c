/* test-heat.c: the shipped tables through the heat plan
 *
 * Expected values: the rows of the trade reference (sterling 788, extra easy old silver
 * solder 615, 18 ct easy 695/720, diamond from 700), and the rules s_margin_parent,
 * st_unknown and f_corundum of its sections 2 and 3.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/heat.h"

#include <math.h>

static WmTrade *trade;

static WmHeatMetal
metal_of (const char *key)
{
  WmHeatMetal metal = { 0 };

  g_assert_true (wm_trade_heat_metal (trade, wm_trade_find_metal (trade, key), &metal));
  return metal;
}

static WmHeatStone
stone_of (const char *key)
{
  WmHeatStone stone = { 0 };

  wm_trade_heat_stone (trade, wm_trade_find_stone (trade, key), TRUE, FALSE, &stone);
  return stone;
}

static void
test_metals (void)
{
  WmHeatMetal sterling = metal_of ("ag925");

  g_assert_cmpfloat (sterling.solidus_c, ==, 788);
  g_assert_cmpfloat (sterling.lowest_solder_c, ==, 615);
  g_assert_true (sterling.whole_piece_hot);
  g_assert_false (metal_of ("au750y").whole_piece_hot);
  g_assert_cmpfloat (metal_of ("pt950ru").solidus_c, ==, 1780);
  g_assert_cmpfloat (metal_of ("pt950ru").lowest_solder_c, ==, 950);
}

static void
test_barred_solder_is_never_offered (void)
{
  g_autoptr (GPtrArray) silver = wm_trade_list_solders_for (trade, "silver");

  g_assert_cmpuint (silver->len, >, 3);
  for (guint i = 0; i < silver->len; i++)
    g_assert_cmpstr (((const WmSolder *)silver->pdata[i])->key, !=, "ag_xe2");
}

static void
test_stones (void)
{
  WmHeatStone diamond = stone_of ("diamond");
  WmHeatStone unknown;

  g_assert_cmpfloat (diamond.limit_c, ==, 700);
  g_assert_cmpfloat (diamond.coated_limit_c, >=, 900);
  g_assert_true (isnan (stone_of ("ruby").coated_limit_c));
  g_assert_cmpint (stone_of ("opal").heat, ==, WM_HEAT_STONE_NEVER);
  g_assert_cmpint (stone_of ("spinel").heat, ==, WM_HEAT_STONE_GUARD);
  wm_trade_heat_stone (trade, NULL, TRUE, FALSE, &unknown);
  g_assert_cmpint (unknown.heat, ==, WM_HEAT_STONE_UNKNOWN);
}

/* Every metal with every solder and every stone of the tables can be judged, and what the
 * plan says about a stone is never milder than its heat word. */
static void
test_all_rows_can_be_planned (void)
{
  const WmMetal *const *metals = wm_trade_list_metals (trade, NULL);
  const WmStone *const *stones = wm_trade_list_stones (trade, NULL);
  guint n_plans = 0;

  for (guint m = 0; metals[m] != NULL; m++)
    {
      g_autoptr (GPtrArray) solders =
          wm_trade_list_solders_for (trade, metals[m]->family);
      WmHeatMetal metal;

      if (metals[m]->is_pure || !wm_trade_heat_metal (trade, metals[m], &metal))
        continue;

      for (guint s = 0; s < solders->len; s++)
        for (guint k = 0; stones[k] != NULL; k++)
          {
            WmHeatStone stone = stone_of (stones[k]->key);
            WmHeatPiece piece = { &metal, WM_HEAT_SUPERHEAT_K, NULL, 0, &stone, 1 };
            WmHeatSolder solder;
            WmStoneAdvice advice;
            WmHeatStep step;

            wm_trade_heat_solder (solders->pdata[s], &solder);
            g_assert_cmpint (wm_heat_judge (&piece, &solder, &step, &advice, NULL), ==,
                             WM_OK);
            if (stones[k]->heat >= WM_STONE_OUT)
              g_assert_cmpint (advice, >=, WM_STONE_ADVICE_OUT);
            else if (stones[k]->heat == WM_STONE_GUARD)
              g_assert_cmpint (advice, >=, WM_STONE_ADVICE_SHIELD);
            n_plans++;
          }
    }

  g_assert_cmpuint (n_plans, >, 1000);
}

/* Ordinary gold soldering on a piece without old joints: diamond under a coat, sapphire
 * stays; at platinum temperatures both come out. */
static void
test_usual_plans (void)
{
  const WmHeatStone stones[] = { stone_of ("diamond"), stone_of ("sapphire") };
  WmHeatMetal gold = metal_of ("au750y");
  WmHeatMetal platinum = metal_of ("pt950ru");
  WmHeatPiece piece = { &gold, WM_HEAT_SUPERHEAT_K, NULL, 0, stones, 2 };
  WmHeatSolder solder;
  WmStoneAdvice advice[2];
  WmHeatStep step;

  wm_trade_heat_solder (wm_trade_find_solder (trade, "au18_e"), &solder);
  g_assert_cmpint (wm_heat_judge (&piece, &solder, &step, advice, NULL), ==, WM_OK);
  g_assert_cmpfloat (step.working_c, ==, 750);
  g_assert_cmpint (step.verdict, ==, WM_HEAT_WARN);
  g_assert_cmpint (advice[0], ==, WM_STONE_ADVICE_COAT);
  g_assert_cmpint (advice[1], ==, WM_STONE_ADVICE_STAYS);

  piece.metal = &platinum;
  wm_trade_heat_solder (wm_trade_find_solder (trade, "pt1500"), &solder);
  g_assert_cmpint (wm_heat_judge (&piece, &solder, &step, advice, NULL), ==, WM_OK);
  g_assert_cmpint (advice[0], ==, WM_STONE_ADVICE_OUT);
  g_assert_cmpint (advice[1], ==, WM_STONE_ADVICE_OUT);
}

int
main (int argc, char **argv)
{
  g_autoptr (GError) error = NULL;
  int status;

  g_test_init (&argc, &argv, NULL);
  trade = wm_trade_new_with_shop (NULL, NULL, &error);
  g_assert_no_error (error);
  g_test_add_func ("/trade/heat/metals", test_metals);
  g_test_add_func ("/trade/heat/barred", test_barred_solder_is_never_offered);
  g_test_add_func ("/trade/heat/stones", test_stones);
  g_test_add_func ("/trade/heat/all-rows", test_all_rows_can_be_planned);
  g_test_add_func ("/trade/heat/usual-plans", test_usual_plans);
  status = g_test_run ();
  wm_trade_unref (trade);
  return status;
}
