/* snap-task.c: a span moved to the metal's edges, off the interface thread
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/measuring/snap-task.h"

#include "reckon/scale.h"

/* However small the photo is shown: farther off it would be another edge. */
#define REACH_MOST_PX 24.0

typedef struct
{
  char *path;
  WmPoint a, b;
  double reach_px;
} Job;

static void
job_free (gpointer data)
{
  Job *job = data;

  g_free (job->path);
  g_free (job);
}

double
wm_snap_hand_u_px (double zoom)
{
  return MAX (WM_PLACED_POINT_U_PX, 1 / zoom);
}

/* In a worker thread; sees no widget. */
static void
snap (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  Job *job = task_data;
  WmSnappedEnd ends[2];
  GError *error = NULL;
  WmResult result;

  if (wm_photo_snap_span (job->path, job->a, job->b, job->reach_px, ends, &result,
                          cancellable, &error))
    g_task_return_pointer (task, g_memdup2 (ends, sizeof ends), g_free);
  else if (error != NULL)
    g_task_return_error (task, error);
  else
    g_task_return_pointer (task, NULL, NULL);
}

void
wm_snap_async (const char *path, WmPoint a, WmPoint b, double zoom,
               GCancellable *cancellable, GAsyncReadyCallback callback,
               gpointer user_data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, user_data);
  Job *job = g_new0 (Job, 1);

  job->path = g_strdup (path);
  job->a = a;
  job->b = b;
  /* The edge finder takes a hand to be off by a share of the reach. */
  job->reach_px = CLAMP (wm_snap_hand_u_px (zoom) / WM_EDGE_HAND_SHARE, WM_EDGE_REACH_PX,
                         REACH_MOST_PX);
  g_task_set_task_data (task, job, job_free);
  g_task_set_check_cancellable (task, TRUE);
  g_task_run_in_thread (task, snap);
}

gboolean
wm_snap_finish (GAsyncResult *result, WmSnappedEnd ends[2], GError **error)
{
  g_autofree WmSnappedEnd *found = g_task_propagate_pointer (G_TASK (result), error);

  if (found == NULL)
    return FALSE;
  ends[0] = found[0];
  ends[1] = found[1];
  return TRUE;
}
