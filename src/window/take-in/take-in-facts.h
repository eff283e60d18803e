/* take-in-facts.h: owner, piece, stones and wishes: the left column of the take-in
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/session.h"

#define WM_TYPE_TAKE_IN_FACTS (wm_take_in_facts_get_type ())
G_DECLARE_FINAL_TYPE (WmTakeInFacts, wm_take_in_facts, WM, TAKE_IN_FACTS, GtkWidget)

void wm_take_in_facts_show (WmTakeInFacts *self, WmSession *session);
void wm_take_in_facts_leave (WmTakeInFacts *self);
/* Where a new piece begins: the owner if there is none yet. */
void wm_take_in_facts_begin (WmTakeInFacts *self);
void wm_take_in_facts_ask_owner (WmTakeInFacts *self);
void wm_take_in_facts_add_stones (WmTakeInFacts *self);
