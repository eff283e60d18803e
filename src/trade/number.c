/* number.c: piece numbers for people, "2026-0151-Q"
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/number.h"

#include <string.h>

/* ISO/IEC 7064, hybrid system MOD 37,36: moduli M + 1 and M over the 36
 * characters in this order. */
#define WM_ALPHABET "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ"
#define WM_MODULUS 36

/* Year of four digits, running number of four to six, check character. */
#define WM_NUMBER_YEAR_DIGITS 4
#define WM_NUMBER_MIN_CHARS 9
#define WM_NUMBER_MAX_CHARS 11

static int
char_value (char c)
{
  if (g_ascii_isdigit (c))
    return c - '0';
  if (g_ascii_isalpha (c))
    return g_ascii_toupper (c) - 'A' + 10;
  return -1;
}

char
wm_number_check_char (const char *text)
{
  int product = WM_MODULUS;
  gboolean is_empty = TRUE;

  for (const char *p = text; *p != '\0'; p++)
    {
      int value = char_value (*p);
      int sum;

      if (value < 0)
        continue;

      /* P(j+1) = (S mod 36, or 36 when that is 0) * 2 mod 37 */
      sum = (product + value) % WM_MODULUS;
      product = (sum == 0 ? WM_MODULUS : sum) * 2 % (WM_MODULUS + 1);
      is_empty = FALSE;
    }

  if (is_empty)
    return '\0';
  return WM_ALPHABET[(WM_MODULUS + 1 - product) % WM_MODULUS];
}

char *
wm_number_make (guint year, guint running)
{
  g_autofree char *body = NULL;

  if (year < WM_NUMBER_FIRST_YEAR || year > WM_NUMBER_LAST_YEAR || running == 0
      || running > WM_NUMBER_LAST_RUNNING)
    return NULL;

  body = g_strdup_printf ("%04u-%04u", year, running);
  return g_strdup_printf ("%s-%c", body, wm_number_check_char (body));
}

/* Letters and digits in upper case, without blanks and any of the dashes that a
 * keyboard or a printed ticket may have; NULL when anything else is in it. */
static char *
strip_number (const char *text)
{
  GString *plain = g_string_new (NULL);

  if (!g_utf8_validate (text, -1, NULL))
    return g_string_free (plain, TRUE);

  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);

      if (c < 128 && g_ascii_isalnum ((char)c))
        g_string_append_c (plain, g_ascii_toupper ((char)c));
      else if (!g_unichar_isspace (c) && g_unichar_type (c) != G_UNICODE_DASH_PUNCTUATION
               && c != 0x2212 /* minus sign */)
        return g_string_free (plain, TRUE);
    }
  return g_string_free (plain, FALSE);
}

static gboolean
read_digits (const char *text, gsize n, guint *out)
{
  guint value = 0;

  for (gsize i = 0; i < n; i++)
    {
      if (!g_ascii_isdigit (text[i]))
        return FALSE;
      value = value * 10 + (guint)(text[i] - '0');
    }
  *out = value;
  return TRUE;
}

gboolean
wm_number_parse (const char *text, guint *out_year, guint *out_running, char **out_number,
                 GError **error)
{
  g_autofree char *plain = text == NULL ? NULL : strip_number (text);
  gsize length = plain == NULL ? 0 : strlen (plain);
  g_autofree char *number = NULL;
  g_autofree char *expected = NULL;
  guint year = 0;
  guint running = 0;

  if (length < WM_NUMBER_MIN_CHARS || length > WM_NUMBER_MAX_CHARS
      || !read_digits (plain, WM_NUMBER_YEAR_DIGITS, &year)
      || !read_digits (plain + WM_NUMBER_YEAR_DIGITS, length - WM_NUMBER_YEAR_DIGITS - 1,
                       &running)
      || (number = wm_number_make (year, running)) == NULL
      || (expected = strip_number (number)) == NULL
      || strncmp (expected, plain, length - 1) != 0)
    {
      g_set_error (error, WM_TRADE_ERROR, WM_TRADE_ERROR_MALFORMED_NUMBER,
                   "\"%s\" is no piece number; it reads year, number and check "
                   "character, like 2026-0151-Q",
                   text == NULL ? "" : text);
      return FALSE;
    }
  if (strcmp (expected, plain) != 0)
    {
      g_set_error (error, WM_TRADE_ERROR, WM_TRADE_ERROR_WRONG_CHECK,
                   "piece number %s: the last character does not fit the others; read "
                   "it again from the ticket, one character is wrong or two are swapped",
                   text);
      return FALSE;
    }

  if (out_year != NULL)
    *out_year = year;
  if (out_running != NULL)
    *out_running = running;
  if (out_number != NULL)
    *out_number = g_steal_pointer (&number);
  return TRUE;
}
