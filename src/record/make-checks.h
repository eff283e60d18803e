/* make-checks.h: the checklist of a visit, made from the tables of the trade
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "record/check.h"
#include "trade/trade.h"

/**
 * wm_make_checks:
 * @type: (nullable): key of a piece type
 * @visit_id: the visit they belong to
 *
 * One check an item, in order, not looked at yet, with the wording the tables have
 * today (English as in the tables: shown with wm_trade_text (), printed in the
 * customer's language).
 *
 * Returns: (transfer full) (element-type WmCheck): owns its records; empty for a type
 *   the tables do not know
 */
GPtrArray *wm_make_checks (WmTrade *trade, const char *type, const WmId *visit_id);

/* One check more: of an item that the piece's list does not have. (transfer full) */
WmCheck *wm_make_check (WmTrade *trade, const WmChecklistItem *item, const WmId *visit_id,
                        gint64 position);
