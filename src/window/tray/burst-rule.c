/* burst-rule.c: which new photos belong to one burst, and which of it is the sharpest
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/tray/burst-rule.h"

#include <math.h>

static gboolean
is_next_of_burst (const WmBurstFrame *before, const WmBurstFrame *after)
{
  gint64 gap = after->taken_at_us - before->taken_at_us;

  return gap >= 0 && gap <= WM_BURST_SECONDS * G_USEC_PER_SEC
         && wm_likeness_compare (before->likeness, after->likeness) >= WM_LIKENESS_SAME;
}

/* What can not be judged comes last. */
static double
get_rank (const WmBurstFrame *frame)
{
  return isnan (frame->focus) ? -1 : frame->focus;
}

static void
place_group (const WmBurstFrame *frames, guint from, guint to, guint *places)
{
  for (guint i = from; i < to; i++)
    {
      places[i] = 0;
      for (guint k = from; k < to; k++)
        if (get_rank (&frames[k]) > get_rank (&frames[i])
            || (k < i && get_rank (&frames[k]) == get_rank (&frames[i])))
          places[i]++;
    }
}

void
wm_burst_group (const WmBurstFrame *frames, guint n, guint *groups, guint *places)
{
  guint from = 0;
  guint group = 0;

  for (guint i = 0; i < n; i++)
    {
      if (i > 0 && !is_next_of_burst (&frames[i - 1], &frames[i]))
        {
          place_group (frames, from, i, places);
          from = i;
          group++;
        }
      groups[i] = group;
    }
  place_group (frames, from, n, places);
}
