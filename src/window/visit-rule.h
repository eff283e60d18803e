/* visit-rule.h: the visits of a piece by date on a gauge rule
 *
 * One button a visit: its worst severity as glyph, this visit in an accent pill.
 * Visits closer than a button's width are moved apart, in order.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/session.h"

#define WM_TYPE_VISIT_RULE (wm_visit_rule_get_type ())
G_DECLARE_FINAL_TYPE (WmVisitRule, wm_visit_rule, WM, VISIT_RULE, GtkWidget)

/* @visits: (element-type WmVisit), oldest first; @severities: worst of each.
 * Emits "chosen" (guint index). */
void wm_visit_rule_set_visits (WmVisitRule *self, GPtrArray *visits,
                               const int *severities, int current);
