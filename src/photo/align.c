/* align.c: bringing two photos of the same piece into register
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/align.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n.h>

#include "photo/align-decide.h"

/* Places are compared over so many points of the before photo, each way. */
#define OVERLAP_GRID 40

static const struct
{
  const char *name;
  const char *text;
} reasons[] = {
  [WM_ALIGN_FOUND] = { "found", N_ ("The two photos are in register.") },
  [WM_ALIGN_TOO_PLAIN] = { "too-plain", N_ ("These two can't be aligned: there is too "
                                            "little on the piece to hold"
                                            " on to. Take the photo nearer, or place "
                                            "three or four pairs of points.") },
  [WM_ALIGN_NO_MATCH] = { "no-match", N_ ("These two can't be aligned: nothing on one "
                                          "photo was found again on the"
                                          " other. Check that both show the same piece "
                                          "from the same side.") },
  [WM_ALIGN_UNSURE] = { "unsure", N_ ("These two can't be aligned with certainty: too "
                                      "little of the piece agrees."
                                      " Take the photo again from straight above, or "
                                      "place three or four pairs of"
                                      " points.") },
  [WM_ALIGN_AMBIGUOUS] = { "ambiguous",
                           N_ ("These two can't be aligned: the piece looks alike in "
                               "more than one"
                               " position. Place three or four pairs of points.") },
  [WM_ALIGN_START_KEPT] = { "start-kept", N_ ("Your points are kept: no better fit was "
                                              "found near them.") },
  [WM_ALIGN_WANDERED] = { "wandered",
                          N_ ("Your points are kept: what fits better lies too far "
                              "from them. Look whether each pair shows the same "
                              "place.") },
};

const char *
wm_align_reason_name (WmAlignReason reason)
{
  g_return_val_if_fail ((gsize)reason < G_N_ELEMENTS (reasons), "unsure");
  return reasons[reason].name;
}

const char *
wm_align_reason_text (WmAlignReason reason)
{
  g_return_val_if_fail ((gsize)reason < G_N_ELEMENTS (reasons), "");
  return reasons[reason].text;
}

typedef struct
{
  GCancellable *cancellable;
  WmAlignProgress progress;
  gpointer user_data;
} Watch;

/* Says how far the work is; FALSE with @error when it was cancelled. */
static gboolean
step (const Watch *watch, double done, GError **error)
{
  if (watch->progress != NULL)
    watch->progress (done, watch->user_data);
  return !g_cancellable_set_error_if_cancelled (watch->cancellable, error);
}

typedef struct
{
  const WmAlignImage *image;
  gboolean with_features;
} SideTask;

/* Runs in its own thread. */
static gpointer
make_side (gpointer data)
{
  const SideTask *task = data;

  return wm_side_new (task->image, task->with_features);
}

/* Shorter side at the working size below which nothing could be looked for: the
 * squares compared are 16 pixels at a quarter of it. */
#define LEAST_SIDE_PX 100

static gboolean
is_too_small (const WmAlignImage *image)
{
  return MIN (image->width, image->height)
         < LEAST_SIDE_PX * wm_photo_planes_reduction (image);
}

static gboolean
has_pixels (const WmAlignImage *image)
{
  return image->pixels != NULL && image->width > 0 && image->height > 0
         && (image->bands == 1 || image->bands == 3 || image->bands == 4);
}

/* FALSE with @error when there is nothing to work on. */
static gboolean
check_images (const WmAlignImage *before, const WmAlignImage *after, GError **error)
{
  if (has_pixels (before) && has_pixels (after))
    return TRUE;
  g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_INVALID_ARGUMENT,
                       "a photo to align has no pixels");
  return FALSE;
}

/* Both photos at once, on two cores. */
static void
make_sides (const WmAlignImage *before, const WmAlignImage *after, gboolean with_features,
            WmSide **before_side, WmSide **after_side)
{
  SideTask other = { after, with_features };
  GThread *thread = g_thread_new ("align", make_side, &other);

  *before_side = wm_side_new (before, with_features);
  *after_side = g_thread_join (thread);
}

static double
measure_overlap (const double to_after[9], const WmAlignImage *before,
                 const WmAlignImage *after)
{
  int inside = 0;

  for (int j = 0; j < OVERLAP_GRID; j++)
    for (int i = 0; i < OVERLAP_GRID; i++)
      {
        WmPoint p = { (i + 0.5) * before->width / OVERLAP_GRID,
                      (j + 0.5) * before->height / OVERLAP_GRID };

        p = wm_align_map (to_after, p);
        inside += p.x >= 0 && p.y >= 0 && p.x <= after->width && p.y <= after->height;
      }
  return (double)inside / (OVERLAP_GRID * OVERLAP_GRID);
}

static void
fill_answer (const WmCandidate *c, const WmSide *before_side, const WmSide *after_side,
             const WmAlignImage *before, const WmAlignImage *after, WmAlignment *out)
{
  double to_after[9];

  wm_matrix_rescale (c->to_after, before_side->planes->factor, after_side->planes->factor,
                     to_after);
  if (!wm_align_invert (to_after, out->matrix))
    return;
  out->aligned = TRUE;
  out->residual_px = c->track.residual_px * before_side->planes->factor;
  out->overlap = measure_overlap (to_after, before, after);
  out->places = c->middle.agreed;
  out->places_tried = c->middle.tried;
}

gboolean
wm_align_images (const WmAlignImage *before, const WmAlignImage *after,
                 GCancellable *cancellable, WmAlignProgress progress, gpointer user_data,
                 WmAlignment *out, GError **error)
{
  Watch watch = { cancellable, progress, user_data };
  g_autoptr (WmSide) before_side = NULL;
  g_autoptr (WmSide) after_side = NULL;
  g_autoptr (GArray) candidates = NULL;
  WmAlignment answer = { .reason = WM_ALIGN_NO_MATCH };

  wm_matrix_identity (answer.matrix);
  if (!check_images (before, after, error) || !step (&watch, 0, error))
    return FALSE;
  if (is_too_small (before) || is_too_small (after))
    {
      answer.reason = WM_ALIGN_TOO_PLAIN;
      *out = answer;
      return TRUE;
    }
  make_sides (before, after, TRUE, &before_side, &after_side);
  if (!step (&watch, 0.6, error))
    return FALSE;

  candidates = wm_candidates_new (before_side, after_side);
  if (!step (&watch, 0.9, error))
    return FALSE;
  answer.reason = wm_align_decide (candidates, before_side, after_side);
  if (answer.reason == WM_ALIGN_FOUND)
    {
      WmCandidate *best = &g_array_index (candidates, WmCandidate, 0);

      wm_candidate_polish (best, before_side, after_side);
      answer.reason = wm_align_decide_finished (best, before_side, after_side);
      if (answer.reason == WM_ALIGN_FOUND)
        fill_answer (best, before_side, after_side, before, after, &answer);
    }
  if (!step (&watch, 1, error))
    return FALSE;
  *out = answer;
  return TRUE;
}

/* Follows the start from coarse to fine; FALSE when it falls apart at once. */
static gboolean
follow_start (WmCandidate *c, const WmSide *before, const WmSide *after)
{
  if (!wm_candidate_follow (c, before, after, 2, WM_TRACK_REACH)
      || !wm_candidate_follow (c, before, after, 1, 5))
    return FALSE;
  wm_candidate_look_back (c, before, after);
  return TRUE;
}

gboolean
wm_align_refine_images (const WmAlignImage *before, const WmAlignImage *after,
                        const double start[9], GCancellable *cancellable,
                        WmAlignProgress progress, gpointer user_data, WmAlignment *out,
                        GError **error)
{
  Watch watch = { cancellable, progress, user_data };
  g_autoptr (WmSide) before_side = NULL;
  g_autoptr (WmSide) after_side = NULL;
  WmAlignment answer = { .reason = WM_ALIGN_START_KEPT };
  WmCandidate c = { 0 };
  double to_after[9];
  double at_start;

  memcpy (answer.matrix, start, sizeof answer.matrix);
  if (!wm_align_invert (start, to_after))
    {
      g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_INVALID_ARGUMENT,
                           "the start of an alignment can not be inverted");
      return FALSE;
    }
  if (!check_images (before, after, error) || !step (&watch, 0, error))
    return FALSE;
  answer.overlap = measure_overlap (to_after, before, after);
  if (is_too_small (before) || is_too_small (after))
    {
      answer.reason = WM_ALIGN_TOO_PLAIN;
      *out = answer;
      return TRUE;
    }
  make_sides (before, after, FALSE, &before_side, &after_side);
  if (!step (&watch, 0.5, error))
    return FALSE;

  wm_matrix_rescale (to_after, 1 / before_side->planes->factor,
                     1 / after_side->planes->factor, c.to_after);
  at_start = wm_candidate_share_now (&c, before_side, after_side);
  if (!follow_start (&c, before_side, after_side))
    answer.reason = WM_ALIGN_UNSURE;
  else if (c.middle.share > at_start)
    answer.reason = wm_align_decide_start (&c, before_side, after_side);
  if (answer.reason == WM_ALIGN_FOUND)
    {
      wm_candidate_polish (&c, before_side, after_side);
      fill_answer (&c, before_side, after_side, before, after, &answer);
    }
  if (!step (&watch, 1, error))
    return FALSE;
  *out = answer;
  return TRUE;
}
