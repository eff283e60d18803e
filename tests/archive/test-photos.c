/* test-photos.c: photo files in, and piece numbers and settings
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "fixture.h"

#include <glib/gstdio.h>
#include <string.h>

#include "trade/number.h"

/* FIPS 180-4's example: SHA-256 of "abc". */
static void
test_store_known_hash (Fixture *f, gconstpointer unused)
{
  g_autofree char *path = fixture_path (f, "-abc \n.jpg");
  g_autofree char *sha256 = NULL;
  g_autofree char *stored = NULL;
  g_autofree char *contents = NULL;
  g_autoptr (GError) error = NULL;
  gint64 byte_size = -1;

  g_file_set_contents (path, "abc", 3, NULL);
  wm_archive_store_photo (f->archive, path, "jpeg", NULL, &sha256, &byte_size, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (sha256, ==,
                   "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  g_assert_cmpint (byte_size, ==, 3);
  stored = wm_archive_photo_path_for (f->archive, sha256, "jpeg");
  g_assert_true (g_str_has_suffix (stored, "/photos/ba/ba7816bf8f01cfea414140de5dae2223"
                                           "b00361a396177a9cb410ff61f20015ad.jpg"));
  g_assert_true (g_file_get_contents (stored, &contents, NULL, NULL));
  g_assert_cmpstr (contents, ==, "abc");
}

/* A big file against GLib's own hash; twice is once. */
static void
test_store_big (Fixture *f, gconstpointer unused)
{
  gsize n = 3 * 1024 * 1024 + 17;
  g_autofree char *path = fixture_file (f, "big", n, 5);
  g_autofree char *first = NULL;
  g_autofree char *second = NULL;
  g_autofree char *bytes = NULL;
  g_autofree char *expected = NULL;
  g_autofree char *stored = NULL;
  gint64 byte_size;
  GStatBuf before;
  GStatBuf after;

  g_assert_true (g_file_get_contents (path, &bytes, NULL, NULL));
  expected = g_compute_checksum_for_data (G_CHECKSUM_SHA256, (guchar *)bytes, n);
  g_assert_true (
      wm_archive_store_photo (f->archive, path, "png", NULL, &first, &byte_size, NULL));
  g_assert_cmpstr (first, ==, expected);
  stored = wm_archive_photo_path_for (f->archive, first, "png");
  g_assert_cmpint (g_stat (stored, &before), ==, 0);
  g_assert_true (
      wm_archive_store_photo (f->archive, path, "png", NULL, &second, &byte_size, NULL));
  g_assert_cmpint (g_stat (stored, &after), ==, 0);
  g_assert_cmpuint (before.st_ino, ==, after.st_ino);
  fixture_assert_sound (f);
}

static void
test_store_bad (Fixture *f, gconstpointer unused)
{
  g_autofree char *missing = fixture_path (f, "missing");
  g_autofree char *folder = fixture_path (f, "folder");
  g_autofree char *file = fixture_file (f, "file", 100000, 6);
  g_autofree char *sha256 = NULL;
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GError) error = NULL;
  gint64 byte_size;

  g_mkdir (folder, 0700);
  g_assert_false (wm_archive_store_photo (f->archive, missing, "jpeg", NULL, &sha256,
                                          &byte_size, &error));
  g_assert_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_PHOTO_MISSING);
  g_clear_error (&error);
  g_assert_false (wm_archive_store_photo (f->archive, folder, "jpeg", NULL, &sha256,
                                          &byte_size, &error));
  g_assert_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_IO);
  g_clear_error (&error);
  g_cancellable_cancel (cancellable);
  g_assert_false (wm_archive_store_photo (f->archive, file, "jpeg", cancellable, &sha256,
                                          &byte_size, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
  g_assert_null (sha256);
}

/* Nothing leads out of the folder of photos. */
static void
test_path_stays_inside (Fixture *f, gconstpointer unused)
{
  static const char *const hashes[] = { NULL, "", "../../etc/passwd", "ab", "AB" };

  for (guint i = 0; i < G_N_ELEMENTS (hashes); i++)
    {
      g_autofree char *path = wm_archive_photo_path_for (f->archive, hashes[i], "jpeg");

      g_assert_true (g_str_has_suffix (path, "/photos/unnamed"));
    }
}

/* What a killed import leaves is swept out when the archive is opened. */
static void
test_incoming_is_swept (Fixture *f, gconstpointer unused)
{
  g_autofree char *left =
      g_build_filename (f->folder, "photos", ".incoming-abc123", NULL);

  g_file_set_contents (left, "half", 4, NULL);
  fixture_reopen (f);
  g_assert_false (g_file_test (left, G_FILE_TEST_EXISTS));
}

static void
test_photo_missing_and_changed (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmPiece) piece = fixture_add_piece (f, "2026-0001-X", "Ring");
  g_autoptr (WmVisit) visit = fixture_add_visit (f, piece, 1000);
  g_autoptr (WmPhoto) missing = fixture_add_photo (f, visit, 1);
  g_autoptr (WmPhoto) changed = fixture_add_photo (f, visit, 2);
  g_autoptr (WmPhoto) sound = fixture_add_photo (f, visit, 3);
  g_autofree char *missing_path = wm_archive_photo_path (f->archive, missing);
  g_autofree char *changed_path = wm_archive_photo_path (f->archive, changed);
  g_autoptr (WmAudit) audit = NULL;
  guint found[2] = { 0, 0 };

  g_unlink (missing_path);
  g_file_set_contents (changed_path, "other", 5, NULL);
  fixture_reopen (f);
  audit = wm_archive_verify (f->archive, NULL, NULL, NULL, NULL);
  g_assert_cmpuint (audit->problems->len, ==, 2);
  for (guint i = 0; i < 2; i++)
    {
      const WmProblem *problem = audit->problems->pdata[i];

      found[0] += problem->code == WM_ARCHIVE_ERROR_PHOTO_MISSING
                  && strstr (problem->text, missing->sha256) != NULL;
      found[1] += problem->code == WM_ARCHIVE_ERROR_PHOTO_CHANGED
                  && strstr (problem->text, changed->sha256) != NULL;
    }
  g_assert_cmpuint (found[0], ==, 1);
  g_assert_cmpuint (found[1], ==, 1);
  g_assert_cmpint (audit->n_photos, ==, 3);
}

/* The missing file is asked for again and comes back. */
static void
test_photo_healed (Fixture *f, gconstpointer unused)
{
  g_autofree char *path = fixture_file (f, "again", 5000, 9);
  g_autofree char *sha256 = NULL;
  g_autofree char *second = NULL;
  g_autofree char *stored = NULL;
  gint64 byte_size;

  wm_archive_store_photo (f->archive, path, "jpeg", NULL, &sha256, &byte_size, NULL);
  stored = wm_archive_photo_path_for (f->archive, sha256, "jpeg");
  g_file_set_contents (stored, "cut", 3, NULL);
  wm_archive_store_photo (f->archive, path, "jpeg", NULL, &second, &byte_size, NULL);
  g_assert_cmpint (byte_size, ==, 5000);
  {
    g_autoptr (GMappedFile) file = g_mapped_file_new (stored, FALSE, NULL);

    g_assert_cmpuint (g_mapped_file_get_length (file), ==, 5000);
  }
}

/* ---- numbers and settings ----------------------------------------------- */

static void
put_setting (Fixture *f, const char *name, const char *value)
{
  g_autoptr (WmEdit) edit = wm_edit_new ("Setting", NULL, NULL);
  g_autoptr (GError) error = NULL;

  wm_archive_put_setting (f->archive, edit, name, value, &error);
  g_assert_no_error (error);
  wm_archive_commit (f->archive, edit, &error);
  g_assert_no_error (error);
}

static void
assert_number (Fixture *f, int year, guint running)
{
  g_autofree char *number = wm_archive_take_number (f->archive, year, NULL);
  g_autofree char *expected = wm_number_make ((guint)year, running);

  g_assert_cmpstr (number, ==, expected);
}

static void
test_numbers (Fixture *f, gconstpointer unused)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *third = wm_number_make (2026, 3);
  g_autoptr (WmPiece) piece = fixture_add_piece (f, third, "Came from elsewhere");
  g_autoptr (WmPiece) found = NULL;

  assert_number (f, 2026, 1);
  assert_number (f, 2026, 2);
  assert_number (f, 2026, 4); /* 3 is taken */
  assert_number (f, 2027, 1);
  fixture_reopen (f);
  assert_number (f, 2026, 5);
  put_setting (f, WM_SETTING_NUMBER_BLOCK, "500-501");
  assert_number (f, 2026, 500);
  assert_number (f, 2026, 501);
  g_assert_null (wm_archive_take_number (f->archive, 2026, &error));
  g_assert_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_REFUSED);
  g_clear_error (&error);
  assert_number (f, 2028, 500);

  {
    g_autofree char *typed = g_ascii_strdown (third, -1);
    g_autoptr (GString) bare = g_string_new (typed);

    g_string_replace (bare, "-", "", 0);
    found = wm_archive_find_piece (f->archive, bare->str, &error);
    g_assert_no_error (error);
    g_assert_true (wm_record_equal (WM_RECORD (found), WM_RECORD (piece)));
  }
  g_assert_null (wm_archive_find_piece (f->archive, "2026-0003-0", &error));
  g_assert_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_NOT_FOUND);
}

static void
test_settings (Fixture *f, gconstpointer unused)
{
  g_autofree char *none = wm_archive_get_setting (f->archive, WM_SETTING_SHOP_NAME);
  g_autofree char *first = NULL;
  g_autofree char *second = NULL;

  g_assert_null (none);
  put_setting (f, WM_SETTING_SHOP_NAME, "Lindqvist");
  first = wm_archive_get_setting (f->archive, WM_SETTING_SHOP_NAME);
  g_assert_cmpstr (first, ==, "Lindqvist");
  put_setting (f, WM_SETTING_SHOP_NAME, "Lindqvist & Daughter");
  g_assert_true (wm_archive_undo (f->archive, NULL, NULL, NULL, NULL));
  second = wm_archive_get_setting (f->archive, WM_SETTING_SHOP_NAME);
  g_assert_cmpstr (second, ==, "Lindqvist");
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  fixture_add ("/archive/photo/known-hash", test_store_known_hash);
  fixture_add ("/archive/photo/big", test_store_big);
  fixture_add ("/archive/photo/bad", test_store_bad);
  fixture_add ("/archive/photo/stays-inside", test_path_stays_inside);
  fixture_add ("/archive/photo/swept", test_incoming_is_swept);
  fixture_add ("/archive/photo/missing-and-changed", test_photo_missing_and_changed);
  fixture_add ("/archive/photo/healed", test_photo_healed);
  fixture_add ("/archive/numbers", test_numbers);
  fixture_add ("/archive/settings", test_settings);
  return g_test_run ();
}
