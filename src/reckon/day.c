/* day.c: day numbers
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/day.h"

#include <math.h>

#define DAYS_IN_400_YEARS 146097L
/* From 0000-03-01 to 1970-01-01. */
#define DAYS_TO_1970 719468L

static long
floor_div (long a, long b)
{
  return a / b - (a % b != 0 && (a % b < 0) != (b < 0));
}

static int
is_leap (int year)
{
  return (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
}

static int
month_length (int year, int month)
{
  static const int lengths[] = { 31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31 };

  return month == 2 && is_leap (year) ? 29 : lengths[month - 1];
}

/* Years begin in March, so that the leap day is the last of its year. */
static long
day_number (int year, int month, int day)
{
  long y = month <= 2 ? year - 1 : year;
  long era = floor_div (y, 400);
  long year_of_era = y - era * 400;
  long day_of_year = (153 * ((month + 9) % 12) + 2) / 5 + day - 1;

  return era * DAYS_IN_400_YEARS + year_of_era * 365 + year_of_era / 4 - year_of_era / 100
         + day_of_year - DAYS_TO_1970;
}

WmResult
wm_day_from_date (WmDate date, long *day)
{
  if (date.year < 1 || date.year > 9999 || date.month < 1 || date.month > 12
      || date.day < 1 || date.day > month_length (date.year, date.month))
    return WM_OUT_OF_RANGE;

  *day = day_number (date.year, date.month, date.day);
  return WM_OK;
}

WmDate
wm_day_to_date (long day)
{
  long shifted = day + DAYS_TO_1970;
  long era = floor_div (shifted, DAYS_IN_400_YEARS);
  long of_era = shifted - era * DAYS_IN_400_YEARS;
  long year_of_era =
      (of_era - of_era / 1460 + of_era / 36524 - of_era / (DAYS_IN_400_YEARS - 1)) / 365;
  long of_year = of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
  int month_from_march = (int)((5 * of_year + 2) / 153);
  WmDate date;

  date.day = (int)(of_year - (153 * month_from_march + 2) / 5) + 1;
  date.month = month_from_march < 10 ? month_from_march + 3 : month_from_march - 9;
  date.year = (int)(year_of_era + era * 400) + (date.month <= 2);
  return date;
}

long
wm_day_add_months (long day, int months)
{
  WmDate date = wm_day_to_date (day);
  long count = (long)date.year * 12 + date.month - 1 + months;
  int length;

  date.year = (int)floor_div (count, 12);
  date.month = (int)(count - floor_div (count, 12) * 12) + 1;
  length = month_length (date.year, date.month);

  return day_number (date.year, date.month, date.day < length ? date.day : length);
}

long
wm_day_from_years (long day, double years)
{
  return day + (long)floor (years * WM_DAYS_PER_YEAR);
}
