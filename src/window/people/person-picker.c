/* person-picker.c: who is working now: a short list, one key each
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/people/person-picker.h"

#include <adwaita.h>
#include <glib/gi18n.h>

#include "window/people/workers.h"

#define MAX_KEYS 9

struct _WmPersonPicker
{
  GtkPopover parent_instance;

  GtkWidget *list;
  GtkWidget *empty;
  WmSession *session;
  GPtrArray *people;
};

G_DEFINE_FINAL_TYPE (WmPersonPicker, wm_person_picker, GTK_TYPE_POPOVER)

static void
choose (WmPersonPicker *self, guint index)
{
  WmPerson *person;
  g_autofree char *text = NULL;

  if (self->people == NULL || index >= self->people->len)
    return;
  person = self->people->pdata[index];
  wm_session_set_person (self->session, person);
  gtk_popover_popdown (GTK_POPOVER (self));
  /* Translators: the person whose name stands beside every change from now on */
  text = g_strdup_printf (_ ("%s is working now."), person->name);
  wm_session_toast (self->session, text);
}

static void
on_row_activated (GtkListBox *list, GtkListBoxRow *row, WmPersonPicker *self)
{
  choose (self, gtk_list_box_row_get_index (row));
}

static gboolean
on_key_pressed (GtkEventControllerKey *controller, guint keyval, guint keycode,
                GdkModifierType state, WmPersonPicker *self)
{
  guint digit = 0;

  if (keyval >= GDK_KEY_1 && keyval <= GDK_KEY_9)
    digit = keyval - GDK_KEY_0;
  else if (keyval >= GDK_KEY_KP_1 && keyval <= GDK_KEY_KP_9)
    digit = keyval - GDK_KEY_KP_0;
  if (digit == 0)
    return GDK_EVENT_PROPAGATE;

  choose (self, digit - 1);
  return GDK_EVENT_STOP;
}

static GtkWidget *
make_row (WmPersonPicker *self, WmPerson *person, guint index)
{
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *avatar = adw_avatar_new (28, person->name, TRUE);
  GtkWidget *name = gtk_label_new (person->name);
  g_autofree char *digit = g_strdup_printf ("%u", index + 1);
  GtkWidget *key = gtk_label_new (index < MAX_KEYS ? digit : "");

  gtk_label_set_xalign (GTK_LABEL (name), 0);
  gtk_widget_set_hexpand (name, TRUE);
  gtk_widget_add_css_class (key, "second-line");
  gtk_box_append (GTK_BOX (box), avatar);
  gtk_box_append (GTK_BOX (box), name);
  if (wm_session_get_by (self->session) != NULL
      && wm_id_equal (wm_session_get_by (self->session),
                      wm_record_get_id (WM_RECORD (person))))
    gtk_box_append (GTK_BOX (box),
                    gtk_image_new_from_icon_name ("object-select-symbolic"));
  gtk_box_append (GTK_BOX (box), key);
  gtk_widget_add_css_class (box, "picker-line");
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  person->name, -1);
  return row;
}

/* Read anew each time it opens: the list is short. */
static void
on_show (WmPersonPicker *self)
{
  GtkWidget *row;

  while ((row = gtk_widget_get_first_child (self->list)) != NULL)
    gtk_list_box_remove (GTK_LIST_BOX (self->list), row);
  g_clear_pointer (&self->people, g_ptr_array_unref);
  self->people = wm_workers_list (wm_session_get_archive (self->session), FALSE);
  for (guint i = 0; i < self->people->len; i++)
    gtk_list_box_append (GTK_LIST_BOX (self->list),
                         make_row (self, self->people->pdata[i], i));
  gtk_widget_set_visible (self->list, self->people->len > 0);
  gtk_widget_set_visible (self->empty, self->people->len == 0);
  gtk_widget_grab_focus (self->people->len > 0 ? self->list : GTK_WIDGET (self));
}

static void
wm_person_picker_dispose (GObject *object)
{
  WmPersonPicker *self = WM_PERSON_PICKER (object);

  g_clear_object (&self->session);
  g_clear_pointer (&self->people, g_ptr_array_unref);

  G_OBJECT_CLASS (wm_person_picker_parent_class)->dispose (object);
}

static void
wm_person_picker_class_init (WmPersonPickerClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = wm_person_picker_dispose;
}

static void
wm_person_picker_init (WmPersonPicker *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *title = gtk_label_new (_ ("Who is working now?"));
  GtkWidget *settings = gtk_button_new_with_label (_ ("People of the shop…"));
  GtkEventController *keys = gtk_event_controller_key_new ();

  gtk_widget_add_css_class (title, "group-label");
  gtk_label_set_xalign (GTK_LABEL (title), 0);
  gtk_widget_set_margin_start (title, 9);
  gtk_widget_set_margin_top (title, 6);

  self->list = gtk_list_box_new ();
  gtk_widget_add_css_class (self->list, "picker");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Who is working now?"), -1);
  g_signal_connect (self->list, "row-activated", G_CALLBACK (on_row_activated), self);

  self->empty = gtk_label_new (_ ("Nobody is entered yet. With names here, every change"
                                  " says who made it."));
  gtk_label_set_wrap (GTK_LABEL (self->empty), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (self->empty), 28);
  gtk_label_set_xalign (GTK_LABEL (self->empty), 0);
  gtk_widget_add_css_class (self->empty, "picker-line");

  gtk_actionable_set_action_name (GTK_ACTIONABLE (settings), "app.preferences");
  gtk_widget_add_css_class (settings, "flat");

  gtk_box_append (GTK_BOX (box), title);
  gtk_box_append (GTK_BOX (box), self->list);
  gtk_box_append (GTK_BOX (box), self->empty);
  gtk_box_append (GTK_BOX (box), settings);
  gtk_widget_set_size_request (box, 260, -1);
  gtk_popover_set_child (GTK_POPOVER (self), box);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Who is working now?"), -1);

  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (on_key_pressed), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  g_signal_connect (self, "show", G_CALLBACK (on_show), NULL);
}

WmPersonPicker *
wm_person_picker_new (WmSession *session)
{
  WmPersonPicker *self = g_object_new (WM_TYPE_PERSON_PICKER, NULL);

  self->session = g_object_ref (session);
  return self;
}
