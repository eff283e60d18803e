/* measure.c: aligns pairs of photos and prints what came out, one line of JSON
 * each, for tests/align/run and tests/bench/align
 *
 * Standard input: BEFORE AFTER, one pair a line, no blanks in the names. Standard
 * output: as `wearmark align --json`, with the seconds the arithmetic took, photos
 * already in memory ("seconds" by the wall clock, the lesser of two runs; "cpu_seconds"
 * over all threads).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <stdio.h>
#include <time.h>

#include "photo/align.h"
#include "photo/load.h"

static void
print_answer (const WmAlignment *out, double seconds, double cpu_seconds)
{
  printf ("{\"aligned\":%s,\"reason\":\"%s\",\"residual_px\":%.4f,\"overlap\":%.4f,"
          "\"places\":%d,\"places_tried\":%d,\"seconds\":%.4f,\"cpu_seconds\":%.4f,"
          "\"matrix\":[",
          out->aligned ? "true" : "false", wm_align_reason_name (out->reason),
          out->residual_px, out->overlap, out->places, out->places_tried, seconds,
          cpu_seconds);
  for (int k = 0; k < 9; k++)
    printf ("%s%.12g", k > 0 ? "," : "", out->matrix[k]);
  printf ("]}\n");
  fflush (stdout);
}

static gboolean
measure_pair (const char *before_path, const char *after_path, GError **error)
{
  g_autoptr (WmPixels) before =
      wm_photo_load_fit (before_path, WM_ALIGN_WORK_PX, WM_ALIGN_WORK_PX, NULL, error);
  g_autoptr (WmPixels) after = NULL;
  WmAlignment out;
  double seconds = 1e9, cpu_seconds = 1e9;

  if (before == NULL)
    return FALSE;
  after = wm_photo_load_fit (after_path, WM_ALIGN_WORK_PX, WM_ALIGN_WORK_PX, NULL, error);
  if (after == NULL)
    return FALSE;
  WmAlignImage b = { before->data, before->width, before->height, before->stride, 4 };
  WmAlignImage a = { after->data, after->width, after->height, after->stride, 4 };
  for (int run = 0; run < 2; run++)
    {
      gint64 start_us = g_get_monotonic_time ();
      clock_t start = clock ();

      if (!wm_align_images (&b, &a, NULL, NULL, NULL, &out, error))
        return FALSE;
      seconds = MIN (seconds, (double)(g_get_monotonic_time () - start_us) / 1e6);
      cpu_seconds = MIN (cpu_seconds, (double)(clock () - start) / CLOCKS_PER_SEC);
    }
  print_answer (&out, seconds, cpu_seconds);
  return TRUE;
}

int
main (void)
{
  char line[4096], before[2048], after[2048];

  while (fgets (line, sizeof line, stdin) != NULL
         && sscanf (line, "%2047s %2047s", before, after) == 2)
    {
      g_autoptr (GError) error = NULL;

      if (!measure_pair (before, after, &error))
        {
          fprintf (stderr, "align-measure: %s\n", error->message);
          return 1;
        }
    }
  return 0;
}
