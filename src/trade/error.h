/* error.h: what can be wrong with a table or a piece number
 *
 * The message of a table error always reads "FILE:LINE: what is wrong; what to
 * do": the person who wrote the row can mend it without asking anyone.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * WmTradeError:
 * @WM_TRADE_ERROR_NO_TABLES: the folder of the tables is missing or empty
 * @WM_TRADE_ERROR_UNREADABLE: a file cannot be read, is too large or not UTF-8
 * @WM_TRADE_ERROR_BAD_ROW: a line that is no comment, section or "key = value"
 * @WM_TRADE_ERROR_UNKNOWN_KIND: a section of a kind that no table has
 * @WM_TRADE_ERROR_UNKNOWN_FIELD: a field that this kind of section does not have
 * @WM_TRADE_ERROR_MISSING_FIELD: a field that every section of the kind needs
 * @WM_TRADE_ERROR_BAD_VALUE: a number, range, level or limit that cannot be read
 * @WM_TRADE_ERROR_DUPLICATE: the same section or field twice
 * @WM_TRADE_ERROR_UNKNOWN_REFERENCE: a key that no section defines
 * @WM_TRADE_ERROR_MALFORMED_NUMBER: a text that has not the form of a piece number
 * @WM_TRADE_ERROR_WRONG_CHECK: a piece number whose check character does not fit
 */
typedef enum
{
  WM_TRADE_ERROR_NO_TABLES,
  WM_TRADE_ERROR_UNREADABLE,
  WM_TRADE_ERROR_BAD_ROW,
  WM_TRADE_ERROR_UNKNOWN_KIND,
  WM_TRADE_ERROR_UNKNOWN_FIELD,
  WM_TRADE_ERROR_MISSING_FIELD,
  WM_TRADE_ERROR_BAD_VALUE,
  WM_TRADE_ERROR_DUPLICATE,
  WM_TRADE_ERROR_UNKNOWN_REFERENCE,
  WM_TRADE_ERROR_MALFORMED_NUMBER,
  WM_TRADE_ERROR_WRONG_CHECK
} WmTradeError;

#define WM_TRADE_ERROR (wm_trade_error_quark ())

GQuark wm_trade_error_quark (void);

G_END_DECLS
