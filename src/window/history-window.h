/* history-window.h: what was done to the shown piece, newest first
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/session.h"

void wm_history_window_open (GtkWindow *parent, WmSession *session);
