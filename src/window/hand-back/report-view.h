/* report-view.h: the pages of the report as they will be printed
 *
 * Made off the main thread and shown when they are ready; what is shown stays until
 * then.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/session.h"

#define WM_TYPE_REPORT_VIEW (wm_report_view_get_type ())
G_DECLARE_FINAL_TYPE (WmReportView, wm_report_view, WM, REPORT_VIEW, GtkWidget)

/* Makes the pages of the shown visit anew, soon: several calls make them once. */
void wm_report_view_show (WmReportView *self, WmSession *session);
