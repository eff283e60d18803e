/* align-engine.h: from two photos to one matrix and how sure it is
 *
 * Private to the alignment.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/align-models.h"
#include "photo/align-track.h"

/* Levels on which places are tracked: 400, 800 and 1600 pixels long. */
#define WM_TRACK_LEVELS 3

/* What is known of one photo. */
typedef struct
{
  WmPhotoPlanes *planes;
  WmPieceMask *piece;
  WmFeatures *features; /* NULL when only a start is refined */
  GArray *places[WM_TRACK_LEVELS];
  WmSquares *squares[WM_TRACK_LEVELS];
} WmSide;

/**
 * WmCandidate: one model, as far as it was followed
 * @to_after: before pixels to after pixels, level 0
 * @score: share of the places tried that agree, lessened when few were tried
 * @middle: as found on level 1
 * @back: the same for places of the after photo looked for on the before photo
 * @is_lost: fell apart while it was followed
 * @level: finest level it was followed to
 */
typedef struct
{
  double to_after[9];
  WmTrack track;
  WmTrack middle;
  WmTrack back;
  double score;
  gboolean is_lost;
  int level;
  int support;
} WmCandidate;

WmSide *wm_side_new (const WmAlignImage *image, gboolean with_features);
void wm_side_free (WmSide *side);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (WmSide, wm_side_free)

/* Follows @candidate on @level: looks @reach pixels around, fits, looks again
 * nearer. FALSE when it falls apart. */
gboolean wm_candidate_follow (WmCandidate *candidate, const WmSide *before,
                              const WmSide *after, int level, int reach);

/* The same places of level 1 the other way round, into @back. */
void wm_candidate_look_back (WmCandidate *candidate, const WmSide *before,
                             const WmSide *after);

/* Share of the places of level 1 that agree with the matrix as it stands. */
double wm_candidate_share_now (const WmCandidate *candidate, const WmSide *before,
                               const WmSide *after);

/* To full size, when that is measurably a fit: else left as it is. */
void
wm_candidate_polish (WmCandidate *candidate, const WmSide *before, const WmSide *after);

/* All candidates, best first. Returns: (element-type WmCandidate) */
GArray *wm_candidates_new (const WmSide *before, const WmSide *after);
