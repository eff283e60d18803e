/* worker-row.h: one person of the shop in the settings
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/session.h"

#define WM_TYPE_WORKER_ROW (wm_worker_row_get_type ())
G_DECLARE_FINAL_TYPE (WmWorkerRow, wm_worker_row, WM, WORKER_ROW, GtkWidget)

GtkWidget *wm_worker_row_new (WmSession *session, WmPerson *person);
void wm_worker_row_show (WmWorkerRow *self, WmPerson *person);
WmPerson *wm_worker_row_get_person (WmWorkerRow *self);
void wm_worker_row_leave (WmWorkerRow *self);
