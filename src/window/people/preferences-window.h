/* preferences-window.h: the shop and the people who work in it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <adwaita.h>

#include "window/session.h"

#define WM_TYPE_PREFERENCES_WINDOW (wm_preferences_window_get_type ())
G_DECLARE_FINAL_TYPE (WmPreferencesWindow, wm_preferences_window, WM, PREFERENCES_WINDOW,
                      AdwPreferencesWindow)

WmPreferencesWindow *wm_preferences_window_new (GtkWindow *parent, WmSession *session);
