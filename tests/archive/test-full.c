/* test-full.c: a full disk: the edit is refused whole, everything before it is kept
 *
 * Twice: with a limit on the size of files, which SQLite reports as a bare "disk I/O
 * error" (the system's own number tells), and on a small disk of its own where this
 * user may mount one.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "fixture.h"

#include <glib/gstdio.h>
#include <signal.h>
#include <string.h>
#include <sys/mount.h>
#include <sys/resource.h>
#include <unistd.h>

/* A piece with a long description, so that the disk fills in few edits. */
static gboolean
add_long_piece (WmArchive *archive, guint nth, GError **error)
{
  g_autofree char *number = g_strdup_printf ("2026-%04u-X", nth);
  g_autofree char *text = g_strnfill (100000, 'a' + nth % 26);
  g_autoptr (WmPiece) piece = wm_piece_new ();
  g_autoptr (WmEdit) edit = wm_edit_new ("Take in piece", fixture_id (piece), NULL);

  g_object_set (piece, "number", number, "description", text, NULL);
  wm_edit_put (edit, piece);
  return wm_archive_commit (archive, edit, error);
}

/* Fills until refused. Returns how many were kept. */
static guint
fill_up (WmArchive *archive)
{
  g_autoptr (GError) error = NULL;
  guint kept = 0;

  while (kept < 1000 && add_long_piece (archive, kept, &error))
    kept++;
  g_assert_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_FULL);
  g_assert_cmpint (wm_archive_count (archive, WM_PIECES_ALL, NULL), ==, kept);
  return kept;
}

static void
assert_photo_refused (Fixture *f, const char *file)
{
  g_autofree char *photos = g_build_filename (f->folder, "photos", NULL);
  g_autofree char *sha256 = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (GDir) dir = NULL;
  gint64 byte_size;

  g_assert_false (wm_archive_store_photo (f->archive, file, "jpeg", NULL, &sha256,
                                          &byte_size, &error));
  g_assert_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_FULL);
  dir = g_dir_open (photos, 0, NULL);
  g_assert_null (g_dir_read_name (dir)); /* nothing half is left */
}

static void
set_file_limit (rlim_t bytes)
{
  struct rlimit limit;

  g_assert_cmpint (getrlimit (RLIMIT_FSIZE, &limit), ==, 0);
  limit.rlim_cur = bytes;
  g_assert_cmpint (setrlimit (RLIMIT_FSIZE, &limit), ==, 0);
}

static void
test_file_limit (Fixture *f, gconstpointer unused)
{
  g_autofree char *photo = fixture_file (f, "photo", 5 * 1024 * 1024, 1);
  g_autoptr (GError) error = NULL;
  guint kept;

  signal (SIGXFSZ, SIG_IGN);
  set_file_limit (4 * 1024 * 1024);
  kept = fill_up (f->archive);
  g_assert_cmpuint (kept, >, 0);
  assert_photo_refused (f, photo);

  set_file_limit (RLIM_INFINITY);
  g_assert_true (add_long_piece (f->archive, kept, &error));
  g_assert_no_error (error);
  fixture_assert_sound (f);
  fixture_reopen (f);
  g_assert_cmpint (wm_archive_count (f->archive, WM_PIECES_ALL, NULL), ==, kept + 1);
  fixture_assert_sound (f);
}

static void
test_small_disk (Fixture *f, gconstpointer unused)
{
  g_autofree char *disk = fixture_path (f, "disk");
  g_autofree char *photo = fixture_file (f, "photo", 9 * 1024 * 1024, 1);
  g_autofree char *ballast = g_build_filename (disk, "ballast", NULL);
  g_autofree char *stone = g_malloc0 (1024 * 1024);
  g_autoptr (GError) error = NULL;
  guint kept;

  g_mkdir (disk, 0700);
  if (mount ("tmpfs", disk, "tmpfs", 0, "size=8m") != 0)
    {
      g_test_skip ("this user may not mount a small disk");
      return;
    }
  g_assert_true (g_file_set_contents (ballast, stone, 1024 * 1024, NULL));

  g_clear_object (&f->archive);
  g_free (f->folder);
  f->folder = g_build_filename (disk, "archive", NULL);
  f->archive = wm_archive_open (f->folder, WM_ARCHIVE_CREATE, &error);
  g_assert_no_error (error);
  kept = fill_up (f->archive);
  assert_photo_refused (f, photo);
  fixture_assert_sound (f);

  g_unlink (ballast);
  g_assert_true (add_long_piece (f->archive, kept, &error));
  fixture_reopen (f);
  g_assert_cmpint (wm_archive_count (f->archive, WM_PIECES_ALL, NULL), ==, kept + 1);
  fixture_assert_sound (f);

  g_clear_object (&f->archive);
  g_assert_cmpint (umount2 (disk, MNT_DETACH), ==, 0);
  g_free (f->folder);
  f->folder = g_strdup (disk);
}

/* No room even for an empty archive: nothing half is left that would be taken for one. */
static void
test_no_room_to_create (Fixture *f, gconstpointer unused)
{
  g_autofree char *folder = fixture_path (f, "new");
  g_autofree char *database = g_build_filename (folder, "records.sqlite", NULL);
  g_autoptr (WmArchive) archive = NULL;
  g_autoptr (GError) error = NULL;

  signal (SIGXFSZ, SIG_IGN);
  set_file_limit (20000);
  archive = wm_archive_open (folder, WM_ARCHIVE_CREATE, &error);
  set_file_limit (RLIM_INFINITY);
  g_assert_null (archive);
  g_assert_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_FULL);
  g_assert_false (g_file_test (database, G_FILE_TEST_EXISTS));

  g_clear_error (&error);
  archive = wm_archive_open (folder, WM_ARCHIVE_CREATE, &error);
  g_assert_no_error (error);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  fixture_add ("/archive/full/file-limit", test_file_limit);
  fixture_add ("/archive/full/small-disk", test_small_disk);
  fixture_add ("/archive/full/no-room-to-create", test_no_room_to_create);
  return g_test_run ();
}
