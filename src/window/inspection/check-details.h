/* check-details.h: what the open check holds: answer, reading, advice, note
 *
 * Buttons reach the actions of the page ("inspection."). Signal:
 *   note-changed (const char *)   a note was typed and left; "" for none
 *   other-word-changed (const char *)   so was why the numbers are not followed
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <adwaita.h>

#include "record/kinds.h"
#include "trade/checklist.h"

#define WM_TYPE_CHECK_DETAILS (wm_check_details_get_type ())
G_DECLARE_FINAL_TYPE (WmCheckDetails, wm_check_details, WM, CHECK_DETAILS, AdwBin)

WmCheckDetails *wm_check_details_new (void);

/**
 * wm_check_details_show:
 * @item: (nullable): the tables' row of the check, for its levels in words
 * @reading: (nullable): its last measurement
 * @n_marks: how many marks are tied to it in this visit
 */
void
wm_check_details_show (WmCheckDetails *self, WmCheck *check, const WmChecklistItem *item,
                       WmMeasurement *reading, guint n_marks);

/* Tells a note that is still being typed. */
void wm_check_details_leave (WmCheckDetails *self);
void wm_check_details_focus_note (WmCheckDetails *self);
/* FALSE: the word is the one the numbers point to, or there is none. */
gboolean wm_check_details_focus_other_word (WmCheckDetails *self);
