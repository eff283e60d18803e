/* growth.h: how much a measured place has changed between two visits
 *
 * Pure computation: no I/O, no GLib, no state; safe on any thread.
 *
 * Both readings carry what is theirs alone (picking the ends, the edge) and what they
 * share: the same rule, read by the same person, is wrong by the same share both times,
 * and goes out of a difference but for the length that has gone.
 *
 * Source: JCGM 100:2008 (GUM), 5.2.2 (correlated inputs) with y = x2 - x1 and the
 * common part as F.1.2.3 has it; clause numbers from memory.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/value.h"

typedef struct
{
  WmValue change;  /* later minus earlier, mm: below 0 is thinner */
  double shared_u; /* what of the readings' uncertainty goes out, mm: of the later */
  int is_told;     /* the change is more than its expanded uncertainty */
} WmGrowth;

/**
 * wm_growth_between:
 * @earlier_mm, @later_mm: the readings, above 0
 * @shared_relative: standard uncertainty of the scale both were measured by, as a share
 *   of a length; 0 when they share nothing
 * @out: (out): written on success only
 * @which: (out) (optional): input at fault: "earlier_mm", "later_mm", "shared_relative"
 *
 * u(change)^2 = (u1^2 - s1^2) + (u2^2 - s2^2) + (s2 - s1)^2 with s = share * reading,
 * never more than the reading's own u.
 *
 * Returns: WM_OK or as wm_bounds_check ()
 */
WmResult wm_growth_between (WmValue earlier_mm, WmValue later_mm, double shared_relative,
                            WmGrowth *out, const char **which);
