/* commit.c: edits made real
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "archive/commit.h"

#include <string.h>

/* RFC 9562, section 5.7: the first 48 bits are milliseconds. */
static void
set_milliseconds (WmId *id, gint64 ms)
{
  for (int i = 0; i < 6; i++)
    id->bytes[i] = (guint8)(ms >> (40 - 8 * i));
}

static gint64
get_milliseconds (const WmId *id)
{
  gint64 ms = 0;

  for (int i = 0; i < 6; i++)
    ms = ms << 8 | id->bytes[i];
  return ms;
}

void
wm_commit_stamp (WmArchive *self, WmLogEntry *entry)
{
  entry->id = wm_id_new ();
  entry->at_us = MAX (g_get_real_time (), self->last_at_us + 1);
  /* A clock set back since the program last ran: the order of the log must hold. */
  if (wm_id_compare (&entry->id, &self->last_edit_id) <= 0)
    set_milliseconds (&entry->id, get_milliseconds (&self->last_edit_id) + 1);
}

gboolean
wm_commit_finish (WmArchive *self, const WmLogEntry *entry, GPtrArray *changes,
                  GError **error)
{
  if (!wm_apply_changes (self->writer, self->trade, entry, changes, error))
    {
      wm_database_roll_back (self->writer);
      return FALSE;
    }
  if (!wm_database_commit (self->writer, error))
    return FALSE;
  self->last_edit_id = entry->id;
  self->last_at_us = entry->at_us;
  return TRUE;
}

/* A removed piece is the shop's to bring back: its own page is gone. */
static gboolean
removes_piece (GPtrArray *changes, const WmId *piece_id)
{
  for (guint i = 0; i < changes->len; i++)
    {
      const WmRowChange *change = changes->pdata[i];

      if (change->kind == WM_KIND_PIECE && change->after.record == NULL
          && wm_id_equal (&change->id, piece_id))
        return TRUE;
    }
  return FALSE;
}

/* What was undone before can not be done again after a new edit. */
static gboolean
end_redo (WmDatabase *db, const WmId *piece_id, GError **error)
{
  g_autoptr (WmStatement) update =
      wm_database_prepare (db,
                           "UPDATE edit SET undone = 2 WHERE action = 'edit'"
                           " AND piece_id IS ?1 AND undone = 1",
                           error);

  if (update == NULL)
    return FALSE;
  wm_statement_bind_id (update, 1, piece_id);
  return wm_statement_run (update, error);
}

/* In a transaction that is open: plan, then write all of it. */
static gboolean
commit_planned (WmArchive *self, WmEdit *edit, WmLogEntry *entry, GPtrArray **out_changes,
                GError **error)
{
  g_autoptr (GPtrArray) changes = wm_plan_edit (self->writer, edit, error);

  if (changes == NULL)
    {
      wm_database_roll_back (self->writer);
      return FALSE;
    }
  if (changes->len == 0)
    {
      wm_database_roll_back (self->writer);
      *out_changes = g_steal_pointer (&changes);
      return TRUE;
    }

  wm_commit_stamp (self, entry);
  if (removes_piece (changes, &entry->piece_id))
    entry->piece_id = WM_ID_NONE;
  if (strcmp (entry->label, WM_EDIT_BY_PROGRAM) != 0
      && !end_redo (self->writer, &entry->piece_id, error))
    {
      wm_database_roll_back (self->writer);
      return FALSE;
    }
  if (!wm_commit_finish (self, entry, changes, error))
    return FALSE;
  *out_changes = g_steal_pointer (&changes);
  return TRUE;
}

static gboolean
commit (WmArchive *self, WmEdit *edit, GError **error)
{
  WmLogEntry entry = {
    .piece_id = edit->piece_id, .label = edit->label, .by = edit->by, .action = "edit"
  };
  g_autoptr (GPtrArray) changes = NULL;
  WmDatabase *db = wm_archive_lock_writer (self, error);
  gboolean is_done;

  if (db == NULL)
    return FALSE;
  is_done = wm_database_begin (db, error)
            && commit_planned (self, edit, &entry, &changes, error);
  wm_archive_unlock_writer (self);

  if (!is_done)
    g_prefix_error (error, "%s: ", edit->label);
  else if (changes->len > 0)
    wm_archive_tell (self, &entry.piece_id, changes);
  return is_done;
}

gboolean
wm_archive_commit (WmArchive *self, WmEdit *edit, GError **error)
{
  gboolean is_done;

  g_return_val_if_fail (WM_IS_ARCHIVE (self), FALSE);
  is_done = commit (self, edit, error);
  wm_edit_settle (edit, is_done);
  return is_done;
}

/* On the archive's own thread. */
static void
work_commit (WmArchive *self, GTask *task)
{
  GError *error = NULL;

  commit (self, g_task_get_task_data (task), &error);
  wm_archive_answer (self, task, NULL, error);
}

void
wm_archive_commit_async (WmArchive *self, WmEdit *edit, GAsyncReadyCallback callback,
                         gpointer user_data)
{
  GTask *task = g_task_new (self, NULL, callback, user_data);

  g_task_set_source_tag (task, wm_archive_commit_async);
  g_task_set_task_data (task, wm_edit_ref (edit), (GDestroyNotify)wm_edit_unref);
  wm_archive_queue (self, task, work_commit);
}

gboolean
wm_archive_commit_finish (WmArchive *self, GAsyncResult *result, GError **error)
{
  GTask *task = G_TASK (result);
  g_autoptr (GError) problem = NULL;

  g_return_val_if_fail (g_task_is_valid (result, self), FALSE);
  g_task_propagate_pointer (task, &problem);
  wm_edit_settle (g_task_get_task_data (task), problem == NULL);
  if (problem == NULL)
    return TRUE;
  g_propagate_error (error, g_steal_pointer (&problem));
  return FALSE;
}
