/* bench-print.h: the heat plan and the quote to the printer
 *
 * The plan in the language of the program, for the bench; the quote in the owner's.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/session.h"

/* @parent is the window that asks; what goes wrong is told by a toast. The print dialog
 * also prints to a file. */
void wm_bench_print_plan (GtkWindow *parent, WmSession *session);
void wm_bench_print_quote (GtkWindow *parent, WmSession *session);
