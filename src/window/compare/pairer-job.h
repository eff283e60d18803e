/* pairer-job.h: two photos for the alignment engine, on a worker
 *
 * A copy of all that the worker needs; its answer is read on the main thread when it is
 * done.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "archive/archive.h"
#include "photo/align.h"
#include "report/pairs.h"
#include "window/compare/pairer.h"

typedef struct
{
  WmId piece_id, before_id, after_id;
  WmId pairing_id; /* to be answered again, or none */
  char *before_path, *after_path;
  gboolean has_start;
  double start[9];
  GCancellable *cancellable;
  int permille; /* done so far; atomic */

  gboolean is_choice;    /* the jeweller said that these belong together */
  gboolean is_displaced; /* stopped to make way, not by hand */
  WmPairerRefined told;  /* or NULL: kept as a pairing */
  GObject *told_data;

  WmAlignment alignment; /* when it is done without error */
} WmPairerJob;

/* Called on the main thread; takes the job. */
typedef void (*WmPairerJobDone) (WmPairerJob *job, const GError *error,
                                 gpointer user_data);

WmPairerJob *
wm_pairer_job_new (WmArchive *archive, const WmId *piece_id, const WmPair *pair);
void wm_pairer_job_set_start (WmPairerJob *job, const double start[9],
                              WmPairerRefined told, GObject *told_data);
void wm_pairer_job_run (WmPairerJob *job, WmPairerJobDone done, gpointer user_data);
void wm_pairer_job_cancel (WmPairerJob *job);
double wm_pairer_job_get_progress (WmPairerJob *job);
void wm_pairer_job_free (WmPairerJob *job);
