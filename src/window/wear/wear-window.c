/* wear-window.c: the wear of the shown piece over the years, over any page
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/wear/wear-window.h"

#include <adwaita.h>
#include <glib/gi18n.h>

#include "window/escape.h"
#include "window/open-check.h"
#include "window/wear/wear-list.h"

#define PLOT_HEIGHT 220

static GtkWidget *
make_content (const WmOutlook *outlook, WmSession *session)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkWidget *clamp = adw_clamp_new ();
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  WmId open = wm_open_check_get (session);

  gtk_widget_add_css_class (box, "page");
  wm_wear_list_fill (GTK_BOX (box), outlook, wm_session_get_trade (session), PLOT_HEIGHT,
                     wm_id_is_none (&open) ? NULL : &open);
  adw_clamp_set_maximum_size (ADW_CLAMP (clamp), 760);
  adw_clamp_set_child (ADW_CLAMP (clamp), box);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), clamp);
  gtk_widget_set_vexpand (scrolled, TRUE);
  return scrolled;
}

void
wm_wear_window_open (GtkWindow *parent, WmSession *session)
{
  const WmId *visit_id = wm_session_get_visit_id (session);
  WmTrade *trade = wm_session_get_trade (session);
  WmPiece *piece = wm_session_get_piece (session);
  g_autoptr (GError) error = NULL;
  g_autoptr (WmOutlook) outlook = NULL;
  g_autofree char *title = NULL;
  GtkWidget *window, *all;

  if (visit_id == NULL || trade == NULL)
    return;
  outlook = wm_outlook_load (wm_session_get_archive (session), trade, visit_id,
                             wm_wear_today (), &error);
  if (outlook == NULL)
    {
      wm_session_toast_error (session, error);
      return;
    }
  /* Translators: a piece's number: Wear of 2026-0151-Q over the years */
  title = g_strdup_printf (_ ("Wear of %s over the years"), piece->number);
  window = g_object_new (ADW_TYPE_WINDOW, "transient-for", parent, "modal", TRUE, "title",
                         title, "default-width", 720, "default-height", 720, NULL);
  all = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_box_append (GTK_BOX (all), adw_header_bar_new ());
  gtk_box_append (GTK_BOX (all), make_content (outlook, session));
  adw_window_set_content (ADW_WINDOW (window), all);
  wm_close_on_escape (window);
  gtk_window_present (GTK_WINDOW (window));
}
