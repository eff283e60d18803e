/* test-threads.c: _async calls, "changed", closing while busy
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "fixture.h"

#include <string.h>

typedef struct
{
  GPtrArray *words; /* what happened, in order */
  guint pending;
} Notes;

static void
on_changed (WmArchive *archive, const WmChange *change, Notes *notes)
{
  g_assert_true (g_main_context_is_owner (g_main_context_default ())
                 || notes->pending == 0);
  g_ptr_array_add (notes->words,
                   g_strdup_printf ("changed %u%s", change->n_rows,
                                    change->rows[0].removed ? " removed" : ""));
}

static void
on_committed (GObject *source, GAsyncResult *result, gpointer user_data)
{
  Notes *notes = user_data;
  g_autoptr (GError) error = NULL;

  wm_archive_commit_finish (WM_ARCHIVE (source), result, &error);
  g_ptr_array_add (notes->words, g_strdup (error == NULL ? "done" : error->message));
  notes->pending--;
}

static void
on_undone (GObject *source, GAsyncResult *result, gpointer user_data)
{
  Notes *notes = user_data;
  g_autoptr (GError) error = NULL;
  char *label = wm_archive_undo_finish (WM_ARCHIVE (source), result, &error);

  g_assert_no_error (error);
  g_ptr_array_add (notes->words, label);
  notes->pending--;
}

/* The same record changed and put three times without waiting. */
static void
test_async_in_order (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmPiece) piece = wm_piece_new ();
  g_autoptr (WmPiece) kept = NULL;
  Notes notes = { g_ptr_array_new_with_free_func (g_free), 0 };
  static const char *const expected[] = { "changed 1", "done", "changed 1", "done",
                                          "changed 1", "done", "changed 1", "Three",
                                          "changed 1", "Three" };
  static const char *const labels[] = { "One", "Two", "Three" };
  WmId id = *fixture_id (piece);

  g_signal_connect (f->archive, "changed", G_CALLBACK (on_changed), &notes);
  for (guint i = 0; i < G_N_ELEMENTS (labels); i++)
    {
      g_autoptr (WmEdit) edit = wm_edit_new (labels[i], &id, NULL);

      g_object_set (piece, "description", labels[i], NULL);
      wm_edit_put (edit, piece);
      notes.pending++;
      wm_archive_commit_async (f->archive, edit, on_committed, &notes);
    }
  notes.pending += 2;
  wm_archive_undo_async (f->archive, &id, NULL, on_undone, &notes);
  wm_archive_redo_async (f->archive, &id, NULL, on_undone, &notes);
  while (notes.pending > 0)
    g_main_context_iteration (NULL, TRUE);

  g_assert_cmpuint (notes.words->len, ==, G_N_ELEMENTS (expected));
  for (guint i = 0; i < notes.words->len; i++)
    g_assert_cmpstr (notes.words->pdata[i], ==, expected[i]);
  g_assert_cmpint (wm_record_get_revision (WM_RECORD (piece)), ==, 3);
  kept = wm_archive_get (f->archive, WM_KIND_PIECE, &id, NULL);
  g_assert_cmpstr (kept->description, ==, "Three");
  g_assert_cmpint (wm_record_get_revision (WM_RECORD (kept)), ==, 5);
  g_ptr_array_unref (notes.words);
}

static void
test_changed_is_told_at_once (Fixture *f, gconstpointer unused)
{
  Notes notes = { g_ptr_array_new_with_free_func (g_free), 0 };
  g_autoptr (WmPiece) piece = NULL;

  g_signal_connect (f->archive, "changed", G_CALLBACK (on_changed), &notes);
  piece = fixture_add_piece (f, "2026-0001-X", "Ring");
  g_assert_cmpuint (notes.words->len, ==, 1);
  fixture_remove (f, "Remove", NULL, piece);
  g_assert_cmpstr (notes.words->pdata[1], ==, "changed 1 removed");
  g_ptr_array_unref (notes.words);
}

/* Closing waits for what was asked for, and its callback still comes. */
static void
test_close_while_busy (Fixture *f, gconstpointer unused)
{
  Notes notes = { g_ptr_array_new_with_free_func (g_free), 1 };
  g_autoptr (WmPiece) piece = wm_piece_new ();
  g_autoptr (WmEdit) edit = wm_edit_new ("Late", fixture_id (piece), NULL);
  g_autoptr (WmPiece) kept = NULL;
  g_autoptr (GError) error = NULL;

  wm_edit_put (edit, piece);
  wm_archive_commit_async (f->archive, edit, on_committed, &notes);
  wm_archive_close (f->archive);
  g_assert_null (wm_archive_get (f->archive, WM_KIND_PIECE, fixture_id (piece), &error));
  g_assert_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_IO);
  while (notes.pending > 0)
    g_main_context_iteration (NULL, TRUE);
  g_assert_cmpstr (notes.words->pdata[0], ==, "done");

  fixture_reopen (f);
  kept = wm_archive_get (f->archive, WM_KIND_PIECE, fixture_id (piece), NULL);
  g_assert_nonnull (kept);
  g_ptr_array_unref (notes.words);
}

/* A call after closing is answered, with an error. */
static void
test_async_when_closed (Fixture *f, gconstpointer unused)
{
  Notes notes = { g_ptr_array_new_with_free_func (g_free), 1 };
  g_autoptr (WmPiece) piece = wm_piece_new ();
  g_autoptr (WmEdit) edit = wm_edit_new ("Too late", NULL, NULL);

  wm_archive_close (f->archive);
  wm_edit_put (edit, piece);
  wm_archive_commit_async (f->archive, edit, on_committed, &notes);
  while (notes.pending > 0)
    g_main_context_iteration (NULL, TRUE);
  g_assert_nonnull (strstr (notes.words->pdata[0], "closed"));
  g_ptr_array_unref (notes.words);
}

#define N_THREADS 4
#define N_EDITS 25

static gpointer
edit_and_read (gpointer data)
{
  WmArchive *archive = data;

  for (int i = 0; i < N_EDITS; i++)
    {
      g_autoptr (WmPiece) piece = wm_piece_new ();
      g_autoptr (WmEdit) edit = wm_edit_new ("Thread", fixture_id (piece), NULL);
      g_autoptr (GPtrArray) rows = NULL;
      g_autoptr (GError) error = NULL;

      g_object_set (piece, "description", "threaded", NULL);
      wm_edit_put (edit, piece);
      wm_archive_commit (archive, edit, &error);
      g_assert_no_error (error);
      rows = wm_archive_search (archive, "thr", WM_PIECES_ALL, NULL, 0, 10, &error);
      g_assert_no_error (error);
      g_assert_cmpuint (rows->len, >, 0);
    }
  return NULL;
}

static void
test_many_threads (Fixture *f, gconstpointer unused)
{
  GThread *threads[N_THREADS];

  for (int i = 0; i < N_THREADS; i++)
    threads[i] = g_thread_new ("edits", edit_and_read, f->archive);
  for (int i = 0; i < N_THREADS; i++)
    g_thread_join (threads[i]);
  while (g_main_context_iteration (NULL, FALSE))
    ;
  g_assert_cmpint (wm_archive_count (f->archive, WM_PIECES_ALL, NULL), ==,
                   N_THREADS * N_EDITS);
  fixture_assert_sound (f);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  fixture_add ("/archive/threads/in-order", test_async_in_order);
  fixture_add ("/archive/threads/told-at-once", test_changed_is_told_at_once);
  fixture_add ("/archive/threads/close-while-busy", test_close_while_busy);
  fixture_add ("/archive/threads/when-closed", test_async_when_closed);
  fixture_add ("/archive/threads/many", test_many_threads);
  return g_test_run ();
}
