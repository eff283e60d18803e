/* glyph.h: the claw glyph of a severity as a widget
 *
 * Says its severity to a screen reader unless the word stands beside it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "reckon/severity.h"

#define WM_TYPE_GLYPH (wm_glyph_get_type ())
G_DECLARE_FINAL_TYPE (WmGlyph, wm_glyph, WM, GLYPH, GtkWidget)

/* @radius: disc radius, px: WM_MARK_R_CHIP or WM_MARK_R_ROW (photo/mark-look.h) */
GtkWidget *wm_glyph_new (WmSeverity severity, double radius);

/* Properties: severity (int), number (int, 0 none), radius (double). */
void wm_glyph_set_severity (WmGlyph *self, WmSeverity severity);
void wm_glyph_set_number (WmGlyph *self, int number);
void wm_glyph_set_radius (WmGlyph *self, double radius);

/* "do not wear": what stands beside the glyph. Translated, static. */
const char *wm_severity_word (WmSeverity severity);
