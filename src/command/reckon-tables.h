/* reckon-tables.h: keys of the trade's tables in place of numbers, for reckon
 *
 * "metal=ag925" fills what the topic asks about a metal; "solders=ag_h,ag_m" and
 * "stones=diamond,opal" stand for the rows of the tables. Numbers given besides count
 * more.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "command/command.h"
#include "reckon/topics.h"

/* Whether @name is an input that this file adds to the topic: "metal" where a density, a
 * modulus or a solidus is asked for. */
gboolean wm_reckon_takes_metal (const WmTopic *topic);

/**
 * wm_reckon_set_metal:
 *
 * Sets the inputs that are not given yet from the table's row; for a heat plan without
 * solders, all that join the metal.
 *
 * Returns: WM_EXIT_DONE, or what to return after the reason was told
 */
WmExit wm_reckon_set_metal (WmCall *call, WmTopicInputs *inputs, const char *key);

/**
 * wm_reckon_expand_keys:
 * @name, @text: an input as typed
 *
 * Returns: (transfer full): @text with every key of a solder or stone replaced by its
 * row; other words are left for the topic to refuse. NULL when the tables can not be
 * read: the reason was told
 */
char *wm_reckon_expand_keys (WmCall *call, const WmTopic *topic, const char *name,
                             const char *text);
