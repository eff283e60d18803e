/* plan-pane.c: the heat plan: rule, margins in words, what to look out for
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/bench-work/plan-pane.h"

#include <glib/gi18n.h>

#include "window/bench-work/heat-rule.h"
#include "window/bench-work/plan-words.h"
#include "window/form/form-choice.h"
#include "window/form/form-field.h"
#include "window/resource.h"

struct _WmPlanPane
{
  AdwBin parent_instance;

  GtkLabel *what_is_missing;
  WmFormField *metal;
  WmFormChoice *joints;
  GtkLabel *banner;
  GtkWidget *plan_part;
  WmHeatRule *rule;
  GtkGrid *margins;
  GtkBox *notes;
  GtkBox *cautions;
  GtkBox *sources;

  WmSession *session;
  WmBenchPlan *plan;
};

G_DEFINE_FINAL_TYPE (WmPlanPane, wm_plan_pane, ADW_TYPE_BIN)

/* ---- old joints -------------------------------------------------------------------- */

/* A solder is added to those already entered; the words stand alone. */
static gboolean
on_joints_chosen (WmFormChoice *choice, const char *key, WmPlanPane *self)
{
  WmPiece *piece = wm_session_get_piece (self->session);
  const char *entered = piece != NULL ? piece->old_joints : NULL;
  g_autofree char *both = NULL;

  if (piece == NULL || key == NULL || entered == NULL
      || wm_trade_find_solder (wm_session_get_trade (self->session), key) == NULL
      || g_str_equal (entered, WM_OLD_JOINTS_NONE)
      || g_str_equal (entered, WM_OLD_JOINTS_UNKNOWN)
      || g_str_equal (entered, WM_OLD_JOINTS_SOFT))
    return FALSE;

  both = g_strdup_printf ("%s %s", entered, key);
  wm_session_change (self->session, N_ ("Old joints"), piece, "old_joints", both, NULL);
  return TRUE;
}

static void
show_joints (WmPlanPane *self)
{
  g_autoptr (GArray) picks = wm_bench_plan_list_solders (self->plan);
  g_autoptr (GPtrArray) keys = g_ptr_array_new ();
  g_autoptr (GPtrArray) names = g_ptr_array_new ();

  g_ptr_array_add (keys, (gpointer)WM_OLD_JOINTS_UNKNOWN);
  g_ptr_array_add (names, (gpointer)_ ("not known: taken for the weakest"));
  g_ptr_array_add (keys, (gpointer)WM_OLD_JOINTS_NONE);
  g_ptr_array_add (names, (gpointer)_ ("none: no soldered joint"));
  g_ptr_array_add (keys, (gpointer)WM_OLD_JOINTS_SOFT);
  g_ptr_array_add (names, (gpointer)_ ("soft solder suspected: grey seam"));
  for (guint i = 0; i < picks->len; i++)
    {
      const WmSolder *solder = g_array_index (picks, WmSolderPick, i).solder;

      g_ptr_array_add (keys, (gpointer)solder->key);
      g_ptr_array_add (names, (gpointer)wm_trade_text (solder->name));
    }
  wm_form_choice_set_choices (self->joints, (const char *const *)keys->pdata,
                              (const char *const *)names->pdata, keys->len);
  wm_form_choice_bind (self->joints, self->session, self->plan->piece);
}

/* ---- showing ----------------------------------------------------------------------- */

static void
clear_box (GtkBox *box)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (box))) != NULL)
    gtk_box_remove (box, child);
}

static GtkWidget *
make_text (const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  return label;
}

static void
fill_box (GtkBox *box, GPtrArray *lines, const char *css_class)
{
  clear_box (box);
  for (guint i = 0; i < lines->len; i++)
    gtk_box_append (box, make_text (lines->pdata[i], css_class));
  gtk_widget_set_visible (gtk_widget_get_parent (GTK_WIDGET (box)), lines->len > 0);
}

static void
attach_cell (WmPlanPane *self, int column, int row, const char *text, gboolean bad)
{
  GtkWidget *label = make_text (text, bad ? "caution-cell" : "margin-cell");

  gtk_widget_set_hexpand (label, TRUE);
  gtk_label_set_width_chars (GTK_LABEL (label), 14);
  gtk_grid_attach (self->margins, label, column, row, 1, 1);
}

static void
show_margins (WmPlanPane *self)
{
  const char *heads[] = { _ ("Step"), _ ("to the metal"), _ ("to the nearest joint"),
                          _ ("to the nearest stone") };
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->margins))) != NULL)
    gtk_grid_remove (self->margins, child);
  for (int i = 0; i < (int)G_N_ELEMENTS (heads); i++)
    gtk_grid_attach (self->margins, make_text (heads[i], "group-label"), i, 0, 1, 1);
  for (guint i = 0; i < self->plan->steps->len; i++)
    {
      const WmPlanStep *step = self->plan->steps->pdata[i];
      g_autofree char *title = wm_plan_step_title (step);
      g_autofree char *head = g_strdup_printf ("%d  %s", step->number, title);
      gboolean metal_bad, joint_bad, stone_bad;
      g_autofree char *metal = wm_plan_metal_margin (step, &metal_bad);
      g_autofree char *joint = wm_plan_joint_margin (self->plan, step, &joint_bad);
      g_autofree char *stone = wm_plan_stone_margin (step, &stone_bad);

      attach_cell (self, 0, (int)i + 1, head, FALSE);
      attach_cell (self, 1, (int)i + 1, metal, metal_bad);
      attach_cell (self, 2, (int)i + 1, joint, joint_bad);
      attach_cell (self, 3, (int)i + 1, stone, stone_bad);
    }
}

static void
show_banner (WmPlanPane *self)
{
  g_autofree char *why = wm_plan_refusal (self->plan);
  g_autofree char *text =
      why != NULL ? g_strdup_printf (
          _ ("This plan can not be made safe as it is, because:\n%s"), why)
                  : NULL;

  gtk_label_set_label (self->banner, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->banner), text != NULL);
}

static void
show_missing (WmPlanPane *self)
{
  static const char *const texts[] = {
    [WM_PLAN_READY] = "",
    [WM_PLAN_NO_METAL] = N_ ("The metal of this piece is not entered. Without it nothing "
                             "can be said about heat. Enter it here:"),
    [WM_PLAN_METAL_FOREIGN] =
        N_ ("The tables have no solder for this metal: no torch is planned. If it is one "
            "of the table's metals, choose it here:"),
  };
  gboolean ready = self->plan->state == WM_PLAN_READY;

  gtk_label_set_label (self->what_is_missing, ready ? "" : _ (texts[self->plan->state]));
  gtk_widget_set_visible (GTK_WIDGET (self->what_is_missing), !ready);
  wm_form_field_bind (self->metal, self->session, self->plan->piece);
}

void
wm_plan_pane_show (WmPlanPane *self, WmSession *session, WmBenchPlan *plan)
{
  gboolean has_plan = plan->state == WM_PLAN_READY && plan->steps->len > 0;

  g_set_object (&self->session, session);
  wm_heat_rule_show (self->rule, NULL);
  g_clear_pointer (&self->plan, wm_bench_plan_free);
  self->plan = plan;
  show_missing (self);
  show_joints (self);
  show_banner (self);
  gtk_widget_set_visible (self->plan_part, has_plan);
  if (plan->state == WM_PLAN_READY && plan->steps->len == 0)
    {
      gtk_label_set_label (self->what_is_missing,
                           _ ("No remedy chosen. Pick one for each finding."));
      gtk_widget_set_visible (GTK_WIDGET (self->what_is_missing), TRUE);
    }
  if (!has_plan)
    return;

  {
    g_autoptr (GPtrArray) notes = wm_plan_notes (plan);
    g_autoptr (GPtrArray) cautions = wm_plan_cautions (plan);
    g_autoptr (GPtrArray) sources = wm_plan_sources (plan);

    wm_heat_rule_show (self->rule, plan);
    show_margins (self);
    fill_box (self->notes, notes, NULL);
    fill_box (self->cautions, cautions, "caution-text");
    fill_box (self->sources, sources, "second-line");
  }
}

void
wm_plan_pane_leave (WmPlanPane *self)
{
  wm_form_field_leave (self->metal);
}

/* ---- overrides --------------------------------------------------------------------- */

static void
wm_plan_pane_dispose (GObject *object)
{
  WmPlanPane *self = WM_PLAN_PANE (object);

  if (self->rule != NULL)
    wm_heat_rule_show (self->rule, NULL);
  adw_bin_set_child (ADW_BIN (self), NULL);
  gtk_widget_dispose_template (GTK_WIDGET (self), WM_TYPE_PLAN_PANE);
  g_clear_pointer (&self->plan, wm_bench_plan_free);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (wm_plan_pane_parent_class)->dispose (object);
}

static void
wm_plan_pane_class_init (WmPlanPaneClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_plan_pane_dispose;

  g_type_ensure (WM_TYPE_FORM_FIELD);
  g_type_ensure (WM_TYPE_FORM_CHOICE);
  g_type_ensure (WM_TYPE_HEAT_RULE);
  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "plan-pane.ui");
  gtk_widget_class_bind_template_child (widget_class, WmPlanPane, what_is_missing);
  gtk_widget_class_bind_template_child (widget_class, WmPlanPane, metal);
  gtk_widget_class_bind_template_child (widget_class, WmPlanPane, joints);
  gtk_widget_class_bind_template_child (widget_class, WmPlanPane, banner);
  gtk_widget_class_bind_template_child (widget_class, WmPlanPane, plan_part);
  gtk_widget_class_bind_template_child (widget_class, WmPlanPane, rule);
  gtk_widget_class_bind_template_child (widget_class, WmPlanPane, margins);
  gtk_widget_class_bind_template_child (widget_class, WmPlanPane, notes);
  gtk_widget_class_bind_template_child (widget_class, WmPlanPane, cautions);
  gtk_widget_class_bind_template_child (widget_class, WmPlanPane, sources);
  gtk_widget_class_bind_template_callback (widget_class, on_joints_chosen);
}

static void
wm_plan_pane_init (WmPlanPane *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
