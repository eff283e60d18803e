/* solder-fit.c: which solders of the tables suit an alloy by fineness and colour
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/solder-fit.h"

#include <math.h>

/* Rows sf_1 to sf_7 of the advice table: the United Kingdom's, quoted by a forum. */
#define GOLD_MOST_PPT 750.0
#define WHITE_GOLD_PPT 500.0
#define SILVER_PPT 650.0

const char *
wm_trade_metal_colour (const WmMetal *metal)
{
  static const struct
  {
    const char *temper;
    const char *colour;
  } colours[] = {
    { "h_auy", "yellow" },
    { "h_aur", "rose" },
    { "h_auwn", "white" },
    { "h_auwp", "white" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (colours); i++)
    if (g_strcmp0 (metal->temper, colours[i].temper) == 0)
      return colours[i].colour;

  return NULL;
}

static const char *
name_gold_rule (gboolean white, double least)
{
  if (white)
    return least >= GOLD_MOST_PPT ? "sf_3" : "sf_5";
  if (least >= GOLD_MOST_PPT)
    return "sf_1";
  return least >= 585.0 ? "sf_4" : "sf_6";
}

double
wm_trade_least_solder_fineness (const WmMetal *metal, double fineness,
                                const char **advice)
{
  gboolean white = g_strcmp0 (wm_trade_metal_colour (metal), "white") == 0;
  const char *unused;
  double own = isnan (fineness) ? metal->fineness : fineness;

  if (advice == NULL)
    advice = &unused;
  *advice = NULL;

  if (g_str_equal (metal->family, "silver"))
    {
      *advice = "sf_7";
      return SILVER_PPT;
    }
  if (!g_str_equal (metal->family, "gold") || isnan (own))
    return NAN;

  *advice = name_gold_rule (white, own);
  return fmin (own, white ? WHITE_GOLD_PPT : GOLD_MOST_PPT);
}

gboolean
wm_trade_solder_is_too_low (const WmSolder *solder, const WmMetal *metal, double fineness)
{
  double least = wm_trade_least_solder_fineness (metal, fineness, NULL);

  return !isnan (least) && !isnan (solder->fineness) && solder->fineness < least;
}
