/* fineness.h: which finenesses a metal can be marked with
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "trade/trade.h"

G_BEGIN_DECLS

/**
 * wm_fineness_is_standard:
 * @metal: "gold", "silver", "platinum" or "palladium"
 * @ppt: parts per thousand by mass
 *
 * Returns: whether the list of ISO 9202 in tables/fineness.txt has it
 */
gboolean wm_fineness_is_standard (WmTrade *trade, const char *metal, guint ppt);

/**
 * wm_fineness_mark_for:
 * @ppt: fineness found, parts per thousand by mass
 * @out_mark: (out): the highest standard fineness not above @ppt: a mark has no
 *   minus tolerance, so gold of 584 is never marked 585; the country may know fewer
 *   standards than the list
 *
 * Returns: FALSE when @ppt is under every standard of the metal, is not within
 * 0 to 1000, or the metal has no list
 */
gboolean
wm_fineness_mark_for (WmTrade *trade, const char *metal, double ppt, guint *out_mark);

/* Exact: gold is reckoned in 24 parts. Karat outside 0 to 24 gives NAN. */
double wm_fineness_from_karat (double karat);

G_END_DECLS
