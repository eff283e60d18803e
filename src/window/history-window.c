/* history-window.c: what was done to the shown piece, newest first
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/history-window.h"

#include <adwaita.h>
#include <glib/gi18n.h>

#include "window/labels.h"

#define MAX_SHOWN 500

static void
add_event (AdwPreferencesGroup *group, const WmEvent *event)
{
  GtkWidget *row = adw_action_row_new ();
  g_autofree char *when = wm_label_moment (event->at_us / G_USEC_PER_SEC);
  g_autofree char *second = event->by_name == NULL
                                ? g_strdup (when)
                                : g_strdup_printf ("%s  ·  %s", when, event->by_name);

  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (row), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), _ (event->label));
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), second);
  if (event->undone)
    {
      GtkWidget *word = gtk_label_new (_ ("undone"));

      gtk_widget_add_css_class (word, "dim-label");
      adw_action_row_add_suffix (ADW_ACTION_ROW (row), word);
    }
  adw_preferences_group_add (group, row);
}

void
wm_history_window_open (GtkWindow *parent, WmSession *session)
{
  WmPiece *piece = wm_session_get_piece (session);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) events = NULL;
  GtkWidget *window, *page, *group;
  g_autofree char *title = NULL;

  if (piece == NULL)
    return;
  events = wm_archive_list_events (wm_session_get_archive (session),
                                   wm_record_get_id (WM_RECORD (piece)), &error);
  if (events == NULL)
    {
      wm_session_toast_error (session, error);
      return;
    }

  /* Translators: what was done to a piece: History of 2026-0151-Q */
  title = g_strdup_printf (_ ("History of %s"), piece->number);
  window = g_object_new (ADW_TYPE_PREFERENCES_WINDOW, "transient-for", parent, "title",
                         title, "search-enabled", FALSE, "default-width", 560,
                         "default-height", 640, NULL);
  page = adw_preferences_page_new ();
  group = adw_preferences_group_new ();
  for (guint i = events->len; i > 0 && events->len - i < MAX_SHOWN; i--)
    add_event (ADW_PREFERENCES_GROUP (group), events->pdata[i - 1]);
  adw_preferences_page_add (ADW_PREFERENCES_PAGE (page), ADW_PREFERENCES_GROUP (group));
  adw_preferences_window_add (ADW_PREFERENCES_WINDOW (window),
                              ADW_PREFERENCES_PAGE (page));
  gtk_window_present (GTK_WINDOW (window));
}
