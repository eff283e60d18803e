/* gauge-rule.h: the one ornament: a hairline with ticks, always a scale
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

/* Tick lengths, px (look book, section 1). */
#define WM_TICK_SHORT 3
#define WM_TICK_MIDDLE 5
#define WM_TICK_LONG 7

/* Draws the line from @x0 to @x1 at @y and nothing else; whole pixels. */
void wm_gauge_rule_line (GtkSnapshot *snapshot, double x0, double x1, double y,
                         const GdkRGBA *colour);
/* One tick upwards (@length below 0) or downwards from @y. */
void wm_gauge_rule_tick (GtkSnapshot *snapshot, double x, double y, int length,
                         const GdkRGBA *colour);
