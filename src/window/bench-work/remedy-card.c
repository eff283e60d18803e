/* remedy-card.c: one finding with what is done about it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/bench-work/remedy-card.h"

#include <adwaita.h>
#include <glib/gi18n.h>

#include "window/bench-work/remedy-line.h"
#include "window/finding-head.h"
#include "window/form/form-field.h"
#include "window/record-box.h"
#include "window/resource.h"
#include "window/template.h"

struct _WmRemedyCard
{
  GtkWidget parent_instance;

  WmFindingHead *head;
  GtkBox *lines;
  GtkWidget *empty;
  GtkFlowBox *usual;
  WmFormField *other;
  GtkBox *cautions;

  WmSession *session;
  WmCheck *check;
  guint n_remedies;
  WmBenchPlan *plan; /* during a showing only */
};

G_DEFINE_FINAL_TYPE (WmRemedyCard, wm_remedy_card, GTK_TYPE_WIDGET)

/* ---- edits ------------------------------------------------------------------------- */

static void
add_remedy (WmRemedyCard *self, const char *what)
{
  g_autoptr (WmRemedy) remedy = wm_remedy_new ();
  WmEdit *edit = wm_session_begin (self->session, N_ ("Choose remedy"));

  remedy->check_id = *wm_record_get_id (WM_RECORD (self->check));
  remedy->position = self->n_remedies;
  wm_record_set_text (WM_RECORD (remedy), "what", what);
  wm_session_put (self->session, edit, remedy);
  wm_session_commit (self->session, edit);
}

static void
on_usual_clicked (GtkButton *button, WmRemedyCard *self)
{
  add_remedy (self, g_object_get_data (G_OBJECT (button), "what"));
}

static void
on_other_entered (WmFormField *field, const char *text, WmRemedyCard *self)
{
  g_autofree char *what = g_strstrip (g_strdup (text));

  wm_form_field_set_text (field, "");
  if (what[0] != '\0')
    add_remedy (self, what);
}

/* ---- showing -------------------------------------------------------------------------
 */

static gboolean
is_chosen (const WmFinding *finding, const char *what)
{
  for (guint i = 0; i < finding->remedies->len; i++)
    if (g_strcmp0 (((WmRemedy *)finding->remedies->pdata[i])->what, what) == 0)
      return TRUE;
  return FALSE;
}

static void
add_usual (WmRemedyCard *self, const char *what)
{
  GtkWidget *button = gtk_button_new ();
  GtkWidget *content = adw_button_content_new ();

  adw_button_content_set_icon_name (ADW_BUTTON_CONTENT (content), "list-add-symbolic");
  adw_button_content_set_label (ADW_BUTTON_CONTENT (content), wm_trade_text (what));
  gtk_button_set_child (GTK_BUTTON (button), content);
  gtk_widget_add_css_class (button, "small-button");
  g_object_set_data_full (G_OBJECT (button), "what", g_strdup (what), g_free);
  g_signal_connect (button, "clicked", G_CALLBACK (on_usual_clicked), self);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  wm_trade_text (what), -1);
  gtk_flow_box_append (self->usual, button);
  gtk_widget_set_focusable (gtk_widget_get_parent (button), FALSE);
}

static void
show_usual (WmRemedyCard *self, const WmFinding *finding)
{
  g_auto (GStrv) lines = NULL;
  GtkWidget *child;
  guint n = 0;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->usual))) != NULL)
    gtk_flow_box_remove (self->usual, child);
  if (finding->check->remedies != NULL && !wm_session_is_read_only (self->session))
    lines = g_strsplit (finding->check->remedies, "\n", -1);
  for (guint i = 0; lines != NULL && lines[i] != NULL; i++)
    if (!is_chosen (finding, lines[i]))
      {
        add_usual (self, lines[i]);
        n++;
      }
  gtk_widget_set_visible (GTK_WIDGET (self->usual), n > 0);
}

static const WmRemedyRow *
find_row (WmTrade *trade, const char *name)
{
  for (const WmRemedyRow *const *row = wm_trade_list_remedies (trade, NULL); *row; row++)
    if (g_strcmp0 ((*row)->name, name) == 0)
      return *row;
  return NULL;
}

static void
add_caution (WmRemedyCard *self, const WmCaution *caution)
{
  g_autofree char *text = g_strdup_printf ("%s: %s.", wm_trade_text (caution->name),
                                           wm_trade_text (caution->caution));
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, "caution-text");
  gtk_box_append (self->cautions, label);
}

/* Of every remedy that is chosen, each once; what counts is on the safety data sheet. */
static void
show_cautions (WmRemedyCard *self, const WmFinding *finding)
{
  WmTrade *trade = wm_session_get_trade (self->session);
  g_autoptr (GHashTable) told = g_hash_table_new (g_str_hash, g_str_equal);
  GtkWidget *child, *last;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->cautions))) != NULL)
    gtk_box_remove (self->cautions, child);
  for (guint i = 0; trade != NULL && i < finding->remedies->len; i++)
    {
      const WmRemedyRow *row =
          find_row (trade, ((WmRemedy *)finding->remedies->pdata[i])->what);

      for (guint c = 0; row != NULL && row->cautions[c] != NULL; c++)
        {
          const WmCaution *caution = wm_trade_find_caution (trade, row->cautions[c]);

          if (caution != NULL && g_hash_table_add (told, (char *)caution->key))
            add_caution (self, caution);
        }
    }

  gtk_widget_set_visible (GTK_WIDGET (self->cautions), g_hash_table_size (told) > 0);
  if (g_hash_table_size (told) == 0)
    return;
  last = gtk_label_new (_ ("The safety data sheet, local rules and licensed practice come"
                           " first."));
  gtk_label_set_wrap (GTK_LABEL (last), TRUE);
  gtk_label_set_xalign (GTK_LABEL (last), 0);
  gtk_widget_add_css_class (last, "caution-text");
  gtk_box_append (self->cautions, last);
}

static GtkWidget *
make_line (gpointer record, gpointer user_data)
{
  return wm_remedy_line_new (((WmRemedyCard *)user_data)->session);
}

static void
show_line (GtkWidget *child, gpointer record, gpointer user_data)
{
  wm_remedy_line_show (WM_REMEDY_LINE (child), record, ((WmRemedyCard *)user_data)->plan);
}

void
wm_remedy_card_show (WmRemedyCard *self, const WmFinding *finding, WmBenchPlan *plan)
{
  self->plan = plan;
  g_set_object (&self->check, finding->check);
  self->n_remedies = finding->remedies->len;
  wm_finding_head_show (self->head, finding->check, FALSE);
  wm_record_box_show (self->lines, finding->remedies, make_line, show_line, self);
  self->plan = NULL;
  gtk_widget_set_visible (self->empty, finding->remedies->len == 0);
  show_usual (self, finding);
  show_cautions (self, finding);
  gtk_widget_set_visible (GTK_WIDGET (self->other),
                          !wm_session_is_read_only (self->session));
}

void
wm_remedy_card_leave (WmRemedyCard *self)
{
  for (GtkWidget *line = gtk_widget_get_first_child (GTK_WIDGET (self->lines));
       line != NULL; line = gtk_widget_get_next_sibling (line))
    wm_remedy_line_leave (WM_REMEDY_LINE (line));
  wm_form_field_leave (self->other);
}

/* ---- overrides ------------------------------------------------------------------------
 */

static void
wm_remedy_card_dispose (GObject *object)
{
  WmRemedyCard *self = WM_REMEDY_CARD (object);

  wm_template_dispose (GTK_WIDGET (self), WM_TYPE_REMEDY_CARD);
  g_clear_object (&self->check);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (wm_remedy_card_parent_class)->dispose (object);
}

static void
wm_remedy_card_class_init (WmRemedyCardClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_remedy_card_dispose;

  g_type_ensure (WM_TYPE_FINDING_HEAD);
  g_type_ensure (WM_TYPE_FORM_FIELD);
  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "remedy-card.ui");
  gtk_widget_class_bind_template_child (widget_class, WmRemedyCard, head);
  gtk_widget_class_bind_template_child (widget_class, WmRemedyCard, lines);
  gtk_widget_class_bind_template_child (widget_class, WmRemedyCard, empty);
  gtk_widget_class_bind_template_child (widget_class, WmRemedyCard, usual);
  gtk_widget_class_bind_template_child (widget_class, WmRemedyCard, other);
  gtk_widget_class_bind_template_child (widget_class, WmRemedyCard, cautions);
  gtk_widget_class_bind_template_callback (widget_class, on_other_entered);
}

static void
wm_remedy_card_init (WmRemedyCard *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
wm_remedy_card_new (WmSession *session)
{
  WmRemedyCard *self = g_object_new (WM_TYPE_REMEDY_CARD, NULL);

  self->session = g_object_ref (session);
  return GTK_WIDGET (self);
}
