/* form-value.c: a record's field as text in a form, and back
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/form/form-value.h"

#include <glib/gi18n.h>
#include <math.h>

#include "report/words.h"
#include "trade/fineness.h"
#include "trade/trade.h"
#include "window/labels.h"

GType
wm_form_kind_get_type (void)
{
  static gsize type;
  static const GEnumValue values[] = {
    { WM_FORM_TEXT, "WM_FORM_TEXT", "text" },
    { WM_FORM_DATE, "WM_FORM_DATE", "date" },
    { WM_FORM_MONEY, "WM_FORM_MONEY", "money" },
    { WM_FORM_MASS, "WM_FORM_MASS", "mass" },
    { WM_FORM_MM, "WM_FORM_MM", "mm" },
    { WM_FORM_COUNT, "WM_FORM_COUNT", "count" },
    { WM_FORM_PHONE, "WM_FORM_PHONE", "phone" },
    { WM_FORM_EMAIL, "WM_FORM_EMAIL", "email" },
    { WM_FORM_FINENESS, "WM_FORM_FINENESS", "fineness" },
    { WM_FORM_METAL, "WM_FORM_METAL", "metal" },
    { WM_FORM_STONE, "WM_FORM_STONE", "stone" },
    { WM_FORM_CUT, "WM_FORM_CUT", "cut" },
    { WM_FORM_CURRENCY, "WM_FORM_CURRENCY", "currency" },
    { WM_FORM_REMEDY, "WM_FORM_REMEDY", "remedy" },
    { WM_FORM_SHOP_MONEY, "WM_FORM_SHOP_MONEY", "shop-money" },
    { WM_FORM_PERCENT, "WM_FORM_PERCENT", "percent" },
    { WM_FORM_TEST, "WM_FORM_TEST", "test" },
    { 0, NULL, NULL },
  };

  if (g_once_init_enter (&type))
    g_once_init_leave (&type, g_enum_register_static ("WmFormKind", values));
  return type;
}

/* ---- names of the tables ------------------------------------------------------- */

static const char *
find_name (WmTrade *trade, WmFormKind kind, const char *key)
{
  const WmMetal *metal;
  const WmStone *stone;
  const WmCut *cut;

  if (trade == NULL || key == NULL)
    return NULL;
  switch (kind)
    {
    case WM_FORM_METAL:
      metal = wm_trade_find_metal (trade, key);
      return metal == NULL ? NULL : wm_trade_text (metal->name);
    case WM_FORM_STONE:
      stone = wm_trade_find_stone (trade, key);
      return stone == NULL ? NULL : wm_trade_text (stone->name);
    case WM_FORM_CUT:
      cut = wm_trade_find_cut (trade, key);
      return cut == NULL ? NULL : wm_trade_text (cut->name);
    case WM_FORM_REMEDY:
    case WM_FORM_TEST:
      /* Kept in the tables' own words, as checks are; shown in the reader's. */
      return wm_trade_text (key);
    default:
      return NULL;
    }
}

static gboolean
is_name (const char *text, const char *name)
{
  g_autofree char *folded_text = g_utf8_casefold (text, -1);
  g_autofree char *folded_name = g_utf8_casefold (wm_trade_text (name), -1);

  return g_str_equal (folded_text, folded_name);
}

/* The key whose name was typed; NULL: they are plain words. */
static const char *
find_key (WmTrade *trade, WmFormKind kind, const char *text)
{
  if (trade == NULL)
    return NULL;

  if (kind == WM_FORM_METAL)
    for (const WmMetal *const *row = wm_trade_list_metals (trade, NULL); *row; row++)
      if (is_name (text, (*row)->name))
        return (*row)->key;
  if (kind == WM_FORM_STONE)
    for (const WmStone *const *row = wm_trade_list_stones (trade, NULL); *row; row++)
      if (is_name (text, (*row)->name))
        return (*row)->key;
  if (kind == WM_FORM_CUT)
    for (const WmCut *const *row = wm_trade_list_cuts (trade, NULL); *row; row++)
      if (is_name (text, (*row)->name))
        return (*row)->key;
  if (kind == WM_FORM_REMEDY)
    for (const WmRemedyRow *const *row = wm_trade_list_remedies (trade, NULL); *row;
         row++)
      if (is_name (text, (*row)->name))
        return (*row)->name;
  if (kind == WM_FORM_TEST)
    for (const WmFinalTest *const *row = wm_trade_list_tests (trade, NULL); *row; row++)
      if (is_name (text, (*row)->customer))
        return (*row)->customer;
  return NULL;
}

/* ---- to text --------------------------------------------------------------------- */

static char *
format_int (WmSession *session, WmFormKind kind, gint64 value)
{
  g_autofree char *currency = NULL;

  if (value == WM_UNKNOWN)
    return g_strdup ("");
  if (kind == WM_FORM_MASS)
    return wm_label_mass (value);
  if (kind == WM_FORM_MONEY)
    {
      currency = wm_form_currency (session);
      return wm_label_money (value, currency);
    }
  return g_strdup_printf ("%" G_GINT64_FORMAT, value);
}

static char *
get_shop_currency (WmSession *session)
{
  char *currency =
      wm_archive_get_setting (wm_session_get_archive (session), WM_SETTING_CURRENCY);

  return currency != NULL ? currency : g_strdup ("EUR");
}

/* Money and per cents of the settings; nonsense is shown as it is kept. */
static char *
format_setting (WmFormKind kind, const char *text)
{
  g_auto (GStrv) parts = g_strsplit (text, " ", 2);
  gint64 number;

  if (parts[0] == NULL
      || !g_ascii_string_to_signed (parts[0], 10, 0, G_MAXINT64, &number, NULL))
    return g_strdup (text);
  if (kind == WM_FORM_SHOP_MONEY)
    return wm_label_money (number, parts[1]);
  if (number % 100 == 0)
    return g_strdup_printf ("%" G_GINT64_FORMAT " %%", number / 100);
  return g_strdup_printf ("%" G_GINT64_FORMAT ".%02" G_GINT64_FORMAT " %%", number / 100,
                          number % 100);
}

static char *
format_text (WmSession *session, WmFormKind kind, const char *text)
{
  const char *name = find_name (wm_session_get_trade (session), kind, text);

  if (text == NULL)
    return g_strdup ("");
  if (kind == WM_FORM_SHOP_MONEY || kind == WM_FORM_PERCENT)
    return format_setting (kind, text);
  return g_strdup (name == NULL ? text : name);
}

char *
wm_form_value_format (WmSession *session, WmFormKind kind, WmRecord *record,
                      const WmField *field)
{
  gpointer member = wm_record_get_member (record, field);

  switch (field->type)
    {
    case WM_FIELD_TEXT:
      return format_text (session, kind, *(char **)member);
    case WM_FIELD_DATE:
      return wm_label_long_date (*(char **)member);
    case WM_FIELD_INT:
    case WM_FIELD_NUMBER:
      return format_int (session, kind, *(gint64 *)member);
    case WM_FIELD_REAL:
      return wm_label_mm (*(double *)member);
    default:
      g_return_val_if_reached (g_strdup (""));
    }
}

/* A metal of the table brings its fineness, unless one was read off the piece. */
static void
take_metal (WmSession *session, WmRecord *record)
{
  WmPiece *piece = WM_PIECE (record);
  const WmMetal *metal = NULL;

  if (piece->metal != NULL && piece->fineness == WM_UNKNOWN)
    metal = wm_trade_find_metal (wm_session_get_trade (session), piece->metal);
  if (metal != NULL && !isnan (metal->fineness))
    g_object_set (record, "fineness", (gint64)metal->fineness, NULL);
}

/* ---- from text -------------------------------------------------------------------- */

char *
wm_form_currency (WmSession *session)
{
  WmPiece *piece = wm_session_get_piece (session);
  char *currency;

  if (piece != NULL && piece->currency != NULL)
    return g_strdup (piece->currency);
  currency =
      wm_archive_get_setting (wm_session_get_archive (session), WM_SETTING_CURRENCY);
  return currency != NULL ? currency : g_strdup ("EUR");
}

/* A fineness that the table does not have for this metal is kept, with a remark: old
 * and foreign pieces have others. */
static WmFieldVerdict
judge_fineness (WmSession *session, WmRecord *record, gint64 ppt, char **out_remark)
{
  WmTrade *trade = wm_session_get_trade (session);
  const WmMetal *metal = NULL;
  const char *family = NULL;

  if (trade == NULL || ppt == WM_UNKNOWN || !WM_IS_PIECE (record))
    return WM_FIELD_OK;
  if (WM_PIECE (record)->metal != NULL)
    metal = wm_trade_find_metal (trade, WM_PIECE (record)->metal);
  if (metal != NULL)
    family = metal->family;
  if (family == NULL || wm_trade_find_fineness (trade, family) == NULL
      || wm_fineness_is_standard (trade, family, (guint)ppt))
    return WM_FIELD_OK;

  *out_remark =
      g_strdup_printf (_ ("%d is not a usual fineness of this metal."), (int)ppt);
  return WM_FIELD_ODD;
}

static WmFieldVerdict
parse_int (WmSession *session, WmFormKind kind, const char *text, WmRecord *record,
           gint64 *value, char **out_remark)
{
  g_autofree char *currency = NULL;
  WmFieldVerdict verdict;

  switch (kind)
    {
    case WM_FORM_MONEY:
      currency = wm_form_currency (session);
      return wm_field_check_money (text, currency, wm_currency_exponent (currency), value,
                                   out_remark);
    case WM_FORM_MASS:
      return wm_field_check_mass (text, value, out_remark);
    case WM_FORM_FINENESS:
      verdict = wm_field_check_fineness (text, value, out_remark);
      return verdict == WM_FIELD_OK ? judge_fineness (session, record, *value, out_remark)
                                    : verdict;
    case WM_FORM_COUNT:
    default:
      return wm_field_check_count (text, value, out_remark);
    }
}

/* Up to 100 with at most two digits behind the sign, without and with "%". */
static WmFieldVerdict
parse_percent (const char *own, char **value, char **out_remark)
{
  g_autoptr (GRegex) regex =
      g_regex_new ("^(\\d{1,3})(?:[.,](\\d{1,2}))?\\s*%?$", 0, 0, NULL);
  g_autoptr (GMatchInfo) match = NULL;
  gint64 bp = 10001;

  if (*own == '\0')
    return WM_FIELD_OK;
  if (g_regex_match (regex, own, 0, &match))
    {
      g_autofree char *whole = g_match_info_fetch (match, 1);
      g_autofree char *rest = g_match_info_fetch (match, 2);
      gint64 hundredths = rest == NULL ? 0 : g_ascii_strtoll (rest, NULL, 10);

      if (rest != NULL && rest[0] != '\0' && rest[1] == '\0')
        hundredths *= 10;
      bp = 100 * g_ascii_strtoll (whole, NULL, 10) + hundredths;
    }
  if (bp > 10000)
    {
      *out_remark = g_strdup (_ ("Write per cents like 19 or 8.1, up to 100."));
      return WM_FIELD_WRONG;
    }
  *value = g_strdup_printf ("%" G_GINT64_FORMAT, bp);
  return WM_FIELD_OK;
}

static WmFieldVerdict
parse_shop_money (WmSession *session, const char *own, char **value, char **out_remark)
{
  g_autofree char *currency = get_shop_currency (session);
  gint64 minor = WM_UNKNOWN;
  WmFieldVerdict verdict = wm_field_check_money (
      own, currency, wm_currency_exponent (currency), &minor, out_remark);

  if (verdict != WM_FIELD_WRONG && minor != WM_UNKNOWN)
    *value = g_strdup_printf ("%" G_GINT64_FORMAT " %s", minor, currency);
  return verdict;
}

static WmFieldVerdict
parse_text (WmSession *session, WmFormKind kind, const char *text, char **value,
            char **out_remark)
{
  g_autofree char *own = g_strstrip (g_strdup (text));
  const char *key;
  WmFieldVerdict verdict = WM_FIELD_OK;

  if (kind == WM_FORM_PHONE)
    verdict = wm_field_check_phone (own, out_remark);
  else if (kind == WM_FORM_EMAIL)
    verdict = wm_field_check_email (own, out_remark);
  else if (kind == WM_FORM_CURRENCY)
    return wm_field_check_currency (own, value, out_remark);
  else if (kind == WM_FORM_PERCENT)
    return parse_percent (own, value, out_remark);
  else if (kind == WM_FORM_SHOP_MONEY)
    return parse_shop_money (session, own, value, out_remark);
  if (verdict == WM_FIELD_WRONG)
    return verdict;

  key = find_key (wm_session_get_trade (session), kind, own);
  *value = key != NULL ? g_strdup (key) : g_steal_pointer (&own);
  return verdict;
}

WmFieldVerdict
wm_form_value_parse (WmSession *session, WmFormKind kind, const char *text,
                     WmRecord *record, const WmField *field, char **out_remark)
{
  g_autofree char *words = NULL;
  g_autofree char *today = NULL;
  g_autoptr (GDateTime) now = NULL;
  WmFieldVerdict verdict;
  gint64 number;
  double real;

  *out_remark = NULL;
  switch (field->type)
    {
    case WM_FIELD_TEXT:
      verdict = parse_text (session, kind, text, &words, out_remark);
      if (verdict != WM_FIELD_WRONG)
        wm_record_set_text (record, field->name, words);
      if (kind == WM_FORM_METAL && WM_IS_PIECE (record)
          && wm_session_get_trade (session) != NULL)
        take_metal (session, record);
      return verdict;
    case WM_FIELD_DATE:
      now = g_date_time_new_now_local ();
      today = g_date_time_format (now, "%Y-%m-%d");
      verdict = wm_field_check_date (text, today, &words, out_remark);
      if (verdict != WM_FIELD_WRONG)
        wm_record_set_text (record, field->name, words);
      return verdict;
    case WM_FIELD_REAL:
      verdict = wm_field_check_mm (text, &real, out_remark);
      if (verdict != WM_FIELD_WRONG)
        g_object_set (record, field->name, real, NULL);
      return verdict;
    case WM_FIELD_INT:
    case WM_FIELD_NUMBER:
      verdict = parse_int (session, kind, text, record, &number, out_remark);
      if (verdict != WM_FIELD_WRONG)
        g_object_set (record, field->name, number, NULL);
      return verdict;
    default:
      g_return_val_if_reached (WM_FIELD_WRONG);
    }
}

const char *
wm_form_edit_label (WmRecord *record, const WmField *field)
{
  static const struct
  {
    const char *name;
    const char *label;
  } settings[] = {
    { WM_SETTING_SHOP_NAME, N_ ("Name of the shop") },
    { WM_SETTING_SHOP_ADDRESS, N_ ("Address of the shop") },
    { WM_SETTING_SHOP_CONTACT, N_ ("Contact of the shop") },
    { WM_SETTING_CURRENCY, N_ ("Currency of the shop") },
    { WM_SETTING_PAPER, N_ ("Paper") },
    { WM_SETTING_TERMS, N_ ("Terms of the shop") },
  };

  if (WM_IS_SETTING (record))
    for (guint i = 0; i < G_N_ELEMENTS (settings); i++)
      if (g_strcmp0 (settings[i].name, WM_SETTING (record)->name) == 0)
        return settings[i].label;
  if (WM_IS_SETTING (record) && WM_SETTING (record)->name != NULL)
    {
      if (g_str_equal (WM_SETTING (record)->name, "hourly-rate"))
        return N_ ("Hourly rate");
      if (g_str_equal (WM_SETTING (record)->name, "tax-bp"))
        return N_ ("Tax in per cent");
      if (g_str_has_prefix (WM_SETTING (record)->name, "gram-price-"))
        return N_ ("Price of a metal");
    }
  return field->plain_name;
}
