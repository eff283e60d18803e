/* severity-choice.h: one of the four severities, glyph over word
 *
 * Emits "chosen" (int WmSeverity) when a hand has chosen; choosing the same again takes
 * it back (not looked at).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "reckon/severity.h"

#define WM_TYPE_SEVERITY_CHOICE (wm_severity_choice_get_type ())
G_DECLARE_FINAL_TYPE (WmSeverityChoice, wm_severity_choice, WM, SEVERITY_CHOICE,
                      GtkWidget)

void
wm_severity_choice_show (WmSeverityChoice *self, WmSeverity severity, const char *what);
