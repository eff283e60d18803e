/* shop-prices.c: what the shop charges, from its settings
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/bench-work/shop-prices.h"

#include <string.h>

#include "window/form/form-value.h"

gint64
wm_shop_money_parse (const char *value, const char *currency)
{
  g_auto (GStrv) parts = value != NULL ? g_strsplit (value, " ", 2) : NULL;
  gint64 minor;

  if (parts == NULL || parts[0] == NULL || parts[1] == NULL
      || !g_str_equal (parts[1], currency)
      || !g_ascii_string_to_signed (parts[0], 10, 0, G_MAXINT64, &minor, NULL))
    return WM_UNKNOWN;
  return minor;
}

static gint64
read_money (WmSession *session, const char *name)
{
  g_autofree char *currency = wm_form_currency (session);
  g_autofree char *value =
      wm_archive_get_setting (wm_session_get_archive (session), name);

  return wm_shop_money_parse (value, currency);
}

gint64
wm_shop_gram_price (WmSession *session, const char *metal)
{
  g_autofree char *name = NULL;

  if (metal == NULL)
    return WM_UNKNOWN;
  name = g_strconcat (WM_SETTING_GRAM_PRICE, metal, NULL);
  return read_money (session, name);
}

void
wm_shop_terms (WmSession *session, WmQuoteTerms *out)
{
  WmVisit *visit = wm_session_get_visit (session);
  g_autofree char *tax =
      wm_archive_get_setting (wm_session_get_archive (session), WM_SETTING_TAX_BP);
  gint64 bp;

  out->rate_minor = read_money (session, WM_SETTING_HOURLY_RATE);
  out->tax_bp = 0;
  if (tax != NULL && g_ascii_string_to_signed (tax, 10, 0, 10000, &bp, NULL))
    out->tax_bp = bp;
  out->limit_minor = visit != NULL ? visit->price_limit_minor : WM_UNKNOWN;
}
