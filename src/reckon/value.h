/* value.h: a quantity with its standard uncertainty, and how it travels
 *
 * Pure computation: no I/O, no GLib, no state; safe on any thread.
 *
 * Source: JCGM 100:2008 (GUM), clauses 4.3.7 (rectangular), 5.1.2 (law of
 * propagation), 5.1.3 note 2 (numerical differences) and 6.2 (expanded); clause
 * numbers from memory.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <stddef.h>

#include "reckon/result.h"

/* Coverage factor: about 95 % when no single term with few degrees of freedom
 * dominates (GUM 6.3.3). */
#define WM_COVERAGE_FACTOR 2.0

typedef struct
{
  double value; /* best estimate, in the unit of the name it is stored under */
  double u;     /* standard uncertainty, same unit, 0 or more; 0 = taken as exact */
} WmValue;

static inline WmValue
wm_value (double value, double u)
{
  WmValue v = { value, u };

  return v;
}

static inline WmValue
wm_exact (double value)
{
  return wm_value (value, 0.0);
}

/* One input and what it may be. */
typedef struct
{
  const char *input; /* static name, handed back as the one at fault */
  WmValue value;
  double low;
  double high;
  int low_is_open; /* true: low itself is refused */
} WmInputBound;

/* Above low, up to and including high. */
#define WM_ABOVE(name, v, low, high)                                                     \
  {                                                                                      \
    name, v, low, high, 1                                                                \
  }
/* From low to high, both allowed. */
#define WM_FROM(name, v, low, high)                                                      \
  {                                                                                      \
    name, v, low, high, 0                                                                \
  }

/**
 * wm_bounds_check:
 * @which: (out) (optional): name of the first input at fault; untouched on WM_OK
 *
 * Returns: WM_OK; WM_NOT_A_NUMBER for NaN or infinity in value or uncertainty;
 * WM_NOT_POSITIVE for a value at or below an open bound of 0, or a negative
 * value where the low bound is 0; WM_OUT_OF_RANGE otherwise (also for a negative
 * uncertainty, and for one as large as a value that must be above 0)
 */
WmResult wm_bounds_check (const WmInputBound *bounds, int n_bounds, const char **which);

/**
 * wm_refuse:
 *
 * Sets @which (if not NULL) to @input and returns @result: one line at the place of
 * the refusal.
 */
WmResult wm_refuse (WmResult result, const char *input, const char **which);

/* A function of n_x numbers giving n_y numbers; @fixed is what does not vary. A
 * result that does not exist for these inputs is written as NaN. */
typedef void (*WmModel) (const double *x, double *y, const void *fixed);

#define WM_PROPAGATE_MAX 24

/* Difference taken over the whole uncertainty: sees kinks (a spring that begins to
 * set) within one u. */
#define WM_STEP_WHOLE 1.0
/* Difference over a thousandth of it: the slope at the point. */
#define WM_STEP_SLOPE 1e-3

/**
 * wm_propagate:
 * @x: inputs, taken as independent; at most WM_PROPAGATE_MAX
 * @y: (out): results with u by the law of propagation; at most WM_PROPAGATE_MAX
 * @step: share of u over which the central difference is taken, above 0
 *
 * u(y)^2 = sum of (dy/dx_i u(x_i))^2, by central differences. Where the model has no
 * answer on one side (NaN), the one-sided difference is used; where it has none on
 * both sides, u(y) is NaN.
 */
void wm_propagate (WmModel model, const void *fixed, const WmValue *x, int n_x,
                   WmValue *y, int n_y, double step);
