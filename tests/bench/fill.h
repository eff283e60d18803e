/* fill.h: an archive of many invented pieces, for measuring
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "archive/archive.h"

/* Adds @n pieces: an owner for every third, one or two visits each over ten years, a
 * few checks, a stone group. The same for the same @n. Exits on any failure. */
void bench_fill (WmArchive *archive, guint n);

/* Words by which pieces are found: names, kinds, faults; NULL-terminated. */
extern const char *const bench_words[];
