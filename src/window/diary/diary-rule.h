/* diary-rule.h: the next twelve weeks on a gauge rule, a glyph for each piece due
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#define WM_DIARY_WEEKS 12

#define WM_TYPE_DIARY_RULE (wm_diary_rule_get_type ())
G_DECLARE_FINAL_TYPE (WmDiaryRule, wm_diary_rule, WM, DIARY_RULE, GtkWidget)

/* @days: days from today, sorted, below 0 for overdue; @severities of the same n. */
void
wm_diary_rule_show (WmDiaryRule *self, const int *days, const int *severities, guint n);
