/* counter-rule.h: the findings on the gauge rule at the foot of the counter view
 *
 * Signal: chosen (int)   a finding was touched; the number of them for the last page
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "report/visit-data.h"

#define WM_TYPE_COUNTER_RULE (wm_counter_rule_get_type ())
G_DECLARE_FINAL_TYPE (WmCounterRule, wm_counter_rule, WM, COUNTER_RULE, GtkWidget)

/* @findings (element-type WmFinding); @names: of each page for screen readers, one more
 * than findings; @current from 0 */
void wm_counter_rule_set (WmCounterRule *self, GPtrArray *findings,
                          const char *const *names, guint current);
/* The ornament alone: ticks along the whole width. */
void wm_counter_rule_set_plain (WmCounterRule *self);
