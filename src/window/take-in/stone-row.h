/* stone-row.h: stones of one kind, in the form
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/session.h"

#define WM_TYPE_STONE_ROW (wm_stone_row_get_type ())
G_DECLARE_FINAL_TYPE (WmStoneRow, wm_stone_row, WM, STONE_ROW, GtkWidget)

GtkWidget *wm_stone_row_new (WmSession *session);
void wm_stone_row_show (WmStoneRow *self, WmStoneGroup *group);
WmStoneGroup *wm_stone_row_get_group (WmStoneRow *self);
void wm_stone_row_leave (WmStoneRow *self);
