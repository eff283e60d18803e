/* suggest.h: the severity that the numbers suggest; the jeweller decides
 *
 * Pure computation: no I/O, no GLib, no state; safe on any thread.
 *
 * Remaining-section rule: share of the thickness left against thresholds that the shop
 * can change; a crack is always "do not wear". The careful value (2 standard
 * uncertainties lower) decides, so a reading that can not tell two levels apart takes the
 * worse.
 *
 * Source: thresholds 0.80, 0.60, 0.40 are our own proposal (trade reference 0.4).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/severity.h"
#include "reckon/value.h"

typedef struct
{
  double watch;   /* below this share: watch */
  double repair;  /* below this: repair */
  double no_wear; /* below this: do not wear */
} WmThresholds;

#define WM_THRESHOLDS_DEFAULT                                                            \
  {                                                                                      \
    0.80, 0.60, 0.40                                                                     \
  }

typedef enum
{
  WM_SUGGEST_BY_SHARE = 0,   /* from the share itself */
  WM_SUGGEST_BY_UNCERTAINTY, /* worse than the share alone says: the reading is rough */
  WM_SUGGEST_BY_CRACK,
  WM_SUGGEST_BY_MINIMUM /* under a least measure in mm of its own */
} WmSuggestReason;

typedef struct
{
  WmSeverity severity;
  WmSuggestReason reason;
  double careful_share; /* share less 2 u; NaN for a crack without a share */
} WmSuggestion;

/**
 * wm_suggest:
 * @share_left: of the thickness; value NaN allowed with @has_crack (not measured)
 * @left_mm, @minimum_mm: the measure and the least allowed; 0 = no such rule
 *
 * Returns: WM_OK; WM_CONTRADICTION (@which thresholds) unless they fall from watch to
 * no_wear; otherwise @which share, thresholds, left, minimum
 */
WmResult
wm_suggest (WmValue share_left, int has_crack, WmValue left_mm, double minimum_mm,
            WmThresholds thresholds, WmSuggestion *out, const char **which);

/* Plain sentence for the reason, to be translated. Static. */
const char *wm_suggest_reason_text (WmSuggestReason reason);
