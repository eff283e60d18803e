/* canvas-metal.c: where on the photo the metal is, so that discs keep off it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/canvas/canvas-private.h"

#include <math.h>

#include "photo/ground.h"

/* Blocks of the preview, px of the preview: 2000 / 16 gives finer cells than the grid
 * over the view. */
#define DETAIL_BLOCK 16

/* Runs on a worker. */
typedef struct
{
  WmPixels *pixels;
  guint8 *map;
  int columns, rows;
} DetailJob;

static void
detail_job_free (gpointer data)
{
  DetailJob *job = data;

  wm_pixels_unref (job->pixels);
  g_free (job->map);
  g_free (job);
}

static void
find_detail (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  DetailJob *job = data;

  job->map = wm_ground_map (job->pixels, DETAIL_BLOCK, &job->columns, &job->rows);
  g_task_return_boolean (task, job->map != NULL);
}

static void
on_detail_found (GObject *source, GAsyncResult *result, gpointer user_data)
{
  WmCanvas *self = WM_CANVAS (source);
  g_autoptr (WmTileLayer) layer = user_data; /* ref taken at the start */
  DetailJob *job = g_task_get_task_data (G_TASK (result));

  /* Another photo is shown by now. */
  if (layer != self->layer || !g_task_propagate_boolean (G_TASK (result), NULL))
    return;
  g_free (self->detail);
  self->detail = g_steal_pointer (&job->map);
  self->detail_columns = job->columns;
  self->detail_rows = job->rows;
  /* Laid out blindly so far: now they can keep off the metal. */
  for (guint i = 0; i < self->items->len; i++)
    ((WmMarkItem *)g_ptr_array_index (self->items, i))->has_disc = FALSE;
  gtk_widget_queue_allocate (GTK_WIDGET (self));
}

void
wm_canvas_learn_detail (WmCanvas *self)
{
  WmPixels *preview = wm_tile_layer_get_preview (self->layer);
  g_autoptr (GTask) task = NULL;
  DetailJob *job;

  if (preview == NULL || self->detail_columns != 0)
    return;
  self->detail_columns = -1; /* asked for */
  job = g_new0 (DetailJob, 1);
  job->pixels = wm_pixels_ref (preview);
  task = g_task_new (self, NULL, on_detail_found, g_object_ref (self->layer));
  g_task_set_task_data (task, job, detail_job_free);
  g_task_run_in_thread (task, find_detail);
}

gboolean
wm_canvas_fill_metal (WmCanvas *self, guint8 metal[WM_METAL_COLUMNS * WM_METAL_ROWS])
{
  const WmViewTransform *view = &self->view;

  if (self->detail == NULL)
    return FALSE;
  for (int row = 0; row < WM_METAL_ROWS; row++)
    for (int column = 0; column < WM_METAL_COLUMNS; column++)
      {
        WmPoint at = { (column + 0.5) * view->view_width / WM_METAL_COLUMNS,
                       (row + 0.5) * view->view_height / WM_METAL_ROWS };
        WmPoint photo = wm_view_transform_to_photo (view, at);
        int x = floor (photo.x / view->photo_width * self->detail_columns);
        int y = floor (photo.y / view->photo_height * self->detail_rows);

        metal[row * WM_METAL_COLUMNS + column] =
            x < 0 || y < 0 || x >= self->detail_columns || y >= self->detail_rows
                ? 0
                : self->detail[y * self->detail_columns + x];
      }
  return TRUE;
}
