/* edge-profile.c: coding, noise, slope and steps of a light profile
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/edge-profile.h"

#include <math.h>
#include <stdlib.h>

/* Filter reaches four blur widths either way: beyond, a Gaussian is under 4e-4. */
#define TAPS_IN_BLUR 4.0
/* Below one grey step of an 8-bit photo no noise estimate is believed: 1/255/sqrt 12. */
#define QUANTISATION_U 0.00113
#define GRID 41

double
wm_linear_from_srgb (double coded)
{
  return coded <= 0.04045 ? coded / 12.92 : pow ((coded + 0.055) / 1.055, 2.4);
}

static double
srgb_from_linear (double linear)
{
  if (linear <= 0.0031308)
    return 12.92 * linear;

  return 1.055 * pow (linear, 1.0 / 2.4) - 0.055;
}

/* The border repeats. */
static double
sample (const WmEdgeProfile *p, int channel, int i)
{
  return p->coded[channel][i < 0 ? 0 : i < p->n ? i : p->n - 1];
}

static int
compare_doubles (const void *a, const void *b)
{
  double x = *(const double *)a;
  double y = *(const double *)b;

  return (x > y) - (x < y);
}

/* Noise from second differences one pixel apart: their median is blind to edges.
 * Factors: 0.6745 turns a median of |normal| into its sd, sqrt 6 the second difference.
 */
static double
noise_of_channel (const WmEdgeProfile *p, int channel)
{
  const double *grey = p->coded[channel];
  double second[WM_EDGE_MAX_SAMPLES];
  int gap = (int)fmax (1.0, round (p->per_px));
  int n = 0;

  for (int i = gap; i + gap < p->n; i++)
    second[n++] = fabs (grey[i - gap] - 2.0 * grey[i] + grey[i + gap]);

  if (n == 0)
    return QUANTISATION_U;

  qsort (second, n, sizeof second[0], compare_doubles);
  return fmax (QUANTISATION_U, second[n / 2] / 0.6745 / sqrt (6.0));
}

void
wm_edge_profile_make (const WmLightProfile *light, WmEdgeProfile *p)
{
  double squares = 0.0;

  p->n = light->n;
  p->n_channels = light->n_channels;
  p->per_px = light->samples_per_px;
  p->blur = WM_EDGE_BLUR_PX * light->samples_per_px;

  for (int c = 0; c < p->n_channels; c++)
    {
      for (int i = 0; i < p->n; i++)
        p->coded[c][i] = srgb_from_linear (light->light[i * p->n_channels + c]);

      squares += pow (noise_of_channel (p, c), 2.0);
    }

  /* The camera's noise goes through all channels together as a rule, so no root of their
   * number is gained. */
  p->noise = sqrt (squares / p->n_channels);
}

static double
slope_of_channel (const WmEdgeProfile *p, int channel, int i)
{
  int taps = (int)ceil (TAPS_IN_BLUR * p->blur);
  double sum = 0.0;
  double weight = 0.0;

  for (int k = 1; k <= taps; k++)
    {
      double g = k * exp (-0.5 * k * k / (p->blur * p->blur));

      sum += g * (sample (p, channel, i + k) - sample (p, channel, i - k));
      weight += 2.0 * k * g;
    }

  return sum / weight;
}

double
wm_edge_steepness (const WmEdgeProfile *p, int i)
{
  double squares = 0.0;

  for (int c = 0; c < p->n_channels; c++)
    squares += pow (slope_of_channel (p, c, i), 2.0);

  return sqrt (squares / p->n_channels);
}

double
wm_edge_slope (const WmEdgeProfile *p, const WmEdgeStep *step, int i)
{
  double sum = 0.0;

  for (int c = 0; c < p->n_channels; c++)
    sum += step->direction[c] * slope_of_channel (p, c, i);

  return sum / sqrt (p->n_channels);
}

/* Mean of the two pixels beyond the blur on either side. */
void
wm_edge_step_at (const WmEdgeProfile *p, double at, WmEdgeStep *step)
{
  double squares = 0.0;

  for (int c = 0; c < p->n_channels; c++)
    {
      int count = 0;

      step->before[c] = step->after[c] = 0.0;
      for (double d = 2.0 * p->blur; d <= 2.0 * p->blur + 2.0 * p->per_px; d += 1.0)
        {
          step->before[c] += sample (p, c, (int)round (at - d));
          step->after[c] += sample (p, c, (int)round (at + d));
          count++;
        }

      step->before[c] /= count;
      step->after[c] /= count;
      squares += pow (step->after[c] - step->before[c], 2.0);
    }

  step->height = sqrt (squares / p->n_channels);
  for (int c = 0; c < p->n_channels; c++)
    step->direction[c] =
        squares > 0.0 ? (step->after[c] - step->before[c]) / sqrt (squares) : 0.0;
}

/* Slope at x of a step at 0 from light a to b, blurred by sigma in light (the lens),
 * coded, then smoothed by the filter. */
static double
coded_slope (double x, double a, double b, double sigma, double filter)
{
  double sum = 0.0;

  for (double t = -3.0; t <= 3.0; t += 0.25)
    {
      double y = (x + t * filter) / sigma;
      double light = a + (b - a) * 0.5 * erfc (-y / sqrt (2.0));
      double slope =
          light <= 0.0031308 ? 12.92 : 1.055 / 2.4 * pow (light, 1.0 / 2.4 - 1.0);

      sum += slope * exp (-0.5 * (y * y + t * t));
    }

  return sum;
}

/* Found on a grid, refined by a parabola; of the channel with the highest step. */
double
wm_edge_coded_shift (const WmEdgeProfile *p, const WmEdgeStep *step, double blur)
{
  double grid = 0.1 * hypot (blur, p->blur);
  double slopes[GRID];
  int channel = 0;
  int best = 1;

  for (int c = 1; c < p->n_channels; c++)
    if (fabs (step->direction[c]) > fabs (step->direction[channel]))
      channel = c;

  for (int i = 0; i < GRID; i++)
    slopes[i] =
        coded_slope ((i - GRID / 2) * grid, wm_linear_from_srgb (step->before[channel]),
                     wm_linear_from_srgb (step->after[channel]), blur, p->blur);

  for (int i = 2; i < GRID - 1; i++)
    if (slopes[i] > slopes[best])
      best = i;

  return grid
         * (best - GRID / 2
            + 0.5 * (slopes[best - 1] - slopes[best + 1])
                  / (slopes[best - 1] - 2.0 * slopes[best] + slopes[best + 1]));
}

/* The slope's own slope has, for white noise, the variance noise^2 int G''^2 with
 * int G''^2 = 3 / (8 sqrt pi s^5) a sample (derived). */
double
wm_edge_noise_of_place (const WmEdgeProfile *p, double curvature)
{
  double s = p->blur;
  double sd = p->noise * sqrt (3.0 / (8.0 * sqrt (M_PI) * s * s * s * s * s));

  return sd / fmax (fabs (curvature), 1e-12);
}
