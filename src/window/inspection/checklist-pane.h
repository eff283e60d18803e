/* checklist-pane.h: the checklist beside the photo, grouped by part
 *
 * Shows what it is given; buttons reach the actions of the page ("inspection.").
 * Signal:
 *   note-changed (const char *)   of the open check
 *   other-word-changed (const char *)   likewise
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <adwaita.h>

#include "record/kinds.h"
#include "trade/checklist.h"

#define WM_TYPE_CHECKLIST_PANE (wm_checklist_pane_get_type ())
G_DECLARE_FINAL_TYPE (WmChecklistPane, wm_checklist_pane, WM, CHECKLIST_PANE, AdwBin)

/* @checks (element-type WmCheck): held; rows are made again only when their number or
 * parts differ. */
void wm_checklist_pane_set_checks (WmChecklistPane *self, GPtrArray *checks);

/* What the open check shows; @index -1 opens none. See check-details.h. */
void
wm_checklist_pane_open (WmChecklistPane *self, int index, const WmChecklistItem *item,
                        WmMeasurement *reading, guint n_marks);
/* Scrolls there; @with_focus also takes the keyboard there. */
void wm_checklist_pane_show_row (WmChecklistPane *self, int index, gboolean with_focus);

/* Who called the visit inspected and when, in words; NULL: nobody yet. */
void wm_checklist_pane_set_concluded (WmChecklistPane *self, const char *words);

void wm_checklist_pane_leave (WmChecklistPane *self);
void wm_checklist_pane_focus_note (WmChecklistPane *self);
gboolean wm_checklist_pane_focus_other_word (WmChecklistPane *self);
