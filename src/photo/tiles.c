/* tiles.c: one photo as a pyramid of tiles, asked for and answered
 *
 * The store itself lives on its owner's thread; Work is what it shares with the
 * threads, and lives until the last of them is done.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/tiles.h"

#include "photo/pyramid.h"
#include "photo/tile-memory.h"

/* Tiles of one band made in one go; more than any screen is wide. */
#define MOST_IN_BAND 64

typedef struct
{
  int level, column, row;
  int priority;
  WmTileReady ready;
  gpointer user_data;
} Request;

typedef struct
{
  gint references;
  WmPyramid *pyramid;
  GMainContext *context;
  GCancellable *cancellable; /* cancelled when the store goes */
  WmTileStore *store;        /* only for the owner's thread; NULL when it is gone */

  GMutex mutex;
  GPtrArray *waiting; /* Request */
  gboolean is_preparing;
} Work;

struct _WmTileStore
{
  gint references;
  Work *work;
};

typedef struct
{
  Work *work;
  Request request;
  WmPixels *tile;
  GError *error;
} Answer;

static Work *
ref_work (Work *work)
{
  g_atomic_int_inc (&work->references);
  return work;
}

static void
unref_work (Work *work)
{
  if (!g_atomic_int_dec_and_test (&work->references))
    return;

  wm_pyramid_free (work->pyramid);
  g_main_context_unref (work->context);
  g_object_unref (work->cancellable);
  g_ptr_array_unref (work->waiting);
  g_mutex_clear (&work->mutex);
  g_free (work);
}

static void
free_answer (gpointer data)
{
  Answer *answer = data;

  g_clear_pointer (&answer->tile, wm_pixels_unref);
  g_clear_error (&answer->error);
  unref_work (answer->work);
  g_free (answer);
}

static gboolean
on_answer (gpointer data)
{
  Answer *answer = data;
  WmTileStore *store = answer->work->store;

  if (store != NULL)
    {
      wm_tile_store_ref (store);
      answer->request.ready (store, answer->request.level, answer->request.column,
                             answer->request.row, answer->tile, answer->error,
                             answer->request.user_data);
      wm_tile_store_unref (store);
    }
  return G_SOURCE_REMOVE;
}

static void
post_answer (Work *work, const Request *request, WmPixels *tile, const GError *error)
{
  Answer *answer = g_new0 (Answer, 1);
  g_autoptr (GSource) source = g_idle_source_new ();

  answer->work = ref_work (work);
  answer->request = *request;
  answer->tile = tile != NULL ? wm_pixels_ref (tile) : NULL;
  answer->error = tile == NULL && error != NULL ? g_error_copy (error) : NULL;

  g_source_set_priority (source, G_PRIORITY_DEFAULT);
  g_source_set_callback (source, on_answer, answer, free_answer);
  g_source_attach (source, work->context);
}

/* Takes the most urgent request and those of its band out of the queue. Called with
 * the mutex locked. */
static int
take_band (Work *work, Request *out)
{
  guint best = 0;
  int count = 0;

  if (work->waiting->len == 0)
    return 0;

  for (guint i = 1; i < work->waiting->len; i++)
    {
      const Request *request = g_ptr_array_index (work->waiting, i);
      const Request *first = g_ptr_array_index (work->waiting, best);

      if (request->priority < first->priority)
        best = i;
    }

  out[count++] = *(Request *)g_ptr_array_index (work->waiting, best);
  g_ptr_array_remove_index_fast (work->waiting, best);

  for (guint i = 0; i < work->waiting->len && count < MOST_IN_BAND;)
    {
      const Request *request = g_ptr_array_index (work->waiting, i);

      if (request->level == out[0].level
          && wm_pyramid_share_band (work->pyramid, request->column, request->row,
                                    out[0].column, out[0].row))
        {
          out[count++] = *request;
          g_ptr_array_remove_index_fast (work->waiting, i);
        }
      else
        i++;
    }

  return count;
}

static void
make_band (Work *work, Request *requests, int count)
{
  guint64 owner = wm_pyramid_get_owner (work->pyramid);
  int columns[MOST_IN_BAND], rows[MOST_IN_BAND], missing = 0;
  g_autoptr (WmPixels) first = NULL;
  g_autoptr (GError) error = NULL;

  for (int i = 0; i < count; i++)
    {
      g_autoptr (WmPixels) there = wm_tile_memory_get (
          owner, requests[i].level, requests[i].column, requests[i].row);

      if (there == NULL)
        {
          columns[missing] = requests[i].column;
          rows[missing++] = requests[i].row;
        }
    }

  if (missing > 0)
    first = wm_pyramid_make (work->pyramid, requests[0].level, columns, rows, missing,
                             work->cancellable, &error);

  for (int i = 0; i < count; i++)
    {
      g_autoptr (WmPixels) tile = wm_tile_memory_get (
          owner, requests[i].level, requests[i].column, requests[i].row);

      /* Already pushed out of the memory by other tiles. */
      if (tile == NULL && error == NULL)
        tile = wm_pyramid_make (work->pyramid, requests[i].level, &requests[i].column,
                                &requests[i].row, 1, work->cancellable, &error);
      if (!g_cancellable_is_cancelled (work->cancellable))
        post_answer (work, &requests[i], tile, error);
    }
}

/* Runs on a thread of the pool, once for each request made. */
static void
on_token (gpointer data, gpointer unused)
{
  Work *work = data;
  Request requests[MOST_IN_BAND];
  gboolean prepare = FALSE;
  int count = 0;

  if (!g_cancellable_is_cancelled (work->cancellable))
    {
      g_mutex_lock (&work->mutex);
      count = take_band (work, requests);
      if (count == 0 && !work->is_preparing && wm_pyramid_wants_preparing (work->pyramid))
        work->is_preparing = prepare = TRUE;
      g_mutex_unlock (&work->mutex);
    }

  if (count > 0)
    make_band (work, requests, count);
  else if (prepare)
    wm_pyramid_prepare (work->pyramid, work->cancellable);
  unref_work (work);
}

static GThreadPool *
get_pool (void)
{
  static gsize once;
  static GThreadPool *pool;

  if (g_once_init_enter (&once))
    {
      pool = g_thread_pool_new (on_token, NULL, WM_TILE_THREADS, FALSE, NULL);
      g_once_init_leave (&once, 1);
    }

  return pool;
}

static void
push_token (Work *work)
{
  g_thread_pool_push (get_pool (), ref_work (work), NULL);
}

WmTileStore *
wm_tile_store_new (const char *path, const char *sha256, const char *cache_dir,
                   GError **error)
{
  WmPyramid *pyramid = wm_pyramid_new (path, sha256, cache_dir, error);
  WmTileStore *self;
  Work *work;

  if (pyramid == NULL)
    return NULL;

  work = g_new0 (Work, 1);
  work->references = 1;
  work->pyramid = pyramid;
  work->context = g_main_context_ref_thread_default ();
  work->cancellable = g_cancellable_new ();
  work->waiting = g_ptr_array_new_with_free_func (g_free);
  g_mutex_init (&work->mutex);

  self = g_new0 (WmTileStore, 1);
  self->references = 1;
  self->work = work;
  work->store = self;
  return self;
}

WmTileStore *
wm_tile_store_ref (WmTileStore *self)
{
  g_atomic_int_inc (&self->references);
  return self;
}

void
wm_tile_store_unref (WmTileStore *self)
{
  if (self == NULL || !g_atomic_int_dec_and_test (&self->references))
    return;

  self->work->store = NULL;
  g_cancellable_cancel (self->work->cancellable);
  wm_tile_store_cancel_waiting (self);
  unref_work (self->work);
  g_free (self);
}

const WmPhotoFacts *
wm_tile_store_get_facts (WmTileStore *self)
{
  return wm_pyramid_get_facts (self->work->pyramid);
}

int
wm_tile_store_get_levels (WmTileStore *self)
{
  return wm_pyramid_get_levels (self->work->pyramid);
}

void
wm_tile_store_get_level_size (WmTileStore *self, int level, int *width, int *height)
{
  wm_pyramid_get_level_size (self->work->pyramid, level, width, height);
}

int
wm_tile_store_level_for_scale (WmTileStore *self, double view_px_per_photo_px)
{
  int level = 0;
  double per_tile_px = view_px_per_photo_px * 2; /* of the next level */

  /* A hair more than 1: zooming to exactly 50 % is level 1. */
  while (level + 1 < wm_tile_store_get_levels (self) && per_tile_px <= 1.0001)
    {
      level++;
      per_tile_px *= 2;
    }

  return level;
}

static gboolean
is_tile (WmTileStore *self, int level, int column, int row)
{
  int width, height;

  if (level < 0 || level >= wm_tile_store_get_levels (self) || column < 0 || row < 0)
    return FALSE;
  wm_tile_store_get_level_size (self, level, &width, &height);
  return column <= (width - 1) / WM_TILE && row <= (height - 1) / WM_TILE;
}

WmPixels *
wm_tile_store_peek (WmTileStore *self, int level, int column, int row)
{
  return wm_tile_memory_get (wm_pyramid_get_owner (self->work->pyramid), level, column,
                             row);
}

static Request *
find_waiting (Work *work, int level, int column, int row)
{
  for (guint i = 0; i < work->waiting->len; i++)
    {
      Request *request = g_ptr_array_index (work->waiting, i);

      if (request->level == level && request->column == column && request->row == row)
        return request;
    }

  return NULL;
}

void
wm_tile_store_request (WmTileStore *self, int level, int column, int row, int priority,
                       WmTileReady ready, gpointer user_data)
{
  Work *work = self->work;
  Request wanted = { level, column, row, priority, ready, user_data };
  g_autoptr (WmPixels) there = NULL;
  Request *waiting;

  g_return_if_fail (is_tile (self, level, column, row));

  there = wm_tile_store_peek (self, level, column, row);
  if (there != NULL)
    {
      post_answer (work, &wanted, there, NULL);
      return;
    }

  g_mutex_lock (&work->mutex);
  waiting = find_waiting (work, level, column, row);
  if (waiting != NULL)
    *waiting = wanted;
  else
    g_ptr_array_add (work->waiting, g_memdup2 (&wanted, sizeof wanted));
  g_mutex_unlock (&work->mutex);

  if (waiting != NULL)
    return;
  push_token (work);

  /* One token more: it finds nothing waiting and prepares what is still missing. */
  if (wm_pyramid_wants_preparing (work->pyramid))
    push_token (work);
}

void
wm_tile_store_cancel_waiting (WmTileStore *self)
{
  g_mutex_lock (&self->work->mutex);
  g_ptr_array_set_size (self->work->waiting, 0);
  g_mutex_unlock (&self->work->mutex);
}

static void
load_preview (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  /* Runs on a thread of GTask's. */
  Work *work = data;
  g_autoptr (GError) error = NULL;
  WmPixels *preview = wm_pyramid_get_preview (work->pyramid, cancellable, &error);

  if (preview != NULL)
    g_task_return_pointer (task, preview, (GDestroyNotify)wm_pixels_unref);
  else
    g_task_return_error (task, g_steal_pointer (&error));
}

void
wm_tile_store_get_preview_async (WmTileStore *self, GCancellable *cancellable,
                                 GAsyncReadyCallback callback, gpointer user_data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, user_data);

  g_task_set_source_tag (task, wm_tile_store_get_preview_async);
  g_task_set_task_data (task, ref_work (self->work), (GDestroyNotify)unref_work);
  g_task_run_in_thread (task, load_preview);
}

WmPixels *
wm_tile_store_get_preview_finish (WmTileStore *self, GAsyncResult *result, GError **error)
{
  g_return_val_if_fail (g_task_is_valid (result, NULL), NULL);

  return g_task_propagate_pointer (G_TASK (result), error);
}

WmPixels *
wm_tile_store_get_now (WmTileStore *self, int level, int column, int row,
                       GCancellable *cancellable, GError **error)
{
  WmPixels *tile;

  g_return_val_if_fail (is_tile (self, level, column, row), NULL);

  tile = wm_tile_store_peek (self, level, column, row);
  if (tile != NULL)
    return tile;

  return wm_pyramid_make (self->work->pyramid, level, &column, &row, 1, cancellable,
                          error);
}

void
wm_tiles_prepare (const char *path, const char *sha256, const char *cache_dir,
                  GCancellable *cancellable)
{
  WmPyramid *pyramid = wm_pyramid_new (path, sha256, cache_dir, NULL);

  if (pyramid == NULL)
    return;
  wm_pyramid_prepare (pyramid, cancellable);
  wm_pyramid_free (pyramid);
}
