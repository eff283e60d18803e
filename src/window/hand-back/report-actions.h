/* report-actions.h: the report to a PDF file and to the printer
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/session.h"

/* Asks where, then writes it off the main thread; told by a toast. */
void wm_report_save (GtkWindow *parent, WmSession *session);
/* The desktop's print dialog, with its preview. */
void wm_report_print (GtkWindow *parent, WmSession *session);
