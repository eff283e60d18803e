/* plan-pane.h: the heat plan: rule, margins in words, what to look out for
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <adwaita.h>

#include "record/bench-plan.h"
#include "window/session.h"

#define WM_TYPE_PLAN_PANE (wm_plan_pane_get_type ())
G_DECLARE_FINAL_TYPE (WmPlanPane, wm_plan_pane, WM, PLAN_PANE, AdwBin)

/* @plan is taken. */
void wm_plan_pane_show (WmPlanPane *self, WmSession *session, WmBenchPlan *plan);
void wm_plan_pane_leave (WmPlanPane *self);
