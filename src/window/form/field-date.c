/* field-date.c: a date as a person types it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/form/field-check.h"

#include <glib/gi18n.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const char *const english[12] = {
  "january", "february", "march",     "april",   "may",      "june",
  "july",    "august",   "september", "october", "november", "december"
};

/* Ten years: longer than any promise or next check of the trade, short enough to catch
 * a slip of the year (common practice, no source). */
#define FAR_DAYS 3653

static gboolean
is_month_name (const char *word, const char *name)
{
  g_autofree char *folded_word = g_utf8_casefold (word, -1);
  g_autofree char *folded_name = g_utf8_casefold (name, -1);

  return g_utf8_strlen (folded_word, -1) >= 3
         && g_str_has_prefix (folded_name, folded_word);
}

static int
find_month (const char *word)
{
  for (int month = 1; month <= 12; month++)
    {
      g_autoptr (GDateTime) date = g_date_time_new_utc (2000, month, 1, 0, 0, 0);
      g_autofree char *own = g_date_time_format (date, "%B");

      if (is_month_name (word, english[month - 1])
          || (own != NULL && is_month_name (word, own)))
        return month;
    }
  return 0;
}

/* "2026-12-02" */
static gboolean
read_iso (const char *text, int *year, int *month, int *day)
{
  int used = 0;

  return sscanf (text, "%4d-%2d-%2d%n", year, month, day, &used) == 3
         && text[used] == '\0' && strlen (text) >= 8;
}

/* "2.12.2026", "2.12.", "2 12 2026": numbers and month names between points and
 * blanks; *year stays 0 without one. */
static gboolean
read_parts (const char *text, int *year, int *month, int *day)
{
  g_auto (GStrv) words = g_strsplit_set (text, ". ,", -1);
  int n = 0;

  *year = *month = *day = 0;
  for (guint i = 0; words[i] != NULL; i++)
    {
      char *end = NULL;
      long number;

      if (words[i][0] == '\0')
        continue;
      number = strtol (words[i], &end, 10);
      if (n == 0)
        *day = *end == '\0' ? number : 0;
      else if (n == 1)
        *month = *end == '\0' ? number : find_month (words[i]);
      else if (n == 2)
        *year = *end == '\0' ? number : -1;
      else
        return FALSE;
      n++;
    }
  if (*year > 0 && *year < 100)
    *year += 2000;

  return n >= 2 && *day > 0 && *month > 0 && *year >= 0;
}

static gboolean
is_date (int year, int month, int day)
{
  return year >= 1900 && year <= 2200 && month >= 1 && month <= 12 && day >= 1
         && g_date_valid_dmy (day, month, year);
}

/* Without a year: the next such day from @today on. */
static void
guess_year (const GDate *today, int *year, int month, int day)
{
  GDate date;

  if (*year != 0)
    return;
  *year = g_date_get_year (today);
  if (!is_date (*year, month, day))
    return;
  g_date_clear (&date, 1);
  g_date_set_dmy (&date, day, month, *year);
  if (g_date_compare (&date, today) < 0)
    *year += 1;
}

static WmFieldVerdict
say_wrong (char **out_remark, const char *remark)
{
  *out_remark = g_strdup (remark);
  return WM_FIELD_WRONG;
}

WmFieldVerdict
wm_field_check_date (const char *text, const char *today, char **out_date,
                     char **out_remark)
{
  g_autofree char *stripped = g_strstrip (g_strdup (text));
  GDate now, date;
  int year, month, day, off;
  char *end = NULL;

  *out_remark = NULL;
  if (stripped[0] == '\0')
    {
      *out_date = NULL;
      return WM_FIELD_OK;
    }
  g_date_clear (&now, 1);
  g_date_clear (&date, 1);
  if (!read_iso (today, &year, &month, &day) || !is_date (year, month, day))
    g_return_val_if_reached (WM_FIELD_WRONG);
  g_date_set_dmy (&now, day, month, year);

  if (stripped[0] == '+')
    {
      long days = strtol (stripped + 1, &end, 10);

      if (end == stripped + 1 || *end != '\0' || days < 0 || days > FAR_DAYS)
        return say_wrong (out_remark, _ ("Write the days from today as a number: +14."));
      date = now;
      g_date_add_days (&date, days);
    }
  else
    {
      if (strchr (stripped, '/') != NULL)
        return say_wrong (out_remark,
                          _ ("With slashes day and month can be mixed up. Write"
                             " 2 December or 2026-12-02."));
      if (!read_iso (stripped, &year, &month, &day)
          && !read_parts (stripped, &year, &month, &day))
        return say_wrong (out_remark,
                          _ ("This is not a date. Write 2 December or 2026-12-02."));
      guess_year (&now, &year, month, day);
      if (!is_date (year, month, day))
        return say_wrong (out_remark, _ ("There is no such day in the calendar."));
      g_date_set_dmy (&date, day, month, year);
    }

  *out_date = g_strdup_printf ("%04d-%02d-%02d", g_date_get_year (&date),
                               g_date_get_month (&date), g_date_get_day (&date));
  off = g_date_days_between (&now, &date);
  if (off < 0)
    *out_remark = g_strdup (_ ("This day is past."));
  else if (off > FAR_DAYS)
    *out_remark = g_strdup (_ ("This is more than ten years ahead."));
  return *out_remark == NULL ? WM_FIELD_OK : WM_FIELD_ODD;
}
