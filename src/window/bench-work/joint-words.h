/* joint-words.h: a straight against an angled solder joint, in one sentence
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "trade/trade.h"

/* The joint it compares with the straight one: filed to so many degrees, with so much
 * room for the solder; examples, common practice, no source. */
#define WM_JOINT_ANGLED_DEG 30.0
#define WM_JOINT_GAP_MM 0.05

/**
 * wm_joint_words:
 *
 * How much more an angled joint carries and how much more solder it takes. Tables of
 * solders give no strength, so only the ratio is told: shear strength is taken as
 * 1/sqrt (3) of the tensile strength (von Mises).
 *
 * Returns: new text in the language of the program; NULL if the metal's density is not
 * known
 */
char *wm_joint_words (const WmMetal *metal);
