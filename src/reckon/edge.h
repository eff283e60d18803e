/* edge.h: where exactly the metal's edge lies on a line through the photo
 *
 * Pure computation: no I/O, no GLib, no state; safe on any thread. The pixels come
 * from the photo room as an array.
 *
 * The profile is coded as the eye sees it, smoothed with a Gaussian of WM_EDGE_BLUR_PX
 * and differentiated; an edge is where it is steepest, refined between samples with a
 * parabola through the logarithms of the slope. Coding moves a blurred edge towards the
 * dark side: corrected, and trusted to half. Where several edges lie within reach, clear
 * and near ones are likelier to be the one that was meant.
 * The uncertainty has four parts in quadrature: noise, carried through the filter; half
 * the correction; WM_EDGE_MODEL_U_PX for what a real edge is not (a clean step); and the
 * doubt which edge was meant, or whether it is seen at all. The edge can always be
 * overruled by hand.
 *
 * Source: steepest-slope edge after Canny 1986 (from memory); the noise part is the law
 * of propagation on the filter (derived); the model part and the doubt were set on
 * rendered polished wires, then held against the sample photos
 * (tests/reckon/campaign-measure says how many errors lie within the expanded
 * uncertainty).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/value.h"

#define WM_EDGE_BLUR_PX 1.0
#define WM_EDGE_MODEL_U_PX 0.25
#define WM_EDGE_MAX_SAMPLES 4096
/* Where the hand really meant, against where it put the end: standard deviation a quarter
 * of the reach, so 2 px of 8 (common practice, no source). */
#define WM_EDGE_HAND_SHARE 0.25
/* How far from the placed end the edge is looked for unless the caller says. */
#define WM_EDGE_REACH_PX 8.0

/* Light along a line. With three channels (red, green, blue) an edge of colour counts
 * like one of brightness: gold that mirrors its ground is as bright as the ground. */
typedef struct
{
  const double *light; /* n times n_channels, channel by channel within a sample, linear,
                          0..1 */
  int n;               /* samples, 16..WM_EDGE_MAX_SAMPLES */
  int n_channels;      /* 1 or 3 */
  double samples_per_px; /* above 0, at most 8 */
} WmLightProfile;

typedef struct
{
  double at;        /* place in samples, fractional */
  double u_px;      /* standard uncertainty in px along the profile, doubt included */
  double u_seen_px; /* the same once a person has seen that this is the edge meant */
  double contrast;  /* step as the eye sees it, 0..1; positive when it gets lighter with
                       rising index */
} WmEdge;

/**
 * wm_linear_from_srgb:
 * @coded: 0..1
 *
 * Returns: the value proportional to light, 0..1 (IEC 61966-2-1)
 */
double wm_linear_from_srgb (double coded);

/**
 * wm_edge_find:
 * @profile: the light
 * @near: sample index where the user placed the end
 * @reach_px: how far either side to look, 1..200
 * @sign: +1 only edges getting lighter with rising index, -1 darker, 0 either
 *
 * Returns: WM_OK and the edge; WM_NO_EDGE when nothing stands out of the noise or every
 * step is under 3 % of white; WM_TOO_FEW, WM_NOT_A_NUMBER, WM_OUT_OF_RANGE; @which is
 * profile or reach_px
 */
WmResult wm_edge_find (const WmLightProfile *profile, double near, double reach_px,
                       int sign, WmEdge *out, const char **which);

/**
 * wm_edge_snap_span:
 * @start, @end: sample indices of the two placed ends, @start below @end
 *
 * Snaps both ends, each no further than half of the span. The two edges of one piece of
 * metal against one ground have opposite signs as a rule, so such a pair is preferred.
 * An end without a clear edge stays where it was placed: its contrast is 0 and its
 * uncertainty that of the hand.
 *
 * Returns: as wm_edge_find; WM_NO_EDGE only when neither end has one
 */
WmResult
wm_edge_snap_span (const WmLightProfile *profile, double start, double end,
                   double reach_px, WmEdge *first, WmEdge *second, const char **which);
