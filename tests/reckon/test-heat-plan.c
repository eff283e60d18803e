/* test-heat-plan.c: solders against metal, old joints and stones
 *
 * Expected values: the worked sterling and 18 ct examples (arithmetic of the margins);
 * guide temperatures of the trade reference.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/heat-plan.h"

#include <string.h>

#include "near.h"

static const WmHeatMetal sterling = { 802, 600, 615, 1 };
static const WmHeatMetal gold18 = { 885, 600, 690, 0 };

/* Hard, medium and easy as in the worked example; solidus of hard 730. */
static const WmHeatSolder silver[] = { { 730, 745 }, { 705, 720 }, { 690, 705 } };

static const WmHeatStone diamond = { WM_HEAT_STONE_STAYS, 700, 900, 1, 0 };
static const WmHeatStone sapphire = { WM_HEAT_STONE_STAYS, 1600, NAN, 1, 0 };
static const WmHeatStone spinel = { WM_HEAT_STONE_GUARD, 900, NAN, 1, 0 };
static const WmHeatStone topaz = { WM_HEAT_STONE_OUT, 250, NAN, 1, 0 };
static const WmHeatStone opal = { WM_HEAT_STONE_NEVER, 60, NAN, 1, 0 };
static const WmHeatStone enamel = { WM_HEAT_STONE_NEVER, 500, NAN, 0, 0 };
static const WmHeatStone unknown = { WM_HEAT_STONE_UNKNOWN, NAN, NAN, 1, 0 };

static WmHeatStep
judge (const WmHeatMetal *metal, const WmHeatSolder *solder, const WmOldJoint *joints,
       int n_joints, const WmHeatStone *stones, int n_stones, WmStoneAdvice *advice)
{
  WmHeatPiece piece = { metal, 30, joints, n_joints, stones, n_stones };
  WmHeatStep step;

  g_assert_cmpint (wm_heat_judge (&piece, solder, &step, advice, NULL), ==, WM_OK);
  return step;
}

static void
test_sterling (void)
{
  const WmOldJoint hard = { WM_OLD_JOINT_KNOWN, 730 };
  WmHeatStep step = judge (&sterling, &silver[0], NULL, 0, NULL, 0, NULL);

  wm_assert_near (step.working_c, 775, 1e-9);
  wm_assert_near (step.margin_metal_k, 27, 1e-9);
  g_assert_cmpint (step.verdict, ==, WM_HEAT_WARN);
  g_assert_cmpuint (step.reasons, ==, WM_HEAT_METAL_CLOSE);
  g_assert_true (isnan (step.margin_joints_k));
  g_assert_cmpint (step.temper, ==, WM_HEAT_TEMPER_SOFT_WHOLE);

  step = judge (&sterling, &silver[1], &hard, 1, NULL, 0, NULL);
  wm_assert_near (step.working_c, 750, 1e-9);
  wm_assert_near (step.margin_joints_k, -20, 1e-9);
  g_assert_cmpint (step.verdict, ==, WM_HEAT_REFUSE);
  g_assert_cmpuint (step.reasons, ==, WM_HEAT_JOINT_REMELTS);
}

static void
test_gold (void)
{
  const WmHeatSolder solder = { 780, 800 };
  const WmOldJoint soft = { WM_OLD_JOINT_SOFT, 0 };
  WmHeatStep step = judge (&gold18, &solder, NULL, 0, NULL, 0, NULL);

  wm_assert_near (step.margin_metal_k, 55, 1e-9);
  g_assert_cmpint (step.verdict, ==, WM_HEAT_PASS);
  g_assert_cmpint (step.temper, ==, WM_HEAT_TEMPER_SOFT_NEAR);

  step = judge (&gold18, &solder, &soft, 1, NULL, 0, NULL);
  wm_assert_near (step.margin_joints_k, 183 - 830, 1e-9);
  g_assert_cmpint (step.verdict, ==, WM_HEAT_REFUSE);
  g_assert_cmpuint (step.reasons & WM_HEAT_SOFT_SOLDER, !=, 0);
}

/* An unknown joint counts as the lowest solder of its kind, never better. */
static void
test_unknown_joint (void)
{
  const WmOldJoint joints[] = { { WM_OLD_JOINT_KNOWN, 850 },
                                { WM_OLD_JOINT_UNKNOWN, 0 } };
  const WmHeatSolder easy = { 640, 655 };
  WmHeatStep step = judge (&gold18, &easy, joints, 2, NULL, 0, NULL);

  wm_assert_near (step.margin_joints_k, 690 - 685, 1e-9);
  g_assert_cmpint (step.verdict, ==, WM_HEAT_WARN);
  g_assert_cmpuint (step.reasons, ==, WM_HEAT_JOINT_CLOSE | WM_HEAT_JOINT_GUESSED);
}

static void
test_stones (void)
{
  const WmHeatStone stones[] = {
    diamond, sapphire, spinel, topaz, opal, enamel, unknown
  };
  const WmHeatSolder low = { 620, 650 };
  const WmHeatSolder platinum = { 1450, 1500 };
  const WmHeatMetal pt = { 1780, 1000, 950, 0 };
  WmStoneAdvice advice[7];
  WmHeatStep step = judge (&gold18, &low, NULL, 0, stones, 7, advice);

  g_assert_cmpint (advice[0], ==, WM_STONE_ADVICE_STAYS);
  g_assert_cmpint (advice[1], ==, WM_STONE_ADVICE_STAYS);
  g_assert_cmpint (advice[2], ==, WM_STONE_ADVICE_SHIELD);
  g_assert_cmpint (advice[3], ==, WM_STONE_ADVICE_OUT);
  g_assert_cmpint (advice[4], ==, WM_STONE_ADVICE_OUT);
  g_assert_cmpint (advice[5], ==, WM_STONE_ADVICE_NO_HEAT);
  g_assert_cmpint (advice[6], ==, WM_STONE_ADVICE_OUT);
  wm_assert_near (step.margin_stones_k, 700 - 680, 1e-9);
  g_assert_cmpint (step.verdict, ==, WM_HEAT_REFUSE);
  g_assert_cmpuint (step.reasons, ==,
                    WM_HEAT_STONES_OUT | WM_HEAT_STONES_GUARDED | WM_HEAT_STONE_FORBIDS);

  /* Above its limit in air the diamond stays only under a coat. */
  step = judge (&gold18, &silver[0], NULL, 0, stones, 2, advice);
  g_assert_cmpint (advice[0], ==, WM_STONE_ADVICE_COAT);
  g_assert_cmpint (advice[1], ==, WM_STONE_ADVICE_STAYS);
  g_assert_cmpint (step.verdict, ==, WM_HEAT_WARN);

  /* At platinum temperatures nothing set may stay for lack of a limit. */
  step = judge (&pt, &platinum, NULL, 0, stones, 3, advice);
  g_assert_cmpint (advice[0], ==, WM_STONE_ADVICE_OUT);
  g_assert_cmpint (advice[2], ==, WM_STONE_ADVICE_OUT);
}

/* A stone already out is no reason for anything. */
static void
test_stone_taken_out (void)
{
  WmHeatStone gone = opal;
  WmStoneAdvice advice;
  WmHeatStep step;

  gone.is_out = 1;
  step = judge (&gold18, &silver[0], NULL, 0, &gone, 1, &advice);
  g_assert_cmpint (advice, ==, WM_STONE_ADVICE_OUT);
  g_assert_cmpuint (step.reasons, ==, 0);
  g_assert_true (isnan (step.margin_stones_k));
}

static void
test_choose (void)
{
  const WmOldJoint joint = { WM_OLD_JOINT_KNOWN, 790 };
  const WmOldJoint soft = { WM_OLD_JOINT_SOFT, 0 };
  WmHeatPiece piece = { &sterling, 30, &joint, 1, NULL, 0 };
  WmHeatStep steps[3];
  WmHeatChoice choice;

  g_assert_cmpint (wm_heat_choose (&piece, silver, 3, steps, &choice, NULL), ==, WM_OK);
  g_assert_cmpint (choice.best, ==, 2);
  g_assert_cmpint (choice.n_usable, ==, 3);
  g_assert_cmpuint (choice.why_none, ==, 0);

  piece.joints = &soft;
  g_assert_cmpint (wm_heat_choose (&piece, silver, 3, steps, &choice, NULL), ==, WM_OK);
  g_assert_cmpint (choice.best, ==, -1);
  g_assert_cmpint (choice.n_usable, ==, 0);
  g_assert_cmpuint (choice.why_none & WM_HEAT_SOFT_SOLDER, !=, 0);
}

static void
test_order (void)
{
  /* easy, hard, medium, hard again: hottest first, equals in their order. */
  const WmHeatSolder joints[] = {
    { 690, 705 }, { 740, 780 }, { 705, 720 }, { 740, 780 }
  };
  const WmHeatSolder apart[] = { { 640, 655 }, { 790, 830 } };
  double margins[4];
  int order[4];
  int a = 0, b = 0;

  g_assert_cmpint (wm_heat_order (joints, 4, 30, order, margins, &a, &b, NULL), ==,
                   WM_OK);
  g_assert_cmpint (order[0], ==, 1);
  g_assert_cmpint (order[1], ==, 3);
  g_assert_cmpint (order[2], ==, 2);
  g_assert_cmpint (order[3], ==, 0);
  g_assert_true (isnan (margins[0]));
  wm_assert_near (margins[1], 740 - 810, 1e-9);
  wm_assert_near (margins[2], 740 - 750, 1e-9);
  /* Each would melt the other: no order by temperature alone. */
  g_assert_cmpint (a, ==, 1);
  g_assert_cmpint (b, ==, 3);

  g_assert_cmpint (wm_heat_order (apart, 2, 30, order, margins, &a, &b, NULL), ==, WM_OK);
  g_assert_cmpint (order[0], ==, 1);
  wm_assert_near (margins[1], 790 - 685, 1e-9);
  g_assert_cmpint (a, ==, -1);
}

/* Hotter never turns a refusal into a leave, whatever the piece. */
static void
test_hotter_is_never_safer (void)
{
  const WmOldJoint joints[] = { { WM_OLD_JOINT_KNOWN, 760 },
                                { WM_OLD_JOINT_UNKNOWN, 0 } };
  const WmHeatStone stones[] = { diamond, spinel, topaz };
  WmStoneAdvice advice[3], before[3] = { 0 };
  WmHeatVerdict verdict = WM_HEAT_PASS;

  for (double flow = 400; flow < 1800; flow += 10)
    {
      WmHeatSolder solder = { flow - 10, flow };
      WmHeatStep step = judge (&gold18, &solder, joints, 2, stones, 3, advice);

      g_assert_cmpint (step.verdict, >=, verdict);
      verdict = step.verdict;
      for (int i = 0; i < 3; i++)
        {
          g_assert_cmpint (advice[i], >=, before[i]);
          before[i] = advice[i];
        }
    }
}

static void
test_refusals (void)
{
  const WmHeatSolder upside_down = { 800, 700 };
  const WmHeatSolder cold = { NAN, -5 };
  const WmOldJoint joint = { WM_OLD_JOINT_KNOWN, NAN };
  const WmHeatStone stone = { WM_HEAT_STONE_STAYS, NAN, NAN, 1, 0 };
  WmHeatPiece piece = { &sterling, 30, NULL, 0, NULL, 0 };
  const char *which = NULL;
  WmHeatStep step;
  WmHeatChoice choice;

  g_assert_cmpint (wm_heat_judge (&piece, &upside_down, &step, NULL, &which), ==,
                   WM_CONTRADICTION);
  g_assert_cmpstr (which, ==, "solders");
  g_assert_cmpint (wm_heat_judge (&piece, &cold, &step, NULL, &which), ==,
                   WM_NOT_POSITIVE);
  g_assert_cmpint (wm_heat_choose (&piece, silver, 0, &step, &choice, &which), ==,
                   WM_TOO_FEW);
  piece.superheat_k = 500;
  g_assert_cmpint (wm_heat_judge (&piece, &silver[0], &step, NULL, &which), ==,
                   WM_OUT_OF_RANGE);
  g_assert_cmpstr (which, ==, "superheat");
  piece.superheat_k = 30;
  piece.joints = &joint;
  piece.n_joints = 1;
  g_assert_cmpint (wm_heat_judge (&piece, &silver[0], &step, NULL, &which), ==,
                   WM_NOT_A_NUMBER);
  g_assert_cmpstr (which, ==, "joints");
  piece.n_joints = 0;
  piece.stones = &stone;
  piece.n_stones = 1;
  g_assert_cmpint (wm_heat_judge (&piece, &silver[0], &step, NULL, &which), ==,
                   WM_NOT_A_NUMBER);
  g_assert_cmpstr (which, ==, "stones");
}

static void
test_words (void)
{
  for (int i = 0; i < WM_N_HEAT_REASONS; i++)
    g_assert_cmpuint (strlen (wm_heat_reason_text (i)), >, 10);

  g_assert_cmpstr (wm_heat_reason_text (WM_N_HEAT_REASONS), ==, "");
  for (int a = WM_STONE_ADVICE_STAYS; a < WM_STONE_ADVICE_NO_HEAT; a++)
    g_assert_cmpstr (wm_stone_advice_text (a), !=, wm_stone_advice_text (a + 1));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reckon/heat-plan/sterling", test_sterling);
  g_test_add_func ("/reckon/heat-plan/gold", test_gold);
  g_test_add_func ("/reckon/heat-plan/unknown-joint", test_unknown_joint);
  g_test_add_func ("/reckon/heat-plan/stones", test_stones);
  g_test_add_func ("/reckon/heat-plan/stone-taken-out", test_stone_taken_out);
  g_test_add_func ("/reckon/heat-plan/choose", test_choose);
  g_test_add_func ("/reckon/heat-plan/order", test_order);
  g_test_add_func ("/reckon/heat-plan/hotter-is-never-safer", test_hotter_is_never_safer);
  g_test_add_func ("/reckon/heat-plan/refusals", test_refusals);
  g_test_add_func ("/reckon/heat-plan/words", test_words);
  return g_test_run ();
}
