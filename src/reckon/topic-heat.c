/* topic-heat.c: the heat plan, as topics
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/topics.h"

#include "reckon/heat-fall.h"
#include "reckon/heat-plan.h"
#include "reckon/words.h"

/* In the order of WmOldJointKind and WmHeatStoneRule. */
static const char *const joint_kinds[] = { "known", "unknown", "soft", NULL };
static const char *const stone_rules[] = { "stay",  "guard",   "out",
                                           "never", "unknown", NULL };
static const char *const no_yes[] = { "no", "yes", NULL };

static const WmTopicInput plan_inputs[] = {
  { "metal_solidus", WM_INPUT_NUMBER, "C", N_ ("solidus of the metal"), WM_REQUIRED, 0,
    4000 },
  { "anneal", WM_INPUT_NUMBER, "C", N_ ("softens from, 0 = not known"), 0, 0, 4000 },
  { "lowest_solder", WM_INPUT_NUMBER, "C",
    N_ ("lowest solidus of the solders customary for it"), WM_REQUIRED, 0, 4000 },
  { "whole_piece_hot", WM_INPUT_CHOICE, "",
    N_ ("the whole piece gets hot, as silver does"), 0, 0, 0, no_yes },
  { "superheat", WM_INPUT_NUMBER, "K", N_ ("over the flow point"), WM_HEAT_SUPERHEAT_K, 0,
    100 },
  { "solders", WM_INPUT_ROWS, "C:C", N_ ("solidus (- = not known) and flow point"),
    WM_REQUIRED, 0, 0 },
  { "joints", WM_INPUT_ROWS, ":C", N_ ("old joints: known:SOLIDUS, unknown, or soft"), 0,
    0, 0, joint_kinds },
  { "stones", WM_INPUT_ROWS, ":C:C::",
    N_ ("stones: stay, guard, out, never or unknown; limit; limit under a coat; can come "
        "out 1/0; is out 1/0"),
    0, 0, 0, stone_rules },
};

enum
{
  BEST,
  SAYS,
  SOLDER,
  WORKING,
  VERDICT,
  MARGIN_METAL,
  MARGIN_JOINTS,
  MARGIN_STONES,
  REASON,
  TEMPER,
  STONE_NAME,
  STONE
};

static const WmTopicOutput plan_outputs[] = {
  [BEST] = { "best", "", N_ ("solder with the widest margin, counted from 1; 0 = none"),
             0 },
  [SAYS] = { "says", "word", N_ ("in words"), 0 },
  [SOLDER] = { "solder", "word", N_ ("solder"), 1 },
  [WORKING] = { "working", "C", N_ ("working temperature"), 1 },
  [VERDICT] = { "verdict", "word", N_ ("verdict"), 1 },
  [MARGIN_METAL] = { "margin_metal", "K", N_ ("margin to the metal"), 1 },
  [MARGIN_JOINTS] = { "margin_joints", "K", N_ ("margin to the old joints"), 1 },
  [MARGIN_STONES] = { "margin_stones", "K", N_ ("margin to the stones that stay"), 1 },
  [REASON] = { "reason", "word", N_ ("with the best solder, or why none"), 1 },
  [TEMPER] = { "temper", "word", N_ ("temper afterwards"), 0 },
  [STONE_NAME] = { "stone_name", "word", N_ ("stone"), 1 },
  [STONE] = { "stone", "word", N_ ("stones, with the best or else the first solder"), 1 },
};

static void
read_joints (const WmTopicGiven *rows, WmOldJoint *joints)
{
  for (int i = 0; i < rows->n_rows; i++)
    joints[i] =
        (WmOldJoint) { (WmOldJointKind)rows->numbers[2 * i], rows->numbers[2 * i + 1] };
}

static void
read_stones (const WmTopicGiven *rows, WmHeatStone *stones)
{
  for (int i = 0; i < rows->n_rows; i++)
    {
      const double *row = &rows->numbers[5 * i];

      stones[i] = (WmHeatStone) { (WmHeatStoneRule)row[0], row[1], row[2],
                                  isnan (row[3]) || row[3] != 0.0,
                                  !isnan (row[4]) && row[4] != 0.0 };
      /* Out and never hold at any temperature: their limit need not be typed. */
      if (isnan (stones[i].limit_c)
          && (stones[i].heat == WM_HEAT_STONE_OUT
              || stones[i].heat == WM_HEAT_STONE_NEVER))
        stones[i].limit_c = 100.0;
    }
}

static WmResult
check_rows (const WmTopicGiven *in, const char **which)
{
  if (in[5].n_rows > WM_HEAT_MAX)
    return wm_refuse (WM_OUT_OF_RANGE, "solders", which);
  if (in[6].n_rows > WM_HEAT_MAX)
    return wm_refuse (WM_OUT_OF_RANGE, "joints", which);
  if (in[7].n_rows > WM_HEAT_MAX)
    return wm_refuse (WM_OUT_OF_RANGE, "stones", which);

  for (int i = 0; i < in[6].n_rows; i++)
    if (isnan (in[6].numbers[2 * i]))
      return wm_refuse (WM_MISSING, "joints", which);

  for (int i = 0; i < in[7].n_rows; i++)
    if (isnan (in[7].numbers[5 * i]))
      return wm_refuse (WM_MISSING, "stones", which);

  return WM_OK;
}

static void
answer_plan (const WmTopicGiven *in, const WmHeatPiece *piece,
             const WmHeatSolder *solders, const WmHeatStep *steps,
             const WmHeatChoice *choice, WmTopicAnswer *out)
{
  int n_solders = in[5].n_rows;
  int shown = choice->best >= 0 ? choice->best : 0;
  unsigned reasons = choice->best >= 0 ? steps[shown].reasons : choice->why_none;
  WmStoneAdvice advice[WM_HEAT_MAX];
  WmHeatStep step;
  int row = 0;

  wm_answer_number (out, BEST, 0, choice->best + 1);
  wm_answer_word (
      out, SAYS, 0,
      choice->best >= 0
          ? N_ ("There is a solder that all this stands.")
          : N_ ("No solder is safe here: repair cold, take apart, or use laser "
                "or pulse-arc."));

  for (int i = 0; i < n_solders; i++)
    {
      if (in[5].labels != NULL && in[5].labels[i][0] != '\0')
        wm_answer_note (out, SOLDER, i, in[5].labels[i]);
      wm_answer_number (out, WORKING, i, steps[i].working_c);
      wm_answer_word (out, VERDICT, i, wm_heat_verdict_text (steps[i].verdict));
      wm_answer_number (out, MARGIN_METAL, i, steps[i].margin_metal_k);
      if (!isnan (steps[i].margin_joints_k))
        wm_answer_number (out, MARGIN_JOINTS, i, steps[i].margin_joints_k);
      if (!isnan (steps[i].margin_stones_k))
        wm_answer_number (out, MARGIN_STONES, i, steps[i].margin_stones_k);
    }

  for (int i = 0; i < WM_N_HEAT_REASONS; i++)
    if (reasons & (1u << i))
      wm_answer_word (out, REASON, row++, wm_heat_reason_text (i));

  wm_answer_word (out, TEMPER, 0, wm_heat_temper_text (steps[shown].temper));
  if (wm_heat_judge (piece, &solders[shown], &step, advice, NULL) == WM_OK)
    for (int i = 0; i < piece->n_stones; i++)
      {
        if (in[7].labels != NULL && in[7].labels[i][0] != '\0')
          wm_answer_note (out, STONE_NAME, i, in[7].labels[i]);
        wm_answer_word (out, STONE, i, wm_stone_advice_text (advice[i]));
      }
}

static WmResult
run_plan (const WmTopicGiven *in, WmTopicAnswer *out, const char **which)
{
  const WmHeatMetal metal = { in[0].value.value,
                              in[1].value.value > 0.0 ? in[1].value.value : NAN,
                              in[2].value.value, in[3].value.value > 0.0 };
  WmHeatSolder solders[WM_HEAT_MAX];
  WmOldJoint joints[WM_HEAT_MAX];
  WmHeatStone stones[WM_HEAT_MAX];
  WmHeatStep steps[WM_HEAT_MAX];
  const WmHeatPiece piece = { &metal, in[4].value.value, joints, in[6].n_rows,
                              stones, in[7].n_rows };
  WmHeatChoice choice;
  WmResult result = check_rows (in, which);

  if (result != WM_OK)
    return result;

  for (int i = 0; i < in[5].n_rows; i++)
    solders[i] = (WmHeatSolder) { in[5].numbers[2 * i], in[5].numbers[2 * i + 1] };

  read_joints (&in[6], joints);
  read_stones (&in[7], stones);
  result = wm_heat_choose (&piece, solders, in[5].n_rows, steps, &choice, which);
  if (result != WM_OK)
    return result;

  answer_plan (in, &piece, solders, steps, &choice, out);
  return WM_OK;
}

const WmTopic wm_topic_heat_plan = {
  "heat-plan",
  N_ ("Heat plan: solder against metal, old joints and stones"),
  N_ ("Guide temperatures: the supplier's data sheet comes first. The worst case is "
      "taken; "
      "distance clears nothing."),
  N_ ("Margins: a published solder guide (20 C) and common practice; tin-lead 183 C from "
      "memory"),
  plan_inputs,
  WM_TOPIC_ROWS_OF (plan_inputs),
  plan_outputs,
  WM_TOPIC_ROWS_OF (plan_outputs),
  run_plan,
};

static const WmTopicInput order_inputs[] = {
  { "solders", WM_INPUT_ROWS, "C:C",
    N_ ("one a new joint: solidus (- = not known) and flow point"), WM_REQUIRED, 0, 0 },
  { "superheat", WM_INPUT_NUMBER, "K", N_ ("over the flow point"), WM_HEAT_SUPERHEAT_K, 0,
    100 },
};

static const WmTopicOutput order_outputs[] = {
  { "joint", "", N_ ("joint to solder, in order, counted from 1"), 1 },
  { "margin", "K", N_ ("margin of the joints made before it"), 1 },
  { "clash_first", "", N_ ("a joint that melts another either way round"), 0 },
  { "clash_second", "", N_ ("and that other"), 0 },
  { "says", "word", N_ ("in words"), 0 },
};

static WmResult
run_order (const WmTopicGiven *in, WmTopicAnswer *out, const char **which)
{
  WmHeatSolder solders[WM_HEAT_MAX];
  int order[WM_HEAT_MAX];
  double margins[WM_HEAT_MAX];
  int a = -1, b = -1;
  WmResult result;

  if (in[0].n_rows > WM_HEAT_MAX)
    return wm_refuse (WM_OUT_OF_RANGE, "solders", which);

  for (int i = 0; i < in[0].n_rows; i++)
    solders[i] = (WmHeatSolder) { in[0].numbers[2 * i], in[0].numbers[2 * i + 1] };

  result = wm_heat_order (solders, in[0].n_rows, in[1].value.value, order, margins, &a,
                          &b, which);
  if (result != WM_OK)
    return result;

  for (int i = 0; i < in[0].n_rows; i++)
    {
      wm_answer_number (out, 0, i, order[i] + 1);
      if (!isnan (margins[i]))
        wm_answer_number (out, 1, i, margins[i]);
    }

  if (a >= 0)
    {
      wm_answer_number (out, 2, 0, a + 1);
      wm_answer_number (out, 3, 0, b + 1);
    }

  wm_answer_word (out, 4, 0,
                  a >= 0
                      ? N_ ("No order is safe by temperature alone: shield the earlier "
                            "joint, take apart, or use laser or pulse-arc.")
                      : N_ ("Hottest first; each earlier joint holds."));
  return WM_OK;
}

const WmTopic wm_topic_heat_order = {
  "heat-order",
  N_ ("Order of new joints"),
  N_ ("Worst case: each earlier joint gets as hot as the later one."),
  N_ ("Hottest first: common practice"),
  order_inputs,
  WM_TOPIC_ROWS_OF (order_inputs),
  order_outputs,
  WM_TOPIC_ROWS_OF (order_outputs),
  run_order,
};

static const WmTopicInput fall_inputs[] = {
  { "source", WM_INPUT_NUMBER, "C", N_ ("at the flame"), WM_REQUIRED, 0, 4000 },
  { "ambient", WM_INPUT_NUMBER, "C", N_ ("room"), 25, -50, 200 },
  { "wire", WM_INPUT_NUMBER, "mm", N_ ("wire"), 0, 0, 50 },
  { "strip", WM_INPUT_NUMBER, "mm", N_ ("or thickness of a strip"), 0, 0, 50 },
  { "length", WM_INPUT_NUMBER, "mm", N_ ("from the flame to the far end"), WM_REQUIRED, 0,
    1000 },
  { "at", WM_INPUT_NUMBER, "mm", N_ ("place asked about"), WM_REQUIRED, 0, 1000 },
  { "conduct_low", WM_INPUT_NUMBER, "W/mK", N_ ("conduction at least"), WM_REQUIRED, 0,
    500 },
  { "conduct_high", WM_INPUT_NUMBER, "W/mK", N_ ("conduction at most"), WM_REQUIRED, 0,
    500 },
};

static const WmTopicOutput fall_outputs[] = {
  { "hot", "C", N_ ("hot estimate"), 0 },
  { "cool", "C", N_ ("cool estimate"), 0 },
  { "says", "word", N_ ("in words"), 0 },
};

static WmResult
run_fall (const WmTopicGiven *in, WmTopicAnswer *out, const char **which)
{
  const WmHeatFall fall = { in[0].value.value, in[1].value.value, in[2].value.value,
                            in[3].value.value, in[4].value.value, in[5].value.value,
                            in[6].value.value, in[7].value.value };
  WmHeatBand band;
  WmResult result = wm_heat_fall (&fall, &band, which);

  if (result != WM_OK)
    return result;

  wm_answer_number (out, 0, 0, band.hot_c);
  wm_answer_number (out, 1, 0, band.cool_c);
  wm_answer_word (
      out, 2, 0,
      N_ ("Too rough to permit anything: it may warn of a place, never clear a "
          "stone."));
  return WM_OK;
}

const WmTopic wm_topic_heat_fall = {
  "heat-fall",
  N_ ("How hot it may get at a distance"),
  N_ ("Bar heated at one end, steady; the band is a factor, not an error bar."),
  N_ ("Incropera and DeWitt, fins; band of cooling from memory, wide on purpose"),
  fall_inputs,
  WM_TOPIC_ROWS_OF (fall_inputs),
  fall_outputs,
  WM_TOPIC_ROWS_OF (fall_outputs),
  run_fall,
};
