/* pairer-job.c: two photos for the alignment engine, on a worker
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/compare/pairer-job.h"

#include <string.h>

typedef struct
{
  WmPairerJob *job;
  WmPairerJobDone done;
  gpointer user_data;
} Run;

WmPairerJob *
wm_pairer_job_new (WmArchive *archive, const WmId *piece_id, const WmPair *pair)
{
  WmPairerJob *job = g_new0 (WmPairerJob, 1);

  job->piece_id = *piece_id;
  job->before_id = *wm_record_get_id (WM_RECORD (pair->before));
  job->after_id = *wm_record_get_id (WM_RECORD (pair->after));
  if (pair->pairing != NULL)
    job->pairing_id = *wm_record_get_id (WM_RECORD (pair->pairing));
  job->before_path = wm_archive_photo_path (archive, pair->before);
  job->after_path = wm_archive_photo_path (archive, pair->after);
  job->cancellable = g_cancellable_new ();
  return job;
}

void
wm_pairer_job_set_start (WmPairerJob *job, const double start[9], WmPairerRefined told,
                         GObject *told_data)
{
  job->has_start = TRUE;
  memcpy (job->start, start, sizeof job->start);
  job->told = told;
  job->told_data = g_object_ref (told_data);
}

/* On the worker. */
static void
on_progress (double done, gpointer user_data)
{
  WmPairerJob *job = user_data;

  g_atomic_int_set (&job->permille, (int)(done * 1000));
}

/* On a worker. */
static void
work (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  WmPairerJob *job = ((Run *)data)->job;
  GError *error = NULL;
  gboolean done =
      job->has_start
          ? wm_align_refine (job->before_path, job->after_path, job->start, cancellable,
                             on_progress, job, &job->alignment, &error)
          : wm_align_photos (job->before_path, job->after_path, cancellable, on_progress,
                             job, &job->alignment, &error);

  if (done)
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

static void
on_worked (GObject *source, GAsyncResult *result, gpointer unused)
{
  Run *run = g_task_get_task_data (G_TASK (result));
  g_autoptr (GError) error = NULL;

  g_task_propagate_boolean (G_TASK (result), &error);
  run->done (run->job, error, run->user_data);
}

void
wm_pairer_job_run (WmPairerJob *job, WmPairerJobDone done, gpointer user_data)
{
  g_autoptr (GTask) task = g_task_new (NULL, job->cancellable, on_worked, NULL);
  Run *run = g_new0 (Run, 1);

  *run = (Run) { job, done, user_data };
  g_task_set_task_data (task, run, g_free);
  g_task_run_in_thread (task, work);
}

void
wm_pairer_job_cancel (WmPairerJob *job)
{
  g_cancellable_cancel (job->cancellable);
}

double
wm_pairer_job_get_progress (WmPairerJob *job)
{
  return g_atomic_int_get (&job->permille) / 1000.0;
}

void
wm_pairer_job_free (WmPairerJob *job)
{
  g_clear_object (&job->cancellable);
  g_clear_object (&job->told_data);
  g_free (job->before_path);
  g_free (job->after_path);
  g_free (job);
}
