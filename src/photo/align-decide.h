/* align-decide.h: whether an answer may be given, and which
 *
 * Private to the alignment.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/align-engine.h"

/**
 * wm_align_decide:
 * @candidates: (element-type WmCandidate): sorted here, best first
 *
 * Returns: WM_ALIGN_FOUND when the first candidate may be given as the answer,
 * else why not
 */
WmAlignReason
wm_align_decide (GArray *candidates, const WmSide *before, const WmSide *after);

/* Whether the answer, followed to full size, may still be given. */
WmAlignReason wm_align_decide_finished (const WmCandidate *finished, const WmSide *before,
                                        const WmSide *after);

/**
 * WmInspection: what speaks against an answer, means of both ways, 0 to 1
 * @elsewhere: share of the piece that lies together 3 to 10 level 0 pixels beside
 *   where the matrix carries it
 * @barren: share of the places around which hardly any agrees
 * @inside: share of the places well inside the outline that agree
 * @inside_places: how many of these there are, on the photo that has fewer
 */
typedef struct
{
  double elsewhere;
  double barren;
  double inside;
  int inside_places;
} WmInspection;

/* FALSE when there is nothing to be seen. */
gboolean wm_candidate_inspect (const WmCandidate *candidate, const WmSide *before,
                               const WmSide *after, WmInspection *out);

/* Whether one candidate near a hand-made start may be given: as above, without
 * rivals, and with less asked, as the hand has vouched for the piece. */
WmAlignReason wm_align_decide_start (const WmCandidate *candidate, const WmSide *before,
                                     const WmSide *after);

/* Furthest apart that two matrices carry the rim of the piece, level 0 pixels. */
double
wm_matrix_difference (const double a[9], const double b[9], const WmPieceMask *piece);
