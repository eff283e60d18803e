/* heat-fall.c: temperature along a bar
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/heat-fall.h"

#include <math.h>

#include "reckon/value.h"

double
wm_heat_bar (double m_per_m, double length_m, double x_m)
{
  /* Past 300 a hyperbolic cosine overflows, and the end is not felt. */
  if (!isfinite (length_m) || m_per_m * length_m > 300.0)
    return exp (-m_per_m * x_m);

  return cosh (m_per_m * (length_m - x_m)) / cosh (m_per_m * length_m);
}

static double
decay (const WmHeatFall *f, double cooling, double conduct)
{
  if (f->strip_mm > 0.0)
    return sqrt (2.0 * cooling / (conduct * f->strip_mm / 1000.0));

  return sqrt (4.0 * cooling / (conduct * f->wire_mm / 1000.0));
}

WmResult
wm_heat_fall (const WmHeatFall *fall, WmHeatBand *out, const char **which)
{
  const WmInputBound bounds[] = {
    WM_ABOVE ("source", wm_exact (fall->source_c), 0.0, 4000.0),
    WM_FROM ("ambient", wm_exact (fall->ambient_c), -50.0, 200.0),
    WM_FROM ("strip", wm_exact (fall->strip_mm), 0.0, 50.0),
    WM_FROM ("wire", wm_exact (fall->wire_mm), 0.0, 50.0),
    WM_ABOVE ("length", wm_exact (fall->length_mm), 0.0, 1000.0),
    WM_FROM ("at", wm_exact (fall->at_mm), 0.0, 1000.0),
    WM_ABOVE ("conduct_low", wm_exact (fall->conduct_low), 0.0, 500.0),
    WM_ABOVE ("conduct_high", wm_exact (fall->conduct_high), 0.0, 500.0),
  };
  double excess = fall->source_c - fall->ambient_c;
  WmResult result = wm_bounds_check (bounds, 8, which);

  if (result != WM_OK)
    return result;

  if (fall->wire_mm <= 0.0 && fall->strip_mm <= 0.0)
    return wm_refuse (WM_NOT_POSITIVE, "wire", which);

  if (excess <= 0.0)
    return wm_refuse (WM_CONTRADICTION, "ambient", which);

  if (fall->at_mm > fall->length_mm)
    return wm_refuse (WM_CONTRADICTION, "at", which);

  if (fall->conduct_high < fall->conduct_low)
    return wm_refuse (WM_CONTRADICTION, "conduct_high", which);

  out->hot_c =
      fall->ambient_c
      + excess
            * wm_heat_bar (decay (fall, WM_HEAT_FALL_COOLING_LOW, fall->conduct_high),
                           fall->length_mm / 1000.0, fall->at_mm / 1000.0);
  out->cool_c =
      fall->ambient_c
      + excess
            * wm_heat_bar (decay (fall, WM_HEAT_FALL_COOLING_HIGH, fall->conduct_low),
                           INFINITY, fall->at_mm / 1000.0);
  return WM_OK;
}
