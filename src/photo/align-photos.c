/* align-photos.c: aligning photo files
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/align.h"

#include <math.h>
#include <string.h>

#include "photo/align-matrix.h"
#include "photo/load.h"

/**
 * Photo: one of the two, read at the working size
 * @sx, @sy: full-size pixels per pixel read
 */
typedef struct
{
  WmPixels *pixels;
  WmAlignImage image;
  double sx, sy;
} Photo;

static void
clear_photo (Photo *photo)
{
  g_clear_pointer (&photo->pixels, wm_pixels_unref);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Photo, clear_photo)

static gboolean
read_photo (const char *path, GCancellable *cancellable, Photo *photo, GError **error)
{
  g_autoptr (WmPhotoFacts) facts = wm_photo_probe_file (path, error);

  if (facts == NULL)
    return FALSE;
  photo->pixels =
      wm_photo_load_fit (path, WM_ALIGN_WORK_PX, WM_ALIGN_WORK_PX, cancellable, error);
  if (photo->pixels == NULL)
    return FALSE;
  photo->image = (WmAlignImage) { photo->pixels->data, photo->pixels->width,
                                  photo->pixels->height, photo->pixels->stride, 4 };
  photo->sx = (double)facts->width / photo->pixels->width;
  photo->sy = (double)facts->height / photo->pixels->height;
  return TRUE;
}

typedef struct
{
  const char *path;
  GCancellable *cancellable;
  Photo *photo;
  GError *error;
} ReadTask;

/* Runs in its own thread. */
static gpointer
read_in_thread (gpointer data)
{
  ReadTask *task = data;

  return GINT_TO_POINTER (
      read_photo (task->path, task->cancellable, task->photo, &task->error));
}

static gboolean
read_both (const char *before_path, const char *after_path, GCancellable *cancellable,
           Photo *before, Photo *after, GError **error)
{
  ReadTask task = { after_path, cancellable, after, NULL };
  GThread *thread = g_thread_new ("align-read", read_in_thread, &task);
  gboolean ok = read_photo (before_path, cancellable, before, error);

  if (!GPOINTER_TO_INT (g_thread_join (thread)))
    {
      if (ok)
        g_propagate_error (error, g_steal_pointer (&task.error));
      g_clear_error (&task.error);
      ok = FALSE;
    }
  return ok;
}

/* @m between the pixels read (after to before) made one between full photos,
 * or back with @back. */
static void
rescale (const Photo *before, const Photo *after, gboolean back, double m[9])
{
  double bx = back ? 1 / before->sx : before->sx;
  double by = back ? 1 / before->sy : before->sy;
  double ax = back ? 1 / after->sx : after->sx;
  double ay = back ? 1 / after->sy : after->sy;
  double left[9] = { bx, 0, 0, 0, by, 0, 0, 0, 1 };
  double right[9] = { 1 / ax, 0, 0, 0, 1 / ay, 0, 0, 0, 1 };

  wm_matrix_multiply (left, m, m);
  wm_matrix_multiply (m, right, m);
}

static void
finish (const Photo *before, const Photo *after, WmAlignment *answer)
{
  if (answer->aligned)
    rescale (before, after, FALSE, answer->matrix);
  answer->residual_px *= sqrt (before->sx * before->sy);
}

gboolean
wm_align_photos (const char *before_path, const char *after_path,
                 GCancellable *cancellable, WmAlignProgress progress, gpointer user_data,
                 WmAlignment *out, GError **error)
{
  g_auto (Photo) before = { 0 };
  g_auto (Photo) after = { 0 };
  WmAlignment answer;

  if (!read_both (before_path, after_path, cancellable, &before, &after, error)
      || !wm_align_images (&before.image, &after.image, cancellable, progress, user_data,
                           &answer, error))
    return FALSE;
  finish (&before, &after, &answer);
  *out = answer;
  return TRUE;
}

gboolean
wm_align_refine (const char *before_path, const char *after_path, const double start[9],
                 GCancellable *cancellable, WmAlignProgress progress, gpointer user_data,
                 WmAlignment *out, GError **error)
{
  g_auto (Photo) before = { 0 };
  g_auto (Photo) after = { 0 };
  WmAlignment answer;
  double small[9];

  if (!read_both (before_path, after_path, cancellable, &before, &after, error))
    return FALSE;
  for (int k = 0; k < 9; k++)
    small[k] = start[k];
  rescale (&before, &after, TRUE, small);
  if (!wm_align_refine_images (&before.image, &after.image, small, cancellable, progress,
                               user_data, &answer, error))
    return FALSE;
  if (!answer.aligned)
    for (int k = 0; k < 9; k++)
      answer.matrix[k] = start[k];
  finish (&before, &after, &answer);
  *out = answer;
  return TRUE;
}

/* TRUE when the two matrices carry one of the points too far apart. */
static gboolean
has_wandered (const double from[9], const double to[9], const WmPoint *after, int n,
              double most_px)
{
  for (int k = 0; k < n; k++)
    {
      WmPoint p = wm_align_map (from, after[k]);
      WmPoint q = wm_align_map (to, after[k]);

      if (!(hypot (p.x - q.x, p.y - q.y) <= most_px))
        return TRUE;
    }
  return FALSE;
}

gboolean
wm_align_by_hand (const char *before_path, const char *after_path, const WmPoint *before,
                  const WmPoint *after, int n, GCancellable *cancellable,
                  WmAlignProgress progress, gpointer user_data, WmAlignment *out,
                  double *hand_px, GError **error)
{
  g_autoptr (WmPhotoFacts) facts = wm_photo_probe_file (before_path, error);
  WmAlignment answer;
  double start[9];

  if (facts == NULL)
    return FALSE;
  if (wm_align_from_points (before, after, n, start, NULL) != WM_OK)
    {
      g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_INVALID_ARGUMENT,
                           "the points placed by hand determine no alignment");
      return FALSE;
    }
  if (!wm_align_refine (before_path, after_path, start, cancellable, progress, user_data,
                        &answer, error))
    return FALSE;
  if (answer.aligned
      && has_wandered (start, answer.matrix, after, n,
                       WM_ALIGN_MOST_SLIP * MAX (facts->width, facts->height)))
    {
      answer.aligned = FALSE;
      answer.reason = WM_ALIGN_WANDERED;
      answer.residual_px = 0;
      answer.places = answer.places_tried = 0;
      memcpy (answer.matrix, start, sizeof start);
    }
  *out = answer;
  if (hand_px != NULL)
    *hand_px = wm_align_measure_points (answer.matrix, before, after, n);
  return TRUE;
}
