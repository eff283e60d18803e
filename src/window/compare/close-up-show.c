/* close-up-show.c: a matched close-up on a canvas
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/compare/close-up-show.h"

#include <math.h>

#include "record/points.h"

static WmShape
parse_shape (const char *word)
{
  if (g_strcmp0 (word, WM_MARK_LINE) == 0)
    return WM_SHAPE_LINE;
  if (g_strcmp0 (word, WM_MARK_OUTLINE) == 0)
    return WM_SHAPE_OUTLINE;
  return g_strcmp0 (word, WM_MARK_SPAN) == 0 ? WM_SHAPE_SPAN : WM_SHAPE_SPOT;
}

static void
show_mark (WmCanvas *canvas, const WmCloseUp *close, WmSeverity severity, int number)
{
  g_autoptr (GPtrArray) values =
      g_ptr_array_new_with_free_func ((GDestroyNotify)wm_mark_value_free);
  g_autoptr (GArray) points = NULL;

  if (close->mark != NULL && number >= 0)
    points = wm_points_parse (close->mark->points);
  if (points != NULL
      && points->len >= wm_mark_value_least_points (parse_shape (close->mark->shape)))
    {
      WmMarkValue *value;

      for (guint i = 0; i < points->len; i++)
        {
          WmPoint *point = &g_array_index (points, WmPoint, i);

          cairo_matrix_transform_point (&close->view.to_box, &point->x, &point->y);
        }
      value = wm_mark_value_new (parse_shape (close->mark->shape),
                                 (const WmPoint *)points->data, points->len);
      value->id = *wm_record_get_id (WM_RECORD (close->mark));
      value->severity = severity;
      value->number = number;
      g_ptr_array_add (values, value);
    }
  wm_canvas_set_marks (canvas, values);
}

gboolean
wm_close_up_show (WmCanvas *canvas, WmVisitData *data, const char *cache_folder,
                  const WmCloseUp *close, double width, double height,
                  WmSeverity severity, int number)
{
  const cairo_matrix_t *m = &close->view.to_box;
  const double matrix[9] = { m->xx, m->xy, m->x0, m->yx, m->yy, m->y0, 0, 0, 1 };
  g_autoptr (WmTileLayer) layer = NULL;

  if (close->is_there)
    layer = wm_tile_layer_new (wm_visit_data_get_path (data, close->view.photo),
                               close->view.photo->sha256, cache_folder, NULL);
  if (layer == NULL || !wm_tile_layer_set_frame (layer, matrix, width, height))
    {
      wm_canvas_set_layer (canvas, NULL, 0);
      return FALSE;
    }
  wm_canvas_set_layer (canvas, layer, 0);
  show_mark (canvas, close, severity, number);
  return TRUE;
}

static double
px_per_mm_of (const WmCloseUp *close)
{
  const cairo_matrix_t *m = &close->view.to_box;

  if (!close->is_there)
    return NAN;
  return wm_photo_px_per_true_mm (close->view.photo)
         * sqrt (fabs (m->xx * m->yy - m->xy * m->yx));
}

double
wm_close_ups_px_per_mm (const WmCloseUps *close)
{
  double before = px_per_mm_of (&close->before);

  return isfinite (before) ? before : px_per_mm_of (&close->after);
}
