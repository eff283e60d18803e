/* shop-prices.h: what the shop charges, from its settings
 *
 * Money is kept with its currency ("6500 EUR", minor units), so that a price in another
 * currency is never mixed in.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "record/visit-quote.h"
#include "window/session.h"

#define WM_SETTING_HOURLY_RATE "hourly-rate"
#define WM_SETTING_TAX_BP "tax-bp"          /* hundredths of a per cent */
#define WM_SETTING_GRAM_PRICE "gram-price-" /* and the key of an alloy */

/* Terms of the shown visit, in the piece's currency. */
void wm_shop_terms (WmSession *session, WmQuoteTerms *out);
/* Minor units a gram, or WM_UNKNOWN. */
gint64 wm_shop_gram_price (WmSession *session, const char *metal);
/* "6500 EUR" in @currency; WM_UNKNOWN for another currency or nonsense. */
gint64 wm_shop_money_parse (const char *value, const char *currency);
