/* stone-row.c: stones of one kind, in the form
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/take-in/stone-row.h"

#include <glib/gi18n.h>

#include "trade/trade.h"
#include "window/form/form-choice.h"
#include "window/form/form-field.h"
#include "window/resource.h"
#include "window/template.h"

#define N_FIELDS 6

struct _WmStoneRow
{
  GtkWidget parent_instance;

  WmFormField *species;
  WmFormField *count;
  WmFormField *cut;
  WmFormField *length;
  WmFormField *width;
  WmFormChoice *basis;
  WmFormField *note;
  GtkWidget *remove;

  WmSession *session;
  WmStoneGroup *group;
};

G_DEFINE_FINAL_TYPE (WmStoneRow, wm_stone_row, GTK_TYPE_WIDGET)

static void
list_fields (WmStoneRow *self, WmFormField *fields[N_FIELDS])
{
  fields[0] = self->species;
  fields[1] = self->count;
  fields[2] = self->cut;
  fields[3] = self->length;
  fields[4] = self->width;
  fields[5] = self->note;
}

static void
suggest_names (WmStoneRow *self)
{
  WmTrade *trade = wm_session_get_trade (self->session);
  g_autoptr (GPtrArray) stones = g_ptr_array_new ();
  g_autoptr (GPtrArray) cuts = g_ptr_array_new ();

  if (trade == NULL)
    return;
  for (const WmStone *const *row = wm_trade_list_stones (trade, NULL); *row; row++)
    g_ptr_array_add (stones, (char *)wm_trade_text ((*row)->name));
  for (const WmCut *const *row = wm_trade_list_cuts (trade, NULL); *row; row++)
    g_ptr_array_add (cuts, (char *)wm_trade_text ((*row)->name));
  g_ptr_array_add (stones, NULL);
  g_ptr_array_add (cuts, NULL);
  wm_form_field_set_suggestions (self->species, (const char *const *)stones->pdata);
  wm_form_field_set_suggestions (self->cut, (const char *const *)cuts->pdata);
}

static void
remove_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  WmStoneRow *self = WM_STONE_ROW (widget);
  WmEdit *edit = wm_session_begin (self->session, N_ ("Remove stones"));

  wm_edit_remove (edit, self->group);
  wm_session_commit (self->session, edit);
}

static void
wm_stone_row_dispose (GObject *object)
{
  WmStoneRow *self = WM_STONE_ROW (object);

  wm_template_dispose (GTK_WIDGET (self), WM_TYPE_STONE_ROW);
  g_clear_object (&self->group);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (wm_stone_row_parent_class)->dispose (object);
}

static void
wm_stone_row_class_init (WmStoneRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_stone_row_dispose;

  g_type_ensure (WM_TYPE_FORM_FIELD);
  g_type_ensure (WM_TYPE_FORM_CHOICE);
  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "stone-row.ui");
  gtk_widget_class_bind_template_child (widget_class, WmStoneRow, species);
  gtk_widget_class_bind_template_child (widget_class, WmStoneRow, count);
  gtk_widget_class_bind_template_child (widget_class, WmStoneRow, cut);
  gtk_widget_class_bind_template_child (widget_class, WmStoneRow, length);
  gtk_widget_class_bind_template_child (widget_class, WmStoneRow, width);
  gtk_widget_class_bind_template_child (widget_class, WmStoneRow, basis);
  gtk_widget_class_bind_template_child (widget_class, WmStoneRow, note);
  gtk_widget_class_bind_template_child (widget_class, WmStoneRow, remove);
  gtk_widget_class_install_action (widget_class, "stone.remove", NULL, remove_action);
}

static void
wm_stone_row_init (WmStoneRow *self)
{
  static const char *const keys[] = { "said", "seen", "tested", "assumed" };
  const char *names[] = { _ ("customer says"), _ ("seen at ×10"), _ ("tested"),
                          _ ("assumed") };

  gtk_widget_init_template (GTK_WIDGET (self));
  wm_form_choice_set_choices (self->basis, keys, names, G_N_ELEMENTS (keys));
}

GtkWidget *
wm_stone_row_new (WmSession *session)
{
  WmStoneRow *self = g_object_new (WM_TYPE_STONE_ROW, NULL);

  self->session = g_object_ref (session);
  suggest_names (self);
  return GTK_WIDGET (self);
}

void
wm_stone_row_show (WmStoneRow *self, WmStoneGroup *group)
{
  WmFormField *fields[N_FIELDS];

  g_set_object (&self->group, group);
  list_fields (self, fields);
  for (int i = 0; i < N_FIELDS; i++)
    wm_form_field_bind (fields[i], self->session, group);
  wm_form_choice_bind (self->basis, self->session, group);
  gtk_widget_set_visible (self->remove, !wm_session_is_read_only (self->session));
}

WmStoneGroup *
wm_stone_row_get_group (WmStoneRow *self)
{
  return self->group;
}

void
wm_stone_row_leave (WmStoneRow *self)
{
  WmFormField *fields[N_FIELDS];

  list_fields (self, fields);
  for (int i = 0; i < N_FIELDS; i++)
    wm_form_field_leave (fields[i]);
}
