/* wire-section.h: what is left of a worn thickness, to scale
 *
 * A circle dashed as it was made, filled what is left, worn from one side (look book,
 * section 1). Stands beside the numbers, which say the same.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#define WM_TYPE_WIRE_SECTION (wm_wire_section_get_type ())
G_DECLARE_FINAL_TYPE (WmWireSection, wm_wire_section, WM, WIRE_SECTION, GtkWidget)

GtkWidget *wm_wire_section_new (void);

/* @ratio: thickness left through thickness as made, cut to 0 .. 1 */
void wm_wire_section_set_ratio (WmWireSection *self, double ratio);
/* Diameter, view px; 52 at first. */
void wm_wire_section_set_diameter (WmWireSection *self, int diameter);
