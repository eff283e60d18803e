/* bench-work-page.h: what is done about each finding, by whom, for how much
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/moment-page.h"

#define WM_TYPE_BENCH_WORK_PAGE (wm_bench_work_page_get_type ())
G_DECLARE_FINAL_TYPE (WmBenchWorkPage, wm_bench_work_page, WM, BENCH_WORK_PAGE, GtkWidget)
