/* database.c: one connection to SQLite, its statements and its errors
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "archive/database.h"

#include <errno.h>
#include <math.h>
#include <string.h>

/* A reader may meet the moment in which the log is reset; a writer only another
 * program (a copy being made). Longer than either takes, shorter than patience. */
#define WM_BUSY_MS 5000

struct _WmDatabase
{
  sqlite3 *handle;
  GHashTable *idle; /* SQL -> sqlite3_stmt not in use */
  int last_errno;   /* the system's own number after the last step that failed */
};

struct _WmStatement
{
  WmDatabase *database;
  sqlite3_stmt *stmt;
  const char *sql;
  int bind_code;
};

/* ---- errors ------------------------------------------------------------- */

static WmArchiveError
code_of_system (int system_errno, WmArchiveError otherwise)
{
  switch (system_errno)
    {
    case ENOSPC:
    case EDQUOT:
    case EFBIG: /* a limit on the size of files: for the user, the same thing */
      return WM_ARCHIVE_ERROR_FULL;
    case EROFS:
    case EACCES:
    case EPERM:
      return WM_ARCHIVE_ERROR_READ_ONLY;
    default:
      return otherwise;
    }
}

static WmArchiveError
code_of_sqlite (int code, int system_errno)
{
  switch (code & 0xff)
    {
    case SQLITE_FULL:
      return WM_ARCHIVE_ERROR_FULL;
    case SQLITE_READONLY:
    case SQLITE_PERM:
      return WM_ARCHIVE_ERROR_READ_ONLY;
    case SQLITE_CORRUPT:
    case SQLITE_NOTADB:
    case SQLITE_FORMAT:
    case SQLITE_MISMATCH:
      return WM_ARCHIVE_ERROR_DAMAGED;
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
    case SQLITE_PROTOCOL:
      return WM_ARCHIVE_ERROR_BUSY;
    case SQLITE_CONSTRAINT:
    case SQLITE_TOOBIG:
      return WM_ARCHIVE_ERROR_REFUSED;
    case SQLITE_IOERR:
      /* A page that should be there and is not: the file was cut short. */
      if (code == SQLITE_IOERR_SHORT_READ)
        return WM_ARCHIVE_ERROR_DAMAGED;
      return code_of_system (system_errno, WM_ARCHIVE_ERROR_IO);
    case SQLITE_CANTOPEN:
      return code_of_system (system_errno, WM_ARCHIVE_ERROR_IO);
    case SQLITE_ERROR:
      /* Our SQL is fixed, so a table or column it names is missing. */
      return WM_ARCHIVE_ERROR_DAMAGED;
    default:
      return WM_ARCHIVE_ERROR_IO;
    }
}

void
wm_database_set_error (WmDatabase *self, int code, GError **error)
{
  int extended = sqlite3_extended_errcode (self->handle);
  int system_errno = sqlite3_system_errno (self->handle);

  /* SQLite does not keep it for a failed COMMIT. */
  if (system_errno == 0)
    system_errno = self->last_errno;
  if ((extended & 0xff) != (code & 0xff))
    extended = code;
  g_set_error (error, WM_ARCHIVE_ERROR, code_of_sqlite (extended, system_errno),
               "SQLite: %s (%d%s%s)", sqlite3_errmsg (self->handle), extended,
               system_errno != 0 ? ", " : "",
               system_errno != 0 ? g_strerror (system_errno) : "");
}

/* ---- connection --------------------------------------------------------- */

static void
finalize_stmt (gpointer stmt)
{
  sqlite3_finalize (stmt);
}

static WmDatabase *
open_handle (const char *name, int flags, GError **error)
{
  g_autoptr (WmDatabase) self = g_new0 (WmDatabase, 1);
  int code;

  self->idle = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, finalize_stmt);
  code = sqlite3_open_v2 (
      name, &self->handle,
      flags | SQLITE_OPEN_NOMUTEX | SQLITE_OPEN_URI | SQLITE_OPEN_EXRESCODE, NULL);
  if (code != SQLITE_OK)
    {
      if (self->handle != NULL)
        wm_database_set_error (self, code, error);
      else
        g_set_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_IO, "SQLite: %s",
                     sqlite3_errstr (code));
      return NULL;
    }

  sqlite3_busy_timeout (self->handle, WM_BUSY_MS);
  /* A strange file may not make us run what it likes. */
  sqlite3_db_config (self->handle, SQLITE_DBCONFIG_DEFENSIVE, 1, NULL);
  sqlite3_db_config (self->handle, SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0, NULL);
  return g_steal_pointer (&self);
}

static gboolean
read_back (WmDatabase *self, const char *pragma, const char *wanted, GError **error)
{
  g_autoptr (WmStatement) statement = wm_database_prepare (self, pragma, error);

  if (statement == NULL)
    return FALSE;
  if (!wm_statement_next (statement, error)
      || g_strcmp0 (wm_statement_get_text (statement, 0), wanted) != 0)
    {
      if (error != NULL && *error == NULL)
        g_set_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_IO,
                     "%s is not %s: this SQLite can not keep an archive safe", pragma,
                     wanted);
      return FALSE;
    }
  return TRUE;
}

static gboolean
set_up (WmDatabase *self, WmDatabaseMode mode, GError **error)
{
  if (!wm_database_run (self,
                        "PRAGMA foreign_keys = ON; PRAGMA cell_size_check = ON;"
                        " PRAGMA temp_store = MEMORY;",
                        error)
      || !read_back (self, "PRAGMA foreign_keys", "1", error))
    return FALSE;
  if (mode != WM_DATABASE_WRITE)
    return TRUE;
  return wm_database_run (self, "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL;",
                          error)
         && read_back (self, "PRAGMA journal_mode", "wal", error)
         && read_back (self, "PRAGMA synchronous", "2", error);
}

WmDatabase *
wm_database_open (const char *path, WmDatabaseMode mode, GError **error)
{
  g_autofree char *escaped = g_uri_escape_string (path, "/", FALSE);
  g_autofree char *name = g_strdup_printf (
      "file:%s%s", escaped, mode == WM_DATABASE_FROZEN ? "?immutable=1" : "");
  g_autoptr (WmDatabase) self = open_handle (
      name, mode == WM_DATABASE_WRITE ? SQLITE_OPEN_READWRITE : SQLITE_OPEN_READONLY,
      error);

  if (self == NULL || !set_up (self, mode, error))
    return NULL;
  return g_steal_pointer (&self);
}

WmDatabase *
wm_database_create (const char *path, GError **error)
{
  g_autofree char *escaped = g_uri_escape_string (path, "/", FALSE);
  g_autofree char *name = g_strconcat ("file:", escaped, NULL);

  return open_handle (name, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, error);
}

void
wm_database_close (WmDatabase *self)
{
  if (self == NULL)
    return;
  g_hash_table_unref (self->idle);
  sqlite3_close_v2 (self->handle);
  g_free (self);
}

sqlite3 *
wm_database_get_handle (WmDatabase *self)
{
  return self->handle;
}

gboolean
wm_database_run (WmDatabase *self, const char *sql, GError **error)
{
  int code;

  errno = 0;
  code = sqlite3_exec (self->handle, sql, NULL, NULL, NULL);
  self->last_errno = errno;
  if (code == SQLITE_OK)
    return TRUE;
  wm_database_set_error (self, code, error);
  return FALSE;
}

gboolean
wm_database_read_number (WmDatabase *self, const char *sql, gint64 *out_number,
                         GError **error)
{
  g_autoptr (WmStatement) statement = wm_database_prepare (self, sql, error);

  if (statement == NULL || !wm_statement_next (statement, error))
    return FALSE;
  *out_number = wm_statement_get_int64 (statement, 0);
  return TRUE;
}

gint64
wm_database_get_number (WmDatabase *self, const char *sql, gint64 fallback)
{
  gint64 number = fallback;

  wm_database_read_number (self, sql, &number, NULL);
  return number;
}

static gboolean
run_short (WmDatabase *self, const char *sql, GError **error)
{
  g_autoptr (WmStatement) statement = wm_database_prepare (self, sql, error);

  return statement != NULL && wm_statement_run (statement, error);
}

gboolean
wm_database_begin (WmDatabase *self, GError **error)
{
  return run_short (self, "BEGIN IMMEDIATE", error);
}

gboolean
wm_database_commit (WmDatabase *self, GError **error)
{
  if (run_short (self, "COMMIT", error))
    return TRUE;
  wm_database_roll_back (self);
  return FALSE;
}

void
wm_database_roll_back (WmDatabase *self)
{
  /* Some failures (a full disk) have rolled back already. */
  if (!sqlite3_get_autocommit (self->handle))
    run_short (self, "ROLLBACK", NULL);
}

/* ---- statements --------------------------------------------------------- */

WmStatement *
wm_database_prepare (WmDatabase *self, const char *sql, GError **error)
{
  g_autoptr (WmStatement) statement = g_new0 (WmStatement, 1);
  gpointer key;
  gpointer idle;

  statement->database = self;
  if (g_hash_table_steal_extended (self->idle, sql, &key, &idle))
    {
      statement->stmt = idle;
      statement->sql = key;
    }
  else
    {
      int code = sqlite3_prepare_v3 (self->handle, sql, -1, SQLITE_PREPARE_PERSISTENT,
                                     &statement->stmt, NULL);

      statement->sql = g_strdup (sql);
      if (code != SQLITE_OK)
        {
          wm_database_set_error (self, code, error);
          return NULL;
        }
    }
  return g_steal_pointer (&statement);
}

void
wm_statement_free (WmStatement *self)
{
  if (self->stmt != NULL)
    {
      sqlite3_reset (self->stmt);
      sqlite3_clear_bindings (self->stmt);
      g_hash_table_replace (self->database->idle, (gpointer)self->sql, self->stmt);
    }
  else
    {
      g_free ((gpointer)self->sql);
    }
  g_free (self);
}

static void
keep_code (WmStatement *self, int code)
{
  if (self->bind_code == SQLITE_OK)
    self->bind_code = code;
}

void
wm_statement_bind_int64 (WmStatement *self, int place, gint64 value)
{
  keep_code (self, sqlite3_bind_int64 (self->stmt, place, value));
}

void
wm_statement_bind_double (WmStatement *self, int place, double value)
{
  /* SQLite turns NaN into NULL itself; said here because we rely on it. */
  keep_code (self, isnan (value) ? sqlite3_bind_null (self->stmt, place)
                                 : sqlite3_bind_double (self->stmt, place, value));
}

void
wm_statement_bind_text (WmStatement *self, int place, const char *text)
{
  keep_code (self, sqlite3_bind_text (self->stmt, place, text, -1, SQLITE_TRANSIENT));
}

void
wm_statement_bind_id (WmStatement *self, int place, const WmId *id)
{
  if (id == NULL || wm_id_is_none (id))
    keep_code (self, sqlite3_bind_null (self->stmt, place));
  else
    keep_code (self, sqlite3_bind_blob (self->stmt, place, id->bytes, sizeof id->bytes,
                                        SQLITE_TRANSIENT));
}

gboolean
wm_statement_next (WmStatement *self, GError **error)
{
  int code = self->bind_code;

  errno = 0;
  if (code == SQLITE_OK)
    code = sqlite3_step (self->stmt);
  self->database->last_errno = errno;
  if (code == SQLITE_ROW)
    return TRUE;
  if (code != SQLITE_DONE)
    wm_database_set_error (self->database, code, error);
  return FALSE;
}

void
wm_statement_rewind (WmStatement *self)
{
  sqlite3_reset (self->stmt);
}

gboolean
wm_statement_run (WmStatement *self, GError **error)
{
  g_autoptr (GError) problem = NULL;

  while (wm_statement_next (self, &problem))
    ;
  sqlite3_reset (self->stmt);
  if (problem == NULL)
    return TRUE;
  g_propagate_error (error, g_steal_pointer (&problem));
  return FALSE;
}

gboolean
wm_statement_is_null (WmStatement *self, int column)
{
  return sqlite3_column_type (self->stmt, column) == SQLITE_NULL;
}

gint64
wm_statement_get_int64 (WmStatement *self, int column)
{
  return sqlite3_column_int64 (self->stmt, column);
}

double
wm_statement_get_double (WmStatement *self, int column)
{
  return wm_statement_is_null (self, column) ? NAN
                                             : sqlite3_column_double (self->stmt, column);
}

const char *
wm_statement_get_text (WmStatement *self, int column)
{
  return (const char *)sqlite3_column_text (self->stmt, column);
}

WmId
wm_statement_get_id (WmStatement *self, int column)
{
  WmId id = WM_ID_NONE;

  if (sqlite3_column_bytes (self->stmt, column) == sizeof id.bytes)
    memcpy (id.bytes, sqlite3_column_blob (self->stmt, column), sizeof id.bytes);
  return id;
}
