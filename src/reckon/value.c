/* value.c: bounds and propagation of uncertainty
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/value.h"

#include <math.h>

static WmResult
check_bound (const WmInputBound *bound)
{
  double v = bound->value.value;

  if (!isfinite (v) || !isfinite (bound->value.u))
    return WM_NOT_A_NUMBER;

  if (bound->low == 0.0 && (v < 0.0 || (bound->low_is_open && v == 0.0)))
    return WM_NOT_POSITIVE;

  if (v < bound->low || v > bound->high || (bound->low_is_open && v == bound->low))
    return WM_OUT_OF_RANGE;

  if (bound->value.u < 0.0)
    return WM_OUT_OF_RANGE;

  /* Nothing is known of a length that may as well be nothing. */
  if (bound->low == 0.0 && bound->low_is_open && bound->value.u >= v)
    return WM_OUT_OF_RANGE;

  return WM_OK;
}

WmResult
wm_bounds_check (const WmInputBound *bounds, int n_bounds, const char **which)
{
  for (int i = 0; i < n_bounds; i++)
    {
      WmResult result = check_bound (&bounds[i]);

      if (result != WM_OK)
        return wm_refuse (result, bounds[i].input, which);
    }

  return WM_OK;
}

WmResult
wm_refuse (WmResult result, const char *input, const char **which)
{
  if (which != NULL)
    *which = input;

  return result;
}

/* Change of each result over one u of input i. */
static double
difference (double above, double below, double middle, double step)
{
  if (!isnan (above) && !isnan (below))
    return (above - below) / (2.0 * step);

  if (!isnan (above))
    return (above - middle) / step;

  return (middle - below) / step;
}

void
wm_propagate (WmModel model, const void *fixed, const WmValue *x, int n_x, WmValue *y,
              int n_y, double step)
{
  double at[WM_PROPAGATE_MAX] = { 0.0 };
  double middle[WM_PROPAGATE_MAX] = { 0.0 };
  double above[WM_PROPAGATE_MAX];
  double below[WM_PROPAGATE_MAX];
  double variance[WM_PROPAGATE_MAX] = { 0.0 };

  for (int i = 0; i < n_x; i++)
    at[i] = x[i].value;

  model (at, middle, fixed);

  for (int i = 0; i < n_x; i++)
    {
      if (x[i].u <= 0.0)
        continue;

      at[i] = x[i].value + step * x[i].u;
      model (at, above, fixed);
      at[i] = x[i].value - step * x[i].u;
      model (at, below, fixed);
      at[i] = x[i].value;

      for (int j = 0; j < n_y; j++)
        {
          double d = difference (above[j], below[j], middle[j], step);

          variance[j] += d * d;
        }
    }

  for (int j = 0; j < n_y; j++)
    y[j] = wm_value (middle[j], sqrt (variance[j]));
}
