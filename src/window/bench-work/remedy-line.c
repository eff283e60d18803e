/* remedy-line.c: one thing that is done about a finding: words, price, answer, done
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/bench-work/remedy-line.h"

#include <glib/gi18n.h>

#include "trade/trade.h"
#include "window/form/form-choice.h"
#include "window/form/form-field.h"
#include "window/labels.h"
#include "window/resource.h"
#include "window/template.h"

struct _WmRemedyLine
{
  GtkWidget parent_instance;

  GtkCheckButton *done;
  WmFormField *what;
  GtkLabel *done_label;
  GtkWidget *remove;
  WmFormField *minutes;
  WmFormField *price;
  WmFormChoice *answer;
  WmFormChoice *method;
  WmFormChoice *solder;
  WmFormField *stone_mm;
  GtkCheckButton *stones_out;

  WmSession *session;
  WmRemedy *remedy;
  gboolean filling;
};

G_DEFINE_FINAL_TYPE (WmRemedyLine, wm_remedy_line, GTK_TYPE_WIDGET)

static void
on_done_toggled (GtkCheckButton *button, WmRemedyLine *self)
{
  gboolean done = gtk_check_button_get_active (button);
  const WmId *by = wm_session_get_by (self->session);
  g_autoptr (WmRemedy) copy = NULL;

  if (self->filling)
    return;
  copy = wm_session_copy (self->session, self->remedy);
  copy->done_at_s = done ? g_get_real_time () / G_USEC_PER_SEC : WM_UNKNOWN;
  copy->done_by = done && by != NULL ? *by : WM_ID_NONE;
  wm_session_keep (self->session, done ? N_ ("Remedy done") : N_ ("Remedy not done"),
                   copy);
}

static void
on_stones_out_toggled (GtkCheckButton *button, WmRemedyLine *self)
{
  if (!self->filling)
    wm_session_change (self->session, N_ ("Stones come out first"), self->remedy,
                       "stones_out", gtk_check_button_get_active (button), NULL);
}

static void
on_remove_clicked (GtkButton *button, WmRemedyLine *self)
{
  WmEdit *edit = wm_session_begin (self->session, N_ ("Remove remedy"));

  wm_edit_remove (edit, self->remedy);
  wm_session_commit (self->session, edit);
}

static void
wm_remedy_line_dispose (GObject *object)
{
  WmRemedyLine *self = WM_REMEDY_LINE (object);

  wm_template_dispose (GTK_WIDGET (self), WM_TYPE_REMEDY_LINE);
  g_clear_object (&self->remedy);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (wm_remedy_line_parent_class)->dispose (object);
}

static void
wm_remedy_line_class_init (WmRemedyLineClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_remedy_line_dispose;

  g_type_ensure (WM_TYPE_FORM_CHOICE);
  g_type_ensure (WM_TYPE_FORM_FIELD);
  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "remedy-line.ui");
  gtk_widget_class_bind_template_child (widget_class, WmRemedyLine, done);
  gtk_widget_class_bind_template_child (widget_class, WmRemedyLine, what);
  gtk_widget_class_bind_template_child (widget_class, WmRemedyLine, done_label);
  gtk_widget_class_bind_template_child (widget_class, WmRemedyLine, remove);
  gtk_widget_class_bind_template_child (widget_class, WmRemedyLine, minutes);
  gtk_widget_class_bind_template_child (widget_class, WmRemedyLine, price);
  gtk_widget_class_bind_template_child (widget_class, WmRemedyLine, answer);
  gtk_widget_class_bind_template_child (widget_class, WmRemedyLine, method);
  gtk_widget_class_bind_template_child (widget_class, WmRemedyLine, solder);
  gtk_widget_class_bind_template_child (widget_class, WmRemedyLine, stone_mm);
  gtk_widget_class_bind_template_child (widget_class, WmRemedyLine, stones_out);
  gtk_widget_class_bind_template_callback (widget_class, on_stones_out_toggled);
  gtk_widget_class_bind_template_callback (widget_class, on_done_toggled);
  gtk_widget_class_bind_template_callback (widget_class, on_remove_clicked);
}

static void
wm_remedy_line_init (WmRemedyLine *self)
{
  static const char *const keys[] = { "agreed", "declined" };
  const char *names[] = { _ ("agreed"), _ ("declined") };

  static const char *const methods[] = { "solder", "laser", "cold" };
  const char *method_names[] = { _ ("solder"), _ ("laser"), _ ("cold") };

  gtk_widget_init_template (GTK_WIDGET (self));
  wm_form_choice_set_choices (self->answer, keys, names, G_N_ELEMENTS (keys));
  wm_form_choice_set_choices (self->method, methods, method_names,
                              G_N_ELEMENTS (methods));
}

GtkWidget *
wm_remedy_line_new (WmSession *session)
{
  WmRemedyLine *self = g_object_new (WM_TYPE_REMEDY_LINE, NULL);

  self->session = g_object_ref (session);
  return GTK_WIDGET (self);
}

/* Suggested ones first; each says what the heat of the piece says to it. */
static void
show_solders (WmRemedyLine *self, WmBenchPlan *plan)
{
  g_autoptr (GArray) picks = wm_bench_plan_list_solders (plan);
  g_autoptr (GPtrArray) keys = g_ptr_array_new ();
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < picks->len; i++)
    {
      const WmSolderPick *pick = &g_array_index (picks, WmSolderPick, i);

      g_ptr_array_add (keys, (gpointer)pick->solder->key);
      g_ptr_array_add (names,
                       g_strdup_printf ("%s · %s", wm_trade_text (pick->solder->name),
                                        pick->heat.verdict == WM_HEAT_REFUSE
                                            ? _ ("not safe here")
                                        : !pick->suits ? _ ("other colour or fineness")
                                                       : _ ("suits")));
    }
  wm_form_choice_set_choices (self->solder, (const char *const *)keys->pdata,
                              (const char *const *)names->pdata, keys->len);
}

static void
show_heat (WmRemedyLine *self, WmRemedy *remedy, WmBenchPlan *plan)
{
  WmWorkMethod method = wm_bench_plan_method (plan->trade, remedy);

  show_solders (self, plan);
  wm_form_choice_bind (self->method, self->session, remedy);
  wm_form_choice_bind (self->solder, self->session, remedy);
  wm_form_field_bind (self->stone_mm, self->session, remedy);
  self->filling = TRUE;
  gtk_check_button_set_active (self->stones_out, remedy->stones_out);
  self->filling = FALSE;
  gtk_widget_set_sensitive (GTK_WIDGET (self->stones_out),
                            !wm_session_is_read_only (self->session));
  gtk_widget_set_visible (GTK_WIDGET (self->solder), method == WM_WORK_SOLDER);
  gtk_widget_set_visible (GTK_WIDGET (self->stone_mm), method != WM_WORK_COLD);
  gtk_widget_set_visible (GTK_WIDGET (self->stones_out), method != WM_WORK_COLD);
}

void
wm_remedy_line_show (WmRemedyLine *self, WmRemedy *remedy, WmBenchPlan *plan)
{
  gboolean done = remedy->done_at_s != WM_UNKNOWN;
  gboolean can_write = !wm_session_is_read_only (self->session);
  g_autofree char *day = wm_label_short_day (remedy->done_at_s);
  /* Translators: a remedy that was carried out on a day: done 26 Nov */
  g_autofree char *text = done ? g_strdup_printf (_ ("done %s"), day) : g_strdup ("");
  g_autofree char *spoken = g_strdup_printf (_ ("Done: %s"), remedy->what);

  g_set_object (&self->remedy, remedy);
  self->filling = TRUE;
  gtk_check_button_set_active (self->done, done);
  self->filling = FALSE;
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->done), _ ("Done"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->done),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
  gtk_label_set_label (self->done_label, text);
  gtk_widget_set_sensitive (GTK_WIDGET (self->done), can_write);
  gtk_widget_set_visible (self->remove, can_write);
  wm_form_field_bind (self->what, self->session, remedy);
  wm_form_field_bind (self->minutes, self->session, remedy);
  wm_form_field_bind (self->price, self->session, remedy);
  wm_form_choice_bind (self->answer, self->session, remedy);
  show_heat (self, remedy, plan);
}

void
wm_remedy_line_leave (WmRemedyLine *self)
{
  wm_form_field_leave (self->what);
  wm_form_field_leave (self->minutes);
  wm_form_field_leave (self->price);
  wm_form_field_leave (self->stone_mm);
}
