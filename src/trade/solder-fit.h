/* solder-fit.h: which solders of the tables suit an alloy by fineness and colour
 *
 * Says nothing of heat: that is the heat plan's (reckon/heat-plan.h).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "trade/trade.h"

G_BEGIN_DECLS

/**
 * wm_trade_metal_colour:
 *
 * Returns: "yellow", "rose", "white" for gold alloys, told by how they are annealed;
 * NULL for all others. Static.
 */
const char *wm_trade_metal_colour (const WmMetal *metal);

/**
 * wm_trade_least_solder_fineness:
 * @fineness: of the piece, parts per thousand; NaN: that of the alloy
 * @advice: (out) (optional): key of the advice that says so, NULL when there is none
 *
 * The table of a hallmarking country, as a default: the law of the place comes first.
 * White gold may take a solder of 500, other gold one of its own fineness, but never more
 * than 750; silver 650.
 *
 * Returns: parts per thousand; NaN where the table has no number (platinum, palladium)
 */
double wm_trade_least_solder_fineness (const WmMetal *metal, double fineness,
                                       const char **advice);

/* Whether the solder's own fineness is known and below that. */
gboolean wm_trade_solder_is_too_low (const WmSolder *solder, const WmMetal *metal,
                                     double fineness);

G_END_DECLS
