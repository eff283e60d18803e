/* error.c: the error domain of the tables and the piece numbers
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/error.h"

G_DEFINE_QUARK (wm - trade - error - quark, wm_trade_error)
