/* preferences-window.c: the shop and the people who work in it
 *
 * Every change is an edit of the shop and can be undone here with the same keys as in
 * the window.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/people/preferences-window.h"

#include <glib/gi18n.h>

#include "window/action-table.h"
#include "window/form/form-choice.h"
#include "window/form/form-field.h"
#include "window/people/check-months.h"
#include "window/people/money-settings.h"
#include "window/people/worker-row.h"
#include "window/people/workers.h"
#include "window/resource.h"

#define N_FIELDS 6

struct _WmPreferencesWindow
{
  AdwPreferencesWindow parent_instance;

  WmFormField *shop_name;
  WmFormField *shop_address;
  WmFormField *shop_contact;
  WmFormField *currency;
  WmFormField *terms;
  WmFormField *watched_folder;
  WmFormChoice *paper;
  GtkBox *people;
  GtkWidget *nobody;
  GtkWidget *choose_folder;
  WmFormField *new_person;

  WmSession *session;
  GtkNativeDialog *chooser;
};

static const char *const field_settings[N_FIELDS] = {
  WM_SETTING_SHOP_NAME, WM_SETTING_SHOP_ADDRESS, WM_SETTING_SHOP_CONTACT,
  WM_SETTING_CURRENCY,  WM_SETTING_TERMS,        WM_SETTING_WATCHED_FOLDER
};

G_DEFINE_FINAL_TYPE (WmPreferencesWindow, wm_preferences_window,
                     ADW_TYPE_PREFERENCES_WINDOW)

static void
list_fields (WmPreferencesWindow *self, WmFormField *fields[N_FIELDS])
{
  fields[0] = self->shop_name;
  fields[1] = self->shop_address;
  fields[2] = self->shop_contact;
  fields[3] = self->currency;
  fields[4] = self->terms;
  fields[5] = self->watched_folder;
}

/* The setting as it is kept, or a new one that says nothing yet. */
static WmSetting *
find_setting (GPtrArray *settings, const char *name)
{
  WmSetting *setting;

  for (guint i = 0; settings != NULL && i < settings->len; i++)
    if (g_strcmp0 (((WmSetting *)settings->pdata[i])->name, name) == 0)
      return g_object_ref (settings->pdata[i]);

  setting = wm_setting_new ();
  wm_record_set_text (WM_RECORD (setting), "name", name);
  return setting;
}

static void
show_settings (WmPreferencesWindow *self)
{
  g_autoptr (GPtrArray) settings = wm_archive_list (
      wm_session_get_archive (self->session), WM_KIND_SETTING, NULL, NULL, NULL);
  g_autoptr (WmSetting) paper = find_setting (settings, WM_SETTING_PAPER);
  WmFormField *fields[N_FIELDS];

  list_fields (self, fields);
  for (int i = 0; i < N_FIELDS; i++)
    {
      g_autoptr (WmSetting) setting = find_setting (settings, field_settings[i]);

      wm_form_field_bind (fields[i], self->session, setting);
    }
  wm_form_choice_bind (self->paper, self->session, paper);
}

/* Rows stay while the people stay the same, so that typing is not disturbed. */
static void
show_people (WmPreferencesWindow *self)
{
  g_autoptr (GPtrArray) people =
      wm_workers_list (wm_session_get_archive (self->session), TRUE);
  GtkWidget *row = gtk_widget_get_first_child (GTK_WIDGET (self->people));

  for (guint i = 0; i < people->len; i++)
    {
      if (row == NULL)
        {
          gtk_box_append (self->people,
                          wm_worker_row_new (self->session, people->pdata[i]));
          continue;
        }
      wm_worker_row_show (WM_WORKER_ROW (row), people->pdata[i]);
      row = gtk_widget_get_next_sibling (row);
    }
  while (row != NULL)
    {
      GtkWidget *next = gtk_widget_get_next_sibling (row);

      gtk_box_remove (self->people, row);
      row = next;
    }
  gtk_widget_set_visible (self->nobody, people->len == 0);
}

static void
on_rows_changed (WmSession *session, const WmChange *change, WmPreferencesWindow *self)
{
  show_settings (self);
  show_people (self);
}

static void
on_toast (WmSession *session, AdwToast *toast, WmPreferencesWindow *self)
{
  const char *title = adw_toast_get_title (toast);

  if (gtk_window_is_active (GTK_WINDOW (self)))
    adw_preferences_window_add_toast (ADW_PREFERENCES_WINDOW (self),
                                      adw_toast_new (title));
}

static void
on_new_person (WmFormField *field, const char *text, WmPreferencesWindow *self)
{
  g_autofree char *name = g_strstrip (g_strdup (text));
  g_autofree char *initials = NULL;
  g_autoptr (WmPerson) person = NULL;
  WmEdit *edit;

  wm_form_field_set_text (field, "");
  if (name[0] == '\0')
    return;
  initials = wm_workers_make_initials (wm_session_get_archive (self->session), name);
  person = wm_person_new ();
  wm_record_set_text (WM_RECORD (person), "role", WM_ROLE_WORKER);
  wm_record_set_text (WM_RECORD (person), "name", name);
  wm_record_set_text (WM_RECORD (person), "initials", initials);
  edit = wm_session_begin_shop (self->session, N_ ("New person of the shop"));
  wm_session_put (self->session, edit, person);
  wm_session_commit (self->session, edit);
  /* The first one entered is the one who sits here. */
  if (wm_session_get_person (self->session) == NULL)
    wm_session_set_person (self->session, person);
}

/* ---- the watched folder --------------------------------------------------------- */

static void
on_folder_response (GtkNativeDialog *dialog, int response, WmPreferencesWindow *self)
{
  GtkFileChooser *chooser = GTK_FILE_CHOOSER (dialog);
  g_autoptr (GFile) file =
      response == GTK_RESPONSE_ACCEPT ? gtk_file_chooser_get_file (chooser) : NULL;
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;
  g_autoptr (GPtrArray) settings = NULL;
  g_autoptr (WmSetting) setting = NULL;

  g_clear_object (&self->chooser);
  if (path == NULL)
    return;
  settings = wm_archive_list (wm_session_get_archive (self->session), WM_KIND_SETTING,
                              NULL, NULL, NULL);
  setting = find_setting (settings, WM_SETTING_WATCHED_FOLDER);
  wm_record_set_text (WM_RECORD (setting), "value", path);
  wm_session_keep (self->session, N_ ("Watched folder"), setting);
}

static void
on_choose_folder (GtkButton *button, WmPreferencesWindow *self)
{
  if (self->chooser != NULL)
    return;
  self->chooser = GTK_NATIVE_DIALOG (gtk_file_chooser_native_new (
      _ ("Folder where new photos arrive"), GTK_WINDOW (self),
      GTK_FILE_CHOOSER_ACTION_SELECT_FOLDER, _ ("_Watch"), NULL));
  gtk_native_dialog_set_modal (self->chooser, TRUE);
  g_signal_connect (self->chooser, "response", G_CALLBACK (on_folder_response), self);
  gtk_native_dialog_show (self->chooser);
}

static gboolean
on_close_request (GtkWindow *window)
{
  WmPreferencesWindow *self = WM_PREFERENCES_WINDOW (window);
  WmFormField *fields[N_FIELDS];

  list_fields (self, fields);
  for (int i = 0; i < N_FIELDS; i++)
    wm_form_field_leave (fields[i]);
  wm_form_field_leave (self->new_person);
  for (GtkWidget *row = gtk_widget_get_first_child (GTK_WIDGET (self->people));
       row != NULL; row = gtk_widget_get_next_sibling (row))
    wm_worker_row_leave (WM_WORKER_ROW (row));

  return GTK_WINDOW_CLASS (wm_preferences_window_parent_class)->close_request (window);
}

static void
undo_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  wm_session_undo_shop (WM_PREFERENCES_WINDOW (widget)->session);
}

static void
redo_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  wm_session_redo_shop (WM_PREFERENCES_WINDOW (widget)->session);
}

static void
wm_preferences_window_dispose (GObject *object)
{
  WmPreferencesWindow *self = WM_PREFERENCES_WINDOW (object);

  if (self->session != NULL)
    g_signal_handlers_disconnect_by_data (self->session, self);
  g_clear_object (&self->chooser);
  gtk_widget_dispose_template (GTK_WIDGET (self), WM_TYPE_PREFERENCES_WINDOW);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (wm_preferences_window_parent_class)->dispose (object);
}

static void
wm_preferences_window_class_init (WmPreferencesWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_preferences_window_dispose;
  GTK_WINDOW_CLASS (klass)->close_request = on_close_request;

  g_type_ensure (WM_TYPE_FORM_FIELD);
  g_type_ensure (WM_TYPE_FORM_CHOICE);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               WM_UI "preferences-window.ui");
  gtk_widget_class_bind_template_child (widget_class, WmPreferencesWindow, shop_name);
  gtk_widget_class_bind_template_child (widget_class, WmPreferencesWindow, shop_address);
  gtk_widget_class_bind_template_child (widget_class, WmPreferencesWindow, shop_contact);
  gtk_widget_class_bind_template_child (widget_class, WmPreferencesWindow, currency);
  gtk_widget_class_bind_template_child (widget_class, WmPreferencesWindow, terms);
  gtk_widget_class_bind_template_child (widget_class, WmPreferencesWindow,
                                        watched_folder);
  gtk_widget_class_bind_template_child (widget_class, WmPreferencesWindow, choose_folder);
  gtk_widget_class_bind_template_callback (widget_class, on_choose_folder);
  gtk_widget_class_bind_template_child (widget_class, WmPreferencesWindow, paper);
  gtk_widget_class_bind_template_child (widget_class, WmPreferencesWindow, people);
  gtk_widget_class_bind_template_child (widget_class, WmPreferencesWindow, nobody);
  gtk_widget_class_bind_template_child (widget_class, WmPreferencesWindow, new_person);
  gtk_widget_class_bind_template_callback (widget_class, on_new_person);
  gtk_widget_class_install_action (widget_class, "shop.undo", NULL, undo_action);
  gtk_widget_class_install_action (widget_class, "shop.redo", NULL, redo_action);
}

static void
wm_preferences_window_init (WmPreferencesWindow *self)
{
  static const char *const paper_keys[] = { "a4", "letter" };
  const char *paper_names[] = { _ ("A4 (210 × 297 mm)"), _ ("Letter (8½ × 11 in)") };

  gtk_widget_init_template (GTK_WIDGET (self));
  wm_form_choice_set_choices (self->paper, paper_keys, paper_names,
                              G_N_ELEMENTS (paper_keys));
  wm_action_add_keys (GTK_WIDGET (self), WM_PLACE_SETTINGS);
}

WmPreferencesWindow *
wm_preferences_window_new (GtkWindow *parent, WmSession *session)
{
  WmPreferencesWindow *self =
      g_object_new (WM_TYPE_PREFERENCES_WINDOW, "transient-for", parent, NULL);

  self->session = g_object_ref (session);
  gtk_widget_set_sensitive (GTK_WIDGET (self->new_person),
                            !wm_session_is_read_only (session));
  gtk_widget_set_sensitive (self->choose_folder, !wm_session_is_read_only (session));
  g_signal_connect (session, "rows-changed", G_CALLBACK (on_rows_changed), self);
  g_signal_connect (session, "toast", G_CALLBACK (on_toast), self);
  show_settings (self);
  show_people (self);
  adw_preferences_window_add (ADW_PREFERENCES_WINDOW (self),
                              wm_check_months_page_new (session));
  adw_preferences_window_add (ADW_PREFERENCES_WINDOW (self),
                              wm_money_settings_page_new (session));

  return self;
}
