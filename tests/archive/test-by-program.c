/* test-by-program.c: what the program does by itself is no step of undo
 *
 * Expected values: the words of archive/edit.h (WM_EDIT_BY_PROGRAM).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "tests/archive/fixture.h"

static WmPairing *
add_pairing (Fixture *f, WmPiece *piece, WmPhoto *before, WmPhoto *after)
{
  WmPairing *pairing = wm_pairing_new ();

  pairing->before_photo_id = *fixture_id (before);
  pairing->after_photo_id = *fixture_id (after);
  wm_record_set_text (WM_RECORD (pairing), "made_by", WM_PAIRING_BY_PROGRAM);
  fixture_put (f, WM_EDIT_BY_PROGRAM, fixture_id (piece), pairing);
  return pairing;
}

static gboolean
is_there (Fixture *f, gpointer record)
{
  g_autoptr (GObject) found = wm_archive_get (f->archive, wm_record_get_kind (record),
                                              wm_record_get_id (record), NULL);

  return found != NULL;
}

static void
step (Fixture *f, WmPiece *piece, gboolean back, const char *label)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *done = NULL;
  gboolean kept =
      back ? wm_archive_undo (f->archive, fixture_id (piece), NULL, &done, &error)
           : wm_archive_redo (f->archive, fixture_id (piece), NULL, &done, &error);

  g_assert_no_error (error);
  g_assert_true (kept);
  g_assert_cmpstr (done, ==, label);
}

/* Undo passes the program's edit over and takes back what the person did. */
static void
test_no_step (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmPiece) piece = fixture_add_piece (f, "2026-0001-X", "Ring");
  g_autoptr (WmVisit) visit = fixture_add_visit (f, piece, 1000);
  g_autoptr (WmPhoto) before = fixture_add_photo (f, visit, 1);
  g_autoptr (WmPhoto) after = fixture_add_photo (f, visit, 2);
  g_autoptr (WmPairing) pairing = NULL;
  g_autofree char *next = NULL;

  g_object_set (piece, "size", "54", NULL);
  fixture_put (f, "Size", fixture_id (piece), piece);
  pairing = add_pairing (f, piece, before, after);
  next = wm_archive_peek_undo (f->archive, fixture_id (piece));
  g_assert_cmpstr (next, ==, "Size");
  step (f, piece, TRUE, "Size");
  g_assert_true (is_there (f, pairing));
  step (f, piece, FALSE, "Size");
  g_assert_true (is_there (f, pairing));
  fixture_assert_sound (f);
}

/* It ends no redo either. */
static void
test_ends_no_redo (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmPiece) piece = fixture_add_piece (f, "2026-0001-X", "Ring");
  g_autoptr (WmVisit) visit = fixture_add_visit (f, piece, 1000);
  g_autoptr (WmPhoto) before = fixture_add_photo (f, visit, 1);
  g_autoptr (WmPhoto) after = fixture_add_photo (f, visit, 2);
  g_autoptr (WmPairing) pairing = NULL;

  g_object_set (piece, "size", "54", NULL);
  fixture_put (f, "Size", fixture_id (piece), piece);
  step (f, piece, TRUE, "Size");
  pairing = add_pairing (f, piece, before, after);
  step (f, piece, FALSE, "Size");
  g_assert_true (is_there (f, pairing));
}

/* A photo taken back takes along what the program tied to it. */
static void
test_goes_with_its_photo (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmPiece) piece = fixture_add_piece (f, "2026-0001-X", "Ring");
  g_autoptr (WmVisit) visit = fixture_add_visit (f, piece, 1000);
  g_autoptr (WmPhoto) before = fixture_add_photo (f, visit, 1);
  g_autoptr (WmPhoto) after = fixture_add_photo (f, visit, 2);
  g_autoptr (WmMark) mark = wm_mark_new ();
  g_autoptr (WmPairing) pairing = add_pairing (f, piece, before, after);
  g_autofree char *label = wm_archive_peek_undo (f->archive, fixture_id (piece));

  mark->photo_id = *fixture_id (after);
  wm_record_set_text (WM_RECORD (mark), "points", "3,4");
  fixture_put (f, WM_EDIT_BY_PROGRAM, fixture_id (piece), mark);
  step (f, piece, TRUE, label);
  g_assert_false (is_there (f, after));
  g_assert_false (is_there (f, pairing));
  g_assert_false (is_there (f, mark));
  g_assert_true (is_there (f, before));
  fixture_assert_sound (f);
  step (f, piece, FALSE, label);
  g_assert_true (is_there (f, after));
  fixture_assert_sound (f);
}

/* An answer made again since stands in nobody's way. */
static void
test_made_again (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmPiece) piece = fixture_add_piece (f, "2026-0001-X", "Ring");
  g_autoptr (WmVisit) visit = fixture_add_visit (f, piece, 1000);
  g_autoptr (WmPhoto) before = fixture_add_photo (f, visit, 1);
  g_autoptr (WmPhoto) after = fixture_add_photo (f, visit, 2);
  g_autoptr (WmPairing) pairing = wm_pairing_new ();

  pairing->before_photo_id = *fixture_id (before);
  pairing->after_photo_id = *fixture_id (after);
  wm_record_set_text (WM_RECORD (pairing), "made_by", WM_PAIRING_BY_PROGRAM);
  fixture_put (f, "Choose", fixture_id (piece), pairing);
  pairing->residual_px = 0.5;
  fixture_put (f, WM_EDIT_BY_PROGRAM, fixture_id (piece), pairing);
  step (f, piece, TRUE, "Choose");
  g_assert_false (is_there (f, pairing));
  step (f, piece, FALSE, "Choose");
  g_assert_true (is_there (f, pairing));
  fixture_assert_sound (f);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  fixture_add ("/archive/by-program/no-step", test_no_step);
  fixture_add ("/archive/by-program/ends-no-redo", test_ends_no_redo);
  fixture_add ("/archive/by-program/goes-with-its-photo", test_goes_with_its_photo);
  fixture_add ("/archive/by-program/made-again", test_made_again);
  return g_test_run ();
}
