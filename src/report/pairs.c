/* pairs.c: which photo belongs to which, and what is known of how they meet
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "report/pairs.h"

#include <math.h>

static const WmId *
id_of (gpointer record)
{
  return wm_record_get_id (WM_RECORD (record));
}

gboolean
wm_pairing_is_by_hand (WmPairing *pairing)
{
  return g_strcmp0 (pairing->made_by, WM_PAIRING_BY_PROGRAM) != 0
         || g_strcmp0 (pairing->reason, WM_PAIRING_CONFIRMED) == 0;
}

/* By hand goes before by the program, later before earlier: keys are time-ordered. */
static gboolean
is_better (WmPairing *a, WmPairing *b)
{
  gboolean hand = wm_pairing_is_by_hand (a);

  if (b == NULL || hand != wm_pairing_is_by_hand (b))
    return b == NULL || hand;
  return wm_id_compare (id_of (a), id_of (b)) > 0;
}

WmPairing *
wm_pairs_find (GPtrArray *pairings, const WmId *before_id, const WmId *after_id)
{
  WmPairing *best = NULL;

  for (guint i = 0; i < pairings->len; i++)
    {
      WmPairing *pairing = g_ptr_array_index (pairings, i);

      if (wm_id_equal (&pairing->before_photo_id, before_id)
          && wm_id_equal (&pairing->after_photo_id, after_id)
          && is_better (pairing, best))
        best = pairing;
    }
  return best;
}

static WmPhoto *
find_photo (GPtrArray *photos, const WmId *id)
{
  for (guint i = 0; i < photos->len; i++)
    if (wm_id_equal (id_of (g_ptr_array_index (photos, i)), id))
      return g_ptr_array_index (photos, i);
  return NULL;
}

static gboolean
is_taken (GArray *pairs, WmPhoto *after)
{
  for (guint i = 0; i < pairs->len; i++)
    if (g_array_index (pairs, WmPair, i).after == after)
      return TRUE;
  return FALSE;
}

/* What the pairings say of @pair->before, among @afters that are still free. */
static void
take_said (WmPair *pair, GArray *pairs, GPtrArray *afters, GPtrArray *pairings)
{
  for (guint i = 0; i < pairings->len; i++)
    {
      WmPairing *pairing = g_ptr_array_index (pairings, i);
      WmPhoto *after = find_photo (afters, &pairing->after_photo_id);

      if (!wm_id_equal (&pairing->before_photo_id, id_of (pair->before)) || after == NULL
          || is_taken (pairs, after) || !is_better (pairing, pair->pairing))
        continue;
      pair->after = after;
      pair->pairing = pairing;
    }
}

static WmPhoto *
find_same_view (WmPhoto *before, GArray *pairs, GPtrArray *afters)
{
  for (guint i = 0; i < afters->len; i++)
    {
      WmPhoto *after = g_ptr_array_index (afters, i);

      if (before->view != NULL && g_strcmp0 (before->view, after->view) == 0
          && !is_taken (pairs, after))
        return after;
    }
  return NULL;
}

/* What is said goes before what only looks alike, whichever photo comes first. */
GArray *
wm_pairs_list (GPtrArray *befores, GPtrArray *afters, GPtrArray *pairings)
{
  GArray *pairs = g_array_new (FALSE, TRUE, sizeof (WmPair));

  for (guint i = 0; i < befores->len; i++)
    {
      WmPair pair = { .before = g_ptr_array_index (befores, i) };

      take_said (&pair, pairs, afters, pairings);
      g_array_append_val (pairs, pair);
    }
  for (guint i = 0; i < pairs->len; i++)
    {
      WmPair *pair = &g_array_index (pairs, WmPair, i);

      if (pair->after == NULL)
        pair->after = find_same_view (pair->before, pairs, afters);
    }
  if (befores->len == 1 && afters->len == 1)
    g_array_index (pairs, WmPair, 0).after = g_ptr_array_index (afters, 0);
  for (guint i = pairs->len; i-- > 0;)
    if (g_array_index (pairs, WmPair, i).after == NULL)
      g_array_remove_index (pairs, i);
  return pairs;
}

gboolean
wm_pair_is_open (const WmPair *pair, gint64 engine)
{
  if (pair->pairing == NULL)
    return TRUE;
  return !wm_pairing_is_by_hand (pair->pairing) && pair->pairing->engine < engine;
}

gboolean
wm_pairing_get_matrix (WmPairing *pairing, double matrix[9])
{
  const double m[9] = { pairing->m0, pairing->m1, pairing->m2, pairing->m3, pairing->m4,
                        pairing->m5, pairing->m6, pairing->m7, pairing->m8 };

  if (pairing->refused)
    return FALSE;
  for (int i = 0; i < 9; i++)
    {
      if (!isfinite (m[i]))
        return FALSE;
      matrix[i] = m[i];
    }
  return TRUE;
}

void
wm_pairing_set_matrix (WmPairing *pairing, const double *matrix)
{
  double *to[9] = { &pairing->m0, &pairing->m1, &pairing->m2, &pairing->m3, &pairing->m4,
                    &pairing->m5, &pairing->m6, &pairing->m7, &pairing->m8 };

  pairing->refused = matrix == NULL;
  for (int i = 0; i < 9; i++)
    *to[i] = matrix != NULL ? matrix[i] : NAN;
}

static int
compare_positions (gconstpointer a, gconstpointer b)
{
  const WmPhoto *first = *(WmPhoto *const *)a;
  const WmPhoto *second = *(WmPhoto *const *)b;

  if (first->position != second->position)
    return first->position < second->position ? -1 : 1;
  return wm_id_compare (id_of ((gpointer)first), id_of ((gpointer)second));
}

GPtrArray *
wm_photos_of_moment (GPtrArray *photos, const char *moment)
{
  GPtrArray *of_moment = g_ptr_array_new ();

  for (guint i = 0; i < photos->len; i++)
    {
      WmPhoto *photo = g_ptr_array_index (photos, i);

      /* A frame of a stack is shown by the photo it went into. */
      if (g_strcmp0 (photo->moment, moment) == 0 && wm_id_is_none (&photo->stacked_into))
        g_ptr_array_add (of_moment, photo);
    }
  g_ptr_array_sort (of_moment, compare_positions);
  return of_moment;
}
