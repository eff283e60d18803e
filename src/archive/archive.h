/* archive.h: the folder that holds everything, and how edits get into it
 *
 * records.sqlite, photos/ab/abcdef....jpg, cache/. Every edit is committed when it
 * is made (WAL, synchronous FULL) and can be undone after a restart.
 *
 * Calls without _async may be made on any thread and may wait for the disk; the
 * window uses the _async ones for everything that writes, which run one after the
 * other on the archive's own thread. "changed" is emitted in the main context that
 * opened the archive, after the edit is on disk.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gio/gio.h>

#include "archive/archive-error.h"
#include "archive/edit.h"
#include "record/kinds.h"
#include "trade/trade.h"

/* Our application_id in the database header: "WMRK" in ASCII. */
#define WM_ARCHIVE_APPLICATION_ID 0x574d524b

typedef enum
{
  WM_ARCHIVE_CREATE,   /* make it if the folder is absent or empty */
  WM_ARCHIVE_EXISTING, /* must be there */
  WM_ARCHIVE_LOOK      /* must be there; never written, no lock taken: shows it as it
                        * was when it was opened */
} WmArchiveMode;

#define WM_TYPE_ARCHIVE (wm_archive_get_type ())
G_DECLARE_FINAL_TYPE (WmArchive, wm_archive, WM, ARCHIVE, GObject)

/* The XDG data folder's wearmark/archive. Caller frees. */
char *wm_archive_default_folder (void);

/* Opens, migrating an older database after setting a copy of it aside. Errors:
 * NOT_THERE FOREIGN NEWER DAMAGED READ_ONLY FULL OPEN_ELSEWHERE IO. Nothing is
 * overwritten on any of them. */
WmArchive *wm_archive_open (const char *folder, WmArchiveMode mode, GError **error);

/* Waits for edits under way, checkpoints, gives the lock back. Also done by the last
 * unref; after it every call fails. */
void wm_archive_close (WmArchive *self);

const char *wm_archive_get_folder (WmArchive *self);
const char *wm_archive_get_cache_folder (WmArchive *self);
gboolean wm_archive_is_read_only (WmArchive *self);

/* Names of types, metals and stones by which search finds pieces edited from now on,
 * beside the keys. Any thread may read @trade. NULL: keys only. */
void wm_archive_set_trade (WmArchive *self, WmTrade *trade);

/* ---- edits -------------------------------------------------------------- */

/* What an edit, undo or redo changed: handed to "changed" handlers as
 *   void handler (WmArchive *, const WmChange *, gpointer)
 * and valid only during the call. */
typedef struct
{
  WmKind kind;
  WmId id;
  gboolean removed;
} WmChangedRow;

typedef struct
{
  WmId piece_id; /* none: shop settings, people */
  const WmChangedRow *rows;
  guint n_rows;
} WmChange;

gboolean wm_change_touches (const WmChange *change, WmKind kind);

gboolean wm_archive_commit (WmArchive *self, WmEdit *edit, GError **error);
void wm_archive_commit_async (WmArchive *self, WmEdit *edit, GAsyncReadyCallback callback,
                              gpointer user_data);
gboolean wm_archive_commit_finish (WmArchive *self, GAsyncResult *result, GError **error);

/**
 * wm_archive_undo:
 * @piece_id: (nullable): undo this piece's last edit; NULL: the last of the shop's own
 *   (people, settings, a piece that was removed)
 * @out_label: (out) (optional): label of the edit undone
 *
 * Works across restarts. CONFLICT, and nothing changed, if a row was changed since
 * through another piece (an owner's telephone number ...); NOTHING if none is left.
 * A new edit of the piece ends its redo.
 */
gboolean wm_archive_undo (WmArchive *self, const WmId *piece_id, const WmId *by,
                          char **out_label, GError **error);
gboolean wm_archive_redo (WmArchive *self, const WmId *piece_id, const WmId *by,
                          char **out_label, GError **error);
void wm_archive_undo_async (WmArchive *self, const WmId *piece_id, const WmId *by,
                            GAsyncReadyCallback callback, gpointer user_data);
void wm_archive_redo_async (WmArchive *self, const WmId *piece_id, const WmId *by,
                            GAsyncReadyCallback callback, gpointer user_data);
/* For both. Returns: (transfer full): the label, or NULL with @error */
char *wm_archive_undo_finish (WmArchive *self, GAsyncResult *result, GError **error);

/* Label of what undo / redo would take back or do again, or NULL. Caller frees. */
char *wm_archive_peek_undo (WmArchive *self, const WmId *piece_id);
char *wm_archive_peek_redo (WmArchive *self, const WmId *piece_id);

/* ---- reading ------------------------------------------------------------ */

/* Returns: (transfer full): a WmPiece, WmVisit ... of @kind; NOT_FOUND */
gpointer wm_archive_get (WmArchive *self, WmKind kind, const WmId *id, GError **error);

/**
 * wm_archive_list:
 * @key_field: a field of type key of @kind: "visit_id"; NULL for all of the kind
 * @id: (nullable): what that field must be
 *
 * In order of position, then of making; visits in the order they were taken in.
 * Returns: (transfer full)
 *   (element-type WmRecord): owns its records; empty if there are none
 */
GPtrArray *wm_archive_list (WmArchive *self, WmKind kind, const char *key_field,
                            const WmId *id, GError **error);

/* Every record of the visit, or of its photos and checks, of @kind (marks, remedies,
 * measurements, proofs, pairings ...) in one query. */
GPtrArray *wm_archive_list_of_visit (WmArchive *self, WmKind kind, const WmId *visit_id,
                                     GError **error);

/* @number in any case, with or without its hyphens. NOT_FOUND */
WmPiece *wm_archive_find_piece (WmArchive *self, const char *number, GError **error);

/* A setting (record/setting.h), or NULL. Caller frees. */
char *wm_archive_get_setting (WmArchive *self, const char *name);
/* Puts a changed or new setting into @edit. */
gboolean wm_archive_put_setting (WmArchive *self, WmEdit *edit, const char *name,
                                 const char *value, GError **error);

/* The next piece number of @year from this workstation's block; never given twice,
 * gaps allowed. Caller frees. */
char *wm_archive_take_number (WmArchive *self, int year, GError **error);

/* ---- the list of pieces ------------------------------------------------- */

typedef enum
{
  WM_PIECES_ALL,
  WM_PIECES_ON_BENCH, /* a visit not handed back */
  WM_PIECES_DUE       /* not on the bench, next check on or before a date */
} WmPieces;

/* One row of the list: what it shows, nothing more. Also a GListModel item. */
#define WM_TYPE_PIECE_ROW (wm_piece_row_get_type ())
G_DECLARE_FINAL_TYPE (WmPieceRow, wm_piece_row, WM, PIECE_ROW, GObject)

struct _WmPieceRow
{
  GObject parent_instance;

  WmId piece_id;
  char *number;
  char *type;
  char *owner_name;
  char *description;
  int severity; /* worst of the last visit as it is now; WmSeverity */
  gboolean on_bench;
  gint64 taken_in_at_s; /* of the last visit */
  gint64 handed_back_at_s;
  char *moment; /* of the last visit */
  char *promised_on;
  char *next_check_on;
  char *photo_sha256; /* of the picture that stands for the piece, or NULL */
  char *photo_format;
};

/**
 * wm_archive_search:
 * @words: (nullable): each must begin a word of number, owner, kind, metal, stone,
 *   description or fault; any case, accents ignored; "" or NULL finds all
 * @due_by: (nullable): "2026-12-31", for WM_PIECES_DUE
 * @limit: 1 or more
 *
 * Newest first; by rank when the matches are few. Returns: (transfer full)
 *   (element-type WmPieceRow)
 */
GPtrArray *
wm_archive_search (WmArchive *self, const char *words, WmPieces which, const char *due_by,
                   guint offset, guint limit, GError **error);
/* How many there are in all. */
gint64 wm_archive_count (WmArchive *self, WmPieces which, const char *due_by);

/**
 * wm_archive_count_answers:
 * @item: of the checklist
 * @out_seen: answers from sound to do not wear, over all visits of all pieces
 * @out_failed: of these, repair and do not wear
 *
 * Reads every check: not for every key stroke. Returns: FALSE with the error set
 */
gboolean wm_archive_count_answers (WmArchive *self, const char *item, gint64 *out_seen,
                                   gint64 *out_failed, GError **error);

/* ---- history ------------------------------------------------------------ */

typedef struct
{
  gint64 at_us;
  char *by_name; /* or NULL */
  char *label;
  gboolean undone;
} WmEvent;

/* What was done to a piece, oldest first. (transfer full) (element-type WmEvent) */
GPtrArray *wm_archive_list_events (WmArchive *self, const WmId *piece_id, GError **error);

/* ---- photos ------------------------------------------------------------- */

/**
 * wm_archive_store_photo:
 * @path: a file anywhere, read once
 * @format: file name ending: "jpeg", "png" ...
 * @out_sha256, @out_byte_size: (out)
 *
 * Copies the file into the archive under its content hash: hashed while copying,
 * fsynced, renamed, folder fsynced. A file that is there already is left as it is.
 * May take seconds: not on the main thread. The record that names it is put
 * afterwards, by an edit.
 */
gboolean wm_archive_store_photo (WmArchive *self, const char *path, const char *format,
                                 GCancellable *cancellable, char **out_sha256,
                                 gint64 *out_byte_size, GError **error);

/* Where the file of a photo is (or ought to be). Caller frees. */
char *wm_archive_photo_path (WmArchive *self, WmPhoto *photo);
char *wm_archive_photo_path_for (WmArchive *self, const char *sha256, const char *format);

/* ---- proving ------------------------------------------------------------ */

typedef struct
{
  WmArchiveError code;
  char *text; /* untranslated: what, where */
} WmProblem;

typedef struct
{
  GPtrArray *problems;                         /* (element-type WmProblem) */
  gint64 n_pieces, n_photos, n_edits, n_bytes; /* what was looked at */
  gint64 n_strays;                             /* files in photos/ that nobody names */
} WmAudit;

void wm_audit_free (WmAudit *audit);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (WmAudit, wm_audit_free)

/* Database integrity, foreign keys, every row against the log of edits, the list of
 * pieces against the records, each photo's hash. A file in photos/ that no record and
 * no log entry names is counted, no problem: an import cut short leaves one. @progress
 * (nullable) is called with 0 to 1 on this thread. */
WmAudit *
wm_archive_verify (WmArchive *self, void (*progress) (double, gpointer),
                   gpointer user_data, GCancellable *cancellable, GError **error);
