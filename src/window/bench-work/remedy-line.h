/* remedy-line.h: one thing that is done about a finding: words, price, answer, done
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "record/bench-plan.h"
#include "window/session.h"

#define WM_TYPE_REMEDY_LINE (wm_remedy_line_get_type ())
G_DECLARE_FINAL_TYPE (WmRemedyLine, wm_remedy_line, WM, REMEDY_LINE, GtkWidget)

GtkWidget *wm_remedy_line_new (WmSession *session);
void wm_remedy_line_show (WmRemedyLine *self, WmRemedy *remedy, WmBenchPlan *plan);
void wm_remedy_line_leave (WmRemedyLine *self);
