/* condition-card.c: what was seen together with the customer, one thing a line
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/take-in/condition-card.h"

#include <glib/gi18n.h>

struct _WmConditionCard
{
  GtkWidget parent_instance;

  GtkWidget *list;
  GtkWidget *entry;
  WmSession *session;
  char *shown; /* the lines as they are shown */
};

G_DEFINE_FINAL_TYPE (WmConditionCard, wm_condition_card, GTK_TYPE_WIDGET)

static void
keep_lines (WmConditionCard *self, GPtrArray *lines)
{
  WmVisit *visit = wm_session_get_visit (self->session);
  g_autofree char *text = NULL;

  if (visit == NULL)
    return;
  g_ptr_array_add (lines, NULL);
  text = g_strjoinv ("\n", (char **)lines->pdata);
  wm_session_change (self->session, N_ ("Condition on arrival"), visit, "condition",
                     text[0] == '\0' ? NULL : text, NULL);
  wm_condition_card_show (self, self->session);
}

static GPtrArray *
get_lines (WmConditionCard *self)
{
  WmVisit *visit = wm_session_get_visit (self->session);
  GPtrArray *lines = g_ptr_array_new_with_free_func (g_free);
  g_auto (GStrv) parts = NULL;

  if (visit != NULL && visit->condition != NULL)
    parts = g_strsplit (visit->condition, "\n", -1);
  for (guint i = 0; parts != NULL && parts[i] != NULL; i++)
    if (parts[i][0] != '\0')
      g_ptr_array_add (lines, g_strdup (parts[i]));
  return lines;
}

static void
take_entry (WmConditionCard *self)
{
  g_autofree char *text =
      g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->entry))));
  g_autoptr (GPtrArray) lines = NULL;

  if (text[0] == '\0')
    return;
  lines = get_lines (self);
  g_ptr_array_add (lines, g_steal_pointer (&text));
  gtk_editable_set_text (GTK_EDITABLE (self->entry), "");
  keep_lines (self, lines);
}

static void
on_remove_clicked (GtkButton *button, WmConditionCard *self)
{
  guint index = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "index"));
  g_autoptr (GPtrArray) lines = get_lines (self);

  if (index < lines->len)
    g_ptr_array_remove_index (lines, index);
  keep_lines (self, lines);
}

static GtkWidget *
make_line (WmConditionCard *self, const char *text, guint index)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *label = gtk_label_new (text);
  GtkWidget *basis = gtk_label_new (_ ("seen together"));
  GtkWidget *button = gtk_button_new_from_icon_name ("edit-delete-symbolic");
  g_autofree char *name = g_strdup_printf (_ ("Remove: %s"), text);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_add_css_class (basis, "second-line");
  gtk_widget_add_css_class (button, "flat");
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_widget_set_tooltip_text (button, name);
  gtk_widget_set_sensitive (button, !wm_session_is_read_only (self->session));
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  name, -1);
  g_object_set_data (G_OBJECT (button), "index", GUINT_TO_POINTER (index));
  g_signal_connect (button, "clicked", G_CALLBACK (on_remove_clicked), self);
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (box), basis);
  gtk_box_append (GTK_BOX (box), button);
  gtk_widget_add_css_class (box, "card-line");
  return box;
}

void
wm_condition_card_show (WmConditionCard *self, WmSession *session)
{
  WmVisit *visit = wm_session_get_visit (session);
  const char *text = visit == NULL ? NULL : visit->condition;
  g_autoptr (GPtrArray) lines = NULL;
  GtkWidget *child;

  g_set_object (&self->session, session);
  gtk_widget_set_sensitive (self->entry,
                            visit != NULL && !wm_session_is_read_only (session));
  if (g_strcmp0 (text, self->shown) == 0)
    return;

  g_free (self->shown);
  self->shown = g_strdup (text);
  while ((child = gtk_widget_get_first_child (self->list)) != NULL)
    gtk_box_remove (GTK_BOX (self->list), child);
  lines = get_lines (self);
  for (guint i = 0; i < lines->len; i++)
    {
      gtk_box_append (GTK_BOX (self->list), make_line (self, lines->pdata[i], i));
      gtk_box_append (GTK_BOX (self->list),
                      gtk_separator_new (GTK_ORIENTATION_HORIZONTAL));
    }
}

void
wm_condition_card_leave (WmConditionCard *self)
{
  if (self->session != NULL)
    take_entry (self);
}

static void
on_activate (GtkEntry *entry, WmConditionCard *self)
{
  take_entry (self);
}

static void
on_left (GtkEventControllerFocus *controller, WmConditionCard *self)
{
  take_entry (self);
}

static void
wm_condition_card_dispose (GObject *object)
{
  WmConditionCard *self = WM_CONDITION_CARD (object);

  g_clear_pointer (&self->list, gtk_widget_unparent);
  g_clear_pointer (&self->entry, gtk_widget_unparent);
  g_clear_object (&self->session);
  g_clear_pointer (&self->shown, g_free);

  G_OBJECT_CLASS (wm_condition_card_parent_class)->dispose (object);
}

static void
wm_condition_card_class_init (WmConditionCardClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = wm_condition_card_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass),
                                            GTK_TYPE_BOX_LAYOUT);
}

static void
wm_condition_card_init (WmConditionCard *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));
  GtkEventController *focus = gtk_event_controller_focus_new ();

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_widget_add_css_class (GTK_WIDGET (self), "card-list");

  self->list = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_widget_set_parent (self->list, GTK_WIDGET (self));
  self->entry = gtk_entry_new ();
  gtk_entry_set_has_frame (GTK_ENTRY (self->entry), FALSE);
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->entry),
                                  _ ("Add what you see together: scratches, dents, …"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Condition on arrival"), -1);
  gtk_widget_add_css_class (self->entry, "card-entry");
  g_signal_connect (self->entry, "activate", G_CALLBACK (on_activate), self);
  g_signal_connect (focus, "leave", G_CALLBACK (on_left), self);
  gtk_widget_add_controller (self->entry, focus);
  gtk_widget_set_parent (self->entry, GTK_WIDGET (self));
}
