/* quote-paper.h: what the repairs of a visit would cost, for the customer to decide
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "record/visit-quote.h"
#include "report/row-paper.h"

/**
 * wm_quote_load:
 *
 * The quote of the visit with the shop's hourly rate and tax (record/setting.h). A
 * setting that can not be read, or a rate in another currency, counts as not said.
 *
 * Returns: (transfer full): NULL with the archive's error
 */
WmVisitQuote *wm_quote_load (WmArchive *archive, WmVisitData *data, GError **error);

/* Currency of the piece, else of the shop, else EUR. Caller frees. */
char *wm_quote_currency (WmArchive *archive, WmPiece *piece);

/**
 * wm_quote_paper_new:
 * @today_s: UTC seconds: the date of the quote
 *
 * Declined lines say what happens if they are left. Never a shop note.
 *
 * Returns: (transfer full)
 */
WmRowPaper *
wm_quote_paper_new (WmVisitData *data, const WmVisitQuote *quote, const char *currency,
                    WmLanguage *language, WmPaper paper, gint64 today_s);
