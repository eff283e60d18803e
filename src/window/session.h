/* session.h: what the window is working on: archive, person, piece, visit
 *
 * Every page shares the one session of its window. Pages read records from the
 * archive and change them through the session, which commits on the archive's
 * own thread, one edit after the other, and tells everybody when it is on disk.
 * Main thread only.
 *
 * Signals:
 *   person-changed (void)          another person is working now
 *   piece-changed (void)           another piece is shown, or none; visit-changed follows
 *   visit-changed (void)           another visit is shown, or none
 *   rows-changed (const WmChange *) rows of this piece, or of the shop, are changed on
 *                                  disk; piece and visit are read again before it
 *   toast (AdwToast *)             something to tell; the window shows it
 *   go-to-moment (const char *)    a page asks for another moment (WM_MOMENT_ words)
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "archive/archive.h"

/* Read with trade/trade.h; opaque here so that most of the window need not. */
typedef struct _WmTrade WmTrade;

#define WM_TYPE_SESSION (wm_session_get_type ())
G_DECLARE_FINAL_TYPE (WmSession, wm_session, WM, SESSION, GObject)

/* @trade (nullable) must outlive the session. */
WmSession *wm_session_new (WmArchive *archive, WmTrade *trade);

WmArchive *wm_session_get_archive (WmSession *self);
WmTrade *wm_session_get_trade (WmSession *self);
gboolean wm_session_is_read_only (WmSession *self);

/* ---- who works now -------------------------------------------------------- */

/* NULL while nobody was chosen. */
WmPerson *wm_session_get_person (WmSession *self);
void wm_session_set_person (WmSession *self, WmPerson *person);
/* The key of that person for an edit, or NULL. */
const WmId *wm_session_get_by (WmSession *self);

/* ---- what is shown -------------------------------------------------------- */

/* Both NULL, or the piece without a visit, or both. Owned by the session; hold a
 * reference to keep one. They are replaced, not changed, when edited. */
WmPiece *wm_session_get_piece (WmSession *self);
WmVisit *wm_session_get_visit (WmSession *self);
/* NULL without a visit. For finding records of the visit. */
const WmId *wm_session_get_visit_id (WmSession *self);

/* @visit_id (nullable): NULL shows the last visit. FALSE: told by a toast, and what
 * was shown stays. */
gboolean
wm_session_open_piece (WmSession *self, const WmId *piece_id, const WmId *visit_id);
void wm_session_close_piece (WmSession *self);
/* Only shows another moment. */
void wm_session_go_to_moment (WmSession *self, const char *moment);
/* The visit itself moves on (or back) to @moment: an edit; and shows it. */
void wm_session_move_on (WmSession *self, const char *moment);

/* ---- changing ------------------------------------------------------------- */

/* An edit of the shown piece (or of the shop, if none is shown) by the person who
 * works now. @label is N_() marked. */
WmEdit *wm_session_begin (WmSession *self, const char *label);
/* An edit of people or settings. */
WmEdit *wm_session_begin_shop (WmSession *self, const char *label);

/* A copy of @record to change and put, with the edits of it that are still on their
 * way to disk already in it: so two quick edits do not undo each other.
 * Returns: (transfer full): same type */
gpointer wm_session_copy (WmSession *self, gpointer record);

/* wm_edit_put () that wm_session_copy () knows of. Always use it in the window. */
void wm_session_put (WmSession *self, WmEdit *edit, gpointer record);

/* Told on the main thread when the edit is on disk, or was refused (told already by
 * a toast). */
typedef void (*WmSessionDone) (WmSession *self, gboolean kept, gpointer user_data);

/* Takes @edit (transfer full) and writes it; does nothing if it is empty. */
void wm_session_commit (WmSession *self, WmEdit *edit);
void wm_session_commit_then (WmSession *self, WmEdit *edit, WmSessionDone done,
                             gpointer user_data);

/**
 * wm_session_change:
 * @label: N_() marked
 * @record: any record of the shown piece
 * @first_property: its properties and values as for g_object_set ()
 *
 * One edit of one record; nothing is written if nothing differs.
 */
void wm_session_change (WmSession *self, const char *label, gpointer record,
                        const char *first_property, ...) G_GNUC_NULL_TERMINATED;

/* The same for a copy from wm_session_copy () that was changed already. */
void wm_session_keep (WmSession *self, const char *label, gpointer changed_copy);

/* The last edit of the shown piece, or of the shop when no piece is shown; tells
 * what was undone by a toast. */
void wm_session_undo (WmSession *self);
void wm_session_redo (WmSession *self);
/* The same for people and settings, whatever piece is shown. */
void wm_session_undo_shop (WmSession *self);
void wm_session_redo_shop (WmSession *self);

/* ---- telling -------------------------------------------------------------- */

void wm_session_toast (WmSession *self, const char *text);
/* With the sentence and next step of problem.h; @error is not taken. */
void wm_session_toast_error (WmSession *self, const GError *error);
