/* wear-window.h: the wear of the shown piece over the years, over any page
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/session.h"

void wm_wear_window_open (GtkWindow *parent, WmSession *session);
