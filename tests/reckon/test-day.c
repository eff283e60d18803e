/* test-day.c: day numbers
 *
 * Expected values: the C library's timegm over four hundred years; the table of month
 * additions that dateutil gives; 2026-11-25 is day 20782.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/day.h"

#include <string.h>
#include <time.h>

#include "near.h"

static long
day_of (int year, int month, int day)
{
  long number = 0;

  g_assert_cmpint (wm_day_from_date ((WmDate) { year, month, day }, &number), ==, WM_OK);
  return number;
}

static void
test_known (void)
{
  g_assert_cmpint (day_of (1970, 1, 1), ==, 0);
  g_assert_cmpint (day_of (2026, 11, 25), ==, 20782);
  g_assert_cmpint (day_of (2026, 7, 1) - day_of (2024, 1, 15), ==, 898);
  wm_assert_near (898 / WM_DAYS_PER_YEAR, 2.458640, 0.6e-6);
}

static void
test_against_timegm (void)
{
  for (long day = -150000; day < 150000; day += 7)
    {
      WmDate date = wm_day_to_date (day);
      struct tm tm = { 0 };

      tm.tm_year = date.year - 1900;
      tm.tm_mon = date.month - 1;
      tm.tm_mday = date.day;
      g_assert_cmpint (timegm (&tm) / 86400, ==, day);
      g_assert_cmpint (day_of (date.year, date.month, date.day), ==, day);
    }
}

static void
test_add_months (void)
{
  const struct
  {
    WmDate from;
    int months;
    WmDate to;
  } rows[] = {
    { { 2024, 1, 31 }, 1, { 2024, 2, 29 } },  { { 2025, 11, 30 }, 3, { 2026, 2, 28 } },
    { { 2023, 1, 31 }, 1, { 2023, 2, 28 } },  { { 2026, 12, 15 }, 1, { 2027, 1, 15 } },
    { { 2024, 2, 29 }, 12, { 2025, 2, 28 } }, { { 2100, 1, 30 }, 1, { 2100, 2, 28 } },
    { { 2024, 2, 29 }, 48, { 2028, 2, 29 } }, { { 2000, 1, 30 }, 1, { 2000, 2, 29 } },
    { { 2025, 8, 31 }, 6, { 2026, 2, 28 } },  { { 2025, 10, 31 }, 13, { 2026, 11, 30 } },
    { { 2025, 3, 31 }, -1, { 2025, 2, 28 } }, { { 2025, 1, 31 }, 2, { 2025, 3, 31 } },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      long from = day_of (rows[i].from.year, rows[i].from.month, rows[i].from.day);
      WmDate to = wm_day_to_date (wm_day_add_months (from, rows[i].months));

      g_assert_cmpint (to.year, ==, rows[i].to.year);
      g_assert_cmpint (to.month, ==, rows[i].to.month);
      g_assert_cmpint (to.day, ==, rows[i].to.day);
    }
}

static void
test_refusals (void)
{
  const WmDate bad[] = { { 2023, 2, 29 }, { 2100, 2, 29 }, { 2024, 13, 1 },
                         { 2024, 0, 1 },  { 2024, 4, 31 }, { 2024, 4, 0 },
                         { 0, 1, 1 },     { 10000, 1, 1 } };

  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      long day = 77;

      g_assert_cmpint (wm_day_from_date (bad[i], &day), ==, WM_OUT_OF_RANGE);
      g_assert_cmpint (day, ==, 77);
    }
}

static void
test_from_years (void)
{
  g_assert_cmpint (wm_day_from_years (0, 2.4590), ==, 898);
  g_assert_cmpint (wm_day_from_years (100, 0.0), ==, 100);
  g_assert_cmpint (wm_day_from_years (0, 400.0), ==, 146097);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reckon/day/known", test_known);
  g_test_add_func ("/reckon/day/against-timegm", test_against_timegm);
  g_test_add_func ("/reckon/day/add-months", test_add_months);
  g_test_add_func ("/reckon/day/refusals", test_refusals);
  g_test_add_func ("/reckon/day/from-years", test_from_years);
  return g_test_run ();
}
