/* proof-card.c: one finding after the work: how it is now, and how that was tested
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/proof/proof-card.h"

#include <adwaita.h>
#include <glib/gi18n.h>

#include "window/finding-head.h"
#include "window/form/form-field.h"
#include "window/proof/proof-line.h"
#include "window/record-box.h"
#include "window/resource.h"
#include "window/severity-choice.h"
#include "window/template.h"

struct _WmProofCard
{
  GtkWidget parent_instance;

  GtkWidget *head_button;
  WmFindingHead *head;
  WmSeverityChoice *choice;
  GtkBox *lines;
  GtkFlowBox *usual;
  WmFormField *other;

  WmSession *session;
  WmCheck *check; /* or NULL */
  guint n_proofs;
  gboolean is_open, is_chosen;
};

enum
{
  CHOSEN,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (WmProofCard, wm_proof_card, GTK_TYPE_WIDGET)

/* ---- edits ------------------------------------------------------------------------- */

static void
add_proof (WmProofCard *self, const char *test)
{
  const WmId *visit_id = wm_session_get_visit_id (self->session);
  const WmId *by = wm_session_get_by (self->session);
  g_autoptr (WmProof) proof = NULL;
  WmEdit *edit;

  if (visit_id == NULL)
    return;
  proof = wm_proof_new ();
  proof->visit_id = *visit_id;
  if (self->check != NULL)
    proof->check_id = *wm_record_get_id (WM_RECORD (self->check));
  proof->position = self->n_proofs;
  proof->passed = TRUE;
  proof->tested_at_s = g_get_real_time () / G_USEC_PER_SEC;
  if (by != NULL)
    proof->tested_by = *by;
  wm_record_set_text (WM_RECORD (proof), "test", test);
  edit = wm_session_begin (self->session, N_ ("Test after the work"));
  wm_session_put (self->session, edit, proof);
  wm_session_commit (self->session, edit);
}

static void
on_usual_clicked (GtkButton *button, WmProofCard *self)
{
  add_proof (self, g_object_get_data (G_OBJECT (button), "test"));
}

static void
on_other_entered (WmFormField *field, const char *text, WmProofCard *self)
{
  g_autofree char *test = g_strstrip (g_strdup (text));

  wm_form_field_set_text (field, "");
  if (test[0] != '\0')
    add_proof (self, test);
}

static void
on_head_clicked (GtkButton *button, WmProofCard *self)
{
  g_signal_emit (self, signals[CHOSEN], 0);
}

static void
on_severity_chosen (WmSeverityChoice *choice, int severity, WmProofCard *self)
{
  if (self->check != NULL)
    wm_session_change (self->session, N_ ("Severity after the work"), self->check,
                       "after_severity", (gint64)severity, NULL);
}

/* ---- showing -------------------------------------------------------------------------
 */

static gboolean
is_done (GPtrArray *proofs, const char *test)
{
  for (guint i = 0; i < proofs->len; i++)
    if (g_strcmp0 (((WmProof *)proofs->pdata[i])->test, test) == 0)
      return TRUE;
  return FALSE;
}

static void
add_usual (WmProofCard *self, const WmFinalTest *test)
{
  GtkWidget *button = gtk_button_new ();
  GtkWidget *content = adw_button_content_new ();
  g_autofree char *tip = g_strdup_printf ("%s\n%s", wm_trade_text (test->test),
                                          wm_trade_text (test->passes));

  adw_button_content_set_icon_name (ADW_BUTTON_CONTENT (content), "list-add-symbolic");
  adw_button_content_set_label (ADW_BUTTON_CONTENT (content),
                                wm_trade_text (test->mechanism));
  gtk_button_set_child (GTK_BUTTON (button), content);
  gtk_widget_add_css_class (button, "small-button");
  gtk_widget_set_tooltip_text (button, tip);
  g_object_set_data_full (G_OBJECT (button), "test", g_strdup (test->customer), g_free);
  g_signal_connect (button, "clicked", G_CALLBACK (on_usual_clicked), self);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  wm_trade_text (test->mechanism),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, tip, -1);
  gtk_flow_box_append (self->usual, button);
  gtk_widget_set_focusable (gtk_widget_get_parent (button), FALSE);
}

static void
show_usual (WmProofCard *self, GPtrArray *proofs, GPtrArray *tests)
{
  GtkWidget *child;
  guint n = 0;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->usual))) != NULL)
    gtk_flow_box_remove (self->usual, child);
  for (guint i = 0; i < tests->len && !wm_session_is_read_only (self->session); i++)
    {
      const WmFinalTest *test = tests->pdata[i];

      if (is_done (proofs, test->customer))
        continue;
      add_usual (self, test);
      n++;
    }
  gtk_widget_set_visible (GTK_WIDGET (self->usual), n > 0);
}

static GtkWidget *
make_line (gpointer record, gpointer user_data)
{
  return wm_proof_line_new (((WmProofCard *)user_data)->session);
}

static void
show_line (GtkWidget *child, gpointer record, gpointer user_data)
{
  wm_proof_line_show (WM_PROOF_LINE (child), record);
}

static void show_open (WmProofCard *self);

void
wm_proof_card_show (WmProofCard *self, WmSession *session, WmCheck *check,
                    GPtrArray *proofs, GPtrArray *tests)
{
  gboolean can_write = !wm_session_is_read_only (session);

  g_set_object (&self->session, session);
  g_set_object (&self->check, check);
  self->n_proofs = proofs->len;
  gtk_widget_set_visible (self->head_button, check != NULL);
  gtk_widget_set_sensitive (GTK_WIDGET (self->choice), can_write);
  if (check != NULL)
    {
      wm_finding_head_show (self->head, check, TRUE);
      gtk_accessible_update_property (
          GTK_ACCESSIBLE (self->head_button), GTK_ACCESSIBLE_PROPERTY_LABEL,
          wm_trade_text (check->fault != NULL ? check->fault : check->title), -1);
      wm_severity_choice_show (self->choice, check->after_severity,
                               wm_trade_text (check->fault));
    }
  wm_record_box_show (self->lines, proofs, make_line, show_line, self);
  show_usual (self, proofs, tests);
  show_open (self);
}

/* Closed, a finding is one line; the tests of the whole piece are always open. */
static void
show_open (WmProofCard *self)
{
  gboolean open = self->is_open || self->check == NULL;
  gboolean can_write = self->session != NULL && !wm_session_is_read_only (self->session);

  gtk_widget_set_visible (GTK_WIDGET (self->choice), open && self->check != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->lines), open);
  gtk_widget_set_visible (
      GTK_WIDGET (self->usual),
      open && gtk_widget_get_first_child (GTK_WIDGET (self->usual)) != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->other), open && can_write);
  if (self->is_chosen)
    gtk_widget_add_css_class (GTK_WIDGET (self), "open");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self), "open");
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->head_button),
                               GTK_ACCESSIBLE_STATE_EXPANDED, self->is_open, -1);
}

void
wm_proof_card_set_open (WmProofCard *self, gboolean chosen, gboolean open)
{
  self->is_chosen = chosen;
  self->is_open = chosen && open;
  show_open (self);
}

WmCheck *
wm_proof_card_get_check (WmProofCard *self)
{
  return self->check;
}

void
wm_proof_card_leave (WmProofCard *self)
{
  for (GtkWidget *line = gtk_widget_get_first_child (GTK_WIDGET (self->lines));
       line != NULL; line = gtk_widget_get_next_sibling (line))
    wm_proof_line_leave (WM_PROOF_LINE (line));
  wm_form_field_leave (self->other);
}

/* ---- overrides ------------------------------------------------------------------------
 */

static void
wm_proof_card_dispose (GObject *object)
{
  WmProofCard *self = WM_PROOF_CARD (object);

  wm_template_dispose (GTK_WIDGET (self), WM_TYPE_PROOF_CARD);
  g_clear_object (&self->check);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (wm_proof_card_parent_class)->dispose (object);
}

static void
wm_proof_card_class_init (WmProofCardClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_proof_card_dispose;

  g_type_ensure (WM_TYPE_FINDING_HEAD);
  g_type_ensure (WM_TYPE_FORM_FIELD);
  g_type_ensure (WM_TYPE_SEVERITY_CHOICE);
  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "proof-card.ui");
  gtk_widget_class_bind_template_child (widget_class, WmProofCard, head_button);
  gtk_widget_class_bind_template_child (widget_class, WmProofCard, head);
  gtk_widget_class_bind_template_child (widget_class, WmProofCard, choice);
  gtk_widget_class_bind_template_child (widget_class, WmProofCard, lines);
  gtk_widget_class_bind_template_child (widget_class, WmProofCard, usual);
  gtk_widget_class_bind_template_child (widget_class, WmProofCard, other);
  gtk_widget_class_bind_template_callback (widget_class, on_other_entered);
  gtk_widget_class_bind_template_callback (widget_class, on_head_clicked);
  signals[CHOSEN] = g_signal_new ("chosen", WM_TYPE_PROOF_CARD, G_SIGNAL_RUN_LAST, 0,
                                  NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
wm_proof_card_init (WmProofCard *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  wm_finding_head_set_brief (self->head);
  g_signal_connect (self->choice, "chosen", G_CALLBACK (on_severity_chosen), self);
}

GtkWidget *
wm_proof_card_new (void)
{
  return g_object_new (WM_TYPE_PROOF_CARD, NULL);
}
