/* row.h: a record as a row of its table
 *
 * Made from the kind's field table; one table a kind, named as the kind.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "archive/database.h"
#include "record/kinds.h"

/* A row is a record and when it first came into the archive. */
typedef struct
{
  WmRecord *record; /* owned */
  gint64 made_at_us;
} WmRow;

void wm_row_clear (WmRow *row);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (WmRow, wm_row_clear)

/* @out_row->record is NULL if there is no such row, which is no error. */
gboolean
wm_row_load (WmDatabase *db, WmKind kind, const WmId *id, WmRow *out_row, GError **error);

/* The records of a query whose WHERE and ORDER BY are @tail, with @id as its ?1.
 * @tail: fixed text of ours. (element-type WmRecord) */
GPtrArray *wm_row_list (WmDatabase *db, WmKind kind, const char *tail, const WmId *id,
                        GError **error);

/* Checks what no column can say: text is UTF-8, the key is one. */
gboolean wm_row_check (WmRecord *record, GError **error);

/* Both write the record's own stamp. */
gboolean wm_row_insert (WmDatabase *db, const WmRow *row, GError **error);
gboolean wm_row_update (WmDatabase *db, const WmRow *row, GError **error);
gboolean wm_row_delete (WmDatabase *db, WmKind kind, const WmId *id, GError **error);
