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
#define MOST_FEATURES 700

/* Places chosen on each level, finest first. */
static const int most_places[WM_TRACK_LEVELS] = { 260, 220, 120 };

/* Of these, looked for on the coarsest level, where many candidates are tried. */
#define COARSE_PLACES 64

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
    {
      side->places[level] =
          wm_places_choose (planes->grey[level], side->piece, level, most_places[level]);
      side->squares[level] =
          wm_squares_new (planes->grey[level], side->piece, level, side->places[level]);
    }
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
    {
      g_array_unref (side->places[level]);
      wm_squares_free (side->squares[level]);
    }
  g_free (side);
}

gboolean
wm_candidate_follow (WmCandidate *candidate, const WmSide *before, const WmSide *after,
                     int level, int reach)
{
  const GArray *places = before->places[level];
  int n = level == WM_TRACK_LEVELS - 1 ? MIN ((int)places->len, COARSE_PLACES)
                                       : (int)places->len;
  g_autofree WmSighting *sightings = g_new (WmSighting, (gsize)n + 1);
  const WmPieceMask *piece = before->piece;
  double m[9];

  memcpy (m, candidate->to_after, sizeof m);
  for (int round = 0; round < 2; round++)
    {
      wm_track_places (before->squares[level], after->planes->grey, level, m, places, n,
                       round == 0 ? reach : MIN (reach, 2), sightings);
      if (!wm_track_fit (sightings, n, level, piece->centre, piece->radius, m,
                         &candidate->track))
        return FALSE;
    }
  if (!wm_matrix_is_plausible (m, before->planes->grey[0]->width,
                               before->planes->grey[0]->height, piece->centre))
    return FALSE;
  memcpy (candidate->to_after, m, sizeof m);
  candidate->level = level;
  if (level == 1)
    candidate->middle = candidate->track;
  candidate->score =
      candidate->track.share * fmin (1.0, candidate->track.tried / (0.6 * n + 1));
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

  wm_track_places (before->squares[1], after->planes->grey, 1, candidate->to_after,
                   places, (int)places->len, 3, sightings);
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

  if (wm_candidate_follow (&fine, before, after, 0, 3)
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

typedef struct
{
  GArray *all;
  const WmSide *before;
  const WmSide *after;
  int level;
  int reach; /* 0: look back instead */
  guint first;
} FollowTask;

/* Runs in its own thread: half of the candidates, each touched by one thread. */
static gpointer
follow_every_second (gpointer data)
{
  const FollowTask *task = data;

  for (guint k = task->first; k < task->all->len; k += 2)
    {
      WmCandidate *c = &g_array_index (task->all, WmCandidate, k);

      if (task->reach > 0)
        c->is_lost =
            !wm_candidate_follow (c, task->before, task->after, task->level, task->reach);
      else
        wm_candidate_look_back (c, task->before, task->after);
    }
  return NULL;
}

static void
follow_all (GArray *all, const WmSide *before, const WmSide *after, int level, int reach)
{
  FollowTask even = { all, before, after, level, reach, 0 };
  FollowTask odd = { all, before, after, level, reach, 1 };
  GThread *thread =
      all->len > 1 ? g_thread_new ("align", follow_every_second, &odd) : NULL;

  follow_every_second (&even);
  if (thread != NULL)
    g_thread_join (thread);
  for (guint k = 0; k < all->len;)
    if (g_array_index (all, WmCandidate, k).is_lost)
      g_array_remove_index (all, k);
    else
      k++;
  g_array_sort (all, compare_candidates);
}

/* Outlines give so many models; candidates kept for the middle level. */
#define MOST_OUTLINES 8
#define MOST_MIDDLE 5

typedef struct
{
  const WmSide *before;
  const WmSide *after;
  GArray *models;
} OutlineTask;

/* Runs in its own thread. */
static gpointer
find_outlines (gpointer data)
{
  const OutlineTask *task = data;

  wm_models_from_outlines (task->before->planes, task->before->piece, task->after->planes,
                           task->after->piece, MOST_OUTLINES, task->models);
  return NULL;
}

/* Returns: (element-type WmModel) */
static GArray *
find_models (const WmSide *before, const WmSide *after)
{
  GArray *models = g_array_new (FALSE, FALSE, sizeof (WmModel));
  g_autoptr (GArray) outlines = g_array_new (FALSE, FALSE, sizeof (WmModel));
  OutlineTask task = { before, after, outlines };
  GThread *thread = g_thread_new ("align", find_outlines, &task);
  g_autoptr (GArray) matches = wm_features_match (before->features, after->features);
  const WmPlane *whole = before->planes->grey[0];

  wm_models_from_matches (before->features, after->features, matches, whole->width,
                          whole->height, models);
  g_thread_join (thread);
  if (outlines->len > 0)
    g_array_append_vals (models, outlines->data, outlines->len);
  return models;
}

GArray *
wm_candidates_new (const WmSide *before, const WmSide *after)
{
  GArray *all = g_array_new (FALSE, TRUE, sizeof (WmCandidate));
  g_autoptr (GArray) models = find_models (before, after);

  for (guint k = 0; k < models->len; k++)
    {
      const WmModel *model = &g_array_index (models, WmModel, k);
      WmCandidate candidate = { .support = model->support };

      memcpy (candidate.to_after, model->to_after, sizeof candidate.to_after);
      g_array_append_val (all, candidate);
    }
  follow_all (all, before, after, 2, 6);
  drop_copies (all, before->piece, 12);
  if (all->len > MOST_MIDDLE)
    g_array_set_size (all, MOST_MIDDLE);
  follow_all (all, before, after, 1, 4);
  drop_copies (all, before->piece, 6);
  follow_all (all, before, after, 1, 0);
  return all;
}
