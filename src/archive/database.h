/* database.h: one connection to SQLite, its statements and its errors
 *
 * A connection belongs to one thread at a time. Prepared statements are kept for the
 * next use; values are always bound, never pasted into SQL.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gio/gio.h>
#include <sqlite3.h>

#include "archive/archive-error.h"
#include "record/id.h"

typedef struct _WmDatabase WmDatabase;
typedef struct _WmStatement WmStatement;

typedef enum
{
  WM_DATABASE_WRITE,
  WM_DATABASE_READ,
  WM_DATABASE_FROZEN /* a file that nobody writes: no side files are made */
} WmDatabaseMode;

/* Opens a file that exists; WAL, FULL and foreign keys are set and read back when it
 * is to be written. Errors: WM_ARCHIVE_ERROR */
WmDatabase *wm_database_open (const char *path, WmDatabaseMode mode, GError **error);
/* A new file, not in WAL mode yet. */
WmDatabase *wm_database_create (const char *path, GError **error);
void wm_database_close (WmDatabase *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (WmDatabase, wm_database_close)

/* For SQLite's own calls (backup). */
sqlite3 *wm_database_get_handle (WmDatabase *self);

/* Runs a script without values. */
gboolean wm_database_run (WmDatabase *self, const char *sql, GError **error);
/* The one number a query gives that has no values and always one row. */
gboolean wm_database_read_number (WmDatabase *self, const char *sql, gint64 *out_number,
                                  GError **error);
/* The same; @fallback on any error. */
gint64 wm_database_get_number (WmDatabase *self, const char *sql, gint64 fallback);

gboolean wm_database_begin (WmDatabase *self, GError **error);
gboolean wm_database_commit (WmDatabase *self, GError **error); /* else rolls back */
void wm_database_roll_back (WmDatabase *self);

/* Fills @error from the connection's last failure with result code @code. */
void wm_database_set_error (WmDatabase *self, int code, GError **error);

/* @sql: stays valid as long as the connection, or is interned. NULL on error */
WmStatement *wm_database_prepare (WmDatabase *self, const char *sql, GError **error);
void wm_statement_free (WmStatement *self); /* gives it back to its connection */
G_DEFINE_AUTOPTR_CLEANUP_FUNC (WmStatement, wm_statement_free)

/* Places count from 1. A failed bind is kept and told by the next run. */
void wm_statement_bind_int64 (WmStatement *self, int place, gint64 value);
/* NaN: NULL */
void wm_statement_bind_double (WmStatement *self, int place, double value);
void wm_statement_bind_text (WmStatement *self, int place, const char *text);
void wm_statement_bind_id (WmStatement *self, int place, const WmId *id); /* none: NULL */

/* Runs to the end, and may be bound and run again. */
gboolean wm_statement_run (WmStatement *self, GError **error);
/* TRUE: there is a row; FALSE: the end, or @error is set. */
gboolean wm_statement_next (WmStatement *self, GError **error);
/* Ready to be bound and run from the start. */
void wm_statement_rewind (WmStatement *self);

/* Columns count from 0. */
gboolean wm_statement_is_null (WmStatement *self, int column);
gint64 wm_statement_get_int64 (WmStatement *self, int column);
double wm_statement_get_double (WmStatement *self, int column); /* NULL: NaN */
/* Valid until the next row. */
const char *wm_statement_get_text (WmStatement *self, int column);
WmId wm_statement_get_id (WmStatement *self, int column); /* NULL: none */
