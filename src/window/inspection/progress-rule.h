/* progress-rule.h: how far the checklist is: one tick a check
 *
 * Short for sound or not present, tall for a finding, a dot for one not looked at
 * (look book, section 4, last line).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#define WM_TYPE_PROGRESS_RULE (wm_progress_rule_get_type ())
G_DECLARE_FINAL_TYPE (WmProgressRule, wm_progress_rule, WM, PROGRESS_RULE, GtkWidget)

/* @severities: one WmSeverity a check, copied; @current: the open one, or -1 */
void wm_progress_rule_set (WmProgressRule *self, const guint8 *severities, guint n_checks,
                           int current);
