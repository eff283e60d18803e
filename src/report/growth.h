/* growth.h: the same place measured on two visits, and what has changed
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/growth.h"
#include "report/language.h"
#include "report/visit-data.h"

/* Two readings of one quantity of one item of the list. Owned. */
typedef struct
{
  WmMeasurement *earlier, *later;
  gint64 earlier_at_s;   /* of the earlier visit */
  gboolean shares_scale; /* both on photos with a scale of the same kind */
  WmGrowth growth;
} WmGrowthFound;

void wm_growth_found_clear (WmGrowthFound *self);

/**
 * wm_growth_find:
 * @check: of the visit of @data
 *
 * The last reading of @check on arrival against the last one of the same item and
 * quantity that was taken in an earlier visit: after its work, else on its arrival.
 *
 * Returns: FALSE when there are no two readings with an uncertainty each
 */
gboolean wm_growth_find (WmArchive *archive, WmVisitData *data, WmCheck *check,
                         WmGrowthFound *out);

/* "0.62 ± 0.06 mm, in 2024 0.71 ± 0.06 mm: 0.09 ± 0.08 mm thinner". Expanded
 * uncertainties (k = 2). @language (nullable): that of the window. NULL when there is
 * nothing to tell. Caller frees. */
char *wm_growth_words (WmArchive *archive, WmVisitData *data, WmCheck *check,
                       WmLanguage *language);
