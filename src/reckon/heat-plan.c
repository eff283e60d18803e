/* heat-plan.c: margins of a solder to the metal, the old joints and the stones
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/heat-plan.h"

#include <math.h>

#include "reckon/value.h"
#include "reckon/words.h"

/* Nothing at a bench is hotter. */
#define MAX_C 4000.0

static WmResult
check_temperature (double c, const char *input, int may_be_unknown, const char **which)
{
  const WmInputBound bound = WM_ABOVE (input, wm_exact (c), 0.0, MAX_C);

  if (may_be_unknown && isnan (c))
    return WM_OK;

  return wm_bounds_check (&bound, 1, which);
}

static WmResult
check_solder (const WmHeatSolder *solder, const char **which)
{
  WmResult result = check_temperature (solder->flow_c, "solders", 0, which);

  if (result == WM_OK)
    result = check_temperature (solder->solidus_c, "solders", 1, which);
  if (result == WM_OK && solder->solidus_c > solder->flow_c)
    result = wm_refuse (WM_CONTRADICTION, "solders", which);

  return result;
}

static WmResult
check_superheat (double superheat_k, const char **which)
{
  const WmInputBound bound = WM_FROM ("superheat", wm_exact (superheat_k), 0.0, 100.0);

  return wm_bounds_check (&bound, 1, which);
}

static WmResult
check_piece (const WmHeatPiece *piece, const char **which)
{
  WmResult result =
      check_temperature (piece->metal->solidus_c, "metal_solidus", 0, which);

  if (result == WM_OK)
    result = check_temperature (piece->metal->anneal_c, "anneal", 1, which);
  if (result == WM_OK)
    result = check_temperature (piece->metal->lowest_solder_c, "lowest_solder", 0, which);
  if (result == WM_OK)
    result = check_superheat (piece->superheat_k, which);
  if (result == WM_OK && (piece->n_joints < 0 || piece->n_joints > WM_HEAT_MAX))
    result = wm_refuse (WM_OUT_OF_RANGE, "joints", which);
  if (result == WM_OK && (piece->n_stones < 0 || piece->n_stones > WM_HEAT_MAX))
    result = wm_refuse (WM_OUT_OF_RANGE, "stones", which);

  for (int i = 0; i < piece->n_joints && result == WM_OK; i++)
    if (piece->joints[i].kind == WM_OLD_JOINT_KNOWN)
      result = check_temperature (piece->joints[i].solidus_c, "joints", 0, which);

  for (int i = 0; i < piece->n_stones && result == WM_OK; i++)
    {
      int is_unknown = piece->stones[i].heat == WM_HEAT_STONE_UNKNOWN;

      result = check_temperature (piece->stones[i].limit_c, "stones", is_unknown, which);
      if (result == WM_OK)
        result = check_temperature (piece->stones[i].coated_limit_c, "stones", 1, which);
    }

  return result;
}

static void
judge_metal (const WmHeatMetal *metal, WmHeatStep *step)
{
  step->margin_metal_k = metal->solidus_c - step->working_c;
  if (step->margin_metal_k < 0.0)
    step->reasons |= WM_HEAT_METAL_MELTS;
  else if (step->margin_metal_k < WM_HEAT_METAL_WARN_K)
    step->reasons |= WM_HEAT_METAL_CLOSE;

  if (step->working_c < metal->anneal_c)
    step->temper = WM_HEAT_TEMPER_KEPT;
  else
    step->temper =
        metal->whole_piece_hot ? WM_HEAT_TEMPER_SOFT_WHOLE : WM_HEAT_TEMPER_SOFT_NEAR;
}

static double
holds_until (const WmOldJoint *joint, const WmHeatMetal *metal)
{
  switch (joint->kind)
    {
    case WM_OLD_JOINT_KNOWN:
      return joint->solidus_c;
    case WM_OLD_JOINT_SOFT:
      return WM_HEAT_TIN_LEAD_C;
    case WM_OLD_JOINT_UNKNOWN:
    default:
      return metal->lowest_solder_c;
    }
}

static void
judge_joints (const WmHeatPiece *piece, WmHeatStep *step)
{
  step->margin_joints_k = NAN;

  for (int i = 0; i < piece->n_joints; i++)
    {
      const WmOldJoint *joint = &piece->joints[i];
      double margin = holds_until (joint, piece->metal) - step->working_c;

      step->margin_joints_k = fmin (step->margin_joints_k, margin);
      if (joint->kind != WM_OLD_JOINT_KNOWN)
        step->reasons |= WM_HEAT_JOINT_GUESSED;
      if (joint->kind == WM_OLD_JOINT_SOFT)
        step->reasons |= WM_HEAT_SOFT_SOLDER;
    }

  if (step->margin_joints_k < 0.0)
    step->reasons |= WM_HEAT_JOINT_REMELTS;
  else if (step->margin_joints_k < WM_HEAT_JOINT_WARN_K)
    step->reasons |= WM_HEAT_JOINT_CLOSE;
}

/* Whether a stone's own heat key and limits let it stay at this temperature. */
static WmStoneAdvice
advise (const WmHeatStone *stone, double working_c)
{
  WmStoneAdvice away =
      stone->can_come_out ? WM_STONE_ADVICE_OUT : WM_STONE_ADVICE_NO_HEAT;

  if (stone->is_out)
    return WM_STONE_ADVICE_OUT;

  if (stone->heat == WM_HEAT_STONE_STAYS && working_c <= stone->limit_c)
    return WM_STONE_ADVICE_STAYS;

  if (stone->heat == WM_HEAT_STONE_STAYS && working_c <= stone->coated_limit_c)
    return WM_STONE_ADVICE_COAT;

  if (stone->heat == WM_HEAT_STONE_GUARD && working_c <= stone->limit_c)
    return WM_STONE_ADVICE_SHIELD;

  return away;
}

static void
judge_stones (const WmHeatPiece *piece, WmHeatStep *step, WmStoneAdvice *advice)
{
  step->margin_stones_k = NAN;

  for (int i = 0; i < piece->n_stones; i++)
    {
      const WmHeatStone *stone = &piece->stones[i];
      WmStoneAdvice a = advise (stone, step->working_c);
      double limit = a == WM_STONE_ADVICE_COAT ? stone->coated_limit_c : stone->limit_c;

      if (advice != NULL)
        advice[i] = a;

      if (a < WM_STONE_ADVICE_OUT)
        step->margin_stones_k = fmin (step->margin_stones_k, limit - step->working_c);

      if (a == WM_STONE_ADVICE_COAT || a == WM_STONE_ADVICE_SHIELD)
        step->reasons |= WM_HEAT_STONES_GUARDED;
      else if (a == WM_STONE_ADVICE_OUT && !stone->is_out)
        step->reasons |= WM_HEAT_STONES_OUT;
      else if (a == WM_STONE_ADVICE_NO_HEAT)
        step->reasons |= WM_HEAT_STONE_FORBIDS;
    }
}

static WmHeatStep
judge (const WmHeatPiece *piece, const WmHeatSolder *solder, WmStoneAdvice *advice)
{
  WmHeatStep step = { .working_c = solder->flow_c + piece->superheat_k };

  judge_metal (piece->metal, &step);
  judge_joints (piece, &step);
  judge_stones (piece, &step, advice);

  if (step.reasons
      & (WM_HEAT_METAL_MELTS | WM_HEAT_JOINT_REMELTS | WM_HEAT_SOFT_SOLDER
         | WM_HEAT_STONE_FORBIDS))
    step.verdict = WM_HEAT_REFUSE;
  else
    step.verdict = step.reasons != 0 ? WM_HEAT_WARN : WM_HEAT_PASS;

  return step;
}

WmResult
wm_heat_judge (const WmHeatPiece *piece, const WmHeatSolder *solder, WmHeatStep *out,
               WmStoneAdvice *advice, const char **which)
{
  WmResult result = check_piece (piece, which);

  if (result == WM_OK)
    result = check_solder (solder, which);
  if (result != WM_OK)
    return result;

  *out = judge (piece, solder, advice);
  return WM_OK;
}

static WmResult
check_solders (const WmHeatSolder *solders, int n, const char **which)
{
  WmResult result = WM_OK;

  if (n < 1 || n > WM_HEAT_MAX)
    return wm_refuse (n < 1 ? WM_TOO_FEW : WM_OUT_OF_RANGE, "solders", which);

  for (int i = 0; i < n && result == WM_OK; i++)
    result = check_solder (&solders[i], which);

  return result;
}

/* Least of the margins; a missing one does not count. */
static double
least_margin (const WmHeatStep *step)
{
  return fmin (step->margin_metal_k, fmin (step->margin_joints_k, step->margin_stones_k));
}

WmResult
wm_heat_choose (const WmHeatPiece *piece, const WmHeatSolder *solders, int n_solders,
                WmHeatStep *steps, WmHeatChoice *out, const char **which)
{
  WmHeatChoice choice = { -1, 0, 0 };
  WmResult result = check_piece (piece, which);

  if (result == WM_OK)
    result = check_solders (solders, n_solders, which);
  if (result != WM_OK)
    return result;

  for (int i = 0; i < n_solders; i++)
    {
      steps[i] = judge (piece, &solders[i], NULL);
      choice.why_none |= steps[i].reasons;
      if (steps[i].verdict == WM_HEAT_REFUSE)
        continue;

      choice.n_usable++;
      if (choice.best < 0 || steps[i].verdict < steps[choice.best].verdict
          || (steps[i].verdict == steps[choice.best].verdict
              && least_margin (&steps[i]) > least_margin (&steps[choice.best])))
        choice.best = i;
    }

  if (choice.best >= 0)
    choice.why_none = 0;
  *out = choice;
  return WM_OK;
}

/* Solidus of a joint just made; unknown counts as melting at the flow point less the
 * widest range in the solder tables, 100 K. */
static double
new_joint_solidus (const WmHeatSolder *solder)
{
  return isnan (solder->solidus_c) ? solder->flow_c - 100.0 : solder->solidus_c;
}

static int
endangers (const WmHeatSolder *later, const WmHeatSolder *holding, double superheat_k)
{
  return later->flow_c + superheat_k > new_joint_solidus (holding);
}

static void
sort_hottest_first (const WmHeatSolder *solders, int n, int *order)
{
  for (int i = 0; i < n; i++)
    {
      int place = i;

      while (place > 0 && solders[order[place - 1]].flow_c < solders[i].flow_c)
        {
          order[place] = order[place - 1];
          place--;
        }

      order[place] = i;
    }
}

WmResult
wm_heat_order (const WmHeatSolder *solders, int n_solders, double superheat_k, int *order,
               double *margins_k, int *clash_a, int *clash_b, const char **which)
{
  double weakest = NAN;
  WmResult result = check_superheat (superheat_k, which);

  if (result == WM_OK)
    result = check_solders (solders, n_solders, which);
  if (result != WM_OK)
    return result;

  sort_hottest_first (solders, n_solders, order);
  *clash_a = *clash_b = -1;

  for (int i = 0; i < n_solders; i++)
    {
      const WmHeatSolder *now = &solders[order[i]];

      margins_k[i] = weakest - (now->flow_c + superheat_k);
      weakest = fmin (weakest, new_joint_solidus (now));

      for (int k = 0; k < i && *clash_a < 0; k++)
        if (endangers (now, &solders[order[k]], superheat_k)
            && endangers (&solders[order[k]], now, superheat_k))
          {
            *clash_a = order[k];
            *clash_b = order[i];
          }
    }

  return WM_OK;
}

const char *
wm_heat_reason_text (int index)
{
  static const char *const texts[WM_N_HEAT_REASONS] = {
    N_ ("the metal itself would begin to melt"),
    N_ ("the working temperature is close to where the metal begins to melt"),
    N_ ("an old joint would melt again: shield it, take it apart, or use laser or "
        "pulse-arc"),
    N_ ("an old joint is close to melting again: shield it"),
    N_ ("an old joint's solder is not known and counts as the lowest of its kind"),
    N_ ("soft solder is suspected: clean it away completely before any hot work, it pits "
        "precious metal"),
    N_ ("stones must come out first"),
    N_ ("stones stay only under a protective coat or behind a heat shield"),
    N_ ("a stone or enamel can neither stand the heat nor come out: repair cold or by "
        "laser, away from it"),
  };

  return index >= 0 && index < WM_N_HEAT_REASONS ? texts[index] : "";
}

const char *
wm_stone_advice_text (WmStoneAdvice advice)
{
  switch (advice)
    {
    case WM_STONE_ADVICE_STAYS:
      return N_ ("may stay: heat slowly, cool slowly, no quench");
    case WM_STONE_ADVICE_COAT:
      return N_ ("may stay under a protective coat only");
    case WM_STONE_ADVICE_SHIELD:
      return N_ ("may stay behind a heat shield, no flame on it");
    case WM_STONE_ADVICE_OUT:
      return N_ ("out before any heat");
    case WM_STONE_ADVICE_NO_HEAT:
    default:
      return N_ ("no heat on this piece");
    }
}

const char *
wm_heat_temper_text (WmHeatTemper temper)
{
  switch (temper)
    {
    case WM_HEAT_TEMPER_KEPT:
      return N_ ("the metal keeps its temper");
    case WM_HEAT_TEMPER_SOFT_WHOLE:
      return N_ (
          "the whole piece will be soft: harden springs, pins and tongues again and "
          "test them");
    case WM_HEAT_TEMPER_SOFT_NEAR:
    default:
      return N_ ("soft near the joint: harden springs, pins and tongues again and test "
                 "them");
    }
}

const char *
wm_heat_verdict_text (WmHeatVerdict verdict)
{
  switch (verdict)
    {
    case WM_HEAT_PASS:
      return N_ ("usable");
    case WM_HEAT_WARN:
      return N_ ("usable with care");
    case WM_HEAT_REFUSE:
    default:
      return N_ ("not safe");
    }
}
