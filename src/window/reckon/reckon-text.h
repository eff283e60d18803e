/* reckon-text.h: the answer of a topic in words
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

#include "reckon/topics.h"

/* "0.52 ± 0.04 mm", a date, a sum in @currency, a sentence; translated; caller frees. */
char *wm_reckon_item_text (const WmTopicAnswer *answer, const WmTopicItem *item,
                           const char *currency);

/* A word of an answer as a sentence of its own: "Severity: repair." Caller frees. */
char *wm_reckon_sentence (const WmTopicAnswer *answer, const WmTopicItem *item);

/* "mm²" for "mm2"; with its first letter large. Callers free. */
char *wm_reckon_unit (const char *unit);
char *wm_reckon_capital (const char *text);

/* The whole answer in one line, for a note. Caller frees. */
char *wm_reckon_note_text (const WmTopicAnswer *answer, const char *currency);

/* As a person types a number here, to what wm_topic_set () reads: a decimal comma
 * becomes a point. Caller frees. */
char *wm_reckon_typed (const WmTopicInput *input, const char *text);
