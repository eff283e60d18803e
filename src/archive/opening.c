/* opening.c: from a folder to a database that is ours, whole and up to date
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "archive/opening.h"

#include <errno.h>
#include <glib/gstdio.h>
#include <unistd.h>

#include "archive/folder.h"
#include "archive/schema.h"

/* ---- creating ----------------------------------------------------------- */

static gboolean
make_folder (const char *path, GError **error)
{
  /* Customers' names and pieces: nobody else's business. */
  if (g_mkdir_with_parents (path, 0700) == 0)
    return TRUE;
  wm_folder_set_error (error, errno, path);
  return FALSE;
}

static gboolean
fill_new (const char *path, GError **error)
{
  g_autoptr (WmDatabase) db = wm_database_create (path, error);

  return db != NULL
         && wm_database_run (db, "PRAGMA synchronous = FULL; PRAGMA journal_mode = WAL;",
                             error)
         && wm_schema_upgrade (db, wm_schema_get_file, wm_schema_get_version (), error);
}

static void
remove_beside (const char *path)
{
  static const char *const endings[] = { "", "-journal", "-wal", "-shm" };

  for (guint i = 0; i < G_N_ELEMENTS (endings); i++)
    {
      g_autofree char *name = g_strconcat (path, endings[i], NULL);

      g_unlink (name);
    }
}

/* Made whole under another name, then renamed: a program killed meanwhile leaves no
 * half database under the real one. */
static gboolean
create (WmArchive *self, GError **error)
{
  g_autofree char *path = g_build_filename (self->folder, WM_NEW_DATABASE_NAME, NULL);

  remove_beside (path);
  if (!fill_new (path, error))
    {
      remove_beside (path);
      return FALSE;
    }
  /* The files beside it get the same rights from SQLite. */
  g_chmod (path, 0600);
  if (g_rename (path, self->database_path) != 0)
    {
      wm_folder_set_error (error, errno, path);
      return FALSE;
    }
  return wm_folder_sync (self->folder, error);
}

/* ---- migrating ---------------------------------------------------------- */

static gboolean
set_aside (const char *archive_folder, WmDatabase *db, gint64 version, GError **error)
{
  g_autofree char *folder = g_build_filename (archive_folder, WM_SET_ASIDE_NAME, NULL);
  g_autoptr (GDateTime) now = g_date_time_new_now_utc ();
  g_autofree char *when = g_date_time_format (now, "%Y%m%dT%H%M%SZ");
  g_autofree char *name =
      g_strdup_printf ("records-version-%" G_GINT64_FORMAT "-%s.sqlite", version, when);
  g_autofree char *path = g_build_filename (folder, name, NULL);

  return make_folder (folder, error) && wm_schema_set_aside (db, path, error)
         && wm_folder_sync (folder, error);
}

gboolean
wm_opening_bring_up_to_date (const char *folder, WmDatabase *db,
                             const char *(*get_file) (guint version), guint newest,
                             GError **error)
{
  gint64 version;

  if (!wm_database_read_number (db, "PRAGMA user_version", &version, error))
    return FALSE;
  if (version == newest)
    return TRUE;
  if (version < 1 || version > newest)
    {
      /* Its log is not written into it by our closing either. */
      sqlite3_db_config (wm_database_get_handle (db), SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, 1,
                         NULL);
      g_set_error (error, WM_ARCHIVE_ERROR,
                   version < 1 ? WM_ARCHIVE_ERROR_DAMAGED : WM_ARCHIVE_ERROR_NEWER,
                   "%s: version %" G_GINT64_FORMAT " of the database", folder, version);
      return FALSE;
    }
  return set_aside (folder, db, version, error)
         && wm_schema_upgrade (db, get_file, newest, error);
}

/* ---- opening ------------------------------------------------------------ */

static gboolean
check_schema (WmArchive *self, WmDatabase *db, GError **error)
{
  g_autoptr (GError) problem = NULL;
  g_autofree char *difference = wm_schema_compare (db, &problem);

  if (problem != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&problem));
      return FALSE;
    }
  if (difference == NULL)
    return TRUE;
  g_set_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_DAMAGED, "%s: %s",
               self->database_path, difference);
  return FALSE;
}

/* Photos on their way in when the program was killed: nothing names them. */
static void
sweep_incoming (WmArchive *self)
{
  g_autoptr (GDir) dir = g_dir_open (self->photos_folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_prefix (name, WM_INCOMING_PREFIX))
      {
        g_autofree char *path = g_build_filename (self->photos_folder, name, NULL);

        g_unlink (path);
      }
}

static gboolean
read_last_edit (WmArchive *self, GError **error)
{
  g_autoptr (GError) problem = NULL;
  /* Keys and times rise together. */
  g_autoptr (WmStatement) last = wm_database_prepare (
      self->writer, "SELECT id, made_at_us FROM edit ORDER BY id DESC LIMIT 1", error);

  if (last == NULL)
    return FALSE;
  if (wm_statement_next (last, &problem))
    {
      self->last_edit_id = wm_statement_get_id (last, 0);
      self->last_at_us = wm_statement_get_int64 (last, 1);
    }
  if (problem == NULL)
    return TRUE;
  g_propagate_error (error, g_steal_pointer (&problem));
  return FALSE;
}

gboolean
wm_opening_take (WmArchive *self, WmArchiveMode mode, GError **error)
{
  gboolean is_new;

  if (!wm_folder_look (self->folder, mode, &is_new, error)
      || (is_new && !make_folder (self->folder, error)))
    return FALSE;
  self->lock_fd = wm_folder_lock (self->folder, error);
  if (self->lock_fd < 0)
    return FALSE;
  /* Another program may have made it, or written it, before we had the lock. */
  if (!wm_folder_look (self->folder, mode, &is_new, error)
      || (is_new && !create (self, error)))
    return FALSE;

  self->writer = wm_database_open (self->database_path, WM_DATABASE_WRITE, error);
  if (self->writer == NULL
      || !wm_opening_bring_up_to_date (self->folder, self->writer, wm_schema_get_file,
                                       wm_schema_get_version (), error)
      || !check_schema (self, self->writer, error) || !read_last_edit (self, error)
      || !make_folder (self->photos_folder, error)
      || !make_folder (self->cache_folder, error))
    {
      g_clear_pointer (&self->writer, wm_database_close);
      return FALSE;
    }
  sweep_incoming (self);
  self->read_mode = WM_DATABASE_READ;
  return TRUE;
}

/* ---- looking ------------------------------------------------------------ */

static gboolean
has_log (WmArchive *self)
{
  g_autofree char *log = g_strconcat (self->database_path, "-wal", NULL);
  GStatBuf stat_buf;

  return g_stat (log, &stat_buf) == 0 && stat_buf.st_size > 0;
}

static gboolean
copy_file (const char *from, const char *to, GError **error)
{
  g_autoptr (GFile) source = g_file_new_for_path (from);
  g_autoptr (GFile) dest = g_file_new_for_path (to);
  g_autoptr (GError) problem = NULL;

  if (g_file_copy (source, dest, G_FILE_COPY_TARGET_DEFAULT_PERMS, NULL, NULL, NULL,
                   &problem))
    return TRUE;
  g_set_error (error, WM_ARCHIVE_ERROR,
               g_error_matches (problem, G_IO_ERROR, G_IO_ERROR_NO_SPACE)
                   ? WM_ARCHIVE_ERROR_FULL
                   : WM_ARCHIVE_ERROR_IO,
               "%s: %s", from, problem->message);
  return FALSE;
}

static gboolean
make_copy_folder (WmArchive *self, GError **error)
{
  g_autoptr (GError) problem = NULL;

  self->copy_folder = g_dir_make_tmp ("wearmark-XXXXXX", &problem);
  if (self->copy_folder != NULL)
    return TRUE;
  g_set_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_IO,
               "no folder for a copy to look at: %s", problem->message);
  return FALSE;
}

/* SQLite would have to write into the folder: a copy is looked at instead. */
static gboolean
look_at_copy (WmArchive *self, GError **error)
{
  g_autofree char *log = g_strconcat (self->database_path, "-wal", NULL);
  g_autofree char *copy = NULL;
  g_autofree char *copy_log = NULL;

  if (!make_copy_folder (self, error))
    return FALSE;
  copy = g_build_filename (self->copy_folder, WM_DATABASE_NAME, NULL);
  copy_log = g_strconcat (copy, "-wal", NULL);
  if (!copy_file (self->database_path, copy, error)
      || (has_log (self) && !copy_file (log, copy_log, error)))
    return FALSE;
  g_free (self->database_path);
  self->database_path = g_steal_pointer (&copy);
  self->read_mode = WM_DATABASE_READ;
  return TRUE;
}

/* An older one is brought up to date as a copy. */
static gboolean
update_copy (WmArchive *self, gint64 version, GError **error)
{
  g_autoptr (WmDatabase) db = NULL;

  if (version < 1)
    {
      g_set_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_DAMAGED,
                   "%s: the version of the database can not be read",
                   self->database_path);
      return FALSE;
    }
  if (self->copy_folder == NULL && !look_at_copy (self, error))
    return FALSE;
  /* The reader that told the version still has the original open. */
  g_queue_clear_full (&self->idle_readers, (GDestroyNotify)wm_database_close);
  db = wm_database_open (self->database_path, WM_DATABASE_WRITE, error);
  return db != NULL
         && wm_schema_upgrade (db, wm_schema_get_file, wm_schema_get_version (), error);
}

static gboolean
read_version (WmArchive *self, gint64 *out_version, GError **error)
{
  g_auto (WmReader) reader = { NULL };

  return wm_archive_take_reader (self, &reader, error)
         && wm_database_read_number (reader.db, "PRAGMA user_version", out_version,
                                     error);
}

gboolean
wm_opening_look (WmArchive *self, GError **error)
{
  g_auto (WmReader) reader = { NULL };
  gboolean is_new;
  gint64 version;

  self->is_read_only = TRUE;
  if (!wm_folder_look (self->folder, WM_ARCHIVE_LOOK, &is_new, error))
    return FALSE;

  /* While another program has it open, SQLite's own shared memory is there. */
  self->read_mode =
      wm_folder_is_locked (self->folder) ? WM_DATABASE_READ : WM_DATABASE_FROZEN;
  if (self->read_mode == WM_DATABASE_FROZEN && has_log (self)
      && !look_at_copy (self, error))
    return FALSE;

  if (!read_version (self, &version, error))
    return FALSE;
  if (version < wm_schema_get_version () && !update_copy (self, version, error))
    return FALSE;
  return wm_archive_take_reader (self, &reader, error)
         && check_schema (self, reader.db, error);
}

void
wm_opening_forget (WmArchive *self)
{
  if (self->copy_folder == NULL)
    return;
  remove_beside (self->database_path);
  g_rmdir (self->copy_folder);
  g_clear_pointer (&self->copy_folder, g_free);
}
