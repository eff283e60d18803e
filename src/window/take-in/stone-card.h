/* stone-card.h: the stones of the shown piece, kind by kind
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/session.h"

#define WM_TYPE_STONE_CARD (wm_stone_card_get_type ())
G_DECLARE_FINAL_TYPE (WmStoneCard, wm_stone_card, WM, STONE_CARD, GtkWidget)

void wm_stone_card_show (WmStoneCard *self, WmSession *session);
/* An edit that adds a row; its first field gets the focus when it is there. */
void wm_stone_card_add (WmStoneCard *self);
void wm_stone_card_leave (WmStoneCard *self);
