/* canvas.c: the widget: photo, view, drawing
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/canvas/canvas-private.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

/* Look book, "Motion": zoom steps 150 ms ease-out. */
#define ZOOM_US 150000

G_DEFINE_FINAL_TYPE (WmCanvas, wm_canvas, GTK_TYPE_WIDGET)

static guint signals[WM_CANVAS_N_SIGNALS];

/* ---- view ---------------------------------------------------------------- */

double
wm_canvas_scale (WmCanvas *self)
{
  return gtk_widget_get_scale_factor (GTK_WIDGET (self));
}

gboolean
wm_canvas_has_photo (WmCanvas *self)
{
  return self->layer != NULL;
}

gboolean
wm_canvas_is_animated (WmCanvas *self)
{
  gboolean animations = TRUE;

  g_object_get (gtk_widget_get_settings (GTK_WIDGET (self)), "gtk-enable-animations",
                &animations, NULL);
  return animations && gtk_widget_get_mapped (GTK_WIDGET (self));
}

/* The place that zooming by keys keeps: under the pointer, else the middle. */
WmPoint
wm_canvas_anchor (WmCanvas *self)
{
  if (self->pointer_inside)
    return self->pointer;
  return (WmPoint) { self->view.view_width / 2, self->view.view_height / 2 };
}

void
wm_canvas_view_moved (WmCanvas *self)
{
  wm_canvas_want_tiles (self);
  wm_canvas_place_loupe (self);
  gtk_widget_queue_allocate (GTK_WIDGET (self));
  gtk_widget_queue_draw (GTK_WIDGET (self));
  wm_canvas_emit (self, WM_CANVAS_VIEW_CHANGED);
}

static void
apply_zoom (WmCanvas *self, double zoom, WmPoint anchor)
{
  double least = wm_view_transform_least_zoom (&self->view, 1 / wm_canvas_scale (self));

  self->is_fit = FALSE;
  wm_view_transform_zoom_at (&self->view, anchor, zoom, least);
  wm_canvas_view_moved (self);
}

static gboolean
on_zoom_tick (GtkWidget *widget, GdkFrameClock *clock, gpointer user_data)
{
  WmCanvas *self = WM_CANVAS (widget);
  double t =
      (gdk_frame_clock_get_frame_time (clock) - self->zoom_began_us) / (double)ZOOM_US;
  double eased;

  t = CLAMP (t, 0, 1);
  eased = 1 - pow (1 - t, 3);
  apply_zoom (
      self,
      exp (log (self->zoom_from) + eased * (log (self->zoom_to) - log (self->zoom_from))),
      self->zoom_anchor);
  if (t < 1)
    return G_SOURCE_CONTINUE;
  self->zoom_tick = 0;
  return G_SOURCE_REMOVE;
}

static void
stop_zoom (WmCanvas *self)
{
  if (self->zoom_tick != 0)
    gtk_widget_remove_tick_callback (GTK_WIDGET (self), self->zoom_tick);
  self->zoom_tick = 0;
}

void
wm_canvas_zoom_to (WmCanvas *self, double zoom, WmPoint anchor, gboolean animated)
{
  double least = wm_view_transform_least_zoom (&self->view, 1 / wm_canvas_scale (self));

  if (self->layer == NULL)
    return;
  stop_zoom (self);
  zoom = CLAMP (zoom, least, WM_VIEW_ZOOM_MAX);
  if (!animated || !wm_canvas_is_animated (self))
    {
      apply_zoom (self, zoom, anchor);
      return;
    }
  self->zoom_from = self->view.zoom;
  self->zoom_to = zoom;
  self->zoom_anchor = anchor;
  self->zoom_began_us =
      gdk_frame_clock_get_frame_time (gtk_widget_get_frame_clock (GTK_WIDGET (self)));
  self->zoom_tick =
      gtk_widget_add_tick_callback (GTK_WIDGET (self), on_zoom_tick, NULL, NULL);
}

void
wm_canvas_zoom_by (WmCanvas *self, double factor, WmPoint anchor, gboolean animated)
{
  /* Quick steps add up: each goes on from where the last one is heading. */
  double from = self->zoom_tick != 0 ? self->zoom_to : self->view.zoom;

  wm_canvas_zoom_to (self, from * factor, anchor, animated);
}

/* All of the photo, or all of the box that was asked for, in the view as it is now. */
static void
fit (WmCanvas *self)
{
  WmViewTransform part;

  if (!self->has_box)
    {
      wm_view_transform_fit (&self->view);
      return;
    }
  wm_view_transform_init (&part, self->box[2], self->box[3], self->view.turns);
  part.view_width = self->view.view_width;
  part.view_height = self->view.view_height;
  self->view.zoom = wm_view_transform_fit_zoom (&part);
  self->view.centre =
      (WmPoint) { self->box[0] + self->box[2] / 2, self->box[1] + self->box[3] / 2 };
  wm_view_transform_fill (&self->view);
}

void
wm_canvas_fit (WmCanvas *self)
{
  stop_zoom (self);
  self->is_fit = TRUE;
  self->has_box = FALSE;
  fit (self);
  wm_canvas_view_moved (self);
}

gboolean
wm_canvas_is_fit (WmCanvas *self)
{
  return self->is_fit;
}

void
wm_canvas_follow (WmCanvas *self, const WmViewTransform *view, gboolean is_fit)
{
  stop_zoom (self);
  self->view.turns = view->turns;
  self->view.zoom = view->zoom;
  self->view.centre = view->centre;
  self->is_fit = is_fit;
  self->has_box = FALSE;
  wm_canvas_want_tiles (self);
  wm_canvas_place_loupe (self);
  gtk_widget_queue_allocate (GTK_WIDGET (self));
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

gboolean
wm_canvas_has_part (WmCanvas *self)
{
  return !isnan (self->part_left) || !isnan (self->part_right);
}

void
wm_canvas_get_part (WmCanvas *self, double *left, double *right)
{
  *left = isnan (self->part_left) ? 0 : self->part_left;
  *right = isnan (self->part_right) ? self->view.view_width : self->part_right;
}

void
wm_canvas_set_part (WmCanvas *self, double left, double right)
{
  self->part_left = left;
  self->part_right = right;
  gtk_widget_queue_allocate (GTK_WIDGET (self));
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
wm_canvas_set_glass (WmCanvas *self, gboolean glass)
{
  self->is_glass = glass;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* ---- the photo ----------------------------------------------------------- */

static void
on_layer_changed (WmTileLayer *layer, WmCanvas *self)
{
  wm_canvas_learn_detail (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  if (gtk_widget_get_visible (GTK_WIDGET (self->loupe)))
    gtk_widget_queue_draw (GTK_WIDGET (self->loupe));
}

static void
on_layer_failed (WmTileLayer *layer, const GError *error, WmCanvas *self)
{
  wm_canvas_emit (self, WM_CANVAS_FAILED, error);
}

static void
drop_layer (WmCanvas *self)
{
  if (self->layer == NULL)
    return;
  g_clear_signal_handler (&self->layer_changed, self->layer);
  g_clear_signal_handler (&self->layer_failed, self->layer);
  g_clear_object (&self->layer);
}

void
wm_canvas_set_layer (WmCanvas *self, WmTileLayer *layer, int turns)
{
  const WmPhotoFacts *facts;
  double width = self->view.view_width, height = self->view.view_height;

  g_return_if_fail (WM_IS_CANVAS (self));

  stop_zoom (self);
  wm_canvas_clear_marks (self);
  drop_layer (self);
  wm_view_transform_init (&self->view, 1, 1, turns);
  if (layer != NULL)
    {
      self->layer = g_object_ref (layer);
      facts = wm_tile_layer_get_facts (layer);
      wm_view_transform_init (&self->view, facts->width, facts->height, turns);
      self->layer_changed =
          g_signal_connect (layer, "changed", G_CALLBACK (on_layer_changed), self);
      self->layer_failed =
          g_signal_connect (layer, "failed", G_CALLBACK (on_layer_failed), self);
    }
  self->view.view_width = width;
  self->view.view_height = height;
  wm_canvas_update_actions (self);
  wm_canvas_fit (self);
}

WmTileLayer *
wm_canvas_get_layer (WmCanvas *self)
{
  return self->layer;
}

void
wm_canvas_set_turns (WmCanvas *self, int turns)
{
  if (self->view.turns == (turns & 3))
    return;
  wm_view_transform_turn (&self->view, turns - self->view.turns);
  if (self->is_fit)
    fit (self);
  wm_canvas_view_moved (self);
}

void
wm_canvas_show_box (WmCanvas *self, const double box[4])
{
  self->is_fit = TRUE;
  self->has_box = TRUE;
  memcpy (self->box, box, sizeof self->box);
  fit (self);
  wm_canvas_view_moved (self);
}

/* ---- widget -------------------------------------------------------------- */

static void
wm_canvas_measure (GtkWidget *widget, GtkOrientation orientation, int for_size,
                   int *minimum, int *natural, int *minimum_baseline,
                   int *natural_baseline)
{
  /* Room for the marking bar and one photo of use; the rest is what is left. A picture
   * only needs to be seen. */
  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? 240 : 160;
  if (WM_CANVAS (widget)->mode == WM_CANVAS_STILL)
    *minimum /= 2;
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? 900 : 600;
}

static void
wm_canvas_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  WmCanvas *self = WM_CANVAS (widget);
  gboolean resized = self->view.view_width != width || self->view.view_height != height;

  if (resized)
    {
      self->view.view_width = width;
      self->view.view_height = height;
      if (self->is_fit)
        fit (self);
      else
        wm_view_transform_keep_in_sight (&self->view);
      wm_canvas_want_tiles (self);
      wm_canvas_emit (self, WM_CANVAS_VIEW_CHANGED);
    }
  wm_canvas_place_marks (self);
  wm_canvas_allocate_loupe (self);
}

static void
snapshot_marks (WmCanvas *self, GtkSnapshot *snapshot)
{
  WmMarkItem *top = wm_canvas_find_item (self, &self->selected);

  for (guint i = 0; i < self->items->len; i++)
    {
      WmMarkItem *item = g_ptr_array_index (self->items, i);

      if (item != top)
        gtk_widget_snapshot_child (GTK_WIDGET (self), GTK_WIDGET (item->view), snapshot);
    }
  if (top != NULL)
    gtk_widget_snapshot_child (GTK_WIDGET (self), GTK_WIDGET (top->view), snapshot);
  if (self->draft != NULL)
    gtk_widget_snapshot_child (GTK_WIDGET (self), GTK_WIDGET (self->draft), snapshot);
}

static void
wm_canvas_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  WmCanvas *self = WM_CANVAS (widget);
  gint64 began_us = g_get_monotonic_time ();
  double took_ms, left, right;

  wm_canvas_get_part (self, &left, &right);
  gtk_snapshot_push_clip (snapshot, &GRAPHENE_RECT_INIT (left, 0, MAX (right - left, 0),
                                                         gtk_widget_get_height (widget)));
  if (self->layer != NULL && !self->is_glass)
    wm_tile_layer_snapshot (self->layer, snapshot, &self->view, wm_canvas_scale (self));
  snapshot_marks (self, snapshot);
  wm_canvas_snapshot_loupe_line (self, snapshot);
  gtk_widget_snapshot_child (widget, GTK_WIDGET (self->loupe), snapshot);
  gtk_snapshot_pop (snapshot);

  took_ms = (g_get_monotonic_time () - began_us) / 1000.0;
  self->times.n_frames++;
  self->times.total_ms += took_ms;
  self->times.longest_ms = MAX (self->times.longest_ms, took_ms);
}

/* The other part belongs to the canvas that lies under this one. */
static gboolean
wm_canvas_contains (GtkWidget *widget, double x, double y)
{
  double left, right;

  wm_canvas_get_part (WM_CANVAS (widget), &left, &right);
  return x >= left && x < right && y >= 0 && y < gtk_widget_get_height (widget);
}

static void
wm_canvas_dispose (GObject *object)
{
  WmCanvas *self = WM_CANVAS (object);

  stop_zoom (self);
  drop_layer (self);
  wm_canvas_dispose_marks (self);
  if (self->loupe != NULL)
    gtk_widget_unparent (GTK_WIDGET (self->loupe));
  self->loupe = NULL;
  g_clear_object (&self->actions);
  G_OBJECT_CLASS (wm_canvas_parent_class)->dispose (object);
}

static void
add_signal (int signal, const char *name, guint n_params, GType a, GType b, GType c)
{
  signals[signal] = g_signal_new (name, WM_TYPE_CANVAS, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                  NULL, G_TYPE_NONE, n_params, a, b, c);
}

static void
wm_canvas_class_init (WmCanvasClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_canvas_dispose;
  widget_class->measure = wm_canvas_measure;
  widget_class->size_allocate = wm_canvas_size_allocate;
  widget_class->snapshot = wm_canvas_snapshot;
  widget_class->contains = wm_canvas_contains;
  widget_class->focus = wm_canvas_move_focus;

  add_signal (WM_CANVAS_MARK_ADDED, "mark-added", 1, G_TYPE_POINTER, 0, 0);
  add_signal (WM_CANVAS_MARK_MOVING, "mark-moving", 1, G_TYPE_POINTER, 0, 0);
  add_signal (WM_CANVAS_MARK_EDITED, "mark-edited", 1, G_TYPE_POINTER, 0, 0);
  add_signal (WM_CANVAS_MARK_REMOVED, "mark-removed", 1, G_TYPE_POINTER, 0, 0);
  add_signal (WM_CANVAS_MARK_CHOSEN, "mark-chosen", 1, G_TYPE_POINTER, 0, 0);
  add_signal (WM_CANVAS_MARK_MENU, "mark-menu", 3, G_TYPE_POINTER, G_TYPE_DOUBLE,
              G_TYPE_DOUBLE);
  add_signal (WM_CANVAS_TURNED, "turned", 1, G_TYPE_INT, 0, 0);
  add_signal (WM_CANVAS_VIEW_CHANGED, "view-changed", 0, 0, 0, 0);
  add_signal (WM_CANVAS_FAILED, "failed", 1, G_TYPE_POINTER, 0, 0);

  gtk_widget_class_set_css_name (widget_class, "photo-canvas");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
wm_canvas_init (WmCanvas *self)
{
  wm_view_transform_init (&self->view, 1, 1, 0);
  self->is_fit = TRUE;
  self->part_left = self->part_right = NAN;
  wm_canvas_init_marks (self);
  self->loupe = wm_loupe_new ();
  gtk_widget_set_visible (GTK_WIDGET (self->loupe), FALSE);
  gtk_widget_set_parent (GTK_WIDGET (self->loupe), GTK_WIDGET (self));
  wm_canvas_init_actions (self);
  wm_canvas_init_input (self);
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Photo"), -1);
}

void
wm_canvas_emit (WmCanvas *self, int signal, ...)
{
  va_list args;

  va_start (args, signal);
  g_signal_emit_valist (self, signals[signal], 0, args);
  va_end (args);
}

WmCanvas *
wm_canvas_new (void)
{
  return g_object_new (WM_TYPE_CANVAS, NULL);
}

void
wm_canvas_set_mode (WmCanvas *self, WmCanvasMode mode)
{
  self->mode = mode;
  gtk_widget_set_focusable (GTK_WIDGET (self), mode != WM_CANVAS_STILL);
  gtk_widget_set_can_target (GTK_WIDGET (self), mode != WM_CANVAS_STILL);
  wm_canvas_update_actions (self);
}

void
wm_canvas_set_radius (WmCanvas *self, double radius)
{
  self->radius = radius;
  gtk_widget_queue_allocate (GTK_WIDGET (self));
}

const WmViewTransform *
wm_canvas_get_view (WmCanvas *self)
{
  return &self->view;
}

double
wm_canvas_get_pixel_zoom (WmCanvas *self)
{
  return self->view.zoom * wm_canvas_scale (self);
}

GActionGroup *
wm_canvas_get_actions (WmCanvas *self)
{
  return G_ACTION_GROUP (self->actions);
}

void
wm_canvas_take_times (WmCanvas *self, WmCanvasTimes *times)
{
  *times = self->times;
  self->times = (WmCanvasTimes) { 0 };
}
