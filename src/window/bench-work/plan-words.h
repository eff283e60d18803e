/* plan-words.h: a heat plan in the jeweller's words
 *
 * All return new text in the language of the program; the caller frees it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "record/bench-plan.h"

/* "End ring: new ring, soldered" */
char *wm_plan_step_title (const WmPlanStep *step);
/* "18 k yellow gold solder, easy" or "laser, no flame" */
char *wm_plan_step_how (const WmPlanStep *step);
/* "begins 695, flows 720, worked at 750"; "" without a flame */
char *wm_plan_step_heat (const WmPlanStep *step);

/* One cell of the margins; @out_bad: on the caution's ground. */
char *wm_plan_metal_margin (const WmPlanStep *step, gboolean *out_bad);
char *
wm_plan_joint_margin (const WmBenchPlan *plan, const WmPlanStep *step, gboolean *out_bad);
char *wm_plan_stone_margin (const WmPlanStep *step, gboolean *out_bad);

/* Why the plan can not be called safe, one reason a line; NULL if it can. */
char *wm_plan_refusal (const WmBenchPlan *plan);
/* What else to look out for, one sentence an element. */
GPtrArray *wm_plan_notes (const WmBenchPlan *plan);
/* Cautions for the agents used, each once. */
GPtrArray *wm_plan_cautions (const WmBenchPlan *plan);
/* Where each number comes from. */
GPtrArray *wm_plan_sources (const WmBenchPlan *plan);
/* All steps in one sentence each. */
char *wm_plan_describe (const WmBenchPlan *plan);
