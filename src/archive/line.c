/* line.c: the list of pieces, made from the records
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "archive/line.h"

#include <string.h>

#include "archive/words.h"
#include "reckon/severity.h"

/* Places a second: more pieces than that are taken in in one second only by a
 * program, and then the next second's places are used. */
#define WM_PLACES_A_SECOND 4096
/* 2^50 / 4096 s, year 10680: keeps a nonsense date from overflowing. */
#define WM_LAST_SECOND (G_GINT64_CONSTANT (1) << 38)

typedef struct
{
  gint64 place; /* -1: none yet */
  char *number;
  char *type;
  char *owner_name;
  char *description;
  gint64 severity;
  gint64 on_bench;
  gint64 taken_in_at_s;
  gint64 handed_back_at_s;
  char *moment;
  char *promised_on;
  char *next_check_on;
  char *photo_sha256;
  char *photo_format;
} Line;

static void
line_clear (Line *line)
{
  g_free (line->number);
  g_free (line->type);
  g_free (line->owner_name);
  g_free (line->description);
  g_free (line->moment);
  g_free (line->promised_on);
  g_free (line->next_check_on);
  g_free (line->photo_sha256);
  g_free (line->photo_format);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Line, line_clear)

/* ---- made from the records ---------------------------------------------- */

static gint64
get_int (WmStatement *statement, int column)
{
  return wm_statement_is_null (statement, column)
             ? WM_UNKNOWN
             : wm_statement_get_int64 (statement, column);
}

/* One row of a query about @id, or none. */
static WmStatement *
ask (WmDatabase *db, const char *sql, const WmId *id, gboolean *out_row, GError **error)
{
  g_autoptr (WmStatement) statement = wm_database_prepare (db, sql, error);
  g_autoptr (GError) problem = NULL;

  if (statement == NULL)
    return NULL;
  wm_statement_bind_id (statement, 1, id);
  *out_row = wm_statement_next (statement, &problem);
  if (problem == NULL)
    return g_steal_pointer (&statement);
  g_propagate_error (error, g_steal_pointer (&problem));
  return NULL;
}

static gboolean
make_from_visit (WmDatabase *db, const WmId *piece_id, Line *line, WmId *out_visit_id,
                 GError **error)
{
  gboolean has_row;
  g_autoptr (WmStatement) last = ask (
      db,
      "SELECT id, taken_in_at_s, handed_back_at_s, moment, promised_on, next_check_on,"
      " EXISTS (SELECT 1 FROM visit WHERE piece_id = ?1 AND handed_back_at_s IS NULL)"
      " FROM visit WHERE piece_id = ?1 ORDER BY taken_in_at_s DESC, id DESC LIMIT 1",
      piece_id, &has_row, error);

  if (last == NULL)
    return FALSE;
  if (!has_row)
    return TRUE;
  *out_visit_id = wm_statement_get_id (last, 0);
  line->taken_in_at_s = get_int (last, 1);
  line->handed_back_at_s = get_int (last, 2);
  line->moment = g_strdup (wm_statement_get_text (last, 3));
  line->promised_on = g_strdup (wm_statement_get_text (last, 4));
  line->next_check_on = g_strdup (wm_statement_get_text (last, 5));
  line->on_bench = wm_statement_get_int64 (last, 6);
  return TRUE;
}

/* The worst finding as it is now; else not looked at while a check is open; else
 * sound: nothing is claimed that was not looked at. 5 is "not present", no finding. */
static gboolean
make_severity (WmDatabase *db, const WmId *visit_id, Line *line, GError **error)
{
  gboolean has_row;
  g_autoptr (WmStatement) worst
      = ask (db,
             "SELECT max (now), min (now) FROM (SELECT CASE WHEN after_severity > 0"
             " THEN after_severity ELSE severity END AS now"
             " FROM \"check\" WHERE visit_id = ?1) WHERE now <> 5",
             visit_id, &has_row, error);

  if (worst == NULL)
    return FALSE;
  line->severity = wm_statement_get_int64 (worst, 0);
  if (line->severity == WM_SEVERITY_SOUND
      && wm_statement_get_int64 (worst, 1) == WM_SEVERITY_NOT_LOOKED_AT)
    line->severity = WM_SEVERITY_NOT_LOOKED_AT;
  return TRUE;
}

/* The last visit's photos stand for the piece: as it is now before as it came. */
static gboolean
make_photo (WmDatabase *db, const WmId *piece_id, Line *line, GError **error)
{
  gboolean has_row;
  g_autoptr (WmStatement) photo
      = ask (db,
             "SELECT p.sha256, p.format FROM visit AS v JOIN photo AS p"
             " ON p.visit_id = v.id WHERE v.piece_id = ?1"
             " ORDER BY v.taken_in_at_s DESC, v.id DESC,"
             " CASE p.moment WHEN 'after' THEN 0 WHEN 'before' THEN 1 ELSE 2 END,"
             " p.position, p.id LIMIT 1",
             piece_id, &has_row, error);

  if (photo == NULL)
    return FALSE;
  if (has_row)
    {
      line->photo_sha256 = g_strdup (wm_statement_get_text (photo, 0));
      line->photo_format = g_strdup (wm_statement_get_text (photo, 1));
    }
  return TRUE;
}

static gboolean
make_line (WmDatabase *db, WmPiece *piece, Line *line, GError **error)
{
  const WmId *piece_id = wm_record_get_id (WM_RECORD (piece));
  g_auto (WmRow) owner = { NULL };
  WmId visit_id = WM_ID_NONE;

  line->place = -1;
  line->taken_in_at_s = line->handed_back_at_s = WM_UNKNOWN;
  line->number = g_strdup (piece->number);
  line->type = g_strdup (piece->type);
  line->description = g_strdup (piece->description);
  if (!wm_id_is_none (&piece->owner_id)
      && !wm_row_load (db, WM_KIND_PERSON, &piece->owner_id, &owner, error))
    return FALSE;
  if (owner.record != NULL)
    line->owner_name = g_strdup (WM_PERSON (owner.record)->name);

  if (!make_from_visit (db, piece_id, line, &visit_id, error))
    return FALSE;
  return wm_id_is_none (&visit_id)
         || (make_severity (db, &visit_id, line, error)
             && make_photo (db, piece_id, line, error));
}

/* ---- as it is kept ------------------------------------------------------ */

static gboolean
load_line (WmDatabase *db, const WmId *piece_id, Line *line, GError **error)
{
  gboolean has_row;
  g_autoptr (WmStatement) kept
      = ask (db,
             "SELECT place, number, type, owner_name, description, severity, on_bench,"
             " taken_in_at_s, handed_back_at_s, moment, promised_on, next_check_on,"
             " photo_sha256, photo_format FROM piece_line WHERE piece_id = ?1",
             piece_id, &has_row, error);

  line->place = -1;
  if (kept == NULL)
    return FALSE;
  if (!has_row)
    return TRUE;
  line->place = wm_statement_get_int64 (kept, 0);
  line->number = g_strdup (wm_statement_get_text (kept, 1));
  line->type = g_strdup (wm_statement_get_text (kept, 2));
  line->owner_name = g_strdup (wm_statement_get_text (kept, 3));
  line->description = g_strdup (wm_statement_get_text (kept, 4));
  line->severity = wm_statement_get_int64 (kept, 5);
  line->on_bench = wm_statement_get_int64 (kept, 6);
  line->taken_in_at_s = get_int (kept, 7);
  line->handed_back_at_s = get_int (kept, 8);
  line->moment = g_strdup (wm_statement_get_text (kept, 9));
  line->promised_on = g_strdup (wm_statement_get_text (kept, 10));
  line->next_check_on = g_strdup (wm_statement_get_text (kept, 11));
  line->photo_sha256 = g_strdup (wm_statement_get_text (kept, 12));
  line->photo_format = g_strdup (wm_statement_get_text (kept, 13));
  return TRUE;
}

/* NULL if the same, else the name of what differs. The place is not compared. */
static const char *
find_difference (const Line *a, const Line *b)
{
  const struct
  {
    const char *name;
    const char *a, *b;
  } texts[] = {
    { "number", a->number, b->number },
    { "type", a->type, b->type },
    { "owner_name", a->owner_name, b->owner_name },
    { "description", a->description, b->description },
    { "moment", a->moment, b->moment },
    { "promised_on", a->promised_on, b->promised_on },
    { "next_check_on", a->next_check_on, b->next_check_on },
    { "photo_sha256", a->photo_sha256, b->photo_sha256 },
    { "photo_format", a->photo_format, b->photo_format },
  };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    if (g_strcmp0 (texts[i].a, texts[i].b) != 0)
      return texts[i].name;
  if (a->severity != b->severity)
    return "severity";
  if (a->on_bench != b->on_bench)
    return "on_bench";
  if (a->taken_in_at_s != b->taken_in_at_s)
    return "taken_in_at_s";
  return a->handed_back_at_s != b->handed_back_at_s ? "handed_back_at_s" : NULL;
}

static gboolean
remove_line (WmDatabase *db, const WmId *piece_id, gint64 place, GError **error)
{
  g_autoptr (WmStatement) remove
      = wm_database_prepare (db, "DELETE FROM piece_line WHERE piece_id = ?1", error);

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
      *out_place = wm_statement_is_null (last, 0) ? first
                                                  : wm_statement_get_int64 (last, 0) + 1;
      wm_statement_rewind (last);
      if (*out_place < first + WM_PLACES_A_SECOND)
        return TRUE;
    }
}

static gboolean
write_line (WmDatabase *db, const WmId *piece_id, const Line *line, GError **error)
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
get_second (const Line *line, gint64 made_at_us)
{
  gint64 second = line->taken_in_at_s != WM_UNKNOWN ? line->taken_in_at_s
                                                    : made_at_us / G_USEC_PER_SEC;

  return CLAMP (second, 0, WM_LAST_SECOND);
}

gboolean
wm_line_refresh (WmDatabase *db, WmTrade *trade, const WmId *piece_id, GError **error)
{
  g_auto (WmRow) piece = { NULL };
  g_auto (Line) kept = { -1 };
  g_auto (Line) line = { -1 };
  gint64 second;

  if (!wm_row_load (db, WM_KIND_PIECE, piece_id, &piece, error)
      || !load_line (db, piece_id, &kept, error))
    return FALSE;
  if (piece.record == NULL)
    return kept.place < 0 || remove_line (db, piece_id, kept.place, error);
  if (!make_line (db, WM_PIECE (piece.record), &line, error))
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
  if ((line.place != kept.place || find_difference (&line, &kept) != NULL)
      && !write_line (db, piece_id, &line, error))
    return FALSE;
  return wm_words_put (db, trade, line.place, WM_PIECE (piece.record), line.owner_name,
                       error);
}

char *
wm_line_compare (WmDatabase *db, const WmId *piece_id, GError **error)
{
  g_auto (WmRow) piece = { NULL };
  g_auto (Line) kept = { -1 };
  g_auto (Line) line = { -1 };
  const char *difference;

  if (!wm_row_load (db, WM_KIND_PIECE, piece_id, &piece, error)
      || !load_line (db, piece_id, &kept, error))
    return NULL;
  if (piece.record == NULL || kept.place < 0)
    return g_strdup ("is not in the list of pieces");
  if (!make_line (db, WM_PIECE (piece.record), &line, error))
    return NULL;
  difference = find_difference (&line, &kept);
  return difference != NULL
             ? g_strdup_printf ("its line in the list of pieces has another %s",
                                difference)
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
  const char *field = kind == WM_KIND_PHOTO || kind == WM_KIND_CHECK ? "visit_id"
                      : kind == WM_KIND_VISIT || kind == WM_KIND_STONE_GROUP
                          ? "piece_id"
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
  g_autoptr (GHashTable) pieces
      = g_hash_table_new_full (wm_id_hash, wm_id_equal_func, g_free, NULL);
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
