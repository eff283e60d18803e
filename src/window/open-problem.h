/* open-problem.h: what is shown when the archive can not be opened
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <adwaita.h>

#include "archive/archive.h"

#define WM_TYPE_OPEN_PROBLEM (wm_open_problem_get_type ())
G_DECLARE_FINAL_TYPE (WmOpenProblem, wm_open_problem, WM, OPEN_PROBLEM,
                      AdwApplicationWindow)

/* Emits "retry" (int WmArchiveMode) when the jeweller asks for it. */
WmOpenProblem *wm_open_problem_new (GtkApplication *application, const char *folder,
                                    const GError *error);
