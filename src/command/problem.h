/* problem.h: an archive's failure as a sentence with the next step
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

/* What happened, what was kept, what to do; then the system's words in brackets. Any
 * domain. Caller frees. */
char *wm_problem_sentence (const GError *error);
