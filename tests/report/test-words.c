/* test-words.c: dates, money and weights on paper
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "report/words.h"

static void
test_dates (void)
{
  g_autoptr (WmLanguage) english = wm_language_new ("en");
  static const char *const days[][2] = {
    { "2026-11-26", "26 November 2026" },
    { "2024-02-29", "29 February 2024" }, /* a leap day: ISO 8601, Gregorian rule */
    { "2026-02-29", "2026-02-29" },       /* no such day: as it is */
    { "soon", "soon" },
    { "", "" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (days); i++)
    {
      g_autofree char *words = wm_words_date (english, days[i][0]);

      g_assert_cmpstr (words, ==, days[i][1]);
    }
  {
    g_autofree char *nothing = wm_words_date (english, NULL);

    g_assert_cmpstr (nothing, ==, "");
  }
}

/* Minor units: ISO 4217 for EUR, JPY, KWD (from memory, as the reference marks it).
 * Groups of three by a thin space, four digits together: ISO 80000-1, 7.3.1. */
static void
test_money (void)
{
  g_autoptr (WmLanguage) english = wm_language_new (NULL);
  static const struct
  {
    gint64 minor;
    const char *currency;
    const char *words;
  } rows[] = {
    { 0, "EUR", "0.00\u00a0EUR" },
    { 7, "EUR", "0.07\u00a0EUR" },
    { 26692, "EUR", "266.92\u00a0EUR" },
    { 680000, "GBP", "6800.00\u00a0GBP" },
    { 2900000, "GBP", "29\u202f000.00\u00a0GBP" },
    { 34793, "JPY", "34\u202f793\u00a0JPY" },
    { 72252, "KWD", "72.252\u00a0KWD" },
    { -5, "EUR", "\u22120.05\u00a0EUR" },
    { 100, NULL, "1.00" },
    { G_MININT64 + 1, "EUR",
      "\u221292\u202f233\u202f720\u202f368\u202f547\u202f758.07\u00a0EUR" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *words = wm_words_money (english, rows[i].minor, rows[i].currency);

      g_assert_cmpstr (words, ==, rows[i].words);
    }
}

static void
test_measures (void)
{
  g_autoptr (WmLanguage) english = wm_language_new ("en");
  g_autofree char *mass = wm_words_mass (english, 18424);
  g_autofree char *whole = wm_words_mm (english, 178.0, 1);
  g_autofree char *part = wm_words_mm (english, 0.52, 2);
  g_autofree char *round = wm_words_mm (english, 0.9, 2);
  g_autofree char *ten = wm_words_mm (english, 10, 0);

  g_assert_cmpstr (mass, ==, "18.42\u00a0g");
  g_assert_cmpstr (whole, ==, "178\u00a0mm");
  g_assert_cmpstr (part, ==, "0.52\u00a0mm");
  g_assert_cmpstr (round, ==, "0.9\u00a0mm");
  g_assert_cmpstr (ten, ==, "10\u00a0mm");
}

/* The four words of the trade that everything else speaks of. */
static void
test_severities (void)
{
  g_autoptr (WmLanguage) english = wm_language_new ("en");
  static const char *const words[] = { "not looked at", "sound",       "watch",
                                       "repair",        "do not wear", "no such part" };

  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    g_assert_cmpstr (wm_words_severity (english, (WmSeverity)i), ==, words[i]);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/report/words/dates", test_dates);
  g_test_add_func ("/report/words/money", test_money);
  g_test_add_func ("/report/words/measures", test_measures);
  g_test_add_func ("/report/words/severities", test_severities);
  return g_test_run ();
}
