/* result.c: words and keys for WmResult
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/result.h"

#include "reckon/words.h"

static const struct
{
  const char *key;
  const char *text;
} results[] = {
  [WM_OK] = { "ok", N_ ("done") },
  [WM_NOT_A_NUMBER] = { "not-a-number", N_ ("is not a number") },
  [WM_OUT_OF_RANGE] = { "out-of-range",
                        N_ ("is outside the range this calculation is valid for") },
  [WM_TOO_SHORT] = { "too-short",
                     N_ ("is too short on this photo to measure; take a closer photo") },
  [WM_TOO_FEW] = { "too-few", N_ ("has too few values for an answer") },
  [WM_DEGENERATE] = { "degenerate", N_ ("gives no single answer: points on one line, or "
                                        "all on one date") },
  [WM_NO_CONVERGENCE] = { "no-convergence", N_ ("did not lead to a stable answer") },
  [WM_NOT_POSITIVE] = { "not-positive", N_ ("must be more than zero") },
  [WM_LARGER_THAN_NEW] = { "larger-than-new",
                           N_ ("is larger than the part as made; measure both again") },
  [WM_CONTRADICTION] = { "contradiction", N_ ("does not agree with the other values") },
  [WM_TOO_BIG] = { "too-big", N_ ("leads to a sum too large to hold") },
  [WM_MISSING] = { "missing", N_ ("was not given") },
  [WM_UNKNOWN_INPUT] = { "unknown-input", N_ ("is not known here") },
  [WM_NO_EDGE] = { "no-edge", N_ ("has no clear edge nearby; place the end by hand") },
  [WM_NO_NUMBER_HONEST] = { "no-honest-number",
                            N_ ("is so near the limit that no number would be honest") },
  [WM_WRONG_UNIT] = { "wrong-unit",
                      N_ ("was given in another unit than it is asked in") },
};

#define N_RESULTS ((int)(sizeof results / sizeof results[0]))

const char *
wm_result_text (WmResult result)
{
  if ((int)result < 0 || (int)result >= N_RESULTS)
    return N_ ("failed for an unknown reason");

  return results[result].text;
}

const char *
wm_result_key (WmResult result)
{
  if ((int)result < 0 || (int)result >= N_RESULTS)
    return "unknown";

  return results[result].key;
}
