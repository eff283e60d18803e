/* undo.c: the last edit taken back, or done again
 *
 * Both are entries of the log like any other. The rows must be as the edit left them
 * (undo) or found them (redo): nothing of somebody else's is lost.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "archive/commit.h"
#include "archive/image.h"
#include "record/pairing.h"

typedef enum
{
  UNDO,
  REDO
} Direction;

/* Newest first of what stands; oldest first of what was undone: undoing goes back
 * step by step, so the oldest undone one is the last step. What the program did by
 * itself (?2) is no step. */
static const char *const find_sql[] = {
  "SELECT id, label FROM edit WHERE action = 'edit' AND piece_id IS ?1 AND undone = 0"
  " AND label <> ?2"
  " ORDER BY id DESC LIMIT 1",
  "SELECT id, label FROM edit WHERE action = 'edit' AND piece_id IS ?1 AND undone = 1"
  " AND label <> ?2"
  " ORDER BY id LIMIT 1",
};

/* @out_id stays none if there is nothing to undo or redo. */
static gboolean
find_edit (WmDatabase *db, Direction direction, const WmId *piece_id, WmId *out_id,
           char **out_label, GError **error)
{
  g_autoptr (GError) problem = NULL;
  g_autoptr (WmStatement) select = wm_database_prepare (db, find_sql[direction], error);

  *out_id = WM_ID_NONE;
  if (select == NULL)
    return FALSE;
  wm_statement_bind_id (select, 1, piece_id);
  wm_statement_bind_text (select, 2, WM_EDIT_BY_PROGRAM);
  if (wm_statement_next (select, &problem))
    {
      *out_id = wm_statement_get_id (select, 0);
      *out_label = g_strdup (wm_statement_get_text (select, 1));
    }
  if (problem == NULL)
    return TRUE;
  g_propagate_error (error, g_steal_pointer (&problem));
  return FALSE;
}

static gboolean
find_kind (const char *name, WmKind *out_kind)
{
  for (WmKind kind = 0; kind < WM_N_KINDS; kind++)
    if (g_strcmp0 (wm_kind_get_info (kind)->name, name) == 0)
      {
        *out_kind = kind;
        return TRUE;
      }
  return FALSE;
}

static gboolean
read_image (const char *text, WmKind kind, const WmId *id, WmRow *out_row, GError **error)
{
  return text == NULL || wm_image_read (text, kind, id, out_row, error);
}

static gboolean
is_same (const WmRow *a, const WmRow *b)
{
  if (a->record == NULL || b->record == NULL)
    return a->record == b->record;
  return wm_record_equal (a->record, b->record);
}

/* A pairing that the program has made again since: its answer is worth nothing of its
 * own, so it stands in nobody's way. */
static gboolean
is_made_again (const WmRow *now)
{
  return now->record != NULL && WM_IS_PAIRING (now->record)
         && g_strcmp0 (WM_PAIRING (now->record)->made_by, WM_PAIRING_BY_PROGRAM) == 0;
}

/* The revision a row has or, if it is gone, last had. */
static gboolean
find_revision (WmDatabase *db, WmRowChange *change, GError **error)
{
  g_autoptr (GError) problem = NULL;
  g_autoptr (WmStatement) select = NULL;

  if (change->before.record != NULL)
    {
      change->revision = wm_record_get_revision (change->before.record);
      return TRUE;
    }
  select = wm_database_prepare (
      db, "SELECT max (revision) FROM edit_row WHERE row_id = ?1", error);
  if (select == NULL)
    return FALSE;
  wm_statement_bind_id (select, 1, &change->id);
  if (wm_statement_next (select, &problem))
    change->revision = wm_statement_get_int64 (select, 0);
  if (problem == NULL)
    return TRUE;
  g_propagate_error (error, g_steal_pointer (&problem));
  return FALSE;
}

/* One row of the log turned into the change that takes it back or does it again. */
static gboolean
plan_row (WmDatabase *db, Direction direction, WmStatement *logged, GPtrArray *changes,
          GError **error)
{
  const char *from = wm_statement_get_text (logged, direction == UNDO ? 3 : 2);
  const char *to = wm_statement_get_text (logged, direction == UNDO ? 2 : 3);
  WmId id = wm_statement_get_id (logged, 1);
  g_auto (WmRow) expected = { NULL };
  WmRowChange *change;
  WmKind kind;

  if (!find_kind (wm_statement_get_text (logged, 0), &kind))
    {
      g_set_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_DAMAGED,
                   "the log names an unknown kind of record");
      return FALSE;
    }
  change = wm_row_change_new (kind, &id);
  g_ptr_array_add (changes, change);
  if (!read_image (from, kind, &id, &expected, error)
      || !read_image (to, kind, &id, &change->after, error)
      || !wm_row_load (db, kind, &id, &change->before, error)
      || !find_revision (db, change, error))
    return FALSE;
  if (is_same (&change->before, &expected) || is_made_again (&change->before))
    return TRUE;
  g_set_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_CONFLICT,
               "the %s was changed since by another edit", wm_kind_get_info (kind)->name);
  return FALSE;
}

static GPtrArray *
plan (WmDatabase *db, Direction direction, const WmId *edit_id, GError **error)
{
  g_autoptr (GPtrArray) changes = wm_row_changes_new ();
  g_autoptr (GError) problem = NULL;
  g_autoptr (WmStatement) logged =
      wm_database_prepare (db,
                           "SELECT kind, row_id, before, after FROM edit_row"
                           " WHERE edit_id = ?1 ORDER BY position",
                           error);

  if (logged == NULL)
    return NULL;
  wm_statement_bind_id (logged, 1, edit_id);
  while (wm_statement_next (logged, &problem))
    if (!plan_row (db, direction, logged, changes, error))
      return NULL;
  if (problem != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&problem));
      return NULL;
    }
  return wm_plan_follow (db, changes, error) ? g_steal_pointer (&changes) : NULL;
}

static gboolean
mark_edit (WmDatabase *db, Direction direction, const WmId *edit_id, GError **error)
{
  g_autoptr (WmStatement) update =
      wm_database_prepare (db, "UPDATE edit SET undone = ?2 WHERE id = ?1", error);

  if (update == NULL)
    return FALSE;
  wm_statement_bind_id (update, 1, edit_id);
  wm_statement_bind_int64 (update, 2, direction == UNDO ? 1 : 0);
  return wm_statement_run (update, error);
}

static gboolean
step_planned (WmArchive *self, Direction direction, WmLogEntry *entry, char **out_label,
              GPtrArray **out_changes, GError **error)
{
  g_autoptr (GPtrArray) changes = NULL;

  if (!find_edit (self->writer, direction, &entry->piece_id, &entry->of_edit, out_label,
                  error))
    return FALSE;
  if (wm_id_is_none (&entry->of_edit))
    {
      g_set_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_NOTHING, "nothing to %s",
                   direction == UNDO ? "undo" : "redo");
      return FALSE;
    }
  changes = plan (self->writer, direction, &entry->of_edit, error);
  if (changes == NULL || !mark_edit (self->writer, direction, &entry->of_edit, error))
    return FALSE;

  wm_commit_stamp (self, entry);
  entry->label = *out_label;
  if (!wm_commit_finish (self, entry, changes, error))
    return FALSE;
  *out_changes = g_steal_pointer (&changes);
  return TRUE;
}

/* Something that came later still holds a row that would go: the same to the user as
 * a row changed since. */
static void
call_it_conflict (GError **error)
{
  if (error != NULL
      && g_error_matches (*error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_REFUSED))
    (*error)->code = WM_ARCHIVE_ERROR_CONFLICT;
}

static char *
step (WmArchive *self, Direction direction, const WmId *piece_id, const WmId *by,
      GError **error)
{
  WmLogEntry entry = { .action = direction == UNDO ? "undo" : "redo" };
  g_autoptr (GPtrArray) changes = NULL;
  g_autofree char *label = NULL;
  WmDatabase *db = wm_archive_lock_writer (self, error);
  gboolean is_done;

  if (db == NULL)
    return NULL;
  if (piece_id != NULL)
    entry.piece_id = *piece_id;
  if (by != NULL)
    entry.by = *by;
  is_done = wm_database_begin (db, error)
            && step_planned (self, direction, &entry, &label, &changes, error);
  if (!is_done)
    wm_database_roll_back (db);
  wm_archive_unlock_writer (self);

  if (is_done)
    {
      wm_archive_tell (self, &entry.piece_id, changes);
      return g_steal_pointer (&label);
    }
  call_it_conflict (error);
  return NULL;
}

static gboolean
step_now (WmArchive *self, Direction direction, const WmId *piece_id, const WmId *by,
          char **out_label, GError **error)
{
  g_autofree char *label = step (self, direction, piece_id, by, error);

  if (label == NULL)
    return FALSE;
  if (out_label != NULL)
    *out_label = g_steal_pointer (&label);
  return TRUE;
}

gboolean
wm_archive_undo (WmArchive *self, const WmId *piece_id, const WmId *by, char **out_label,
                 GError **error)
{
  return step_now (self, UNDO, piece_id, by, out_label, error);
}

gboolean
wm_archive_redo (WmArchive *self, const WmId *piece_id, const WmId *by, char **out_label,
                 GError **error)
{
  return step_now (self, REDO, piece_id, by, out_label, error);
}

/* ---- on the archive's own thread ---------------------------------------- */

typedef struct
{
  Direction direction;
  WmId piece_id;
  WmId by;
} Step;

static void
work_step (WmArchive *self, GTask *task)
{
  const Step *data = g_task_get_task_data (task);
  GError *error = NULL;
  char *label = step (self, data->direction, &data->piece_id, &data->by, &error);

  wm_archive_answer (self, task, label, error);
}

static void
queue_step (WmArchive *self, Direction direction, const WmId *piece_id, const WmId *by,
            GAsyncReadyCallback callback, gpointer user_data)
{
  GTask *task = g_task_new (self, NULL, callback, user_data);
  Step *data = g_new0 (Step, 1);

  data->direction = direction;
  if (piece_id != NULL)
    data->piece_id = *piece_id;
  if (by != NULL)
    data->by = *by;
  g_task_set_source_tag (task, queue_step);
  g_task_set_task_data (task, data, g_free);
  wm_archive_queue (self, task, work_step);
}

void
wm_archive_undo_async (WmArchive *self, const WmId *piece_id, const WmId *by,
                       GAsyncReadyCallback callback, gpointer user_data)
{
  queue_step (self, UNDO, piece_id, by, callback, user_data);
}

void
wm_archive_redo_async (WmArchive *self, const WmId *piece_id, const WmId *by,
                       GAsyncReadyCallback callback, gpointer user_data)
{
  queue_step (self, REDO, piece_id, by, callback, user_data);
}

char *
wm_archive_undo_finish (WmArchive *self, GAsyncResult *result, GError **error)
{
  g_return_val_if_fail (g_task_is_valid (result, self), NULL);
  return g_task_propagate_pointer (G_TASK (result), error);
}

/* ---- what would be undone ----------------------------------------------- */

static char *
peek (WmArchive *self, Direction direction, const WmId *piece_id)
{
  g_auto (WmReader) reader = { NULL };
  g_autofree char *label = NULL;
  WmId id;

  if (!wm_archive_take_reader (self, &reader, NULL)
      || !find_edit (reader.db, direction, piece_id, &id, &label, NULL))
    return NULL;
  return g_steal_pointer (&label);
}

char *
wm_archive_peek_undo (WmArchive *self, const WmId *piece_id)
{
  return peek (self, UNDO, piece_id);
}

char *
wm_archive_peek_redo (WmArchive *self, const WmId *piece_id)
{
  return peek (self, REDO, piece_id);
}
