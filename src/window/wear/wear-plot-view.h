/* wear-plot-view.h: the wear of one part over time, drawn
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "report/outlook.h"

#define WM_TYPE_WEAR_PLOT_VIEW (wm_wear_plot_view_get_type ())
G_DECLARE_FINAL_TYPE (WmWearPlotView, wm_wear_plot_view, WM, WEAR_PLOT_VIEW, GtkWidget)

/* Takes a copy of what it draws. @words: what it says, for those who do not see it. */
GtkWidget *wm_wear_plot_view_new (const WmWear *wear, int height, const char *words);
