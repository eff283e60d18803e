/* scale-sheet-print.h: the scale sheet to the printer
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/session.h"

/* The desktop's print dialog (which also prints to a file), on the shop's paper. */
void wm_scale_sheet_print (GtkWindow *parent, WmSession *session);
