/* plane.h: millimetres on a photo from a known rectangle (corrects the tilt)
 *
 * Pure computation: no I/O, no GLib, no state; safe on any thread.
 *
 * w [X Y 1]' = H [x y 1]' from four corner pairs (direct linear transformation with
 * Hartley's normalisation; with four pairs the answer is unique). Lengths are taken in
 * rectified millimetres. Their uncertainty comes from all 14 inputs (8 corner
 * coordinates, width, height, 4 end coordinates) by the law of propagation.
 * Valid for a flat rectangle, no lens distortion, and a part in the rectangle's plane
 * (WmLie for what is not).
 *
 * Source: Hartley and Zisserman, Multiple View Geometry, 2nd ed., ch. 4, and Hartley
 * 1997, In defense of the eight-point algorithm (both from memory); JCGM 100:2008.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/length.h"

typedef struct
{
  WmPoint corners[4]; /* px, in order round the rectangle; the first edge is the width */
  WmValue width_mm;   /* from corner 0 to 1, above 0 */
  WmValue height_mm;  /* from corner 1 to 2, above 0 */
  double u_corner_px; /* of each corner, per coordinate, 0 or more */
  double matrix[9];   /* photo px to mm, row by row, last element 1 */
} WmPlane;

/**
 * wm_plane_solve:
 * @plane: everything but matrix set; matrix is written on success only
 *
 * Returns: WM_OK; WM_DEGENERATE when three corners are nearly on a line (a triangle
 * under 1 % of the quadrilateral), or the order crosses itself or is not convex;
 * WM_TOO_SHORT when a side is under 50 px; WM_NOT_A_NUMBER, WM_NOT_POSITIVE,
 * WM_OUT_OF_RANGE; @which is one of plane, plane_mm, u_point_px
 */
WmResult wm_plane_solve (WmPlane *plane, const char **which);

/**
 * wm_plane_map:
 * @plane: solved
 *
 * Returns: WM_OK and the place in mm (corner 0 is the origin) in @mm; WM_OUT_OF_RANGE
 * when the point is near the plane's horizon or behind it
 */
WmResult wm_plane_map (const WmPlane *plane, WmPoint px, WmPoint *mm);

/**
 * wm_plane_measure:
 * @plane: solved
 * @lie: (nullable): how the part lay
 * @u_end_px: standard uncertainty of each end, px per coordinate, 0 or more
 *
 * Returns: WM_OK and the length in @out; WM_TOO_SHORT when the span is under 10
 * u_end_px or has no length; WM_OUT_OF_RANGE near the horizon; @which is span,
 * u_end_px or those of wm_lie_check. Warns when an end lies outside the rectangle by
 * more than half its size.
 */
WmResult wm_plane_measure (const WmPlane *plane, const WmLie *lie, WmPoint a, WmPoint b,
                           double u_end_px, WmLength *out, const char **which);
