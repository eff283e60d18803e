/* application.c: the program with a window: its archive, its tables, its own actions
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/application.h"

#include <glib/gi18n.h>

#include "archive/archive.h"
#include "trade/trade.h"
#include "wearmark-config.h"
#include "window/action-table.h"
#include "window/main-window.h"
#include "window/open-problem.h"
#include "window/people/preferences-window.h"

struct _WmApplication
{
  AdwApplication parent_instance;

  char *folder;
  WmTrade *trade;
  GtkNativeDialog *chooser;
};

G_DEFINE_FINAL_TYPE (WmApplication, wm_application, ADW_TYPE_APPLICATION)

static void open_archive (WmApplication *self, WmArchiveMode mode);

/* ---- opening ------------------------------------------------------------------ */

static void
close_windows (WmApplication *self, GtkWindow *but)
{
  g_autoptr (GList) windows =
      g_list_copy (gtk_application_get_windows (GTK_APPLICATION (self)));

  for (GList *l = windows; l != NULL; l = l->next)
    if (l->data != but)
      gtk_window_close (l->data);
}

static void
on_retry (WmOpenProblem *problem, int mode, WmApplication *self)
{
  open_archive (self, mode);
}

static void
open_archive (WmApplication *self, WmArchiveMode mode)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (WmArchive) archive = wm_archive_open (self->folder, mode, &error);
  g_autoptr (WmSession) session = NULL;
  GtkWindow *window;

  if (archive == NULL)
    {
      window =
          GTK_WINDOW (wm_open_problem_new (GTK_APPLICATION (self), self->folder, error));
      g_signal_connect (window, "retry", G_CALLBACK (on_retry), self);
    }
  else
    {
      /* So that a piece is found by the name of its kind, not only by its key. */
      wm_archive_set_trade (archive, self->trade);
      session = wm_session_new (archive, self->trade);
      window = GTK_WINDOW (wm_main_window_new (GTK_APPLICATION (self), session));
    }

  gtk_window_present (window);
  close_windows (self, window);
}

static void
on_folder_chosen (GtkNativeDialog *dialog, int response, WmApplication *self)
{
  g_autoptr (GFile) file = NULL;

  if (response == GTK_RESPONSE_ACCEPT)
    file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
  gtk_native_dialog_destroy (dialog);
  g_clear_object (&self->chooser);
  if (file == NULL)
    return;

  g_free (self->folder);
  self->folder = g_file_get_path (file);
  open_archive (self, WM_ARCHIVE_CREATE);
}

/* ---- actions ------------------------------------------------------------------- */

static void
on_open_archive (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  WmApplication *self = user_data;

  if (self->chooser != NULL)
    return;
  self->chooser = GTK_NATIVE_DIALOG (gtk_file_chooser_native_new (
      _ ("Open another archive"), gtk_application_get_active_window (user_data),
      GTK_FILE_CHOOSER_ACTION_SELECT_FOLDER, _ ("_Open"), NULL));
  gtk_native_dialog_set_modal (self->chooser, TRUE);
  g_signal_connect (self->chooser, "response", G_CALLBACK (on_folder_chosen), self);
  gtk_native_dialog_show (self->chooser);
}

static void
on_preferences (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  GtkWindow *window = gtk_application_get_active_window (user_data);

  if (WM_IS_MAIN_WINDOW (window))
    gtk_window_present (GTK_WINDOW (wm_preferences_window_new (
        window, wm_main_window_get_session (WM_MAIN_WINDOW (window)))));
}

static void
on_help (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  GtkWindow *help = wm_action_make_help ();

  gtk_window_set_transient_for (help, gtk_application_get_active_window (user_data));
  gtk_window_present (help);
}

static void
on_about (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  adw_show_about_window (
      gtk_application_get_active_window (user_data), "application-name", "Wearmark",
      "application-icon", WM_APP_ID, "version", WM_VERSION, "license-type",
      GTK_LICENSE_GPL_3_0, "comments",
      _ ("Inspect, repair and look after your customers' jewellery."), NULL);
}

static void
on_quit (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  close_windows (user_data, NULL);
}

static const GActionEntry entries[] = {
  { "help", on_help },
  { "about", on_about },
  { "preferences", on_preferences },
  { "open-archive", on_open_archive },
  { "quit", on_quit },
};

/* ---- overrides ------------------------------------------------------------------ */

/* "Sans 10" is what GTK says when no desktop has said anything: then the typeface the
 * pages were drawn with is the better guess. Any choice of the user's is kept. */
static void
choose_font (void)
{
  GtkSettings *settings = gtk_settings_get_default ();
  g_autofree char *font = NULL;

  if (settings == NULL)
    return;
  g_object_get (settings, "gtk-font-name", &font, NULL);
  if (g_strcmp0 (font, "Sans 10") == 0)
    g_object_set (settings, "gtk-font-name", "Cantarell 11", NULL);
}

static void
wm_application_startup (GApplication *application)
{
  G_APPLICATION_CLASS (wm_application_parent_class)->startup (application);

  choose_font ();
  g_action_map_add_action_entries (G_ACTION_MAP (application), entries,
                                   G_N_ELEMENTS (entries), application);
  wm_action_add_window_keys (GTK_APPLICATION (application));
}

static void
wm_application_activate (GApplication *application)
{
  WmApplication *self = WM_APPLICATION (application);
  GtkWindow *window = gtk_application_get_active_window (GTK_APPLICATION (application));
  g_autoptr (GError) error = NULL;

  if (window != NULL)
    {
      gtk_window_present (window);
      return;
    }

  if (self->trade == NULL)
    self->trade = wm_trade_new (NULL, &error);
  if (self->trade == NULL)
    g_warning ("tables of the trade: %s", error->message);
  open_archive (self, WM_ARCHIVE_CREATE);
}

static void
wm_application_finalize (GObject *object)
{
  WmApplication *self = WM_APPLICATION (object);

  g_clear_object (&self->chooser);
  g_free (self->folder);
  g_clear_pointer (&self->trade, wm_trade_unref);

  G_OBJECT_CLASS (wm_application_parent_class)->finalize (object);
}

static void
wm_application_class_init (WmApplicationClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = wm_application_finalize;
  G_APPLICATION_CLASS (klass)->startup = wm_application_startup;
  G_APPLICATION_CLASS (klass)->activate = wm_application_activate;
}

static void
wm_application_init (WmApplication *self)
{
}

WmApplication *
wm_application_new (const char *archive_folder)
{
  /* An archive named on the command line is not the one a running window shows; the
   * archive's own lock keeps two windows off one archive. */
  WmApplication *self = g_object_new (
      WM_TYPE_APPLICATION, "application-id", WM_APP_ID, "flags",
      archive_folder == NULL ? G_APPLICATION_DEFAULT_FLAGS : G_APPLICATION_NON_UNIQUE,
      "resource-base-path", "/org/wearmark/Wearmark", NULL);

  self->folder =
      archive_folder == NULL ? wm_archive_default_folder () : g_strdup (archive_folder);
  return self;
}
