/* fixture.c: a fresh archive in a folder of its own, and records to put into it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "fixture.h"

#include <gio/gio.h>
#include <glib/gstdio.h>

void
fixture_set_up (Fixture *self, gconstpointer unused)
{
  fixture_set_up_in (self, g_get_tmp_dir ());
}

void
fixture_set_up_in (Fixture *self, const char *base)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *top = g_build_filename (base, "wm-test-XXXXXX", NULL);

  g_assert_nonnull (g_mkdtemp_full (top, 0700));
  self->folder = g_build_filename (top, "archive", NULL);
  self->archive = wm_archive_open (self->folder, WM_ARCHIVE_CREATE, &error);
  g_assert_no_error (error);
}

static void
remove_tree (const char *path)
{
  g_autoptr (GDir) dir =
      g_file_test (path, G_FILE_TEST_IS_SYMLINK) ? NULL : g_dir_open (path, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *child = g_build_filename (path, name, NULL);

      remove_tree (child);
    }
  g_remove (path);
}

void
fixture_tear_down (Fixture *self, gconstpointer unused)
{
  g_autofree char *top = g_path_get_dirname (self->folder);

  g_clear_object (&self->archive);
  g_chmod (self->folder, 0700);
  remove_tree (top);
  g_free (self->folder);
}

void
fixture_reopen (Fixture *self)
{
  g_autoptr (GError) error = NULL;

  g_clear_object (&self->archive);
  self->archive = wm_archive_open (self->folder, WM_ARCHIVE_EXISTING, &error);
  g_assert_no_error (error);
}

char *
fixture_path (Fixture *self, const char *name)
{
  g_autofree char *top = g_path_get_dirname (self->folder);

  return g_build_filename (top, name, NULL);
}

char *
fixture_database (Fixture *self)
{
  return g_build_filename (self->folder, "records.sqlite", NULL);
}

char *
fixture_file (Fixture *self, const char *name, gsize n, guint32 seed)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GRand) rand = g_rand_new_with_seed (seed);
  g_autofree char *bytes = g_malloc (n + 1);
  char *path = fixture_path (self, name);

  for (gsize i = 0; i < n; i++)
    bytes[i] = (char)g_rand_int (rand);
  g_file_set_contents (path, bytes, n, &error);
  g_assert_no_error (error);
  return path;
}

void
fixture_put (Fixture *self, const char *label, const WmId *piece_id, gpointer record)
{
  g_autoptr (WmEdit) edit = wm_edit_new (label, piece_id, NULL);
  g_autoptr (GError) error = NULL;

  wm_edit_put (edit, record);
  wm_archive_commit (self->archive, edit, &error);
  g_assert_no_error (error);
}

void
fixture_remove (Fixture *self, const char *label, const WmId *piece_id, gpointer record)
{
  g_autoptr (WmEdit) edit = wm_edit_new (label, piece_id, NULL);
  g_autoptr (GError) error = NULL;

  wm_edit_remove (edit, record);
  wm_archive_commit (self->archive, edit, &error);
  g_assert_no_error (error);
}

WmPerson *
fixture_add_person (Fixture *self, const char *name)
{
  WmPerson *person = wm_person_new ();

  g_object_set (person, "role", WM_ROLE_OWNER, "name", name, NULL);
  fixture_put (self, "Add person", NULL, person);
  return person;
}

WmPiece *
fixture_add_piece (Fixture *self, const char *number, const char *description)
{
  WmPiece *piece = wm_piece_new ();

  g_object_set (piece, "number", number, "type", "ring_claw", "description", description,
                NULL);
  fixture_put (self, "Take in piece", fixture_id (piece), piece);
  return piece;
}

WmVisit *
fixture_add_visit (Fixture *self, WmPiece *piece, gint64 taken_in_at_s)
{
  WmVisit *visit = wm_visit_new ();

  g_object_set (visit, "piece-id", fixture_id (piece), "moment", WM_MOMENT_TAKE_IN,
                "taken-in-at-s", taken_in_at_s, NULL);
  fixture_put (self, "Begin visit", fixture_id (piece), visit);
  return visit;
}

WmCheck *
fixture_add_check (Fixture *self, WmVisit *visit, const char *fault, int severity)
{
  WmCheck *check = wm_check_new ();

  g_object_set (check, "visit-id", fixture_id (visit), "item", "cl01", "title",
                "Claw tip", "fault", fault, "severity", (gint64)severity, NULL);
  fixture_put (self, "Answer check", &visit->piece_id, check);
  return check;
}

WmPhoto *
fixture_add_photo (Fixture *self, WmVisit *visit, guint32 seed)
{
  g_autofree char *path = fixture_file (self, "photo.bin", 10000 + seed, seed);
  g_autofree char *sha256 = NULL;
  g_autoptr (GError) error = NULL;
  gint64 byte_size = 0;
  WmPhoto *photo = wm_photo_new ();

  wm_archive_store_photo (self->archive, path, "jpeg", NULL, &sha256, &byte_size, &error);
  g_assert_no_error (error);
  g_object_set (photo, "visit-id", fixture_id (visit), "moment", WM_PHOTO_BEFORE,
                "sha256", sha256, "format", "jpeg", "byte-size", byte_size, "width",
                (gint64)2000, "height", (gint64)1500, "orientation", (gint64)1, NULL);
  fixture_put (self, "Add photo", &visit->piece_id, photo);
  return photo;
}

WmMark *
fixture_add_mark (Fixture *self, WmPhoto *photo, WmCheck *check)
{
  WmMark *mark = wm_mark_new ();

  g_object_set (mark, "photo-id", fixture_id (photo), "check-id",
                check != NULL ? fixture_id (check) : NULL, "shape", WM_MARK_SPOT,
                "points", "812.5,300", "confirmed", TRUE, NULL);
  fixture_put (self, "Place mark", NULL, mark);
  return mark;
}

void
fixture_assert_sound (Fixture *self)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (WmAudit) audit = wm_archive_verify (self->archive, NULL, NULL, NULL, &error);

  g_assert_no_error (error);
  for (guint i = 0; i < audit->problems->len; i++)
    g_test_message ("%s", ((WmProblem *)audit->problems->pdata[i])->text);
  g_assert_cmpuint (audit->problems->len, ==, 0);
}
