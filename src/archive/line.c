/* line.c: the list of pieces, made from the records
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "archive/line.h"

#include "archive/line-made.h"
#include "archive/words.h"

/* Places a second: more pieces than that are taken in in one second only by a
 * program, and then the next second's places are used. */
#define WM_PLACES_A_SECOND 4096
/* 2^50 / 4096 s, year 10680: keeps a nonsense date from overflowing. */
#define WM_LAST_SECOND (G_GINT64_CONSTANT (1) << 38)

static gboolean
remove_line (WmDatabase *db, const WmId *piece_id, gint64 place, GError **error)
{
  g_autoptr (WmStatement) remove =
      wm_database_prepare (db, "DELETE FROM piece_line WHERE piece_id = ?1", error);

  if (remove == NULL)
    return FALSE;
  wm_statement_bind_id (remove, 1, piece_id);
  return wm_statement_run (remove, error) && wm_words_remove (db, place, error);
}

/* The first free place of the second, or of the seconds after it. */
static gboolean
find_place (WmDatabase *db, gint64 second, gint64 *out_place, GError **error)
{
  gint64 first = second * WM_PLACES_A_SECOND;
  g_autoptr (WmStatement) last = wm_database_prepare (
      db, "SELECT max (place) FROM piece_line WHERE place BETWEEN ?1 AND ?2", error);

  if (last == NULL)
    return FALSE;
  for (;; first += WM_PLACES_A_SECOND)
    {
      g_autoptr (GError) problem = NULL;

      wm_statement_bind_int64 (last, 1, first);
      wm_statement_bind_int64 (last, 2, first + WM_PLACES_A_SECOND - 1);
      if (!wm_statement_next (last, &problem))
        {
          g_propagate_error (error, g_steal_pointer (&problem));
          return FALSE;
        }
      *out_place =
          wm_statement_is_null (last, 0) ? first : wm_statement_get_int64 (last, 0) + 1;
      wm_statement_rewind (last);
      if (*out_place < first + WM_PLACES_A_SECOND)
        return TRUE;
    }
}

static gboolean
write_line (WmDatabase *db, const WmId *piece_id, const WmLine *line, GError **error)
{
  const char *texts[] = { line->number, line->type, line->owner_name, line->description };
  const char *more[] = { line->moment, line->promised_on, line->next_check_on,
                         line->photo_sha256, line->photo_format };
  g_autoptr (WmStatement) put = wm_database_prepare (
      db,
      "INSERT OR REPLACE INTO piece_line (place, piece_id, number, type, owner_name,"
      " description, severity, on_bench, taken_in_at_s, handed_back_at_s, moment,"
      " promised_on, next_check_on, photo_sha256, photo_format)"
      " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15)",
      error);

  if (put == NULL)
    return FALSE;
  wm_statement_bind_int64 (put, 1, line->place);
  wm_statement_bind_id (put, 2, piece_id);
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    wm_statement_bind_text (put, 3 + i, texts[i]);
  wm_statement_bind_int64 (put, 7, line->severity);
  wm_statement_bind_int64 (put, 8, line->on_bench);
  if (line->taken_in_at_s != WM_UNKNOWN)
    wm_statement_bind_int64 (put, 9, line->taken_in_at_s);
  if (line->handed_back_at_s != WM_UNKNOWN)
    wm_statement_bind_int64 (put, 10, line->handed_back_at_s);
  for (guint i = 0; i < G_N_ELEMENTS (more); i++)
    wm_statement_bind_text (put, 11 + i, more[i]);
  return wm_statement_run (put, error);
}

/* Where the line belongs: the second of the last take-in, else of the record. */
static gint64
get_second (const WmLine *line, gint64 made_at_us)
{
  gint64 second = line->taken_in_at_s != WM_UNKNOWN ? line->taken_in_at_s
                                                    : made_at_us / G_USEC_PER_SEC;

  return CLAMP (second, 0, WM_LAST_SECOND);
}

gboolean
wm_line_refresh (WmDatabase *db, WmTrade *trade, const WmId *piece_id, GError **error)
{
  g_auto (WmRow) piece = { NULL };
  g_auto (WmLine) kept = { -1 };
  g_auto (WmLine) line = { -1 };
  gint64 second;

  if (!wm_row_load (db, WM_KIND_PIECE, piece_id, &piece, error)
      || !wm_line_load (db, piece_id, &kept, error))
    return FALSE;
  if (piece.record == NULL)
    return kept.place < 0 || remove_line (db, piece_id, kept.place, error);
  if (!wm_line_make (db, WM_PIECE (piece.record), &line, error))
    return FALSE;

  second = get_second (&line, piece.made_at_us);
  line.place = kept.place;
  /* A crowded second may have put it later: it only moves when its second does. */
  if (kept.place >= 0 && second != get_second (&kept, piece.made_at_us))
    {
      if (!remove_line (db, piece_id, kept.place, error))
        return FALSE;
      line.place = -1;
    }
  if (line.place < 0 && !find_place (db, second, &line.place, error))
    return FALSE;
  if ((line.place != kept.place || wm_line_find_difference (&line, &kept) != NULL)
      && !write_line (db, piece_id, &line, error))
    return FALSE;
  return wm_words_put (db, trade, line.place, WM_PIECE (piece.record), line.owner_name,
                       error);
}

char *
wm_line_compare (WmDatabase *db, const WmId *piece_id, GError **error)
{
  g_auto (WmRow) piece = { NULL };
  g_auto (WmLine) kept = { -1 };
  g_auto (WmLine) line = { -1 };
  const char *difference;

  if (!wm_row_load (db, WM_KIND_PIECE, piece_id, &piece, error)
      || !wm_line_load (db, piece_id, &kept, error))
    return NULL;
  if (piece.record == NULL || kept.place < 0)
    return g_strdup ("is not in the list of pieces");
  if (!wm_line_make (db, WM_PIECE (piece.record), &line, error))
    return NULL;
  difference = wm_line_find_difference (&line, &kept);
  return difference != NULL ? g_strdup_printf (
             "its line in the list of pieces has another %s", difference)
                            : NULL;
}

/* ---- which lines a change touches --------------------------------------- */

static void
add_id (GHashTable *ids, const WmId *id)
{
  if (!wm_id_is_none (id) && !g_hash_table_contains (ids, id))
    g_hash_table_add (ids, g_memdup2 (id, sizeof *id));
}

static gboolean
add_pieces_of (WmDatabase *db, const char *sql, const WmId *id, GHashTable *pieces,
               GError **error)
{
  g_autoptr (WmStatement) select = wm_database_prepare (db, sql, error);
  g_autoptr (GError) problem = NULL;

  if (select == NULL)
    return FALSE;
  wm_statement_bind_id (select, 1, id);
  while (wm_statement_next (select, &problem))
    {
      WmId piece_id = wm_statement_get_id (select, 0);

      add_id (pieces, &piece_id);
    }
  if (problem == NULL)
    return TRUE;
  g_propagate_error (error, g_steal_pointer (&problem));
  return FALSE;
}

static gboolean
add_pieces_of_record (WmDatabase *db, WmRecord *record, GHashTable *pieces,
                      GError **error)
{
  WmKind kind = wm_record_get_kind (record);
  const char *field = kind == WM_KIND_PHOTO || kind == WM_KIND_CHECK         ? "visit_id"
                      : kind == WM_KIND_VISIT || kind == WM_KIND_STONE_GROUP ? "piece_id"
                                                                             : NULL;
  const WmId *id = field != NULL
                       ? wm_record_get_member (record, wm_kind_find_field (kind, field))
                       : wm_record_get_id (record);

  switch (kind)
    {
    case WM_KIND_PIECE:
    case WM_KIND_VISIT:
    case WM_KIND_STONE_GROUP:
      add_id (pieces, id);
      return TRUE;
    case WM_KIND_PHOTO:
    case WM_KIND_CHECK:
      /* A visit removed by the same edit is in its changes too. */
      return add_pieces_of (db, "SELECT piece_id FROM visit WHERE id = ?1", id, pieces,
                            error);
    case WM_KIND_PERSON:
      return add_pieces_of (db, "SELECT id FROM piece WHERE owner_id = ?1", id, pieces,
                            error);
    default:
      return TRUE;
    }
}

gboolean
wm_lines_refresh_changed (WmDatabase *db, WmTrade *trade, GPtrArray *changes,
                          GError **error)
{
  g_autoptr (GHashTable) pieces =
      g_hash_table_new_full (wm_id_hash, wm_id_equal_func, g_free, NULL);
  GHashTableIter iter;
  gpointer id;

  for (guint i = 0; i < changes->len; i++)
    {
      const WmRowChange *change = changes->pdata[i];

      if ((change->before.record != NULL
           && !add_pieces_of_record (db, change->before.record, pieces, error))
          || (change->after.record != NULL
              && !add_pieces_of_record (db, change->after.record, pieces, error)))
        return FALSE;
    }

  g_hash_table_iter_init (&iter, pieces);
  while (g_hash_table_iter_next (&iter, &id, NULL))
    if (!wm_line_refresh (db, trade, id, error))
      return FALSE;
  return TRUE;
}
