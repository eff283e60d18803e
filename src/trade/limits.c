/* limits.c: what a reading alone points to
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/checklist.h"

#include <math.h>

static gboolean
is_beyond (const WmBound *bound, double value)
{
  switch (bound->side)
    {
    case WM_BOUND_BELOW:
      return value < bound->value;
    case WM_BOUND_ABOVE:
      return value > bound->value;
    default:
      return FALSE;
    }
}

gboolean
wm_limits_judge (const WmLimits *limits, double value, WmSeverity *out_level)
{
  if (limits->measure == NULL || !isfinite (value))
    return FALSE;

  if (is_beyond (&limits->no_wear, value))
    *out_level = WM_SEVERITY_NO_WEAR;
  else if (is_beyond (&limits->repair, value))
    *out_level = WM_SEVERITY_REPAIR;
  else if (is_beyond (&limits->watch, value))
    *out_level = WM_SEVERITY_WATCH;
  else
    *out_level = WM_SEVERITY_SOUND;
  return TRUE;
}
