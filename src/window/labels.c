/* labels.c: dates, numbers and people in the words of the reader's language
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/labels.h"

#include <glib/gi18n.h>
#include <locale.h>
#include <math.h>
#include <string.h>

#include "report/words.h"
#include "trade/trade.h"

static char *
format_time (gint64 at_s, const char *format)
{
  g_autoptr (GDateTime) at = NULL;

  if (at_s == WM_UNKNOWN)
    return g_strdup ("");
  at = g_date_time_new_from_unix_local (at_s);
  return at == NULL ? g_strdup ("") : g_date_time_format (at, format);
}

static GDateTime *
parse_date (const char *date)
{
  g_autoptr (GTimeZone) here = g_time_zone_new_local ();
  g_autofree char *text = NULL;

  if (date == NULL)
    return NULL;
  text = g_strconcat (date, "T12:00:00", NULL);
  return g_date_time_new_from_iso8601 (text, here);
}

static char *
format_short (GDateTime *at)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();

  if (at == NULL)
    return g_strdup ("");
  /* Translators: a date of this year, and of another, as short as can be. */
  return g_date_time_format (at, g_date_time_get_year (at) == g_date_time_get_year (now)
                                     ? _ ("%-d %b")
                                     : _ ("%-d %b %Y"));
}

char *
wm_label_day (gint64 at_s)
{
  /* Translators: a date as in a letter: 26 November 2026 */
  return format_time (at_s, _ ("%-d %B %Y"));
}

char *
wm_label_short_day (gint64 at_s)
{
  g_autoptr (GDateTime) at =
      at_s == WM_UNKNOWN ? NULL : g_date_time_new_from_unix_local (at_s);

  return format_short (at);
}

char *
wm_label_moment (gint64 at_s)
{
  /* Translators: a date with the time of day: 26 Nov 2026, 09:12 */
  return format_time (at_s, _ ("%-d %b %Y, %H:%M"));
}

char *
wm_label_date (const char *date)
{
  g_autoptr (GDateTime) at = parse_date (date);

  return at == NULL ? g_strdup ("") : g_date_time_format (at, _ ("%-d %B %Y"));
}

char *
wm_label_short_date (const char *date)
{
  g_autoptr (GDateTime) at = parse_date (date);

  return format_short (at);
}

char *
wm_label_long_date (const char *date)
{
  g_autoptr (GDateTime) at = parse_date (date);

  return at == NULL ? g_strdup ("") : g_date_time_format (at, _ ("%-d %b %Y"));
}

char *
wm_label_week_day (gint64 at_s)
{
  return format_time (at_s, _ ("%-d %b"));
}

char *
wm_label_month (const char *date)
{
  g_autoptr (GDateTime) at = parse_date (date);
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();

  if (at == NULL)
    return g_strdup ("");
  /* %OB: the month as it stands alone, which some languages write differently. */
  return g_date_time_format (
      at, g_date_time_get_year (at) == g_date_time_get_year (now) ? "%OB" : "%OB %Y");
}

char *
wm_label_money (gint64 minor, const char *currency)
{
  int exponent = wm_currency_exponent (currency);
  g_autofree char *digits = g_strdup_printf ("%0*" G_GINT64_FORMAT, exponent + 1, minor);
  gsize whole = strlen (digits) - exponent;
  GString *text = g_string_new (NULL);

  for (gsize i = 0; i < whole; i++)
    {
      /* Groups of three apart by thin blanks, ISO 80000-1, 7.3.1; four stay together. */
      if (i > 0 && whole > 4 && (whole - i) % 3 == 0)
        g_string_append (text, "\u202f");
      g_string_append_c (text, digits[i]);
    }
  if (exponent > 0)
    g_string_append_printf (text, "%s%s", localeconv ()->decimal_point, digits + whole);
  g_string_append_printf (text, "\u00a0%s", currency);

  return g_string_free (text, FALSE);
}

char *
wm_label_mass (gint64 mass_mg)
{
  if (mass_mg == WM_UNKNOWN)
    return g_strdup ("");
  /* A bench balance shows hundredths of a gram; a third figure only if it was given. */
  return g_strdup_printf (mass_mg % 10 == 0 ? _ ("%.2f g") : _ ("%.3f g"),
                          mass_mg / 1000.0);
}

char *
wm_label_mm (double mm)
{
  return isnan (mm) ? g_strdup ("") : g_strdup_printf (_ ("%g mm"), mm);
}

static const WmPieceType *
find_type (WmSession *session, const char *type)
{
  WmTrade *trade = wm_session_get_trade (session);

  return trade == NULL || type == NULL ? NULL : wm_trade_find_piece_type (trade, type);
}

char *
wm_label_type (WmSession *session, const char *type)
{
  const WmPieceType *row = find_type (session, type);

  if (row != NULL)
    return g_strdup (wm_trade_text (row->name));
  return g_strdup (type == NULL ? "" : type);
}

const char *
wm_label_type_icon (WmSession *session, const char *type)
{
  const WmPieceType *row = find_type (session, type);

  return row != NULL && row->icon != NULL ? row->icon : "wm-pieces-symbolic";
}

char *
wm_label_metal (WmSession *session, WmPiece *piece)
{
  WmTrade *trade = wm_session_get_trade (session);
  const WmMetal *metal = NULL;

  if (piece->metal == NULL)
    return piece->fineness == WM_UNKNOWN
               ? g_strdup ("")
               : g_strdup_printf (_ ("fineness %d"), (int)piece->fineness);

  if (trade != NULL)
    metal = wm_trade_find_metal (trade, piece->metal);
  return g_strdup (metal == NULL ? piece->metal : wm_trade_text (metal->name));
}

char *
wm_label_piece (WmSession *session, WmPiece *piece)
{
  g_autofree char *type = wm_label_type (session, piece->type);
  g_autofree char *metal = wm_label_metal (session, piece);
  const char *second = metal[0] != '\0' ? metal : piece->description;

  if (second == NULL || second[0] == '\0')
    return g_steal_pointer (&type);
  return type[0] == '\0' ? g_strdup (second) : g_strdup_printf ("%s, %s", type, second);
}
