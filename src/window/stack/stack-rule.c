/* stack-rule.c: which photos of a visit can be one focus stack
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/stack/stack-rule.h"

static gboolean
can_join (WmPhoto *photo, WmPhoto *shown)
{
  return g_strcmp0 (photo->moment, shown->moment) == 0 && photo->width == shown->width
         && photo->height == shown->height && g_strcmp0 (photo->made_from, "stack") != 0
         && wm_id_is_none (&photo->stacked_into);
}

GPtrArray *
wm_stack_candidates (GPtrArray *photos, WmPhoto *shown)
{
  GPtrArray *found = g_ptr_array_new ();

  for (guint i = 0; i < photos->len; i++)
    if (can_join (g_ptr_array_index (photos, i), shown))
      g_ptr_array_add (found, g_ptr_array_index (photos, i));
  return found;
}

static int
compare_times (gconstpointer a, gconstpointer b)
{
  gint64 first = *(const gint64 *)a, second = *(const gint64 *)b;

  return (first > second) - (first < second);
}

gboolean
wm_stack_is_of_one_go (GPtrArray *candidates, WmPhoto *shown, WmPhoto *photo)
{
  g_autoptr (GArray) times = g_array_new (FALSE, FALSE, sizeof (gint64));
  gint64 from = MIN (shown->taken_at_s, photo->taken_at_s);
  gint64 to = MAX (shown->taken_at_s, photo->taken_at_s);

  if (photo == shown)
    return TRUE;
  if (from <= 0) /* a time is not known */
    return FALSE;
  for (guint i = 0; i < candidates->len; i++)
    {
      gint64 at = ((WmPhoto *)g_ptr_array_index (candidates, i))->taken_at_s;

      if (at >= from && at <= to)
        g_array_append_val (times, at);
    }
  g_array_sort (times, compare_times);
  for (guint i = 1; i < times->len; i++)
    if (g_array_index (times, gint64, i) - g_array_index (times, gint64, i - 1)
        > WM_STACK_PAUSE_S)
      return FALSE;
  return TRUE;
}
