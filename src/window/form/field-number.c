/* field-number.c: money, weights, lengths and counts as a person types them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/form/field-check.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#include "record/record.h"

/* 10^12 minor units: no piece is worth more, and no sum of such overflows. */
#define MAX_MINOR G_GINT64_CONSTANT (1000000000000)
#define MAX_DIGITS 15
/* Heavier or longer than jewellery is (common practice, no source): likely a slip of
 * the point, so it is kept but remarked on. */
#define ODD_MASS_MG 2000000
#define ODD_LENGTH_MM 2000.0
#define MAX_MASS_MG G_GINT64_CONSTANT (100000000)
#define MAX_LENGTH_MM 100000.0

/* A number apart: its digits, and how many of them are behind the point. */
typedef struct
{
  char digits[MAX_DIGITS + 1];
  int n_digits;
  int n_behind;
  gboolean too_long;
} Number;

static gboolean
is_group_mark (gunichar c)
{
  /* blank, no-break blank, thin blank, narrow no-break blank, apostrophes */
  return c == ' ' || c == 0xa0 || c == 0x2009 || c == 0x202f || c == '\'' || c == 0x2019;
}

static void
add_digit (Number *number, char digit)
{
  if (number->n_digits == MAX_DIGITS)
    number->too_long = TRUE;
  else
    number->digits[number->n_digits++] = digit;
}

/* The last point or comma is the decimal one, unless it can only part groups of
 * three: @decimals says how many digits may follow it (0: none may). "1.234" with two
 * decimals is one thousand; with three it is a bit more than one. */
static const char *
find_decimal_mark (const char *text, int decimals)
{
  const char *last = NULL;
  char other;
  gsize behind;

  for (const char *p = text; *p != '\0'; p++)
    if (*p == '.' || *p == ',')
      last = p;
  if (last == NULL)
    return NULL;

  behind = strlen (last + 1);
  other = *last == '.' ? ',' : '.';
  if (decimals == 0 && behind != 3)
    return last; /* refused later: digits behind the point */
  if (behind == 3
      && (decimals < 3 || strchr (text, other) != NULL || strchr (text, *last) != last))
    return decimals >= 3 && strchr (text, other) != NULL ? last : NULL;
  if (strchr (text, *last) != last)
    return NULL;
  return last;
}

/* Digits left of the point, in groups of three if they are grouped at all. */
static gboolean
read_whole (const char *text, const char *end, Number *number)
{
  int run = 0;
  gboolean grouped = FALSE;

  for (const char *p = text; p < end; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);

      if (c >= '0' && c <= '9')
        {
          add_digit (number, (char)c);
          run++;
        }
      else if (is_group_mark (c) || c == '.' || c == ',')
        {
          if ((grouped && run != 3) || run == 0 || run > 3)
            return FALSE;
          grouped = TRUE;
          run = 0;
        }
      else
        return FALSE;
    }

  return !grouped || run == 3;
}

static gboolean
read_number (const char *text, int decimals, Number *number)
{
  const char *mark = find_decimal_mark (text, decimals);
  const char *end = mark == NULL ? text + strlen (text) : mark;

  memset (number, 0, sizeof *number);
  if (!read_whole (text, end, number))
    return FALSE;

  for (const char *p = mark == NULL ? end : mark + 1; *p != '\0'; p++)
    {
      if (!g_ascii_isdigit (*p))
        return FALSE;
      add_digit (number, *p);
      number->n_behind++;
    }

  return number->n_digits > 0;
}

/* The digits as a whole number with @decimals behind the point. */
static gint64
scale_number (const Number *number, int decimals)
{
  gint64 value = 0;

  for (int i = 0; i < number->n_digits; i++)
    value = value * 10 + (number->digits[i] - '0');
  for (int i = number->n_behind; i < decimals; i++)
    value *= 10;

  return value;
}

static char *
strip (const char *text)
{
  return g_strstrip (g_strdup (text));
}

static WmFieldVerdict
say (char **out_remark, WmFieldVerdict verdict, const char *remark)
{
  *out_remark = g_strdup (remark);
  return verdict;
}

/* Takes the shop's currency code off either end; another code is wrong. */
static gboolean
take_code (char *text, const char *currency)
{
  gsize length = strlen (text);

  if (length >= 3 && g_ascii_isalpha (text[0]))
    {
      if (g_ascii_strncasecmp (text, currency, 3) != 0)
        return FALSE;
      memmove (text, text + 3, length - 2);
    }
  else if (length >= 3 && g_ascii_isalpha (text[length - 1]))
    {
      if (g_ascii_strcasecmp (text + length - 3, currency) != 0)
        return FALSE;
      text[length - 3] = '\0';
    }
  g_strstrip (text);
  return TRUE;
}

static char *
say_too_fine (const char *currency, int exponent)
{
  if (exponent == 0)
    return g_strdup_printf (_ ("%s has no smaller unit: write a whole number."),
                            currency);
  return g_strdup_printf (ngettext ("%s has %d digit behind the point at most.",
                                    "%s has %d digits behind the point at most.",
                                    exponent),
                          currency, exponent);
}

WmFieldVerdict
wm_field_check_money (const char *text, const char *currency, int exponent,
                      gint64 *out_minor, char **out_remark)
{
  g_autofree char *own = strip (text);
  Number number;

  *out_remark = NULL;
  if (own[0] == '\0')
    {
      *out_minor = WM_UNKNOWN;
      return WM_FIELD_OK;
    }
  if (!take_code (own, currency))
    {
      *out_remark = g_strdup_printf (_ ("This shop reckons in %s."), currency);
      return WM_FIELD_WRONG;
    }
  if (own[0] == '-' || g_str_has_prefix (own, "\u2212"))
    return say (out_remark, WM_FIELD_WRONG, _ ("An amount is not below nothing."));
  if (!read_number (own, exponent, &number))
    return say (out_remark, WM_FIELD_WRONG, _ ("This is not an amount. Write 6800.00."));
  if (number.n_behind > exponent)
    {
      *out_remark = say_too_fine (currency, exponent);
      return WM_FIELD_WRONG;
    }
  if (number.too_long || scale_number (&number, exponent) > MAX_MINOR)
    return say (out_remark, WM_FIELD_WRONG, _ ("This amount is too large."));

  *out_minor = scale_number (&number, exponent);
  return WM_FIELD_OK;
}

/* "g" or "mm" typed after the number is no mistake. */
static void
take_unit (char *text, const char *unit)
{
  if (g_str_has_suffix (text, unit))
    text[strlen (text) - strlen (unit)] = '\0';
  g_strstrip (text);
}

WmFieldVerdict
wm_field_check_mass (const char *text, gint64 *out_mg, char **out_remark)
{
  g_autofree char *own = strip (text);
  Number number;
  gint64 mg;

  *out_remark = NULL;
  if (own[0] == '\0')
    {
      *out_mg = WM_UNKNOWN;
      return WM_FIELD_OK;
    }
  take_unit (own, "g");
  if (!read_number (own, 3, &number))
    return say (out_remark, WM_FIELD_WRONG,
                _ ("This is not a weight. Write grams: 18.42."));
  if (number.n_behind > 3)
    return say (out_remark, WM_FIELD_WRONG,
                _ ("A weight has three digits behind the point at most."));
  mg = scale_number (&number, 3);
  if (mg == 0 || number.too_long || mg > MAX_MASS_MG)
    return say (out_remark, WM_FIELD_WRONG,
                _ ("A piece weighs more than 0 and under"
                   " 100 kg. Write grams: 18.42."));

  *out_mg = mg;
  if (mg > ODD_MASS_MG)
    return say (out_remark, WM_FIELD_ODD, _ ("Over 2 kg: are these grams?"));
  return WM_FIELD_OK;
}

WmFieldVerdict
wm_field_check_mm (const char *text, double *out_mm, char **out_remark)
{
  g_autofree char *own = strip (text);
  Number number;
  double mm;

  *out_remark = NULL;
  if (own[0] == '\0')
    {
      *out_mm = NAN;
      return WM_FIELD_OK;
    }
  take_unit (own, "mm");
  if (!read_number (own, 3, &number))
    return say (out_remark, WM_FIELD_WRONG,
                _ ("This is not a length. Write millimetres: 178."));
  if (number.n_behind > 3)
    return say (out_remark, WM_FIELD_WRONG,
                _ ("A length has three digits behind the point at most."));
  mm = scale_number (&number, 3) / 1000.0;
  if (mm <= 0.0 || number.too_long || mm > MAX_LENGTH_MM)
    return say (out_remark, WM_FIELD_WRONG,
                _ ("A length is more than 0. Write millimetres: 178."));

  *out_mm = mm;
  if (mm > ODD_LENGTH_MM)
    return say (out_remark, WM_FIELD_ODD, _ ("Over 2 m: are these millimetres?"));
  return WM_FIELD_OK;
}

WmFieldVerdict
wm_field_check_count (const char *text, gint64 *out_count, char **out_remark)
{
  g_autofree char *own = strip (text);
  guint64 count;

  *out_remark = NULL;
  if (own[0] == '\0')
    {
      *out_count = WM_UNKNOWN;
      return WM_FIELD_OK;
    }
  if (!g_ascii_string_to_unsigned (own, 10, 1, 99999, &count, NULL))
    return say (out_remark, WM_FIELD_WRONG, _ ("Write a whole number from 1 to 99999."));

  *out_count = count;
  return WM_FIELD_OK;
}

/* "18 k", "18k", "18 ct", "18 kt": parts of 24. *out_ppt is below 0 if they are not
 * 1 to 24. */
static gboolean
read_karat (char *text, gint64 *out_ppt)
{
  guint64 karat;

  for (guint i = 0; i < 3; i++)
    {
      static const char *const units[] = { "kt", "ct", "k" };

      if (!g_str_has_suffix (text, units[i]))
        continue;
      text[strlen (text) - strlen (units[i])] = '\0';
      g_strstrip (text);
      *out_ppt = -1;
      if (!g_ascii_string_to_unsigned (text, 10, 1, 24, &karat, NULL))
        return TRUE;
      /* 24 k is marked 999; the marks 333, 417, 585 and 916 are rounded as ISO 9202
       * has them: 8, 10, 14, 22 of 24. */
      *out_ppt = karat == 24 ? 999 : karat == 14 ? 585 : karat * 1000 / 24;
      if (karat == 10)
        *out_ppt = 417;
      return TRUE;
    }
  return FALSE;
}

WmFieldVerdict
wm_field_check_fineness (const char *text, gint64 *out_ppt, char **out_remark)
{
  g_autofree char *own = strip (text);
  guint64 ppt;
  gint64 karat_ppt;

  *out_remark = NULL;
  if (own[0] == '\0')
    {
      *out_ppt = WM_UNKNOWN;
      return WM_FIELD_OK;
    }
  if (read_karat (own, &karat_ppt))
    {
      if (karat_ppt < 0)
        return say (out_remark, WM_FIELD_WRONG, _ ("Karat is 1 to 24 parts of 24."));
      *out_ppt = karat_ppt;
      return WM_FIELD_OK;
    }
  if (!g_ascii_string_to_unsigned (own, 10, 1, 999, &ppt, NULL))
    return say (out_remark, WM_FIELD_WRONG,
                _ ("Write parts per thousand, 1 to 999, or karat: 750 or 18 k."));

  *out_ppt = ppt;
  return WM_FIELD_OK;
}

WmFieldVerdict
wm_field_check_currency (const char *text, char **out_code, char **out_remark)
{
  g_autofree char *own = strip (text);

  *out_remark = NULL;
  if (own[0] == '\0')
    {
      *out_code = NULL;
      return WM_FIELD_OK;
    }
  if (strlen (own) != 3 || !g_ascii_isalpha (own[0]) || !g_ascii_isalpha (own[1])
      || !g_ascii_isalpha (own[2]))
    return say (out_remark, WM_FIELD_WRONG,
                _ ("Write the three letters of the currency: EUR, GBP, USD."));

  *out_code = g_ascii_strup (own, 3);
  return WM_FIELD_OK;
}
