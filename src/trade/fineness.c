/* fineness.c: which finenesses a metal can be marked with
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/fineness.h"

#include <math.h>

/* A karat is one part in 24. */
#define WM_KARAT_PARTS 24.0

gboolean
wm_fineness_is_standard (WmTrade *trade, const char *metal, guint ppt)
{
  const WmFinenessRow *row = wm_trade_find_fineness (trade, metal);

  for (guint i = 0; row != NULL && row->values[i] != NULL; i++)
    if (g_ascii_strtoull (row->values[i], NULL, 10) == ppt)
      return TRUE;
  return FALSE;
}

gboolean
wm_fineness_mark_for (WmTrade *trade, const char *metal, double ppt, guint *out_mark)
{
  const WmFinenessRow *row = wm_trade_find_fineness (trade, metal);
  guint mark = 0;

  if (row == NULL || !isfinite (ppt) || ppt > 1000.0)
    return FALSE;

  for (guint i = 0; row->values[i] != NULL; i++)
    {
      guint value = (guint)g_ascii_strtoull (row->values[i], NULL, 10);

      if (value <= ppt)
        mark = MAX (mark, value);
    }
  if (mark == 0)
    return FALSE;

  *out_mark = mark;
  return TRUE;
}

double
wm_fineness_from_karat (double karat)
{
  if (!(karat >= 0.0 && karat <= WM_KARAT_PARTS))
    return NAN;
  return karat / WM_KARAT_PARTS * 1000.0;
}
