/* words.c: the words a piece is found by, and the words typed to find it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "archive/words.h"

#include <string.h>

#include "record/record.h"

/* More words than a person types; more letters than a word has. */
#define WM_WORDS_MAX 16
#define WM_WORD_BYTES_MAX 100

enum
{
  NUMBER,
  OWNER,
  PLAIN_KIND,
  METAL,
  STONES,
  PLAIN_WORDS,
  FAULTS,
  N_COLUMNS
};

static void
add_words (GString *text, const char *words)
{
  if (words == NULL)
    return;
  if (text->len > 0)
    g_string_append_c (text, ' ');
  g_string_append (text, words);
}

/* A name of the tables in English and in the language of the program. */
static void
add_name (GString *text, const char *name)
{
  const char *translated = wm_trade_text (name);

  add_words (text, name);
  if (translated != name)
    add_words (text, translated);
}

/* "2026-0151-Q" is also found by "20260151Q" and by "151". */
static void
add_number (GString *text, const char *number)
{
  g_auto (GStrv) parts = g_strsplit (number != NULL ? number : "", "-", 4);
  g_autofree char *joined = g_strjoinv ("", parts);

  add_words (text, number);
  if (parts[0] == NULL || parts[1] == NULL)
    return;
  add_words (text, joined);
  add_words (text, parts[1] + strspn (parts[1], "0"));
}

static gboolean
add_rows (WmDatabase *db, const char *sql, const WmId *piece_id,
          void (*add) (GString *, WmStatement *, WmTrade *), GString *text,
          WmTrade *trade, GError **error)
{
  g_autoptr (WmStatement) select = wm_database_prepare (db, sql, error);
  g_autoptr (GError) problem = NULL;

  if (select == NULL)
    return FALSE;
  wm_statement_bind_id (select, 1, piece_id);
  while (wm_statement_next (select, &problem))
    add (text, select, trade);
  if (problem == NULL)
    return TRUE;
  g_propagate_error (error, g_steal_pointer (&problem));
  return FALSE;
}

static void
add_stone (GString *text, WmStatement *row, WmTrade *trade)
{
  const char *species = wm_statement_get_text (row, 0);
  const WmStone *stone =
      trade != NULL && species != NULL ? wm_trade_find_stone (trade, species) : NULL;

  add_words (text, species);
  if (stone != NULL)
    add_name (text, stone->name);
  add_words (text, wm_statement_get_text (row, 1));
}

static void
add_fault (GString *text, WmStatement *row, WmTrade *trade)
{
  add_words (text, wm_statement_get_text (row, 0));
  add_words (text, wm_statement_get_text (row, 1));
}

static gboolean
make_words (WmDatabase *db, WmTrade *trade, WmPiece *piece, const char *owner_name,
            GString **columns, GError **error)
{
  const WmId *id = wm_record_get_id (WM_RECORD (piece));
  const WmPieceType *type = trade != NULL && piece->type != NULL
                                ? wm_trade_find_piece_type (trade, piece->type)
                                : NULL;
  const WmMetal *metal = trade != NULL && piece->metal != NULL
                             ? wm_trade_find_metal (trade, piece->metal)
                             : NULL;

  add_number (columns[NUMBER], piece->number);
  add_words (columns[OWNER], owner_name);
  add_words (columns[PLAIN_KIND], piece->type);
  if (type != NULL)
    add_name (columns[PLAIN_KIND], type->name);
  add_words (columns[METAL], piece->metal);
  if (metal != NULL)
    add_name (columns[METAL], metal->name);
  if (piece->fineness != WM_UNKNOWN)
    g_string_append_printf (columns[METAL], " %" G_GINT64_FORMAT, piece->fineness);
  add_words (columns[PLAIN_WORDS], piece->description);
  add_words (columns[PLAIN_WORDS], piece->unlike);
  return add_rows (db,
                   "SELECT species, note FROM stone_group WHERE piece_id = ?1"
                   " ORDER BY position, id",
                   id, add_stone, columns[STONES], trade, error)
         && add_rows (db,
                      "SELECT DISTINCT coalesce (c.fault, c.title), c.note"
                      " FROM visit AS v JOIN \"check\" AS c ON c.visit_id = v.id"
                      " WHERE v.piece_id = ?1 AND c.severity BETWEEN 2 AND 4"
                      " ORDER BY c.position, c.id",
                      id, add_fault, columns[FAULTS], trade, error);
}

/* Whether the words are there, and whether they are the same. */
static gboolean
look_up (WmDatabase *db, gint64 place, GString **columns, gboolean *out_there,
         gboolean *out_same, GError **error)
{
  g_autoptr (GError) problem = NULL;
  g_autoptr (WmStatement) select = wm_database_prepare (
      db,
      "SELECT number, owner, kind, metal, stones, words, faults FROM piece_word"
      " WHERE rowid = ?1",
      error);

  if (select == NULL)
    return FALSE;
  wm_statement_bind_int64 (select, 1, place);
  *out_there = *out_same = wm_statement_next (select, &problem);
  for (int i = 0; *out_same && i < N_COLUMNS; i++)
    *out_same = g_strcmp0 (wm_statement_get_text (select, i), columns[i]->str) == 0;
  if (problem == NULL)
    return TRUE;
  g_propagate_error (error, g_steal_pointer (&problem));
  return FALSE;
}

static gboolean
insert_words (WmDatabase *db, gint64 place, GString **columns, GError **error)
{
  g_autoptr (WmStatement) insert = wm_database_prepare (
      db,
      "INSERT INTO piece_word (rowid, number, owner, kind, metal, stones, words, faults)"
      " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)",
      error);

  if (insert == NULL)
    return FALSE;
  wm_statement_bind_int64 (insert, 1, place);
  for (int i = 0; i < N_COLUMNS; i++)
    wm_statement_bind_text (insert, i + 2, columns[i]->str);
  return wm_statement_run (insert, error);
}

gboolean
wm_words_put (WmDatabase *db, WmTrade *trade, gint64 place, WmPiece *piece,
              const char *owner_name, GError **error)
{
  GString *columns[N_COLUMNS];
  gboolean is_there = FALSE;
  gboolean is_same = FALSE;
  gboolean is_done;

  for (int i = 0; i < N_COLUMNS; i++)
    columns[i] = g_string_new (NULL);
  is_done = make_words (db, trade, piece, owner_name, columns, error)
            && look_up (db, place, columns, &is_there, &is_same, error)
            && (is_same
                || ((!is_there || wm_words_remove (db, place, error))
                    && insert_words (db, place, columns, error)));
  for (int i = 0; i < N_COLUMNS; i++)
    g_string_free (columns[i], TRUE);
  return is_done;
}

gboolean
wm_words_remove (WmDatabase *db, gint64 place, GError **error)
{
  g_autoptr (WmStatement) remove =
      wm_database_prepare (db, "DELETE FROM piece_word WHERE rowid = ?1", error);

  if (remove == NULL)
    return FALSE;
  wm_statement_bind_int64 (remove, 1, place);
  return wm_statement_run (remove, error);
}

/* ---- what was typed ----------------------------------------------------- */

/* A letter, digit or accent, as FTS5's unicode61 counts them. */
static gboolean
is_word_char (gunichar c)
{
  return g_unichar_isalnum (c) || g_unichar_ismark (c)
         || g_unichar_type (c) == G_UNICODE_PRIVATE_USE;
}

char *
wm_words_to_match (const char *typed)
{
  g_autofree char *text = g_utf8_make_valid (typed != NULL ? typed : "", -1);
  g_autoptr (GString) match = g_string_new (NULL);
  const char *end = text;

  for (guint n = 0; n < WM_WORDS_MAX; n++)
    {
      const char *start = end;

      while (*start != '\0' && !g_unichar_isalnum (g_utf8_get_char (start)))
        start = g_utf8_next_char (start);
      if (*start == '\0')
        break;
      for (end = start; *end != '\0' && is_word_char (g_utf8_get_char (end))
                        && end - start < WM_WORD_BYTES_MAX;)
        end = g_utf8_next_char (end);
      /* Quoted, so that AND, NEAR or a column's name is a word like any other; the
       * star makes it the beginning of one. No quote is in it: it is all letters. */
      g_string_append_printf (match, "%s\"%.*s\"*", match->len > 0 ? " " : "",
                              (int)(end - start), start);
    }
  return match->len > 0 ? g_strdup (match->str) : NULL;
}
