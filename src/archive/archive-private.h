/* archive-private.h: the inside of an archive, for its own files
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "archive/archive.h"
#include "archive/change.h"
#include "archive/database.h"

struct _WmArchive
{
  GObject parent_instance;

  char *folder;
  char *cache_folder;
  char *photos_folder;
  char *database_path;
  char *copy_folder; /* of the copy that is looked at, or NULL */
  gboolean is_read_only;
  WmDatabaseMode read_mode;
  int lock_fd; /* -1: none */

  GMutex write_lock;  /* guards the four below */
  WmDatabase *writer; /* NULL: read-only or closed */
  gint64 last_at_us;  /* time and key of the last edit: the next is above both */
  WmId last_edit_id;
  WmTrade *trade; /* or NULL: plain names for search */

  GMutex read_lock;    /* guards the two below */
  GQueue idle_readers; /* of WmDatabase */
  gboolean is_closed;

  GThreadPool *worker;   /* one thread: _async calls in their order */
  GMainContext *context; /* of the thread that opened it */
  GThread *opener;
};

/* A connection for reading, until cleared. Any thread. */
typedef struct
{
  WmArchive *archive;
  WmDatabase *db;
} WmReader;

gboolean wm_archive_take_reader (WmArchive *self, WmReader *out_reader, GError **error);
void wm_reader_clear (WmReader *reader);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (WmReader, wm_reader_clear)

/* Takes write_lock; READ_ONLY, or IO when it is closed. The lock is held on success. */
WmDatabase *wm_archive_lock_writer (WmArchive *self, GError **error);
void wm_archive_unlock_writer (WmArchive *self);

/* Tells "changed" handlers, now on the opener's thread or soon from another one. */
void wm_archive_tell (WmArchive *self, const WmId *piece_id, GPtrArray *changes);

/* Runs @work on the archive's own thread; @task is completed after "changed". */
typedef void (*WmWork) (WmArchive *self, GTask *task);
void wm_archive_queue (WmArchive *self, GTask *task, WmWork work);
/* For WmWork: instead of g_task_return_...: @text may be NULL. */
void wm_archive_answer (WmArchive *self, GTask *task, char *text, GError *error);
