/* align-matrix.h: 3x3 matrices between photos
 *
 * Private to the alignment, beside wm_align_map() and wm_align_invert(). All
 * matrices are row by row; a fit returns one with matrix[8] = 1.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/align.h"

typedef enum
{
  WM_FIT_SIMILARITY, /* 4 numbers: shift, turn, size; 2 points */
  WM_FIT_AFFINE,     /* 6 numbers; 3 points */
  WM_FIT_PROJECTIVE  /* 8 numbers; 4 points */
} WmFitKind;

void wm_matrix_identity (double m[9]);
void wm_matrix_multiply (const double a[9], const double b[9], double out[9]);

/* @m for photos both enlarged by @factor (of @from at the right, @to at the
 * left): out = scale (to) * m * scale (1 / from). */
void wm_matrix_rescale (const double m[9], double from, double to, double out[9]);

/**
 * wm_matrix_fit:
 * @weights: (nullable): one per pair, 0 or more
 * @m: (out): carries @from to @to, least squares of the distances
 *
 * Returns: FALSE when the points do not determine it
 */
gboolean wm_matrix_fit (WmFitKind kind, const WmPoint *from, const WmPoint *to,
                        const double *weights, int n, double m[9]);

/* Solves the n x n symmetric positive system in place (Cholesky), row by row;
 * FALSE when it is not positive. @inverse (nullable) receives its inverse. */
gboolean wm_solve_symmetric (double *a, double *b, int n, double *inverse);

/* Mean enlargement of @m at @at (square root of the area's), negative when it
 * turns the picture over there, 0 beyond the horizon. */
double wm_matrix_scale_at (const double m[9], WmPoint at);

/**
 * wm_matrix_is_plausible:
 *
 * TRUE when @m could be two hand-held photos of one piece: not turned over,
 * enlargement within 0.35 to 2.9 (the demand is 0.6 to 1.7, with the tilt and
 * a margin), squeezed at most 1.7 times one way, no horizon inside @width x @height.
 */
gboolean
wm_matrix_is_plausible (const double m[9], double width, double height, WmPoint centre);
