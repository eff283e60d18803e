/* change.h: what one log entry does, row by row, and how it is done
 *
 * An edit, an undo and a redo are the same here: rows that were so and will be so.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "archive/edit-private.h"
#include "archive/row.h"
#include "trade/trade.h"

typedef struct
{
  WmKind kind;
  WmId id;
  WmRow before;    /* record NULL: there was no row */
  WmRow after;     /* record NULL: there will be none */
  gint64 revision; /* the row's last one, also if it is gone; 0: never was */
} WmRowChange;

WmRowChange *wm_row_change_new (WmKind kind, const WmId *id);
void wm_row_change_free (WmRowChange *self);
/* (element-type WmRowChange) */
GPtrArray *wm_row_changes_new (void);

/* What @edit does to the rows as they are now, with all that belongs to what it
 * removes. Empty if it changes nothing. CONFLICT NOT_FOUND REFUSED */
GPtrArray *wm_plan_edit (WmDatabase *db, WmEdit *edit, GError **error);

/* Adds to @changes what belongs to the rows they remove, and empties what names them:
 * for undo and redo, whose log knows nothing of what the program tied to a row later. */
gboolean wm_plan_follow (WmDatabase *db, GPtrArray *changes, GError **error);

typedef struct
{
  WmId id;
  WmId piece_id; /* none: of the shop */
  const char *label;
  WmId by;
  gint64 at_us;
  const char *action; /* "edit", "undo", "redo" */
  WmId of_edit;       /* for the last two */
} WmLogEntry;

/* Writes rows, log and list of pieces inside the transaction that is open. */
gboolean wm_apply_changes (WmDatabase *db, WmTrade *trade, const WmLogEntry *entry,
                           GPtrArray *changes, GError **error);
