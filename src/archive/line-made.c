/* line-made.c: what a piece's line ought to say, and what it says
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "archive/line-made.h"

#include "reckon/severity.h"

void
wm_line_clear (WmLine *line)
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
make_from_visit (WmDatabase *db, const WmId *piece_id, WmLine *line, WmId *out_visit_id,
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
make_severity (WmDatabase *db, const WmId *visit_id, WmLine *line, GError **error)
{
  gboolean has_row;
  g_autoptr (WmStatement) worst =
      ask (db,
           "SELECT max (now), min (now), (SELECT inspected_at_s FROM visit"
           " WHERE id = ?1) FROM (SELECT CASE WHEN after_severity > 0"
           " THEN after_severity ELSE severity END AS now"
           " FROM \"check\" WHERE visit_id = ?1) WHERE now <> 5",
           visit_id, &has_row, error);

  if (worst == NULL)
    return FALSE;
  line->severity = wm_statement_get_int64 (worst, 0);
  /* Half a look calls nothing sound; once the visit is called inspected, what was left
   * out has its reason and the rest speaks. */
  if (line->severity == WM_SEVERITY_SOUND
      && wm_statement_get_int64 (worst, 1) == WM_SEVERITY_NOT_LOOKED_AT
      && wm_statement_is_null (worst, 2))
    line->severity = WM_SEVERITY_NOT_LOOKED_AT;
  return TRUE;
}

/* The last visit's photos stand for the piece: as it is now before as it came. */
static gboolean
make_photo (WmDatabase *db, const WmId *piece_id, WmLine *line, GError **error)
{
  gboolean has_row;
  g_autoptr (WmStatement) photo =
      ask (db,
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

gboolean
wm_line_make (WmDatabase *db, WmPiece *piece, WmLine *line, GError **error)
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

gboolean
wm_line_load (WmDatabase *db, const WmId *piece_id, WmLine *line, GError **error)
{
  gboolean has_row;
  g_autoptr (WmStatement) kept =
      ask (db,
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

const char *
wm_line_find_difference (const WmLine *a, const WmLine *b)
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
