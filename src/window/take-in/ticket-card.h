/* ticket-card.h: what the ticket of this visit says
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/session.h"

#define WM_TYPE_TICKET_CARD (wm_ticket_card_get_type ())
G_DECLARE_FINAL_TYPE (WmTicketCard, wm_ticket_card, WM, TICKET_CARD, GtkWidget)

void wm_ticket_card_show (WmTicketCard *self, WmSession *session);
