/* length.h: a length measured on a photo, with its whole uncertainty budget
 *
 * Pure computation: no I/O, no GLib, no state; safe on any thread.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/point.h"
#include "reckon/value.h"

/* How the part lay against the reference. All zero: in its plane, known flat. */
typedef struct
{
  double nearer_mm;     /* part nearer the camera than the reference by this much,
                           known; negative = farther */
  double depth_half_mm; /* and unknown within plus or minus this, 0 or more */
  double camera_mm;     /* distance from camera to reference, above 0 if either of
                           the two above is not 0 */
  double tilt_max_deg;  /* the line may lean out of the plane by 0 up to this, 0..45 */
} WmLie;

typedef enum
{
  WM_LENGTH_REFERENCE_ROUGH = 1 << 0, /* reference known to worse than 5 % */
  WM_LENGTH_TILT_LARGE = 1 << 1,      /* may lean by more than 20 degrees */
  WM_LENGTH_FAR_OUTSIDE = 1 << 2      /* end lies far outside the reference rectangle */
} WmLengthWarning;

typedef struct
{
  double value_mm;    /* best estimate, corrected */
  double u_mm;        /* combined standard uncertainty */
  double expanded_mm; /* WM_COVERAGE_FACTOR times u_mm */
  double raw_mm;      /* before the corrections for depth and tilt */
  /* The parts of u_mm, each a standard uncertainty in mm. */
  double from_reference_mm;        /* the known length itself */
  double from_reference_points_mm; /* where its ends or corners were placed */
  double from_ends_mm;             /* where the ends of the measured line were placed */
  double from_depth_mm;
  double from_tilt_mm;
  unsigned warnings; /* WmLengthWarning */
} WmLength;

/**
 * wm_lie_check:
 *
 * Returns: WM_OK, or the refusal with @which one of nearer_mm, depth_half_mm,
 * camera_mm, tilt_max_deg
 */
WmResult wm_lie_check (const WmLie *lie, const char **which);

/**
 * wm_length_finish:
 * @length: raw_mm, from_reference_mm, from_reference_points_mm and from_ends_mm set
 * @lie: (nullable): checked by wm_lie_check; NULL = in the plane, flat
 *
 * Applies the corrections for depth (times 1 - nearer/camera, pinhole camera) and for
 * a tilt anywhere between 0 and the maximum (times the mean of 1/cos), and adds
 * everything up. Each term is in quadrature: GUM 5.1.2.
 */
void wm_length_finish (WmLength *length, const WmLie *lie);

#define WM_LENGTH_TEXT_MAX 64

/**
 * wm_length_text:
 * @value, @expanded: in the unit that is printed behind; @expanded 0 or more
 * @unit: such as "mm"
 * @text: (out): at least WM_LENGTH_TEXT_MAX bytes, UTF-8
 *
 * "0.62 ± 0.03 mm": the expanded uncertainty is rounded up to one figure, or to two
 * when the first is a 1, and the value to the same decimal place. Rounded up so that the
 * page never claims more than was reckoned (GUM 7.2.6 allows at most two figures
 * and rounding up; clause from memory); one figure is what a bench gauge shows.
 * Decimal point always ".", the caller localises. With @expanded 0 the value is printed
 * with three decimals and no "±".
 */
void wm_length_text (double value, double expanded, const char *unit, char *text);

/**
 * wm_length_decimals:
 *
 * Returns: how many decimals wm_length_text prints for @expanded, 0 to 9, and the
 * rounded-up uncertainty in @rounded, for callers that print with their own locale.
 */
int wm_length_decimals (double expanded, double *rounded);
