/* ring-size.h: ring sizes in millimetres and in the scales of the trade
 *
 * Pure computation: no I/O, no GLib, no state; safe on any thread.
 *
 * ISO size = inner circumference in mm. United States: diameter in inch = 0.458 + 0.032
 * size. Italy, Spain, Switzerland, Netherlands: circumference - 40. United Kingdom
 * letters: two scales are in use; both are given and shown as "about". The millimetre is
 * carried, the other scales only shown. Blank length = pi (inner diameter + thickness).
 *
 * Source: ISO 8653 (read in excerpt); trade reference 7.8; UK scale A = 37.5 with 1.25 a
 * letter after BS 6820 (from memory), the other D = 41.5 to Z = 70 (a trade list).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/value.h"

typedef enum
{
  WM_SIZE_CIRCUMFERENCE = 0, /* ISO */
  WM_SIZE_DIAMETER = 1,
  WM_SIZE_US = 2,
  WM_SIZE_MINUS_40 = 3
} WmSizeScale;

#define WM_N_SIZE_SCALES 4

typedef struct
{
  WmValue circumference_mm;
  WmValue diameter_mm;
  WmValue us;
  WmValue minus_40;
  double uk_1250; /* letters from A = 1 by halves, scale of 1.25 mm; NaN off the scale */
  double uk_1300; /* scale of D 41.5 to Z 70 */
  WmValue blank_mm; /* for the thickness; NaN when it is 0 */
} WmRingSize;

/**
 * wm_ring_size:
 * @thickness_mm: of the shank, for the blank; value 0 = not asked
 *
 * Returns: WM_OK; WM_OUT_OF_RANGE (@which size) outside circumference 30 to 100 mm;
 * @which also scale, thickness
 */
WmResult wm_ring_size (WmSizeScale scale, WmValue size, WmValue thickness_mm,
                       WmRingSize *out, const char **which);

/**
 * wm_ring_letter:
 * @position: from WmRingSize, letters from A = 1 by halves
 * @text: (out): at least 8 bytes, such as "N ½"; empty when off the scale
 */
void wm_ring_letter (double position, char *text);
