/* scale.h: millimetres on a photo from one known length (a ruler, a gauge block)
 *
 * Pure computation: no I/O, no GLib, no state; safe on any thread.
 *
 * s = L_ref / N_ref, L = s N with N = hypot (dx, dy) in px. Each placed point is
 * uncertain by u_point px in x and in y, so a distance by sqrt 2 times that. Short
 * lengths read too long by about u_point^2 / N px (sideways scatter): below 10 u_point
 * the length is refused, above it the bias stays under 1 % (derived).
 * Valid for parts in the plane of the reference (WmLie for what is not), no lens
 * distortion.
 *
 * Source: JCGM 100:2008 (GUM) 4.3.7, 5.1.2, 6.2; checked against a Monte Carlo
 * run of 2,000,000 draws (tests/reckon/test-scale.c).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/length.h"

/* A reference shorter than this is worthless: one pixel is 2 % of it. */
#define WM_MIN_RULER_PX 50.0

/* Standard uncertainty of a point placed by hand on the photo, px per coordinate, when
 * nothing better is known: the middle half of a pixel either way plus hand (common
 * practice, no source). */
#define WM_PLACED_POINT_U_PX 1.0

typedef struct
{
  WmPoint a, b;      /* ends on the photo, px */
  WmValue length_mm; /* true distance between them, above 0 */
  double u_point_px; /* of each end, per coordinate, 0 or more */
} WmRuler;

/**
 * wm_scale_check:
 *
 * Returns: WM_OK and mm per px in @mm_per_px; WM_TOO_SHORT under WM_MIN_RULER_PX;
 * WM_NOT_A_NUMBER, WM_NOT_POSITIVE, WM_OUT_OF_RANGE; @which is one of scale, scale_mm,
 * u_point_px
 */
WmResult wm_scale_check (const WmRuler *ruler, double *mm_per_px, const char **which);

/**
 * wm_scale_measure:
 * @lie: (nullable): how the part lay
 * @a, @b: ends of the span, px
 * @u_end_px: standard uncertainty of each end along the span, px, 0 or more (a snapped
 * edge brings its own)
 *
 * Returns: WM_OK and the length in @out; WM_TOO_SHORT when the span is under 10
 * u_end_px or has no length; otherwise as wm_scale_check, @which also span, u_end_px
 * and those of wm_lie_check
 */
WmResult wm_scale_measure (const WmRuler *ruler, const WmLie *lie, WmPoint a, WmPoint b,
                           double u_end_px, WmLength *out, const char **which);
