/* verbs.c: the table of verbs, in the order of --help
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "command/verbs.h"

const WmVerb *const wm_verbs[] = {
  &wm_verb_sample,  &wm_verb_pieces, &wm_verb_show,  &wm_verb_report,
  &wm_verb_picture, &wm_verb_verify, &wm_verb_photo, &wm_verb_align,
  &wm_verb_measure, &wm_verb_quote,  &wm_verb_sheet, &wm_verb_reckon,
};

const guint wm_n_verbs = G_N_ELEMENTS (wm_verbs);
