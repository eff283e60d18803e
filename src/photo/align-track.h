/* align-track.h: looking for places of the piece on the other photo, and
 * fitting the matrix to where they were found
 *
 * Private to the alignment. A place is a small square around edges of the piece.
 * What is compared is the direction and, damped, the strength of the slopes, so
 * that neither exposure nor one bright reflection decides. A place on a straight
 * edge only tells how far it is off across the edge, and is only asked that.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/align-ground.h"
#include "photo/align-matrix.h"

/**
 * WmPlace:
 * @x, @y: corner between four pixels of the level it was chosen on
 * @across_x, @across_y: direction across the edge, unit
 * @along: how much is known along the edge, 0 (nothing) to 1 (as much)
 */
typedef struct
{
  int x;
  int y;
  float across_x;
  float across_y;
  float along;
} WmPlace;

/**
 * WmSighting: where a place was found
 * @at: the place, level 0 pixels of the photo it was chosen on
 * @shift: found so far from where it was expected, same pixels
 * @likeness: -1 to 1; below -1 when it fell outside the other photo
 * @off: what the fit leaves over, counted as the place can tell it
 * @agrees: found, alike, and where the fit says
 */
typedef struct
{
  WmPlace place;
  WmPoint at;
  WmPoint shift;
  double likeness;
  double off;
  gboolean agrees;
} WmSighting;

/* Squared length of (@ex, @ey) as the place can tell it. */
static inline double
wm_place_off2 (const WmPlace *p, double ex, double ey)
{
  double across = ex * p->across_x + ey * p->across_y;
  double along = -ex * p->across_y + ey * p->across_x;

  return across * across + p->along * along * along;
}

/* An edge counts so much of a corner: it agrees by accident more often. */
#define WM_EDGE_COUNTS 0.20

static inline double
wm_place_weight (const WmPlace *p)
{
  return WM_EDGE_COUNTS + (1 - WM_EDGE_COUNTS) * p->along;
}

/**
 * WmTrack:
 * @tried: places that lie inside the other photo
 * @agreed: of these, that agree with the fit
 * @share: share of the places tried that agree, corners counting more than
 *   edges, 0 to 1
 * @spread: share of the parts of the piece in which places agree, 0 to 1
 * @residual_px: median of @off over those that agree, level 0 pixels
 * @doubt_px: standard uncertainty of the matrix, root mean square over the
 *   piece, level 0 pixels; large when nothing holds it one way (a round bangle)
 */
typedef struct
{
  int tried;
  int agreed;
  double share;
  double spread;
  double residual_px;
  double doubt_px;
} WmTrack;

/* Places on the piece, spread out, strongest first. Returns: (element-type
 * WmPlace): owned by the caller */
GArray *
wm_places_choose (const WmPlane *grey, const WmPieceMask *piece, int level, int most);

/* The squares around places, cut once for all candidates. Opaque. */
typedef struct _WmSquares WmSquares;

/* Only pixels on @piece are compared. */
WmSquares *wm_squares_new (const WmPlane *grey, const WmPieceMask *piece, int level,
                           const GArray *places);
void wm_squares_free (WmSquares *squares);

/**
 * wm_track_places:
 * @n: looks for the first so many of @places
 * @reach: looks so many pixels of @level each way, at most WM_TRACK_REACH
 * @sightings: (out): @n
 */
void wm_track_places (const WmSquares *squares, WmPlane *const *after, int level,
                      const double to_after[9], const GArray *places, int n, int reach,
                      WmSighting *sightings);

#define WM_TRACK_REACH 8

/**
 * wm_track_fit:
 * @level: on which the places were tracked
 * @to_after: (inout): moved to where most places were found
 *
 * Returns: FALSE when too few places were seen; @to_after is then untouched
 */
gboolean wm_track_fit (WmSighting *sightings, int n, int level, WmPoint centre,
                       double radius, double to_after[9], WmTrack *track);

/* Judges the sightings against the matrix they were looked for with. */
void wm_track_judge (WmSighting *sightings, int n, int level, WmTrack *track);
