/* bench-plan.c: the heat plan of a visit, from what was entered about the piece
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "record/bench-plan.h"

#include <glib/gi18n.h>
#include <math.h>

#include "trade/heat.h"
#include "trade/solder-fit.h"

/* Conduction of gold alloys, white to yellow, and of platinum and palladium, W/m K: bands
 * of the reckoning reference, section 6.2 (from memory, wide on purpose). */
#define GOLD_LOW 15.0
#define GOLD_HIGH 80.0
#define PLATINUM_LOW 30.0
#define PLATINUM_HIGH 72.0
#define ROOM_C 25.0

/* ---- reading what was entered ------------------------------------------------------ */

static void
free_step (gpointer data)
{
  WmPlanStep *step = data;

  g_object_unref (step->check);
  g_object_unref (step->remedy);
  g_array_unref (step->stones);
  g_free (step);
}

WmWorkMethod
wm_bench_plan_method (WmTrade *trade, WmRemedy *remedy)
{
  if (g_strcmp0 (remedy->method, "solder") == 0)
    return WM_WORK_SOLDER;
  if (g_strcmp0 (remedy->method, "laser") == 0)
    return WM_WORK_LASER;
  if (g_strcmp0 (remedy->method, "cold") == 0)
    return WM_WORK_COLD;

  for (const WmRemedyRow *const *row = wm_trade_list_remedies (trade, NULL); *row; row++)
    if (g_strcmp0 ((*row)->name, remedy->what) == 0)
      return (*row)->heat == WM_REMEDY_HEAT ? WM_WORK_UNSAID : WM_WORK_COLD;

  return WM_WORK_UNSAID;
}

static void
add_joint (WmBenchPlan *self, WmOldJointKind kind, double solidus_c)
{
  WmOldJoint joint = { kind, solidus_c };

  if (self->joints->len < WM_HEAT_MAX)
    g_array_append_val (self->joints, joint);
  self->joints_guessed |= kind == WM_OLD_JOINT_UNKNOWN;
  self->joints_soft |= kind == WM_OLD_JOINT_SOFT;
}

/* A solder without a known solidus holds like an unknown one. */
static void
add_known_joint (WmBenchPlan *self, const WmSolder *solder)
{
  if (solder == NULL || isnan (solder->solidus_c.low))
    add_joint (self, WM_OLD_JOINT_UNKNOWN, NAN);
  else
    add_joint (self, WM_OLD_JOINT_KNOWN, solder->solidus_c.low);
}

static void
read_old_joints (WmBenchPlan *self)
{
  const char *entered = self->piece->old_joints;
  g_auto (GStrv) words =
      g_strsplit (entered != NULL ? entered : WM_OLD_JOINTS_UNKNOWN, " ", -1);

  for (guint i = 0; words[i] != NULL; i++)
    if (g_str_equal (words[i], WM_OLD_JOINTS_SOFT))
      add_joint (self, WM_OLD_JOINT_SOFT, NAN);
    else if (g_str_equal (words[i], WM_OLD_JOINTS_UNKNOWN))
      add_joint (self, WM_OLD_JOINT_UNKNOWN, NAN);
    else if (*words[i] != '\0' && !g_str_equal (words[i], WM_OLD_JOINTS_NONE))
      add_known_joint (self, wm_trade_find_solder (self->trade, words[i]));
}

static void
find_weakest_joint (WmBenchPlan *self)
{
  self->joints_hold_c = NAN;
  for (guint i = 0; i < self->joints->len; i++)
    {
      const WmOldJoint *joint = &g_array_index (self->joints, WmOldJoint, i);
      double holds = joint->kind == WM_OLD_JOINT_KNOWN ? joint->solidus_c
                     : joint->kind == WM_OLD_JOINT_SOFT
                         ? WM_HEAT_TIN_LEAD_C
                         : self->heat_metal.lowest_solder_c;

      self->joints_hold_c = fmin (self->joints_hold_c, holds);
    }
}

static WmCheck *
find_check (GPtrArray *checks, const WmId *id)
{
  for (guint i = 0; i < checks->len; i++)
    if (wm_id_equal (wm_record_get_id (checks->pdata[i]), id))
      return checks->pdata[i];
  return NULL;
}

static void
add_steps (WmBenchPlan *self, GPtrArray *checks, GPtrArray *remedies)
{
  for (guint i = 0; i < remedies->len; i++)
    {
      WmRemedy *remedy = remedies->pdata[i];
      WmCheck *check = find_check (checks, &remedy->check_id);
      WmPlanStep *step;

      if (check == NULL || g_strcmp0 (remedy->answer, "declined") == 0)
        continue;
      step = g_new0 (WmPlanStep, 1);
      step->check = g_object_ref (check);
      step->remedy = g_object_ref (remedy);
      step->method = wm_bench_plan_method (self->trade, remedy);
      step->is_done = remedy->done_at_s != WM_UNKNOWN;
      step->stones = g_array_new (FALSE, TRUE, sizeof (WmPlanStone));
      step->worst_stone = -1;
      step->margin_new_k = NAN;
      if (step->method == WM_WORK_SOLDER && remedy->solder != NULL)
        step->solder = wm_trade_find_solder (self->trade, remedy->solder);
      if (step->solder != NULL)
        wm_trade_heat_solder (step->solder, &step->flow);
      g_ptr_array_add (self->steps, step);
    }
}

/* ---- order ------------------------------------------------------------------------- */

/* Done work first, then the torch, hottest first; laser, cold work; unsaid last. */
static int
rank (const WmPlanStep *step)
{
  static const int ranks[] = {
    [WM_WORK_UNSAID] = 4, [WM_WORK_SOLDER] = 1, [WM_WORK_LASER] = 2, [WM_WORK_COLD] = 3
  };

  return step->is_done ? 0 : ranks[step->method];
}

static int
compare_steps (gconstpointer a, gconstpointer b)
{
  const WmPlanStep *x = *(WmPlanStep *const *)a;
  const WmPlanStep *y = *(WmPlanStep *const *)b;
  gint64 x_number = x->check->number;
  gint64 y_number = y->check->number;

  if (rank (x) != rank (y))
    return rank (x) - rank (y);
  if (x->flow.flow_c != y->flow.flow_c)
    return x->flow.flow_c > y->flow.flow_c ? -1 : 1;
  if (x_number != y_number)
    return x_number < y_number ? -1 : 1;
  return x->remedy->position < y->remedy->position
             ? -1
             : x->remedy->position > y->remedy->position;
}

/* Margins between the joints of the plan that are still to be made. */
static void
order_new_joints (WmBenchPlan *self)
{
  WmPlanStep *steps[WM_HEAT_MAX];
  WmHeatSolder solders[WM_HEAT_MAX];
  int n = 0;

  for (guint i = 0; i < self->steps->len && n < WM_HEAT_MAX; i++)
    {
      WmPlanStep *step = self->steps->pdata[i];

      if (step->is_done || step->solder == NULL)
        continue;
      for (int k = 0; k < n; k++)
        {
          WmHeatSolder pair[2] = { solders[k], step->flow };
          double margins[2];
          int order[2], a, b;

          if (wm_heat_order (pair, 2, WM_HEAT_SUPERHEAT_K, order, margins, &a, &b, NULL)
              != WM_OK)
            continue;
          if (isnan (step->margin_new_k) || margins[1] < step->margin_new_k)
            {
              step->margin_new_k = margins[1];
              step->new_joint = steps[k]->number;
            }
          if (a >= 0 && step->clash == 0)
            step->clash = steps[k]->number;
        }
      steps[n] = step;
      solders[n++] = step->flow;
    }
}

/* ---- judging a step ---------------------------------------------------------------- */

static void
fill_stones (WmBenchPlan *self, gboolean is_out, const WmStoneAdvice *advice,
             WmHeatStone *stones)
{
  for (guint i = 0; i < self->groups->len && i < WM_HEAT_MAX; i++)
    {
      WmStoneGroup *group = self->groups->pdata[i];
      const WmStone *row = group->species != NULL
                               ? wm_trade_find_stone (self->trade, group->species)
                               : NULL;
      /* Enamel is part of the piece. */
      gboolean can_come_out = row == NULL || !g_str_equal (row->key, "enamel");

      wm_trade_heat_stone (self->trade, row, can_come_out,
                           is_out && can_come_out && advice[i] >= WM_STONE_ADVICE_OUT,
                           &stones[i]);
    }
}

static void
keep_stones (WmBenchPlan *self, WmPlanStep *step, const WmStoneAdvice *advice)
{
  for (guint i = 0; i < self->groups->len && i < WM_HEAT_MAX; i++)
    {
      WmStoneGroup *group = self->groups->pdata[i];
      WmPlanStone stone = {
        .group = group,
        .row = group->species != NULL ? wm_trade_find_stone (self->trade, group->species)
                                      : NULL,
        .advice = advice[i],
      };

      stone.comes_out = step->remedy->stones_out && advice[i] == WM_STONE_ADVICE_OUT;
      if (advice[i] >= WM_STONE_ADVICE_OUT && !stone.comes_out)
        step->trouble |= WM_PLAN_STONE_IN_THE_WAY;
      g_array_append_val (step->stones, stone);
      if (step->worst_stone < 0
          || advice[i]
                 > g_array_index (step->stones, WmPlanStone, step->worst_stone).advice)
        step->worst_stone = (int)i;
    }
}

static void
judge_fit (WmBenchPlan *self, WmPlanStep *step)
{
  double fineness =
      self->piece->fineness == WM_UNKNOWN ? NAN : (double)self->piece->fineness;

  if (step->solder->is_barred)
    step->trouble |= WM_PLAN_BARRED;
  if (!g_strv_contains (step->solder->families, self->metal->family))
    step->trouble |= WM_PLAN_WRONG_FAMILY;
  if (wm_trade_solder_is_too_low (step->solder, self->metal, fineness))
    step->trouble |= WM_PLAN_LOW_FINENESS;
}

/* Wire of the finding as it is now, mm; NaN if nobody measured it. */
static double
find_wire_mm (GPtrArray *measurements, WmCheck *check)
{
  double wire = NAN;

  for (guint i = 0; i < measurements->len; i++)
    {
      WmMeasurement *measurement = measurements->pdata[i];

      if (wm_id_equal (&measurement->check_id, wm_record_get_id (WM_RECORD (check)))
          && (g_strcmp0 (measurement->quantity, "thickness") == 0
              || g_strcmp0 (measurement->quantity, "diameter") == 0))
        wire = measurement->value_mm;
    }
  return wire;
}

/* Limit of the tenderest stone still in its setting; NaN without any. */
static double
least_stone_limit (const WmPlanStep *step)
{
  double limit = NAN;

  for (guint i = 0; i < step->stones->len; i++)
    {
      const WmPlanStone *stone = &g_array_index (step->stones, WmPlanStone, i);

      if (!stone->comes_out && stone->row != NULL)
        limit = fmin (limit, stone->row->trouble_c.low);
    }
  return limit;
}

/* The estimate at the stone: hottest with the far end at the stone itself. */
static void
estimate_at_stone (WmBenchPlan *self, WmPlanStep *step, GPtrArray *measurements)
{
  double mm = step->remedy->stone_mm;
  gboolean gold = g_str_equal (self->metal->family, "gold");
  double limit = least_stone_limit (step);
  WmHeatFall fall = {
    .source_c = step->heat.working_c,
    .ambient_c = ROOM_C,
    .wire_mm = find_wire_mm (measurements, step->check),
    .length_mm = mm,
    .at_mm = mm,
    .conduct_low = gold ? GOLD_LOW : PLATINUM_LOW,
    .conduct_high = gold ? GOLD_HIGH : PLATINUM_HIGH,
  };

  /* Silver leads so well that all of it counts as hot as the joint. */
  if (!(mm > 0) || isnan (fall.wire_mm) || self->heat_metal.whole_piece_hot)
    return;
  step->has_band = wm_heat_fall (&fall, &step->band, NULL) == WM_OK;
  if (step->has_band && step->band.hot_c > limit)
    step->trouble |= WM_PLAN_STONE_MAY_BURN;
}

static void
judge_solder (WmBenchPlan *self, WmPlanStep *step, GPtrArray *measurements)
{
  WmHeatStone stones[WM_HEAT_MAX];
  WmStoneAdvice advice[WM_HEAT_MAX] = { 0 };
  WmHeatPiece piece = { &self->heat_metal,
                        WM_HEAT_SUPERHEAT_K,
                        (const WmOldJoint *)(gpointer)self->joints->data,
                        (int)self->joints->len,
                        stones,
                        (int)MIN (self->groups->len, WM_HEAT_MAX) };

  if (step->solder == NULL)
    {
      step->trouble |= WM_PLAN_NO_SOLDER;
      return;
    }
  judge_fit (self, step);
  fill_stones (self, FALSE, advice, stones);
  if (wm_heat_judge (&piece, &step->flow, &step->heat, advice, NULL) != WM_OK)
    {
      step->trouble |= WM_PLAN_NO_SOLDER;
      return;
    }
  keep_stones (self, step, advice);
  /* Again with those out that come out: the margins are those of the work as planned. */
  fill_stones (self, step->remedy->stones_out, advice, stones);
  step->has_heat = wm_heat_judge (&piece, &step->flow, &step->heat, NULL, NULL) == WM_OK;
  if (step->margin_new_k < WM_HEAT_JOINT_WARN_K)
    step->trouble |= WM_PLAN_NEW_JOINT_CLOSE;
  if (step->clash > 0)
    step->trouble |= WM_PLAN_CLASH;
  estimate_at_stone (self, step, measurements);
}

static void
judge_laser (WmBenchPlan *self, WmPlanStep *step)
{
  gboolean near =
      isnan (step->remedy->stone_mm) || step->remedy->stone_mm <= WM_LASER_NEAR_MM;

  for (guint i = 0; i < self->groups->len && i < WM_HEAT_MAX; i++)
    {
      WmStoneGroup *group = self->groups->pdata[i];
      const WmStone *row = group->species != NULL
                               ? wm_trade_find_stone (self->trade, group->species)
                               : NULL;
      gboolean takes_none = row == NULL || row->heat == WM_STONE_NEVER;
      WmPlanStone stone = { group, row, WM_STONE_ADVICE_STAYS, FALSE };

      if (takes_none)
        stone.advice = WM_STONE_ADVICE_OUT;
      stone.comes_out = takes_none && step->remedy->stones_out
                        && (row == NULL || !g_str_equal (row->key, "enamel"));
      g_array_append_val (step->stones, stone);
      if (stone.comes_out)
        continue;
      if (takes_none && near)
        step->trouble |= WM_PLAN_LASER_STONE;
      else if (takes_none || near)
        step->trouble |= WM_PLAN_LASER_LOW;
    }
  if (self->joints_soft)
    step->trouble |= WM_PLAN_LASER_SOFT;
}

static WmHeatVerdict
weigh (const WmPlanStep *step)
{
  const unsigned refusing = WM_PLAN_NO_METHOD | WM_PLAN_NO_SOLDER | WM_PLAN_WRONG_FAMILY
                            | WM_PLAN_BARRED | WM_PLAN_STONE_IN_THE_WAY
                            | WM_PLAN_LASER_STONE | WM_PLAN_LASER_SOFT;
  WmHeatVerdict verdict = step->has_heat ? step->heat.verdict : WM_HEAT_PASS;

  if (step->trouble & refusing)
    return WM_HEAT_REFUSE;
  return step->trouble != 0 ? MAX (verdict, WM_HEAT_WARN) : verdict;
}

static void
judge_steps (WmBenchPlan *self, GPtrArray *measurements)
{
  for (guint i = 0; i < self->steps->len; i++)
    {
      WmPlanStep *step = self->steps->pdata[i];

      if (step->is_done)
        continue;
      if (step->method == WM_WORK_UNSAID)
        step->trouble |= WM_PLAN_NO_METHOD;
      else if (step->method == WM_WORK_SOLDER)
        judge_solder (self, step, measurements);
      else if (step->method == WM_WORK_LASER)
        judge_laser (self, step);
      step->verdict = weigh (step);
      self->verdict = MAX (self->verdict, step->verdict);
    }
}

/* ---- the plan ---------------------------------------------------------------------- */

static WmPlanState
find_metal (WmBenchPlan *self)
{
  if (self->piece->metal == NULL)
    return WM_PLAN_NO_METAL;
  self->metal = wm_trade_find_metal (self->trade, self->piece->metal);
  if (self->metal == NULL
      || !wm_trade_heat_metal (self->trade, self->metal, &self->heat_metal))
    return WM_PLAN_METAL_FOREIGN;
  return WM_PLAN_READY;
}

WmBenchPlan *
wm_bench_plan_new (WmTrade *trade, WmPiece *piece, GPtrArray *stones, GPtrArray *checks,
                   GPtrArray *measurements, GPtrArray *remedies)
{
  WmBenchPlan *self = g_new0 (WmBenchPlan, 1);

  self->trade = wm_trade_ref (trade);
  self->piece = g_object_ref (piece);
  self->steps = g_ptr_array_new_with_free_func (free_step);
  self->groups = g_ptr_array_new_with_free_func (g_object_unref);
  self->joints = g_array_new (FALSE, FALSE, sizeof (WmOldJoint));
  for (guint i = 0; i < stones->len; i++)
    g_ptr_array_add (self->groups, g_object_ref (stones->pdata[i]));
  self->state = find_metal (self);
  read_old_joints (self);
  add_steps (self, checks, remedies);
  g_ptr_array_sort (self->steps, compare_steps);
  for (guint i = 0; i < self->steps->len; i++)
    {
      WmPlanStep *step = self->steps->pdata[i];

      step->number = (int)i + 1;
      if (step->is_done && step->method == WM_WORK_SOLDER)
        add_known_joint (self, step->solder);
    }
  if (self->state != WM_PLAN_READY)
    return self;

  find_weakest_joint (self);
  order_new_joints (self);
  judge_steps (self, measurements);
  return self;
}

void
wm_bench_plan_free (WmBenchPlan *self)
{
  g_ptr_array_unref (self->steps);
  g_ptr_array_unref (self->groups);
  g_array_unref (self->joints);
  g_object_unref (self->piece);
  wm_trade_unref (self->trade);
  g_free (self);
}

/* ---- solders to choose from -------------------------------------------------------- */

static double
least_margin (const WmHeatStep *heat)
{
  return fmin (heat->margin_metal_k, fmin (heat->margin_joints_k, heat->margin_stones_k));
}

static int
compare_picks (gconstpointer a, gconstpointer b)
{
  const WmSolderPick *x = a;
  const WmSolderPick *y = b;

  if (x->suits != y->suits)
    return x->suits ? -1 : 1;
  if (x->heat.verdict != y->heat.verdict)
    return (int)x->heat.verdict - (int)y->heat.verdict;
  return least_margin (&x->heat) > least_margin (&y->heat) ? -1 : 1;
}

GArray *
wm_bench_plan_list_solders (WmBenchPlan *self)
{
  GArray *picks = g_array_new (FALSE, TRUE, sizeof (WmSolderPick));
  g_autoptr (GPtrArray) solders = NULL;
  const char *colour;
  double fineness =
      self->piece->fineness == WM_UNKNOWN ? NAN : (double)self->piece->fineness;
  WmHeatPiece piece = { &self->heat_metal,
                        WM_HEAT_SUPERHEAT_K,
                        (const WmOldJoint *)(gpointer)self->joints->data,
                        (int)self->joints->len,
                        NULL,
                        0 };

  if (self->state != WM_PLAN_READY)
    return picks;

  solders = wm_trade_list_solders_for (self->trade, self->metal->family);
  colour = wm_trade_metal_colour (self->metal);
  for (guint i = 0; i < solders->len; i++)
    {
      WmSolderPick pick = { .solder = solders->pdata[i] };
      WmHeatSolder flow;

      wm_trade_heat_solder (pick.solder, &flow);
      if (wm_heat_judge (&piece, &flow, &pick.heat, NULL, NULL) != WM_OK)
        continue;
      pick.suits = !wm_trade_solder_is_too_low (pick.solder, self->metal, fineness)
                   && (colour == NULL || pick.solder->colour == NULL
                       || g_str_equal (colour, pick.solder->colour));
      g_array_append_val (picks, pick);
    }
  g_array_sort (picks, compare_picks);
  return picks;
}

const char *
wm_plan_trouble_text (int index)
{
  static const char *const texts[WM_N_PLAN_TROUBLES] = {
    N_ ("nobody has said yet how it is done: solder, laser or cold"),
    N_ ("no solder is chosen"),
    N_ ("this solder is not made for this metal"),
    N_ ("this solder bears cadmium: never use it"),
    N_ ("the solder is of lower fineness than a hallmark needs there"),
    N_ ("a stone has to come out first"),
    N_ ("a joint of this plan may melt again: shield it"),
    N_ ("no order of the two joints is safe by temperature alone: shield the earlier "
        "one, "
        "take it apart, or use laser or pulse-arc"),
    N_ ("a stone that takes no heat at all is too near the laser, or nobody has said how "
        "far away it is: take it out or work cold"),
    N_ ("a stone near the laser: low power, and no beam on it"),
    N_ ("the heat that reaches the stone may be too much for it: an estimate, too rough "
        "to clear anything"),
    N_ ("soft solder is suspected: clean it away completely before the laser, it pits "
        "precious metal"),
  };

  return index >= 0 && index < WM_N_PLAN_TROUBLES ? texts[index] : "";
}
