/* heat-steps.c: the heat plan of a visit: its remedies as steps, hottest first
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "report/heat-steps.h"

#include <glib/gi18n.h>
#include <math.h>

#include "trade/solder-fit.h"

static void
wm_heat_line_free (WmHeatLine *line)
{
  g_free (line->advice);
  g_free (line);
}

void
wm_heat_plan_free (WmHeatPlan *self)
{
  g_ptr_array_unref (self->steps);
  g_array_unref (self->joints);
  g_ptr_array_unref (self->joint_solders);
  g_array_unref (self->stones);
  g_ptr_array_unref (self->stone_rows);
  g_free (self);
}

/* ---- records to inputs -------------------------------------------------------------- */

const char *
wm_heat_how_key (WmHeatHow how)
{
  static const char *const keys[] = { "solder", "laser", "cold", NULL };

  return keys[how];
}

WmHeatHow
wm_heat_how (WmTrade *trade, const WmRemedy *remedy)
{
  for (WmHeatHow how = WM_HEAT_HOW_SOLDER; how < WM_HEAT_HOW_NOT_SAID; how++)
    if (g_strcmp0 (remedy->method, wm_heat_how_key (how)) == 0)
      return how;

  for (const WmRemedyRow *const *row = wm_trade_list_remedies (trade, NULL); *row; row++)
    if (g_strcmp0 ((*row)->name, remedy->what) == 0)
      return (*row)->heat == WM_REMEDY_HEAT ? WM_HEAT_HOW_NOT_SAID : WM_HEAT_HOW_COLD;

  return WM_HEAT_HOW_NOT_SAID;
}

const WmMetal *
wm_heat_metal_of (WmTrade *trade, WmPiece *piece)
{
  return piece->metal != NULL ? wm_trade_find_metal (trade, piece->metal) : NULL;
}

static void
add_joint (WmHeatPlan *self, WmOldJointKind kind, double solidus_c)
{
  const WmOldJoint joint = { kind, solidus_c };

  if (self->joints->len < WM_HEAT_MAX)
    g_array_append_val (self->joints, joint);
}

/* A word that is no solder of the tables is a joint that nobody knows. */
static void
read_joints (WmHeatPlan *self)
{
  const char *words = self->data->piece->old_joints;
  g_auto (GStrv) keys = NULL;

  if (g_strcmp0 (words, "none") == 0)
    return;
  keys = g_strsplit (words != NULL ? words : "unknown", " ", -1);
  for (guint i = 0; keys[i] != NULL; i++)
    {
      const WmSolder *solder = wm_trade_find_solder (self->data->trade, keys[i]);

      if (keys[i][0] == '\0')
        continue;
      if (solder != NULL)
        g_ptr_array_add (self->joint_solders, (gpointer)solder);
      if (solder == NULL || isnan (solder->solidus_c.low))
        {
          self->joints_unknown = TRUE;
          add_joint (self, WM_OLD_JOINT_UNKNOWN, NAN);
        }
      else
        add_joint (self, WM_OLD_JOINT_KNOWN, solder->solidus_c.low);
    }
}

static void
read_stones (WmHeatPlan *self)
{
  WmTrade *trade = self->data->trade;

  for (guint i = 0; i < self->data->stones->len && i < WM_HEAT_MAX; i++)
    {
      WmStoneGroup *group = self->data->stones->pdata[i];
      const WmStone *row =
          group->species != NULL ? wm_trade_find_stone (trade, group->species) : NULL;
      gboolean can_come_out = row == NULL || !g_str_equal (row->key, "enamel");
      WmHeatStone stone;

      wm_trade_heat_stone (trade, row, can_come_out, FALSE, &stone);
      g_array_append_val (self->stones, stone);
      g_ptr_array_add (self->stone_rows, (gpointer)row);
    }
}

/* The worst of the metal's solders: flows hottest, its joint gives way first. */
static WmHeatSolder
worst_solder (WmTrade *trade, const WmMetal *metal)
{
  g_autoptr (GPtrArray) solders = wm_trade_list_solders_for (trade, metal->family);
  WmHeatSolder worst = { NAN, NAN };

  for (guint i = 0; i < solders->len; i++)
    {
      WmHeatSolder heat;

      wm_trade_heat_solder (solders->pdata[i], &heat);
      worst.solidus_c = fmin (worst.solidus_c, heat.solidus_c);
      worst.flow_c = fmax (worst.flow_c, heat.flow_c);
    }
  return worst;
}

static void
add_step (WmHeatPlan *self, WmCheck *check, WmRemedy *remedy)
{
  WmTrade *trade = self->data->trade;
  WmHeatLine *line = g_new0 (WmHeatLine, 1);

  line->remedy = remedy;
  line->check = check;
  line->how = wm_heat_how (trade, remedy);
  line->margin_made_k = NAN;
  line->made_step = -1;
  if (line->how == WM_HEAT_HOW_SOLDER && remedy->solder != NULL)
    line->solder = wm_trade_find_solder (trade, remedy->solder);
  line->is_guessed = line->how == WM_HEAT_HOW_NOT_SAID
                     || (line->how == WM_HEAT_HOW_SOLDER && line->solder == NULL);
  if (line->solder != NULL)
    wm_trade_heat_solder (line->solder, &line->heat);
  else if (line->is_guessed && self->metal != NULL)
    line->heat = worst_solder (trade, self->metal);
  g_ptr_array_add (self->steps, line);
}

static void
read_steps (WmHeatPlan *self)
{
  for (guint i = 0; i < self->data->findings->len; i++)
    {
      const WmFinding *finding = self->data->findings->pdata[i];

      for (guint r = 0; r < finding->remedies->len; r++)
        {
          WmRemedy *remedy = finding->remedies->pdata[r];

          if (g_strcmp0 (remedy->answer, "declined") != 0)
            add_step (self, finding->check, remedy);
        }
    }
}

/* ---- order --------------------------------------------------------------------------- */

static gboolean
is_hot (const WmHeatLine *line)
{
  return line->how == WM_HEAT_HOW_SOLDER || line->how == WM_HEAT_HOW_NOT_SAID;
}

static int
place_of (const WmHeatLine *line)
{
  return is_hot (line) ? 0 : line->how == WM_HEAT_HOW_LASER ? 1 : 2;
}

/* The order of wm_heat_order () for the hot ones, which a test compares; equals stay in
 * the order of the findings. */
static int
compare_steps (gconstpointer a, gconstpointer b)
{
  const WmHeatLine *x = *(WmHeatLine *const *)a, *y = *(WmHeatLine *const *)b;

  if (place_of (x) != place_of (y))
    return place_of (x) - place_of (y);
  if (is_hot (x) && x->heat.flow_c != y->heat.flow_c)
    return x->heat.flow_c > y->heat.flow_c ? -1 : 1;
  return 0;
}

static void
sort_steps (WmHeatPlan *self)
{
  /* GLib's sort of pointer arrays does not say that it is stable. */
  for (guint i = 1; i < self->steps->len; i++)
    for (guint k = i; k > 0
                      && compare_steps (&self->steps->pdata[k - 1],
                                        &self->steps->pdata[k])
                             > 0;
         k--)
      {
        gpointer swap = self->steps->pdata[k];

        self->steps->pdata[k] = self->steps->pdata[k - 1];
        self->steps->pdata[k - 1] = swap;
      }
}

/* ---- judging ------------------------------------------------------------------------- */

static const WmHeatStone *
take_stones (WmHeatPlan *self, gboolean stones_out)
{
  for (guint i = 0; i < self->stones->len; i++)
    {
      WmHeatStone *stone = &g_array_index (self->stones, WmHeatStone, i);

      stone->is_out = stones_out && stone->can_come_out;
    }
  return (const WmHeatStone *)self->stones->data;
}

static WmHeatPiece
make_piece (WmHeatPlan *self, gboolean stones_out)
{
  return (WmHeatPiece) {
    .metal = &self->heat_metal,
    .superheat_k = WM_HEAT_SUPERHEAT_K,
    .joints = (const WmOldJoint *)self->joints->data,
    .n_joints = (int)self->joints->len,
    .stones = take_stones (self, stones_out),
    .n_stones = (int)self->stones->len,
  };
}

/* The most serious reason of a judged step, in words of reckon. */
static const char *
name_reason (unsigned reasons)
{
  static const WmHeatReason worst_first[] = {
    WM_HEAT_SOFT_SOLDER,   WM_HEAT_STONE_FORBIDS, WM_HEAT_METAL_MELTS,
    WM_HEAT_JOINT_REMELTS, WM_HEAT_STONES_OUT,    WM_HEAT_METAL_CLOSE,
    WM_HEAT_JOINT_CLOSE,   WM_HEAT_STONES_GUARDED, WM_HEAT_JOINT_GUESSED,
  };

  for (guint i = 0; i < G_N_ELEMENTS (worst_first); i++)
    if (reasons & worst_first[i])
      for (int bit = 0; bit < WM_N_HEAT_REASONS; bit++)
        if (worst_first[i] == (WmHeatReason)(1 << bit))
          return wm_heat_reason_text (bit);
  return NULL;
}

static void
judge_hot (WmHeatPlan *self, WmHeatLine *line)
{
  const WmHeatPiece piece = make_piece (self, line->remedy->stones_out);

  line->advice = g_new0 (WmStoneAdvice, self->stones->len + 1);
  if (wm_heat_judge (&piece, &line->heat, &line->judged, line->advice, NULL) != WM_OK)
    {
      line->verdict = WM_HEAT_REFUSE;
      line->reason = N_ ("the table has no usable temperature for this solder");
      return;
    }

  line->verdict = line->judged.verdict;
  line->reason = name_reason (line->judged.reasons);
  /* A stone that must come out and does not is as good as one that can not. */
  if (line->verdict < WM_HEAT_REFUSE && (line->judged.reasons & WM_HEAT_STONES_OUT))
    {
      line->verdict = WM_HEAT_REFUSE;
      line->reason = N_ ("a stone that must come out before any heat stays in");
    }
}

/* The spot only: metal and old joints are not in question, stones close by are. */
static void
judge_laser (WmHeatPlan *self, WmHeatLine *line)
{
  double mm = line->remedy->stone_mm;
  gboolean is_near = isnan (mm) || mm < WM_HEAT_LASER_REACH_MM;

  line->advice = g_new0 (WmStoneAdvice, self->stones->len + 1);
  take_stones (self, line->remedy->stones_out);
  for (guint i = 0; i < self->stones->len; i++)
    {
      const WmHeatStone *stone = &g_array_index (self->stones, WmHeatStone, i);
      gboolean is_shy =
          stone->heat == WM_HEAT_STONE_NEVER || stone->heat == WM_HEAT_STONE_UNKNOWN;

      line->advice[i] = stone->is_out ? WM_STONE_ADVICE_OUT
                        : !is_near    ? WM_STONE_ADVICE_STAYS
                        : !is_shy     ? WM_STONE_ADVICE_SHIELD
                        : stone->can_come_out ? WM_STONE_ADVICE_OUT
                                              : WM_STONE_ADVICE_NO_HEAT;
      if (stone->is_out)
        continue;
      if (is_shy && is_near)
        {
          line->verdict = WM_HEAT_REFUSE;
          line->reason = N_ ("a stone that stands no heat is close to the spot, or nobody "
                             "has said how far");
        }
      else if ((is_shy || is_near) && line->verdict < WM_HEAT_WARN)
        {
          line->verdict = WM_HEAT_WARN;
          line->reason = N_ ("a stone is near the spot: low power, shield it");
        }
    }
}

/* The joints made by earlier steps hold, or the step is refused like an old joint. */
static void
judge_made (WmHeatPlan *self)
{
  double weakest_c = NAN;
  int weakest = -1;

  for (guint i = 0; i < self->steps->len; i++)
    {
      WmHeatLine *line = self->steps->pdata[i];
      double solidus_c;

      if (!is_hot (line))
        continue;
      line->margin_made_k = weakest_c - line->judged.working_c;
      line->made_step = weakest;
      if (line->margin_made_k < 0)
        {
          if (line->verdict < WM_HEAT_REFUSE)
            line->reason = N_ ("a joint made before it would melt again: solder both in "
                               "one heat, take a lower solder, or use laser");
          line->verdict = WM_HEAT_REFUSE;
        }
      else if (line->margin_made_k < WM_HEAT_JOINT_WARN_K
               && line->verdict < WM_HEAT_WARN)
        {
          line->verdict = WM_HEAT_WARN;
          line->reason = N_ ("a joint made before it is close to melting again: shield "
                             "it");
        }

      /* As in wm_heat_order (): the widest range in the tables, 100 K. */
      solidus_c = isnan (line->heat.solidus_c) ? line->heat.flow_c - 100.0
                                               : line->heat.solidus_c;
      if (isnan (weakest_c) || solidus_c < weakest_c)
        {
          weakest_c = solidus_c;
          weakest = (int)i;
        }
    }
}

static WmHeatPlanState
sum_up (WmHeatPlan *self)
{
  gboolean refused = FALSE, open = FALSE, care = FALSE, warm = FALSE;

  for (guint i = 0; i < self->steps->len; i++)
    {
      WmHeatLine *line = self->steps->pdata[i];

      warm |= line->how != WM_HEAT_HOW_COLD;
      open |= line->is_guessed;
      refused |= !line->is_guessed && line->verdict == WM_HEAT_REFUSE;
      care |= line->verdict == WM_HEAT_WARN;
    }

  if (refused)
    return WM_HEAT_PLAN_REFUSED;
  if (open)
    return WM_HEAT_PLAN_OPEN;
  if (!warm)
    return WM_HEAT_PLAN_COLD;
  return care ? WM_HEAT_PLAN_CARE : WM_HEAT_PLAN_SAFE;
}

static gboolean
needs_metal (WmHeatPlan *self)
{
  for (guint i = 0; i < self->steps->len; i++)
    if (is_hot (self->steps->pdata[i]))
      return TRUE;
  return FALSE;
}

WmHeatPlan *
wm_heat_plan_new (WmVisitData *data)
{
  WmHeatPlan *self = g_new0 (WmHeatPlan, 1);

  self->data = data;
  self->steps = g_ptr_array_new_with_free_func ((GDestroyNotify)wm_heat_line_free);
  self->joints = g_array_new (FALSE, FALSE, sizeof (WmOldJoint));
  self->joint_solders = g_ptr_array_new ();
  self->stones = g_array_new (FALSE, FALSE, sizeof (WmHeatStone));
  self->stone_rows = g_ptr_array_new ();
  self->metal = wm_heat_metal_of (data->trade, data->piece);
  if (self->metal != NULL
      && !wm_trade_heat_metal (data->trade, self->metal, &self->heat_metal))
    self->metal = NULL;
  read_joints (self);
  read_stones (self);
  read_steps (self);
  sort_steps (self);

  if (self->steps->len == 0)
    return self;
  for (guint i = 0; i < self->steps->len; i++)
    {
      WmHeatLine *line = self->steps->pdata[i];

      if (is_hot (line) && self->metal != NULL)
        judge_hot (self, line);
      else if (line->how == WM_HEAT_HOW_LASER)
        judge_laser (self, line);
    }
  if (self->metal == NULL && needs_metal (self))
    {
      self->state = WM_HEAT_PLAN_NO_METAL;
      return self;
    }
  judge_made (self);
  self->state = sum_up (self);
  return self;
}

/* ---- which solder --------------------------------------------------------------------- */

/* Smaller is better. */
static double
rank_solder (WmHeatPlan *self, const WmSolder *solder, WmHeatVerdict verdict)
{
  WmPiece *piece = self->data->piece;
  double fineness = piece->fineness == WM_UNKNOWN ? NAN : (double)piece->fineness;
  const char *colour = wm_trade_metal_colour (self->metal);
  double rank = -solder->flow_c.high;

  if (colour != NULL && g_strcmp0 (colour, solder->colour) != 0)
    rank += 1e4;
  if (wm_trade_solder_is_too_low (solder, self->metal, fineness))
    rank += 1e5;
  if (verdict == WM_HEAT_REFUSE)
    rank += 1e6;
  return rank;
}

GPtrArray *
wm_heat_rank_solders (WmHeatPlan *self, gboolean stones_out, GArray **verdicts)
{
  GPtrArray *solders =
      self->metal == NULL
          ? g_ptr_array_new ()
          : wm_trade_list_solders_for (self->data->trade, self->metal->family);
  g_autoptr (GArray) ranks = g_array_new (FALSE, FALSE, sizeof (double));
  GArray *found = g_array_new (FALSE, FALSE, sizeof (WmHeatVerdict));
  const WmHeatPiece piece = make_piece (self, stones_out);

  for (guint i = 0; i < solders->len; i++)
    {
      gpointer row = solders->pdata[i];
      WmHeatSolder heat;
      WmHeatStep step;
      WmHeatVerdict verdict = WM_HEAT_REFUSE;
      double rank;
      guint place = i;

      wm_trade_heat_solder (row, &heat);
      if (wm_heat_judge (&piece, &heat, &step, NULL, NULL) == WM_OK)
        verdict = step.verdict;
      rank = rank_solder (self, row, verdict);
      while (place > 0 && g_array_index (ranks, double, place - 1) > rank)
        {
          solders->pdata[place] = solders->pdata[place - 1];
          place--;
        }
      solders->pdata[place] = row;
      g_array_insert_val (ranks, place, rank);
      g_array_insert_val (found, place, verdict);
    }

  if (verdicts != NULL)
    *verdicts = found;
  else
    g_array_unref (found);
  return solders;
}

/* ---- straight or angled --------------------------------------------------------------- */

gboolean
wm_heat_angled_joint (const WmMetal *metal, WmJointStrength *out_straight,
                      WmJointStrength *out_angled)
{
  /* Any strength does: only the ratio is read. */
  WmJoint joint = {
    .angle_deg = wm_exact (90.0),
    .area_mm2 = wm_exact (1.0),
    .gap_mm = wm_exact (WM_HEAT_ANGLED_GAP_MM),
    .across_mpa = wm_exact (100.0),
    .along_mpa = wm_exact (100.0 / sqrt (3.0)),
    .yield_mpa = wm_exact (0.0),
    .solder_g_cm3 = wm_exact (metal->density.low),
    .fillet = wm_exact (WM_JOINT_FILLET),
  };

  if (isnan (metal->density.low) || wm_joint (&joint, out_straight, NULL) != WM_OK)
    return FALSE;
  joint.angle_deg = wm_exact (WM_HEAT_ANGLED_DEG);
  return wm_joint (&joint, out_angled, NULL) == WM_OK;
}
