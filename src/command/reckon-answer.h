/* reckon-answer.h: the answer of a topic as JSON and as lines
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "command/command.h"
#include "reckon/topics.h"

/* Keys: topic title inputs results validity source. (transfer full) */
JsonNode *
wm_reckon_answer_to_json (const WmTopicInputs *inputs, const WmTopicAnswer *answer);

void wm_reckon_answer_print (WmCall *call, const WmTopicInputs *inputs,
                             const WmTopicAnswer *answer);
