/* test-migration.c: older databases opened, and the way of bringing them up to date
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "fixture.h"

#include <glib/gstdio.h>
#include <string.h>

#include "archive/opening.h"
#include "archive/schema.h"

/* ---- every released version, as it was written then --------------------- */

static char *
data_path (const char *name)
{
  return g_build_filename (g_getenv ("WM_SOURCE_DIR"), "tests", "data", name, NULL);
}

static void
unpack (const char *from, const char *to)
{
  g_autoptr (GFile) source = g_file_new_for_path (from);
  g_autoptr (GFile) dest = g_file_new_for_path (to);
  g_autoptr (GConverter) gzip =
      G_CONVERTER (g_zlib_decompressor_new (G_ZLIB_COMPRESSOR_FORMAT_GZIP));
  g_autoptr (GInputStream) packed = NULL;
  g_autoptr (GInputStream) plain = NULL;
  g_autoptr (GOutputStream) out = NULL;
  g_autoptr (GError) error = NULL;

  packed = G_INPUT_STREAM (g_file_read (source, NULL, &error));
  g_assert_no_error (error);
  plain = g_converter_input_stream_new (packed, gzip);
  out = G_OUTPUT_STREAM (
      g_file_replace (dest, NULL, FALSE, G_FILE_CREATE_NONE, NULL, &error));
  g_assert_no_error (error);
  g_output_stream_splice (out, plain,
                          G_OUTPUT_STREAM_SPLICE_CLOSE_SOURCE
                              | G_OUTPUT_STREAM_SPLICE_CLOSE_TARGET,
                          NULL, &error);
  g_assert_no_error (error);
}

/* What tests/data's databases hold, whatever their version: see its README. */
static void
assert_known_contents (WmArchive *archive)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (WmPiece) piece = wm_archive_find_piece (archive, "2026-0001-H", &error);
  g_autoptr (WmPerson) owner = NULL;
  g_autoptr (GPtrArray) visits = NULL;
  g_autoptr (GPtrArray) marks = NULL;
  g_autoptr (GPtrArray) found = NULL;

  g_assert_no_error (error);
  g_assert_cmpstr (piece->description, ==, "Ring with a high crown");
  owner = wm_archive_get (archive, WM_KIND_PERSON, &piece->owner_id, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (owner->name, ==, "Zoë Lindqvist");
  visits = wm_archive_list (archive, WM_KIND_VISIT, "piece_id", fixture_id (piece), NULL);
  g_assert_cmpuint (visits->len, ==, 1);
  marks = wm_archive_list_of_visit (archive, WM_KIND_MARK, fixture_id (visits->pdata[0]),
                                    NULL);
  g_assert_cmpuint (marks->len, ==, 1);
  found =
      wm_archive_search (archive, "worn claw lindq", WM_PIECES_ALL, NULL, 0, 10, NULL);
  g_assert_cmpuint (found->len, ==, 1);
  g_assert_cmpint (((WmPieceRow *)found->pdata[0])->severity, ==, 3);
}

static void
test_every_version (Fixture *f, gconstpointer unused)
{
  for (guint version = 1; version <= wm_schema_get_version (); version++)
    {
      g_autofree char *name = g_strdup_printf ("archive-version-%u.sqlite.gz", version);
      g_autofree char *from = data_path (name);
      g_autofree char *to = fixture_database (f);
      g_autoptr (WmArchive) looking = NULL;
      g_autoptr (WmPiece) piece = NULL;
      g_autoptr (WmAudit) audit = NULL;
      g_autofree char *label = NULL;
      g_autoptr (GError) error = NULL;

      g_clear_object (&f->archive);
      unpack (from, to);
      looking = wm_archive_open (f->folder, WM_ARCHIVE_LOOK, &error);
      g_assert_no_error (error);
      assert_known_contents (looking);

      fixture_reopen (f);
      assert_known_contents (f->archive);
      audit = wm_archive_verify (f->archive, NULL, NULL, NULL, NULL);
      /* Its one photo's file is not kept with it. */
      g_assert_cmpuint (audit->problems->len, ==, 1);
      g_assert_cmpint (((WmProblem *)audit->problems->pdata[0])->code, ==,
                       WM_ARCHIVE_ERROR_PHOTO_MISSING);

      /* It can be worked with: undo goes back into the time before. */
      piece = wm_archive_find_piece (f->archive, "2026-0001-H", NULL);
      g_assert_true (
          wm_archive_undo (f->archive, fixture_id (piece), NULL, &label, &error));
      g_assert_cmpstr (label, ==, "Place mark");
    }
}

/* ---- the way ------------------------------------------------------------ */

/* A version that is not there yet. */
#define NEXT (wm_schema_get_version () + 1)

static const char *
get_good (guint version)
{
  return version == NEXT ? "ALTER TABLE person ADD COLUMN pets INTEGER;"
                           "UPDATE person SET pets = 3;"
                         : wm_schema_get_file (version);
}

static const char *
get_broken (guint version)
{
  return version == NEXT ? "UPDATE person SET name = 'lost'; SELECT nothing FROM nowhere;"
                         : wm_schema_get_file (version);
}

static char *
find_set_aside (Fixture *f)
{
  g_autofree char *folder = g_build_filename (f->folder, "set-aside", NULL);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name = dir != NULL ? g_dir_read_name (dir) : NULL;

  return name != NULL ? g_build_filename (folder, name, NULL) : NULL;
}

static void
test_upgrade (Fixture *f, gconstpointer unused)
{
  g_autofree char *path = fixture_database (f);
  g_autoptr (WmPerson) person = fixture_add_person (f, "Ilse Brandt");
  g_autoptr (WmDatabase) db = NULL;
  g_autoptr (WmDatabase) old = NULL;
  g_autofree char *copy_path = NULL;
  g_autoptr (GError) error = NULL;

  g_clear_object (&f->archive);
  db = wm_database_open (path, WM_DATABASE_WRITE, &error);
  g_assert_no_error (error);
  g_assert_true (wm_opening_bring_up_to_date (f->folder, db, get_good, NEXT, &error));
  g_assert_no_error (error);
  g_assert_cmpint (wm_database_get_number (db, "PRAGMA user_version", 0), ==, NEXT);
  g_assert_cmpint (wm_database_get_number (db, "SELECT pets FROM person", 0), ==, 3);

  /* The copy is as it was before, whole by itself. */
  copy_path = find_set_aside (f);
  g_assert_nonnull (copy_path);
  old = wm_database_open (copy_path, WM_DATABASE_FROZEN, &error);
  g_assert_no_error (error);
  g_assert_cmpint (wm_database_get_number (old, "PRAGMA user_version", 0), ==, NEXT - 1);
  g_assert_cmpint (wm_database_get_number (old, "SELECT count (*) FROM person", 0), ==,
                   1);
}

/* A step that fails leaves the old version, whole. */
static void
test_upgrade_fails (Fixture *f, gconstpointer unused)
{
  g_autofree char *path = fixture_database (f);
  g_autoptr (WmPerson) person = fixture_add_person (f, "Ilse Brandt");
  g_autoptr (WmDatabase) db = NULL;
  g_autoptr (WmPerson) kept = NULL;
  g_autoptr (GError) error = NULL;

  g_clear_object (&f->archive);
  db = wm_database_open (path, WM_DATABASE_WRITE, &error);
  g_assert_false (wm_opening_bring_up_to_date (f->folder, db, get_broken, NEXT, &error));
  g_assert_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_DAMAGED);
  g_assert_cmpint (wm_database_get_number (db, "PRAGMA user_version", 0), ==, NEXT - 1);
  g_clear_pointer (&db, wm_database_close);

  fixture_reopen (f);
  kept = wm_archive_get (f->archive, WM_KIND_PERSON, fixture_id (person), NULL);
  g_assert_cmpstr (kept->name, ==, "Ilse Brandt");
  fixture_assert_sound (f);
}

/* ---- the schema itself -------------------------------------------------- */

static const char *
get_column_type (WmFieldType type)
{
  switch (type)
    {
    case WM_FIELD_TEXT:
    case WM_FIELD_DATE:
      return "TEXT";
    case WM_FIELD_REAL:
      return "REAL";
    case WM_FIELD_KEY:
      return "BLOB";
    default:
      return "INTEGER";
    }
}

static guint
count (WmDatabase *db, const char *sql, const char *first, const char *second,
       const char *third)
{
  g_autoptr (WmStatement) statement = wm_database_prepare (db, sql, NULL);

  g_assert_nonnull (statement);
  wm_statement_bind_text (statement, 1, first);
  wm_statement_bind_text (statement, 2, second);
  if (third != NULL)
    wm_statement_bind_text (statement, 3, third);
  g_assert_true (wm_statement_next (statement, NULL));
  return (guint)wm_statement_get_int64 (statement, 0);
}

/* Every field has its column of the right type; every key refers to its table, and
 * has an index, or removing a row would read the whole table. */
static void
test_schema_fits_fields (Fixture *f, gconstpointer unused)
{
  WmDatabase *db = f->archive->writer;

  for (WmKind kind = 0; kind < WM_N_KINDS; kind++)
    {
      const WmKindInfo *info = wm_kind_get_info (kind);
      g_autofree char *all =
          g_strdup_printf ("SELECT count (*) FROM pragma_table_info ('%s')", info->name);

      g_assert_cmpint (wm_database_get_number (db, all, 0), ==, info->n_fields + 5);
      for (guint i = 0; i < info->n_fields; i++)
        {
          const WmField *field = &info->fields[i];

          g_assert_cmpuint (count (db,
                                   "SELECT count (*) FROM pragma_table_info (?1)"
                                   " WHERE name = ?2 AND type = ?3",
                                   info->name, field->name,
                                   get_column_type (field->type)),
                            ==, 1);
          if (field->type != WM_FIELD_KEY)
            continue;
          g_assert_cmpuint (
              count (db,
                     "SELECT count (*) FROM pragma_foreign_key_list (?1)"
                     " WHERE \"from\" = ?2 AND \"table\" = ?3 AND \"to\" = 'id'",
                     info->name, field->name, wm_kind_get_info (field->refers_to)->name),
              ==, 1);
          g_assert_cmpuint (
              count (db,
                     "SELECT count (*) FROM pragma_index_list (?1) AS l,"
                     " pragma_index_info (l.name) AS i WHERE i.seqno = 0 AND i.name = ?2",
                     info->name, field->name, NULL),
              ==, 1);
        }
    }
  g_assert_cmpint (wm_database_get_number (db,
                                           "SELECT count (*) FROM pragma_table_list"
                                           " WHERE schema = 'main' AND type = 'table'"
                                           " AND strict = 0 AND name NOT LIKE 'sqlite_%'",
                                           -1),
                   ==, 0);
  g_assert_cmpint (wm_database_get_number (db, "PRAGMA foreign_keys", 0), ==, 1);
  g_assert_cmpint (wm_database_get_number (db, "PRAGMA synchronous", 0), ==, 2);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  fixture_add ("/archive/migration/every-version", test_every_version);
  fixture_add ("/archive/migration/upgrade", test_upgrade);
  fixture_add ("/archive/migration/upgrade-fails", test_upgrade_fails);
  fixture_add ("/archive/schema/fits-fields", test_schema_fits_fields);
  return g_test_run ();
}
