/* counter-words.h: a finding in the customer's plain sentences
 *
 * The only place that chooses what the counter view says. Reads the piece, its
 * findings and the day to come back; never a price, a shop note, a declared value or
 * anybody's name. All return newly allocated text; "" where there is nothing to say.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "report/language.h"
#include "report/visit-data.h"

/* "Your line bracelet" */
char *wm_counter_piece (WmLanguage *language, WmVisitData *data);

/* Whether the finding was looked at again after the work. */
gboolean wm_counter_has_after (const WmFinding *finding);

/* "Mended. Wear it as usual." */
char *wm_counter_state (WmLanguage *language, const WmFinding *finding);

/* What was seen, what it means, what was done or would help: a paragraph a line. */
char *
wm_counter_story (WmLanguage *language, WmVisitData *data, const WmFinding *finding);

/* How it was tested, a test a line. */
char *wm_counter_tests (WmLanguage *language, const WmFinding *finding);

/* "Come back by 3 March 2027" and its reason, a line each. */
char *wm_counter_come_back (WmLanguage *language, WmVisitData *data);

/* Thickness left through as made, before or after the work; NaN where not measured. */
double wm_counter_ratio (const WmFinding *finding, const char *moment);

/* The page behind the findings: title, what is sound, what was not looked at. */
char *wm_counter_rest_title (WmLanguage *language, WmVisitData *data);
char *wm_counter_rest_sound (WmLanguage *language, WmVisitData *data);
char *wm_counter_rest_open (WmLanguage *language, WmVisitData *data);
