/* edit.h: one user action as a value: the unit of commit, of undo and of history
 *
 * An edit holds copies of the records it puts and the keys of those it removes.
 * It becomes real when an archive commits it, all or nothing, in one transaction
 * with one sync.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "record/record.h"

typedef struct _WmEdit WmEdit;

/**
 * wm_edit_new:
 * @label: N_() marked name of the action: "Place mark"; shown translated by Undo
 * @piece_id: (nullable): the piece it belongs to; NULL for shop settings and people
 * @by: (nullable): the person of the shop who is working now
 */
WmEdit *wm_edit_new (const char *label, const WmId *piece_id, const WmId *by);

/**
 * wm_edit_put:
 * @record: a new record, or one that came out of the archive
 *
 * Inserts @record, or replaces the row of the same key. Copied now; putting the same
 * key again replaces what was put before. @record's revision moves on at once, as if
 * committed, so that it can be changed and put into a next edit without waiting for
 * this one. If another copy of the row was committed in between, commit gives
 * CONFLICT: load it again.
 */
void wm_edit_put (WmEdit *self, gpointer record);

/* Removes the row, and with it every row that belongs to it (marks of a photo,
 * measurements of a check ...); a row that only names it (a mark and its check) stays
 * with that field emptied. REFUSED while something holds it (the owner of a piece).
 * Undo brings all of it back. */
void wm_edit_remove (WmEdit *self, gpointer record);

/* The label of edits that the program makes by itself: photos brought into register and
 * the marks carried over with them. Such an edit is in the history but is no step of
 * undo or redo, and ends no redo: nobody has done it who could take it back. What undo
 * takes away goes with all that such an edit tied to it. */
#define WM_EDIT_BY_PROGRAM "Photos aligned"

gboolean wm_edit_is_empty (WmEdit *self);
WmEdit *wm_edit_ref (WmEdit *self);
void wm_edit_unref (WmEdit *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (WmEdit, wm_edit_unref)
