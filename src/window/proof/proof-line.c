/* proof-line.c: one test after the work: what, reading, passed
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/proof/proof-line.h"

#include <glib/gi18n.h>

#include "window/form/form-field.h"
#include "window/resource.h"
#include "window/template.h"

struct _WmProofLine
{
  GtkWidget parent_instance;

  WmFormField *test;
  WmFormField *reading;
  GtkToggleButton *passed;
  GtkWidget *remove;

  WmSession *session;
  WmProof *proof;
  gboolean filling;
};

G_DEFINE_FINAL_TYPE (WmProofLine, wm_proof_line, GTK_TYPE_WIDGET)

static void
on_passed_toggled (GtkToggleButton *button, WmProofLine *self)
{
  const WmId *by = wm_session_get_by (self->session);
  g_autoptr (WmProof) copy = NULL;

  if (self->filling)
    return;
  copy = wm_session_copy (self->session, self->proof);
  copy->passed = gtk_toggle_button_get_active (button);
  copy->tested_at_s = g_get_real_time () / G_USEC_PER_SEC;
  copy->tested_by = by != NULL ? *by : WM_ID_NONE;
  wm_session_keep (self->session,
                   copy->passed ? N_ ("Test passed") : N_ ("Test not passed"), copy);
}

static void
on_remove_clicked (GtkButton *button, WmProofLine *self)
{
  WmEdit *edit = wm_session_begin (self->session, N_ ("Remove test"));

  wm_edit_remove (edit, self->proof);
  wm_session_commit (self->session, edit);
}

static void
wm_proof_line_dispose (GObject *object)
{
  WmProofLine *self = WM_PROOF_LINE (object);

  wm_template_dispose (GTK_WIDGET (self), WM_TYPE_PROOF_LINE);
  g_clear_object (&self->proof);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (wm_proof_line_parent_class)->dispose (object);
}

static void
wm_proof_line_class_init (WmProofLineClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_proof_line_dispose;

  g_type_ensure (WM_TYPE_FORM_FIELD);
  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "proof-line.ui");
  gtk_widget_class_bind_template_child (widget_class, WmProofLine, test);
  gtk_widget_class_bind_template_child (widget_class, WmProofLine, reading);
  gtk_widget_class_bind_template_child (widget_class, WmProofLine, passed);
  gtk_widget_class_bind_template_child (widget_class, WmProofLine, remove);
  gtk_widget_class_bind_template_callback (widget_class, on_passed_toggled);
  gtk_widget_class_bind_template_callback (widget_class, on_remove_clicked);
}

static void
wm_proof_line_init (WmProofLine *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
wm_proof_line_new (WmSession *session)
{
  WmProofLine *self = g_object_new (WM_TYPE_PROOF_LINE, NULL);

  self->session = g_object_ref (session);
  return GTK_WIDGET (self);
}

void
wm_proof_line_show (WmProofLine *self, WmProof *proof)
{
  gboolean can_write = !wm_session_is_read_only (self->session);
  g_autofree char *spoken = g_strdup_printf (_ ("Passed: %s"), proof->test);

  g_set_object (&self->proof, proof);
  self->filling = TRUE;
  gtk_toggle_button_set_active (self->passed, proof->passed);
  self->filling = FALSE;
  gtk_button_set_label (GTK_BUTTON (self->passed),
                        proof->passed ? _ ("passed") : _ ("not passed"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->passed),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
  gtk_widget_set_sensitive (GTK_WIDGET (self->passed), can_write);
  gtk_widget_set_visible (self->remove, can_write);
  wm_form_field_bind (self->test, self->session, proof);
  wm_form_field_bind (self->reading, self->session, proof);
}

void
wm_proof_line_leave (WmProofLine *self)
{
  wm_form_field_leave (self->test);
  wm_form_field_leave (self->reading);
}
