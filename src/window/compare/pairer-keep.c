/* pairer-keep.c: what the engine said, kept with the pair
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/compare/pairer-keep.h"

#include <glib/gi18n.h>
#include <math.h>

#include "report/carry.h"

/* Written by the archive's own rule for what the program does (archive/edit.h); here so
 * that it is translated. */
static const char *const by_program = N_ ("Photos aligned");

/* ---- marks ---------------------------------------------------------------------- */

typedef struct
{
  WmArchive *archive;
  GPtrArray *checks; /* of the visit that @to belongs to */
  WmId found;
} Today;

/* Today's check of the same item; none while today's list is not begun. */
static const WmId *
find_todays_check (WmMark *source, gpointer user_data)
{
  Today *today = user_data;
  g_autoptr (WmCheck) old =
      wm_archive_get (today->archive, WM_KIND_CHECK, &source->check_id, NULL);

  for (guint i = 0; old != NULL && old->item != NULL && i < today->checks->len; i++)
    {
      WmCheck *check = g_ptr_array_index (today->checks, i);

      if (g_strcmp0 (check->item, old->item) != 0)
        continue;
      today->found = *wm_record_get_id (WM_RECORD (check));
      return &today->found;
    }
  return NULL;
}

guint
wm_pairer_put_carried (WmSession *session, WmEdit *edit, const WmPair *pair,
                       const double matrix[9])
{
  WmArchive *archive = wm_session_get_archive (session);
  gboolean same_visit = wm_id_equal (&pair->before->visit_id, &pair->after->visit_id);
  g_autoptr (GPtrArray) sources =
      wm_archive_list (archive, WM_KIND_MARK, "photo_id",
                       wm_record_get_id (WM_RECORD (pair->before)), NULL);
  g_autoptr (GPtrArray) there =
      wm_archive_list (archive, WM_KIND_MARK, "photo_id",
                       wm_record_get_id (WM_RECORD (pair->after)), NULL);
  g_autoptr (GPtrArray) checks =
      wm_archive_list_of_visit (archive, WM_KIND_CHECK, &pair->after->visit_id, NULL);
  g_autoptr (GPtrArray) carried = NULL;
  Today today = { archive, checks, WM_ID_NONE };
  double to_after[9];

  if (sources == NULL || there == NULL || checks == NULL
      || !wm_align_invert (matrix, to_after))
    return 0;
  carried = wm_carry_marks (sources, pair->before, there, pair->after, to_after,
                            same_visit ? NULL : find_todays_check, &today);
  for (guint i = 0; i < carried->len; i++)
    wm_session_put (session, edit, carried->pdata[i]);
  return carried->len;
}

/* Once a piece has been handed back its record says what was seen then. */
static gboolean
is_open (WmArchive *archive, WmPhoto *photo)
{
  g_autoptr (WmVisit) visit =
      wm_archive_get (archive, WM_KIND_VISIT, &photo->visit_id, NULL);

  return visit != NULL && visit->handed_back_at_s == WM_UNKNOWN;
}

/* ---- the pairing ------------------------------------------------------------------ */

static void
fill (WmPairing *pairing, const WmPairerJob *job)
{
  const WmAlignment *answer = &job->alignment;

  pairing->before_photo_id = job->before_id;
  pairing->after_photo_id = job->after_id;
  wm_pairing_set_matrix (pairing, answer->aligned ? answer->matrix : NULL);
  pairing->residual_px = answer->aligned ? answer->residual_px : NAN;
  pairing->overlap = answer->aligned ? answer->overlap : NAN;
  pairing->engine = WM_ALIGN_ENGINE_VERSION;
  wm_record_set_text (WM_RECORD (pairing), "made_by", WM_PAIRING_BY_PROGRAM);
  wm_record_set_text (WM_RECORD (pairing), "points", NULL);
  wm_record_set_text (WM_RECORD (pairing), "reason",
                      answer->aligned ? NULL : wm_align_reason_name (answer->reason));
}

/* The other pairings of both photos within this visit: they said otherwise. */
static void
remove_others (WmSession *session, WmEdit *edit, const WmPairerJob *job)
{
  const WmId *visit_id = wm_session_get_visit_id (session);
  g_autoptr (GPtrArray) pairings = NULL, photos = NULL;

  if (visit_id == NULL)
    return;
  pairings = wm_archive_list_of_visit (wm_session_get_archive (session), WM_KIND_PAIRING,
                                       visit_id, NULL);
  photos = wm_archive_list_of_visit (wm_session_get_archive (session), WM_KIND_PHOTO,
                                     visit_id, NULL);
  for (guint i = 0; pairings != NULL && photos != NULL && i < pairings->len; i++)
    {
      WmPairing *pairing = g_ptr_array_index (pairings, i);
      gboolean both_here = FALSE;

      for (guint k = 0; k < photos->len; k++)
        both_here |=
            wm_id_equal (wm_record_get_id (photos->pdata[k]), &pairing->before_photo_id);
      if (both_here
          && (wm_id_equal (&pairing->before_photo_id, &job->before_id)
              || wm_id_equal (&pairing->after_photo_id, &job->after_id)))
        wm_edit_remove (edit, pairing);
    }
}

/* FALSE when a person has spoken, or a photo has gone, while the engine looked. */
static gboolean
find_pair (WmArchive *archive, const WmPairerJob *job, GPtrArray *keep, WmPair *pair)
{
  g_autoptr (GPtrArray) pairings = wm_archive_list (
      archive, WM_KIND_PAIRING, "before_photo_id", &job->before_id, NULL);

  pair->before = wm_archive_get (archive, WM_KIND_PHOTO, &job->before_id, NULL);
  if (pair->before != NULL)
    g_ptr_array_add (keep, pair->before);
  pair->after = wm_archive_get (archive, WM_KIND_PHOTO, &job->after_id, NULL);
  if (pair->after != NULL)
    g_ptr_array_add (keep, pair->after);
  if (pair->before == NULL || pair->after == NULL || pairings == NULL)
    return FALSE;
  pair->pairing = wm_pairs_find (pairings, &job->before_id, &job->after_id);
  if (pair->pairing != NULL)
    g_ptr_array_add (keep, g_object_ref (pair->pairing));
  return job->is_choice || pair->pairing == NULL
         || !wm_pairing_is_by_hand (pair->pairing);
}

void
wm_pairer_keep (WmSession *session, WmPairerJob *job)
{
  WmArchive *archive = wm_session_get_archive (session);
  g_autoptr (GPtrArray) keep = g_ptr_array_new_with_free_func (g_object_unref);
  g_autoptr (WmPairing) pairing = NULL;
  WmPair pair = { NULL };
  WmEdit *edit;

  if (!find_pair (archive, job, keep, &pair))
    return;
  edit =
      wm_edit_new (job->is_choice ? N_ ("Choose the photos to compare") : by_program,
                   &job->piece_id, job->is_choice ? wm_session_get_by (session) : NULL);
  if (job->is_choice)
    remove_others (session, edit, job);
  pairing = pair.pairing != NULL && !job->is_choice
                ? WM_PAIRING (wm_record_copy (WM_RECORD (pair.pairing)))
                : wm_pairing_new ();
  fill (pairing, job);
  wm_session_put (session, edit, pairing);
  if (job->alignment.aligned && pair.pairing == NULL && is_open (archive, pair.after))
    wm_pairer_put_carried (session, edit, &pair, job->alignment.matrix);
  wm_session_commit (session, edit);
}

/* ---- the visit before -----------------------------------------------------------------
 */

static WmVisit *
find_visit_before (WmArchive *archive, WmVisit *visit)
{
  g_autoptr (GPtrArray) visits =
      wm_archive_list (archive, WM_KIND_VISIT, "piece_id", &visit->piece_id, NULL);
  WmVisit *last = NULL;

  for (guint i = 0; visits != NULL && i < visits->len; i++)
    {
      WmVisit *other = g_ptr_array_index (visits, i);

      if (other->taken_in_at_s < visit->taken_in_at_s
          && (last == NULL || other->taken_in_at_s > last->taken_in_at_s))
        last = other;
    }
  return last != NULL ? g_object_ref (last) : NULL;
}

GArray *
wm_pairer_list_past (WmSession *session, GPtrArray *photos, GPtrArray *pairings,
                     GPtrArray **out_earlier)
{
  WmArchive *archive = wm_session_get_archive (session);
  WmVisit *visit = wm_session_get_visit (session);
  g_autoptr (WmVisit) before = visit != NULL ? find_visit_before (archive, visit) : NULL;
  g_autoptr (GPtrArray) arrivals = wm_photos_of_moment (photos, WM_PHOTO_BEFORE);
  g_autoptr (GPtrArray) first = NULL, second = NULL;

  *out_earlier = before != NULL ? wm_archive_list_of_visit (
                     archive, WM_KIND_PHOTO, wm_record_get_id (WM_RECORD (before)), NULL)
                                : NULL;
  if (*out_earlier == NULL)
    return g_array_new (FALSE, TRUE, sizeof (WmPair));
  first = wm_photos_of_moment (*out_earlier, WM_PHOTO_AFTER);
  second = wm_photos_of_moment (*out_earlier, WM_PHOTO_BEFORE);
  g_ptr_array_extend (first, second, NULL, NULL);
  return wm_pairs_list (first, arrivals, pairings);
}
