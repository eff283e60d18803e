/* make-old-archive.c: writes the small database that tests/data keeps of a version
 *
 * Run once when a schema file is released: make-old-archive FOLDER, then
 * "gzip -9n" of FOLDER/archive/records.sqlite becomes
 * tests/data/archive-version-N.sqlite.gz and never changes.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "fixture.h"

int
main (int argc, char *argv[])
{
  Fixture f = { NULL, NULL };
  g_autoptr (WmPerson) owner = NULL;
  g_autoptr (WmPiece) piece = NULL;
  g_autoptr (WmVisit) visit = NULL;
  g_autoptr (WmCheck) check = NULL;
  g_autoptr (WmPhoto) photo = NULL;
  g_autoptr (WmMark) mark = NULL;

  if (argc != 2)
    return 2;
  f.folder = g_build_filename (argv[1], "archive", NULL);
  f.archive = wm_archive_open (f.folder, WM_ARCHIVE_CREATE, NULL);
  if (f.archive == NULL)
    return 1;

  owner = fixture_add_person (&f, "Zoë Lindqvist");
  piece = fixture_add_piece (&f, "2026-0001-H", "Ring with a high crown");
  g_object_set (piece, "owner-id", fixture_id (owner), "metal", "au750y", NULL);
  fixture_put (&f, "Change piece", fixture_id (piece), piece);
  visit = fixture_add_visit (&f, piece, 1795600000);
  check = fixture_add_check (&f, visit, "Worn claw", 3);
  photo = fixture_add_photo (&f, visit, 1);
  mark = wm_mark_new ();
  g_object_set (mark, "photo-id", fixture_id (photo), "check-id", fixture_id (check),
                "shape", WM_MARK_SPOT, "points", "812.5,300", "confirmed", TRUE, NULL);
  fixture_put (&f, "Place mark", fixture_id (piece), mark);
  g_clear_object (&f.archive);
  g_free (f.folder);
  return 0;
}
