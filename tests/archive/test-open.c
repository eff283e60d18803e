/* test-open.c: archives that are not there, not ours, not whole or not free
 *
 * Each refusal is met here with its code, and the files are looked at afterwards:
 * nothing may have been written.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#define _GNU_SOURCE /* seteuid */
#include "fixture.h"

#include <errno.h>
#include <glib/gstdio.h>
#include <signal.h>
#include <sqlite3.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

static void
assert_refused (const char *folder, WmArchiveMode mode, WmArchiveError code)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (WmArchive) archive = wm_archive_open (folder, mode, &error);

  g_assert_null (archive);
  g_assert_error (error, WM_ARCHIVE_ERROR, (int)code);
}

static int
compare_lines (gconstpointer a, gconstpointer b)
{
  return strcmp (*(char *const *)a, *(char *const *)b);
}

/* Names and contents of all files of a folder but the lock, as one text. */
static char *
describe_folder (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (g_free);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      g_autofree char *bytes = NULL;
      g_autofree char *hash = NULL;
      gsize n = 0;

      if (g_str_equal (name, "lock"))
        continue;
      if (g_file_get_contents (path, &bytes, &n, NULL))
        hash = g_compute_checksum_for_data (G_CHECKSUM_SHA256, (guchar *)bytes, n);
      g_ptr_array_add (lines, g_strdup_printf ("%s %s", name, hash != NULL ? hash : "-"));
    }
  g_ptr_array_sort (lines, compare_lines);
  g_ptr_array_add (lines, NULL);
  return g_strjoinv ("\n", (char **)lines->pdata);
}

static void
run_sql (const char *path, const char *sql)
{
  sqlite3 *db = NULL;

  g_assert_cmpint (sqlite3_open (path, &db), ==, SQLITE_OK);
  sqlite3_db_config (db, SQLITE_DBCONFIG_DEFENSIVE, 0, NULL);
  g_assert_cmpint (sqlite3_exec (db, sql, NULL, NULL, NULL), ==, SQLITE_OK);
  sqlite3_close (db);
}

/* ---- whose folder ------------------------------------------------------- */

static void
test_not_there (Fixture *f, gconstpointer unused)
{
  g_autofree char *absent = fixture_path (f, "absent");
  g_autofree char *empty = fixture_path (f, "empty");

  g_mkdir (empty, 0700);
  assert_refused (absent, WM_ARCHIVE_EXISTING, WM_ARCHIVE_ERROR_NOT_THERE);
  assert_refused (absent, WM_ARCHIVE_LOOK, WM_ARCHIVE_ERROR_NOT_THERE);
  g_assert_false (g_file_test (absent, G_FILE_TEST_EXISTS));
  assert_refused (empty, WM_ARCHIVE_EXISTING, WM_ARCHIVE_ERROR_NOT_THERE);
  g_assert_cmpint (g_rmdir (empty), ==, 0); /* still empty */
}

static void
test_create_in_empty_folder (Fixture *f, gconstpointer unused)
{
  g_autofree char *folder = fixture_path (f, "new %23?x=1 folder");
  g_autoptr (WmArchive) archive = NULL;
  g_autoptr (GError) error = NULL;

  g_mkdir (folder, 0700);
  archive = wm_archive_open (folder, WM_ARCHIVE_CREATE, &error);
  g_assert_no_error (error);
  g_assert_cmpint (wm_archive_count (archive, WM_PIECES_ALL, NULL), ==, 0);
}

/* A making that was cut short is begun again. */
static void
test_create_after_cut (Fixture *f, gconstpointer unused)
{
  g_autofree char *folder = fixture_path (f, "cut");
  g_autofree char *left = g_build_filename (folder, "records.sqlite.new", NULL);
  g_autoptr (WmArchive) archive = NULL;
  g_autoptr (GError) error = NULL;

  g_mkdir (folder, 0700);
  g_file_set_contents (left, "half a database", -1, NULL);
  archive = wm_archive_open (folder, WM_ARCHIVE_CREATE, &error);
  g_assert_no_error (error);
  g_assert_false (g_file_test (left, G_FILE_TEST_EXISTS));
}

static void
test_foreign_folder (Fixture *f, gconstpointer unused)
{
  g_autofree char *folder = fixture_path (f, "theirs");
  g_autofree char *file = g_build_filename (folder, "letter.txt", NULL);
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;

  g_mkdir (folder, 0700);
  g_file_set_contents (file, "Dear", 4, NULL);
  before = describe_folder (folder);
  assert_refused (folder, WM_ARCHIVE_CREATE, WM_ARCHIVE_ERROR_FOREIGN);
  assert_refused (file, WM_ARCHIVE_CREATE, WM_ARCHIVE_ERROR_FOREIGN);
  after = describe_folder (folder);
  g_assert_cmpstr (before, ==, after);
}

static void
test_foreign_database (Fixture *f, gconstpointer unused)
{
  static const char *const sql[] = {
    "CREATE TABLE song (title TEXT)",
    "PRAGMA application_id = 1196444487; CREATE TABLE geo (x REAL)",
    "PRAGMA journal_mode = WAL; CREATE TABLE song (title TEXT)"
  };

  for (guint i = 0; i < G_N_ELEMENTS (sql); i++)
    {
      g_autofree char *name = g_strdup_printf ("foreign%u", i);
      g_autofree char *folder = fixture_path (f, name);
      g_autofree char *path = g_build_filename (folder, "records.sqlite", NULL);
      g_autofree char *before = NULL;
      g_autofree char *after = NULL;

      g_mkdir (folder, 0700);
      run_sql (path, sql[i]);
      before = describe_folder (folder);
      assert_refused (folder, WM_ARCHIVE_CREATE, WM_ARCHIVE_ERROR_FOREIGN);
      assert_refused (folder, WM_ARCHIVE_EXISTING, WM_ARCHIVE_ERROR_FOREIGN);
      assert_refused (folder, WM_ARCHIVE_LOOK, WM_ARCHIVE_ERROR_FOREIGN);
      after = describe_folder (folder);
      g_assert_cmpstr (before, ==, after);
    }
}

static void
test_newer (Fixture *f, gconstpointer unused)
{
  g_autofree char *path = fixture_database (f);
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;

  g_clear_object (&f->archive);
  run_sql (path, "PRAGMA user_version = 1000");
  before = describe_folder (f->folder);
  assert_refused (f->folder, WM_ARCHIVE_EXISTING, WM_ARCHIVE_ERROR_NEWER);
  assert_refused (f->folder, WM_ARCHIVE_CREATE, WM_ARCHIVE_ERROR_NEWER);
  assert_refused (f->folder, WM_ARCHIVE_LOOK, WM_ARCHIVE_ERROR_NEWER);
  after = describe_folder (f->folder);
  g_assert_cmpstr (before, ==, after);
}

/* The header of a database, by SQLite's file format (section 1.3), read without
 * SQLite: application_id at byte 68. */
static void
test_application_id (Fixture *f, gconstpointer unused)
{
  g_autofree char *path = fixture_database (f);
  g_autofree char *bytes = NULL;
  gsize n = 0;

  g_assert_true (g_file_get_contents (path, &bytes, &n, NULL));
  g_assert_cmpuint (n, >, 100);
  g_assert_cmpmem (bytes + 68, 4, "WMRK", 4);
}

/* ---- damage ------------------------------------------------------------- */

static void
fill (Fixture *f)
{
  for (guint i = 0; i < 40; i++)
    {
      g_autofree char *number = g_strdup_printf ("2026-%04u-X", i);
      g_autofree char *text = g_strnfill (2000, 'a' + i % 26);
      g_autoptr (WmPiece) piece = fixture_add_piece (f, number, text);
      g_autoptr (WmVisit) visit = fixture_add_visit (f, piece, 1000 + i);

      g_object_unref (fixture_add_check (f, visit, "Worn claw", 3));
    }
}

static void
overwrite (const char *path, gsize from, gsize n)
{
  FILE *file = fopen (path, "r+b");
  g_autofree char *noise = g_malloc (n);

  for (gsize i = 0; i < n; i++)
    noise[i] = (char)(i * 37 + 11);
  g_assert_nonnull (file);
  fseek (file, (long)from, SEEK_SET);
  g_assert_cmpuint (fwrite (noise, 1, n, file), ==, n);
  fclose (file);
}

static void
test_damaged_header (Fixture *f, gconstpointer unused)
{
  g_autofree char *path = fixture_database (f);
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;

  g_clear_object (&f->archive);
  overwrite (path, 0, 100);
  before = describe_folder (f->folder);
  assert_refused (f->folder, WM_ARCHIVE_CREATE, WM_ARCHIVE_ERROR_DAMAGED);
  assert_refused (f->folder, WM_ARCHIVE_LOOK, WM_ARCHIVE_ERROR_DAMAGED);
  after = describe_folder (f->folder);
  g_assert_cmpstr (before, ==, after);

  g_file_set_contents (path, "", 0, NULL);
  assert_refused (f->folder, WM_ARCHIVE_CREATE, WM_ARCHIVE_ERROR_DAMAGED);
}

static void
test_damaged_schema (Fixture *f, gconstpointer unused)
{
  static const char *const sql[] = {
    "DROP TABLE reminder",
    "CREATE TRIGGER steal AFTER UPDATE ON person BEGIN DELETE FROM mark; END",
    "ALTER TABLE person DROP COLUMN phone",
    "DROP INDEX mark_photo_id; CREATE INDEX mark_photo_id ON mark (check_id)"
  };
  g_autofree char *path = fixture_database (f);
  g_autofree char *whole = NULL;
  gsize n = 0;

  g_clear_object (&f->archive);
  g_assert_true (g_file_get_contents (path, &whole, &n, NULL));
  for (guint i = 0; i < G_N_ELEMENTS (sql); i++)
    {
      g_file_set_contents (path, whole, (gssize)n, NULL);
      run_sql (path, sql[i]);
      assert_refused (f->folder, WM_ARCHIVE_EXISTING, WM_ARCHIVE_ERROR_DAMAGED);
      assert_refused (f->folder, WM_ARCHIVE_LOOK, WM_ARCHIVE_ERROR_DAMAGED);
    }
}

/* Every page in turn overwritten: opening, reading and proving may fail, but only by
 * saying DAMAGED; the proof always notices a page that is in use. */
static void
test_damaged_pages (Fixture *f, gconstpointer unused)
{
  g_autofree char *path = fixture_database (f);
  g_autofree char *whole = NULL;
  gsize n = 0;
  guint noticed = 0;
  guint tried = 0;
  guint pages;

  fill (f);
  g_clear_object (&f->archive);
  run_sql (path, "VACUUM"); /* no free pages, whose damage harms nothing */
  g_assert_true (g_file_get_contents (path, &whole, &n, NULL));
  pages = (guint)(n / 4096);
  g_assert_cmpuint (pages, >, 50);

  for (guint page = 1; page < pages; page += 5, tried++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (WmArchive) archive = NULL;
      g_autoptr (WmAudit) audit = NULL;
      g_autofree char *now = NULL;
      gsize now_n = 0;

      g_file_set_contents (path, whole, (gssize)n, NULL);
      overwrite (path, page * 4096, 4096);
      archive = wm_archive_open (f->folder, WM_ARCHIVE_LOOK, &error);
      if (archive != NULL)
        {
          g_autoptr (GPtrArray) rows =
              wm_archive_search (archive, "worn", WM_PIECES_ALL, NULL, 0, 100, &error);

          if (rows == NULL)
            g_assert_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_DAMAGED);
          g_clear_error (&error);
          audit = wm_archive_verify (archive, NULL, NULL, NULL, &error);
          g_assert_no_error (error);
          noticed += audit->problems->len > 0;
        }
      else
        {
          g_assert_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_DAMAGED);
          noticed++;
        }
      g_assert_true (g_file_get_contents (path, &now, &now_n, NULL));
      g_assert_cmpuint (now_n, ==, n);
      g_assert_cmpmem (now + page * 4096 + 4096, n - page * 4096 - 4096,
                       whole + page * 4096 + 4096, n - page * 4096 - 4096);
    }
  g_assert_cmpuint (noticed, ==, tried);
}

/* A commit that meets a damaged page is refused whole. */
static void
test_damaged_commit (Fixture *f, gconstpointer unused)
{
  g_autofree char *path = fixture_database (f);
  g_autoptr (WmPiece) piece = NULL;
  g_autoptr (WmEdit) edit = NULL;
  g_autoptr (GError) error = NULL;
  sqlite3 *db = NULL;
  sqlite3_stmt *stmt = NULL;
  int root;

  fill (f);
  g_clear_object (&f->archive);
  g_assert_cmpint (sqlite3_open (path, &db), ==, SQLITE_OK);
  sqlite3_prepare_v2 (db, "SELECT rootpage FROM sqlite_schema WHERE name = 'edit_row'",
                      -1, &stmt, NULL);
  g_assert_cmpint (sqlite3_step (stmt), ==, SQLITE_ROW);
  root = sqlite3_column_int (stmt, 0);
  sqlite3_finalize (stmt);
  sqlite3_close (db);
  overwrite (path, (gsize)(root - 1) * 4096, 4096);

  f->archive = wm_archive_open (f->folder, WM_ARCHIVE_EXISTING, &error);
  g_assert_no_error (error);
  piece = wm_piece_new ();
  edit = wm_edit_new ("Take in piece", fixture_id (piece), NULL);
  wm_edit_put (edit, piece);
  g_assert_false (wm_archive_commit (f->archive, edit, &error));
  g_assert_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_DAMAGED);
  g_assert_cmpint (wm_archive_count (f->archive, WM_PIECES_ALL, NULL), ==, 40);
}

/* A row changed on the disk, its page whole: SQLite sees nothing, the log does. */
static void
test_changed_row (Fixture *f, gconstpointer unused)
{
  g_autofree char *path = fixture_database (f);
  g_autoptr (WmAudit) audit = NULL;
  g_autoptr (WmPerson) person = fixture_add_person (f, "Ilse Brandt");

  g_clear_object (&f->archive);
  run_sql (path, "UPDATE person SET phone = '0'");
  fixture_reopen (f);
  audit = wm_archive_verify (f->archive, NULL, NULL, NULL, NULL);
  g_assert_cmpuint (audit->problems->len, ==, 1);
  g_assert_nonnull (strstr (((WmProblem *)audit->problems->pdata[0])->text,
                            "not as the last edit left it"));
}

/* ---- open elsewhere ----------------------------------------------------- */

static void
test_open_elsewhere (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmPiece) piece = fixture_add_piece (f, "2026-0001-X", "Ring");
  g_autoptr (WmArchive) looking = NULL;
  g_autoptr (WmPiece) seen = NULL;
  g_autoptr (WmEdit) edit = wm_edit_new ("Edit", NULL, NULL);
  g_autofree char *sha256 = NULL;
  g_autofree char *file = fixture_file (f, "photo", 10, 1);
  g_autoptr (GError) error = NULL;
  gint64 byte_size;

  assert_refused (f->folder, WM_ARCHIVE_EXISTING, WM_ARCHIVE_ERROR_OPEN_ELSEWHERE);
  assert_refused (f->folder, WM_ARCHIVE_CREATE, WM_ARCHIVE_ERROR_OPEN_ELSEWHERE);

  /* Looking works meanwhile, and only looking. */
  looking = wm_archive_open (f->folder, WM_ARCHIVE_LOOK, &error);
  g_assert_no_error (error);
  seen = wm_archive_find_piece (looking, "2026-0001-X", &error);
  g_assert_no_error (error);
  g_assert_true (wm_record_equal (WM_RECORD (seen), WM_RECORD (piece)));
  g_assert_true (wm_archive_is_read_only (looking));
  wm_edit_put (edit, seen);
  g_assert_false (wm_archive_commit (looking, edit, &error));
  g_assert_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_READ_ONLY);
  g_clear_error (&error);
  g_assert_false (wm_archive_undo (looking, fixture_id (piece), NULL, NULL, &error));
  g_assert_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_READ_ONLY);
  g_clear_error (&error);
  g_assert_null (wm_archive_take_number (looking, 2026, &error));
  g_assert_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_READ_ONLY);
  g_clear_error (&error);
  g_assert_false (
      wm_archive_store_photo (looking, file, "jpeg", NULL, &sha256, &byte_size, &error));
  g_assert_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_READ_ONLY);
}

/* Killed, its lock file still there: taken over without a question. Its last edits are
 * in the log still, and are seen by looking and by opening. */
static void
test_killed (Fixture *f, gconstpointer unused)
{
  int ready[2];
  char byte;
  pid_t child;
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;
  g_autoptr (WmArchive) looking = NULL;
  g_autoptr (GError) error = NULL;

  g_clear_object (&f->archive);
  g_assert_cmpint (pipe (ready), ==, 0);
  child = fork ();
  if (child == 0)
    {
      f->archive = wm_archive_open (f->folder, WM_ARCHIVE_EXISTING, NULL);
      fixture_add_piece (f, "2026-0001-X", "Ring");
      if (write (ready[1], "x", 1) == 1)
        for (;;)
          pause ();
      _exit (1);
    }
  g_assert_cmpint (read (ready[0], &byte, 1), ==, 1);
  assert_refused (f->folder, WM_ARCHIVE_EXISTING, WM_ARCHIVE_ERROR_OPEN_ELSEWHERE);
  kill (child, SIGKILL);
  waitpid (child, NULL, 0);
  close (ready[0]);
  close (ready[1]);

  before = describe_folder (f->folder);
  looking = wm_archive_open (f->folder, WM_ARCHIVE_LOOK, &error);
  g_assert_no_error (error);
  g_assert_cmpint (wm_archive_count (looking, WM_PIECES_ALL, NULL), ==, 1);
  g_clear_object (&looking);
  after = describe_folder (f->folder);
  g_assert_cmpstr (before, ==, after);

  fixture_reopen (f);
  g_assert_cmpint (wm_archive_count (f->archive, WM_PIECES_ALL, NULL), ==, 1);
  fixture_assert_sound (f);
}

/* Another program holds SQLite's own lock, without being a Wearmark. */
static void
test_busy (Fixture *f, gconstpointer unused)
{
  g_autofree char *path = fixture_database (f);
  g_autoptr (WmPiece) piece = wm_piece_new ();
  g_autoptr (WmEdit) edit = wm_edit_new ("Take in piece", NULL, NULL);
  g_autoptr (GError) error = NULL;
  sqlite3 *db = NULL;

  g_assert_cmpint (sqlite3_open (path, &db), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_exec (db, "BEGIN IMMEDIATE", NULL, NULL, NULL), ==, SQLITE_OK);
  wm_edit_put (edit, piece);
  g_assert_false (wm_archive_commit (f->archive, edit, &error));
  g_assert_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_BUSY);
  sqlite3_close (db);
  g_clear_error (&error);
  g_assert_true (wm_archive_commit (f->archive, edit, &error));
}

/* ---- read-only ---------------------------------------------------------- */

/* Gives the folder to somebody without rights and becomes them; FALSE if this user is
 * without special rights already. */
static gboolean
step_down (const char *folder)
{
  g_autofree char *top = g_path_get_dirname (folder);
  g_autofree char *command =
      g_strdup_printf ("chown -R 65534:65534 '%s' && chmod -R a-w '%s'", top, folder);

  if (geteuid () != 0)
    {
      g_autofree char *ours = g_strdup_printf ("chmod -R a-w '%s'", folder);

      g_assert_cmpint (system (ours), ==, 0);
      return FALSE;
    }
  g_assert_cmpint (system (command), ==, 0);
  g_assert_cmpint (seteuid (65534), ==, 0);
  return TRUE;
}

static void
test_read_only (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmPiece) piece = fixture_add_piece (f, "2026-0001-X", "Ring");
  g_autofree char *new_folder = g_build_filename (f->folder, "inside", NULL);
  g_autofree char *give_back = g_strdup_printf ("chmod -R u+w '%s'", f->folder);
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;
  g_autoptr (WmArchive) looking = NULL;
  g_autoptr (GError) error = NULL;
  gboolean stepped_down;

  g_clear_object (&f->archive);
  before = describe_folder (f->folder);
  stepped_down = step_down (f->folder);

  assert_refused (f->folder, WM_ARCHIVE_EXISTING, WM_ARCHIVE_ERROR_READ_ONLY);
  assert_refused (new_folder, WM_ARCHIVE_CREATE, WM_ARCHIVE_ERROR_READ_ONLY);
  looking = wm_archive_open (f->folder, WM_ARCHIVE_LOOK, &error);
  g_assert_no_error (error);
  g_assert_cmpint (wm_archive_count (looking, WM_PIECES_ALL, NULL), ==, 1);
  g_clear_object (&looking);
  after = describe_folder (f->folder);
  g_assert_cmpstr (before, ==, after);

  if (stepped_down)
    g_assert_cmpint (seteuid (0), ==, 0);
  g_assert_cmpint (system (give_back), ==, 0);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  fixture_add ("/archive/open/not-there", test_not_there);
  fixture_add ("/archive/open/empty-folder", test_create_in_empty_folder);
  fixture_add ("/archive/open/cut", test_create_after_cut);
  fixture_add ("/archive/open/foreign-folder", test_foreign_folder);
  fixture_add ("/archive/open/foreign-database", test_foreign_database);
  fixture_add ("/archive/open/newer", test_newer);
  fixture_add ("/archive/open/application-id", test_application_id);
  fixture_add ("/archive/damaged/header", test_damaged_header);
  fixture_add ("/archive/damaged/schema", test_damaged_schema);
  fixture_add ("/archive/damaged/pages", test_damaged_pages);
  fixture_add ("/archive/damaged/commit", test_damaged_commit);
  fixture_add ("/archive/damaged/row", test_changed_row);
  fixture_add ("/archive/open/elsewhere", test_open_elsewhere);
  fixture_add ("/archive/open/killed", test_killed);
  fixture_add ("/archive/open/busy", test_busy);
  fixture_add ("/archive/open/read-only", test_read_only);
  return g_test_run ();
}
