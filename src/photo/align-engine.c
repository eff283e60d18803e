/* align-engine.c: from two photos to one matrix and how sure it is
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/align-decide.h"

#include <math.h>
#include <string.h>

/* Blobs are looked for at half size (800 pixels): at full size four times the
 * time bought no further right pair (tests/align/README.md). */
#define FEATURE_LEVEL 1
#define MOST_FEATURES 1000

static const int most_places[WM_TRACK_LEVELS] = { 260, 220, 120 };

WmSide *
wm_side_new (const WmAlignImage *image, gboolean with_features)
{
  WmPhotoPlanes *planes = wm_photo_planes_new (image);
  WmSide *side;

  if (planes == NULL)
    return NULL;
  side = g_new0 (WmSide, 1);
  side->planes = planes;
  side->piece = wm_piece_mask_new (planes);
  if (with_features)
    side->features = wm_features_new (planes, side->piece, FEATURE_LEVEL, MOST_FEATURES);
  for (int level = 0; level < WM_TRACK_LEVELS; level++)
    side->places[level] =
        wm_places_choose (planes->grey[level], side->piece, level, most_places[level]);
  return side;
}

void
wm_side_free (WmSide *side)
{
  if (side == NULL)
    return;
  wm_photo_planes_free (side->planes);
  wm_piece_mask_free (side->piece);
  wm_features_free (side->features);
  for (int level = 0; level < WM_TRACK_LEVELS; level++)
    g_array_unref (side->places[level]);
  g_free (side);
}

gboolean
wm_candidate_follow (WmCandidate *candidate, const WmSide *before, const WmSide *after,
                     int level, int reach)
{
  const GArray *places = before->places[level];
  g_autofree WmSighting *sightings = g_new (WmSighting, (gsize)places->len + 1);
  const WmPieceMask *piece = before->piece;
  double m[9];

  memcpy (m, candidate->to_after, sizeof m);
  for (int round = 0; round < 2; round++)
    {
      wm_track_places (before->planes->grey[level], piece, after->planes->grey, level, m,
                       places, round == 0 ? reach : MIN (reach, 3), sightings);
      if (!wm_track_fit (sightings, (int)places->len, level, piece->centre, piece->radius,
                         m, &candidate->track))
        return FALSE;
    }
  if (!wm_matrix_is_plausible (m, before->planes->grey[0]->width,
                               before->planes->grey[0]->height, piece->centre))
    return FALSE;
  memcpy (candidate->to_after, m, sizeof m);
  candidate->level = level;
  if (level == 1)
    candidate->middle = candidate->track;
  candidate->score = candidate->track.share
                     * fmin (1.0, candidate->track.tried / (0.6 * places->len + 1));
  return TRUE;
}

void
wm_candidate_look_back (WmCandidate *candidate, const WmSide *before, const WmSide *after)
{
  WmCandidate back = *candidate;

  candidate->back = (WmTrack) { .doubt_px = INFINITY };
  if (wm_align_invert (candidate->to_after, back.to_after)
      && wm_candidate_follow (&back, after, before, 1, 3))
    candidate->back = back.track;
}

double
wm_candidate_share_now (const WmCandidate *candidate, const WmSide *before,
                        const WmSide *after)
{
  const GArray *places = before->places[1];
  g_autofree WmSighting *sightings = g_new (WmSighting, (gsize)places->len + 1);
  WmTrack track;

  wm_track_places (before->planes->grey[1], before->piece, after->planes->grey, 1,
                   candidate->to_after, places, 3, sightings);
  wm_track_judge (sightings, (int)places->len, 1, &track);
  return track.share;
}

/* Level 0 pixels: full size may move the rim of the piece no further, or it has
 * slipped to something else. */
#define MOST_POLISH 6.0

void
wm_candidate_polish (WmCandidate *candidate, const WmSide *before, const WmSide *after)
{
  WmCandidate fine = *candidate;

  if (wm_candidate_follow (&fine, before, after, 0, 4)
      && fine.track.doubt_px < 1.5 * candidate->track.doubt_px
      && wm_matrix_difference (fine.to_after, candidate->to_after, before->piece)
             < MOST_POLISH)
    *candidate = fine;
}

static int
compare_candidates (gconstpointer a, gconstpointer b)
{
  const WmCandidate *p = a;
  const WmCandidate *q = b;

  return p->score > q->score ? -1 : p->score < q->score ? 1 : 0;
}

/* Candidates that came to the same place are one. @all is sorted. */
static void
drop_copies (GArray *all, const WmPieceMask *piece, double apart)
{
  for (guint k = 1; k < all->len;)
    {
      gboolean copy = FALSE;

      for (guint j = 0; j < k && !copy; j++)
        copy = wm_matrix_difference (g_array_index (all, WmCandidate, j).to_after,
                                     g_array_index (all, WmCandidate, k).to_after, piece)
               < apart;
      if (copy)
        g_array_remove_index (all, k);
      else
        k++;
    }
}

static void
follow_all (GArray *all, const WmSide *before, const WmSide *after, int level, int reach)
{
  for (guint k = 0; k < all->len;)
    if (wm_candidate_follow (&g_array_index (all, WmCandidate, k), before, after, level,
                             reach))
      k++;
    else
      g_array_remove_index (all, k);
  g_array_sort (all, compare_candidates);
}

#define MOST_OUTLINES 8

GArray *
wm_candidates_new (const WmSide *before, const WmSide *after)
{
  GArray *all = g_array_new (FALSE, TRUE, sizeof (WmCandidate));
  g_autoptr (GArray) models = g_array_new (FALSE, FALSE, sizeof (WmModel));
  g_autoptr (GArray) matches = wm_features_match (before->features, after->features);
  const WmPlane *whole = before->planes->grey[0];

  wm_models_from_matches (before->features, after->features, matches, whole->width,
                          whole->height, models);
  wm_models_from_outlines (before->planes, before->piece, after->planes, after->piece,
                           MOST_OUTLINES, models);
  for (guint k = 0; k < models->len; k++)
    {
      const WmModel *model = &g_array_index (models, WmModel, k);
      WmCandidate candidate = { .support = model->support };

      memcpy (candidate.to_after, model->to_after, sizeof candidate.to_after);
      g_array_append_val (all, candidate);
    }
  follow_all (all, before, after, 2, 6);
  drop_copies (all, before->piece, 12);
  if (all->len > 4)
    g_array_set_size (all, 4);
  follow_all (all, before, after, 1, 5);
  drop_copies (all, before->piece, 6);
  for (guint k = 0; k < all->len; k++)
    wm_candidate_look_back (&g_array_index (all, WmCandidate, k), before, after);
  return all;
}
