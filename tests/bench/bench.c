/* bench.c: measuring two things in turn and printing them as one row
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "bench.h"

#include <sys/resource.h>

double
bench_cpu_s (void)
{
  struct rusage usage;

  getrusage (RUSAGE_SELF, &usage);
  return (double)(usage.ru_utime.tv_sec + usage.ru_stime.tv_sec)
         + 1e-6 * (double)(usage.ru_utime.tv_usec + usage.ru_stime.tv_usec);
}

static double
now_s (gboolean wall)
{
  return wall ? 1e-6 * (double)g_get_monotonic_time () : bench_cpu_s ();
}

static double
run_once (BenchRun run, gpointer data, gboolean wall)
{
  double start = now_s (wall);

  run (data);
  return now_s (wall) - start;
}

void
bench_in_turn (BenchRun ours, BenchRun peer, gpointer data, int times, gboolean wall,
               double *out_ours_s, double *out_peer_s)
{
  *out_ours_s = G_MAXDOUBLE;
  *out_peer_s = G_MAXDOUBLE;
  for (int i = 0; i < times; i++)
    {
      *out_ours_s = MIN (*out_ours_s, run_once (ours, data, wall));
      *out_peer_s = MIN (*out_peer_s, run_once (peer, data, wall));
    }
}

void
bench_print_ms (const char *what, double ours_s, double peer_s, const char *goal)
{
  g_print ("%s\t%.2f ms\t%.2f ms\t%.2f\t%s\n", what, 1e3 * ours_s, 1e3 * peer_s,
           ours_s / peer_s, goal);
}
