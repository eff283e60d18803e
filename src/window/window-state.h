/* window-state.h: size of the window, who works, what was open: between two starts
 *
 * A key file in the user's state folder; nothing in it is a record, so losing it
 * loses nothing but convenience.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "window/session.h"

void wm_window_state_save (GtkWindow *window, WmSession *session);
/* Size before the window is shown; person and piece if the archive still has them. */
void wm_window_state_restore (GtkWindow *window, WmSession *session);
