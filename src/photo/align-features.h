/* align-features.h: places on a photo that can be found again on another
 *
 * Private to the alignment. Blobs and corners found in a stack of ever more
 * blurred pictures (differences of Gaussians), each with its size, its turn and
 * a description that does not depend on either, nor on exposure. After Lowe
 * 2004 (Distinctive image features from scale-invariant keypoints), with the
 * square-root comparison of Arandjelovic and Zisserman 2012.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/align-ground.h"

#define WM_DESCRIPTION 128

/**
 * WmFeature:
 * @x, @y, @size: place and sigma of the blob, level 0 pixels
 * @angle: radians
 * @strength: contrast of the blob, grey levels
 * @on_piece: lies on the piece as far as that could be told
 */
typedef struct
{
  float x;
  float y;
  float size;
  float angle;
  float strength;
  gboolean on_piece;
} WmFeature;

typedef struct
{
  int n;
  WmFeature *at;       /* n, owned */
  gint16 *description; /* n x WM_DESCRIPTION, owned */
} WmFeatures;

/* Features of level @level of @planes, at most about @most of them, the piece
 * first. */
WmFeatures *wm_features_new (const WmPhotoPlanes *planes, const WmPieceMask *piece,
                             int level, int most);
void wm_features_free (WmFeatures *features);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (WmFeatures, wm_features_free)

/**
 * WmMatch:
 * @before, @after: index of the feature on either photo
 * @ratio: distance to the best over distance to the next best, 0 to 1:
 *   the lower, the surer
 */
typedef struct
{
  int before;
  int after;
  float ratio;
} WmMatch;

/* Pairs that are each other's best, surest first. Returns: (element-type
 * WmMatch): array, owned by the caller */
GArray *wm_features_match (const WmFeatures *before, const WmFeatures *after);

/* align-describe.c: turns and descriptions of @n found blobs. */
typedef struct
{
  const WmPlane *plane; /* blurred to about the blob's size */
  float x;              /* pixels of @plane */
  float y;
  float sigma; /* pixels of @plane */
} WmBlob;

/* Up to two turns, radians; returns how many. */
int wm_blob_turns (const WmBlob *blob, float angles[2]);
void wm_blob_describe (const WmBlob *blob, float angle, gint16 *description);
