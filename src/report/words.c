/* words.c: dates, money, weights and severities as a customer reads them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "report/words.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

static const char *const months[] = { N_ ("January"), N_ ("February"), N_ ("March"),
                                      N_ ("April"),   N_ ("May"),      N_ ("June"),
                                      N_ ("July"),    N_ ("August"),   N_ ("September"),
                                      N_ ("October"), N_ ("November"), N_ ("December") };

static char *
write_date (WmLanguage *language, int year, int month, int day)
{
  /* Translators: day, month's name, year: 26 November 2026 */
  return g_strdup_printf (wm_say (language, "%d %s %d"), day,
                          wm_say (language, months[month - 1]), year);
}

char *
wm_words_date (WmLanguage *language, const char *date)
{
  g_autoptr (GDateTime) day = NULL;
  g_autoptr (GTimeZone) utc = g_time_zone_new_utc ();
  g_autofree char *midnight = NULL;

  if (date == NULL)
    return g_strdup ("");

  midnight = g_strconcat (date, "T00:00:00", NULL);
  day = g_date_time_new_from_iso8601 (midnight, utc);
  if (day == NULL)
    return g_strdup (date);
  return write_date (language, g_date_time_get_year (day), g_date_time_get_month (day),
                     g_date_time_get_day_of_month (day));
}

char *
wm_words_day_of (WmLanguage *language, gint64 at_s)
{
  g_autoptr (GDateTime) moment = g_date_time_new_from_unix_local (at_s);

  if (moment == NULL)
    return g_strdup ("");
  return write_date (language, g_date_time_get_year (moment),
                     g_date_time_get_month (moment),
                     g_date_time_get_day_of_month (moment));
}

int
wm_currency_exponent (const char *currency)
{
  /* ISO 4217, list one: the currencies whose minor unit is not a hundredth. From
   * memory, unverified. */
  static const char none[] = " BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX VND VUV XAF"
                             " XOF XPF ";
  static const char three[] = " BHD IQD JOD KWD LYD OMR TND ";
  g_autofree char *word = NULL;

  if (currency == NULL || strlen (currency) != 3)
    return 2;
  word = g_strdup_printf (" %s ", currency);
  if (strstr (none, word) != NULL)
    return 0;
  return strstr (three, word) != NULL ? 3 : 2;
}

/* A number's text with the language's decimal sign. */
static char *
localise (WmLanguage *language, char *number)
{
  char *point = strchr (number, '.');
  GString *text = g_string_new (number);

  if (point != NULL)
    {
      /* Translators: the decimal sign */
      const char *sign = wm_say (language, ".");

      g_string_erase (text, point - number, 1);
      g_string_insert (text, point - number, sign);
    }
  g_free (number);
  return g_string_free (text, FALSE);
}

char *
wm_words_money (WmLanguage *language, gint64 minor, const char *currency)
{
  int exponent = wm_currency_exponent (currency);
  guint64 size = minor < 0 ? (guint64)0 - (guint64)minor : (guint64)minor;
  g_autofree char *digits = g_strdup_printf ("%0*" G_GUINT64_FORMAT, exponent + 1, size);
  gsize whole = strlen (digits) - exponent;
  GString *text = g_string_new (minor < 0 ? "\u2212" : NULL);

  for (gsize i = 0; i < whole; i++)
    {
      /* Groups of three from the point on, never a single digit apart. */
      if (i > 0 && (whole - i) % 3 == 0 && whole > 4)
        g_string_append (text, "\u202f");
      g_string_append_c (text, digits[i]);
    }
  if (exponent > 0)
    {
      g_string_append (text, wm_say (language, "."));
      g_string_append (text, digits + whole);
    }
  if (currency != NULL && *currency != '\0')
    g_string_append_printf (text, "\u00a0%s", currency);
  return g_string_free (text, FALSE);
}

char *
wm_words_mass (WmLanguage *language, gint64 mass_mg)
{
  g_autofree char *grams =
      localise (language, g_strdup_printf ("%.2f", (double)mass_mg / 1000.0));

  return g_strdup_printf ("%s\u00a0g", grams);
}

char *
wm_words_mm (WmLanguage *language, double mm, int digits)
{
  char *number = g_strdup_printf ("%.*f", digits, mm);
  g_autofree char *text = NULL;

  if (digits > 0)
    {
      char *end = number + strlen (number) - 1;

      while (*end == '0')
        *end-- = '\0';
      if (*end == '.')
        *end = '\0';
    }
  text = localise (language, number);
  return g_strdup_printf ("%s\u00a0mm", text);
}

const char *
wm_words_severity (WmLanguage *language, WmSeverity severity)
{
  static const char *const words[] = {
    [WM_SEVERITY_NOT_LOOKED_AT] = N_ ("not looked at"),
    [WM_SEVERITY_SOUND] = N_ ("sound"),
    [WM_SEVERITY_WATCH] = N_ ("watch"),
    [WM_SEVERITY_REPAIR] = N_ ("repair"),
    [WM_SEVERITY_NO_WEAR] = N_ ("do not wear"),
    [WM_SEVERITY_NOT_PRESENT] = N_ ("no such part"),
  };

  g_return_val_if_fail (severity < G_N_ELEMENTS (words), "");
  return wm_say (language, words[severity]);
}

char *
wm_words_mm_within (WmLanguage *language, double mm, double expanded_mm)
{
  g_autofree char *one = localise (language, g_strdup_printf ("%.2f", mm));
  g_autofree char *two =
      localise (language, g_strdup_printf ("%.2f", MAX (expanded_mm, 0.01)));

  return g_strdup_printf ("%s\u00a0±\u00a0%s\u00a0mm", one, two);
}
