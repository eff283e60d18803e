/* audit.c: an archive proved: the database, the log, the list, the photos
 *
 * The log holds every row a second time, so a row that changed on the disk shows,
 * which SQLite's own check does not see.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "archive/archive-private.h"

#include <glib/gstdio.h>
#include <string.h>

#include "archive/image.h"
#include "archive/line.h"
#include "archive/photo-file.h"
#include "archive/schema.h"

/* Problems told one by one; a ruined database would have one for every row. */
#define WM_PROBLEMS_MAX 1000

typedef struct
{
  WmArchive *archive;
  WmDatabase *db;
  WmAudit *audit;
  void (*progress) (double, gpointer);
  gpointer user_data;
  GCancellable *cancellable;
  double done;  /* 0 to 1 */
  double share; /* of the part under way */
} Audit;

static void
free_problem (WmProblem *problem)
{
  g_free (problem->text);
  g_free (problem);
}

void
wm_audit_free (WmAudit *audit)
{
  g_ptr_array_unref (audit->problems);
  g_free (audit);
}

static void
add_problem (Audit *self, WmArchiveError code, char *text)
{
  WmProblem *problem;

  if (text == NULL || self->audit->problems->len >= WM_PROBLEMS_MAX)
    {
      g_free (text);
      return;
    }
  problem = g_new0 (WmProblem, 1);
  problem->code = code;
  problem->text = text;
  g_ptr_array_add (self->audit->problems, problem);
}

/* A part that could not be read is a problem, not the end of the audit. */
static void
take_error (Audit *self, GError *error, const char *part)
{
  if (error != NULL)
    add_problem (self, error->code, g_strdup_printf ("%s: %s", part, error->message));
}

/* FALSE when cancelled. */
static gboolean
go_on (Audit *self, gint64 nth, gint64 of)
{
  if (self->progress != NULL && of > 0)
    self->progress (self->done + self->share * nth / of, self->user_data);
  return !g_cancellable_is_cancelled (self->cancellable);
}

static void
end_part (Audit *self)
{
  self->done += self->share;
}

/* ---- the database ------------------------------------------------------- */

static void
check_pages (Audit *self)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (WmStatement) check =
      wm_database_prepare (self->db, "PRAGMA integrity_check", &error);
  g_autofree char *difference = NULL;

  while (check != NULL && wm_statement_next (check, &error))
    if (g_strcmp0 (wm_statement_get_text (check, 0), "ok") != 0)
      add_problem (self, WM_ARCHIVE_ERROR_DAMAGED,
                   g_strdup (wm_statement_get_text (check, 0)));
  take_error (self, error, "integrity");
  g_clear_error (&error);

  difference = wm_schema_compare (self->db, &error);
  add_problem (self, WM_ARCHIVE_ERROR_DAMAGED, g_steal_pointer (&difference));
  take_error (self, error, "schema");
}

static void
check_keys (Audit *self)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (WmStatement) check =
      wm_database_prepare (self->db, "PRAGMA foreign_key_check", &error);

  while (check != NULL && wm_statement_next (check, &error))
    add_problem (self, WM_ARCHIVE_ERROR_DAMAGED,
                 g_strdup_printf ("a row of %s names a row of %s that is not there",
                                  wm_statement_get_text (check, 0),
                                  wm_statement_get_text (check, 2)));
  take_error (self, error, "foreign keys");
}

/* FTS5's own check of its index against the words; it is a write to SQLite, so not
 * while only looking. */
static void
check_words (Audit *self)
{
  g_autoptr (GError) error = NULL;
  WmDatabase *db =
      self->archive->is_read_only ? NULL : wm_archive_lock_writer (self->archive, &error);

  if (db != NULL)
    {
      wm_database_run (
          db, "INSERT INTO piece_word (piece_word) VALUES ('integrity-check')", &error);
      wm_archive_unlock_writer (self->archive);
    }
  take_error (self, error, "index of words");
}

/* ---- rows against the log ----------------------------------------------- */

/* The last word of the log on a row, and how the row is. */
static void
compare_row (Audit *self, WmKind kind, WmStatement *last)
{
  WmId id = wm_statement_get_id (last, 0);
  gint64 revision = wm_statement_get_int64 (last, 1);
  const char *image = wm_statement_get_text (last, 2);
  g_auto (WmRow) logged = { NULL };
  g_auto (WmRow) row = { NULL };
  g_autoptr (GError) error = NULL;
  g_autofree char *key = wm_id_to_string (&id);
  const char *name = wm_kind_get_info (kind)->name;

  if (!wm_row_load (self->db, kind, &id, &row, &error)
      || (image != NULL && !wm_image_read (image, kind, &id, &logged, &error)))
    take_error (self, error, key);
  else if (logged.record == NULL && row.record != NULL)
    add_problem (self, WM_ARCHIVE_ERROR_DAMAGED,
                 g_strdup_printf ("%s %s was removed and is there", name, key));
  else if (logged.record != NULL && row.record == NULL)
    add_problem (self, WM_ARCHIVE_ERROR_DAMAGED,
                 g_strdup_printf ("%s %s is missing", name, key));
  else if (row.record != NULL
           && (!wm_record_equal (row.record, logged.record)
               || wm_record_get_revision (row.record) != revision
               || row.made_at_us != logged.made_at_us))
    add_problem (self, WM_ARCHIVE_ERROR_DAMAGED,
                 g_strdup_printf ("%s %s is not as the last edit left it", name, key));
}

static gboolean
check_kind (Audit *self, WmKind kind)
{
  g_autoptr (GError) error = NULL;
  const char *name = wm_kind_get_info (kind)->name;
  g_autofree char *unlogged_sql =
      g_strdup_printf ("SELECT count (*) FROM \"%s\" AS t WHERE NOT EXISTS"
                       " (SELECT 1 FROM edit_row WHERE row_id = t.id)",
                       name);
  /* Edits' keys are in the order of the log, so the greatest is the last. */
  g_autoptr (WmStatement) last =
      wm_database_prepare (self->db,
                           "SELECT row_id, revision, after, max (edit_id)"
                           " FROM edit_row WHERE kind = ?1 GROUP BY row_id",
                           &error);
  gint64 unlogged = wm_database_get_number (self->db, unlogged_sql, 0);

  if (unlogged > 0)
    add_problem (self, WM_ARCHIVE_ERROR_DAMAGED,
                 g_strdup_printf ("%" G_GINT64_FORMAT " of %s are in no edit of the log",
                                  unlogged, name));
  if (last != NULL)
    {
      wm_statement_bind_text (last, 1, name);
      while (wm_statement_next (last, &error))
        {
          compare_row (self, kind, last);
          if (!go_on (self, kind, WM_N_KINDS))
            return FALSE;
        }
    }
  take_error (self, error, name);
  return TRUE;
}

static gboolean
check_rows (Audit *self)
{
  for (WmKind kind = 0; kind < WM_N_KINDS; kind++)
    if (!check_kind (self, kind))
      return FALSE;
  end_part (self);
  return TRUE;
}

/* ---- the list of pieces ------------------------------------------------- */

static gboolean
check_lines (Audit *self)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (WmStatement) pieces =
      wm_database_prepare (self->db, "SELECT id, number FROM piece", &error);
  gint64 n_words = wm_database_get_number (self->db,
                                           "SELECT count (*) FROM piece_line AS l"
                                           " JOIN piece_word AS w ON w.rowid = l.place",
                                           -1);
  gint64 n_lines =
      wm_database_get_number (self->db, "SELECT count (*) FROM piece_line", -1);

  self->audit->n_pieces =
      wm_database_get_number (self->db, "SELECT count (*) FROM piece", 0);
  if (n_words != n_lines || n_lines != self->audit->n_pieces)
    add_problem (self, WM_ARCHIVE_ERROR_DAMAGED,
                 g_strdup_printf ("%" G_GINT64_FORMAT " pieces, %" G_GINT64_FORMAT
                                  " lines, %" G_GINT64_FORMAT " found by words",
                                  self->audit->n_pieces, n_lines, n_words));
  for (gint64 i = 0; pieces != NULL && wm_statement_next (pieces, &error); i++)
    {
      WmId id = wm_statement_get_id (pieces, 0);
      g_autofree char *difference = wm_line_compare (self->db, &id, &error);

      if (difference != NULL)
        add_problem (self, WM_ARCHIVE_ERROR_DAMAGED,
                     g_strdup_printf ("piece %s %s", wm_statement_get_text (pieces, 1),
                                      difference));
      if (error != NULL || !go_on (self, i, self->audit->n_pieces))
        break;
    }
  take_error (self, error, "list of pieces");
  end_part (self);
  return !g_cancellable_is_cancelled (self->cancellable);
}

/* ---- photos ------------------------------------------------------------- */

static void
check_photo (Audit *self, const char *sha256, const char *format, gint64 byte_size)
{
  g_autofree char *path = wm_archive_photo_path_for (self->archive, sha256, format);
  g_autoptr (GError) error = NULL;
  gint64 size = 0;
  g_autofree char *hash = wm_photo_file_hash (path, &size, self->cancellable, &error);

  self->audit->n_photos++;
  self->audit->n_bytes += size;
  if (hash == NULL && !g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    add_problem (self, error->code, g_strdup_printf ("%s: %s", path, error->message));
  else if (hash != NULL
           && (strcmp (hash, sha256) != 0 || (byte_size >= 0 && size != byte_size)))
    add_problem (self, WM_ARCHIVE_ERROR_PHOTO_CHANGED,
                 g_strdup_printf ("%s: the contents are not what was stored", path));
}

/* Photos of the records, then of the log: an undo may bring those back. */
static gboolean
check_photos (Audit *self, GHashTable *named)
{
  g_autoptr (GError) error = NULL;
  gint64 n =
      wm_database_get_number (self->db, "SELECT count (DISTINCT sha256) FROM photo", 0);
  g_autoptr (WmStatement) photos =
      wm_database_prepare (self->db,
                           "SELECT sha256, format, max (coalesce (byte_size, -1))"
                           " FROM photo GROUP BY sha256, format",
                           &error);
  g_autoptr (WmStatement) logged = NULL;

  for (gint64 i = 0; photos != NULL && wm_statement_next (photos, &error); i++)
    {
      g_hash_table_add (named, g_strdup (wm_statement_get_text (photos, 0)));
      check_photo (self, wm_statement_get_text (photos, 0),
                   wm_statement_get_text (photos, 1), wm_statement_get_int64 (photos, 2));
      if (!go_on (self, i, n))
        return FALSE;
    }
  take_error (self, error, "photos");
  g_clear_error (&error);

  logged = wm_database_prepare (
      self->db,
      "SELECT DISTINCT json_extract (coalesce (after, before), '$.sha256')"
      " FROM edit_row WHERE kind = 'photo'",
      &error);
  while (logged != NULL && wm_statement_next (logged, &error))
    if (!wm_statement_is_null (logged, 0))
      g_hash_table_add (named, g_strdup (wm_statement_get_text (logged, 0)));
  take_error (self, error, "photos of the log");
  end_part (self);
  return TRUE;
}

static void
count_strays (Audit *self, const char *folder, GHashTable *named)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      g_autofree char *hash = g_strndup (name, strcspn (name, "."));

      if (g_file_test (path, G_FILE_TEST_IS_DIR))
        count_strays (self, path, named);
      else if (!g_hash_table_contains (named, hash))
        self->audit->n_strays++;
    }
}

/* ---- all of it ---------------------------------------------------------- */

static gboolean
check_all (Audit *self)
{
  g_autoptr (GHashTable) named =
      g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  check_pages (self);
  check_keys (self);
  check_words (self);
  self->audit->n_edits =
      wm_database_get_number (self->db, "SELECT count (*) FROM edit", 0);
  if (!check_rows (self) || !check_lines (self) || !check_photos (self, named))
    return FALSE;
  count_strays (self, self->archive->photos_folder, named);
  return TRUE;
}

WmAudit *
wm_archive_verify (WmArchive *self, void (*progress) (double, gpointer),
                   gpointer user_data, GCancellable *cancellable, GError **error)
{
  g_auto (WmReader) reader = { NULL };
  g_autoptr (WmAudit) audit = g_new0 (WmAudit, 1);
  /* Rows, list and photos: a third of the bar each. */
  Audit run = { .archive = self,
                .audit = audit,
                .progress = progress,
                .user_data = user_data,
                .cancellable = cancellable,
                .share = 1.0 / 3 };

  audit->problems = g_ptr_array_new_with_free_func ((GDestroyNotify)free_problem);
  if (!wm_archive_take_reader (self, &reader, error))
    return NULL;
  run.db = reader.db;
  if (!check_all (&run))
    {
      g_cancellable_set_error_if_cancelled (cancellable, error);
      return NULL;
    }
  return g_steal_pointer (&audit);
}
