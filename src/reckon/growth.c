/* growth.c: how much a measured place has changed between two visits
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/growth.h"

#include <math.h>

/* No part of a piece of jewellery that is measured so is longer, mm: a strand of 1.2 m.
 */
#define LONGEST_MM 1200.0

WmResult
wm_growth_between (WmValue earlier_mm, WmValue later_mm, double shared_relative,
                   WmGrowth *out, const char **which)
{
  const WmInputBound bounds[] = {
    WM_ABOVE ("earlier_mm", earlier_mm, 0, LONGEST_MM),
    WM_ABOVE ("later_mm", later_mm, 0, LONGEST_MM),
    WM_FROM ("shared_relative", wm_exact (shared_relative), 0, 1),
  };
  WmResult result = wm_bounds_check (bounds, 3, which);
  double s1;
  double s2;

  if (result != WM_OK)
    return result;

  s1 = fmin (shared_relative * earlier_mm.value, earlier_mm.u);
  s2 = fmin (shared_relative * later_mm.value, later_mm.u);
  out->change.value = later_mm.value - earlier_mm.value;
  out->change.u = sqrt (earlier_mm.u * earlier_mm.u - s1 * s1 + later_mm.u * later_mm.u
                        - s2 * s2 + (s2 - s1) * (s2 - s1));
  out->shared_u = s2;
  out->is_told = fabs (out->change.value) > WM_COVERAGE_FACTOR * out->change.u;
  return WM_OK;
}
