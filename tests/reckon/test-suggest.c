/* test-suggest.c: severity from numbers
 *
 * Expected values: the remaining-section rule of the trade tables (0.80, 0.60, 0.40; our
 * own proposal).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/suggest.h"

#include "near.h"

static const WmThresholds rule = WM_THRESHOLDS_DEFAULT;

static WmSuggestion
suggest (double share, double u, int crack, double left, double u_left, double minimum)
{
  WmSuggestion s;

  g_assert_cmpint (wm_suggest (wm_value (share, u), crack, wm_value (left, u_left),
                               minimum, rule, &s, NULL),
                   ==, WM_OK);
  return s;
}

static void
test_rule (void)
{
  const struct
  {
    double share;
    WmSeverity severity;
  } rows[] = { { 1.02, WM_SEVERITY_SOUND },
               { 0.80, WM_SEVERITY_SOUND },
               { 0.9 / 1.5 + 0.2, WM_SEVERITY_SOUND },
               { 0.79, WM_SEVERITY_WATCH },
               { 0.60, WM_SEVERITY_WATCH },
               { 0.59, WM_SEVERITY_REPAIR },
               { 0.40, WM_SEVERITY_REPAIR },
               { 0.39, WM_SEVERITY_NO_WEAR },
               { 0.0, WM_SEVERITY_NO_WEAR } };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      WmSuggestion s = suggest (rows[i].share, 0, 0, 0, 0, 0);

      g_assert_cmpint (s.severity, ==, rows[i].severity);
      g_assert_cmpint (s.reason, ==, WM_SUGGEST_BY_SHARE);
    }
}

static void
test_uncertainty_takes_the_worse (void)
{
  WmSuggestion s = suggest (0.82, 0.015, 0, 0, 0, 0);

  g_assert_cmpint (s.severity, ==, WM_SEVERITY_WATCH);
  g_assert_cmpint (s.reason, ==, WM_SUGGEST_BY_UNCERTAINTY);
  wm_assert_near (s.careful_share, 0.79, 1e-12);
}

static void
test_crack (void)
{
  WmSuggestion s = suggest (0.99, 0, 1, 0, 0, 0);

  g_assert_cmpint (s.severity, ==, WM_SEVERITY_NO_WEAR);
  g_assert_cmpint (s.reason, ==, WM_SUGGEST_BY_CRACK);
  g_assert_cmpint (suggest (NAN, 0, 1, 0, 0, 0).severity, ==, WM_SEVERITY_NO_WEAR);
}

static void
test_minimum (void)
{
  WmSuggestion s = suggest (0.9, 0, 0, 0.82, 0.02, 0.80);

  g_assert_cmpint (s.severity, ==, WM_SEVERITY_REPAIR);
  g_assert_cmpint (s.reason, ==, WM_SUGGEST_BY_MINIMUM);
  /* It never makes a worse level milder. */
  g_assert_cmpint (suggest (0.3, 0, 0, 0.5, 0, 0.8).severity, ==, WM_SEVERITY_NO_WEAR);
  g_assert_cmpint (suggest (0.9, 0, 0, 0.9, 0.02, 0.80).severity, ==, WM_SEVERITY_SOUND);
}

/* Less metal or a rougher reading never suggests a milder level. */
static void
test_monotony (void)
{
  for (double u = 0; u < 0.2; u += 0.01)
    for (double share = 0.02; share < 1.2; share += 0.01)
      {
        WmSeverity here = suggest (share, u, 0, 0, 0, 0).severity;

        g_assert_cmpint (suggest (share - 0.01, u, 0, 0, 0, 0).severity, >=, here);
        g_assert_cmpint (suggest (share, u + 0.01, 0, 0, 0, 0).severity, >=, here);
      }
}

static void
test_refusals (void)
{
  const WmThresholds upside_down = { 0.4, 0.6, 0.8 };
  const char *which = NULL;
  WmSuggestion s;

  g_assert_cmpint (wm_suggest (wm_exact (NAN), 0, wm_exact (0), 0, rule, &s, &which), ==,
                   WM_NOT_A_NUMBER);
  g_assert_cmpstr (which, ==, "share");
  g_assert_cmpint (wm_suggest (wm_exact (-.1), 0, wm_exact (0), 0, rule, &s, &which), ==,
                   WM_NOT_POSITIVE);
  g_assert_cmpint (wm_suggest (wm_exact (2), 0, wm_exact (0), 0, rule, &s, &which), ==,
                   WM_OUT_OF_RANGE);
  g_assert_cmpint (
      wm_suggest (wm_exact (.5), 0, wm_exact (0), 0, upside_down, &s, &which), ==,
      WM_CONTRADICTION);
  g_assert_cmpstr (which, ==, "thresholds");
}

static void
test_words (void)
{
  for (int r = WM_SUGGEST_BY_SHARE; r < WM_SUGGEST_BY_MINIMUM; r++)
    g_assert_cmpstr (wm_suggest_reason_text (r), !=, wm_suggest_reason_text (r + 1));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reckon/suggest/rule", test_rule);
  g_test_add_func ("/reckon/suggest/uncertainty", test_uncertainty_takes_the_worse);
  g_test_add_func ("/reckon/suggest/crack", test_crack);
  g_test_add_func ("/reckon/suggest/minimum", test_minimum);
  g_test_add_func ("/reckon/suggest/monotony", test_monotony);
  g_test_add_func ("/reckon/suggest/refusals", test_refusals);
  g_test_add_func ("/reckon/suggest/words", test_words);
  return g_test_run ();
}
