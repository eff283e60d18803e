/* take-in-page.h: a piece is received, with the customer present
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/moment-page.h"

#define WM_TYPE_TAKE_IN_PAGE (wm_take_in_page_get_type ())
G_DECLARE_FINAL_TYPE (WmTakeInPage, wm_take_in_page, WM, TAKE_IN_PAGE, GtkWidget)
