/* pairs.h: which photo belongs to which, and what is known of how they meet
 *
 * A pair is a photo of before and one of after: of one visit, or the last visit's and
 * today's. Rules on records only: nothing is read and nothing is written here.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "record/pairing.h"
#include "record/photo.h"

/* Borrowed from the lists it was made from. */
typedef struct
{
  WmPhoto *before;
  WmPhoto *after;
  WmPairing *pairing; /* (nullable): nothing is known yet */
} WmPair;

/**
 * wm_pairs_list:
 * @befores, @afters: (element-type WmPhoto): in the order of the strip
 * @pairings: (element-type WmPairing): all that may concern them
 *
 * A photo of before goes with the one a pairing says (one by hand before one by the
 * program, then the latest); else with one of the same view; the only two photos go
 * together whatever their views. No photo is in two pairs.
 *
 * Returns: (transfer full) (element-type WmPair): in the order of @befores
 */
GArray *wm_pairs_list (GPtrArray *befores, GPtrArray *afters, GPtrArray *pairings);

/* Whether the program has to look: nothing is known, or what it said itself is of an
 * older engine. What a person made is never made again. */
gboolean wm_pair_is_open (const WmPair *pair, gint64 engine);

/* The pairing of these two photos, preferring as wm_pairs_list () does, or NULL. */
WmPairing *
wm_pairs_find (GPtrArray *pairings, const WmId *before_id, const WmId *after_id);

/* Made or confirmed by a person. */
gboolean wm_pairing_is_by_hand (WmPairing *pairing);

/* After to before, row by row. FALSE if the photos could not be aligned. */
gboolean wm_pairing_get_matrix (WmPairing *pairing, double matrix[9]);
/* NULL: refused. */
void wm_pairing_set_matrix (WmPairing *pairing, const double *matrix);

/* Those of one moment, in order of position. (transfer container) */
GPtrArray *wm_photos_of_moment (GPtrArray *photos, const char *moment);
