/* ring-size.c: ring sizes
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/ring-size.h"

#include <math.h>
#include <stdio.h>

/* Exact: 1959 agreement. */
#define MM_PER_INCH 25.4
#define US_ZERO_INCH 0.458
#define US_STEP_INCH 0.032
#define LEAST_MM 30.0
#define MOST_MM 100.0

static double
circumference_of (WmSizeScale scale, double size)
{
  switch (scale)
    {
    case WM_SIZE_DIAMETER:
      return M_PI * size;
    case WM_SIZE_US:
      return M_PI * MM_PER_INCH * (US_ZERO_INCH + US_STEP_INCH * size);
    case WM_SIZE_MINUS_40:
      return size + 40.0;
    case WM_SIZE_CIRCUMFERENCE:
    default:
      return size;
    }
}

/* x: size, thickness. */
static void
size_model (const double *x, double *y, const void *fixed)
{
  double c = circumference_of (*(const WmSizeScale *)fixed, x[0]);

  y[0] = c;
  y[1] = c / M_PI;
  y[2] = (c / M_PI / MM_PER_INCH - US_ZERO_INCH) / US_STEP_INCH;
  y[3] = c - 40.0;
  y[4] = x[1] > 0.0 ? c + M_PI * x[1] : NAN;
}

/* Letters from A = 1, to the nearest half; NaN off A to Z. */
static double
letter_position (double c, double at_a, double step)
{
  double position = round (2.0 * ((c - at_a) / step + 1.0)) / 2.0;

  return position >= 1.0 && position <= 26.5 ? position : NAN;
}

WmResult
wm_ring_size (WmSizeScale scale, WmValue size, WmValue thickness_mm, WmRingSize *out,
              const char **which)
{
  const WmInputBound bounds[] = {
    WM_FROM ("size", size, -10.0, MOST_MM),
    WM_FROM ("thickness", thickness_mm, 0.0, 20.0),
  };
  const WmValue x[] = { size, thickness_mm };
  WmValue y[5];
  WmResult result;

  if ((int)scale < 0 || scale >= WM_N_SIZE_SCALES)
    return wm_refuse (WM_UNKNOWN_INPUT, "scale", which);

  result = wm_bounds_check (bounds, 2, which);
  if (result != WM_OK)
    return result;

  wm_propagate (size_model, &scale, x, 2, y, 5, WM_STEP_SLOPE);
  if (y[0].value < LEAST_MM || y[0].value > MOST_MM)
    return wm_refuse (WM_OUT_OF_RANGE, "size", which);

  *out = (WmRingSize) { y[0], y[1], y[2], y[3], 0.0, 0.0, y[4] };
  out->uk_1250 = letter_position (y[0].value, 37.5, 1.25);
  /* D is the fourth letter, Z the twenty-sixth: 22 steps over 28.5 mm. */
  out->uk_1300 = letter_position (y[0].value, 41.5 - 3.0 * 28.5 / 22.0, 28.5 / 22.0);
  return WM_OK;
}

void
wm_ring_letter (double position, char *text)
{
  int whole = (int)floor (position);

  text[0] = '\0';
  if (isnan (position) || whole < 1 || whole > 26)
    return;

  snprintf (text, 8, "%c%s", 'A' + whole - 1, position > whole ? " ½" : "");
}
