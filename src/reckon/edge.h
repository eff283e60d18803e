/* edge.h: where exactly the metal's edge lies on a grey profile
 *
 * Pure computation: no I/O, no GLib, no state; safe on any thread. The pixels come
 * from the photo room as an array.
 *
 * The profile is smoothed with a Gaussian of WM_EDGE_BLUR_PX and differentiated; the
 * edge is the steepest place, refined between samples with a parabola
 * through the logarithms of the slope. Grey values
 * must be proportional to light (wm_linear_from_srgb), 0 black to 1 white: on
 * gamma-coded values a blurred edge seems to lie towards the dark side.
 * Where several edges lie within reach, steep and near ones are likelier to be the one
 * that was meant. The uncertainty has three parts in quadrature: noise, carried through
 * the filter; WM_EDGE_MODEL_U_PX for what a real edge is not (a clean step); and the
 * doubt which edge was meant. The edge can always be overruled by hand.
 *
 * Source: steepest-slope edge after Canny 1986 (from memory); the noise part is the law
 * of propagation on the filter (derived); the model part is our own measurement over the
 * rendered sample photos (tests/reckon/campaign-measure).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/value.h"

#define WM_EDGE_BLUR_PX 1.0
#define WM_EDGE_MODEL_U_PX 0.25
#define WM_EDGE_MAX_SAMPLES 4096
/* How far from the placed end the edge is looked for unless the caller says. */
#define WM_EDGE_REACH_PX 8.0

typedef struct
{
  double at;       /* place in samples, fractional */
  double u_px;     /* standard uncertainty in px along the profile */
  double contrast; /* step in grey, positive when it gets lighter with rising index */
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
 * @grey: @n samples along a line, 16..WM_EDGE_MAX_SAMPLES, linear light 0..1
 * @samples_per_px: above 0, at most 8
 * @near: sample index where the user placed the end
 * @reach_px: how far either side to look, 1..200
 * @sign: +1 only edges getting lighter with rising index, -1 darker, 0 either
 *
 * Returns: WM_OK and the edge; WM_NO_EDGE when nothing stands out of the noise or every
 * step is under 3 % of white; WM_TOO_FEW, WM_NOT_A_NUMBER, WM_OUT_OF_RANGE; @which is
 * profile or reach_px
 */
WmResult wm_edge_find (const double *grey, int n, double samples_per_px, double near,
                       double reach_px, int sign, WmEdge *out, const char **which);

/**
 * wm_edge_snap_span:
 * @start, @end: sample indices of the two placed ends, @start below @end
 *
 * Snaps both ends, each no further than half of the span. The two edges of one piece of
 * metal against one ground have opposite signs as a rule, so such a pair is preferred.
 *
 * Returns: as wm_edge_find
 */
WmResult wm_edge_snap_span (const double *grey, int n, double samples_per_px,
                            double start, double end, double reach_px, WmEdge *first,
                            WmEdge *second, const char **which);
