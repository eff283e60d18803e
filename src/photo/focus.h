/* focus.h: how wide the edges of a picture are
 *
 * Inside this room only.
 *
 * Each edge is compared with itself blurred a little more. For a step blurred by a
 * gaussian of s px, its steepest slope after smoothing by p px and by q px is in the
 * ratio r = sqrt ((s^2 + q^2) / (s^2 + p^2)), so s^2 = (q^2 - r^2 p^2) / (r^2 - 1).
 * Smoothing by p first keeps noise out; measuring only on edges keeps plain metal
 * out, which has nothing to be sharp or blurred. (The reblur idea: reckoning
 * reference, section 8; the relation is that of gaussians and exact for a step.)
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/pixels.h"

#define WM_EDGE_DIRECTIONS 8

typedef struct
{
  float sigma;    /* px of blur */
  float strength; /* grey levels a px, after the first smoothing */
  guint16 x, y;
  guint8 is_burnt;  /* beside pixels that are white: the slope may not be the lens's */
  guint8 direction; /* of the slope: 0 = across x, in steps of 22.5 degrees */
} WmEdge;

/* (transfer full) GArray of WmEdge, thinned evenly to @most. */
GArray *wm_edges_find (WmPixels *pixels, guint most);

/* Standard deviation of the noise, grey levels, by the median of J. Immerkaer's
 * operator (1996, from memory), which ignores edges. */
double wm_noise_estimate (WmPixels *pixels);

/* The blur of the sharp part of the picture: the median over the stronger edges, px;
 * NAN with fewer than @least of them. */
double wm_edges_blur (const GArray *edges, guint least);

/* The same over one direction of slopes, all edges. */
double wm_edges_blur_along (const GArray *edges, int direction, guint least);
