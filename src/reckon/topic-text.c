/* topic-text.c: reading what was typed
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/topic-text.h"

#include <math.h>
#include <string.h>

#include "reckon/day.h"

/* Digits kept exactly in a double's 53 bits; further ones only move the point. */
#define EXACT_DIGITS 15
/* Beyond this a power of ten has no place in any input here. */
#define MAX_EXPONENT 300

static int
is_digit (char c)
{
  return c >= '0' && c <= '9';
}

/* Digits of the mantissa: value without point, and the power of ten it needs. */
static int
read_mantissa (const char **text, double *mantissa, int *power)
{
  const char *p = *text;
  int digits = 0;
  int kept = 0;
  int has_point = 0;

  for (; is_digit (*p) || (*p == '.' && !has_point); p++)
    {
      if (*p == '.')
        {
          has_point = 1;
          continue;
        }

      digits++;
      if (kept < EXACT_DIGITS)
        {
          *mantissa = *mantissa * 10.0 + (*p - '0');
          kept += *mantissa > 0.0;
          *power -= has_point;
        }
      else
        *power += !has_point;
    }

  *text = p;
  return digits > 0;
}

static void
read_exponent (const char **text, int *power)
{
  const char *p = *text + 1;
  int sign = *p == '-' ? -1 : 1;
  int exponent = 0;

  if (*p == '-' || *p == '+')
    p++;

  if (!is_digit (*p))
    return;

  for (; is_digit (*p); p++)
    if (exponent < 10000)
      exponent = exponent * 10 + (*p - '0');

  *power += sign * exponent;
  *text = p;
}

int
wm_text_number (const char **text, double *number)
{
  const char *p = *text;
  double mantissa = 0.0;
  int power = 0;
  int sign = *p == '-' ? -1 : 1;

  if (*p == '-' || (*p == '+' && p[1] != '-'))
    p++;

  if (!read_mantissa (&p, &mantissa, &power))
    return 0;

  if (*p == 'e' || *p == 'E')
    read_exponent (&p, &power);

  if (power > MAX_EXPONENT)
    return 0;

  /* Dividing by an exact power of ten rounds once; multiplying by 0.1 would twice. */
  *number =
      sign * (power < 0 ? mantissa / pow (10.0, -power) : mantissa * pow (10.0, power));
  *text = p;
  return isfinite (*number);
}

static const char *
after_spaces (const char *p)
{
  while (*p == ' ')
    p++;

  return p;
}

WmResult
wm_text_value (const char *text, const char *unit, WmValue *value)
{
  static const char *const signs[] = { "±", "+-", "+/-" };
  const char *p = after_spaces (text);
  WmValue read = { 0.0, 0.0 };

  if (!wm_text_number (&p, &read.value))
    return WM_NOT_A_NUMBER;

  p = after_spaces (p);
  for (int i = 0; i < 3; i++)
    {
      size_t length = strlen (signs[i]);

      if (strncmp (p, signs[i], length) != 0)
        continue;

      p = after_spaces (p + length);
      if (!wm_text_number (&p, &read.u) || read.u < 0.0)
        return WM_NOT_A_NUMBER;

      p = after_spaces (p);
      break;
    }

  if (*p != '\0' && strcmp (p, unit) != 0)
    return is_digit (*p) || *p == '.' || *p == ',' || *p == ':' ? WM_NOT_A_NUMBER
                                                                : WM_WRONG_UNIT;

  *value = read;
  return WM_OK;
}

WmResult
wm_text_date (const char *text, int length, long *day)
{
  WmDate date = { 0, 0, 0 };

  if (length != 10 || text[4] != '-' || text[7] != '-')
    return WM_NOT_A_NUMBER;

  for (int i = 0; i < 10; i++)
    if (i != 4 && i != 7 && !is_digit (text[i]))
      return WM_NOT_A_NUMBER;

  for (int i = 0; i < 4; i++)
    date.year = date.year * 10 + (text[i] - '0');

  date.month = (text[5] - '0') * 10 + (text[6] - '0');
  date.day = (text[8] - '0') * 10 + (text[9] - '0');
  return wm_day_from_date (date, day);
}

int
wm_text_choice (const char *text, int length, const char *const *choices)
{
  for (int i = 0; choices != NULL && choices[i] != NULL; i++)
    if ((int)strlen (choices[i]) == length && strncmp (choices[i], text, length) == 0)
      return i;

  return -1;
}
