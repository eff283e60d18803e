/* verbs.h: every verb, each in its own file verb-NAME.c
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "command/command.h"

extern const WmVerb wm_verb_align;
extern const WmVerb wm_verb_measure;
extern const WmVerb wm_verb_pieces;
extern const WmVerb wm_verb_quote;
extern const WmVerb wm_verb_reckon;
extern const WmVerb wm_verb_report;
extern const WmVerb wm_verb_verify;
extern const WmVerb wm_verb_sample;
extern const WmVerb wm_verb_sheet;
extern const WmVerb wm_verb_show;
extern const WmVerb wm_verb_picture;
extern const WmVerb wm_verb_photo;
