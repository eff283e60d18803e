/* heat-rule.h: the steps of a heat plan on a temperature rule
 *
 * Bars: begins to melt, flows, worked at. Lines: where the metal begins to melt, where
 * old joints let go, where a stone is first in trouble. Everything it shows is in words
 * beside it too.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "record/bench-plan.h"

#define WM_TYPE_HEAT_RULE (wm_heat_rule_get_type ())
G_DECLARE_FINAL_TYPE (WmHeatRule, wm_heat_rule, WM, HEAT_RULE, GtkWidget)

GtkWidget *wm_heat_rule_new (void);
/* @plan (nullable) is borrowed until the next call. */
void wm_heat_rule_show (WmHeatRule *self, const WmBenchPlan *plan);
