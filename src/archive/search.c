/* search.c: the list of pieces, whole or by words
 *
 * Measured: ranking scores every match before it can sort, 200 ms and more for one
 * letter over 100,000 pieces; newest first stops at the limit. So ranking is for few
 * matches only.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "archive/archive-private.h"

#include "archive/words.h"

/* Matches up to which ranking takes a few milliseconds (our own measurement). */
#define WM_RANK_MAX 2000
#define WM_STRING(x) #x
#define WM_TEXT(x) WM_STRING (x)

G_DEFINE_FINAL_TYPE (WmPieceRow, wm_piece_row, G_TYPE_OBJECT)

static void
wm_piece_row_finalize (GObject *object)
{
  WmPieceRow *self = WM_PIECE_ROW (object);

  g_free (self->number);
  g_free (self->type);
  g_free (self->owner_name);
  g_free (self->description);
  g_free (self->moment);
  g_free (self->promised_on);
  g_free (self->next_check_on);
  g_free (self->photo_sha256);
  g_free (self->photo_format);

  G_OBJECT_CLASS (wm_piece_row_parent_class)->finalize (object);
}

static void
wm_piece_row_class_init (WmPieceRowClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = wm_piece_row_finalize;
}

static void
wm_piece_row_init (WmPieceRow *self)
{
}

/* ---- the queries -------------------------------------------------------- */

#define COLUMNS                                                                          \
  "SELECT l.piece_id, l.number, l.type, l.owner_name, l.description, l.severity,"        \
  " l.on_bench, l.taken_in_at_s, l.handed_back_at_s, l.moment, l.promised_on,"           \
  " l.next_check_on, l.photo_sha256, l.photo_format"

/* ?1 words, ?2 due by, ?3 limit, ?4 offset. The bench and what is due are short lists:
 * each of their rows is asked whether it has the words. */
#define HAS_WORDS                                                                        \
  " AND EXISTS (SELECT 1 FROM piece_word WHERE piece_word MATCH ?1 AND rowid = l.place)"
#define BENCH " FROM piece_line AS l WHERE l.on_bench = 1"
#define DUE                                                                              \
  " FROM piece_line AS l WHERE l.on_bench = 0 AND l.next_check_on IS NOT NULL"           \
  " AND l.next_check_on <= ?2"
#define PAGE " LIMIT ?3 OFFSET ?4"
#define NEWEST " ORDER BY l.place DESC" PAGE
#define SOONEST " ORDER BY l.next_check_on, l.place DESC" PAGE

static const char *const plain_sql[] = {
  [WM_PIECES_ALL] = COLUMNS " FROM piece_line AS l" NEWEST,
  [WM_PIECES_ON_BENCH] = COLUMNS BENCH NEWEST,
  [WM_PIECES_DUE] = COLUMNS DUE SOONEST,
};

static const char *const words_sql[] = {
  [WM_PIECES_ON_BENCH] = COLUMNS BENCH HAS_WORDS NEWEST,
  [WM_PIECES_DUE] = COLUMNS DUE HAS_WORDS SOONEST,
};

/* CROSS JOIN keeps the order: first the words, sorted and cut off, then their lines. */
static const char newest_sql[] =
    COLUMNS " FROM (SELECT rowid AS place FROM piece_word WHERE piece_word MATCH ?1"
            " ORDER BY rowid DESC" PAGE ") AS w"
            " CROSS JOIN piece_line AS l ON l.place = w.place";

static const char ranked_sql[] =
    COLUMNS " FROM (SELECT rowid AS place FROM piece_word WHERE piece_word MATCH ?1"
            " ORDER BY rank, rowid DESC" PAGE ") AS w"
            " CROSS JOIN piece_line AS l ON l.place = w.place";

static const char few_sql[] =
    "SELECT count (*) FROM (SELECT 1 FROM piece_word WHERE piece_word MATCH ?1"
    " LIMIT " WM_TEXT (WM_RANK_MAX) " + 1)";

static gint64
get_int (WmStatement *statement, int column)
{
  return wm_statement_is_null (statement, column)
             ? WM_UNKNOWN
             : wm_statement_get_int64 (statement, column);
}

static WmPieceRow *
read_row (WmStatement *select)
{
  WmPieceRow *row = g_object_new (WM_TYPE_PIECE_ROW, NULL);

  row->piece_id = wm_statement_get_id (select, 0);
  row->number = g_strdup (wm_statement_get_text (select, 1));
  row->type = g_strdup (wm_statement_get_text (select, 2));
  row->owner_name = g_strdup (wm_statement_get_text (select, 3));
  row->description = g_strdup (wm_statement_get_text (select, 4));
  row->severity = (int)wm_statement_get_int64 (select, 5);
  row->on_bench = wm_statement_get_int64 (select, 6) != 0;
  row->taken_in_at_s = get_int (select, 7);
  row->handed_back_at_s = get_int (select, 8);
  row->moment = g_strdup (wm_statement_get_text (select, 9));
  row->promised_on = g_strdup (wm_statement_get_text (select, 10));
  row->next_check_on = g_strdup (wm_statement_get_text (select, 11));
  row->photo_sha256 = g_strdup (wm_statement_get_text (select, 12));
  row->photo_format = g_strdup (wm_statement_get_text (select, 13));
  return row;
}

/* Whether there are so few matches that they may be ranked. */
static gboolean
find_out_if_few (WmDatabase *db, const char *match, gboolean *out_few, GError **error)
{
  g_autoptr (WmStatement) count = wm_database_prepare (db, few_sql, error);

  if (count == NULL)
    return FALSE;
  wm_statement_bind_text (count, 1, match);
  if (!wm_statement_next (count, error))
    return FALSE;
  *out_few = wm_statement_get_int64 (count, 0) <= WM_RANK_MAX;
  return TRUE;
}

static const char *
choose_sql (WmDatabase *db, WmPieces which, const char *match, GError **error)
{
  gboolean few;

  if (match == NULL)
    return plain_sql[which];
  if (which != WM_PIECES_ALL)
    return words_sql[which];
  if (!find_out_if_few (db, match, &few, error))
    return NULL;
  return few ? ranked_sql : newest_sql;
}

GPtrArray *
wm_archive_search (WmArchive *self, const char *words, WmPieces which, const char *due_by,
                   guint offset, guint limit, GError **error)
{
  g_autofree char *match = wm_words_to_match (words);
  g_autoptr (GPtrArray) rows = g_ptr_array_new_with_free_func (g_object_unref);
  g_auto (WmReader) reader = { NULL };
  g_autoptr (WmStatement) select = NULL;
  g_autoptr (GError) problem = NULL;
  const char *sql;

  g_return_val_if_fail (which != WM_PIECES_DUE || due_by != NULL, NULL);
  if (!wm_archive_take_reader (self, &reader, error))
    return NULL;
  sql = choose_sql (reader.db, which, match, error);
  select = sql != NULL ? wm_database_prepare (reader.db, sql, error) : NULL;
  if (select == NULL)
    return NULL;
  if (match != NULL)
    wm_statement_bind_text (select, 1, match);
  if (which == WM_PIECES_DUE)
    wm_statement_bind_text (select, 2, due_by);
  wm_statement_bind_int64 (select, 3, limit);
  wm_statement_bind_int64 (select, 4, offset);
  while (wm_statement_next (select, &problem))
    g_ptr_array_add (rows, read_row (select));
  if (problem == NULL)
    return g_steal_pointer (&rows);
  g_propagate_error (error, g_steal_pointer (&problem));
  return NULL;
}

gint64
wm_archive_count (WmArchive *self, WmPieces which, const char *due_by)
{
  static const char *const sql[] = {
    [WM_PIECES_ALL] = "SELECT count (*) FROM piece_line",
    [WM_PIECES_ON_BENCH] = "SELECT count (*)" BENCH,
    [WM_PIECES_DUE] = "SELECT count (*)" DUE,
  };
  g_auto (WmReader) reader = { NULL };
  g_autoptr (WmStatement) count = NULL;

  g_return_val_if_fail (which != WM_PIECES_DUE || due_by != NULL, 0);
  if (!wm_archive_take_reader (self, &reader, NULL))
    return 0;
  count = wm_database_prepare (reader.db, sql[which], NULL);
  if (count == NULL)
    return 0;
  if (which == WM_PIECES_DUE)
    wm_statement_bind_text (count, 2, due_by);
  return wm_statement_next (count, NULL) ? wm_statement_get_int64 (count, 0) : 0;
}
