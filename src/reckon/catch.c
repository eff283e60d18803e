/* catch.c: notch and catch
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/catch.h"

#include <math.h>

/* Shear yield over tensile yield, von Mises: 1 / sqrt 3 rounded as printed. */
#define SHEAR_SHARE 0.58

static void
notch_model (const double *x, double *y, const void *fixed)
{
  double kept = (x[0] - x[1]) / x[0];

  y[0] = kept;
  y[1] = kept * kept;
  y[2] = kept * kept * kept;
  y[3] = x[2] > 0.0 ? 1.0 + 2.0 * sqrt (fmax (0.0, x[1]) / x[2]) : NAN;
}

WmResult
wm_notch (WmValue thickness_mm, WmValue depth_mm, WmValue root_radius_mm, WmNotch *out,
          const char **which)
{
  const WmInputBound bounds[] = {
    WM_ABOVE ("thickness", thickness_mm, 0.0, 10.0),
    WM_FROM ("depth", depth_mm, 0.0, 10.0),
    WM_FROM ("root_radius", root_radius_mm, 0.0, 10.0),
  };
  const WmValue x[] = { thickness_mm, depth_mm, root_radius_mm };
  WmValue y[4];
  WmResult result = wm_bounds_check (bounds, 3, which);

  if (result != WM_OK)
    return result;

  if (depth_mm.value >= thickness_mm.value)
    return wm_refuse (WM_CONTRADICTION, "depth", which);

  wm_propagate (notch_model, NULL, x, 3, y, 4, WM_STEP_SLOPE);
  *out = (WmNotch) { y[0], y[1], y[2], y[3], 0 };
  out->is_too_deep = y[0].value - WM_COVERAGE_FACTOR * y[0].u < WM_NOTCH_LEAST_KEPT;
  return WM_OK;
}

/* How near a slope is to locking: 0 and below it locks. */
static double
lock_margin (double friction, double slope_deg)
{
  return slope_deg >= 90.0 ? -1.0 : 1.0 - friction * tan (slope_deg * M_PI / 180.0);
}

static double
over_slope (double force, double friction, double slope_deg)
{
  double margin = lock_margin (friction, slope_deg);

  if (margin < WM_CATCH_LOCK_MARGIN)
    return NAN;

  return force * (friction + tan (slope_deg * M_PI / 180.0)) / margin;
}

/* x in the order of WmCatch. */
static void
catch_model (const double *x, double *y, const void *fixed)
{
  y[0] = fmin (x[0], x[1]) - x[2] - x[3];
  y[1] = over_slope (x[4], x[5], x[6]);
  y[2] = over_slope (x[4], x[5], x[7]);
  y[3] = x[8] > 0.0 && x[9] > 0.0 ? SHEAR_SHARE * x[9] * x[8] * fmax (0.0, y[0]) : NAN;
}

WmResult
wm_catch_hold (const WmCatch *c, WmCatchHold *out, const char **which)
{
  const WmInputBound bounds[] = {
    WM_ABOVE ("notch_depth", c->notch_depth_mm, 0.0, 10.0),
    WM_ABOVE ("catch_height", c->catch_height_mm, 0.0, 10.0),
    WM_FROM ("slack", c->slack_mm, 0.0, 10.0),
    WM_FROM ("set", c->set_mm, 0.0, 10.0),
    WM_FROM ("force", c->force_n, 0.0, 1000.0),
    WM_FROM ("friction", c->friction, 0.0, 1.0),
    WM_FROM ("front", c->front_deg, 1.0, 89.0),
    WM_FROM ("back", c->back_deg, 1.0, 90.0),
    WM_FROM ("width", c->width_mm, 0.0, 50.0),
    WM_FROM ("yield_mpa", c->yield_mpa, 0.0, 3000.0),
  };
  const WmValue x[] = { c->notch_depth_mm, c->catch_height_mm, c->slack_mm,  c->set_mm,
                        c->force_n,        c->friction,        c->front_deg, c->back_deg,
                        c->width_mm,       c->yield_mpa };
  WmValue y[4];
  WmResult result = wm_bounds_check (bounds, 10, which);

  if (result != WM_OK)
    return result;

  if (lock_margin (c->friction.value, c->front_deg.value) < WM_CATCH_LOCK_MARGIN)
    return wm_refuse (WM_NO_NUMBER_HONEST, "front", which);

  wm_propagate (catch_model, NULL, x, 10, y, 4, WM_STEP_SLOPE);
  *out = (WmCatchHold) { y[0], y[1], y[2], y[3], 0, 0 };
  out->locks = isnan (y[2].value);
  out->needs_hold_test =
      !out->locks || y[0].value - WM_COVERAGE_FACTOR * y[0].u < WM_CATCH_LEAST_ENGAGED_MM;
  return WM_OK;
}
