/* edge-profile.h: a light profile as the edge finder sees it; inside this room only
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/edge.h"

#define WM_EDGE_CHANNELS 3

typedef struct
{
  double coded[WM_EDGE_CHANNELS][WM_EDGE_MAX_SAMPLES]; /* as the eye sees it, 0..1 */
  int n;
  int n_channels;
  double per_px; /* samples */
  double blur;   /* of the filter, samples */
  double noise;  /* standard deviation of a sample, all channels together */
} WmEdgeProfile;

/* A step at one place: levels of each channel on either side, and what follows. */
typedef struct
{
  double before[WM_EDGE_CHANNELS];
  double after[WM_EDGE_CHANNELS];
  double direction[WM_EDGE_CHANNELS]; /* of unit length; 0 without a step */
  double height;                      /* root mean square over the channels, 0 or more */
} WmEdgeStep;

/* Codes, copies, finds the noise. @light must have been checked. */
void wm_edge_profile_make (const WmLightProfile *light, WmEdgeProfile *p);

/* Root mean square over the channels of the smoothed profile's slope, a sample. */
double wm_edge_steepness (const WmEdgeProfile *p, int i);

/* The smoothed profile's slope along the step's direction, in units of its height. */
double wm_edge_slope (const WmEdgeProfile *p, const WmEdgeStep *step, int i);

void wm_edge_step_at (const WmEdgeProfile *p, double at, WmEdgeStep *step);

/**
 * wm_edge_coded_shift:
 * @blur: of the photo itself, samples
 *
 * Where the steepest place of a blurred and then coded step lies, in samples from the
 * true one: towards the dark side.
 */
double wm_edge_coded_shift (const WmEdgeProfile *p, const WmEdgeStep *step, double blur);

/* Standard deviation of the place where the slope peaks, samples, for white noise.
 * @curvature: of the slope there, along the step, in units of the height */
double wm_edge_noise_of_place (const WmEdgeProfile *p, double curvature);
