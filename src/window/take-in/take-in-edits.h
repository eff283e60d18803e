/* take-in-edits.h: the edits of taking a piece in that touch more than one record
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/session.h"

/* A new piece with its first visit; shown when it is on disk. */
void wm_take_in_new_piece (WmSession *session);
/* Another visit of the shown piece, with the checks of its type as they are today. */
void wm_take_in_new_visit (WmSession *session);

/* The kind of the shown piece, and the checklist that goes with it: checks that were
 * answered stay, those not looked at give way to the new kind's. @type (nullable) */
void wm_take_in_set_type (WmSession *session, const char *type);

void wm_take_in_set_owner (WmSession *session, WmPerson *owner);
/* A customer the shop does not know yet. */
void wm_take_in_new_owner (WmSession *session, const char *name);
