/* day.h: whole days, proleptic Gregorian calendar, no time zone
 *
 * Pure computation: no I/O, no GLib, no clock. Day 0 is 1970-01-01.
 *
 * Source: ISO 8601 calendar; checked against the C library's timegm over 400 years and
 * the month-adding table (test-day.c).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/result.h"

/* Mean Gregorian year: 146097 days in 400 years. */
#define WM_DAYS_PER_YEAR 365.2425

typedef struct
{
  int year;  /* 1..9999 */
  int month; /* 1..12 */
  int day;   /* 1..31 */
} WmDate;

/**
 * wm_day_from_date:
 *
 * Returns: WM_OK and the day number; WM_OUT_OF_RANGE for a date that does not exist
 */
WmResult wm_day_from_date (WmDate date, long *day);

WmDate wm_day_to_date (long day);

/**
 * wm_day_add_months:
 * @months: may be negative
 *
 * Same day of the month, or the month's last day where it has fewer. Always count
 * from the original date: adding 1 twice is not adding 2.
 *
 * Returns: the day number
 */
long wm_day_add_months (long day, int months);

/**
 * wm_day_from_years:
 * @day: day number of the zero
 *
 * Returns: the whole day reached @years after it, rounded down (the earlier day is the
 * safer one)
 */
long wm_day_from_years (long day, double years);
