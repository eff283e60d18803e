/* check-row.h: one check of the list
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <adwaita.h>

#include "record/kinds.h"

#define WM_TYPE_CHECK_ROW (wm_check_row_get_type ())
G_DECLARE_FINAL_TYPE (WmCheckRow, wm_check_row, WM, CHECK_ROW, AdwBin)

/* @index: of the check, handed to inspection.open-check */
WmCheckRow *wm_check_row_new (int index);

void wm_check_row_show (WmCheckRow *self, WmCheck *check);

/* @details (nullable): what is opened below; NULL closes */
void wm_check_row_open (WmCheckRow *self, GtkWidget *details);
void wm_check_row_focus (WmCheckRow *self);
