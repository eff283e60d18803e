/* schema.c: the released schema files, and bringing an older database up to date
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "archive/schema.h"

#include "archive/archive.h"
#include "archive/schema-files.h"

/* One row a released file. */
static const char *const names[] = {
  "001.sql",
  "002.sql",
};

guint
wm_schema_get_version (void)
{
  return G_N_ELEMENTS (names);
}

const char *
wm_schema_get_file (guint version)
{
  static const char *texts[G_N_ELEMENTS (names)];
  static gsize ready;

  if (g_once_init_enter (&ready))
    {
      for (guint i = 0; i < G_N_ELEMENTS (names); i++)
        {
          g_autofree char *path = g_strconcat ("/org/wearmark/schema/", names[i], NULL);
          g_autoptr (GBytes) bytes = g_resource_lookup_data (
              wm_schema_files_get_resource (), path, G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);

          /* Static data of the program, ended by a zero byte: not freed. */
          texts[i] = g_bytes_get_data (bytes, NULL);
        }
      g_once_init_leave (&ready, 1);
    }
  return version >= 1 && version <= G_N_ELEMENTS (names) ? texts[version - 1] : NULL;
}

static gboolean
run_files (WmDatabase *db, const char *(*get_file) (guint version), guint from,
           guint newest, GError **error)
{
  for (guint version = from + 1; version <= newest; version++)
    if (!wm_database_run (db, get_file (version), error))
      {
        g_prefix_error (error, "schema %03u: ", version);
        return FALSE;
      }
  return TRUE;
}

gboolean
wm_schema_upgrade (WmDatabase *db, const char *(*get_file) (guint version), guint newest,
                   GError **error)
{
  gint64 from;
  /* Pragmas take no bound values; both are numbers of ours. */
  g_autofree char *stamp =
      g_strdup_printf ("PRAGMA application_id = %d; PRAGMA user_version = %u;",
                       WM_ARCHIVE_APPLICATION_ID, newest);

  if (!wm_database_read_number (db, "PRAGMA user_version", &from, error))
    return FALSE;
  if (from < 0 || from > newest)
    {
      g_set_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_NEWER,
                   "version %" G_GINT64_FORMAT " of the database", from);
      return FALSE;
    }
  if (!wm_database_begin (db, error))
    return FALSE;
  if (!run_files (db, get_file, from, newest, error)
      || !wm_database_run (db, stamp, error))
    {
      wm_database_roll_back (db);
      return FALSE;
    }
  return wm_database_commit (db, error);
}

gboolean
wm_schema_set_aside (WmDatabase *db, const char *path, GError **error)
{
  g_autoptr (WmDatabase) copy = wm_database_create (path, error);
  sqlite3_backup *backup;
  int code;

  if (copy == NULL)
    return FALSE;
  backup = sqlite3_backup_init (wm_database_get_handle (copy), "main",
                                wm_database_get_handle (db), "main");
  if (backup == NULL)
    {
      wm_database_set_error (copy, sqlite3_errcode (wm_database_get_handle (copy)),
                             error);
      return FALSE;
    }
  sqlite3_backup_step (backup, -1);
  code = sqlite3_backup_finish (backup);
  if (code == SQLITE_OK)
    return TRUE;
  wm_database_set_error (copy, code, error);
  return FALSE;
}

/* ---- is the schema ours? ------------------------------------------------ */

/* type and name -> SQL */
static GHashTable *
list_schema (WmDatabase *db, GError **error)
{
  g_autoptr (GHashTable) all =
      g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  g_autoptr (GError) problem = NULL;
  g_autoptr (WmStatement) select = wm_database_prepare (
      db, "SELECT type, name, sql FROM sqlite_schema WHERE sql IS NOT NULL", error);

  if (select == NULL)
    return NULL;
  while (wm_statement_next (select, &problem))
    g_hash_table_insert (all,
                         g_strconcat (wm_statement_get_text (select, 0), " ",
                                      wm_statement_get_text (select, 1), NULL),
                         g_strdup (wm_statement_get_text (select, 2)));
  if (problem == NULL)
    return g_steal_pointer (&all);
  g_propagate_error (error, g_steal_pointer (&problem));
  return NULL;
}

static char *
find_difference (GHashTable *wanted, GHashTable *there)
{
  GHashTableIter iter;
  gpointer name;
  gpointer sql;

  g_hash_table_iter_init (&iter, wanted);
  while (g_hash_table_iter_next (&iter, &name, &sql))
    if (g_strcmp0 (sql, g_hash_table_lookup (there, name)) != 0)
      return g_strdup_printf ("%s is missing or not as it was made", (char *)name);

  g_hash_table_iter_init (&iter, there);
  while (g_hash_table_iter_next (&iter, &name, &sql))
    if (!g_hash_table_contains (wanted, name)
        && (g_str_has_prefix (name, "trigger ") || g_str_has_prefix (name, "view ")))
      return g_strdup_printf ("%s is not of this program", (char *)name);
  return NULL;
}

char *
wm_schema_compare (WmDatabase *db, GError **error)
{
  g_autoptr (WmDatabase) model = wm_database_create (":memory:", error);
  g_autoptr (GHashTable) wanted = NULL;
  g_autoptr (GHashTable) there = NULL;

  if (model == NULL
      || !run_files (model, wm_schema_get_file, 0, wm_schema_get_version (), error))
    return NULL;
  wanted = list_schema (model, error);
  if (wanted == NULL)
    return NULL;
  there = list_schema (db, error);
  return there != NULL ? find_difference (wanted, there) : NULL;
}
