/* empty-window.c: the peer: an empty libadwaita window, or one that shows a photo
 *
 * empty-window [PHOTO]: the photo by GtkPicture, as any program would that has no tiles.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <adwaita.h>

static void
on_activate (GtkApplication *application, const char *photo)
{
  GtkWidget *window = adw_application_window_new (application);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_window_set_title (GTK_WINDOW (window), "Empty");
  gtk_window_set_default_size (GTK_WINDOW (window), 1280, 800);
  gtk_box_append (GTK_BOX (box), adw_header_bar_new ());
  if (photo != NULL)
    {
      GtkWidget *picture = gtk_picture_new_for_filename (photo);

      gtk_widget_set_vexpand (picture, TRUE);
      gtk_box_append (GTK_BOX (box), picture);
    }
  adw_application_window_set_content (ADW_APPLICATION_WINDOW (window), box);
  gtk_window_present (GTK_WINDOW (window));
}

int
main (int argc, char *argv[])
{
  g_autoptr (AdwApplication) application =
      adw_application_new ("org.wearmark.Empty", G_APPLICATION_NON_UNIQUE);

  g_signal_connect (application, "activate", G_CALLBACK (on_activate),
                    argc > 1 ? argv[1] : NULL);
  return g_application_run (G_APPLICATION (application), 1, argv);
}
