/* align-models.h: ways in which the after photo could lie on the before photo
 *
 * Private to the alignment. The cloth and the piece may have moved differently,
 * so there is not one answer to look for but several; which of them is the
 * piece's is decided later, by looking (align-track.h).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/align-matrix.h"
#include "photo/align-features.h"

/**
 * WmModel:
 * @to_after: before pixels to after pixels, level 0
 * @support: matches that agree (0 when it comes from outlines)
 */
typedef struct
{
  double to_after[9];
  int support;
} WmModel;

/* Appends to @models (element-type WmModel) what several matches agree on. */
void wm_models_from_matches (const WmFeatures *before, const WmFeatures *after,
                             const GArray *matches, double width, double height,
                             GArray *models);

/**
 * wm_models_from_outlines:
 *
 * Appends ways to lay the outlines of the two pieces on each other, best first,
 * at most @most. Nothing when the piece could not be told from the ground.
 */
void wm_models_from_outlines (const WmPhotoPlanes *before,
                              const WmPieceMask *before_piece, const WmPhotoPlanes *after,
                              const WmPieceMask *after_piece, int most, GArray *models);
