/* main-window.h: the window: pieces at the left, the shown piece at the right
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <adwaita.h>

#include "window/piece-bar.h"
#include "window/pieces/pieces-pane.h"
#include "window/session.h"

#define WM_TYPE_MAIN_WINDOW (wm_main_window_get_type ())
G_DECLARE_FINAL_TYPE (WmMainWindow, wm_main_window, WM, MAIN_WINDOW, AdwApplicationWindow)

WmMainWindow *wm_main_window_new (GtkApplication *application, WmSession *session);

WmSession *wm_main_window_get_session (WmMainWindow *self);

/* "welcome", "diary" or "piece". */
void wm_main_window_show_page (WmMainWindow *self, const char *name);
/* Shows a moment of the shown visit: WM_MOMENT_... */
void wm_main_window_show_moment (WmMainWindow *self, const char *word);

/* For window-actions.c: parts that actions are about. */
AdwFlap *wm_main_window_get_flap (WmMainWindow *self);
WmPiecesPane *wm_main_window_get_pieces (WmMainWindow *self);
WmPieceBar *wm_main_window_get_piece_bar (WmMainWindow *self);
GtkMenuButton *wm_main_window_get_menu_button (WmMainWindow *self);
GtkMenuButton *wm_main_window_get_person_button (WmMainWindow *self);
