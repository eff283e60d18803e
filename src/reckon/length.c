/* length.c: budget, corrections and the printed form of a measured length
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/length.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

/* Under this the exact variance of 1/cos loses digits to cancellation; the small
 * angle form is then good to 1e-4 of itself (derived). */
#define SMALL_TILT_RAD 0.02

/* Past 20 degrees 6 % of a length are lost: ask for a squarer photo. */
#define TILT_WARN_DEG 20.0

WmResult
wm_lie_check (const WmLie *lie, const char **which)
{
  double depth = fabs (lie->nearer_mm) + lie->depth_half_mm;
  const WmInputBound bounds[] = {
    WM_FROM ("nearer_mm", wm_exact (lie->nearer_mm), -1000.0, 1000.0),
    WM_FROM ("depth_half_mm", wm_exact (lie->depth_half_mm), 0.0, 1000.0),
    WM_FROM ("camera_mm", wm_exact (lie->camera_mm), 0.0, 1e5),
    WM_FROM ("tilt_max_deg", wm_exact (lie->tilt_max_deg), 0.0, 45.0),
  };
  WmResult result = wm_bounds_check (bounds, 4, which);

  if (result != WM_OK)
    return result;

  /* The linear law needs a depth small against the distance; a fifth keeps its error
   * under 4 % of the correction's square (derived). */
  if (depth > 0.0 && lie->camera_mm < 5.0 * depth)
    return wm_refuse (WM_OUT_OF_RANGE, "camera_mm", which);

  return WM_OK;
}

/* Mean and standard deviation of 1/cos over 0..max, all angles alike. */
static void
tilt_moments (double max_rad, double *mean, double *sd)
{
  double mean_square;

  if (max_rad < SMALL_TILT_RAD)
    {
      *mean = 1.0 + max_rad * max_rad / 6.0;
      *sd = max_rad * max_rad / (3.0 * sqrt (5.0));
      return;
    }

  *mean = log (1.0 / cos (max_rad) + tan (max_rad)) / max_rad;
  mean_square = tan (max_rad) / max_rad;
  *sd = sqrt (mean_square - *mean * *mean);
}

void
wm_length_finish (WmLength *length, const WmLie *lie)
{
  double factor = 1.0;

  length->from_depth_mm = 0.0;
  length->from_tilt_mm = 0.0;

  if (lie != NULL && lie->camera_mm > 0.0)
    {
      factor -= lie->nearer_mm / lie->camera_mm;
      length->from_depth_mm =
          length->raw_mm * lie->depth_half_mm / sqrt (3.0) / lie->camera_mm;
    }

  if (lie != NULL && lie->tilt_max_deg > 0.0)
    {
      double mean, sd;

      tilt_moments (lie->tilt_max_deg * M_PI / 180.0, &mean, &sd);
      factor *= mean;
      length->from_tilt_mm = length->raw_mm * sd;
      if (lie->tilt_max_deg > TILT_WARN_DEG)
        length->warnings |= WM_LENGTH_TILT_LARGE;
    }

  length->value_mm = length->raw_mm * factor;
  length->u_mm =
      sqrt (length->from_reference_mm * length->from_reference_mm
            + length->from_reference_points_mm * length->from_reference_points_mm
            + length->from_ends_mm * length->from_ends_mm
            + length->from_depth_mm * length->from_depth_mm
            + length->from_tilt_mm * length->from_tilt_mm);
  length->expanded_mm = WM_COVERAGE_FACTOR * length->u_mm;
}

int
wm_length_decimals (double expanded, double *rounded)
{
  int exponent = (int)floor (log10 (expanded));
  double lead = expanded / pow (10.0, exponent);
  double unit;

  /* The small share keeps 0.03 from becoming 0.04 by a last binary digit. */
  if (ceil (lead * 10.0 - 1e-6) < 20.0)
    exponent--;

  unit = pow (10.0, exponent);
  *rounded = ceil (expanded / unit - 1e-6) * unit;

  if (exponent >= 0)
    return 0;

  return exponent < -9 ? 9 : -exponent;
}

void
wm_length_text (double value, double expanded, const char *unit, char *text)
{
  double rounded;
  int decimals;

  if (!(expanded > 0.0) || !isfinite (expanded))
    {
      snprintf (text, WM_LENGTH_TEXT_MAX, "%.3f %s", value, unit);
    }
  else
    {
      decimals = wm_length_decimals (expanded, &rounded);
      snprintf (text, WM_LENGTH_TEXT_MAX, "%.*f ± %.*f %s", decimals, value, decimals,
                rounded, unit);
    }

  /* snprintf follows the process's locale; this text always has a point. */
  for (char *comma = strchr (text, ','); comma != NULL; comma = strchr (comma, ','))
    *comma = '.';
}
