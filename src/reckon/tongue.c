/* tongue.c: force and set of a spring tongue
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/tongue.h"

#include <math.h>

/* A rectangular section is fully plastic at 1.5 times its first yield, where the tip has
 * gone 20/9 of the yield press (derived). */
#define PLASTIC_FORCE 1.5
#define PLASTIC_PRESS (20.0 / 9.0)

/* Force as a multiple of the yield force at a press that is a multiple of the yield
 * press. */
static double
force_ratio (double press_ratio)
{
  double low = 1.0;
  double high = PLASTIC_FORCE;

  if (press_ratio <= 1.0)
    return press_ratio;

  if (press_ratio >= PLASTIC_PRESS)
    return PLASTIC_FORCE;

  for (int i = 0; i < 100; i++)
    {
      double f = 0.5 * (low + high);

      if ((5.0 - (3.0 + f) * sqrt (3.0 - 2.0 * f)) / (f * f) < press_ratio)
        low = f;
      else
        high = f;
    }

  return 0.5 * (low + high);
}

/* x: width, thickness, length, press, modulus, yield. */
static void
tongue_model (const double *x, double *y, const void *fixed)
{
  double b = x[0], t = x[1], l = x[2], d = x[3], e = x[4], yield = x[5];
  double k = e * b * t * t * t / (4.0 * l * l * l);
  double yield_press = 2.0 * yield * l * l / (3.0 * e * t);
  double yield_force = yield * b * t * t / (6.0 * l);
  double ratio = yield > 0.0 ? force_ratio (d / yield_press) : NAN;

  y[0] = k;
  y[1] = yield > 0.0 ? ratio * yield_force : k * d;
  y[2] = 3.0 * t * d / (2.0 * l * l);
  y[3] = e * y[2];
  y[4] = yield > 0.0 ? yield_press : NAN;
  y[5] = yield > 0.0 ? yield_force : NAN;
  y[6] = yield > 0.0 ? PLASTIC_FORCE * yield_force : NAN;
  y[7] = yield > 0.0 ? d - ratio * yield_press : NAN;
}

WmResult
wm_tongue_load (const WmTongue *tongue, WmTongueLoad *out, const char **which)
{
  const WmInputBound bounds[] = {
    WM_ABOVE ("width", tongue->width_mm, 0.0, 50.0),
    WM_ABOVE ("thickness", tongue->thickness_mm, 0.0, 10.0),
    WM_ABOVE ("length", tongue->length_mm, 0.0, 100.0),
    WM_FROM ("press", tongue->press_mm, 0.0, 20.0),
    WM_ABOVE ("modulus_mpa", tongue->modulus_mpa, 0.0, 1e6),
    WM_FROM ("yield_mpa", tongue->yield_mpa, 0.0, 3000.0),
  };
  const WmValue x[] = { tongue->width_mm, tongue->thickness_mm, tongue->length_mm,
                        tongue->press_mm, tongue->modulus_mpa,  tongue->yield_mpa };
  double length = tongue->length_mm.value;
  WmValue y[8];
  WmResult result = wm_bounds_check (bounds, 6, which);

  if (result != WM_OK)
    return result;

  if (length < 5.0 * tongue->thickness_mm.value)
    return wm_refuse (WM_OUT_OF_RANGE, "length", which);

  if (tongue->press_mm.value > length / 5.0)
    return wm_refuse (WM_OUT_OF_RANGE, "press", which);

  wm_propagate (tongue_model, NULL, x, 6, y, 8, WM_STEP_WHOLE);
  *out = (WmTongueLoad) { y[0], y[1], y[2], y[3], y[4], y[5], y[6], y[7], 0, 0 };
  out->takes_set = y[7].value + WM_COVERAGE_FACTOR * y[7].u > 1e-6 * length;
  out->is_hinge = y[7].value > 0.0
                  && tongue->press_mm.value >= PLASTIC_PRESS * y[4].value * (1.0 - 1e-12);
  return WM_OK;
}
