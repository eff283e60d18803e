/* row.c: a record as a row of its table
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "archive/row.h"

/* The columns before the fields: id, made_at_us, changed_at_us, changed_by, revision. */
#define WM_STAMP_COLUMNS 5

void
wm_row_clear (WmRow *row)
{
  g_clear_object (&row->record);
}

/* ---- the SQL of each kind, made once ------------------------------------ */

static char *
make_select (const WmKindInfo *info)
{
  GString *sql = g_string_new ("SELECT t.id, t.made_at_us, t.changed_at_us, t.changed_by,"
                               " t.revision");

  for (guint i = 0; i < info->n_fields; i++)
    g_string_append_printf (sql, ", t.\"%s\"", info->fields[i].name);
  g_string_append_printf (sql, " FROM \"%s\" AS t ", info->name);
  return g_string_free (sql, FALSE);
}

static char *
make_insert (const WmKindInfo *info)
{
  GString *sql = g_string_new (NULL);

  g_string_printf (sql,
                   "INSERT INTO \"%s\" (id, made_at_us, changed_at_us, changed_by,"
                   " revision",
                   info->name);
  for (guint i = 0; i < info->n_fields; i++)
    g_string_append_printf (sql, ", \"%s\"", info->fields[i].name);
  g_string_append (sql, ") VALUES (?1, ?2, ?3, ?4, ?5");
  for (guint i = 0; i < info->n_fields; i++)
    g_string_append_printf (sql, ", ?%u", i + WM_STAMP_COLUMNS + 1);
  g_string_append_c (sql, ')');
  return g_string_free (sql, FALSE);
}

static char *
make_update (const WmKindInfo *info)
{
  GString *sql = g_string_new (NULL);

  g_string_printf (sql,
                   "UPDATE \"%s\" SET made_at_us = ?2, changed_at_us = ?3,"
                   " changed_by = ?4, revision = ?5",
                   info->name);
  for (guint i = 0; i < info->n_fields; i++)
    g_string_append_printf (sql, ", \"%s\" = ?%u", info->fields[i].name,
                            i + WM_STAMP_COLUMNS + 1);
  g_string_append (sql, " WHERE id = ?1");
  return g_string_free (sql, FALSE);
}

static char *
make_delete (const WmKindInfo *info)
{
  return g_strdup_printf ("DELETE FROM \"%s\" WHERE id = ?1", info->name);
}

typedef struct
{
  char *select;
  char *insert;
  char *update;
  char *remove;
} KindSql;

static const KindSql *
get_sql (WmKind kind)
{
  static KindSql all[WM_N_KINDS];
  static gsize ready;

  if (g_once_init_enter (&ready))
    {
      for (WmKind k = 0; k < WM_N_KINDS; k++)
        {
          const WmKindInfo *info = wm_kind_get_info (k);

          all[k] = (KindSql) { make_select (info), make_insert (info), make_update (info),
                               make_delete (info) };
        }
      g_once_init_leave (&ready, 1);
    }
  return &all[kind];
}

/* ---- reading ------------------------------------------------------------ */

static void
read_field (WmStatement *statement, int column, WmRecord *record, const WmField *field)
{
  gpointer member = wm_record_get_member (record, field);

  switch (field->type)
    {
    case WM_FIELD_TEXT:
    case WM_FIELD_DATE:
      {
        g_autofree char *old = *(char **)member;

        *(char **)member = g_strdup (wm_statement_get_text (statement, column));
        break;
      }
    case WM_FIELD_INT:
      *(gint64 *)member = wm_statement_is_null (statement, column)
                              ? WM_UNKNOWN
                              : wm_statement_get_int64 (statement, column);
      break;
    case WM_FIELD_NUMBER:
      *(gint64 *)member = wm_statement_get_int64 (statement, column);
      break;
    case WM_FIELD_REAL:
      *(double *)member = wm_statement_get_double (statement, column);
      break;
    case WM_FIELD_FLAG:
      *(gboolean *)member = wm_statement_get_int64 (statement, column) != 0;
      break;
    case WM_FIELD_KEY:
      *(WmId *)member = wm_statement_get_id (statement, column);
      break;
    }
}

static WmRecord *
read_record (WmStatement *statement, WmKind kind, gint64 *out_made_at_us)
{
  WmRecord *record = wm_record_new (kind);
  const WmKindInfo *info = wm_record_get_info (record);
  WmId id = wm_statement_get_id (statement, 0);
  WmId changed_by = wm_statement_get_id (statement, 3);

  wm_record_set_id (record, &id);
  wm_record_set_stamp (record, wm_statement_get_int64 (statement, 2), &changed_by,
                       wm_statement_get_int64 (statement, 4));
  if (out_made_at_us != NULL)
    *out_made_at_us = wm_statement_get_int64 (statement, 1);
  for (guint i = 0; i < info->n_fields; i++)
    read_field (statement, i + WM_STAMP_COLUMNS, record, &info->fields[i]);
  return record;
}

gboolean
wm_row_load (WmDatabase *db, WmKind kind, const WmId *id, WmRow *out_row, GError **error)
{
  g_autofree char *sql = g_strconcat (get_sql (kind)->select, "WHERE t.id = ?1", NULL);
  g_autoptr (WmStatement) statement = wm_database_prepare (db, sql, error);
  g_autoptr (GError) problem = NULL;

  if (statement == NULL)
    return FALSE;
  wm_statement_bind_id (statement, 1, id);
  if (wm_statement_next (statement, &problem))
    out_row->record = read_record (statement, kind, &out_row->made_at_us);
  if (problem == NULL)
    return TRUE;
  g_propagate_error (error, g_steal_pointer (&problem));
  return FALSE;
}

GPtrArray *
wm_row_list (WmDatabase *db, WmKind kind, const char *tail, const WmId *id,
             GError **error)
{
  g_autoptr (GPtrArray) list = g_ptr_array_new_with_free_func (g_object_unref);
  g_autofree char *sql = g_strconcat (get_sql (kind)->select, tail, NULL);
  g_autoptr (WmStatement) statement = wm_database_prepare (db, sql, error);
  g_autoptr (GError) problem = NULL;

  if (statement == NULL)
    return NULL;
  if (id != NULL)
    wm_statement_bind_id (statement, 1, id);
  while (wm_statement_next (statement, &problem))
    g_ptr_array_add (list, read_record (statement, kind, NULL));
  if (problem == NULL)
    return g_steal_pointer (&list);
  g_propagate_error (error, g_steal_pointer (&problem));
  return NULL;
}

/* ---- writing ------------------------------------------------------------ */

gboolean
wm_row_check (WmRecord *record, GError **error)
{
  const WmKindInfo *info = wm_record_get_info (record);
  const char *wrong = NULL;

  if (wm_id_is_none (wm_record_get_id (record)))
    {
      g_set_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_REFUSED, "%s has no key",
                   info->name);
      return FALSE;
    }

  for (guint i = 0; i < info->n_fields && wrong == NULL; i++)
    {
      const WmField *field = &info->fields[i];
      gpointer member = wm_record_get_member (record, field);

      if ((field->type == WM_FIELD_TEXT || field->type == WM_FIELD_DATE)
          && *(char **)member != NULL && !g_utf8_validate (*(char **)member, -1, NULL))
        wrong = field->name;
    }
  if (wrong == NULL)
    return TRUE;
  g_set_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_REFUSED, "%s.%s is not UTF-8",
               info->name, wrong);
  return FALSE;
}

static void
bind_field (WmStatement *statement, int place, WmRecord *record, const WmField *field)
{
  gpointer member = wm_record_get_member (record, field);

  switch (field->type)
    {
    case WM_FIELD_TEXT:
    case WM_FIELD_DATE:
      wm_statement_bind_text (statement, place, *(char **)member);
      break;
    case WM_FIELD_INT:
      if (*(gint64 *)member != WM_UNKNOWN)
        wm_statement_bind_int64 (statement, place, *(gint64 *)member);
      break; /* else left NULL: bindings are cleared after each use */
    case WM_FIELD_NUMBER:
      wm_statement_bind_int64 (statement, place, *(gint64 *)member);
      break;
    case WM_FIELD_REAL:
      wm_statement_bind_double (statement, place, *(double *)member);
      break;
    case WM_FIELD_FLAG:
      wm_statement_bind_int64 (statement, place, *(gboolean *)member ? 1 : 0);
      break;
    case WM_FIELD_KEY:
      wm_statement_bind_id (statement, place, member);
      break;
    }
}

static gboolean
write_row (WmDatabase *db, const char *sql, const WmRow *row, GError **error)
{
  const WmKindInfo *info = wm_record_get_info (row->record);
  g_autoptr (WmStatement) statement = wm_database_prepare (db, sql, error);

  if (statement == NULL)
    return FALSE;
  wm_statement_bind_id (statement, 1, wm_record_get_id (row->record));
  wm_statement_bind_int64 (statement, 2, row->made_at_us);
  wm_statement_bind_int64 (statement, 3, wm_record_get_changed_at_us (row->record));
  wm_statement_bind_id (statement, 4, wm_record_get_changed_by (row->record));
  wm_statement_bind_int64 (statement, 5, wm_record_get_revision (row->record));
  for (guint i = 0; i < info->n_fields; i++)
    bind_field (statement, i + WM_STAMP_COLUMNS + 1, row->record, &info->fields[i]);
  return wm_statement_run (statement, error);
}

gboolean
wm_row_insert (WmDatabase *db, const WmRow *row, GError **error)
{
  return write_row (db, get_sql (wm_record_get_kind (row->record))->insert, row, error);
}

gboolean
wm_row_update (WmDatabase *db, const WmRow *row, GError **error)
{
  return write_row (db, get_sql (wm_record_get_kind (row->record))->update, row, error);
}

gboolean
wm_row_delete (WmDatabase *db, WmKind kind, const WmId *id, GError **error)
{
  g_autoptr (WmStatement) statement =
      wm_database_prepare (db, get_sql (kind)->remove, error);

  if (statement == NULL)
    return FALSE;
  wm_statement_bind_id (statement, 1, id);
  return wm_statement_run (statement, error);
}
