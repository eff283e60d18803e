/* remedy-line.c: one thing that is done about a finding: words, price, answer, done
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/bench-work/remedy-line.h"

#include <glib/gi18n.h>

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
  gtk_widget_class_bind_template_callback (widget_class, on_done_toggled);
  gtk_widget_class_bind_template_callback (widget_class, on_remove_clicked);
}

static void
wm_remedy_line_init (WmRemedyLine *self)
{
  static const char *const keys[] = { "agreed", "declined" };
  const char *names[] = { _ ("agreed"), _ ("declined") };

  gtk_widget_init_template (GTK_WIDGET (self));
  wm_form_choice_set_choices (self->answer, keys, names, G_N_ELEMENTS (keys));
}

GtkWidget *
wm_remedy_line_new (WmSession *session)
{
  WmRemedyLine *self = g_object_new (WM_TYPE_REMEDY_LINE, NULL);

  self->session = g_object_ref (session);
  return GTK_WIDGET (self);
}

void
wm_remedy_line_show (WmRemedyLine *self, WmRemedy *remedy)
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
}

void
wm_remedy_line_leave (WmRemedyLine *self)
{
  wm_form_field_leave (self->what);
  wm_form_field_leave (self->minutes);
  wm_form_field_leave (self->price);
}
