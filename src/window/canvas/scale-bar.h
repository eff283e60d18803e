/* scale-bar.h: how long a millimetre is in the view
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#define WM_TYPE_SCALE_BAR (wm_scale_bar_get_type ())
G_DECLARE_FINAL_TYPE (WmScaleBar, wm_scale_bar, WM, SCALE_BAR, GtkWidget)

/**
 * wm_scale_bar_choose:
 * @px_per_mm: view px that a true millimetre takes, above 0
 * @longest_px: view px there is room for
 *
 * Returns: the longest length of 1, 2 or 5 times a power of ten that fits, mm; NaN when
 *   @px_per_mm is no use
 */
double wm_scale_bar_choose (double px_per_mm, double longest_px);

/* The photo lies at a slant: the bar holds for its middle, and says so. Before
 * wm_scale_bar_set_px_per_mm () of the same photo. */
void wm_scale_bar_set_middle_only (WmScaleBar *self, gboolean middle_only);
/* NaN: the photo has no scale, and the bar hides itself. */
void wm_scale_bar_set_px_per_mm (WmScaleBar *self, double px_per_mm);
