/* test-search.c: the list of pieces, whole and by words
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "fixture.h"

#include <string.h>

#include "archive/archive-private.h"
#include "archive/words.h"

static GPtrArray *
search (Fixture *f, const char *words)
{
  g_autoptr (GError) error = NULL;
  GPtrArray *rows =
      wm_archive_search (f->archive, words, WM_PIECES_ALL, NULL, 0, 100, &error);

  g_assert_no_error (error);
  return rows;
}

static void
assert_found (Fixture *f, const char *words, const char *number)
{
  g_autoptr (GPtrArray) rows = search (f, words);

  if (number == NULL)
    {
      g_assert_cmpuint (rows->len, ==, 0);
      return;
    }
  g_assert_cmpuint (rows->len, ==, 1);
  g_assert_cmpstr (((WmPieceRow *)rows->pdata[0])->number, ==, number);
}

static WmPiece *
add_known_piece (Fixture *f)
{
  g_autoptr (WmPerson) owner = fixture_add_person (f, "Zoë Müller-Ångström");
  g_autoptr (WmPiece) piece =
      fixture_add_piece (f, "2026-0151-Q", "Ring, \"high\" crown");
  g_autoptr (WmVisit) visit = fixture_add_visit (f, piece, 1700000000);
  g_autoptr (WmCheck) check = fixture_add_check (f, visit, "Worn claw", 3);
  g_autoptr (WmStoneGroup) stones = wm_stone_group_new ();

  g_object_set (stones, "piece-id", fixture_id (piece), "species", "tourmaline", NULL);
  fixture_put (f, "Stones", fixture_id (piece), stones);
  g_object_set (piece, "owner-id", fixture_id (owner), "metal", "au750y", "fineness",
                (gint64)750, NULL);
  fixture_put (f, "Metal", fixture_id (piece), piece);
  g_object_unref (fixture_add_piece (f, "2026-0152-R", "Brooch"));
  return g_steal_pointer (&piece);
}

static void
test_words (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmPiece) piece = add_known_piece (f);
  static const char *const hits[] = { "z",      "zoe",       "ZOË",         "muller",
                                      "angstr", "2026-0151", "2026-0151-q", "0151",
                                      "151",    "20260151",  "au750",       "750",
                                      "tourm",  "worn",      "claw ring z", "crown" };
  static const char *const misses[] = { "oe", "sapphire", "zoe brooch", "2025" };

  for (guint i = 0; i < G_N_ELEMENTS (hits); i++)
    assert_found (f, hits[i], "2026-0151-Q");
  for (guint i = 0; i < G_N_ELEMENTS (misses); i++)
    assert_found (f, misses[i], NULL);
}

/* Whatever is typed is words: no error, no operator. */
static void
test_words_are_harmless (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmPiece) piece = add_known_piece (f);
  static const char *const typed[] = {
    "\"",       "\"\"", "'",        "ring\"",      "\"ring",
    "ring AND", "OR",   "NOT ring", "NEAR (a, 2)", "ring*",
    "*",        "-",    "number:",  "number:2026", "{a b}: c",
    "ring^",    "(",    ")",        "a + b",       "; DROP TABLE piece",
    "%",        "\\",   "\xff\xfe", "ring\xff",    "—",
    "💍"
  };
  g_autofree char *many = g_strnfill (100000, 'a');
  g_autoptr (GPtrArray) all = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (typed); i++)
    {
      g_autoptr (GPtrArray) rows = search (f, typed[i]);

      g_assert_nonnull (rows);
    }
  assert_found (f, many, NULL);
  /* A word and a mark of punctuation finds what the word finds. */
  assert_found (f, "\"tourmaline\"!", "2026-0151-Q");
  assert_found (f, "ring* (crown)", "2026-0151-Q");
  assert_found (f, "worn NOT claw", NULL);
  all = search (f, " -\"* ");
  g_assert_cmpuint (all->len, ==, 2);
}

static void
test_words_follow_edits (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmPiece) piece = add_known_piece (f);
  g_autoptr (WmPerson) owner = NULL;

  g_object_set (piece, "description", "Signet", NULL);
  fixture_put (f, "Describe", fixture_id (piece), piece);
  assert_found (f, "crown", NULL);
  assert_found (f, "signet", "2026-0151-Q");
  g_assert_true (wm_archive_undo (f->archive, fixture_id (piece), NULL, NULL, NULL));
  assert_found (f, "crown", "2026-0151-Q");
  assert_found (f, "signet", NULL);

  /* The owner's new name reaches the piece. */
  owner = wm_archive_get (f->archive, WM_KIND_PERSON, &piece->owner_id, NULL);
  g_object_set (owner, "name", "Quentin Abel", NULL);
  fixture_put (f, "Rename", NULL, owner);
  assert_found (f, "quentin", "2026-0151-Q");
  assert_found (f, "muller", NULL);
  fixture_assert_sound (f);
}

static void
test_names_of_trade (Fixture *f, gconstpointer unused)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (WmTrade) trade =
      wm_trade_new_with_shop (g_getenv ("WEARMARK_TABLES"), NULL, &error);
  g_autoptr (WmPiece) piece = NULL;
  guint n = 0;
  const WmPieceType *type;

  g_assert_no_error (error);
  type = wm_trade_list_piece_types (trade, &n)[0];
  g_assert_cmpuint (n, >, 0);
  wm_archive_set_trade (f->archive, trade);
  piece = wm_piece_new ();
  g_object_set (piece, "number", "2026-0001-X", "type", type->key, NULL);
  fixture_put (f, "Take in piece", fixture_id (piece), piece);
  assert_found (f, type->name, "2026-0001-X");
}

/* ---- the rows ----------------------------------------------------------- */

static const WmPieceRow *
first (GPtrArray *rows)
{
  return rows->pdata[0];
}

static void
assert_severity (Fixture *f, int severity)
{
  g_autoptr (GPtrArray) rows = search (f, NULL);

  g_assert_cmpint (first (rows)->severity, ==, severity);
}

static void
test_severity (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmPiece) piece = fixture_add_piece (f, "2026-0001-X", "Ring");
  g_autoptr (WmVisit) visit = fixture_add_visit (f, piece, 1000);
  g_autoptr (WmCheck) sound = NULL;
  g_autoptr (WmCheck) absent = NULL;
  g_autoptr (WmCheck) open = NULL;
  g_autoptr (WmCheck) worn = NULL;
  g_autoptr (WmVisit) later = NULL;

  assert_severity (f, 0);
  sound = fixture_add_check (f, visit, "A", 1);
  absent = fixture_add_check (f, visit, "B", 5);
  assert_severity (f, 1);
  open = fixture_add_check (f, visit, "C", 0);
  assert_severity (f, 0); /* not looked at: not called sound */
  worn = fixture_add_check (f, visit, "D", 4);
  assert_severity (f, 4); /* but a finding shows at once */
  g_object_set (worn, "after-severity", (gint64)1, NULL);
  fixture_put (f, "Mended", fixture_id (piece), worn);
  assert_severity (f, 0);
  g_object_set (visit, "inspected-at-s", (gint64)1500, "open-reason", "sealed", NULL);
  fixture_put (f, "Inspected", fixture_id (piece), visit);
  assert_severity (f, 1); /* called inspected, with a reason for what is open */
  g_object_set (open, "severity", (gint64)2, NULL);
  fixture_put (f, "Answer", fixture_id (piece), open);
  assert_severity (f, 2);
  later = fixture_add_visit (f, piece, 2000);
  assert_severity (f, 0); /* of the last visit */
  fixture_assert_sound (f);
}

static void
test_lists (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmPiece) here = fixture_add_piece (f, "2026-0001-X", "Here ring");
  g_autoptr (WmPiece) back = fixture_add_piece (f, "2026-0002-X", "Back ring");
  g_autoptr (WmPiece) none = fixture_add_piece (f, "2026-0003-X", "Never here");
  g_autoptr (WmVisit) first_visit = fixture_add_visit (f, here, 1000);
  g_autoptr (WmVisit) second_visit = fixture_add_visit (f, back, 2000);
  g_autoptr (WmPhoto) photo = fixture_add_photo (f, second_visit, 3);
  g_autoptr (GPtrArray) bench = NULL;
  g_autoptr (GPtrArray) due = NULL;
  g_autoptr (GPtrArray) all = NULL;

  g_object_set (second_visit, "handed-back-at-s", (gint64)3000, "next-check-on",
                "2027-03-01", NULL);
  fixture_put (f, "Hand back", fixture_id (back), second_visit);

  bench = wm_archive_search (f->archive, "", WM_PIECES_ON_BENCH, NULL, 0, 10, NULL);
  g_assert_cmpuint (bench->len, ==, 1);
  g_assert_cmpstr (first (bench)->number, ==, "2026-0001-X");
  g_assert_true (first (bench)->on_bench);
  g_assert_cmpint (first (bench)->handed_back_at_s, ==, WM_UNKNOWN);
  due = wm_archive_search (f->archive, "ring", WM_PIECES_DUE, "2027-03-01", 0, 10, NULL);
  g_assert_cmpuint (due->len, ==, 1);
  g_assert_cmpstr (first (due)->number, ==, "2026-0002-X");
  g_assert_cmpstr (first (due)->next_check_on, ==, "2027-03-01");
  g_assert_cmpstr (first (due)->photo_sha256, ==, photo->sha256);
  g_assert_cmpint (wm_archive_count (f->archive, WM_PIECES_DUE, "2027-02-28"), ==, 0);
  g_assert_cmpint (wm_archive_count (f->archive, WM_PIECES_DUE, "2027-03-01"), ==, 1);
  g_assert_cmpint (wm_archive_count (f->archive, WM_PIECES_ON_BENCH, NULL), ==, 1);
  g_assert_cmpint (wm_archive_count (f->archive, WM_PIECES_ALL, NULL), ==, 3);

  /* Newest take-in first; a piece never taken in counts from when it was written. */
  all = search (f, NULL);
  g_assert_cmpstr (((WmPieceRow *)all->pdata[0])->number, ==, "2026-0003-X");
  g_assert_cmpstr (((WmPieceRow *)all->pdata[1])->number, ==, "2026-0002-X");
  g_assert_cmpstr (((WmPieceRow *)all->pdata[2])->number, ==, "2026-0001-X");
}

/* More pieces in one second than it has places, and more than are ranked. */
static void
test_many (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmEdit) edit = wm_edit_new ("Many", NULL, NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) page = NULL;
  g_autoptr (GPtrArray) last = NULL;

  for (guint i = 0; i < 4200; i++)
    {
      g_autoptr (WmPiece) piece = wm_piece_new ();
      g_autoptr (WmVisit) visit = wm_visit_new ();
      g_autofree char *number = g_strdup_printf ("2026-%04u-X", i);

      g_object_set (piece, "number", number, "description", "same", NULL);
      g_object_set (visit, "piece-id", fixture_id (piece), "taken-in-at-s",
                    (gint64)1700000000, NULL);
      wm_edit_put (edit, piece);
      wm_edit_put (edit, visit);
    }
  g_assert_true (wm_archive_commit (f->archive, edit, &error));
  g_assert_no_error (error);
  page = wm_archive_search (f->archive, "s", WM_PIECES_ALL, NULL, 0, 50, NULL);
  g_assert_cmpuint (page->len, ==, 50);
  last = wm_archive_search (f->archive, "s", WM_PIECES_ALL, NULL, 4190, 50, NULL);
  g_assert_cmpuint (last->len, ==, 10);
  g_assert_cmpint (wm_archive_count (f->archive, WM_PIECES_ALL, NULL), ==, 4200);
}

/* ---- query plans -------------------------------------------------------- */

static char *
explain (WmDatabase *db, const char *sql)
{
  g_autofree char *query = g_strconcat ("EXPLAIN QUERY PLAN ", sql, NULL);
  g_autoptr (WmStatement) plan = wm_database_prepare (db, query, NULL);
  GString *text = g_string_new (NULL);

  g_assert_nonnull (plan);
  while (wm_statement_next (plan, NULL))
    g_string_append_printf (text, "%s\n", wm_statement_get_text (plan, 3));
  return g_string_free (text, FALSE);
}

/* Steps that read from end to end, and why they may. */
static const struct
{
  const char *sql; /* part of the statement, or NULL: any */
  const char *step;
} allowed[] = {
  { "FROM piece_line AS l ORDER BY l.place DESC LIMIT", "SCAN l" }, /* ends at LIMIT */
  { "LIMIT", "SCAN w" },                                            /* one page */
  { "FROM edit ORDER BY id DESC LIMIT 1", "SCAN edit USING" },      /* one row */
  { "MATCH", "SCAN piece_word VIRTUAL TABLE INDEX" }, /* FTS5's own search */
  { "WHERE rowid = ?1", "SCAN piece_word VIRTUAL TABLE INDEX 0:=" },
  { NULL, "SCAN CONSTANT ROW" },
  { NULL, "SCAN (subquery" },
  /* Sorts of the few rows of one piece, visit or check, and of the ranked 2,000. */
  { "piece_id = ?1", "USE TEMP B-TREE" },
  { "e.piece_id IS ?1", "USE TEMP B-TREE" },
  { "= ?1 ORDER BY id", "USE TEMP B-TREE" },
  { "ORDER BY rank", "USE TEMP B-TREE" },
  /* By time and key: only the rows of one moment are sorted. */
  { "ORDER BY l.next_check_on, l.place DESC", "USE TEMP B-TREE FOR RIGHT PART" },
};

static gboolean
is_allowed (const char *sql, const char *step)
{
  if (!g_str_has_prefix (step, "SCAN ") && !g_str_has_prefix (step, "USE TEMP B-TREE"))
    return TRUE;
  for (guint i = 0; i < G_N_ELEMENTS (allowed); i++)
    if (g_str_has_prefix (step, allowed[i].step)
        && (allowed[i].sql == NULL || strstr (sql, allowed[i].sql) != NULL))
      return TRUE;
  return FALSE;
}

/* The statements the connection has run and keeps; returns how many. */
static guint
check_plans (WmDatabase *db)
{
  guint n = 0;

  for (sqlite3_stmt *stmt = NULL;
       (stmt = sqlite3_next_stmt (wm_database_get_handle (db), stmt)) != NULL;)
    {
      const char *sql = sqlite3_sql (stmt);
      g_autofree char *plan = NULL;
      g_auto (GStrv) steps = NULL;

      /* FTS5 keeps statements of its own; the schema is read whole once. */
      if (!g_str_has_prefix (sql, "SELECT") || strstr (sql, "sqlite_schema") != NULL
          || strstr (sql, "main") != NULL)
        continue;
      plan = explain (db, sql);
      steps = g_strsplit (plan, "\n", -1);
      n++;
      for (guint i = 0; steps[i] != NULL; i++)
        if (!is_allowed (sql, steps[i]))
          {
            g_test_message ("%s\n%s", sql, plan);
            g_test_fail ();
          }
    }
  return n;
}

/* No list and no edit may read a table from end to end, or sort it. */
static void
test_plans (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmPiece) piece = add_known_piece (f);
  g_auto (WmReader) reader = { NULL };
  guint n;

  g_ptr_array_unref (search (f, NULL));
  g_ptr_array_unref (
      wm_archive_search (f->archive, "r", WM_PIECES_ON_BENCH, NULL, 0, 50, NULL));
  g_ptr_array_unref (
      wm_archive_search (f->archive, "", WM_PIECES_DUE, "2030-01-01", 0, 50, NULL));
  g_ptr_array_unref (search (f, "ring"));
  g_ptr_array_unref (wm_archive_list_events (f->archive, fixture_id (piece), NULL));
  g_assert_true (wm_archive_undo (f->archive, fixture_id (piece), NULL, NULL, NULL));
  g_assert_true (wm_archive_redo (f->archive, fixture_id (piece), NULL, NULL, NULL));
  fixture_remove (f, "Remove", fixture_id (piece), piece);
  g_assert_true (wm_archive_take_reader (f->archive, &reader, NULL));

  n = check_plans (reader.db) + check_plans (f->archive->writer);
  g_assert_cmpuint (n, >, 20);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  fixture_add ("/archive/search/words", test_words);
  fixture_add ("/archive/search/harmless", test_words_are_harmless);
  fixture_add ("/archive/search/follows-edits", test_words_follow_edits);
  fixture_add ("/archive/search/names-of-trade", test_names_of_trade);
  fixture_add ("/archive/list/severity", test_severity);
  fixture_add ("/archive/list/which", test_lists);
  fixture_add ("/archive/list/many", test_many);
  fixture_add ("/archive/search/plans", test_plans);
  return g_test_run ();
}
