/* reckon-window.h: every computation of the trade, with what the open piece says
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <adwaita.h>

#include "window/session.h"

#define WM_TYPE_RECKON_WINDOW (wm_reckon_window_get_type ())
G_DECLARE_FINAL_TYPE (WmReckonWindow, wm_reckon_window, WM, RECKON_WINDOW, AdwWindow)

/* Over any page; without a visit nothing is filled in. */
void wm_reckon_window_open (GtkWindow *parent, WmSession *session);
