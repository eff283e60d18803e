/* scale.c: millimetres from one known length
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/scale.h"

#include <math.h>
#include <string.h>

/* No photo is larger; a coordinate beyond is a slip. */
#define MAX_PX 1e6
#define MAX_MM 1e4
/* A span under ten times the end's uncertainty says nothing. */
#define MIN_SPAN_IN_U 10.0
#define ROUGH_REFERENCE 0.05

static WmResult
check_points (WmPoint a, WmPoint b, const char *input, const char **which)
{
  const WmInputBound bounds[] = {
    WM_FROM (input, wm_exact (a.x), -MAX_PX, MAX_PX),
    WM_FROM (input, wm_exact (a.y), -MAX_PX, MAX_PX),
    WM_FROM (input, wm_exact (b.x), -MAX_PX, MAX_PX),
    WM_FROM (input, wm_exact (b.y), -MAX_PX, MAX_PX),
  };

  return wm_bounds_check (bounds, 4, which);
}

WmResult
wm_scale_check (const WmRuler *ruler, double *mm_per_px, const char **which)
{
  const WmInputBound bounds[] = {
    WM_ABOVE ("scale_mm", ruler->length_mm, 0.0, MAX_MM),
    WM_FROM ("u_point_px", wm_exact (ruler->u_point_px), 0.0, 1000.0),
  };
  double length_px = hypot (ruler->b.x - ruler->a.x, ruler->b.y - ruler->a.y);
  WmResult result = check_points (ruler->a, ruler->b, "scale", which);

  if (result == WM_OK)
    result = wm_bounds_check (bounds, 2, which);

  if (result != WM_OK)
    return result;

  if (length_px < WM_MIN_RULER_PX)
    return wm_refuse (WM_TOO_SHORT, "scale", which);

  *mm_per_px = ruler->length_mm.value / length_px;
  return WM_OK;
}

WmResult
wm_scale_measure (const WmRuler *ruler, const WmLie *lie, WmPoint a, WmPoint b,
                  double u_end_px, WmLength *out, const char **which)
{
  const WmInputBound end = WM_FROM ("u_end_px", wm_exact (u_end_px), 0.0, 1000.0);
  double ruler_px = hypot (ruler->b.x - ruler->a.x, ruler->b.y - ruler->a.y);
  double span_px = hypot (b.x - a.x, b.y - a.y);
  double mm_per_px = 0.0;
  WmLength length;
  WmResult result = wm_scale_check (ruler, &mm_per_px, which);

  if (result == WM_OK)
    result = check_points (a, b, "span", which);
  if (result == WM_OK)
    result = wm_bounds_check (&end, 1, which);
  if (result == WM_OK && lie != NULL)
    result = wm_lie_check (lie, which);
  if (result != WM_OK)
    return result;

  if (span_px == 0.0 || span_px < MIN_SPAN_IN_U * u_end_px)
    return wm_refuse (WM_TOO_SHORT, "span", which);

  memset (&length, 0, sizeof length);
  length.raw_mm = mm_per_px * span_px;
  length.from_reference_mm = length.raw_mm * ruler->length_mm.u / ruler->length_mm.value;
  length.from_reference_points_mm =
      length.raw_mm * sqrt (2.0) * ruler->u_point_px / ruler_px;
  length.from_ends_mm = mm_per_px * sqrt (2.0) * u_end_px;
  if (ruler->length_mm.u > ROUGH_REFERENCE * ruler->length_mm.value)
    length.warnings |= WM_LENGTH_REFERENCE_ROUGH;

  wm_length_finish (&length, lie);
  *out = length;
  return WM_OK;
}
