/* diary-page.h: who should come back in the next twelve weeks
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/session.h"

#define WM_TYPE_DIARY_PAGE (wm_diary_page_get_type ())
G_DECLARE_FINAL_TYPE (WmDiaryPage, wm_diary_page, WM, DIARY_PAGE, GtkWidget)

/* Reads the archive anew. */
void wm_diary_page_show (WmDiaryPage *self, WmSession *session);
