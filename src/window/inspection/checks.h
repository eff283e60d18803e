/* checks.h: going through a checklist, as plain rules on records
 *
 * No widget and no archive: what a key or button means for the checks of one visit,
 * so that a plain test can drive it. Arrays hold the WmChecks of one visit in order.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/severity.h"
#include "record/kinds.h"

typedef struct
{
  guint n_checks;
  guint n_looked_at; /* answered, "not present" included */
  guint n_findings;
} WmChecksProgress;

WmChecksProgress wm_checks_progress (GPtrArray *checks);
/* Of the checks of one part only. */
WmChecksProgress wm_checks_progress_of_part (GPtrArray *checks, const char *part);

/* -1: none. */
int wm_checks_find (GPtrArray *checks, const WmId *id);

/* The first check not looked at behind @from (-1: from the top), round the end to the
 * top; @from itself last of all. -1 when everything was looked at. */
int wm_checks_next_open (GPtrArray *checks, int from);

/* One step up or down, staying on the list. -1 only for an empty list. */
int wm_checks_step (GPtrArray *checks, int from, int step);

/* The figure for the next disc of the visit: above every one given, so none is given
 * again. */
gint64 wm_checks_next_number (GPtrArray *checks);

/**
 * wm_check_answer:
 * @check: a copy to be put into an edit
 * @severity: also not looked at, which takes the answer back
 * @now_s: UTC seconds
 * @by: (nullable): who answers
 * @next_number: given to a finding that has none
 *
 * Returns: FALSE if that is the answer already; nothing is changed then
 */
gboolean wm_check_answer (WmCheck *check, WmSeverity severity, gint64 now_s,
                          const WmId *by, gint64 next_number);

/* A mark is tied to it: gives it a number if it has none. FALSE: it had one. */
gboolean wm_check_give_number (WmCheck *check, gint64 next_number);

/* Whether the visit may be called inspected: all looked at, or @reason says something. */
gboolean wm_checks_can_conclude (GPtrArray *checks, const char *reason);

/* What the row is called: the fault's name for a finding, else the thing's. English. */
const char *wm_check_heading (WmCheck *check);
