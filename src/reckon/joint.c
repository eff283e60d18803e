/* joint.c: soldered joints
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/joint.h"

#include <math.h>

/* x in the order of WmJoint. */
static void
joint_model (const double *x, double *y, const void *fixed)
{
  double s = sin (x[0] * M_PI / 180.0);
  double c = cos (x[0] * M_PI / 180.0);
  int has_strength = x[3] > 0.0 && x[4] > 0.0;
  double allowed = has_strength ? 1.0 / hypot (s * s / x[3], s * c / x[4]) : NAN;
  double straight = x[3];

  if (x[5] > 0.0)
    {
      allowed = has_strength ? fmin (allowed, x[5]) : NAN;
      straight = fmin (straight, x[5]);
    }

  y[0] = x[1] / s;
  y[1] = 1.0 / s;
  y[2] = s * s;
  y[3] = s * c;
  y[4] = allowed;
  y[5] = allowed * x[1];
  y[6] = allowed / straight;
  y[7] = y[0] * x[2];
  y[8] = y[7] * x[6];
  y[9] = y[8] * x[7];
}

WmResult
wm_joint (const WmJoint *joint, WmJointStrength *out, const char **which)
{
  const WmInputBound bounds[] = {
    WM_FROM ("angle", joint->angle_deg, 10.0, 90.0),
    WM_ABOVE ("area", joint->area_mm2, 0.0, 1e4),
    WM_ABOVE ("gap", joint->gap_mm, 0.0, 5.0),
    WM_FROM ("across_mpa", joint->across_mpa, 0.0, 3000.0),
    WM_FROM ("along_mpa", joint->along_mpa, 0.0, 3000.0),
    WM_FROM ("yield_mpa", joint->yield_mpa, 0.0, 3000.0),
    WM_FROM ("solder_density", joint->solder_g_cm3, 1.0, 25.0),
    WM_FROM ("fillet", joint->fillet, 1.0, 10.0),
  };
  const WmValue x[] = { joint->angle_deg,    joint->area_mm2,  joint->gap_mm,
                        joint->across_mpa,   joint->along_mpa, joint->yield_mpa,
                        joint->solder_g_cm3, joint->fillet };
  WmValue y[10];
  WmResult result = wm_bounds_check (bounds, 8, which);

  if (result != WM_OK)
    return result;

  wm_propagate (joint_model, NULL, x, 8, y, 10, WM_STEP_SLOPE);
  *out = (WmJointStrength) { y[0], y[1], y[2], y[3], y[4], y[5], y[6],
                             y[7], y[8], y[9], 0,    0,    0 };
  out->is_metal_the_limit =
      joint->yield_mpa.value > 0.0 && y[4].value >= joint->yield_mpa.value;
  out->is_gap_wide = joint->gap_mm.value > WM_JOINT_GAP_WIDE_MM;
  out->is_gap_narrow = joint->gap_mm.value < WM_JOINT_GAP_NARROW_MM;
  return WM_OK;
}

/* x: made, left, width, place, yield, along. */
static void
bridge_model (const double *x, double *y, const void *fixed)
{
  double thickness = fmax (0.0, x[0] - x[1]) / x[2];

  y[0] = thickness;
  y[1] = x[4] > 0.0 && x[5] > 0.0 ? x[4] * thickness / x[5] : NAN;
  y[2] = 2.0 * y[1] + x[3];
}

WmResult
wm_bridge (WmValue made_mm2, WmValue left_mm2, WmValue width_mm, WmValue place_mm,
           WmValue yield_mpa, WmValue along_mpa, WmBridge *out, const char **which)
{
  const WmInputBound bounds[] = {
    WM_ABOVE ("made", made_mm2, 0.0, 1e4),
    WM_FROM ("left", left_mm2, 0.0, 1e4),
    WM_ABOVE ("width", width_mm, 0.0, 100.0),
    WM_FROM ("place", place_mm, 0.0, 100.0),
    WM_FROM ("yield_mpa", yield_mpa, 0.0, 3000.0),
    WM_FROM ("along_mpa", along_mpa, 0.0, 3000.0),
  };
  const WmValue x[] = { made_mm2, left_mm2, width_mm, place_mm, yield_mpa, along_mpa };
  WmValue y[3];
  WmResult result = wm_bounds_check (bounds, 6, which);

  if (result != WM_OK)
    return result;

  if (left_mm2.value - made_mm2.value
      > WM_COVERAGE_FACTOR * hypot (made_mm2.u, left_mm2.u))
    return wm_refuse (WM_LARGER_THAN_NEW, "left", which);

  wm_propagate (bridge_model, NULL, x, 6, y, 3, WM_STEP_WHOLE);
  *out = (WmBridge) { y[0], y[1], y[2] };
  return WM_OK;
}
