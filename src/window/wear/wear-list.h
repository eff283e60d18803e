/* wear-list.h: every measured part of a piece and how it wears
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "report/outlook.h"
#include "trade/trade.h"

/* Fills @box anew. @plot_height: view px. @first (nullable): the check whose part comes
 * first. */
void wm_wear_list_fill (GtkBox *box, const WmOutlook *outlook, WmTrade *trade,
                        int plot_height, const WmId *first);

/* Day number of today, by the clock of this workstation. */
long wm_wear_today (void);
