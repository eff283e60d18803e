/* inspection-page.h: look at every part, mark what is found, answer each check
 *
 * The page of the moment "inspection" (../moment-page.h).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <adwaita.h>

#define WM_TYPE_INSPECTION_PAGE (wm_inspection_page_get_type ())
G_DECLARE_FINAL_TYPE (WmInspectionPage, wm_inspection_page, WM, INSPECTION_PAGE, AdwBin)
