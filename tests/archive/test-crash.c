/* test-crash.c: killed at random moments, during edits and imports
 *
 * A child works with the archive's own code and tells over a pipe each edit that was
 * committed. It is killed with SIGKILL at a random moment, over 200 times. Afterwards
 * every edit told of is there, no half edit, no orphan row, and the audit finds
 * nothing. A control, in which the child tells before it commits, must fail: so the
 * test is known to bite.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "fixture.h"

#include <errno.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

/* Kills in one archive, so that each finds what the ones before left; archives. */
#define N_ROUNDS 21
#define N_ARCHIVES 10
/* Checks that are put in one edit with their piece and visit. */
#define N_CHECKS 5
/* A round lasts up to this long from the first edit told of. */
#define MAX_ROUND_US 60000

/* What the child tells: the edit's number in this round, and how it stands now. */
typedef struct
{
  WmId piece_id;
  guint32 number;
  guint32 undone;
} Told;

/* ---- the child ---------------------------------------------------------- */

typedef struct
{
  WmArchive *archive;
  int pipe;
  gboolean tells_before; /* the control */
  char *photo;           /* a file to import */
  GRand *rand;
  guint32 number;
} Child;

static void
die (const GError *error)
{
  fprintf (stderr, "child: %s\n", error->message);
  _exit (3);
}

static void
tell (Child *child, const WmId *piece_id, guint32 number, gboolean undone)
{
  Told told = { *piece_id, number, undone };

  if (write (child->pipe, &told, sizeof told) != sizeof told)
    _exit (4);
}

static WmEdit *
begin_edit (Child *child, const WmId *piece_id)
{
  g_autofree char *label = g_strdup_printf ("Edit %u", ++child->number);

  return wm_edit_new (label, piece_id, NULL);
}

static void
commit (Child *child, WmEdit *edit, const WmId *piece_id)
{
  g_autoptr (GError) error = NULL;

  if (child->tells_before)
    tell (child, piece_id, child->number, FALSE);
  if (!wm_archive_commit (child->archive, edit, &error))
    die (error);
  if (!child->tells_before)
    tell (child, piece_id, child->number, FALSE);
}

static void
import_photo (Child *child, WmVisit *visit)
{
  g_autoptr (WmEdit) edit = NULL;
  g_autoptr (WmPhoto) photo = wm_photo_new ();
  g_autoptr (WmMark) mark = wm_mark_new ();
  g_autofree char *bytes = g_malloc (200000);
  g_autofree char *sha256 = NULL;
  g_autoptr (GError) error = NULL;
  gint64 byte_size;

  for (gsize i = 0; i < 200000; i += 4)
    *(guint32 *)(gpointer)(bytes + i) = g_rand_int (child->rand);
  if (!g_file_set_contents_full (child->photo, bytes, 200000, G_FILE_SET_CONTENTS_NONE,
                                 0600, &error)
      || !wm_archive_store_photo (child->archive, child->photo, "jpeg", NULL, &sha256,
                                  &byte_size, &error))
    die (error);
  g_object_set (photo, "visit-id", fixture_id (visit), "moment", WM_PHOTO_BEFORE,
                "sha256", sha256, "format", "jpeg", "byte-size", byte_size, NULL);
  g_object_set (mark, "photo-id", fixture_id (photo), "shape", WM_MARK_SPOT, "points",
                "1,2", NULL);
  edit = begin_edit (child, &visit->piece_id);
  wm_edit_put (edit, photo);
  wm_edit_put (edit, mark);
  commit (child, edit, &visit->piece_id);

  if (g_rand_boolean (child->rand))
    {
      g_autoptr (WmEdit) removal = begin_edit (child, &visit->piece_id);

      wm_edit_remove (removal, photo);
      commit (child, removal, &visit->piece_id);
    }
}

static void
undo_and_redo (Child *child, const WmId *piece_id)
{
  g_autoptr (GError) error = NULL;

  /* No control here: what is told before is told of commits only. */
  if (child->tells_before)
    return;
  if (!wm_archive_undo (child->archive, piece_id, NULL, NULL, &error))
    die (error);
  tell (child, piece_id, child->number, TRUE);
  if (!wm_archive_redo (child->archive, piece_id, NULL, NULL, &error))
    die (error);
  tell (child, piece_id, child->number, FALSE);
}

static void
take_in (Child *child)
{
  g_autoptr (WmPiece) piece = wm_piece_new ();
  g_autoptr (WmVisit) visit = wm_visit_new ();
  WmId piece_id = *fixture_id (piece);
  g_autoptr (WmEdit) edit = begin_edit (child, &piece_id);
  g_autoptr (WmCheck) last = NULL;

  g_object_set (piece, "description", "Crash ring", NULL);
  g_object_set (visit, "piece-id", &piece_id, "taken-in-at-s",
                g_get_real_time () / G_USEC_PER_SEC, NULL);
  wm_edit_put (edit, piece);
  wm_edit_put (edit, visit);
  for (int i = 0; i < N_CHECKS; i++)
    {
      g_clear_object (&last);
      last = wm_check_new ();
      g_object_set (last, "visit-id", fixture_id (visit), "position", (gint64)i, "fault",
                    "Worn claw", NULL);
      wm_edit_put (edit, last);
    }
  commit (child, edit, &piece_id);

  for (int i = 1; i <= 3; i++)
    {
      g_autoptr (WmEdit) answer = begin_edit (child, &piece_id);

      g_object_set (last, "severity", (gint64)i, NULL);
      wm_edit_put (answer, last);
      commit (child, answer, &piece_id);
    }
  undo_and_redo (child, &piece_id);
  import_photo (child, visit);
}

static void
run_child (const char *folder, int pipe, gboolean tells_before, guint32 seed)
{
  g_autoptr (GError) error = NULL;
  Child child = { .pipe = pipe, .tells_before = tells_before };

  child.archive = wm_archive_open (folder, WM_ARCHIVE_CREATE, &error);
  if (child.archive == NULL)
    die (error);
  child.rand = g_rand_new_with_seed (seed);
  child.photo = g_strconcat (folder, ".photo", NULL);
  for (;;)
    take_in (&child);
}

/* ---- the parent --------------------------------------------------------- */

typedef struct
{
  GArray *told;    /* of Told, all of this archive, as it came */
  guint n_told;    /* of all archives */
  guint n_missing; /* told of and not there */
  guint n_flipped; /* undone and told otherwise, or the reverse */
  guint n_strays;  /* in this archive: imports that were cut short */
} Tally;

/* Reads what came until the child is gone. Returns how many were told of. */
static guint
read_told (int pipe, GArray *told)
{
  Told one;
  guint n = 0;

  while (read (pipe, &one, sizeof one) == sizeof one)
    {
      g_array_append_val (told, one);
      n++;
    }
  return n;
}

/* One child, killed. */
static guint
run_round (const char *folder, gboolean tells_before, GArray *told)
{
  int ends[2];
  pid_t child;
  int status;
  Told first;
  guint n;

  g_assert_cmpint (pipe (ends), ==, 0);
  child = fork ();
  g_assert_cmpint (child, >=, 0);
  if (child == 0)
    {
      close (ends[0]);
      run_child (folder, ends[1], tells_before, g_random_int ());
    }
  close (ends[1]);

  /* Some are killed while they open; most while they work. */
  if (g_random_int_range (0, 10) == 0)
    {
      g_usleep (g_random_int_range (0, MAX_ROUND_US));
    }
  else
    {
      g_assert_cmpint (read (ends[0], &first, sizeof first), ==, sizeof first);
      g_array_append_val (told, first);
      g_usleep (g_random_int_range (0, MAX_ROUND_US));
    }
  kill (child, SIGKILL);
  waitpid (child, &status, 0);
  g_assert_true (WIFSIGNALED (status));
  n = read_told (ends[0], told);
  close (ends[0]);
  return n;
}

static void
check_told (WmArchive *archive, GArray *told, guint from, Tally *tally)
{
  /* The last word on each edit, by piece and number: later ones overwrite. */
  for (guint i = from; i < told->len; i++)
    {
      const Told *one = &g_array_index (told, Told, i);
      g_autofree char *label = g_strdup_printf ("Edit %u", one->number);
      g_autoptr (GPtrArray) events =
          wm_archive_list_events (archive, &one->piece_id, NULL);
      gboolean is_there = FALSE;
      gboolean is_last = TRUE;

      for (guint j = i + 1; is_last && j < told->len; j++)
        is_last =
            g_array_index (told, Told, j).number != one->number
            || !wm_id_equal (&g_array_index (told, Told, j).piece_id, &one->piece_id);
      for (guint j = 0; j < events->len; j++)
        {
          const WmEvent *event = events->pdata[j];

          if (!g_str_equal (event->label, label))
            continue;
          is_there = TRUE;
          if (is_last && event->undone != (one->undone != 0))
            tally->n_flipped++;
        }
      if (!is_there)
        tally->n_missing++;
    }
}

/* A piece came with its visit and all its checks, or not at all. */
static void
check_whole (WmArchive *archive)
{
  g_autoptr (GPtrArray) pieces =
      wm_archive_list (archive, WM_KIND_PIECE, NULL, NULL, NULL);

  for (guint i = 0; i < pieces->len; i++)
    {
      g_autoptr (GPtrArray) visits = wm_archive_list (
          archive, WM_KIND_VISIT, "piece_id", fixture_id (pieces->pdata[i]), NULL);
      g_autoptr (GPtrArray) checks = NULL;

      g_assert_cmpuint (visits->len, ==, 1);
      checks = wm_archive_list (archive, WM_KIND_CHECK, "visit_id",
                                fixture_id (visits->pdata[0]), NULL);
      g_assert_cmpuint (checks->len, ==, N_CHECKS);
    }
}

static void
kill_and_look (Fixture *f, gboolean tells_before, Tally *tally)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (WmAudit) audit = NULL;
  guint from = tally->told->len;
  guint flipped = tally->n_flipped;

  g_clear_object (&f->archive);
  run_round (f->folder, tells_before, tally->told);
  f->archive = wm_archive_open (f->folder, WM_ARCHIVE_CREATE, &error);
  g_assert_no_error (error);
  check_told (f->archive, tally->told, from, tally);
  /* The one that was under way when it was killed may be done and not told of. */
  g_assert_cmpuint (tally->n_flipped - flipped, <=, 1);
  check_whole (f->archive);

  audit = wm_archive_verify (f->archive, NULL, NULL, NULL, &error);
  g_assert_no_error (error);
  for (guint i = 0; i < audit->problems->len; i++)
    g_test_message ("%s", ((WmProblem *)audit->problems->pdata[i])->text);
  g_assert_cmpuint (audit->problems->len, ==, 0);
  tally->n_strays = (guint)audit->n_strays;
}

static void
test_killed (void)
{
  /* In memory an edit takes no time for the disk: more of them, cut at other places. */
  const char *bases[] = { g_get_tmp_dir (), access ("/dev/shm", W_OK) == 0
                                                ? "/dev/shm"
                                                : g_get_tmp_dir () };
  Tally tally = { 0 };
  guint n_strays = 0;

  for (int i = 0; i < N_ARCHIVES; i++)
    {
      Fixture f = { NULL, NULL };
      Tally again = { 0 };

      fixture_set_up_in (&f, bases[i % 2]);
      tally.told = g_array_new (FALSE, FALSE, sizeof (Told));
      for (int round = 0; round < N_ROUNDS; round++)
        kill_and_look (&f, FALSE, &tally);
      tally.n_told += tally.told->len;
      n_strays += tally.n_strays;
      /* Everything once more: no later round lost what an earlier one had. */
      check_told (f.archive, tally.told, 0, &again);
      g_assert_cmpuint (again.n_missing, ==, 0);
      g_array_unref (tally.told);
      fixture_tear_down (&f, NULL);
    }
  g_test_message ("%d kills; %u edits told of, %u missing; %u imports cut short",
                  N_ARCHIVES * N_ROUNDS, tally.n_told, tally.n_missing, n_strays);
  g_assert_cmpuint (tally.n_told, >, N_ARCHIVES * N_ROUNDS);
  g_assert_cmpuint (tally.n_missing, ==, 0);
}

static void
test_control (void)
{
  Fixture f = { NULL, NULL };
  Tally tally = { 0 };

  fixture_set_up (&f, NULL);
  tally.told = g_array_new (FALSE, FALSE, sizeof (Told));
  for (int round = 0; round < 40 && tally.n_missing == 0; round++)
    kill_and_look (&f, TRUE, &tally);
  g_test_message ("control: %u edits told of before they were made, %u missing",
                  tally.told->len, tally.n_missing);
  g_assert_cmpuint (tally.n_missing, >, 0);
  g_array_unref (tally.told);
  fixture_tear_down (&f, NULL);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/archive/crash/killed", test_killed);
  g_test_add_func ("/archive/crash/control", test_control);
  return g_test_run ();
}
