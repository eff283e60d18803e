/* next-check-card.h: the suggested date of the next check, with its reason
 *
 * A suggestion: the button (action hand-back.take-date) takes it; the jeweller's own date
 * and reason stay what they are.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "report/outlook.h"
#include "window/session.h"

#define WM_TYPE_NEXT_CHECK_CARD (wm_next_check_card_get_type ())
G_DECLARE_FINAL_TYPE (WmNextCheckCard, wm_next_check_card, WM, NEXT_CHECK_CARD, GtkWidget)

/* @outlook (nullable): hides the card. */
void wm_next_check_card_show (WmNextCheckCard *self, WmSession *session,
                              const WmOutlook *outlook);

/* Puts date and reason into the visit: one edit. The reason is in the owner's language,
 * as it is printed. Does nothing without a suggestion. */
void wm_next_check_take (WmSession *session);
