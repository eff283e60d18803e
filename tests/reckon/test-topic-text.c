/* test-topic-text.c: reading what was typed
 *
 * Expected values: the C library's strtod in the C locale; day numbers of day.h.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/topic-text.h"

#include <stdlib.h>
#include <string.h>

#include "near.h"

static void
test_numbers_like_strtod (void)
{
  static const char *const texts[] = { "0",
                                       "1",
                                       "-1",
                                       "+2.5",
                                       "0.1",
                                       "0.62",
                                       "1.42",
                                       "1e3",
                                       "1E-3",
                                       ".5",
                                       "5.",
                                       "123456789",
                                       "0.000001",
                                       "9007199254740993",
                                       "-0.30",
                                       "2.675",
                                       "1e-300",
                                       "0000.10",
                                       "3.14159265358979" };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      const char *p = texts[i];
      double got = 0;

      g_assert_true (wm_text_number (&p, &got));
      g_assert_cmpstr (p, ==, "");
      wm_assert_near (got, g_ascii_strtod (texts[i], NULL),
                      1e-15 * fabs (g_ascii_strtod (texts[i], NULL)));
    }
}

/* Every reading with up to four decimals comes out as strtod's, bit for bit. */
static void
test_bench_readings_are_exact (void)
{
  for (int i = 0; i < 30000; i++)
    {
      char text[32];
      const char *p = text;
      double got = 0;

      g_snprintf (text, sizeof text, "%d.%04d", i / 10000, i % 10000);
      g_assert_true (wm_text_number (&p, &got));
      g_assert_cmpfloat (got, ==, g_ascii_strtod (text, NULL));
    }
}

static void
test_no_numbers (void)
{
  static const char *const texts[] = { "",   "-", ".",  "nan", "inf",   "-inf",
                                       "e5", "x", "0x", "+-1", "1e999", "--1" };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      WmValue value;

      g_assert_cmpint (wm_text_value (texts[i], "mm", &value), !=, WM_OK);
    }
}

static void
test_values (void)
{
  const struct
  {
    const char *text;
    double value, u;
    WmResult result;
  } rows[] = {
    { "1.42", 1.42, 0, WM_OK },
    { "1.42±0.02", 1.42, 0.02, WM_OK },
    { " 1.42 ± 0.02 mm ", 0, 0, WM_WRONG_UNIT },
    { "1.42 ± 0.02 mm", 1.42, 0.02, WM_OK },
    { "1.42+-0.02mm", 1.42, 0.02, WM_OK },
    { "1.42+/-0.02", 1.42, 0.02, WM_OK },
    { "1.42mm", 1.42, 0, WM_OK },
    { "1.42in", 0, 0, WM_WRONG_UNIT },
    { "1.42 cm", 0, 0, WM_WRONG_UNIT },
    { "1,42", 0, 0, WM_NOT_A_NUMBER },
    { "1.4.2", 0, 0, WM_NOT_A_NUMBER },
    { "1.42±-0.02", 0, 0, WM_NOT_A_NUMBER },
    { "1.42±", 0, 0, WM_NOT_A_NUMBER },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      WmValue value = { 0, 0 };

      g_assert_cmpint (wm_text_value (rows[i].text, "mm", &value), ==, rows[i].result);
      g_assert_cmpfloat (value.value, ==, rows[i].value);
      g_assert_cmpfloat (value.u, ==, rows[i].u);
    }
}

static void
test_dates (void)
{
  long day = 0;

  g_assert_cmpint (wm_text_date ("2026-11-25", 10, &day), ==, WM_OK);
  g_assert_cmpint (day, ==, 20782);
  g_assert_cmpint (wm_text_date ("2026-02-30", 10, &day), ==, WM_OUT_OF_RANGE);
  g_assert_cmpint (wm_text_date ("2026-1-5", 8, &day), ==, WM_NOT_A_NUMBER);
  g_assert_cmpint (wm_text_date ("25.11.2026", 10, &day), ==, WM_NOT_A_NUMBER);
}

static void
test_choices (void)
{
  static const char *const choices[] = { "round", "round-old", NULL };

  g_assert_cmpint (wm_text_choice ("round", 5, choices), ==, 0);
  g_assert_cmpint (wm_text_choice ("round-old", 9, choices), ==, 1);
  g_assert_cmpint (wm_text_choice ("roun", 4, choices), ==, -1);
  g_assert_cmpint (wm_text_choice ("round", 5, NULL), ==, -1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reckon/topic-text/numbers", test_numbers_like_strtod);
  g_test_add_func ("/reckon/topic-text/readings-are-exact",
                   test_bench_readings_are_exact);
  g_test_add_func ("/reckon/topic-text/no-numbers", test_no_numbers);
  g_test_add_func ("/reckon/topic-text/values", test_values);
  g_test_add_func ("/reckon/topic-text/dates", test_dates);
  g_test_add_func ("/reckon/topic-text/choices", test_choices);
  return g_test_run ();
}
