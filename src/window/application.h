/* application.h: the program with a window: its archive, its tables, its own actions
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <adwaita.h>

#define WM_TYPE_APPLICATION (wm_application_get_type ())
G_DECLARE_FINAL_TYPE (WmApplication, wm_application, WM, APPLICATION, AdwApplication)

/* @archive_folder (nullable): NULL opens the user's own archive */
WmApplication *wm_application_new (const char *archive_folder);
