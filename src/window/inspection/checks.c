/* checks.c: going through a checklist, as plain rules on records
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/inspection/checks.h"

#include <string.h>

static WmCheck *
get (GPtrArray *checks, int index)
{
  return g_ptr_array_index (checks, index);
}

static void
count (WmChecksProgress *progress, WmCheck *check)
{
  progress->n_checks++;
  if (check->severity != WM_SEVERITY_NOT_LOOKED_AT)
    progress->n_looked_at++;
  if (wm_severity_is_finding (check->severity))
    progress->n_findings++;
}

WmChecksProgress
wm_checks_progress (GPtrArray *checks)
{
  WmChecksProgress progress = { 0 };

  for (guint i = 0; i < checks->len; i++)
    count (&progress, get (checks, i));
  return progress;
}

WmChecksProgress
wm_checks_progress_of_part (GPtrArray *checks, const char *part)
{
  WmChecksProgress progress = { 0 };

  for (guint i = 0; i < checks->len; i++)
    if (g_strcmp0 (get (checks, i)->part, part) == 0)
      count (&progress, get (checks, i));
  return progress;
}

int
wm_checks_find (GPtrArray *checks, const WmId *id)
{
  for (guint i = 0; i < checks->len; i++)
    if (wm_id_equal (wm_record_get_id (WM_RECORD (get (checks, i))), id))
      return i;
  return -1;
}

int
wm_checks_next_open (GPtrArray *checks, int from)
{
  int n = checks->len;

  for (int step = 1; step <= n; step++)
    {
      int at = (MAX (from, -1) + step) % n;

      if (get (checks, at)->severity == WM_SEVERITY_NOT_LOOKED_AT)
        return at;
    }
  return -1;
}

int
wm_checks_step (GPtrArray *checks, int from, int step)
{
  if (checks->len == 0)
    return -1;
  if (from < 0)
    return step > 0 ? 0 : (int)checks->len - 1;
  return CLAMP (from + step, 0, (int)checks->len - 1);
}

gint64
wm_checks_next_number (GPtrArray *checks)
{
  gint64 highest = 0;

  for (guint i = 0; i < checks->len; i++)
    highest = MAX (highest, get (checks, i)->number);
  return highest + 1;
}

gboolean
wm_check_answer (WmCheck *check, WmSeverity severity, gint64 now_s, const WmId *by,
                 gint64 next_number)
{
  if (check->severity == (gint64)severity)
    return FALSE;
  check->severity = severity;
  if (severity == WM_SEVERITY_NOT_LOOKED_AT)
    {
      check->answered_at_s = WM_UNKNOWN;
      check->answered_by = WM_ID_NONE;
      return TRUE;
    }
  check->answered_at_s = now_s;
  check->answered_by = by != NULL ? *by : WM_ID_NONE;
  if (wm_severity_is_finding (severity))
    wm_check_give_number (check, next_number);
  return TRUE;
}

gboolean
wm_check_give_number (WmCheck *check, gint64 next_number)
{
  if (check->number > 0)
    return FALSE;
  check->number = next_number;
  return TRUE;
}

gboolean
wm_checks_can_conclude (GPtrArray *checks, const char *reason)
{
  WmChecksProgress progress = wm_checks_progress (checks);

  if (progress.n_looked_at == progress.n_checks)
    return TRUE;
  return reason != NULL && strspn (reason, " \t\n") < strlen (reason);
}

const char *
wm_check_heading (WmCheck *check)
{
  if (wm_severity_is_finding (check->severity) && check->fault != NULL)
    return check->fault;
  return check->title != NULL ? check->title : "";
}
