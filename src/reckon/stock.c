/* stock.c: stock metal
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/stock.h"

#include <math.h>

#include "reckon/section.h"

#define MG_PER_G 1000.0
#define MAX_MM 1e4

/* x: a, b, length, density. */
static void
weight_model (const double *x, double *y, const void *fixed)
{
  double volume;

  switch (*(const WmStockShape *)fixed)
    {
    case WM_STOCK_SQUARE:
      volume = x[0] * x[0] * x[2];
      break;
    case WM_STOCK_SHEET:
      volume = x[0] * x[1] * x[2];
      break;
    case WM_STOCK_TUBE:
      volume = M_PI * (x[0] * x[0] - x[1] * x[1]) / 4.0 * x[2];
      break;
    case WM_STOCK_SPHERE:
      volume = M_PI * x[0] * x[0] * x[0] / 6.0;
      break;
    case WM_STOCK_ROUND:
    default:
      volume = M_PI * x[0] * x[0] / 4.0 * x[2];
      break;
    }

  y[0] = volume * x[3] / MG_PER_G;
}

WmResult
wm_stock_weight (WmStockShape shape, WmValue a_mm, WmValue b_mm, WmValue length_mm,
                 WmValue density_g_cm3, WmValue *grams, const char **which)
{
  const WmInputBound bounds[] = {
    WM_ABOVE ("first", a_mm, 0.0, MAX_MM),
    WM_FROM ("density", density_g_cm3, 0.5, 25.0),
    WM_ABOVE ("length", length_mm, 0.0, 1e6),
    WM_ABOVE ("second", b_mm, 0.0, MAX_MM),
  };
  const WmValue x[] = { a_mm, b_mm, length_mm, density_g_cm3 };
  int has_b = shape == WM_STOCK_SHEET || shape == WM_STOCK_TUBE;
  WmResult result;

  if ((int)shape < 0 || shape >= WM_N_STOCK_SHAPES)
    return wm_refuse (WM_UNKNOWN_INPUT, "shape", which);

  result = wm_bounds_check (bounds, shape == WM_STOCK_SPHERE ? 2 : has_b ? 4 : 3, which);
  if (result != WM_OK)
    return result;

  if (shape == WM_STOCK_TUBE && b_mm.value >= a_mm.value)
    return wm_refuse (WM_CONTRADICTION, "second", which);

  wm_propagate (weight_model, &shape, x, 4, grams, 1, WM_STEP_SLOPE);
  return WM_OK;
}

static void
strip_model (const double *x, double *y, const void *fixed)
{
  double area = M_PI * x[0] * x[0] / 4.0;

  if (*(const WmStripEdge *)fixed == WM_EDGE_ROUND)
    y[0] = (area - M_PI * x[1] * x[1] / 4.0) / x[1] + x[1];
  else
    y[0] = area / x[1];
}

static WmResult
check_strip (WmValue first, const char *first_name, WmValue thickness, WmStripEdge edge,
             const char **which)
{
  const WmInputBound bounds[] = {
    WM_ABOVE (first_name, first, 0.0, 1000.0),
    WM_ABOVE ("thickness", thickness, 0.0, 100.0),
  };

  if (edge != WM_EDGE_SQUARE && edge != WM_EDGE_ROUND)
    return wm_refuse (WM_UNKNOWN_INPUT, "edge", which);

  return wm_bounds_check (bounds, 2, which);
}

WmResult
wm_strip_from_wire (WmValue wire_mm, WmValue thickness_mm, WmStripEdge edge,
                    WmValue *width_mm, const char **which)
{
  const WmValue x[] = { wire_mm, thickness_mm };
  WmResult result = check_strip (wire_mm, "wire", thickness_mm, edge, which);

  if (result != WM_OK)
    return result;

  if (thickness_mm.value > wire_mm.value)
    return wm_refuse (WM_CONTRADICTION, "thickness", which);

  wm_propagate (strip_model, &edge, x, 2, width_mm, 1, WM_STEP_SLOPE);
  return WM_OK;
}

static void
wire_model (const double *x, double *y, const void *fixed)
{
  double area = x[0] * x[1];

  if (*(const WmStripEdge *)fixed == WM_EDGE_ROUND)
    area = (x[0] - x[1]) * x[1] + M_PI * x[1] * x[1] / 4.0;

  y[0] = sqrt (4.0 * area / M_PI);
}

WmResult
wm_wire_for_strip (WmValue width_mm, WmValue thickness_mm, WmStripEdge edge,
                   WmValue *wire_mm, const char **which)
{
  const WmValue x[] = { width_mm, thickness_mm };
  WmResult result = check_strip (width_mm, "width", thickness_mm, edge, which);

  if (result != WM_OK)
    return result;

  /* A square strip may be as narrow as pi/4 of its thickness (it comes from that wire);
   * narrower or, with round edges, narrower than thick, no wire gives it. */
  if (width_mm.value
      < thickness_mm.value * (edge == WM_EDGE_ROUND ? 1.0 : M_PI / 4.0) * (1.0 - 1e-9))
    return wm_refuse (WM_CONTRADICTION, "width", which);

  wm_propagate (wire_model, &edge, x, 2, wire_mm, 1, WM_STEP_SLOPE);
  return WM_OK;
}

static void
drawn_model (const double *x, double *y, const void *fixed)
{
  double share = x[1] * x[1] / (x[0] * x[0]);

  y[0] = 1.0 / share;
  y[1] = 100.0 * (1.0 - share);
}

WmResult
wm_drawn_wire (WmValue from_mm, WmValue to_mm, WmDrawn *out, const char **which)
{
  const WmInputBound bounds[] = {
    WM_ABOVE ("from", from_mm, 0.0, 100.0),
    WM_ABOVE ("to", to_mm, 0.0, 100.0),
  };
  const WmValue x[] = { from_mm, to_mm };
  WmValue y[2];
  WmResult result = wm_bounds_check (bounds, 2, which);

  if (result != WM_OK)
    return result;

  if (to_mm.value > from_mm.value)
    return wm_refuse (WM_CONTRADICTION, "to", which);

  wm_propagate (drawn_model, NULL, x, 2, y, 2, WM_STEP_SLOPE);
  *out = (WmDrawn) { y[0], y[1] };
  return WM_OK;
}

/* x: wire, kept, length, density. */
static void
refill_model (const double *x, double *y, const void *fixed)
{
  WmSection worn = {
    WM_SECTION_FLATTED, { x[0], 0 }, { fmin (x[1], x[0]), 0 }, { 0, 0 }
  };
  WmSectionProperties left = { { NAN, 0 } };

  wm_section_properties (&worn, &left, NULL);
  y[0] = (M_PI * x[0] * x[0] / 4.0 - left.area_mm2.value) * x[2] * x[3] / MG_PER_G;
}

WmResult
wm_refill_weight (WmValue wire_mm, WmValue kept_mm, WmValue length_mm,
                  WmValue density_g_cm3, WmValue *grams, const char **which)
{
  const WmInputBound bounds[] = {
    WM_ABOVE ("wire", wire_mm, 0.0, 100.0),
    WM_ABOVE ("kept", kept_mm, 0.0, 100.0),
    WM_ABOVE ("length", length_mm, 0.0, 1e4),
    WM_FROM ("density", density_g_cm3, 0.5, 25.0),
  };
  const WmValue x[] = { wire_mm, kept_mm, length_mm, density_g_cm3 };
  WmResult result = wm_bounds_check (bounds, 4, which);

  if (result != WM_OK)
    return result;

  if (kept_mm.value - wire_mm.value > WM_COVERAGE_FACTOR * hypot (wire_mm.u, kept_mm.u))
    return wm_refuse (WM_LARGER_THAN_NEW, "kept", which);

  wm_propagate (refill_model, NULL, x, 4, grams, 1, WM_STEP_SLOPE);
  return WM_OK;
}

WmResult
wm_alloy_density (const WmAlloyPart *parts, int n, double *density_g_cm3,
                  const char **which)
{
  double sum = 0.0;
  double volume = 0.0;

  if (n < 1 || n > 12)
    return wm_refuse (n < 1 ? WM_TOO_FEW : WM_OUT_OF_RANGE, "parts", which);

  for (int i = 0; i < n; i++)
    {
      const WmInputBound bounds[] = {
        WM_ABOVE ("parts", wm_exact (parts[i].parts), 0.0, 1001.0),
        WM_FROM ("parts", wm_exact (parts[i].density_g_cm3), 0.5, 25.0),
      };
      WmResult result = wm_bounds_check (bounds, 2, which);

      if (result != WM_OK)
        return result;

      sum += parts[i].parts;
      volume += parts[i].parts / parts[i].density_g_cm3;
    }

  if (fabs (sum - 1000.0) > 1.0)
    return wm_refuse (WM_CONTRADICTION, "parts", which);

  *density_g_cm3 = sum / volume;
  return WM_OK;
}
