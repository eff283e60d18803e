/* number.h: piece numbers for people, "2026-0151-Q"
 *
 * Year, running number, check character by ISO/IEC 7064, MOD 37,36 over the
 * digits without hyphens. The check character tells every single wrong
 * character and nearly every swap of two neighbours.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

#include "trade/error.h"

G_BEGIN_DECLS

/* Years and running numbers a piece number can carry; four digits at least are
 * shown of each, and the running number grows to six. */
#define WM_NUMBER_FIRST_YEAR 1900
#define WM_NUMBER_LAST_YEAR 9999
#define WM_NUMBER_LAST_RUNNING 999999

/**
 * wm_number_check_char:
 * @text: letters A to Z in either case and digits; anything else is passed over
 *
 * Returns: the check character by ISO/IEC 7064 MOD 37,36: '0' to '9', 'A' to
 * 'Z'; '\0' when @text has no letter and no digit
 */
char wm_number_check_char (const char *text);

/**
 * wm_number_make:
 * @year: WM_NUMBER_FIRST_YEAR to WM_NUMBER_LAST_YEAR
 * @running: 1 to WM_NUMBER_LAST_RUNNING
 *
 * Returns: (transfer full): "2026-0151-Q", NULL outside these ranges
 */
char *wm_number_make (guint year, guint running);

/**
 * wm_number_parse:
 * @text: as typed: either case, with or without hyphens and spaces
 * @out_year, @out_running: (out) (optional): written on success only
 * @out_number: (out) (optional) (transfer full): the number as wm_number_make () writes
 * it
 *
 * Returns: FALSE with WM_TRADE_ERROR_MALFORMED_NUMBER or WM_TRADE_ERROR_WRONG_CHECK
 */
gboolean wm_number_parse (const char *text, guint *out_year, guint *out_running,
                          char **out_number, GError **error);

G_END_DECLS
