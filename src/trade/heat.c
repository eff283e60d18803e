/* heat.c: rows of the tables as the heat plan takes them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/heat.h"

#include <math.h>

static gboolean
joins_family (const WmSolder *solder, const char *family)
{
  return solder->families != NULL
         && g_strv_contains ((const char *const *)solder->families, family);
}

/* Lowest temperature at which a joint of the family may begin to give; NaN without any.
 */
static double
lowest_solder (WmTrade *trade, const char *family)
{
  const WmSolder *const *solders = wm_trade_list_solders (trade, NULL);
  double lowest = NAN;

  for (guint i = 0; solders[i] != NULL; i++)
    if (joins_family (solders[i], family))
      lowest = fmin (lowest, solders[i]->solidus_c.low);

  return lowest;
}

gboolean
wm_trade_heat_metal (WmTrade *trade, const WmMetal *metal, WmHeatMetal *out)
{
  double lowest = lowest_solder (trade, metal->family);

  if (isnan (metal->solidus_c.low) || isnan (lowest))
    return FALSE;

  *out = (WmHeatMetal) {
    .solidus_c = metal->solidus_c.low,
    .anneal_c = NAN, /* the tables say it in words; hard soldering is above it anyway */
    .lowest_solder_c = lowest,
    .whole_piece_hot = g_str_equal (metal->family, "silver"),
  };
  return TRUE;
}

void
wm_trade_heat_solder (const WmSolder *solder, WmHeatSolder *out)
{
  *out = (WmHeatSolder) { solder->solidus_c.low, solder->flow_c.high };
}

GPtrArray *
wm_trade_list_solders_for (WmTrade *trade, const char *family)
{
  const WmSolder *const *solders = wm_trade_list_solders (trade, NULL);
  GPtrArray *list = g_ptr_array_new ();

  for (guint i = 0; solders[i] != NULL; i++)
    if (joins_family (solders[i], family) && !solders[i]->is_barred)
      g_ptr_array_add (list, (gpointer)solders[i]);

  return list;
}

double
wm_trade_ordinary_soldering_c (WmTrade *trade)
{
  const WmSolder *const *solders = wm_trade_list_solders (trade, NULL);
  double hottest = NAN;

  for (guint i = 0; solders[i] != NULL; i++)
    if (joins_family (solders[i], "gold") || joins_family (solders[i], "silver"))
      hottest = fmax (hottest, solders[i]->flow_c.high);

  return hottest + WM_HEAT_SUPERHEAT_K;
}

void
wm_trade_heat_stone (WmTrade *trade, const WmStone *stone, gboolean can_come_out,
                     gboolean is_out, WmHeatStone *out)
{
  /* In the order of WmStoneHeat. */
  static const WmHeatStoneRule rules[] = { WM_HEAT_STONE_STAYS, WM_HEAT_STONE_GUARD,
                                           WM_HEAT_STONE_OUT, WM_HEAT_STONE_NEVER };
  double ordinary = wm_trade_ordinary_soldering_c (trade);

  *out = (WmHeatStone) { WM_HEAT_STONE_UNKNOWN, NAN, NAN, can_come_out, is_out };
  if (stone == NULL)
    return;

  out->heat = rules[stone->heat];
  out->limit_c = stone->trouble_c.low;
  if (isnan (out->limit_c))
    out->limit_c = ordinary;

  /* Advice f_diamond of the tables: boric acid keeps the air from a diamond. It etches
   * corundum (f_corundum), so a coat is offered for nothing else. */
  if (stone->heat == WM_STONE_STAY && g_str_has_prefix (stone->key, "diamond"))
    out->coated_limit_c = fmax (ordinary, out->limit_c);
}
