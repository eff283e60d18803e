/* test-number.c: piece numbers and their check character
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/number.h"

#include <string.h>

#define ALPHABET "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ"

/* The example of the GRid standard (IFPI, "Global Release Identifier"), which
 * takes its check character from ISO/IEC 7064 MOD 37,36: A1-2425G-ABC1234002-M. */
static void
test_check_published (void)
{
  g_assert_cmpint (wm_number_check_char ("A12425GABC1234002"), ==, 'M');
  g_assert_cmpint (wm_number_check_char ("A1-2425G-ABC1234002"), ==, 'M');
  g_assert_cmpint (wm_number_check_char ("a12425gabc1234002"), ==, 'M');
  g_assert_cmpint (wm_number_check_char ("-- --"), ==, '\0');
}

/* A hybrid system of ISO/IEC 7064 is checked by going on over the check
 * character itself: the last sum is then 1 modulo 36. This is the standard's own
 * check procedure and is written here without the code under test. */
static gboolean
is_valid_by_standard (const char *whole)
{
  int product = 36;
  int sum = 0;

  for (const char *p = whole; *p != '\0'; p++)
    {
      int value = (int)(strchr (ALPHABET, *p) - ALPHABET);

      sum = (product + value) % 36;
      product = (sum == 0 ? 36 : sum) * 2 % 37;
    }
  return sum == 1;
}

static void
test_check_by_standard (void)
{
  for (guint running = 1; running <= 3000; running++)
    {
      g_autofree char *body = g_strdup_printf ("2026%04u", running);
      g_autofree char *whole =
          g_strdup_printf ("%s%c", body, wm_number_check_char (body));

      g_assert_true (is_valid_by_standard (whole));
    }
}

static gboolean
parses (const char *text)
{
  return wm_number_parse (text, NULL, NULL, NULL, NULL);
}

/* ISO/IEC 7064 (introduction and table of systems): all single substitutions are
 * detected. */
static void
test_every_substitution (void)
{
  guint n = 0;

  for (guint running = 1; running <= 400; running += 7)
    {
      g_autofree char *number = wm_number_make (2026, running);

      for (gsize at = 0; number[at] != '\0'; at++)
        {
          char old = number[at];

          for (const char *c = ALPHABET; old != '-' && *c != '\0'; c++)
            {
              if (*c == old)
                continue;
              number[at] = *c;
              g_assert_false (parses (number));
              n++;
            }
          number[at] = old;
        }
      g_assert_true (parses (number));
    }
  g_assert_cmpuint (n, >, 15000);
}

/* A hybrid system detects all swaps of neighbours but for the few pairs whose
 * products coincide; over digits the share that passes must stay under 1 in 100. */
static void
test_neighbour_swaps (void)
{
  guint n_swaps = 0;
  guint n_passed = 0;

  for (guint running = 1; running <= 9999; running += 3)
    {
      g_autofree char *number = wm_number_make (2026, running);
      g_autofree char *plain =
          g_strdup_printf ("%.4s%.4s%c", number, number + 5, number[10]);

      for (gsize at = 0; at + 1 < strlen (plain); at++)
        {
          g_autofree char *swapped = g_strdup (plain);

          if (plain[at] == plain[at + 1])
            continue;
          swapped[at] = plain[at + 1];
          swapped[at + 1] = plain[at];
          n_swaps++;
          if (parses (swapped))
            n_passed++;
        }
    }
  g_test_message ("%u of %u swaps passed", n_passed, n_swaps);
  g_assert_cmpuint (n_swaps, >, 10000);
  g_assert_cmpuint (n_passed * 100, <, n_swaps);
}

static void
test_make_and_parse (void)
{
  static const struct
  {
    guint year, running;
  } cases[] = { { 2026, 1 },     { 2026, 151 },    { 2026, 9999 },
                { 2026, 10000 }, { 1900, 999999 }, { 9999, 42 } };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *number = wm_number_make (cases[i].year, cases[i].running);
      g_autofree char *back = NULL;
      g_autoptr (GError) error = NULL;
      guint year, running;

      g_assert_true (wm_number_parse (number, &year, &running, &back, &error));
      g_assert_no_error (error);
      g_assert_cmpuint (year, ==, cases[i].year);
      g_assert_cmpuint (running, ==, cases[i].running);
      g_assert_cmpstr (back, ==, number);
    }

  g_assert_null (wm_number_make (2026, 0));
  g_assert_null (wm_number_make (2026, 1000000));
  g_assert_null (wm_number_make (1899, 1));
  g_assert_null (wm_number_make (10000, 1));
}

static void
test_parse_as_typed (void)
{
  g_autofree char *number = wm_number_make (2026, 151);
  g_autofree char *lower = g_ascii_strdown (number, -1);
  char check = number[strlen (number) - 1];
  g_autofree char *spaced = g_strdup_printf ("  2026 0151 %c ", check);
  g_autofree char *close = g_strdup_printf ("20260151%c", check);
  g_autofree char *dashes = g_strdup_printf ("2026\xE2\x80\x93"
                                             "0151\xE2\x80\x91%c",
                                             check);
  const char *typed[] = { lower, spaced, close, dashes };

  g_assert_true (g_str_has_prefix (number, "2026-0151-"));
  for (gsize i = 0; i < G_N_ELEMENTS (typed); i++)
    {
      g_autofree char *back = NULL;
      g_autoptr (GError) error = NULL;

      wm_number_parse (typed[i], NULL, NULL, &back, &error);
      g_assert_no_error (error);
      g_assert_cmpstr (back, ==, number);
    }
}

static void
test_parse_refuses (void)
{
  static const char *const malformed[] = { "",
                                           "2026",
                                           "2026-0151",
                                           "26-0151-Q",
                                           "2026-01X1-Q",
                                           "1899-0001-A",
                                           "2026-0000-A",
                                           "2026/0151/Q",
                                           "2026-1234567-Q",
                                           "2026-00151-Q",
                                           "\xFF\xFE" };
  g_autofree char *number = wm_number_make (2026, 151);
  g_autoptr (GError) error = NULL;
  guint year = 7;

  for (gsize i = 0; i < G_N_ELEMENTS (malformed); i++)
    {
      g_assert_false (wm_number_parse (malformed[i], &year, NULL, NULL, &error));
      g_assert_error (error, WM_TRADE_ERROR, WM_TRADE_ERROR_MALFORMED_NUMBER);
      g_clear_error (&error);
    }
  g_assert_false (wm_number_parse (NULL, NULL, NULL, NULL, &error));
  g_assert_error (error, WM_TRADE_ERROR, WM_TRADE_ERROR_MALFORMED_NUMBER);
  g_clear_error (&error);

  number[6] = number[6] == '9' ? '8' : '9';
  g_assert_false (wm_number_parse (number, &year, NULL, NULL, &error));
  g_assert_error (error, WM_TRADE_ERROR, WM_TRADE_ERROR_WRONG_CHECK);
  g_assert_cmpuint (year, ==, 7);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/number/check/published", test_check_published);
  g_test_add_func ("/trade/number/check/by-standard", test_check_by_standard);
  g_test_add_func ("/trade/number/check/substitutions", test_every_substitution);
  g_test_add_func ("/trade/number/check/swaps", test_neighbour_swaps);
  g_test_add_func ("/trade/number/make-and-parse", test_make_and_parse);
  g_test_add_func ("/trade/number/parse/as-typed", test_parse_as_typed);
  g_test_add_func ("/trade/number/parse/refuses", test_parse_refuses);
  return g_test_run ();
}
