/* remedy-card.h: one finding with what is done about it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "record/bench-plan.h"
#include "report/visit-data.h"
#include "window/session.h"

#define WM_TYPE_REMEDY_CARD (wm_remedy_card_get_type ())
G_DECLARE_FINAL_TYPE (WmRemedyCard, wm_remedy_card, WM, REMEDY_CARD, GtkWidget)

GtkWidget *wm_remedy_card_new (WmSession *session);
void
wm_remedy_card_show (WmRemedyCard *self, const WmFinding *finding, WmBenchPlan *plan);
void wm_remedy_card_leave (WmRemedyCard *self);
