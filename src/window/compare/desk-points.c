/* desk-points.c: points placed by hand
 *
 * Point n on one photo belongs to point n on the other. With three pairs the photos are
 * laid on each other at once; the engine may start from there; the jeweller keeps what
 * fits best.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#include "record/points.h"
#include "window/compare/desk-private.h"

void
wm_desk_set_loupe (WmCompareDesk *self, gboolean on)
{
  g_action_group_change_action_state (
      wm_canvas_get_actions (wm_compare_view_get_before (self->view)), "loupe",
      g_variant_new_boolean (on));
}

/* ---- what they make -----------------------------------------------------------------
 */

static void
reckon (WmCompareDesk *self)
{
  guint n = MIN (self->points[0]->len, self->points[1]->len);

  self->is_refined = FALSE;
  wm_desk_note (self, NULL);
  self->has_live = n >= WM_POINTS_LEAST
                   && wm_align_from_points ((const WmPoint *)self->points[0]->data,
                                            (const WmPoint *)self->points[1]->data, n,
                                            self->live, &self->live_fit_px)
                          == WM_OK;
}

static void
show_changed (WmCompareDesk *self)
{
  reckon (self);
  wm_desk_show (self);
  wm_desk_tell (self);
}

void
wm_desk_show_points (WmCompareDesk *self)
{
  WmCanvas *canvases[2] = { wm_compare_view_get_before (self->view),
                            wm_compare_view_get_after (self->view) };

  for (int side = 0; side < 2; side++)
    {
      g_autoptr (GPtrArray) values =
          g_ptr_array_new_with_free_func ((GDestroyNotify)wm_mark_value_free);

      for (guint i = 0; i < self->points[side]->len; i++)
        {
          WmMarkValue *value = wm_mark_value_new (
              WM_SHAPE_SPOT, &g_array_index (self->points[side], WmPoint, i), 1);

          value->id = self->point_ids[side][i];
          value->number = i + 1;
          value->severity = WM_SEVERITY_NOT_LOOKED_AT;
          value->name = g_strdup_printf (side == 0 ? _ ("Point %u on the before photo")
                                                   : _ ("Point %u on the after photo"),
                                         i + 1);
          g_ptr_array_add (values, value);
        }
      wm_canvas_set_marks (canvases[side], values);
    }
}

/* ---- placing
 * ---------------------------------------------------------------------------- */

static int
find_point (WmCompareDesk *self, int side, const WmId *id)
{
  for (guint i = 0; i < self->points[side]->len; i++)
    if (wm_id_equal (&self->point_ids[side][i], id))
      return i;
  return -1;
}

void
wm_desk_point_added (WmCompareDesk *self, int side, const WmMarkValue *value)
{
  WmCanvas *canvas = side == 0 ? wm_compare_view_get_before (self->view)
                               : wm_compare_view_get_after (self->view);
  WmPoint point = wm_mark_value_point (value, 0);
  guint n = self->points[side]->len;

  if (n >= WM_POINTS_MOST)
    {
      wm_session_toast (self->session, _ ("Four pairs are the most. Drag one of them."));
      return;
    }
  self->point_ids[side][n] = wm_id_new ();
  g_array_append_val (self->points[side], point);
  show_changed (self);
  wm_canvas_set_selected (canvas, &self->point_ids[side][n]);
}

/* The picture beside the points follows the hand. */
void
wm_desk_point_moving (WmCompareDesk *self, int side, const WmMarkValue *value)
{
  int i = find_point (self, side, &value->id);

  if (i < 0)
    return;
  g_array_index (self->points[side], WmPoint, i) = wm_mark_value_point (value, 0);
  reckon (self);
  wm_desk_tell (self);
}

void
wm_desk_point_edited (WmCompareDesk *self, int side, const WmMarkValue *value)
{
  int i = find_point (self, side, &value->id);

  if (i < 0)
    return;
  g_array_index (self->points[side], WmPoint, i) = wm_mark_value_point (value, 0);
  show_changed (self);
}

/* Its partner goes too: the numbers after it would name other places. */
void
wm_desk_point_removed (WmCompareDesk *self, int side, const WmId *id)
{
  int i = find_point (self, side, id);

  if (i < 0)
    return;
  for (side = 0; side < 2; side++)
    if (i < (int)self->points[side]->len)
      {
        g_array_remove_index (self->points[side], i);
        memmove (&self->point_ids[side][i], &self->point_ids[side][i + 1],
                 (WM_POINTS_MOST - 1 - i) * sizeof (WmId));
      }
  show_changed (self);
}

static void
take_kept_points (WmCompareDesk *self, WmPairing *pairing)
{
  g_autoptr (GArray) points = pairing != NULL && pairing->points != NULL
                                  ? wm_points_parse (pairing->points)
                                  : NULL;

  for (guint i = 0; points != NULL && i + 1 < points->len && i < 2 * WM_POINTS_MOST; i++)
    {
      self->point_ids[i % 2][i / 2] = wm_id_new ();
      g_array_append_val (self->points[i % 2], g_array_index (points, WmPoint, i));
    }
}

void
wm_desk_begin_points (WmCompareDesk *self)
{
  const WmPair *pair = wm_desk_get_pair (self);

  if (pair == NULL || self->by_hand)
    return;
  self->by_hand = TRUE;
  self->wants_points = TRUE;
  g_array_set_size (self->points[0], 0);
  g_array_set_size (self->points[1], 0);
  take_kept_points (self, pair->pairing);
  wm_desk_set_loupe (self, TRUE);
  show_changed (self);
  gtk_widget_grab_focus (GTK_WIDGET (wm_compare_view_get_before (self->view)));
}

void
wm_desk_end_points (WmCompareDesk *self)
{
  self->by_hand = self->has_live = self->is_refining = self->is_refined = FALSE;
  g_clear_object (&self->live_layers[0]);
  g_clear_object (&self->live_layers[1]);
  wm_desk_note (self, NULL);
  wm_desk_set_loupe (self, FALSE);
}

/* ---- refining
 * ---------------------------------------------------------------------------- */

static void
take_answer (WmCompareDesk *self, const WmAlignment *answer)
{
  if (!answer->aligned)
    {
      wm_desk_note (self, _ (wm_align_reason_text (answer->reason)));
      return;
    }
  memcpy (self->live, answer->matrix, sizeof self->live);
  self->live_fit_px = answer->residual_px;
  self->is_refined = TRUE;
  self->wants_points = FALSE;
  wm_desk_set_loupe (self, FALSE);
  wm_desk_note (self, _ ("The program found a better fit near your points. Look at the "
                         "seam; moving a point takes it back."));
}

static void
on_refined (const WmAlignment *answer, const GError *error, gpointer user_data)
{
  WmCompareDesk *self = user_data;

  self->is_refining = FALSE;
  if (!self->by_hand || self->data == NULL)
    return;
  if (error == NULL)
    take_answer (self, answer);
  else if (!g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    wm_session_toast_error (self->session, error);
  wm_desk_show (self);
  wm_desk_tell (self);
}

void
wm_desk_refine (WmCompareDesk *self)
{
  const WmPair *pair = wm_desk_get_pair (self);

  if (pair == NULL || !self->has_live)
    return;
  self->is_refining = TRUE;
  wm_pairer_refine (self->pairer, pair->before, pair->after, self->live, on_refined,
                    G_OBJECT (self));
  wm_desk_tell (self);
}

/* ---- keeping
 * ----------------------------------------------------------------------------- */

static char *
format_points (WmCompareDesk *self)
{
  guint n = MIN (self->points[0]->len, self->points[1]->len);
  WmPoint all[2 * WM_POINTS_MOST];

  for (guint i = 0; i < n; i++)
    {
      all[2 * i] = g_array_index (self->points[0], WmPoint, i);
      all[2 * i + 1] = g_array_index (self->points[1], WmPoint, i);
    }
  return wm_points_format (all, 2 * n);
}

/* The jeweller's word is final: no engine touches this pairing again. */
void
wm_desk_keep_points (WmCompareDesk *self)
{
  const WmPair *pair = wm_desk_get_pair (self);
  g_autoptr (WmPairing) pairing = NULL;
  g_autofree char *points = NULL;
  WmEdit *edit;

  if (pair == NULL || !self->has_live)
    return;
  pairing = pair->pairing != NULL ? wm_session_copy (self->session, pair->pairing)
                                  : wm_pairing_new ();
  points = format_points (self);
  pairing->before_photo_id = *wm_record_get_id (WM_RECORD (pair->before));
  pairing->after_photo_id = *wm_record_get_id (WM_RECORD (pair->after));
  wm_pairing_set_matrix (pairing, self->live);
  pairing->residual_px = self->live_fit_px;
  pairing->overlap = NAN;
  pairing->engine = self->is_refined ? WM_ALIGN_ENGINE_VERSION : 0;
  wm_record_set_text (WM_RECORD (pairing), "made_by",
                      self->is_refined ? WM_PAIRING_REFINED : WM_PAIRING_BY_HAND);
  wm_record_set_text (WM_RECORD (pairing), "points", points);
  wm_record_set_text (WM_RECORD (pairing), "reason", NULL);
  edit = wm_session_begin (self->session, N_ ("Align the photos by hand"));
  wm_session_put (self->session, edit, pairing);
  wm_pairer_put_carried (self->session, edit, pair, self->live);
  wm_desk_end_points (self);
  wm_session_commit (self->session, edit);
  wm_desk_show (self);
  wm_desk_tell (self);
}
