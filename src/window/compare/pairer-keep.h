/* pairer-keep.h: what the engine said, kept with the pair
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/compare/pairer-job.h"
#include "window/session.h"

/* As an edit by the program, or of the jeweller where the pair was chosen by hand. Marks
 * are carried over with the first answer for a pair. */
void wm_pairer_keep (WmSession *session, WmPairerJob *job);

/**
 * wm_pairer_list_past:
 * @photos, @pairings: of the shown visit
 * @out_earlier: (out): owns the photos of the visit before
 *
 * The photos of the visit before, each with the one of today's arrival that shows the
 * same: as it left the shop, else as it came in.
 */
GArray *wm_pairer_list_past (WmSession *session, GPtrArray *photos, GPtrArray *pairings,
                             GPtrArray **out_earlier);
