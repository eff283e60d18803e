/* escape.c: a window that Escape closes, as it does a dialog
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/escape.h"

static gboolean
close_window (GtkWidget *widget, GVariant *unused, gpointer user_data)
{
  gtk_window_close (GTK_WINDOW (widget));
  return TRUE;
}

void
wm_close_on_escape (GtkWidget *window)
{
  GtkEventController *keys = gtk_shortcut_controller_new ();

  gtk_shortcut_controller_add_shortcut (
      GTK_SHORTCUT_CONTROLLER (keys),
      gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Escape, 0),
                        gtk_callback_action_new (close_window, NULL, NULL)));
  gtk_widget_add_controller (window, keys);
}
