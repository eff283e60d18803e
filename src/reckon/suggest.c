/* suggest.c: severity from numbers
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/suggest.h"

#include <math.h>

#include "reckon/words.h"

/* A share that is a threshold but for its last binary digits is on it. */
#define ON_IT 1e-9

static WmSeverity
level_of (double left, WmThresholds t)
{
  double share = left + ON_IT;

  if (share < t.no_wear)
    return WM_SEVERITY_NO_WEAR;
  if (share < t.repair)
    return WM_SEVERITY_REPAIR;
  if (share < t.watch)
    return WM_SEVERITY_WATCH;

  return WM_SEVERITY_SOUND;
}

static WmResult
check_inputs (WmValue share, int has_crack, WmValue left_mm, double minimum_mm,
              WmThresholds t, const char **which)
{
  const WmInputBound bounds[] = {
    WM_FROM ("left", left_mm, 0.0, 100.0),
    WM_FROM ("minimum", wm_exact (minimum_mm), 0.0, 100.0),
    WM_FROM ("thresholds", wm_exact (t.watch), 0.0, 1.0),
    WM_FROM ("thresholds", wm_exact (t.repair), 0.0, 1.0),
    WM_FROM ("thresholds", wm_exact (t.no_wear), 0.0, 1.0),
    /* A reading may come out a little over as made; far over is a slip. */
    WM_FROM ("share", share, 0.0, 1.5),
  };
  WmResult result =
      wm_bounds_check (bounds, has_crack && isnan (share.value) ? 5 : 6, which);

  if (result == WM_OK && !(t.watch >= t.repair && t.repair >= t.no_wear))
    result = wm_refuse (WM_CONTRADICTION, "thresholds", which);

  return result;
}

WmResult
wm_suggest (WmValue share_left, int has_crack, WmValue left_mm, double minimum_mm,
            WmThresholds thresholds, WmSuggestion *out, const char **which)
{
  WmSuggestion s = { WM_SEVERITY_NO_WEAR, WM_SUGGEST_BY_CRACK, NAN };
  WmResult result =
      check_inputs (share_left, has_crack, left_mm, minimum_mm, thresholds, which);

  if (result != WM_OK)
    return result;

  s.careful_share = share_left.value - WM_COVERAGE_FACTOR * share_left.u;

  if (!has_crack)
    {
      s.severity = level_of (s.careful_share, thresholds);
      s.reason = s.severity == level_of (share_left.value, thresholds)
                     ? WM_SUGGEST_BY_SHARE
                     : WM_SUGGEST_BY_UNCERTAINTY;

      if (minimum_mm > 0.0 && left_mm.value > 0.0 && s.severity < WM_SEVERITY_REPAIR
          && left_mm.value - WM_COVERAGE_FACTOR * left_mm.u < minimum_mm)
        {
          s.severity = WM_SEVERITY_REPAIR;
          s.reason = WM_SUGGEST_BY_MINIMUM;
        }
    }

  *out = s;
  return WM_OK;
}

const char *
wm_suggest_reason_text (WmSuggestReason reason)
{
  switch (reason)
    {
    case WM_SUGGEST_BY_CRACK:
      return N_ ("A crack can part without warning.");
    case WM_SUGGEST_BY_MINIMUM:
      return N_ ("The least allowed thickness may be reached.");
    case WM_SUGGEST_BY_UNCERTAINTY:
      return N_ ("The measurement can not rule out the worse of two levels.");
    case WM_SUGGEST_BY_SHARE:
    default:
      return N_ ("From how much of the thickness is left.");
    }
}
