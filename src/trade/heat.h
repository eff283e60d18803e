/* heat.h: rows of the tables as the heat plan of the reckoning room takes them
 *
 * Guide values turned to the careful side: a metal's and an old joint's lowest
 * temperature, a new solder's highest, a stone's first trouble.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/heat-plan.h"
#include "trade/trade.h"

G_BEGIN_DECLS

/**
 * wm_trade_heat_metal:
 *
 * Unknown old joints count as the lowest solder of the metal's family, barred kinds
 * included: an old joint may hold one.
 *
 * Returns: FALSE when the row has no solidus or the family no solder
 */
gboolean wm_trade_heat_metal (WmTrade *trade, const WmMetal *metal, WmHeatMetal *out);

/* Lowest solidus, highest flow. */
void wm_trade_heat_solder (const WmSolder *solder, WmHeatSolder *out);

/**
 * wm_trade_list_solders_for:
 *
 * Returns: (transfer container): rows of #WmSolder that join this family, never a barred
 * one, in the order of the table
 */
GPtrArray *wm_trade_list_solders_for (WmTrade *trade, const char *family);

/**
 * wm_trade_ordinary_soldering_c:
 *
 * The working temperature of the hottest gold or silver solder: the "ordinary gold or
 * silver soldering" in which a stone of the kind "stay" may stay.
 */
double wm_trade_ordinary_soldering_c (WmTrade *trade);

/**
 * wm_trade_heat_stone:
 * @stone: (nullable): NULL for a stone that is not known
 * @can_come_out: FALSE for enamel, glued stones, what can not be unset
 *
 * A stone that may stay and has no number of its own may stay up to ordinary soldering; a
 * diamond with a number may go as far only under a skin that keeps the air away.
 */
void wm_trade_heat_stone (WmTrade *trade, const WmStone *stone, gboolean can_come_out,
                          gboolean is_out, WmHeatStone *out);

G_END_DECLS
