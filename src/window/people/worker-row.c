/* worker-row.c: one person of the shop in the settings
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/people/worker-row.h"

#include <glib/gi18n.h>

#include "window/form/form-field.h"
#include "window/resource.h"
#include "window/template.h"

struct _WmWorkerRow
{
  GtkWidget parent_instance;

  WmFormField *name;
  WmFormField *initials;
  GtkButton *retire;

  WmSession *session;
  WmPerson *person;
};

G_DEFINE_FINAL_TYPE (WmWorkerRow, wm_worker_row, GTK_TYPE_WIDGET)

static void
on_retire_clicked (GtkButton *button, WmWorkerRow *self)
{
  gboolean retired = !self->person->retired;

  wm_session_change (self->session,
                     retired ? N_ ("Person no longer here") : N_ ("Person here again"),
                     self->person, "retired", retired, NULL);
}

static void
wm_worker_row_dispose (GObject *object)
{
  WmWorkerRow *self = WM_WORKER_ROW (object);

  wm_template_dispose (GTK_WIDGET (self), WM_TYPE_WORKER_ROW);
  g_clear_object (&self->person);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (wm_worker_row_parent_class)->dispose (object);
}

static void
wm_worker_row_class_init (WmWorkerRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_worker_row_dispose;

  g_type_ensure (WM_TYPE_FORM_FIELD);
  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "worker-row.ui");
  gtk_widget_class_bind_template_child (widget_class, WmWorkerRow, name);
  gtk_widget_class_bind_template_child (widget_class, WmWorkerRow, initials);
  gtk_widget_class_bind_template_child (widget_class, WmWorkerRow, retire);
  gtk_widget_class_bind_template_callback (widget_class, on_retire_clicked);
}

static void
wm_worker_row_init (WmWorkerRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
wm_worker_row_new (WmSession *session, WmPerson *person)
{
  WmWorkerRow *self = g_object_new (WM_TYPE_WORKER_ROW, NULL);

  self->session = g_object_ref (session);
  wm_worker_row_show (self, person);
  return GTK_WIDGET (self);
}

void
wm_worker_row_show (WmWorkerRow *self, WmPerson *person)
{
  g_set_object (&self->person, person);
  wm_form_field_bind (self->name, self->session, person);
  wm_form_field_bind (self->initials, self->session, person);
  gtk_button_set_label (self->retire,
                        person->retired ? _ ("Here again") : _ ("No longer here"));
  if (person->retired)
    gtk_widget_add_css_class (GTK_WIDGET (self), "retired");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self), "retired");
}

WmPerson *
wm_worker_row_get_person (WmWorkerRow *self)
{
  return self->person;
}

void
wm_worker_row_leave (WmWorkerRow *self)
{
  wm_form_field_leave (self->name);
  wm_form_field_leave (self->initials);
}
