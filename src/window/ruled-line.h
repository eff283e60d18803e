/* ruled-line.h: a line across with a tick a millimetre, as on a rule
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#define WM_TYPE_RULED_LINE (wm_ruled_line_get_type ())
G_DECLARE_FINAL_TYPE (WmRuledLine, wm_ruled_line, WM, RULED_LINE, GtkWidget)
