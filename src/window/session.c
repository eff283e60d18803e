/* session.c: what the window is working on: archive, person, piece, visit
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/session.h"

#include <adwaita.h>
#include <glib/gi18n.h>

#include "window/problem.h"

struct _WmSession
{
  GObject parent_instance;

  WmArchive *archive;
  WmTrade *trade;
  WmPerson *person;
  WmPiece *piece;
  WmVisit *visit;
  /* WmId * -> Pending *: what edits on their way to disk made of a record */
  GHashTable *pending;
  /* WmEdit * -> GPtrArray of WmRecord: what wm_session_put () put into it */
  GHashTable *put;
};

typedef struct
{
  WmRecord *record;
  WmEdit *edit;
} Pending;

typedef struct
{
  WmSession *self;
  WmEdit *edit;
  GPtrArray *put;
  WmSessionDone done;
  gpointer user_data;
} Commit;

enum
{
  PERSON_CHANGED,
  PIECE_CHANGED,
  VISIT_CHANGED,
  ROWS_CHANGED,
  TOAST,
  GO_TO_MOMENT,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (WmSession, wm_session, G_TYPE_OBJECT)

/* ---- helpers -------------------------------------------------------------- */

static void
free_pending (gpointer data)
{
  Pending *pending = data;

  g_object_unref (pending->record);
  g_free (pending);
}

static void
free_commit (Commit *commit)
{
  g_object_unref (commit->self);
  wm_edit_unref (commit->edit);
  g_clear_pointer (&commit->put, g_ptr_array_unref);
  g_free (commit);
}

static gboolean
has_id (gpointer record, const WmId *id)
{
  return record != NULL && wm_id_equal (wm_record_get_id (record), id);
}

/* The shown piece and visit show an edit at once, before it is on disk. */
static void
show_record (WmSession *self, WmRecord *record)
{
  const WmId *id = wm_record_get_id (record);

  if (has_id (self->piece, id))
    g_set_object (&self->piece, WM_PIECE (record));
  else if (has_id (self->visit, id))
    g_set_object (&self->visit, WM_VISIT (record));
  else if (has_id (self->person, id))
    g_set_object (&self->person, WM_PERSON (record));
}

static void
forget_pending (WmSession *self, WmEdit *edit, GPtrArray *put)
{
  for (guint i = 0; put != NULL && i < put->len; i++)
    {
      const WmId *id = wm_record_get_id (put->pdata[i]);
      Pending *pending = g_hash_table_lookup (self->pending, id);

      if (pending != NULL && pending->edit == edit)
        g_hash_table_remove (self->pending, id);
    }
}

/* What is shown as it is now on disk; an edit still on its way keeps its place. */
static void
read_again (WmSession *self, WmKind kind, gpointer *member)
{
  gpointer fresh;

  if (*member == NULL
      || g_hash_table_contains (self->pending, wm_record_get_id (*member)))
    return;

  fresh = wm_archive_get (self->archive, kind, wm_record_get_id (*member), NULL);
  if (fresh == NULL)
    return;
  g_object_unref (*member);
  *member = fresh;
}

static WmVisit *
find_last_visit (WmSession *self, const WmId *piece_id)
{
  g_autoptr (GPtrArray) visits =
      wm_archive_list (self->archive, WM_KIND_VISIT, "piece_id", piece_id, NULL);
  WmVisit *last = NULL;

  for (guint i = 0; visits != NULL && i < visits->len; i++)
    {
      WmVisit *visit = visits->pdata[i];

      if (last == NULL || visit->taken_in_at_s >= last->taken_in_at_s)
        last = visit;
    }

  return last == NULL ? NULL : g_object_ref (last);
}

/* Undo may take away the very piece or visit that is shown. */
static void
leave_what_is_gone (WmSession *self, const WmChange *change)
{
  gboolean piece_gone = FALSE, visit_gone = FALSE;

  for (guint i = 0; i < change->n_rows; i++)
    if (change->rows[i].removed)
      {
        piece_gone |= has_id (self->piece, &change->rows[i].id);
        visit_gone |= has_id (self->visit, &change->rows[i].id);
      }

  if (piece_gone)
    wm_session_close_piece (self);
  else if (visit_gone)
    {
      WmVisit *last = find_last_visit (self, wm_record_get_id (WM_RECORD (self->piece)));

      g_clear_object (&self->visit);
      self->visit = last;
      g_signal_emit (self, signals[VISIT_CHANGED], 0);
    }
}

/* ---- callbacks ------------------------------------------------------------ */

static void
on_archive_changed (WmArchive *archive, const WmChange *change, WmSession *self)
{
  gboolean shop = wm_id_is_none (&change->piece_id);

  if (!shop && !has_id (self->piece, &change->piece_id))
    return;

  read_again (self, WM_KIND_PIECE, (gpointer *)&self->piece);
  read_again (self, WM_KIND_VISIT, (gpointer *)&self->visit);
  read_again (self, WM_KIND_PERSON, (gpointer *)&self->person);
  g_signal_emit (self, signals[ROWS_CHANGED], 0, change);
  leave_what_is_gone (self, change);
}

static void
on_committed (GObject *source, GAsyncResult *result, gpointer user_data)
{
  Commit *commit = user_data;
  WmSession *self = commit->self;
  g_autoptr (GError) error = NULL;
  gboolean kept = wm_archive_commit_finish (WM_ARCHIVE (source), result, &error);

  forget_pending (self, commit->edit, commit->put);
  read_again (self, WM_KIND_PIECE, (gpointer *)&self->piece);
  read_again (self, WM_KIND_VISIT, (gpointer *)&self->visit);
  if (!kept)
    {
      /* Nothing reached the disk: every page goes back to what the disk says. */
      WmChange nothing = { WM_ID_NONE, NULL, 0 };

      g_signal_emit (self, signals[ROWS_CHANGED], 0, &nothing);
      wm_session_toast_error (self, error);
    }
  if (commit->done != NULL)
    commit->done (self, kept, commit->user_data);

  free_commit (commit);
}

static void
tell_undone (WmSession *self, const char *format, GAsyncResult *result)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *label = wm_archive_undo_finish (self->archive, result, &error);
  g_autofree char *text = NULL;

  if (label == NULL)
    {
      wm_session_toast_error (self, error);
      return;
    }

    /* Translators: the label of an action, for instance "Undone: Place mark" */
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
  text = g_strdup_printf (format, _ (label));
#pragma GCC diagnostic pop
  wm_session_toast (self, text);
}

static void
on_undone (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (WmSession) self = user_data;

  tell_undone (self, _ ("Undone: %s"), result);
}

static void
on_redone (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (WmSession) self = user_data;

  tell_undone (self, _ ("Done again: %s"), result);
}

/* ---- overrides ------------------------------------------------------------ */

static void
wm_session_dispose (GObject *object)
{
  WmSession *self = WM_SESSION (object);

  if (self->archive != NULL)
    g_signal_handlers_disconnect_by_data (self->archive, self);
  g_clear_object (&self->archive);
  g_clear_object (&self->person);
  g_clear_object (&self->piece);
  g_clear_object (&self->visit);
  g_clear_pointer (&self->pending, g_hash_table_unref);
  g_clear_pointer (&self->put, g_hash_table_unref);

  G_OBJECT_CLASS (wm_session_parent_class)->dispose (object);
}

static guint
add_signal (const char *name, GType type)
{
  return g_signal_new (name, WM_TYPE_SESSION, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                       G_TYPE_NONE, type == G_TYPE_NONE ? 0 : 1, type);
}

static void
wm_session_class_init (WmSessionClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = wm_session_dispose;

  signals[PERSON_CHANGED] = add_signal ("person-changed", G_TYPE_NONE);
  signals[PIECE_CHANGED] = add_signal ("piece-changed", G_TYPE_NONE);
  signals[VISIT_CHANGED] = add_signal ("visit-changed", G_TYPE_NONE);
  signals[ROWS_CHANGED] = add_signal ("rows-changed", G_TYPE_POINTER);
  signals[TOAST] = add_signal ("toast", ADW_TYPE_TOAST);
  signals[GO_TO_MOMENT] = add_signal ("go-to-moment", G_TYPE_STRING);
}

static void
wm_session_init (WmSession *self)
{
  self->pending =
      g_hash_table_new_full (wm_id_hash, wm_id_equal_func, g_free, free_pending);
  self->put = g_hash_table_new_full (NULL, NULL, (GDestroyNotify)wm_edit_unref,
                                     (GDestroyNotify)g_ptr_array_unref);
}

/* ---- public --------------------------------------------------------------- */

WmSession *
wm_session_new (WmArchive *archive, WmTrade *trade)
{
  WmSession *self = g_object_new (WM_TYPE_SESSION, NULL);

  self->archive = g_object_ref (archive);
  self->trade = trade;
  g_signal_connect (archive, "changed", G_CALLBACK (on_archive_changed), self);

  return self;
}

WmArchive *
wm_session_get_archive (WmSession *self)
{
  return self->archive;
}

WmTrade *
wm_session_get_trade (WmSession *self)
{
  return self->trade;
}

gboolean
wm_session_is_read_only (WmSession *self)
{
  return wm_archive_is_read_only (self->archive);
}

WmPerson *
wm_session_get_person (WmSession *self)
{
  return self->person;
}

void
wm_session_set_person (WmSession *self, WmPerson *person)
{
  if (g_set_object (&self->person, person))
    g_signal_emit (self, signals[PERSON_CHANGED], 0);
}

const WmId *
wm_session_get_by (WmSession *self)
{
  return self->person == NULL ? NULL : wm_record_get_id (WM_RECORD (self->person));
}

WmPiece *
wm_session_get_piece (WmSession *self)
{
  return self->piece;
}

WmVisit *
wm_session_get_visit (WmSession *self)
{
  return self->visit;
}

const WmId *
wm_session_get_visit_id (WmSession *self)
{
  return self->visit == NULL ? NULL : wm_record_get_id (WM_RECORD (self->visit));
}

gboolean
wm_session_open_piece (WmSession *self, const WmId *piece_id, const WmId *visit_id)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (WmPiece) piece = NULL;
  g_autoptr (WmVisit) visit = NULL;
  gboolean same_piece;

  piece = wm_archive_get (self->archive, WM_KIND_PIECE, piece_id, &error);
  if (piece != NULL && visit_id != NULL)
    visit = wm_archive_get (self->archive, WM_KIND_VISIT, visit_id, &error);
  if (error != NULL)
    {
      wm_session_toast_error (self, error);
      return FALSE;
    }
  if (visit == NULL)
    visit = find_last_visit (self, piece_id);

  same_piece = has_id (self->piece, piece_id);
  g_set_object (&self->piece, piece);
  g_set_object (&self->visit, visit);
  if (!same_piece)
    g_signal_emit (self, signals[PIECE_CHANGED], 0);
  g_signal_emit (self, signals[VISIT_CHANGED], 0);

  return TRUE;
}

void
wm_session_close_piece (WmSession *self)
{
  if (self->piece == NULL)
    return;

  g_clear_object (&self->piece);
  g_clear_object (&self->visit);
  g_signal_emit (self, signals[PIECE_CHANGED], 0);
  g_signal_emit (self, signals[VISIT_CHANGED], 0);
}

void
wm_session_go_to_moment (WmSession *self, const char *moment)
{
  g_signal_emit (self, signals[GO_TO_MOMENT], 0, moment);
}

void
wm_session_move_on (WmSession *self, const char *moment)
{
  if (self->visit == NULL)
    return;

  wm_session_change (self, N_ ("Move the visit on"), self->visit, "moment", moment, NULL);
  wm_session_go_to_moment (self, moment);
}

WmEdit *
wm_session_begin (WmSession *self, const char *label)
{
  const WmId *piece_id =
      self->piece == NULL ? NULL : wm_record_get_id (WM_RECORD (self->piece));

  return wm_edit_new (label, piece_id, wm_session_get_by (self));
}

WmEdit *
wm_session_begin_shop (WmSession *self, const char *label)
{
  return wm_edit_new (label, NULL, wm_session_get_by (self));
}

gpointer
wm_session_copy (WmSession *self, gpointer record)
{
  Pending *pending = g_hash_table_lookup (self->pending, wm_record_get_id (record));

  return wm_record_copy (pending != NULL ? pending->record : record);
}

void
wm_session_put (WmSession *self, WmEdit *edit, gpointer record)
{
  GPtrArray *put = g_hash_table_lookup (self->put, edit);

  if (put == NULL)
    {
      put = g_ptr_array_new_with_free_func (g_object_unref);
      g_hash_table_insert (self->put, wm_edit_ref (edit), put);
    }
  /* Putting moves the record's revision on: the copy is as it will be on disk. */
  wm_edit_put (edit, record);
  g_ptr_array_add (put, wm_record_copy (record));
}

void
wm_session_commit (WmSession *self, WmEdit *edit)
{
  wm_session_commit_then (self, edit, NULL, NULL);
}

void
wm_session_commit_then (WmSession *self, WmEdit *edit, WmSessionDone done,
                        gpointer user_data)
{
  Commit *commit;
  GPtrArray *put = g_hash_table_lookup (self->put, edit);

  if (put != NULL)
    g_ptr_array_ref (put);
  g_hash_table_remove (self->put, edit);

  if (wm_edit_is_empty (edit))
    {
      g_clear_pointer (&put, g_ptr_array_unref);
      wm_edit_unref (edit);
      if (done != NULL)
        done (self, TRUE, user_data);
      return;
    }

  for (guint i = 0; put != NULL && i < put->len; i++)
    {
      Pending *pending = g_new (Pending, 1);

      pending->record = g_object_ref (put->pdata[i]);
      pending->edit = edit;
      g_hash_table_replace (self->pending,
                            g_memdup2 (wm_record_get_id (put->pdata[i]), sizeof (WmId)),
                            pending);
      show_record (self, put->pdata[i]);
    }

  commit = g_new0 (Commit, 1);
  commit->self = g_object_ref (self);
  commit->edit = edit;
  commit->put = put;
  commit->done = done;
  commit->user_data = user_data;
  wm_archive_commit_async (self->archive, edit, on_committed, commit);
}

/* Settings and people who work here belong to no piece. */
static gboolean
is_of_shop (WmRecord *record)
{
  return WM_IS_SETTING (record)
         || (WM_IS_PERSON (record)
             && g_strcmp0 (WM_PERSON (record)->role, WM_ROLE_WORKER) == 0);
}

static void
commit_record (WmSession *self, const char *label, WmRecord *record)
{
  WmEdit *edit = is_of_shop (record) ? wm_session_begin_shop (self, label)
                                     : wm_session_begin (self, label);

  wm_session_put (self, edit, record);
  wm_session_commit (self, edit);
}

void
wm_session_change (WmSession *self, const char *label, gpointer record,
                   const char *first_property, ...)
{
  g_autoptr (WmRecord) copy = wm_session_copy (self, record);
  g_autoptr (WmRecord) before = wm_record_copy (copy);
  va_list values;

  va_start (values, first_property);
  g_object_set_valist (G_OBJECT (copy), first_property, values);
  va_end (values);

  if (!wm_record_equal (copy, before))
    commit_record (self, label, copy);
}

void
wm_session_keep (WmSession *self, const char *label, gpointer changed_copy)
{
  commit_record (self, label, changed_copy);
}

static const WmId *
get_piece_id (WmSession *self)
{
  return self->piece == NULL ? NULL : wm_record_get_id (WM_RECORD (self->piece));
}

void
wm_session_undo (WmSession *self)
{
  wm_archive_undo_async (self->archive, get_piece_id (self), wm_session_get_by (self),
                         on_undone, g_object_ref (self));
}

void
wm_session_redo (WmSession *self)
{
  wm_archive_redo_async (self->archive, get_piece_id (self), wm_session_get_by (self),
                         on_redone, g_object_ref (self));
}

void
wm_session_undo_shop (WmSession *self)
{
  wm_archive_undo_async (self->archive, NULL, wm_session_get_by (self), on_undone,
                         g_object_ref (self));
}

void
wm_session_redo_shop (WmSession *self)
{
  wm_archive_redo_async (self->archive, NULL, wm_session_get_by (self), on_redone,
                         g_object_ref (self));
}

void
wm_session_toast (WmSession *self, const char *text)
{
  g_autofree char *escaped = g_markup_escape_text (text, -1);
  AdwToast *toast = g_object_ref_sink (adw_toast_new (escaped));

  g_signal_emit (self, signals[TOAST], 0, toast);
  g_object_unref (toast);
}

void
wm_session_toast_error (WmSession *self, const GError *error)
{
  g_autofree char *line = wm_problem_line (error);

  wm_session_toast (self, line);
}
