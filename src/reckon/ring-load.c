/* ring-load.c: rings of round wire under a pull
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/ring-load.h"

#include <math.h>

#define MIN_CURVATURE 1.5

/* Inner-fibre factor of a round bar of half thickness c bent to radius r. The neutral
 * axis lies e = r - c^2 / (2 (r - sqrt (r^2 - c^2))) inside the centroid; written with
 * the sum instead of the difference it keeps its digits for a thin wire on a wide ring.
 */
static double
curved_factor (double r, double c)
{
  double sum = r + sqrt (r * r - c * c);
  double e = c * c / (2.0 * sum);

  return (c - e) * sum / (2.0 * c * (r - c));
}

/* Fully plastic round section under N and M = N R: the neutral axis at half angle
 * alpha, M = 4/3 s c^3 sin^3 alpha, N = s c^2 (pi - 2 alpha + sin 2 alpha) (derived).
 * M falls and N grows as alpha goes from pi/2 to 0, so one crossing. */
static double
plastic_pull (double yield, double c, double r)
{
  double low = 0.0;
  double high = M_PI / 2.0;

  for (int i = 0; i < 100; i++)
    {
      double alpha = 0.5 * (low + high);
      double s = sin (alpha);
      double moment = 4.0 / 3.0 * c * s * s * s;
      double force = M_PI - 2.0 * alpha + sin (2.0 * alpha);

      if (moment > force * r)
        high = alpha;
      else
        low = alpha;
    }

  return yield * c * c * (M_PI - 2.0 * low + sin (2.0 * low));
}

/* x: inside, wire, yield, modulus. */
static void
ring_model (const double *x, double *y, const void *fixed)
{
  double d = x[1];
  double c = d / 2.0;
  double r = (x[0] + d) / 2.0;
  double yield = x[2];
  double area = M_PI * c * c;
  double modulus = M_PI * d * d * d / 32.0;
  double second = M_PI * d * d * d * d / 64.0;
  double factor = curved_factor (r, c);
  double plastic = yield * d * d * d / 6.0;

  y[0] = r;
  y[1] = factor;
  y[2] = plastic;
  y[3] = yield / (1.0 / area + factor * r / modulus);
  y[4] = plastic_pull (yield, c, r);
  y[5] = plastic / r;
  y[6] = plastic / (2.0 * r);
  y[7] = x[3] > 0.0 ? (M_PI / 2.0 + 2.0) * r * r * r / (x[3] * second) : NAN;
  y[8] = yield * modulus * M_PI / (r * factor);
  y[9] = 4.0 * plastic / r;
  y[10] = 2.0 * area * yield;
  y[11] = y[9] / y[5];
}

WmResult
wm_ring_load (WmValue inside_mm, WmValue wire_mm, WmValue yield_mpa, WmValue modulus_mpa,
              WmRingLoad *out, const char **which)
{
  const WmInputBound bounds[] = {
    WM_ABOVE ("inside", inside_mm, 0.0, 100.0),
    WM_ABOVE ("wire", wire_mm, 0.0, 20.0),
    WM_ABOVE ("yield_mpa", yield_mpa, 0.0, 3000.0),
    WM_FROM ("modulus_mpa", modulus_mpa, 0.0, 1e6),
  };
  const WmValue x[] = { inside_mm, wire_mm, yield_mpa, modulus_mpa };
  WmValue y[12];
  WmResult result = wm_bounds_check (bounds, 4, which);

  if (result != WM_OK)
    return result;

  if (inside_mm.value + wire_mm.value < MIN_CURVATURE * wire_mm.value)
    return wm_refuse (WM_OUT_OF_RANGE, "inside", which);

  wm_propagate (ring_model, NULL, x, 4, y, 12, WM_STEP_SLOPE);
  *out = (WmRingLoad) { y[0], y[1], y[2], y[3], y[4],  y[5],
                        y[6], y[7], y[8], y[9], y[10], y[11] };
  return WM_OK;
}
