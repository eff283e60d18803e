/* archive.c: an archive opened and closed, its connections, its thread
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "archive/archive.h"

#include <errno.h>
#include <glib/gstdio.h>
#include <unistd.h>

#include "archive/archive-private.h"
#include "archive/folder.h"
#include "archive/opening.h"

G_DEFINE_QUARK (wm - archive - error - quark, wm_archive_error)

G_DEFINE_FINAL_TYPE (WmArchive, wm_archive, G_TYPE_OBJECT)

enum
{
  CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

/* ---- connections -------------------------------------------------------- */

gboolean
wm_archive_take_reader (WmArchive *self, WmReader *out_reader, GError **error)
{
  WmDatabase *db;

  g_mutex_lock (&self->read_lock);
  if (self->is_closed)
    {
      g_mutex_unlock (&self->read_lock);
      g_set_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_IO, "the archive is closed");
      return FALSE;
    }
  db = g_queue_pop_head (&self->idle_readers);
  g_mutex_unlock (&self->read_lock);

  if (db == NULL)
    db = wm_database_open (self->database_path, self->read_mode, error);
  if (db == NULL)
    return FALSE;
  out_reader->archive = self;
  out_reader->db = db;
  return TRUE;
}

void
wm_reader_clear (WmReader *reader)
{
  WmDatabase *db = g_steal_pointer (&reader->db);

  if (db == NULL)
    return;
  g_mutex_lock (&reader->archive->read_lock);
  if (!reader->archive->is_closed)
    g_queue_push_head (&reader->archive->idle_readers, g_steal_pointer (&db));
  g_mutex_unlock (&reader->archive->read_lock);
  wm_database_close (db);
}

WmDatabase *
wm_archive_lock_writer (WmArchive *self, GError **error)
{
  g_mutex_lock (&self->write_lock);
  if (self->writer != NULL)
    return self->writer;
  g_mutex_unlock (&self->write_lock);

  if (self->is_read_only)
    g_set_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_READ_ONLY,
                 "%s: opened only to look at", self->folder);
  else
    g_set_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_IO, "the archive is closed");
  return NULL;
}

void
wm_archive_unlock_writer (WmArchive *self)
{
  g_mutex_unlock (&self->write_lock);
}

/* ---- telling and answering ---------------------------------------------- */

typedef struct
{
  WmArchive *archive;
  WmId piece_id;
  GArray *rows; /* of WmChangedRow */
} Telling;

static void
free_telling (Telling *telling)
{
  g_array_unref (telling->rows);
  g_object_unref (telling->archive);
  g_free (telling);
}

static gboolean
on_tell (gpointer user_data)
{
  Telling *telling = user_data;
  WmChange change = { telling->piece_id, (WmChangedRow *)telling->rows->data,
                      telling->rows->len };

  g_signal_emit (telling->archive, signals[CHANGED], 0, &change);
  return G_SOURCE_REMOVE;
}

static void
call_in_context (WmArchive *self, GSourceFunc function, gpointer data,
                 GDestroyNotify destroy)
{
  g_autoptr (GSource) source = g_idle_source_new ();

  g_source_set_priority (source, G_PRIORITY_DEFAULT);
  g_source_set_callback (source, function, data, destroy);
  g_source_attach (source, self->context);
}

void
wm_archive_tell (WmArchive *self, const WmId *piece_id, GPtrArray *changes)
{
  Telling *telling = g_new0 (Telling, 1);

  telling->archive = g_object_ref (self);
  telling->piece_id = *piece_id;
  telling->rows = g_array_new (FALSE, FALSE, sizeof (WmChangedRow));
  for (guint i = 0; i < changes->len; i++)
    {
      const WmRowChange *change = changes->pdata[i];
      WmChangedRow row = { change->kind, change->id, change->after.record == NULL };

      g_array_append_val (telling->rows, row);
    }

  if (g_thread_self () == self->opener)
    {
      on_tell (telling);
      free_telling (telling);
    }
  else
    {
      call_in_context (self, on_tell, telling, (GDestroyNotify)free_telling);
    }
}

gboolean
wm_change_touches (const WmChange *change, WmKind kind)
{
  for (guint i = 0; i < change->n_rows; i++)
    if (change->rows[i].kind == kind)
      return TRUE;
  return FALSE;
}

typedef struct
{
  GTask *task;
  WmWork work;
  char *text;
  GError *error;
} Job;

/* On the archive's own thread. The last reference to the task, and so perhaps to the
 * archive, is always dropped in the opener's context: this thread can not wait for
 * its own end. */
static void
on_work (gpointer data, gpointer user_data)
{
  Job *job = data;

  job->work (g_task_get_source_object (job->task), job->task);
  g_free (job);
}

void
wm_archive_queue (WmArchive *self, GTask *task, WmWork work)
{
  Job *job;

  if (self->worker == NULL)
    {
      g_task_return_new_error (task, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_IO,
                               "the archive is closed");
      g_object_unref (task);
      return;
    }
  job = g_new0 (Job, 1);
  job->task = task;
  job->work = work;
  g_thread_pool_push (self->worker, job, NULL);
}

static gboolean
on_answer (gpointer user_data)
{
  Job *job = user_data;

  if (job->error != NULL)
    g_task_return_error (job->task, g_steal_pointer (&job->error));
  else
    g_task_return_pointer (job->task, g_steal_pointer (&job->text), g_free);
  return G_SOURCE_REMOVE;
}

static void
free_answer (Job *job)
{
  g_clear_error (&job->error);
  g_free (job->text);
  g_object_unref (job->task);
  g_free (job);
}

void
wm_archive_answer (WmArchive *self, GTask *task, char *text, GError *error)
{
  Job *job = g_new0 (Job, 1);

  job->task = task;
  job->text = text;
  job->error = error;
  call_in_context (self, on_answer, job, (GDestroyNotify)free_answer);
}

/* ---- opening and closing ------------------------------------------------ */

char *
wm_archive_default_folder (void)
{
  return g_build_filename (g_get_user_data_dir (), "wearmark", "archive", NULL);
}

WmArchive *
wm_archive_open (const char *folder, WmArchiveMode mode, GError **error)
{
  g_autoptr (WmArchive) self = g_object_new (WM_TYPE_ARCHIVE, NULL);

  g_return_val_if_fail (folder != NULL, NULL);
  self->folder = g_canonicalize_filename (folder, NULL);
  self->database_path = g_build_filename (self->folder, WM_DATABASE_NAME, NULL);
  self->photos_folder = g_build_filename (self->folder, WM_PHOTOS_NAME, NULL);
  self->cache_folder = g_build_filename (self->folder, WM_CACHE_NAME, NULL);
  self->context = g_main_context_ref_thread_default ();
  self->opener = g_thread_ref (g_thread_self ());

  if (mode == WM_ARCHIVE_LOOK ? !wm_opening_look (self, error)
                              : !wm_opening_take (self, mode, error))
    return NULL;
  self->worker = g_thread_pool_new (on_work, NULL, 1, TRUE, error);
  return self->worker != NULL ? g_steal_pointer (&self) : NULL;
}

void
wm_archive_close (WmArchive *self)
{
  WmDatabase *db;

  if (self->worker != NULL)
    g_thread_pool_free (g_steal_pointer (&self->worker), FALSE, TRUE);

  g_mutex_lock (&self->read_lock);
  self->is_closed = TRUE;
  while ((db = g_queue_pop_head (&self->idle_readers)) != NULL)
    wm_database_close (db);
  g_mutex_unlock (&self->read_lock);

  g_mutex_lock (&self->write_lock);
  if (self->writer != NULL)
    {
      /* So that the one file holds everything, also for a plain copy of it. */
      sqlite3_wal_checkpoint_v2 (wm_database_get_handle (self->writer), NULL,
                                 SQLITE_CHECKPOINT_TRUNCATE, NULL, NULL);
      wm_database_close (g_steal_pointer (&self->writer));
    }
  g_mutex_unlock (&self->write_lock);

  if (self->lock_fd >= 0)
    close (self->lock_fd);
  self->lock_fd = -1;
}

static void
wm_archive_finalize (GObject *object)
{
  WmArchive *self = WM_ARCHIVE (object);

  wm_archive_close (self);
  g_clear_pointer (&self->trade, wm_trade_unref);
  g_clear_pointer (&self->context, g_main_context_unref);
  g_clear_pointer (&self->opener, g_thread_unref);
  wm_opening_forget (self);
  g_mutex_clear (&self->write_lock);
  g_mutex_clear (&self->read_lock);
  g_free (self->folder);
  g_free (self->database_path);
  g_free (self->photos_folder);
  g_free (self->cache_folder);

  G_OBJECT_CLASS (wm_archive_parent_class)->finalize (object);
}

static void
wm_archive_class_init (WmArchiveClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = wm_archive_finalize;

  signals[CHANGED] = g_signal_new ("changed", WM_TYPE_ARCHIVE, G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 1, G_TYPE_POINTER);
}

static void
wm_archive_init (WmArchive *self)
{
  g_mutex_init (&self->write_lock);
  g_mutex_init (&self->read_lock);
  g_queue_init (&self->idle_readers);
  self->lock_fd = -1;
}

const char *
wm_archive_get_folder (WmArchive *self)
{
  return self->folder;
}

const char *
wm_archive_get_cache_folder (WmArchive *self)
{
  return self->cache_folder;
}

gboolean
wm_archive_is_read_only (WmArchive *self)
{
  return self->is_read_only;
}

void
wm_archive_set_trade (WmArchive *self, WmTrade *trade)
{
  g_mutex_lock (&self->write_lock);
  g_clear_pointer (&self->trade, wm_trade_unref);
  self->trade = trade != NULL ? wm_trade_ref (trade) : NULL;
  g_mutex_unlock (&self->write_lock);
}
