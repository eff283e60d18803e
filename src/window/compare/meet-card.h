/* meet-card.h: how two photos meet, and what to do when they do not
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/compare/compare-desk.h"

#define WM_TYPE_MEET_CARD (wm_meet_card_get_type ())
G_DECLARE_FINAL_TYPE (WmMeetCard, wm_meet_card, WM, MEET_CARD, GtkWidget)

/* Hides itself while there is no pair. */
void wm_meet_card_show (WmMeetCard *self, const WmMeeting *meeting);
