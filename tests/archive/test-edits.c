/* test-edits.c: commit, undo, redo; over restarts; what belongs to what
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "fixture.h"

#include <string.h>

#include "archive/links.h"

static void
assert_same_as_kept (Fixture *f, gpointer record)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (WmRecord) kept = wm_archive_get (f->archive, wm_record_get_kind (record),
                                              wm_record_get_id (record), &error);

  g_assert_no_error (error);
  g_assert_true (wm_record_equal (kept, record));
  g_assert_cmpint (wm_record_get_revision (kept), ==, wm_record_get_revision (record));
  g_assert_cmpint (wm_record_get_changed_at_us (kept), ==,
                   wm_record_get_changed_at_us (record));
}

static void
assert_gone (Fixture *f, gpointer record)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (wm_archive_get (f->archive, wm_record_get_kind (record),
                                 wm_record_get_id (record), &error));
  g_assert_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_NOT_FOUND);
}

static void
undo (Fixture *f, const WmId *piece_id, const char *label)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *undone = NULL;

  wm_archive_undo (f->archive, piece_id, NULL, &undone, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (undone, ==, label);
}

static void
redo (Fixture *f, const WmId *piece_id, const char *label)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *redone = NULL;

  wm_archive_redo (f->archive, piece_id, NULL, &redone, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (redone, ==, label);
}

/* Every field of every kind, with the hard cases of each type. */
static void
fill (WmRecord *record, const WmId *others, guint round)
{
  const WmKindInfo *info = wm_record_get_info (record);

  for (guint i = 0; i < info->n_fields; i++)
    {
      gpointer member = wm_record_get_member (record, &info->fields[i]);

      switch (info->fields[i].type)
        {
        case WM_FIELD_TEXT:
        case WM_FIELD_DATE:
          g_free (*(char **)member);
          *(char **)member = g_strdup_printf ("%u \"x\" \\ \t\n ä 寿 💍 %u", round, i);
          break;
        case WM_FIELD_INT:
        case WM_FIELD_NUMBER:
          *(gint64 *)member = round == 1 ? G_MAXINT64 - i : G_MININT64 + 1 + i;
          break;
        case WM_FIELD_REAL:
          *(double *)member = round == 1 ? 1.0 / 3 : -5.0e-324;
          break;
        case WM_FIELD_FLAG:
          *(gboolean *)member = round == 1;
          break;
        case WM_FIELD_KEY:
          *(WmId *)member = others[info->fields[i].refers_to];
          break;
        }
    }
}

/* What the schema asks of some fields. */
static void
mend (WmRecord *record)
{
  switch (wm_record_get_kind (record))
    {
    case WM_KIND_CHECK:
      WM_CHECK (record)->severity = 4;
      WM_CHECK (record)->after_severity = 1;
      WM_CHECK (record)->suggested = 3;
      break;
    case WM_KIND_PHOTO:
      WM_PHOTO (record)->quarter_turns = 3;
      g_object_set (record, "format", "jpeg", NULL);
      g_free (WM_PHOTO (record)->sha256);
      WM_PHOTO (record)->sha256 = g_strnfill (64, 'a');
      break;
    default:
      break;
    }
}

static void
test_every_kind (Fixture *f, gconstpointer unused)
{
  WmId ids[WM_N_KINDS] = { 0 };
  WmRecord *records[WM_N_KINDS];
  WmRecord *before[WM_N_KINDS];

  for (WmKind kind = 0; kind < WM_N_KINDS; kind++)
    {
      records[kind] = wm_record_new (kind);
      ids[kind] = *wm_record_get_id (records[kind]);
      fill (records[kind], ids, 1);
      mend (records[kind]);
      fixture_put (f, "Put", NULL, records[kind]);
      assert_same_as_kept (f, records[kind]);
      before[kind] = wm_record_copy (records[kind]);
    }
  for (WmKind kind = 0; kind < WM_N_KINDS; kind++)
    {
      fill (records[kind], ids, 2);
      mend (records[kind]);
      fixture_put (f, "Change", NULL, records[kind]);
      g_assert_cmpint (wm_record_get_revision (records[kind]), ==, 2);
    }

  fixture_reopen (f);
  for (WmKind kind = 0; kind < WM_N_KINDS; kind++)
    assert_same_as_kept (f, records[kind]);
  for (WmKind kind = WM_N_KINDS; kind-- > 0;)
    {
      g_autoptr (WmRecord) kept = NULL;

      undo (f, NULL, "Change");
      kept = wm_archive_get (f->archive, kind, &ids[kind], NULL);
      g_assert_true (wm_record_equal (kept, before[kind]));
      g_assert_cmpint (wm_record_get_revision (kept), ==, 3);
    }
  for (WmKind kind = WM_N_KINDS; kind-- > 0;)
    {
      undo (f, NULL, "Put");
      assert_gone (f, records[kind]);
    }
  for (int i = 0; i < 2 * WM_N_KINDS; i++)
    redo (f, NULL, i < WM_N_KINDS ? "Put" : "Change");
  for (WmKind kind = 0; kind < WM_N_KINDS; kind++)
    {
      g_autoptr (WmRecord) kept = wm_archive_get (f->archive, kind, &ids[kind], NULL);

      g_assert_true (wm_record_equal (kept, records[kind]));
      g_object_unref (records[kind]);
      g_clear_object (&before[kind]);
    }
}

static void
test_commit_nothing (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmPiece) piece = fixture_add_piece (f, "2026-0001-X", "Ring");
  g_autoptr (GPtrArray) events = NULL;

  fixture_put (f, "Same again", fixture_id (piece), piece);
  g_assert_cmpint (wm_record_get_revision (WM_RECORD (piece)), ==, 1);
  events = wm_archive_list_events (f->archive, fixture_id (piece), NULL);
  g_assert_cmpuint (events->len, ==, 1);
  g_object_set (piece, "description", "Other ring", NULL);
  fixture_put (f, "Describe", fixture_id (piece), piece);
  assert_same_as_kept (f, piece);
}

static void
test_commit_conflict (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmPiece) piece = fixture_add_piece (f, "2026-0001-X", "Ring");
  g_autoptr (WmPiece) copy = WM_PIECE (wm_record_copy (WM_RECORD (piece)));
  g_autoptr (WmEdit) edit = wm_edit_new ("Late", fixture_id (piece), NULL);
  g_autoptr (GError) error = NULL;

  g_object_set (piece, "size", "54", NULL);
  fixture_put (f, "Size", fixture_id (piece), piece);

  g_object_set (copy, "size", "56", NULL);
  wm_edit_put (edit, copy);
  g_assert_false (wm_archive_commit (f->archive, edit, &error));
  g_assert_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_CONFLICT);
  g_assert_cmpint (wm_record_get_revision (WM_RECORD (copy)), ==, 1);
  assert_same_as_kept (f, piece);
}

/* One wrong row, and none of the edit is kept. */
static void
test_commit_all_or_nothing (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmPiece) piece = fixture_add_piece (f, "2026-0001-X", "Ring");
  g_autoptr (WmStoneGroup) stones = wm_stone_group_new ();
  g_autoptr (WmVisit) visit = wm_visit_new ();
  g_autoptr (WmEdit) edit = wm_edit_new ("Both", fixture_id (piece), NULL);
  g_autoptr (GError) error = NULL;
  WmId nobody = wm_id_new ();

  g_object_set (stones, "piece-id", fixture_id (piece), "species", "ruby", NULL);
  g_object_set (visit, "piece-id", &nobody, NULL);
  wm_edit_put (edit, stones);
  wm_edit_put (edit, visit);
  g_assert_false (wm_archive_commit (f->archive, edit, &error));
  g_assert_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_REFUSED);
  assert_gone (f, stones);
  assert_gone (f, visit);
  fixture_assert_sound (f);
}

static void
test_commit_refuses (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmPiece) first = fixture_add_piece (f, "2026-0001-X", "Ring");
  g_autoptr (WmVisit) visit = fixture_add_visit (f, first, 1000);
  WmRecord *wrong[] = {
    WM_RECORD (wm_piece_new ()),   /* a number twice */
    WM_RECORD (wm_check_new ()),   /* no such severity */
    WM_RECORD (wm_person_new ()),  /* not UTF-8 */
    WM_RECORD (wm_visit_new ()),   /* of no piece */
    WM_RECORD (wm_setting_new ()), /* without a name */
  };

  g_object_set (wrong[0], "number", "2026-0001-X", NULL);
  g_object_set (wrong[1], "visit-id", fixture_id (visit), "severity", (gint64)6, NULL);
  g_object_set (wrong[2], "name", "M\xfcller", NULL);
  for (guint i = 0; i < G_N_ELEMENTS (wrong); i++)
    {
      g_autoptr (WmEdit) edit = wm_edit_new ("Wrong", NULL, NULL);
      g_autoptr (GError) error = NULL;

      wm_edit_put (edit, wrong[i]);
      g_assert_false (wm_archive_commit (f->archive, edit, &error));
      g_assert_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_REFUSED);
      assert_gone (f, wrong[i]);
      g_object_unref (wrong[i]);
    }
  fixture_assert_sound (f);
}

/* ---- removal ------------------------------------------------------------ */

static void
test_remove_takes_along (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmPiece) piece = fixture_add_piece (f, "2026-0001-X", "Ring");
  g_autoptr (WmVisit) visit = fixture_add_visit (f, piece, 1000);
  g_autoptr (WmPhoto) photo = fixture_add_photo (f, visit, 1);
  g_autoptr (WmPhoto) other = fixture_add_photo (f, visit, 2);
  g_autoptr (WmCheck) check = fixture_add_check (f, visit, "Worn claw", 3);
  g_autoptr (WmMark) mark = fixture_add_mark (f, photo, check);
  g_autoptr (WmMark) carried = fixture_add_mark (f, other, NULL);
  g_autoptr (WmMeasurement) measured = wm_measurement_new ();
  g_autoptr (WmMark) kept_mark = NULL;
  g_autoptr (WmMeasurement) kept = NULL;

  g_object_set (carried, "carried-from", fixture_id (mark), NULL);
  fixture_put (f, "Carry", NULL, carried);
  g_object_set (measured, "check-id", fixture_id (check), "mark-id", fixture_id (mark),
                "value-mm", 0.6, NULL);
  fixture_put (f, "Measure", NULL, measured);

  fixture_remove (f, "Remove photo", fixture_id (piece), photo);
  assert_gone (f, photo);
  assert_gone (f, mark);
  kept = wm_archive_get (f->archive, WM_KIND_MEASUREMENT, fixture_id (measured), NULL);
  g_assert_true (wm_id_is_none (&kept->mark_id));
  g_assert_cmpfloat (kept->value_mm, ==, 0.6);
  kept_mark = wm_archive_get (f->archive, WM_KIND_MARK, fixture_id (carried), NULL);
  g_assert_true (wm_id_is_none (&kept_mark->carried_from));
  fixture_assert_sound (f);

  fixture_reopen (f);
  undo (f, fixture_id (piece), "Remove photo");
  g_clear_object (&kept);
  kept = wm_archive_get (f->archive, WM_KIND_MEASUREMENT, fixture_id (measured), NULL);
  g_assert_true (wm_record_equal (WM_RECORD (kept), WM_RECORD (measured)));
  g_clear_object (&kept_mark);
  kept_mark = wm_archive_get (f->archive, WM_KIND_MARK, fixture_id (carried), NULL);
  g_assert_true (wm_record_equal (WM_RECORD (kept_mark), WM_RECORD (carried)));
  g_clear_object (&kept_mark);
  kept_mark = wm_archive_get (f->archive, WM_KIND_MARK, fixture_id (mark), NULL);
  g_assert_true (wm_record_equal (WM_RECORD (kept_mark), WM_RECORD (mark)));
  fixture_assert_sound (f);
}

static void
test_remove_piece (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmPiece) piece = fixture_add_piece (f, "2026-0001-X", "Ring");
  g_autoptr (WmVisit) visit = fixture_add_visit (f, piece, 1000);
  g_autoptr (WmCheck) check = fixture_add_check (f, visit, "Worn claw", 3);
  g_autoptr (GPtrArray) rows = NULL;

  fixture_remove (f, "Remove piece", fixture_id (piece), piece);
  assert_gone (f, check);
  g_assert_cmpint (wm_archive_count (f->archive, WM_PIECES_ALL, NULL), ==, 0);
  fixture_assert_sound (f);
  undo (f, NULL, "Remove piece");
  rows = wm_archive_search (f->archive, "worn", WM_PIECES_ALL, NULL, 0, 10, NULL);
  g_assert_cmpuint (rows->len, ==, 1);
  g_assert_cmpint (((WmPieceRow *)rows->pdata[0])->severity, ==, 3);
  /* Its own history goes on where it was. */
  undo (f, fixture_id (piece), "Answer check");
  fixture_assert_sound (f);
}

static void
test_remove_owner_is_refused (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmPerson) owner = fixture_add_person (f, "Ilse Brandt");
  g_autoptr (WmPiece) piece = fixture_add_piece (f, "2026-0001-X", "Ring");
  g_autoptr (WmEdit) edit = wm_edit_new ("Remove person", NULL, NULL);
  g_autoptr (GError) error = NULL;

  g_object_set (piece, "owner-id", fixture_id (owner), NULL);
  fixture_put (f, "Owner", fixture_id (piece), piece);
  wm_edit_remove (edit, owner);
  g_assert_false (wm_archive_commit (f->archive, edit, &error));
  g_assert_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_REFUSED);
  assert_same_as_kept (f, owner);
}

static void
test_links_are_complete (void)
{
  for (WmKind kind = 0; kind < WM_N_KINDS; kind++)
    {
      const WmKindInfo *info = wm_kind_get_info (kind);

      for (guint i = 0; i < info->n_fields; i++)
        {
          guint found = 0;

          for (guint j = 0; j < wm_n_links; j++)
            found += wm_links[j].kind == kind
                     && strcmp (wm_links[j].field, info->fields[i].name) == 0;
          g_assert_cmpuint (found, ==, info->fields[i].type == WM_FIELD_KEY ? 1 : 0);
        }
    }
}

/* ---- undo --------------------------------------------------------------- */

static void
test_undo_order (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmPiece) piece = fixture_add_piece (f, "2026-0001-X", "A");
  WmId key = *fixture_id (piece);
  const WmId *id = &key;
  g_autofree char *label = NULL;
  g_autoptr (GError) error = NULL;

  g_object_set (piece, "description", "B", NULL);
  fixture_put (f, "To B", id, piece);
  g_object_set (piece, "description", "C", NULL);
  fixture_put (f, "To C", id, piece);

  undo (f, id, "To C");
  fixture_reopen (f);
  undo (f, id, "To B");
  label = wm_archive_peek_redo (f->archive, id);
  g_assert_cmpstr (label, ==, "To B");
  redo (f, id, "To B");
  fixture_reopen (f);
  g_free (label);
  label = wm_archive_peek_undo (f->archive, id);
  g_assert_cmpstr (label, ==, "To B");

  /* A new edit ends the redo of "To C". */
  g_object_unref (piece);
  piece = wm_archive_get (f->archive, WM_KIND_PIECE, id, NULL);
  g_assert_cmpstr (piece->description, ==, "B");
  g_object_set (piece, "description", "D", NULL);
  fixture_put (f, "To D", id, piece);
  g_assert_null (wm_archive_peek_redo (f->archive, id));
  g_assert_false (wm_archive_redo (f->archive, id, NULL, NULL, &error));
  g_assert_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_NOTHING);
  undo (f, id, "To D");
  undo (f, id, "To B");
  undo (f, id, "Take in piece");
  assert_gone (f, piece);
  g_clear_error (&error);
  g_assert_false (wm_archive_undo (f->archive, id, NULL, NULL, &error));
  g_assert_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_NOTHING);
  fixture_assert_sound (f);
}

static void
test_undo_is_of_one_piece (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmPiece) one = fixture_add_piece (f, "2026-0001-X", "One");
  g_autoptr (WmPiece) two = fixture_add_piece (f, "2026-0002-X", "Two");

  g_object_set (one, "size", "54", NULL);
  fixture_put (f, "Size one", fixture_id (one), one);
  g_object_set (two, "size", "56", NULL);
  fixture_put (f, "Size two", fixture_id (two), two);
  undo (f, fixture_id (one), "Size one");
  assert_same_as_kept (f, two);
}

static void
test_undo_conflict (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmPerson) owner = fixture_add_person (f, "Ilse Brandt");
  g_autoptr (WmPiece) one = fixture_add_piece (f, "2026-0001-X", "One");
  g_autoptr (WmPiece) two = fixture_add_piece (f, "2026-0002-X", "Two");
  g_autoptr (GError) error = NULL;

  g_object_set (owner, "phone", "1", NULL);
  fixture_put (f, "Phone", fixture_id (one), owner);
  g_object_set (owner, "phone", "2", NULL);
  fixture_put (f, "Phone", fixture_id (two), owner);
  g_assert_false (wm_archive_undo (f->archive, fixture_id (one), NULL, NULL, &error));
  g_assert_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_CONFLICT);
  assert_same_as_kept (f, owner);
  undo (f, fixture_id (two), "Phone");
  undo (f, fixture_id (one), "Phone");
}

/* The piece is put in with its owner held by another piece meanwhile. */
static void
test_undo_of_what_is_held (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmPerson) owner = fixture_add_person (f, "Ilse Brandt");
  g_autoptr (WmPiece) piece = fixture_add_piece (f, "2026-0001-X", "One");
  g_autoptr (GError) error = NULL;

  g_object_set (piece, "owner-id", fixture_id (owner), NULL);
  fixture_put (f, "Owner", fixture_id (piece), piece);
  g_assert_false (wm_archive_undo (f->archive, NULL, NULL, NULL, &error));
  g_assert_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_CONFLICT);
  assert_same_as_kept (f, owner);
  fixture_assert_sound (f);
}

static void
test_events (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmPerson) worker = fixture_add_person (f, "Tom Weber");
  g_autoptr (WmPiece) piece = wm_piece_new ();
  g_autoptr (WmEdit) edit =
      wm_edit_new ("Take in", fixture_id (piece), fixture_id (worker));
  g_autoptr (GPtrArray) events = NULL;
  const WmEvent *first;
  const WmEvent *second;

  wm_edit_put (edit, piece);
  g_assert_true (wm_archive_commit (f->archive, edit, NULL));
  g_assert_true (
      wm_id_equal (wm_record_get_changed_by (WM_RECORD (piece)), fixture_id (worker)));
  g_object_set (piece, "size", "54", NULL);
  fixture_put (f, "Size", fixture_id (piece), piece);
  undo (f, fixture_id (piece), "Size");

  events = wm_archive_list_events (f->archive, fixture_id (piece), NULL);
  g_assert_cmpuint (events->len, ==, 2);
  first = events->pdata[0];
  second = events->pdata[1];
  g_assert_cmpstr (first->label, ==, "Take in");
  g_assert_cmpstr (first->by_name, ==, "Tom Weber");
  g_assert_false (first->undone);
  g_assert_true (second->undone);
  g_assert_null (second->by_name);
  g_assert_cmpint (first->at_us, <, second->at_us);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  fixture_add ("/archive/edits/every-kind", test_every_kind);
  fixture_add ("/archive/edits/nothing", test_commit_nothing);
  fixture_add ("/archive/edits/conflict", test_commit_conflict);
  fixture_add ("/archive/edits/all-or-nothing", test_commit_all_or_nothing);
  fixture_add ("/archive/edits/refuses", test_commit_refuses);
  fixture_add ("/archive/remove/takes-along", test_remove_takes_along);
  fixture_add ("/archive/remove/piece", test_remove_piece);
  fixture_add ("/archive/remove/owner", test_remove_owner_is_refused);
  g_test_add_func ("/archive/remove/links-complete", test_links_are_complete);
  fixture_add ("/archive/undo/order", test_undo_order);
  fixture_add ("/archive/undo/one-piece", test_undo_is_of_one_piece);
  fixture_add ("/archive/undo/conflict", test_undo_conflict);
  fixture_add ("/archive/undo/held", test_undo_of_what_is_held);
  fixture_add ("/archive/events", test_events);
  return g_test_run ();
}
