/* counter-photo.c: the photo of a finding, close, with its one mark
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/counter/counter-photo.h"

#include <math.h>

#include "record/points.h"
#include "window/compare/close-up-show.h"

/* Share of the photo's short side that is at least shown. */
#define LEAST_SHARE 0.36

/* Room round a large form: half its size again on each side. */
#define ROOM 2.0

/* The box of a matched close-up, in the shape of picture 06; its own units. */
#define BOX_WIDTH 630.0
#define BOX_HEIGHT 378.0

#define PX_PER_MM "wm-px-per-mm"

static void
on_view_changed (WmCanvas *canvas, WmScaleBar *bar)
{
  const double *px_per_mm = g_object_get_data (G_OBJECT (bar), PX_PER_MM);
  double px = px_per_mm != NULL ? *px_per_mm * wm_canvas_get_view (canvas)->zoom : NAN;

  wm_scale_bar_set_px_per_mm (bar, px);
  gtk_widget_set_visible (gtk_widget_get_parent (GTK_WIDGET (bar)), isfinite (px));
}

void
wm_counter_photo_init (WmCanvas *canvas, WmScaleBar *bar)
{
  g_signal_connect_object (canvas, "view-changed", G_CALLBACK (on_view_changed), bar, 0);
  on_view_changed (canvas, bar);
}

static void
set_scale (WmScaleBar *bar, double px_per_mm)
{
  g_object_set_data_full (G_OBJECT (bar), PX_PER_MM,
                          g_memdup2 (&px_per_mm, sizeof px_per_mm), g_free);
}

/* FALSE: the two photos are not in register. */
static gboolean
show_matched (WmCanvas *canvas, WmScaleBar *bar, WmVisitData *data,
              const char *cache_folder, const WmFinding *finding, gboolean after)
{
  WmCloseUps close;

  wm_close_ups_find (data, finding, BOX_WIDTH, BOX_HEIGHT, &close);
  if (!close.in_register)
    return FALSE;
  set_scale (bar, wm_close_ups_px_per_mm (&close));
  return wm_close_up_show (
      canvas, data, cache_folder, after ? &close.after : &close.before, BOX_WIDTH,
      BOX_HEIGHT, after ? finding->check->after_severity : finding->check->severity,
      (int)MAX (finding->check->number, 0));
}

void
wm_counter_photo_box (const WmPoint *points, guint n_points, double width, double height,
                      double box[4])
{
  double left = width, top = height, right = 0, bottom = 0, side;

  for (guint i = 0; i < n_points; i++)
    {
      left = MIN (left, points[i].x);
      right = MAX (right, points[i].x);
      top = MIN (top, points[i].y);
      bottom = MAX (bottom, points[i].y);
    }
  side = MAX (MAX (right - left, bottom - top) * ROOM, LEAST_SHARE * MIN (width, height));
  side = MIN (side, MIN (width, height));
  box[0] = CLAMP ((left + right - side) / 2, 0, width - side);
  box[1] = CLAMP ((top + bottom - side) / 2, 0, height - side);
  box[2] = box[3] = side;
}

static WmShape
parse_shape (const char *word)
{
  if (g_strcmp0 (word, WM_MARK_LINE) == 0)
    return WM_SHAPE_LINE;
  if (g_strcmp0 (word, WM_MARK_OUTLINE) == 0)
    return WM_SHAPE_OUTLINE;
  if (g_strcmp0 (word, WM_MARK_SPAN) == 0)
    return WM_SHAPE_SPAN;
  return WM_SHAPE_SPOT;
}

/* The finding's marks that are on @photo; the disc finds its own place here. */
static GPtrArray *
make_values (WmVisitData *data, const WmFinding *finding, WmPhoto *photo, gboolean after)
{
  GPtrArray *marks = after ? finding->after : finding->before;
  GPtrArray *values = g_ptr_array_new_with_free_func ((GDestroyNotify)wm_mark_value_free);

  for (guint i = 0; i < marks->len; i++)
    {
      WmMark *mark = g_ptr_array_index (marks, i);
      g_autoptr (GArray) points = wm_points_parse (mark->points);
      WmShape shape = parse_shape (mark->shape);
      WmMarkValue *value;

      if (!wm_id_equal (&mark->photo_id, wm_record_get_id (WM_RECORD (photo)))
          || points == NULL || points->len < wm_mark_value_least_points (shape))
        continue;
      value = wm_mark_value_new (shape, (const WmPoint *)points->data, points->len);
      value->id = *wm_record_get_id (WM_RECORD (mark));
      value->severity = after ? finding->check->after_severity : finding->check->severity;
      value->number = MAX (finding->check->number, 0);
      g_ptr_array_add (values, value);
    }
  return values;
}

static void
load (WmCanvas *canvas, WmVisitData *data, const char *cache_folder, WmPhoto *photo)
{
  g_autoptr (WmTileLayer) layer = NULL;

  if (photo != NULL)
    layer = wm_tile_layer_new (wm_visit_data_get_path (data, photo), photo->sha256,
                               cache_folder, NULL);
  wm_canvas_set_layer (canvas, layer, photo != NULL ? photo->quarter_turns : 0);
}

void
wm_counter_photo_show (WmCanvas *canvas, WmScaleBar *bar, WmVisitData *data,
                       const char *cache_folder, const WmFinding *finding,
                       const char *moment)
{
  gboolean after = g_strcmp0 (moment, WM_PHOTO_AFTER) == 0;
  WmPhoto *photo = NULL;
  WmMark *mark = NULL;
  g_autoptr (GPtrArray) values = NULL;
  g_autoptr (GArray) points = NULL;
  double box[4];

  if (finding != NULL && show_matched (canvas, bar, data, cache_folder, finding, after))
    return;
  set_scale (bar, NAN);
  if (finding == NULL || !wm_visit_data_find_place (data, finding, moment, &photo, &mark))
    {
      load (canvas, data, cache_folder, wm_visit_data_find_overview (data, moment));
      return;
    }
  load (canvas, data, cache_folder, photo);
  if (wm_canvas_get_layer (canvas) == NULL)
    return;
  set_scale (bar, wm_photo_px_per_true_mm (photo));
  values = make_values (data, finding, photo, after);
  wm_canvas_set_marks (canvas, values);
  points = wm_points_parse (mark->points);
  if (points == NULL)
    return;
  wm_counter_photo_box ((const WmPoint *)points->data, points->len, photo->width,
                        photo->height, box);
  wm_canvas_show_box (canvas, box);
}
