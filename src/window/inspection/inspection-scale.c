/* inspection-scale.c: the scale of the shown photo: placed, kept, taken away
 *
 * The points are no mark: they lie on the photo only while the scale is looked at, and
 * are kept with the photo. Readings taken on the photo follow its scale in the same edit.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>
#include <math.h>

#include "photo/sheet-find.h"
#include "record/points.h"
#include "report/photo-scale.h"
#include "window/inspection/inspection-private.h"
#include "window/measuring/scale-basis.h"

/* Of the shop: how far its camera stands from the piece, mm. */
#define CAMERA_SETTING "camera-mm"

double
wm_inspection_get_camera (WmInspectionPage *self)
{
  g_autofree char *text = self->session != NULL ? wm_archive_get_setting (
                              wm_session_get_archive (self->session), CAMERA_SETTING)
                                                : NULL;
  double mm = text != NULL ? g_ascii_strtod (text, NULL) : NAN;

  return isfinite (mm) && mm > 0 ? mm : WM_CAMERA_MM;
}

static void
keep_camera (WmInspectionPage *self, double camera_mm)
{
  g_autoptr (GError) error = NULL;
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  WmEdit *edit;

  if (camera_mm == wm_inspection_get_camera (self))
    return;
  edit = wm_session_begin_shop (self->session, N_ ("Distance of the camera"));
  g_ascii_formatd (text, sizeof text, "%.6g", camera_mm);
  if (!wm_archive_put_setting (wm_session_get_archive (self->session), edit,
                               CAMERA_SETTING, text, &error))
    wm_session_toast_error (self->session, error);
  wm_session_commit (self->session, edit);
}

/* ---- the points ------------------------------------------------------------------- */

/* As the record of the photo has them, for this way of taking it. */
static void
take_points_of_photo (WmInspectionPage *self, WmPhoto *photo)
{
  g_autoptr (GArray) corners =
      photo->scale_plane != NULL ? wm_points_parse (photo->scale_plane) : NULL;

  self->has_scale_points = FALSE;
  if (self->scale_is_rectangle && corners != NULL && corners->len == 4)
    {
      for (guint i = 0; i < 4; i++)
        self->scale_points[i] = g_array_index (corners, WmPoint, i);
      self->has_scale_points = TRUE;
    }
  else if (!self->scale_is_rectangle && photo->scale_mm > 0)
    {
      self->scale_points[0] = (WmPoint) { photo->scale_x1, photo->scale_y1 };
      self->scale_points[1] = (WmPoint) { photo->scale_x2, photo->scale_y2 };
      self->has_scale_points = TRUE;
    }
}

WmMarkValue *
wm_inspection_make_scale_value (WmInspectionPage *self)
{
  WmMarkValue *value;

  if (self->beside != WM_BESIDE_SCALE || !self->has_scale_points)
    return NULL;
  value = wm_mark_value_new (self->scale_is_rectangle ? WM_SHAPE_OUTLINE : WM_SHAPE_SPAN,
                             self->scale_points, self->scale_is_rectangle ? 4 : 2);
  /* No mark has the key of a photo. */
  value->id = self->photo_id;
  value->is_bare = value->is_measuring = TRUE;
  value->name = g_strdup (_ ("Scale of the photo"));
  return value;
}

static void
show_points (WmInspectionPage *self)
{
  wm_scale_pane_place (self->scale_pane,
                       self->has_scale_points ? self->scale_points : NULL,
                       self->scale_is_rectangle, wm_canvas_get_pixel_zoom (self->canvas));
  wm_inspection_hint (self, self->has_scale_points ? NULL
                            : self->scale_is_rectangle
                                ? _ ("Click the four corners of the rectangle, "
                                     "one after the other round it.")
                                : _ ("Click two points a known distance apart, "
                                     "as far apart as they go."));
  wm_inspection_show_marks (self);
}

void
wm_inspection_open_scale (WmInspectionPage *self, gboolean is_rectangle)
{
  WmPhoto *photo = wm_inspection_get_photo (self);
  gboolean is_new =
      self->beside != WM_BESIDE_SCALE || self->scale_is_rectangle != is_rectangle;

  if (photo == NULL)
    return;
  self->scale_is_rectangle = is_rectangle;
  wm_inspection_set_beside (self, WM_BESIDE_SCALE);
  if (is_new)
    {
      wm_scale_pane_open (self->scale_pane, photo, wm_inspection_get_camera (self));
      take_points_of_photo (self, photo);
    }
  show_points (self);
}

void
wm_inspection_scale_reloaded (WmInspectionPage *self)
{
  WmPhoto *photo = wm_inspection_get_photo (self);

  if (self->beside != WM_BESIDE_SCALE)
    return;
  if (photo == NULL || !wm_id_equal (&self->canvas_photo_id, &self->scale_photo_id))
    {
      self->scale_photo_id = self->canvas_photo_id;
      if (photo == NULL)
        {
          wm_inspection_leave_measuring (self);
          return;
        }
      wm_scale_pane_open (self->scale_pane, photo, wm_inspection_get_camera (self));
      take_points_of_photo (self, photo);
    }
  show_points (self);
}

/* ---- edits ------------------------------------------------------------------------- */

static void
keep_photo (WmInspectionPage *self, const char *label, WmPhoto *photo)
{
  WmEdit *edit = wm_session_begin (self->session, label);

  wm_session_put (self->session, edit, photo);
  wm_inspection_replace (self->photos, photo);
  wm_inspection_remeasure_photo (self, edit, photo);
  wm_inspection_commit (self, edit);
  wm_inspection_show (self);
}

void
wm_inspection_scale_placed (WmInspectionPage *self, const WmMarkValue *value)
{
  WmPhoto *shown = wm_inspection_get_photo (self);
  gboolean was_kept = FALSE;

  for (guint i = 0; i < value->points->len && i < G_N_ELEMENTS (self->scale_points); i++)
    self->scale_points[i] = wm_mark_value_point (value, i);
  was_kept =
      self->has_scale_points && shown != NULL
      && (self->scale_is_rectangle ? shown->scale_plane != NULL : shown->scale_mm > 0);
  self->has_scale_points = TRUE;
  self->scale_photo_id = self->photo_id;
  show_points (self);
  wm_canvas_set_selected (self->canvas, &self->photo_id);
  if (was_kept)
    {
      g_autoptr (WmPhoto) photo = wm_session_copy (self->session, shown);

      /* What was written beside it stays: only the points moved. */
      if (wm_scale_pane_fill (self->scale_pane, photo))
        keep_photo (self, N_ ("Move the scale"), photo);
    }
  else
    wm_scale_pane_ask (self->scale_pane);
}

void
wm_inspection_scale_removed (WmInspectionPage *self)
{
  WmPhoto *shown = wm_inspection_get_photo (self);
  g_autoptr (WmPhoto) photo = NULL;

  self->has_scale_points = FALSE;
  if (shown == NULL)
    return;
  photo = wm_session_copy (self->session, shown);
  g_object_set (photo, "scale-x1", NAN, "scale-y1", NAN, "scale-x2", NAN, "scale-y2", NAN,
                "scale-mm", NAN, "scale-kind", NULL, "scale-plane", NULL,
                "scale-width-mm", NAN, "scale-height-mm", NAN, "scale-u-mm", NAN,
                "scale-depth-mm", NAN, "scale-basis", NULL, NULL);
  if (!wm_record_equal (WM_RECORD (photo), WM_RECORD (shown)))
    keep_photo (self, N_ ("Remove the scale"), photo);
  wm_scale_pane_open (self->scale_pane, photo, wm_inspection_get_camera (self));
  show_points (self);
}

/* ---- our printed sheet --------------------------------------------------------------
 */

/* Of a length on it, mm: a paper measured with a rule, as scale-basis.c has the rule. */
#define SHEET_U_MM 0.06

typedef struct
{
  WmInspectionPage *page;
  WmId photo_id;
} SheetSearch;

/* In a worker thread; sees no widget. */
static void
find_sheet (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  g_autofree WmSheetPlace *place = g_new0 (WmSheetPlace, 1);
  GError *error = NULL;

  if (wm_sheet_find (task_data, WM_SHEET_CHECK_MM, place, cancellable, &error))
    g_task_return_pointer (task, g_steal_pointer (&place), g_free);
  else
    g_task_return_error (task, error);
}

static void
take_sheet (WmInspectionPage *self, WmPhoto *shown, const WmSheetPlace *place)
{
  g_autoptr (WmPhoto) photo = wm_session_copy (self->session, shown);
  g_autofree char *plane = wm_points_format (place->corners, 4);
  guint depth = wm_scale_depth_find (photo->scale_depth_mm);

  g_object_set (photo, "scale-kind", "sheet", "scale-plane", plane, "scale-width-mm",
                place->width_mm, "scale-height-mm", place->height_mm, "scale-u-mm",
                SHEET_U_MM, "scale-depth-mm", wm_scale_depth_u (depth), "scale-basis",
                N_ ("our scale sheet"), "scale-mm", NAN, "scale-x1", NAN, "scale-y1", NAN,
                "scale-x2", NAN, "scale-y2", NAN, NULL);
  keep_photo (self, N_ ("Set the scale"), photo);
  g_action_group_change_action_state (wm_canvas_get_actions (self->canvas), "tool",
                                      g_variant_new_string ("span"));
}

static void
on_sheet_found (GObject *source, GAsyncResult *result, gpointer user_data)
{
  SheetSearch *search = user_data;
  g_autoptr (WmInspectionPage) self = search->page;
  g_autoptr (GError) error = NULL;
  g_autofree WmSheetPlace *place = g_task_propagate_pointer (G_TASK (result), &error);
  WmPhoto *photo = wm_inspection_get_photo (self);
  gboolean is_late =
      photo == NULL || self->session == NULL
      || !wm_id_equal (wm_record_get_id (WM_RECORD (photo)), &search->photo_id);

  g_free (search);
  if (is_late)
    return;
  if (place == NULL)
    wm_session_toast_error (self->session, error);
  else if (place->answer == WM_SHEET_FOUND)
    take_sheet (self, photo, place);
  else
    wm_session_toast (self->session, _ (wm_sheet_answer_text (place->answer)));
}

void
wm_inspection_find_sheet (WmInspectionPage *self)
{
  WmPhoto *photo = wm_inspection_get_photo (self);
  g_autoptr (GTask) task = NULL;
  SheetSearch *search;

  if (photo == NULL || wm_session_is_read_only (self->session))
    return;
  search = g_new0 (SheetSearch, 1);
  search->page = g_object_ref (self);
  search->photo_id = self->photo_id;
  task = g_task_new (NULL, NULL, on_sheet_found, search);
  g_task_set_task_data (
      task, wm_archive_photo_path (wm_session_get_archive (self->session), photo),
      g_free);
  g_task_run_in_thread (task, find_sheet);
}

void
wm_inspection_use_scale (WmInspectionPage *self)
{
  WmPhoto *shown = wm_inspection_get_photo (self);
  g_autoptr (WmPhoto) photo = NULL;

  if (self->beside != WM_BESIDE_SCALE || shown == NULL
      || wm_session_is_read_only (self->session))
    return;
  photo = wm_session_copy (self->session, shown);
  if (!self->has_scale_points || !wm_scale_pane_fill (self->scale_pane, photo))
    {
      wm_session_toast (self->session,
                        self->has_scale_points
                            ? _ ("Write how far the points are apart first.")
                            : _ ("Place the points on the photo first."));
      return;
    }
  keep_camera (self, wm_scale_pane_get_camera (self->scale_pane));
  keep_photo (self, N_ ("Set the scale"), photo);
  /* What it was wanted for: measuring. */
  g_action_group_change_action_state (wm_canvas_get_actions (self->canvas), "tool",
                                      g_variant_new_string ("span"));
  gtk_widget_grab_focus (GTK_WIDGET (self->canvas));
}
