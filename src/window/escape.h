/* escape.h: a window that Escape closes, as it does a dialog
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

void wm_close_on_escape (GtkWidget *window);
