/* close-up.c: the same place of the piece before and after, shown alike
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "report/close-up.h"

#include <math.h>
#include <string.h>

#include "record/points.h"
#include "report/pairs.h"

/* What a close-up shows without a known scale: so much of the photo's width; and with
 * one: so many true millimetres. Enough to know where on the piece it is (our choice). */
#define WM_CLOSE_SHARE 0.32
#define WM_CLOSE_TRUE_MM 12.0
/* At most this much of a photo in a close-up, and room round a mark's own form. */
#define WM_CLOSE_MOST_SHARE 0.8
#define WM_CLOSE_ROOM 2.2

typedef struct
{
  double width;
  double height;
} Box;

/* Middle and larger side of the mark's form. */
static gboolean
get_form (WmMark *mark, WmPoint *out_centre, double *out_size_px)
{
  g_autoptr (GArray) points = wm_points_parse (mark->points);
  double left = G_MAXDOUBLE;
  double top = G_MAXDOUBLE;
  double right = -G_MAXDOUBLE;
  double bottom = -G_MAXDOUBLE;

  if (points == NULL)
    return FALSE;
  for (guint i = 0; i < points->len; i++)
    {
      WmPoint point = g_array_index (points, WmPoint, i);

      left = MIN (left, point.x);
      right = MAX (right, point.x);
      top = MIN (top, point.y);
      bottom = MAX (bottom, point.y);
    }
  out_centre->x = (left + right) / 2;
  out_centre->y = (top + bottom) / 2;
  *out_size_px = MAX (right - left, bottom - top);
  return TRUE;
}

/* How many photo pixels the box is wide. */
static double
choose_width_px (WmPhoto *photo, double form_px)
{
  double px_per_mm = wm_photo_px_per_true_mm (photo);
  double width = isfinite (px_per_mm) ? WM_CLOSE_TRUE_MM * px_per_mm
                                      : WM_CLOSE_SHARE * (double)photo->width;

  width = MAX (width, form_px * WM_CLOSE_ROOM);
  return MIN (width, WM_CLOSE_MOST_SHARE * (double)photo->width);
}

/* The after photo that is in register with @before: @wanted, or any if that is NULL. */
static gboolean
find_partner (WmVisitData *data, WmPhoto *before, WmPhoto *wanted, WmPhoto **out_after,
              double matrix[9])
{
  for (guint i = data->photos->len; i-- > 0;)
    {
      WmPhoto *photo = g_ptr_array_index (data->photos, i);
      WmPairing *pairing;

      if ((wanted != NULL && photo != wanted)
          || g_strcmp0 (photo->moment, WM_PHOTO_AFTER) != 0)
        continue;
      pairing = wm_pairs_find (data->pairings, wm_record_get_id (WM_RECORD (before)),
                               wm_record_get_id (WM_RECORD (photo)));
      if (pairing == NULL || !wm_pairing_get_matrix (pairing, matrix))
        continue;
      *out_after = photo;
      return TRUE;
    }
  return FALSE;
}

static gboolean
look_at_before (WmCloseUps *self, WmPhoto *photo, WmMark *mark, Box box,
                double *out_width_px)
{
  double form_px;

  if (photo == NULL || !get_form (mark, &self->centre, &form_px))
    return FALSE;
  *out_width_px = choose_width_px (photo, form_px);
  wm_box_view_close_up (&self->before.view, photo, self->centre,
                        *out_width_px / box.width, box.width, box.height);
  self->before.mark = mark;
  self->before.is_there = TRUE;
  return TRUE;
}

/* Lays @after on what the before close-up shows. */
static gboolean
follow (WmCloseUps *self, WmPhoto *after, const double matrix[9], WmMark *mark, Box box)
{
  if (!wm_box_view_follow (&self->after.view, after, matrix, &self->before.view,
                           box.width, box.height))
    return FALSE;
  self->after.mark = mark;
  self->after.is_there = TRUE;
  self->in_register = TRUE;
  self->same_scale = TRUE;
  return TRUE;
}

/* A mark before whose photo is in register with that of a mark after: the last ones. */
static gboolean
find_marked_pair (WmCloseUps *self, WmVisitData *data, const WmFinding *finding, Box box)
{
  for (guint i = finding->before->len; i-- > 0;)
    for (guint k = finding->after->len; k-- > 0;)
      {
        WmMark *before = g_ptr_array_index (finding->before, i);
        WmMark *after = g_ptr_array_index (finding->after, k);
        WmPhoto *photo = wm_visit_data_find_photo (data, &before->photo_id);
        WmPhoto *wanted = wm_visit_data_find_photo (data, &after->photo_id);
        WmPhoto *partner;
        double matrix[9];
        double width_px;

        if (photo == NULL || wanted == NULL
            || !find_partner (data, photo, wanted, &partner, matrix))
          continue;
        if (look_at_before (self, photo, before, box, &width_px)
            && follow (self, partner, matrix, after, box))
          return TRUE;
      }
  return FALSE;
}

/* A mark before whose photo is in register with any: the place is the same, marked there
 * or not. The last one. */
static gboolean
find_paired_place (WmCloseUps *self, WmVisitData *data, const WmFinding *finding, Box box)
{
  for (guint i = finding->before->len; i-- > 0;)
    {
      WmMark *mark = g_ptr_array_index (finding->before, i);
      WmPhoto *photo = wm_visit_data_find_photo (data, &mark->photo_id);
      WmPhoto *partner;
      double matrix[9];
      double width_px;

      if (photo != NULL && find_partner (data, photo, NULL, &partner, matrix)
          && look_at_before (self, photo, mark, box, &width_px)
          && follow (self, partner, matrix, NULL, box))
        return TRUE;
    }
  return FALSE;
}

/* Out of register: about the after mark, at the same true scale where both are known. */
static void
look_at_after (WmCloseUps *self, WmPhoto *photo, WmMark *mark, double width_px, Box box)
{
  WmPhoto *before = self->before.is_there ? self->before.view.photo : NULL;
  double true_ratio = NAN;
  WmPoint centre;
  double form_px;

  if (!get_form (mark, &centre, &form_px))
    return;
  if (before != NULL)
    true_ratio = wm_photo_px_per_true_mm (photo) / wm_photo_px_per_true_mm (before);
  if (isfinite (true_ratio))
    width_px *= true_ratio;
  else if (before != NULL)
    width_px *= (double)photo->width / (double)before->width;
  else
    width_px = choose_width_px (photo, form_px);
  wm_box_view_close_up (&self->after.view, photo, centre, width_px / box.width, box.width,
                        box.height);
  self->after.mark = mark;
  self->after.is_there = TRUE;
  self->same_scale = isfinite (true_ratio);
}

void
wm_close_ups_find (WmVisitData *data, const WmFinding *finding, double width,
                   double height, WmCloseUps *out)
{
  Box box = { width, height };
  WmPhoto *photo = NULL;
  WmMark *mark = NULL;
  double width_px = 0;

  memset (out, 0, sizeof *out);
  if (find_marked_pair (out, data, finding, box))
    return;
  memset (out, 0, sizeof *out);
  if (find_paired_place (out, data, finding, box))
    return;
  memset (out, 0, sizeof *out);
  if (wm_visit_data_find_place (data, finding, WM_PHOTO_BEFORE, &photo, &mark))
    look_at_before (out, photo, mark, box, &width_px);
  if (wm_visit_data_find_place (data, finding, WM_PHOTO_AFTER, &photo, &mark))
    look_at_after (out, photo, mark, width_px, box);
}
