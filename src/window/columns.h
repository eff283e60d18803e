/* columns.h: up to three columns beside each other, as many as there is room for
 *
 * Children in order; each asks for its width by "width-request". All that fit stand
 * beside each other, centred, the second taking what is left up to a limit; with less
 * room the third goes under the second, then everything is one column.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#define WM_TYPE_COLUMNS (wm_columns_get_type ())
G_DECLARE_FINAL_TYPE (WmColumns, wm_columns, WM, COLUMNS, GtkWidget)
