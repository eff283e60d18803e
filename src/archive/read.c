/* read.c: records, settings and piece numbers read
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "archive/archive-private.h"

#include "archive/row.h"
#include "trade/number.h"

static gpointer
not_found (WmKind kind, GError **error)
{
  g_set_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_NOT_FOUND, "no such %s",
               wm_kind_get_info (kind)->name);
  return NULL;
}

gpointer
wm_archive_get (WmArchive *self, WmKind kind, const WmId *id, GError **error)
{
  g_auto (WmReader) reader = { NULL };
  g_auto (WmRow) row = { NULL };

  if (!wm_archive_take_reader (self, &reader, error)
      || !wm_row_load (reader.db, kind, id, &row, error))
    return NULL;
  if (row.record == NULL)
    return not_found (kind, error);
  return g_steal_pointer (&row.record);
}

static const char *
get_order (WmKind kind)
{
  if (kind == WM_KIND_VISIT)
    return "ORDER BY t.taken_in_at_s, t.id";
  return wm_kind_find_field (kind, "position") != NULL ? "ORDER BY t.position, t.id"
                                                       : "ORDER BY t.id";
}

GPtrArray *
wm_archive_list (WmArchive *self, WmKind kind, const char *key_field, const WmId *id,
                 GError **error)
{
  g_auto (WmReader) reader = { NULL };
  g_autofree char *tail = NULL;
  const WmField *field = key_field != NULL ? wm_kind_find_field (kind, key_field) : NULL;

  g_return_val_if_fail (
      key_field == NULL || (field != NULL && field->type == WM_FIELD_KEY), NULL);
  if (!wm_archive_take_reader (self, &reader, error))
    return NULL;
  tail = field != NULL
             ? g_strdup_printf ("WHERE t.\"%s\" IS ?1 %s", field->name, get_order (kind))
             : g_strdup (get_order (kind));
  return wm_row_list (reader.db, kind, tail, field != NULL ? id : NULL, error);
}

/* How rows of each kind are found from their visit; NULL: they belong to the piece. */
static const char *
get_visit_tail (WmKind kind)
{
  switch (kind)
    {
    case WM_KIND_PHOTO:
    case WM_KIND_CHECK:
    case WM_KIND_PROOF:
    case WM_KIND_REMINDER:
      return "WHERE t.visit_id = ?1 ";
    case WM_KIND_MARK:
      return "WHERE t.photo_id IN (SELECT id FROM photo WHERE visit_id = ?1) ";
    case WM_KIND_PAIRING:
      /* The before photo may be of an earlier visit. */
      return "WHERE t.after_photo_id IN (SELECT id FROM photo WHERE visit_id = ?1)"
             " OR t.before_photo_id IN (SELECT id FROM photo WHERE visit_id = ?1) ";
    case WM_KIND_MEASUREMENT:
    case WM_KIND_REMEDY:
      return "WHERE t.check_id IN (SELECT id FROM \"check\" WHERE visit_id = ?1) ";
    case WM_KIND_MATERIAL:
      return "WHERE t.remedy_id IN (SELECT r.id FROM remedy AS r JOIN \"check\" AS c"
             " ON r.check_id = c.id WHERE c.visit_id = ?1) ";
    default:
      return NULL;
    }
}

GPtrArray *
wm_archive_list_of_visit (WmArchive *self, WmKind kind, const WmId *visit_id,
                          GError **error)
{
  const char *where = get_visit_tail (kind);
  g_auto (WmReader) reader = { NULL };
  g_autofree char *tail = NULL;

  g_return_val_if_fail (where != NULL, NULL);
  if (!wm_archive_take_reader (self, &reader, error))
    return NULL;
  tail = g_strconcat (where, get_order (kind), NULL);
  return wm_row_list (reader.db, kind, tail, visit_id, error);
}

static WmRecord *
find_by_text (WmDatabase *db, WmKind kind, const char *sql, const char *text,
              GError **error)
{
  g_autoptr (WmStatement) select = wm_database_prepare (db, sql, error);
  g_autoptr (GError) problem = NULL;
  g_auto (WmRow) row = { NULL };
  WmId id;

  if (select == NULL)
    return NULL;
  wm_statement_bind_text (select, 1, text);
  if (!wm_statement_next (select, &problem))
    {
      if (problem != NULL)
        g_propagate_error (error, g_steal_pointer (&problem));
      else
        not_found (kind, error);
      return NULL;
    }
  id = wm_statement_get_id (select, 0);
  if (!wm_row_load (db, kind, &id, &row, error))
    return NULL;
  return row.record != NULL ? g_steal_pointer (&row.record) : not_found (kind, error);
}

WmPiece *
wm_archive_find_piece (WmArchive *self, const char *number, GError **error)
{
  g_auto (WmReader) reader = { NULL };
  g_autofree char *written = NULL;
  g_autofree char *valid = g_utf8_make_valid (number, -1);
  g_autoptr (GError) problem = NULL;
  WmRecord *piece;

  if (!wm_archive_take_reader (self, &reader, error))
    return NULL;
  /* What is not a number of ours may still be one that came with a bundle. */
  wm_number_parse (valid, NULL, NULL, &written, &problem);
  piece =
      find_by_text (reader.db, WM_KIND_PIECE, "SELECT id FROM piece WHERE number = ?1",
                    written != NULL ? written : valid, error);
  if (piece == NULL && problem != NULL)
    g_prefix_error (error, "%s: ", problem->message);
  return (WmPiece *)piece;
}

/* ---- settings ----------------------------------------------------------- */

static WmSetting *
find_setting (WmDatabase *db, const char *name, GError **error)
{
  return (WmSetting *)find_by_text (
      db, WM_KIND_SETTING, "SELECT id FROM setting WHERE name = ?1", name, error);
}

char *
wm_archive_get_setting (WmArchive *self, const char *name)
{
  g_auto (WmReader) reader = { NULL };
  g_autoptr (WmSetting) setting = NULL;

  if (!wm_archive_take_reader (self, &reader, NULL))
    return NULL;
  setting = find_setting (reader.db, name, NULL);
  return setting != NULL ? g_strdup (setting->value) : NULL;
}

gboolean
wm_archive_put_setting (WmArchive *self, WmEdit *edit, const char *name,
                        const char *value, GError **error)
{
  g_auto (WmReader) reader = { NULL };
  g_autoptr (GError) problem = NULL;
  g_autoptr (WmSetting) setting = NULL;

  if (!wm_archive_take_reader (self, &reader, error))
    return FALSE;
  setting = find_setting (reader.db, name, &problem);
  if (setting == NULL
      && !g_error_matches (problem, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_NOT_FOUND))
    {
      g_propagate_error (error, g_steal_pointer (&problem));
      return FALSE;
    }
  if (setting == NULL)
    {
      setting = wm_setting_new ();
      wm_record_set_text (WM_RECORD (setting), "name", name);
    }
  wm_record_set_text (WM_RECORD (setting), "value", value);
  wm_edit_put (edit, setting);
  return TRUE;
}

/* ---- piece numbers ------------------------------------------------------ */

/* Running numbers of this workstation: "first-last", or all there are. */
static void
read_block (WmDatabase *db, guint *out_first, guint *out_last)
{
  g_autoptr (WmSetting) setting = find_setting (db, WM_SETTING_NUMBER_BLOCK, NULL);
  g_auto (GStrv) ends = g_strsplit (
      setting != NULL && setting->value != NULL ? setting->value : "", "-", 2);
  guint64 first;
  guint64 last;

  *out_first = 1;
  *out_last = WM_NUMBER_LAST_RUNNING;
  if (g_strv_length (ends) == 2
      && g_ascii_string_to_unsigned (g_strstrip (ends[0]), 10, 1, WM_NUMBER_LAST_RUNNING,
                                     &first, NULL)
      && g_ascii_string_to_unsigned (g_strstrip (ends[1]), 10, first,
                                     WM_NUMBER_LAST_RUNNING, &last, NULL))
    {
      *out_first = (guint)first;
      *out_last = (guint)last;
    }
}

static gboolean
is_taken (WmDatabase *db, const char *number, gboolean *out_taken, GError **error)
{
  g_autoptr (GError) problem = NULL;
  g_autoptr (WmStatement) select =
      wm_database_prepare (db, "SELECT 1 FROM piece WHERE number = ?1", error);

  if (select == NULL)
    return FALSE;
  wm_statement_bind_text (select, 1, number);
  *out_taken = wm_statement_next (select, &problem);
  if (problem == NULL)
    return TRUE;
  g_propagate_error (error, g_steal_pointer (&problem));
  return FALSE;
}

static gboolean
read_last_given (WmDatabase *db, int year, gint64 *out_running, GError **error)
{
  g_autoptr (GError) problem = NULL;
  g_autoptr (WmStatement) select =
      wm_database_prepare (db, "SELECT running FROM number_given WHERE year = ?1", error);

  if (select == NULL)
    return FALSE;
  wm_statement_bind_int64 (select, 1, year);
  *out_running =
      wm_statement_next (select, &problem) ? wm_statement_get_int64 (select, 0) : 0;
  if (problem == NULL)
    return TRUE;
  g_propagate_error (error, g_steal_pointer (&problem));
  return FALSE;
}

static gboolean
keep_last_given (WmDatabase *db, int year, gint64 running, GError **error)
{
  g_autoptr (WmStatement) put = wm_database_prepare (
      db, "INSERT OR REPLACE INTO number_given (year, running) VALUES (?1, ?2)", error);

  if (put == NULL)
    return FALSE;
  wm_statement_bind_int64 (put, 1, year);
  wm_statement_bind_int64 (put, 2, running);
  return wm_statement_run (put, error);
}

/* In a transaction: the next number that no piece has. */
static char *
take_number (WmDatabase *db, int year, GError **error)
{
  guint first;
  guint last;
  gint64 running;

  read_block (db, &first, &last);
  if (!read_last_given (db, year, &running, error))
    return NULL;
  for (running = MAX (running + 1, first); running <= last; running++)
    {
      g_autofree char *number = wm_number_make ((guint)year, (guint)running);
      gboolean taken;

      if (number == NULL || !is_taken (db, number, &taken, error))
        break;
      if (taken)
        continue;
      if (!keep_last_given (db, year, running, error))
        return NULL;
      return g_steal_pointer (&number);
    }
  if (error != NULL && *error == NULL)
    g_set_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_REFUSED,
                 "no piece number of %d is left in the block %u-%u", year, first, last);
  return NULL;
}

char *
wm_archive_take_number (WmArchive *self, int year, GError **error)
{
  g_autoptr (GError) problem = NULL;
  g_autofree char *number = NULL;
  WmDatabase *db = wm_archive_lock_writer (self, error);

  if (db == NULL)
    return NULL;
  if (wm_database_begin (db, &problem))
    {
      number = take_number (db, year, &problem);
      if (number == NULL)
        wm_database_roll_back (db);
      else if (!wm_database_commit (db, &problem))
        g_clear_pointer (&number, g_free);
    }
  wm_archive_unlock_writer (self);
  if (number == NULL)
    g_propagate_error (error, g_steal_pointer (&problem));
  return g_steal_pointer (&number);
}
