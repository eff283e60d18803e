/* topic-text.h: numbers, units, dates and rows as people type them
 *
 * Decimal point ".", whatever the process's locale. No allocation.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/topics.h"

/**
 * wm_text_number:
 * @text: (inout): moved behind the number on success
 *
 * Optional sign, digits with at most one point, optional exponent.
 *
 * Returns: nonzero and the number in @number
 */
int wm_text_number (const char **text, double *number);

/**
 * wm_text_value:
 * @unit: the unit it may carry, "" = none
 *
 * Number, optional "±" or "+-" with the standard uncertainty, optional unit.
 *
 * Returns: WM_OK, WM_NOT_A_NUMBER or WM_WRONG_UNIT
 */
WmResult wm_text_value (const char *text, const char *unit, WmValue *value);

/**
 * wm_text_date:
 *
 * "2026-11-25" and nothing behind it in the first @length bytes.
 *
 * Returns: WM_OK and the day number, WM_NOT_A_NUMBER when it is no date, WM_OUT_OF_RANGE
 * when that day does not exist
 */
WmResult wm_text_date (const char *text, int length, long *day);

/**
 * wm_text_choice:
 * @choices: (nullable): NULL-terminated
 * @length: bytes of @text to compare
 *
 * Returns: index, or -1
 */
int wm_text_choice (const char *text, int length, const char *const *choices);
