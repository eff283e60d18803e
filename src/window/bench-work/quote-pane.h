/* quote-pane.h: the quote: a row a remedy, the customer's answers, the sums
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <adwaita.h>

#include "record/visit-quote.h"
#include "window/session.h"

#define WM_TYPE_QUOTE_PANE (wm_quote_pane_get_type ())
G_DECLARE_FINAL_TYPE (WmQuotePane, wm_quote_pane, WM, QUOTE_PANE, AdwBin)

/* @quote is taken. */
void wm_quote_pane_show (WmQuotePane *self, WmSession *session, WmVisitQuote *quote);
void wm_quote_pane_leave (WmQuotePane *self);
