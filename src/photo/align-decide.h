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

/* Whether one candidate near a hand-made start may be given: as above, without
 * rivals, and with less asked, as the hand has vouched for the piece. */
WmAlignReason wm_align_decide_start (const WmCandidate *candidate, const WmSide *before,
                                     const WmSide *after);

/* Furthest apart that two matrices carry the rim of the piece, level 0 pixels. */
double
wm_matrix_difference (const double a[9], const double b[9], const WmPieceMask *piece);
