/* quote-row-view.h: one remedy on the quote: time, metal, parts, price, answer
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "record/visit-quote.h"
#include "window/session.h"

#define WM_TYPE_QUOTE_ROW_VIEW (wm_quote_row_view_get_type ())
G_DECLARE_FINAL_TYPE (WmQuoteRowView, wm_quote_row_view, WM, QUOTE_ROW_VIEW, GtkWidget)

GtkWidget *wm_quote_row_view_new (WmSession *session);
void wm_quote_row_view_show (WmQuoteRowView *self, const WmQuoteRow *row,
                             const WmQuoteTerms *terms);
void wm_quote_row_view_leave (WmQuoteRowView *self);
