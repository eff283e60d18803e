/* problem.h: what went wrong, in the jeweller's words, and what to do next
 *
 * One table from archive error codes to a sentence and a next step; nothing else
 * in the window words an archive's failure.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

typedef struct
{
  int code;              /* WmArchiveError */
  const char *title;     /* N_(): what happened, three to six words */
  const char *sentence;  /* N_(): what happened and what was kept */
  const char *next_step; /* N_(): what to do */
  const char *icon_name;
  gboolean can_look;  /* opening only to look helps */
  gboolean can_retry; /* trying again may help */
} WmProblemWords;

/* Never NULL: an error of another domain gets the words of WM_ARCHIVE_ERROR_IO. */
const WmProblemWords *wm_problem_words (const GError *error);

/* Sentence and next step in one line for a toast. Translated; caller frees. */
char *wm_problem_line (const GError *error);

/* The table itself, for its test. */
const WmProblemWords *wm_problem_table (guint *n_rows);
