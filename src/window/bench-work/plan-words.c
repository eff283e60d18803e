/* plan-words.c: a heat plan in the jeweller's words
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/bench-work/plan-words.h"

#include <glib/gi18n.h>
#include <math.h>

#include "window/bench-work/joint-words.h"

char *
wm_plan_step_title (const WmPlanStep *step)
{
  const char *title =
      step->check->title != NULL ? step->check->title : step->check->fault;

  return g_strdup_printf ("%s: %s", wm_trade_text (title != NULL ? title : ""),
                          wm_trade_text (step->remedy->what));
}

char *
wm_plan_step_how (const WmPlanStep *step)
{
  if (step->is_done)
    return g_strdup (_ ("done already"));
  switch (step->method)
    {
    case WM_WORK_SOLDER:
      return g_strdup (step->solder != NULL ? wm_trade_text (step->solder->name)
                                            : _ ("solder not chosen"));
    case WM_WORK_LASER:
      return g_strdup (_ ("laser, no flame"));
    case WM_WORK_COLD:
      return g_strdup (_ ("cold, no heat"));
    default:
      return g_strdup (_ ("not said yet how"));
    }
}

char *
wm_plan_step_heat (const WmPlanStep *step)
{
  if (step->method == WM_WORK_LASER)
    return g_strdup (_ ("the heat stays near the spot"));
  if (!step->has_heat)
    return g_strdup ("");
  if (isnan (step->flow.solidus_c))
    return g_strdup_printf (_ ("flows %.0f, worked at %.0f"), step->flow.flow_c,
                            step->heat.working_c);
  return g_strdup_printf (_ ("begins %.0f, flows %.0f, worked at %.0f"),
                          step->flow.solidus_c, step->flow.flow_c, step->heat.working_c);
}

/* A true minus sign. */
static char *
write_kelvin (double margin_k)
{
  return g_strdup_printf ("%s%.0f K", margin_k < 0 ? "\u2212" : "", fabs (margin_k));
}

static char *
no_flame (const WmPlanStep *step)
{
  return g_strdup (step->is_done                   ? _ ("done already")
                   : step->method == WM_WORK_COLD  ? _ ("no heat")
                   : step->method == WM_WORK_LASER ? _ ("no flame")
                                                   : _ ("not reckoned"));
}

char *
wm_plan_metal_margin (const WmPlanStep *step, gboolean *out_bad)
{
  double margin = step->heat.margin_metal_k;
  g_autofree char *kelvin = write_kelvin (margin);

  *out_bad = step->has_heat && margin < WM_HEAT_METAL_WARN_K;
  if (!step->has_heat)
    return no_flame (step);
  return g_strdup_printf ("%s · %s", kelvin,
                          margin < 0 ? _ ("the metal itself would melt")
                          : *out_bad ? _ ("close")
                                     : _ ("holds"));
}

char *
wm_plan_joint_margin (const WmBenchPlan *plan, const WmPlanStep *step, gboolean *out_bad)
{
  double old = step->heat.margin_joints_k;
  gboolean is_new = !isnan (step->margin_new_k) && !(old <= step->margin_new_k);
  double margin = is_new ? step->margin_new_k : old;
  g_autofree char *kelvin = write_kelvin (margin);
  g_autofree char *which = NULL;

  *out_bad = FALSE;
  if (!step->has_heat)
    {
      *out_bad = (step->trouble & WM_PLAN_LASER_SOFT) != 0;
      return *out_bad ? g_strdup (_ ("soft solder: clean it away first"))
                      : no_flame (step);
    }
  if (isnan (margin))
    return g_strdup (_ ("no other joint"));

  *out_bad = margin < WM_HEAT_JOINT_WARN_K || (!is_new && plan->joints_guessed);
  which = is_new ? g_strdup_printf (_ ("joint of step %d"), step->new_joint)
                 : g_strdup (plan->joints_soft      ? _ ("soft solder suspected")
                             : plan->joints_guessed ? _ ("old joints, not known")
                                                    : _ ("old joints"));
  if (margin >= WM_HEAT_JOINT_WARN_K)
    return g_strdup_printf ("%s · %s", kelvin, which);
  return g_strdup_printf ("%s · %s: %s", kelvin, which,
                          margin < 0 && !is_new ? _ ("would run") : _ ("shield it"));
}

static const char *
name_stone (const WmPlanStone *stone)
{
  if (stone->row != NULL)
    return wm_trade_text (stone->row->name);
  return stone->group->species != NULL ? stone->group->species : _ ("stone not known");
}

char *
wm_plan_stone_margin (const WmPlanStep *step, gboolean *out_bad)
{
  const WmPlanStone *stone;
  g_autofree char *kelvin = NULL;

  *out_bad = (step->trouble
              & (WM_PLAN_STONE_IN_THE_WAY | WM_PLAN_LASER_STONE | WM_PLAN_LASER_LOW
                 | WM_PLAN_STONE_MAY_BURN))
             != 0;
  if (step->trouble & WM_PLAN_LASER_STONE)
    return g_strdup (_ ("too near, or distance not said"));
  if (step->trouble & WM_PLAN_LASER_LOW)
    return g_strdup (_ ("low power, no beam on it"));
  if (!step->has_heat)
    return no_flame (step);
  if (step->worst_stone < 0)
    return g_strdup (_ ("no stones entered"));

  stone = &g_array_index (step->stones, WmPlanStone, step->worst_stone);
  if (stone->comes_out)
    return g_strdup_printf (_ ("%s: out first"), name_stone (stone));
  if (stone->advice >= WM_STONE_ADVICE_OUT)
    return g_strdup_printf ("%s: %s", name_stone (stone),
                            _ (wm_stone_advice_text (stone->advice)));
  *out_bad |= stone->advice != WM_STONE_ADVICE_STAYS;
  kelvin = write_kelvin (step->heat.margin_stones_k);
  return g_strdup_printf ("%s · %s: %s", kelvin, name_stone (stone),
                          _ (wm_stone_advice_text (stone->advice)));
}

/* ---- why not ----------------------------------------------------------------------- */

static void
add_reason (GString *text, const WmPlanStep *step, const char *reason)
{
  g_autofree char *title = wm_plan_step_title (step);

  if (text->len > 0)
    g_string_append_c (text, '\n');
  /* Translators: number of the step, what is done, why it can not be done so */
  g_string_append_printf (text, _ ("Step %d, %s: %s."), step->number, title, reason);
}

static void
add_stone_reasons (GString *text, const WmPlanStep *step)
{
  for (guint i = 0; i < step->stones->len; i++)
    {
      const WmPlanStone *stone = &g_array_index (step->stones, WmPlanStone, i);
      g_autofree char *reason = NULL;

      if (stone->advice < WM_STONE_ADVICE_OUT || stone->comes_out)
        continue;
      reason = g_strdup_printf ("%s: %s", name_stone (stone),
                                _ (wm_stone_advice_text (stone->advice)));
      add_reason (text, step, reason);
    }
}

char *
wm_plan_refusal (const WmBenchPlan *plan)
{
  const unsigned heat_reasons = WM_HEAT_METAL_MELTS | WM_HEAT_JOINT_REMELTS
                                | WM_HEAT_JOINT_GUESSED | WM_HEAT_SOFT_SOLDER;
  const unsigned troubles = WM_PLAN_NO_METHOD | WM_PLAN_NO_SOLDER | WM_PLAN_WRONG_FAMILY
                            | WM_PLAN_BARRED | WM_PLAN_LASER_STONE | WM_PLAN_LASER_SOFT;
  GString *text;

  if (plan->state != WM_PLAN_READY || plan->verdict != WM_HEAT_REFUSE)
    return NULL;

  text = g_string_new (NULL);
  for (guint i = 0; i < plan->steps->len; i++)
    {
      const WmPlanStep *step = plan->steps->pdata[i];

      if (step->verdict != WM_HEAT_REFUSE)
        continue;
      for (int k = 0; k < WM_N_HEAT_REASONS; k++)
        if (step->has_heat && (step->heat.reasons & heat_reasons & (1u << k)))
          add_reason (text, step, _ (wm_heat_reason_text (k)));
      for (int k = 0; k < WM_N_PLAN_TROUBLES; k++)
        if (step->trouble & troubles & (1u << k))
          add_reason (text, step, _ (wm_plan_trouble_text (k)));
      add_stone_reasons (text, step);
    }
  return g_string_free (text, FALSE);
}

/* ---- what else --------------------------------------------------------------------- */

static void
add_note (GPtrArray *notes, char *note)
{
  for (guint i = 0; i < notes->len; i++)
    if (g_str_equal (notes->pdata[i], note))
      {
        g_free (note);
        return;
      }
  g_ptr_array_add (notes, note);
}

static void
add_step_notes (GPtrArray *notes, const WmPlanStep *step)
{
  const unsigned said =
      WM_PLAN_LOW_FINENESS | WM_PLAN_CLASH | WM_PLAN_STONE_MAY_BURN | WM_PLAN_LASER_LOW;

  for (int k = 0; k < WM_N_PLAN_TROUBLES; k++)
    if (step->trouble & said & (1u << k))
      add_note (notes, g_strdup_printf (_ ("Step %d: %s."), step->number,
                                        _ (wm_plan_trouble_text (k))));
  if (step->has_band)
    add_note (notes, g_strdup_printf (
                         _ ("Step %d: the stone %.1f mm away may reach %.0f to %.0f °C; "
                            "an estimate, too rough to clear anything."),
                         step->number, step->remedy->stone_mm, step->band.cool_c,
                         step->band.hot_c));
  for (guint i = 0; i < step->stones->len; i++)
    {
      const WmPlanStone *stone = &g_array_index (step->stones, WmPlanStone, i);

      if (step->has_heat)
        add_note (notes, g_strdup_printf (_ ("%s: %s."), name_stone (stone),
                                          _ (wm_stone_advice_text (stone->advice))));
    }
}

static void
add_advice (GPtrArray *notes, const WmBenchPlan *plan, const char *key)
{
  const WmAdvice *row = wm_trade_find_advice (plan->trade, key);

  if (row != NULL)
    add_note (notes, g_strdup_printf ("%s.", wm_trade_text (row->text)));
}

/* What flux and cooling do to the stones of the piece. */
static void
add_stone_advice (GPtrArray *notes, const WmBenchPlan *plan)
{
  if (plan->groups->len > 0)
    add_advice (notes, plan, "st_shock");
  for (guint i = 0; i < plan->groups->len; i++)
    {
      const char *species = ((WmStoneGroup *)plan->groups->pdata[i])->species;

      if (species == NULL)
        continue;
      if (g_str_has_prefix (species, "diamond"))
        add_advice (notes, plan, "f_diamond");
      if (g_str_has_prefix (species, "ruby") || g_str_has_prefix (species, "sapphire"))
        add_advice (notes, plan, "f_corundum");
    }
}

static void
add_temper (GPtrArray *notes, const WmBenchPlan *plan)
{
  const WmTemper *temper = plan->metal->temper != NULL
                               ? wm_trade_find_temper (plan->trade, plan->metal->temper)
                               : NULL;

  for (guint i = 0; i < plan->steps->len; i++)
    {
      const WmPlanStep *step = plan->steps->pdata[i];

      if (step->has_heat)
        add_note (notes, g_strdup_printf (_ ("Afterwards: %s."),
                                          _ (wm_heat_temper_text (step->heat.temper))));
    }
  if (temper == NULL)
    return;
  /* A quench cracks stones: the metal's own cooling is for a piece without any. */
  if (temper->cooling != NULL && plan->groups->len == 0)
    add_note (notes,
              g_strdup_printf (_ ("Cooling: %s."), wm_trade_text (temper->cooling)));
  if (temper->hardening != NULL)
    add_note (notes,
              g_strdup_printf (_ ("Hardening: %s."), wm_trade_text (temper->hardening)));
}

GPtrArray *
wm_plan_notes (const WmBenchPlan *plan)
{
  GPtrArray *notes = g_ptr_array_new_with_free_func (g_free);
  gboolean torch = FALSE;

  for (guint i = 0; i < plan->steps->len; i++)
    {
      const WmPlanStep *step = plan->steps->pdata[i];

      torch |= step->has_heat;
      add_step_notes (notes, step);
    }
  if (plan->groups->len == 0)
    add_note (notes, g_strdup (_ ("No stones are entered at take-in: if there are any, "
                                  "enter them first.")));
  if (torch)
    {
      char *joint = wm_joint_words (plan->metal);

      add_stone_advice (notes, plan);
      if (joint != NULL)
        add_note (notes, joint);
      add_temper (notes, plan);
    }
  return notes;
}

static void
add_caution (GPtrArray *cautions, const WmBenchPlan *plan, const char *key)
{
  const WmCaution *row = wm_trade_find_caution (plan->trade, key);

  if (row != NULL)
    add_note (cautions, g_strdup_printf ("%s: %s.", wm_trade_text (row->name),
                                         wm_trade_text (row->caution)));
}

GPtrArray *
wm_plan_cautions (const WmBenchPlan *plan)
{
  GPtrArray *cautions = g_ptr_array_new_with_free_func (g_free);
  gboolean torch = FALSE, laser = FALSE;
  gboolean white_hot = g_str_equal (plan->metal->family, "platinum")
                       || g_str_equal (plan->metal->family, "palladium");

  for (guint i = 0; i < plan->steps->len; i++)
    {
      const WmPlanStep *step = plan->steps->pdata[i];

      torch |= !step->is_done && step->method == WM_WORK_SOLDER;
      laser |= !step->is_done && step->method == WM_WORK_LASER;
    }
  if (torch)
    {
      add_caution (cautions, plan, "hz_fire");
      add_caution (cautions, plan, "hz_gas");
      if (plan->joints_guessed)
        add_caution (cautions, plan, "hz_cd");
      if (plan->joints_soft)
        add_caution (cautions, plan, "hz_pb");
      if (white_hot)
        add_caution (cautions, plan, "hz_glare");
      else
        {
          add_caution (cautions, plan, "hz_boric");
          add_caution (cautions, plan, "hz_ipa");
          add_caution (cautions, plan, "hz_acid");
        }
      add_caution (cautions, plan, "hz_quench");
      add_caution (cautions, plan, "hz_hollow");
      g_ptr_array_add (
          cautions, g_strdup (_ ("Zinc in the solder fumes when it is overheated: draw "
                                 "the fumes away from your face (common practice).")));
    }
  if (laser)
    add_caution (cautions, plan, "hz_laser");
  if (torch || laser)
    g_ptr_array_add (
        cautions, g_strdup (_ ("The safety data sheet, local rules and licensed practice"
                               " come first.")));
  return cautions;
}

static void
add_source (GPtrArray *lines, const WmBenchPlan *plan, const char *name,
            const char *const *sources, const char *note)
{
  g_autofree char *words = wm_trade_describe_sources (plan->trade, sources, note);

  add_note (lines, g_strdup_printf ("%s: %s.", wm_trade_text (name), words));
}

GPtrArray *
wm_plan_sources (const WmBenchPlan *plan)
{
  GPtrArray *lines = g_ptr_array_new_with_free_func (g_free);

  add_source (lines, plan, plan->metal->name, plan->metal->sources,
              plan->metal->source_note);
  for (guint i = 0; i < plan->steps->len; i++)
    {
      const WmPlanStep *step = plan->steps->pdata[i];

      if (step->solder != NULL)
        add_source (lines, plan, step->solder->name, step->solder->sources,
                    step->solder->source_note);
    }
  for (guint i = 0; i < plan->groups->len; i++)
    {
      WmStoneGroup *group = plan->groups->pdata[i];
      const WmStone *row = group->species != NULL
                               ? wm_trade_find_stone (plan->trade, group->species)
                               : NULL;

      if (row != NULL)
        add_source (lines, plan, row->name, row->sources, row->source_note);
    }
  g_ptr_array_add (
      lines,
      g_strdup_printf (
          _ ("Working heat: %.0f K over the flow point; margins that warn: %.0f K to "
             "the metal, %.0f K to a joint: common practice, no source. A laser's "
             "heat within %.0f mm: common practice, no source."),
          WM_HEAT_SUPERHEAT_K, WM_HEAT_METAL_WARN_K, WM_HEAT_JOINT_WARN_K,
          WM_LASER_NEAR_MM));
  g_ptr_array_add (lines, g_strdup (_ ("Guide values: the supplier's data sheet comes "
                                       "first.")));
  return lines;
}

char *
wm_plan_describe (const WmBenchPlan *plan)
{
  GString *text = g_string_new (_ ("Heat plan on a temperature rule"));

  for (guint i = 0; i < plan->steps->len; i++)
    {
      const WmPlanStep *step = plan->steps->pdata[i];
      g_autofree char *title = wm_plan_step_title (step);
      g_autofree char *how = wm_plan_step_how (step);
      g_autofree char *heat = wm_plan_step_heat (step);

      g_string_append_printf (text, ". %d. %s, %s%s%s", step->number, title, how,
                              *heat != '\0' ? ", " : "", heat);
    }
  return g_string_free (text, FALSE);
}
