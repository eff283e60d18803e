/* window-actions.h: what the window's own actions do
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/main-window.h"

void wm_window_actions_add (WmMainWindow *window);
/* Which of them make sense now. */
void wm_window_actions_refresh (WmMainWindow *window);
