/* canvas-loupe.c: where the loupe is and what it looks at
 *
 * Over a photo that is looked at, it lies under the pointer. Where a place is set that
 * is measured from (an end of a span, a point of the scale), it stands off, so that
 * neither hand nor glass covers the place.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/canvas/canvas-private.h"

#include <math.h>

/* From the place to the middle of a loupe that stands off, in its radii, along each
 * axis: its rim then stays half a radius clear of the place (look book, picture 3). */
#define STAND_OFF 1.3

/* Line from the loupe to its place, view px. */
#define DASH 5.0
#define DASH_GAP 4.0

void
wm_canvas_want_tiles (WmCanvas *self)
{
  const WmViewTransform *views[2] = { &self->view, NULL };
  guint n_views = 1;

  if (self->layer == NULL)
    return;
  if (gtk_widget_get_visible (GTK_WIDGET (self->loupe)))
    views[n_views++] = wm_loupe_get_view (self->loupe);
  wm_tile_layer_want (self->layer, views, n_views, wm_canvas_scale (self));
}

/* The mark whose end is held, or chosen with the keys. */
static WmMarkItem *
find_held_end (WmCanvas *self, int *vertex)
{
  WmMarkItem *item;
  const WmMarkValue *value;

  if (self->hold == WM_HOLD_POINT)
    {
      item = wm_canvas_find_item (self, &self->held_id);
      *vertex = self->held_vertex;
    }
  else
    {
      item = wm_canvas_find_item (self, &self->selected);
      *vertex = self->selected_point;
    }
  if (item == NULL || *vertex < 0 || self->hold == WM_HOLD_PAN)
    return NULL;
  value = wm_mark_view_get_value (item->view);
  if ((value->shape != WM_SHAPE_SPAN && !value->is_bare)
      || (guint)*vertex >= value->points->len)
    return NULL;
  return item;
}

/* The jaw as the glass shows it: which way the other end lies. */
static WmLoupeJaw
jaw_towards (WmCanvas *self, WmPoint from, WmPoint to)
{
  WmPoint a = wm_view_transform_to_view (&self->view, from);
  WmPoint b = wm_view_transform_to_view (&self->view, to);

  return (WmLoupeJaw) { WM_LOUPE_JAW, atan2 (b.y - a.y, b.x - a.x) };
}

/* What the loupe looks at, photo px; FALSE: there is nothing to measure from. */
static gboolean
find_measured_place (WmCanvas *self, WmPoint *place, WmLoupeJaw *jaw)
{
  int vertex = -1;
  WmMarkItem *item = find_held_end (self, &vertex);

  *jaw = (WmLoupeJaw) { WM_LOUPE_CROSS, 0 };
  if (item != NULL)
    {
      const WmMarkValue *value = wm_mark_view_get_value (item->view);

      *place = wm_mark_value_point (value, vertex);
      if (value->shape == WM_SHAPE_SPAN && !value->is_bare)
        *jaw = jaw_towards (self, *place, wm_mark_value_point (value, 1 - vertex));
      return TRUE;
    }
  if (!wm_canvas_tool_measures (self) || self->mode != WM_CANVAS_MARKING
      || !self->pointer_inside || !wm_id_is_none (&self->hovered)
      || self->hold > WM_HOLD_MAYBE
      || !wm_view_transform_is_on_photo (&self->view, self->pointer))
    return FALSE;
  *place = wm_view_transform_to_photo (&self->view, self->pointer);
  if (self->tool == WM_SHAPE_SPAN && !self->tool_is_bare && self->draft_points != NULL)
    *jaw = jaw_towards (self, *place, g_array_index (self->draft_points, WmPoint, 0));
  return TRUE;
}

/* Beside @place, on the side with the most room. */
static WmPoint
stand_off (WmCanvas *self, WmPoint place)
{
  double step = STAND_OFF * WM_LOUPE_RADIUS;
  WmPoint middle = {
    place.x + (place.x < self->view.view_width / 2 ? step : -step),
    place.y + (place.y < self->view.view_height / 2 ? step : -step),
  };

  middle.x = CLAMP (middle.x, WM_LOUPE_RADIUS + 6,
                    MAX (self->view.view_width - WM_LOUPE_RADIUS - 6, 0));
  middle.y = CLAMP (middle.y, WM_LOUPE_RADIUS + 6,
                    MAX (self->view.view_height - WM_LOUPE_RADIUS - 6, 0));
  return middle;
}

void
wm_canvas_place_loupe (WmCanvas *self)
{
  WmLoupeJaw jaw = { WM_LOUPE_CROSS, 0 };
  gboolean visible = FALSE;
  WmPoint photo = { 0, 0 };

  self->loupe_stands_off =
      self->layer != NULL && find_measured_place (self, &photo, &jaw);
  if (self->loupe_stands_off)
    {
      self->loupe_place = wm_view_transform_to_view (&self->view, photo);
      self->loupe_middle = stand_off (self, self->loupe_place);
      visible = self->loupe_place.x >= 0 && self->loupe_place.y >= 0
                && self->loupe_place.x <= self->view.view_width
                && self->loupe_place.y <= self->view.view_height;
      wm_loupe_measure_at (self->loupe, self->layer, &self->view, photo, jaw);
    }
  else if (self->loupe_on && self->layer != NULL && self->pointer_inside
           && self->hold != WM_HOLD_PAN
           && wm_view_transform_is_on_photo (&self->view, self->pointer))
    {
      self->loupe_middle = self->loupe_place = self->pointer;
      visible = TRUE;
      wm_loupe_look_at (self->loupe, self->layer, &self->view,
                        wm_view_transform_to_photo (&self->view, self->pointer));
    }
  gtk_widget_set_visible (GTK_WIDGET (self->loupe), visible);
  if (visible)
    wm_canvas_want_tiles (self);
  gtk_widget_queue_allocate (GTK_WIDGET (self));
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
wm_canvas_allocate_loupe (WmCanvas *self)
{
  int size = 2 * WM_LOUPE_RADIUS;
  GtkAllocation box = { round (self->loupe_middle.x) - size / 2,
                        round (self->loupe_middle.y) - size / 2, size, size };

  if (gtk_widget_get_visible (GTK_WIDGET (self->loupe)))
    gtk_widget_size_allocate (GTK_WIDGET (self->loupe), &box, -1);
}

void
wm_canvas_snapshot_loupe_line (WmCanvas *self, GtkSnapshot *snapshot)
{
  const GdkRGBA light = { 1, 1, 1, 0.75 };
  double dx = self->loupe_middle.x - self->loupe_place.x;
  double dy = self->loupe_middle.y - self->loupe_place.y;
  double length = hypot (dx, dy) - WM_LOUPE_RADIUS;

  if (!self->loupe_stands_off || !gtk_widget_get_visible (GTK_WIDGET (self->loupe)))
    return;
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (
      snapshot, &GRAPHENE_POINT_INIT (self->loupe_place.x, self->loupe_place.y));
  gtk_snapshot_rotate (snapshot, atan2 (dy, dx) * 180 / G_PI);
  for (double at = 2 * DASH; at < length; at += DASH + DASH_GAP)
    gtk_snapshot_append_color (
        snapshot, &light, &GRAPHENE_RECT_INIT (at, -0.5, MIN (DASH, length - at), 1));
  gtk_snapshot_restore (snapshot);
}
