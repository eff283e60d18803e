/* change.c: the rows of a log entry written, logged and listed
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "archive/change.h"

#include "archive/image.h"
#include "archive/line.h"

WmRowChange *
wm_row_change_new (WmKind kind, const WmId *id)
{
  WmRowChange *self = g_new0 (WmRowChange, 1);

  self->kind = kind;
  self->id = *id;
  return self;
}

void
wm_row_change_free (WmRowChange *self)
{
  wm_row_clear (&self->before);
  wm_row_clear (&self->after);
  g_free (self);
}

GPtrArray *
wm_row_changes_new (void)
{
  return g_ptr_array_new_with_free_func ((GDestroyNotify)wm_row_change_free);
}

static gboolean
write_change (WmDatabase *db, const WmLogEntry *entry, WmRowChange *change,
              GError **error)
{
  if (change->after.record == NULL)
    return wm_row_delete (db, change->kind, &change->id, error);

  if (!wm_row_check (change->after.record, error))
    return FALSE;
  wm_record_set_stamp (change->after.record, entry->at_us, &entry->by,
                       change->revision + 1);
  if (change->before.record != NULL)
    return wm_row_update (db, &change->after, error);
  if (change->after.made_at_us == 0)
    change->after.made_at_us = entry->at_us;
  return wm_row_insert (db, &change->after, error);
}

static gboolean
log_entry (WmDatabase *db, const WmLogEntry *entry, GError **error)
{
  g_autoptr (WmStatement) insert = wm_database_prepare (
      db,
      "INSERT INTO edit (id, piece_id, label, made_by, made_at_us, action, of_edit)"
      " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)",
      error);

  if (insert == NULL)
    return FALSE;
  wm_statement_bind_id (insert, 1, &entry->id);
  wm_statement_bind_id (insert, 2, &entry->piece_id);
  wm_statement_bind_text (insert, 3, entry->label);
  wm_statement_bind_id (insert, 4, &entry->by);
  wm_statement_bind_int64 (insert, 5, entry->at_us);
  wm_statement_bind_text (insert, 6, entry->action);
  wm_statement_bind_id (insert, 7, &entry->of_edit);
  return wm_statement_run (insert, error);
}

static gboolean
log_change (WmDatabase *db, const WmLogEntry *entry, guint position,
            const WmRowChange *change, GError **error)
{
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;
  g_autoptr (WmStatement) insert = wm_database_prepare (
      db,
      "INSERT INTO edit_row (edit_id, position, kind, row_id, revision, before, after)"
      " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)",
      error);

  if (insert == NULL)
    return FALSE;
  if (change->before.record != NULL)
    before = wm_image_write (&change->before);
  if (change->after.record != NULL)
    after = wm_image_write (&change->after);
  wm_statement_bind_id (insert, 1, &entry->id);
  wm_statement_bind_int64 (insert, 2, position);
  wm_statement_bind_text (insert, 3, wm_kind_get_info (change->kind)->name);
  wm_statement_bind_id (insert, 4, &change->id);
  wm_statement_bind_int64 (insert, 5, change->revision + 1);
  wm_statement_bind_text (insert, 6, before);
  wm_statement_bind_text (insert, 7, after);
  return wm_statement_run (insert, error);
}

gboolean
wm_apply_changes (WmDatabase *db, WmTrade *trade, const WmLogEntry *entry,
                  GPtrArray *changes, GError **error)
{
  if (!log_entry (db, entry, error))
    return FALSE;

  for (guint i = 0; i < changes->len; i++)
    {
      WmRowChange *change = changes->pdata[i];

      if (!write_change (db, entry, change, error)
          || !log_change (db, entry, i, change, error))
        {
          g_prefix_error (error, "%s: ", wm_kind_get_info (change->kind)->name);
          return FALSE;
        }
    }
  return wm_lines_refresh_changed (db, trade, changes, error);
}
