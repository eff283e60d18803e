/* bench.h: measuring two things in turn and printing them as one row
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

/* CPU seconds of this process so far, user and system. */
double bench_cpu_s (void);

typedef void (*BenchRun) (gpointer data);

/* CPU (or, with @wall, clock) seconds of the best of @times runs of each, the two in
 * turn, so that whatever else the machine does meets both. */
void bench_in_turn (BenchRun ours, BenchRun peer, gpointer data, int times, gboolean wall,
                    double *out_ours_s, double *out_peer_s);

/* One row, milliseconds. */
void bench_print_ms (const char *what, double ours_s, double peer_s, const char *goal);
