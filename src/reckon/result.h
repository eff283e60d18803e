/* result.h: how a computation says that it could not be done
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

typedef enum
{
  WM_OK = 0,
  WM_NOT_A_NUMBER,     /* an input is NaN or infinite */
  WM_OUT_OF_RANGE,     /* an input is outside what the formula is valid for */
  WM_TOO_SHORT,        /* a length in pixels too short to be worth anything */
  WM_TOO_FEW,          /* not enough data for an answer */
  WM_DEGENERATE,       /* the data has no single answer (points on one line ...) */
  WM_NO_CONVERGENCE    /* the iteration did not settle */
} WmResult;
