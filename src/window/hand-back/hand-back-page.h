/* hand-back-page.h: the report, the next check, and the piece goes home
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/moment-page.h"

#define WM_TYPE_HAND_BACK_PAGE (wm_hand_back_page_get_type ())
G_DECLARE_FINAL_TYPE (WmHandBackPage, wm_hand_back_page, WM, HAND_BACK_PAGE, GtkWidget)
