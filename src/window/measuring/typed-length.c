/* typed-length.c: a length as a person types it, in any usual unit, to millimetres
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/measuring/typed-length.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

static const struct
{
  const char *unit;
  double mm;
} units[] = {
  { "mm", 1.0 },       { "cm", 10.0 },     { "µm", 1e-3 }, { "μm", 1e-3 },
  { "um", 1e-3 },      { "micron", 1e-3 }, { "in", 25.4 }, { "inch", 25.4 },
  { "inches", 25.4 },  { "\"", 25.4 },     { "″", 25.4 },  { "”", 25.4 },
  { "thou", 25.4e-3 }, { "mil", 25.4e-3 },
};

/* "12", "0.5", "0,5"; moves *text behind it. NaN: no number. */
static double
take_number (const char **text)
{
  const char *p = *text;
  char digits[32];
  gsize n = 0;
  gboolean has_mark = FALSE, has_digit = FALSE;

  for (; n + 1 < sizeof digits; p++)
    {
      if (g_ascii_isdigit (*p))
        has_digit = TRUE;
      else if ((*p == '.' || *p == ',') && !has_mark)
        has_mark = TRUE;
      else
        break;
      digits[n++] = *p == ',' ? '.' : *p;
    }
  digits[n] = '\0';
  /* A number longer than this, or with a second mark, leaves a rest that is no unit. */
  if (!has_digit)
    return NAN;
  *text = p;
  return g_ascii_strtod (digits, NULL);
}

static void
skip_blanks (const char **text)
{
  while (g_unichar_isspace (g_utf8_get_char (*text)))
    *text = g_utf8_next_char (*text);
}

/* A number, a fraction or both: "1 1/4". NaN: none of these. */
static double
take_amount (const char **text)
{
  double whole = take_number (text);
  double top, bottom;
  const char *rest;

  skip_blanks (text);
  if (isnan (whole))
    return NAN;
  if (**text == '/')
    {
      (*text)++;
      skip_blanks (text);
      bottom = take_number (text);
      skip_blanks (text);
      return bottom > 0 ? whole / bottom : NAN;
    }
  rest = *text;
  top = take_number (&rest);
  skip_blanks (&rest);
  if (isnan (top))
    return whole;
  if (*rest != '/')
    return NAN;
  rest++;
  skip_blanks (&rest);
  bottom = take_number (&rest);
  skip_blanks (&rest);
  *text = rest;
  return bottom > 0 ? whole + top / bottom : NAN;
}

static double
find_unit (const char *text)
{
  if (*text == '\0')
    return 1.0;
  for (guint i = 0; i < G_N_ELEMENTS (units); i++)
    if (g_ascii_strcasecmp (text, units[i].unit) == 0)
      return units[i].mm;
  return NAN;
}

static WmFieldVerdict
say (char **out_remark, WmFieldVerdict verdict, const char *remark)
{
  *out_remark = g_strdup (remark);
  return verdict;
}

WmFieldVerdict
wm_typed_length (const char *text, double *out_mm, char **out_remark)
{
  g_autofree char *own = g_strstrip (g_strdup (text));
  const char *rest = own;
  double amount, unit;

  *out_remark = NULL;
  if (*own == '\0')
    {
      *out_mm = NAN;
      return WM_FIELD_OK;
    }
  if (*own == '-' || g_str_has_prefix (own, "\u2212"))
    return say (out_remark, WM_FIELD_WRONG, _ ("A length is more than 0."));
  amount = take_amount (&rest);
  if (isnan (amount))
    return say (out_remark, WM_FIELD_WRONG,
                _ ("This is not a length. Write 10, 10 mm, 1 cm or 0.5 in."));
  unit = find_unit (rest);
  if (isnan (unit))
    {
      *out_remark = g_strdup_printf (
          _ ("“%s” is no unit of length here. Use mm, cm, µm or in."), rest);
      return WM_FIELD_WRONG;
    }
  amount *= unit;
  if (amount <= 0)
    return say (out_remark, WM_FIELD_WRONG, _ ("A length is more than 0."));
  if (amount > WM_TYPED_LENGTH_MOST_MM)
    return say (out_remark, WM_FIELD_WRONG,
                _ ("That is over a metre. Check the point and the unit."));
  *out_mm = amount;
  if (unit != 1.0)
    *out_remark = g_strdup_printf (_ ("That is %.4g mm."), amount);
  return WM_FIELD_OK;
}
