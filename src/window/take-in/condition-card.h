/* condition-card.h: what was seen together with the customer, one thing a line
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/session.h"

#define WM_TYPE_CONDITION_CARD (wm_condition_card_get_type ())
G_DECLARE_FINAL_TYPE (WmConditionCard, wm_condition_card, WM, CONDITION_CARD, GtkWidget)

void wm_condition_card_show (WmConditionCard *self, WmSession *session);
void wm_condition_card_leave (WmConditionCard *self);
