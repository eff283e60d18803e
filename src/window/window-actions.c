/* window-actions.c: what the window's own actions do
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/window-actions.h"

#include "window/counter/counter-view.h"
#include "window/form/form-field.h"
#include "window/hand-back/report-actions.h"
#include "window/history-window.h"
#include "window/reckon/reckon-window.h"
#include "window/scale-sheet-print.h"
#include "window/take-in/take-in-edits.h"
#include "window/wear/wear-window.h"

static WmSession *
get_session (gpointer window)
{
  return wm_main_window_get_session (WM_MAIN_WINDOW (window));
}

static void
on_menu (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  gtk_menu_button_popup (wm_main_window_get_menu_button (window));
}

static void
on_now_working (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  gtk_menu_button_popup (wm_main_window_get_person_button (window));
}

static void
on_full_screen (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  if (gtk_window_is_fullscreen (window))
    gtk_window_unfullscreen (window);
  else
    gtk_window_fullscreen (window);
}

static void
on_search (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  adw_flap_set_reveal_flap (wm_main_window_get_flap (window), TRUE);
  wm_pieces_pane_grab_search (wm_main_window_get_pieces (window));
}

static void
on_diary (GSimpleAction *action, GVariant *state, gpointer window)
{
  gboolean wanted = g_variant_get_boolean (state);
  gboolean has_piece = wm_session_get_piece (get_session (window)) != NULL;

  wm_main_window_show_page (window, wanted ? "diary" : has_piece ? "piece" : "welcome");
}

static void
on_new_piece (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  wm_take_in_new_piece (get_session (window));
}

static void
on_new_visit (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  wm_take_in_new_visit (get_session (window));
}

static void
on_earlier_visit (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  wm_piece_bar_step (wm_main_window_get_piece_bar (window), -1);
}

static void
on_later_visit (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  wm_piece_bar_step (wm_main_window_get_piece_bar (window), 1);
}

static void
on_moment (GSimpleAction *action, GVariant *word, gpointer window)
{
  wm_main_window_show_page (window, "piece");
  wm_main_window_show_moment (window, g_variant_get_string (word, NULL));
}

static void
on_show_report (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  wm_session_go_to_moment (get_session (window), WM_MOMENT_HAND_BACK);
}

static void
on_print_report (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  wm_report_print (GTK_WINDOW (window), get_session (window));
}

static void
on_save_report (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  wm_report_save (GTK_WINDOW (window), get_session (window));
}

static void
on_undo (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  if (!wm_form_field_undo_typing (gtk_window_get_focus (window), FALSE))
    wm_session_undo (get_session (window));
}

static void
on_redo (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  if (!wm_form_field_undo_typing (gtk_window_get_focus (window), TRUE))
    wm_session_redo (get_session (window));
}

static void
on_counter_view (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  wm_counter_view_open (window, get_session (window));
}

static void
on_history (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  wm_history_window_open (GTK_WINDOW (window), get_session (window));
}

static void
on_wear (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  wm_wear_window_open (GTK_WINDOW (window), get_session (window));
}

static void
on_reckon (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  wm_reckon_window_open (GTK_WINDOW (window), get_session (window));
}

static void
on_scale_sheet (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  wm_scale_sheet_print (GTK_WINDOW (window), get_session (window));
}

static const GActionEntry entries[] = {
  { "history", on_history },
  { "wear", on_wear },
  { "reckon", on_reckon },
  { "scale-sheet", on_scale_sheet },
  { "menu", on_menu },
  { "now-working", on_now_working },
  { "counter-view", on_counter_view },
  { "full-screen", on_full_screen },
  { "search", on_search },
  { "diary", NULL, NULL, "false", on_diary },
  { "new-piece", on_new_piece },
  { "new-visit", on_new_visit },
  { "earlier-visit", on_earlier_visit },
  { "later-visit", on_later_visit },
  { "moment", on_moment, "s", "''", NULL },
  { "show-report", on_show_report },
  { "print-report", on_print_report },
  { "save-report", on_save_report },
  { "undo", on_undo },
  { "redo", on_redo },
};

static void
set_enabled (WmMainWindow *window, const char *name, gboolean enabled)
{
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (window), name);

  g_simple_action_set_enabled (G_SIMPLE_ACTION (action), enabled);
}

void
wm_window_actions_add (WmMainWindow *window)
{
  g_autoptr (GPropertyAction) pieces =
      g_property_action_new ("pieces", wm_main_window_get_flap (window), "reveal-flap");

  g_action_map_add_action_entries (G_ACTION_MAP (window), entries, G_N_ELEMENTS (entries),
                                   window);
  g_action_map_add_action (G_ACTION_MAP (window), G_ACTION (pieces));
}

void
wm_window_actions_refresh (WmMainWindow *window)
{
  WmSession *session = get_session (window);
  gboolean has_visit = wm_session_get_visit (session) != NULL;
  gboolean can_write = !wm_session_is_read_only (session);

  set_enabled (window, "new-piece", can_write);
  set_enabled (window, "new-visit", can_write && has_visit);
  set_enabled (window, "moment", has_visit);
  set_enabled (window, "counter-view", has_visit);
  set_enabled (window, "earlier-visit", has_visit);
  set_enabled (window, "later-visit", has_visit);
  set_enabled (window, "history", has_visit);
  set_enabled (window, "wear", has_visit);
  set_enabled (window, "show-report", has_visit);
  set_enabled (window, "print-report", has_visit);
  set_enabled (window, "save-report", has_visit);
  set_enabled (window, "undo", can_write);
  set_enabled (window, "redo", can_write);
}
