/* canvas-input.c: what pointer and fingers do on the photo
 *
 * One press is one thing: a click (choose, place, add a point) or, once it has moved,
 * a drag (the photo, a disc, a point, a whole form). A drag is one edit, told when it
 * ends; Escape or a second finger takes it back.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/canvas/canvas-private.h"

#include <math.h>

/* A press that moves less is a click, view px: GTK's own drag threshold. */
#define CLICK_PX 8.0

/* Two clicks this close in time are one double click (GTK's default is 400 ms). */
#define DOUBLE_CLICK_MS 400

/* How far off a mark may still be caught, view px: half of the 34 and 44 px targets of
 * the look book less R. */
#define SLACK_MOUSE 4.0
#define SLACK_TOUCH 9.0

/* One notch of a wheel. */
#define WHEEL_FACTOR 1.25

static double
slack_of (WmCanvas *self)
{
  return self->touching ? SLACK_TOUCH : SLACK_MOUSE;
}

static gboolean
can_mark (WmCanvas *self)
{
  return self->mode == WM_CANVAS_MARKING && self->layer != NULL;
}

static void
update_hover (WmCanvas *self)
{
  WmMarkPart part = WM_MARK_PART_NONE;
  int vertex;
  WmMarkItem *item =
      self->pointer_inside && !wm_canvas_is_drawing (self)
          ? wm_canvas_item_at (self, self->pointer, slack_of (self), &part, &vertex)
          : NULL;
  WmId hovered = item != NULL ? wm_mark_view_get_value (item->view)->id : WM_ID_NONE;
  const char *cursor = NULL;

  if (self->hold == WM_HOLD_PAN || self->space_down)
    cursor = self->hold == WM_HOLD_PAN ? "grabbing" : "grab";
  else if (item != NULL)
    cursor = part == WM_MARK_PART_LEADER ? "pointer" : "move";
  else if (can_mark (self) && self->pointer_inside
           && wm_view_transform_is_on_photo (&self->view, self->pointer))
    cursor = "crosshair";
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), cursor);

  if (wm_id_equal (&hovered, &self->hovered))
    return;
  self->hovered = hovered;
  gtk_widget_queue_allocate (GTK_WIDGET (self));
}

/* ---- clicks ---------------------------------------------------------------- */

static void
click_photo (WmCanvas *self, WmPoint at, gboolean is_double)
{
  WmPoint photo = wm_view_transform_to_photo (&self->view, at);
  g_autoptr (WmMarkValue) value = NULL;

  if (self->tool != WM_SHAPE_SPOT)
    {
      /* The first click of a double click has set the last point. */
      if (is_double && wm_canvas_tool_points (self) == 0)
        wm_canvas_draft_finish (self);
      else if (is_double)
        return; /* two places as near as this are never meant */
      else
        wm_canvas_draft_add (self, photo);
      return;
    }
  if (is_double)
    return; /* a second mark on the same place is never meant */
  value = wm_mark_value_new (WM_SHAPE_SPOT, &photo, 1);
  wm_canvas_emit (self, WM_CANVAS_MARK_ADDED, value);
}

static void
on_click (WmCanvas *self, WmPoint at)
{
  guint32 now_ms = gtk_event_controller_get_current_event_time (self->drag);
  gboolean is_double =
      self->clicked_at_ms != 0 && now_ms - self->clicked_at_ms < DOUBLE_CLICK_MS
      && hypot (at.x - self->clicked_at.x, at.y - self->clicked_at.y) < CLICK_PX;
  WmMarkPart part;
  int vertex = -1;
  WmMarkItem *item = wm_canvas_is_drawing (self)
                         ? NULL
                         : wm_canvas_item_at (self, at, slack_of (self), &part, &vertex);

  self->clicked_at_ms = is_double ? 0 : now_ms;
  self->clicked_at = at;
  /* A measured place may lie on a form or leader that is there already. */
  if (item != NULL && can_mark (self) && wm_canvas_tool_measures (self)
      && (part == WM_MARK_PART_FORM || part == WM_MARK_PART_LEADER))
    item = NULL;
  if (item != NULL)
    {
      gtk_widget_grab_focus (GTK_WIDGET (item->view));
      wm_canvas_choose (self, &wm_mark_view_get_value (item->view)->id);
      self->selected_point = part == WM_MARK_PART_VERTEX ? vertex : -1;
      wm_canvas_place_loupe (self);
      return;
    }
  gtk_widget_grab_focus (GTK_WIDGET (self));
  if (can_mark (self) && wm_view_transform_is_on_photo (&self->view, at))
    click_photo (self, at, is_double);
  else
    wm_canvas_choose (self, NULL);
}

/* ---- drags ----------------------------------------------------------------- */

static WmHold
hold_for_part (const WmMarkValue *value, WmMarkPart part)
{
  switch (part)
    {
    case WM_MARK_PART_DISC:
      return WM_HOLD_DISC;
    case WM_MARK_PART_VERTEX:
      return WM_HOLD_POINT;
    case WM_MARK_PART_FORM:
      return WM_HOLD_FORM;
    default:
      /* A leader has the photo behind it. */
      return WM_HOLD_PAN;
    }
}

/* The press has become a drag: of what was under it when it began. */
static void
begin_hold (WmCanvas *self, GtkGestureDrag *gesture)
{
  guint button = gtk_gesture_single_get_current_button (GTK_GESTURE_SINGLE (gesture));
  WmMarkItem *item = wm_canvas_find_item (self, &self->held_id);

  self->held_x = self->held_y = 0;
  if (button == GDK_BUTTON_PRIMARY && !self->space_down && item != NULL && can_mark (self)
      && !wm_canvas_is_drawing (self))
    {
      const WmMarkValue *value = wm_mark_view_get_value (item->view);
      const WmMarkLook *look = wm_mark_view_get_look (item->view);

      self->hold = hold_for_part (value, self->held_part);
      if (self->hold == WM_HOLD_PAN)
        return;
      g_clear_pointer (&self->held_value, wm_mark_value_free);
      self->held_value = wm_mark_value_copy (value);
      self->held_disc = look->disc;
      wm_canvas_choose (self, &self->held_id);
      return;
    }
  self->hold = WM_HOLD_PAN;
}

static void
drag_mark (WmCanvas *self, double dx, double dy)
{
  WmMarkItem *item = wm_canvas_find_item (self, &self->held_id);
  g_autoptr (WmMarkValue) value = NULL;
  WmPoint step = wm_view_transform_step_to_photo (&self->view, (WmPoint) { dx, dy });
  double width = self->view.photo_width, height = self->view.photo_height;

  if (item == NULL)
    {
      self->hold = WM_HOLD_NONE;
      return;
    }
  value = wm_mark_value_copy (self->held_value);
  if (self->hold == WM_HOLD_DISC)
    wm_mark_value_pin (value, wm_view_transform_to_photo (
                                  &self->view, (WmPoint) { self->held_disc.x + dx,
                                                           self->held_disc.y + dy }));
  else if (self->hold == WM_HOLD_FORM)
    wm_mark_value_move (value, step.x, step.y, width, height);
  else
    {
      WmPoint from = wm_mark_value_point (value, self->held_vertex);

      wm_mark_value_move_point (value, self->held_vertex,
                                (WmPoint) { from.x + step.x, from.y + step.y }, width,
                                height);
    }
  wm_canvas_show_value (self, item, value);
  wm_canvas_emit (self, WM_CANVAS_MARK_MOVING, value);
}

static void
on_drag_begin (GtkGestureDrag *gesture, double x, double y, WmCanvas *self)
{
  GdkDevice *device =
      gtk_event_controller_get_current_event_device (GTK_EVENT_CONTROLLER (gesture));
  WmPoint at = { x, y };
  WmMarkItem *item;

  self->touching =
      device != NULL && gdk_device_get_source (device) == GDK_SOURCE_TOUCHSCREEN;
  self->pointer = at;
  self->held_vertex = 0;
  item =
      wm_canvas_item_at (self, at, slack_of (self), &self->held_part, &self->held_vertex);
  self->held_id = item != NULL ? wm_mark_view_get_value (item->view)->id : WM_ID_NONE;
  self->hold = WM_HOLD_MAYBE;
}

static void
on_drag_update (GtkGestureDrag *gesture, double dx, double dy, WmCanvas *self)
{
  double x = 0, y = 0;

  gtk_gesture_drag_get_start_point (gesture, &x, &y);
  self->pointer = (WmPoint) { x + dx, y + dy };
  if (self->hold == WM_HOLD_MAYBE && hypot (dx, dy) >= CLICK_PX)
    {
      begin_hold (self, gesture);
      gtk_gesture_set_state (GTK_GESTURE (gesture), GTK_EVENT_SEQUENCE_CLAIMED);
      update_hover (self);
    }
  if (self->hold == WM_HOLD_PAN)
    {
      self->is_fit = FALSE;
      wm_view_transform_pan (&self->view, dx - self->held_x, dy - self->held_y);
      self->held_x = dx;
      self->held_y = dy;
      wm_canvas_view_moved (self);
    }
  else if (self->hold > WM_HOLD_PAN)
    {
      drag_mark (self, dx, dy);
      wm_canvas_place_loupe (self);
    }
}

static void
on_drag_end (GtkGestureDrag *gesture, double dx, double dy, WmCanvas *self)
{
  guint button = gtk_gesture_single_get_current_button (GTK_GESTURE_SINGLE (gesture));
  WmHold hold = self->hold;
  double x = 0, y = 0;

  gtk_gesture_drag_get_start_point (gesture, &x, &y);
  self->hold = WM_HOLD_NONE;
  if (hold > WM_HOLD_PAN)
    {
      WmMarkItem *item = wm_canvas_find_item (self, &self->held_id);
      const WmMarkValue *now = item != NULL ? wm_mark_view_get_value (item->view) : NULL;

      if (now != NULL && !wm_mark_value_equal (now, self->held_value))
        {
          g_autoptr (WmMarkValue) value = wm_mark_value_copy (now);

          wm_canvas_emit (self, WM_CANVAS_MARK_EDITED, value);
        }
    }
  else if (hold == WM_HOLD_MAYBE && button == GDK_BUTTON_PRIMARY && !self->space_down)
    on_click (self, (WmPoint) { x + dx, y + dy });
  else if (hold == WM_HOLD_MAYBE && button == GDK_BUTTON_SECONDARY
           && !wm_id_is_none (&self->held_id))
    {
      WmId id = self->held_id;

      wm_canvas_choose (self, &id);
      wm_canvas_emit (self, WM_CANVAS_MARK_MENU, &id, x, y);
    }
  update_hover (self);
  wm_canvas_place_loupe (self);
}

/* A second finger, or Escape: what was dragged goes back. */
static void
on_drag_cancel (GtkGesture *gesture, GdkEventSequence *sequence, WmCanvas *self)
{
  WmMarkItem *item = wm_canvas_find_item (self, &self->held_id);

  if (self->hold > WM_HOLD_PAN && item != NULL)
    {
      wm_canvas_show_value (self, item, self->held_value);
      wm_canvas_emit (self, WM_CANVAS_MARK_MOVING, self->held_value);
    }
  self->hold = WM_HOLD_NONE;
}

/* ---- wheel, pinch, motion -------------------------------------------------- */

static gboolean
on_scroll (GtkEventControllerScroll *controller, double dx, double dy, WmCanvas *self)
{
  GdkModifierType state =
      gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (controller));
  gboolean is_wheel =
      gtk_event_controller_scroll_get_unit (controller) == GDK_SCROLL_UNIT_WHEEL;

  if (self->layer == NULL)
    return GDK_EVENT_PROPAGATE;
  if ((is_wheel && (state & GDK_SHIFT_MASK) == 0) || (state & GDK_CONTROL_MASK) != 0)
    {
      /* A touch pad's surface px count as a tenth of a notch each ten. */
      double notches = is_wheel ? dy : dy / 40;

      wm_canvas_zoom_by (self, pow (WHEEL_FACTOR, -notches), wm_canvas_anchor (self),
                         is_wheel);
      return GDK_EVENT_STOP;
    }
  if (is_wheel)
    {
      dx = (dx + dy) * 60;
      dy = 0;
    }
  self->is_fit = FALSE;
  wm_view_transform_pan (&self->view, -dx, -dy);
  wm_canvas_view_moved (self);
  return GDK_EVENT_STOP;
}

static void
on_pinch_begin (GtkGesture *gesture, GdkEventSequence *sequence, WmCanvas *self)
{
  self->pinch_zoom = self->view.zoom;
  gtk_gesture_set_state (gesture, GTK_EVENT_SEQUENCE_CLAIMED);
}

static void
on_pinch (GtkGestureZoom *gesture, double factor, WmCanvas *self)
{
  WmPoint middle = wm_canvas_anchor (self);

  gtk_gesture_get_bounding_box_center (GTK_GESTURE (gesture), &middle.x, &middle.y);
  wm_canvas_zoom_to (self, self->pinch_zoom * factor, middle, FALSE);
}

static void
on_motion (GtkEventControllerMotion *controller, double x, double y, WmCanvas *self)
{
  /* GTK sends motion without movement when the scene changes under the pointer. */
  if (self->pointer_inside && self->pointer.x == x && self->pointer.y == y)
    return;
  self->pointer_inside = TRUE;
  self->pointer = (WmPoint) { x, y };
  if (self->hold == WM_HOLD_NONE)
    update_hover (self);
  if (wm_canvas_is_drawing (self))
    wm_canvas_draft_follow (self,
                            wm_view_transform_to_photo (&self->view, self->pointer));
  if (self->loupe_on || self->loupe_stands_off || wm_canvas_tool_measures (self))
    wm_canvas_place_loupe (self);
}

static void
on_leave (GtkEventControllerMotion *controller, WmCanvas *self)
{
  self->pointer_inside = FALSE;
  update_hover (self);
  if (self->loupe_on || self->loupe_stands_off)
    wm_canvas_place_loupe (self);
}

/* ---- keys that are held ----------------------------------------------------- */

static gboolean
on_key_pressed (GtkEventControllerKey *controller, guint keyval, guint keycode,
                GdkModifierType state, WmCanvas *self)
{
  if (keyval != GDK_KEY_space || (state & gtk_accelerator_get_default_mod_mask ()) != 0)
    return GDK_EVENT_PROPAGATE;
  self->space_down = TRUE;
  update_hover (self);
  return GDK_EVENT_STOP;
}

static void
on_key_released (GtkEventControllerKey *controller, guint keyval, guint keycode,
                 GdkModifierType state, WmCanvas *self)
{
  if (keyval != GDK_KEY_space)
    return;
  self->space_down = FALSE;
  update_hover (self);
}

/* L pressed longer than this shows the loupe only while it is held: well above a tap,
 * well under the half second after which most systems repeat a key. */
#define HELD_MS 350

static gboolean
is_typing (GtkEventController *controller)
{
  GtkRoot *root = gtk_widget_get_root (gtk_event_controller_get_widget (controller));

  return root != NULL && GTK_IS_EDITABLE (gtk_root_get_focus (root));
}

/* Comes before the key's shortcut, which turns the loupe on or off. */
static gboolean
on_loupe_key (GtkEventControllerKey *controller, guint keyval, guint keycode,
              GdkModifierType state, WmCanvas *self)
{
  if (gdk_keyval_to_lower (keyval) != GDK_KEY_l
      || (state & gtk_accelerator_get_default_mod_mask ()) != 0
      || is_typing (GTK_EVENT_CONTROLLER (controller)))
    return GDK_EVENT_PROPAGATE;
  if (self->loupe_key != WM_LOUPE_KEY_UP)
    return GDK_EVENT_STOP; /* the keyboard repeats */
  self->loupe_key = self->loupe_on ? WM_LOUPE_KEY_OFF : WM_LOUPE_KEY_ON;
  /* The events' own times: a busy machine is no long press. */
  self->loupe_key_ms =
      gtk_event_controller_get_current_event_time (GTK_EVENT_CONTROLLER (controller));
  return GDK_EVENT_PROPAGATE;
}

static void
on_loupe_key_up (GtkEventControllerKey *controller, guint keyval, guint keycode,
                 GdkModifierType state, WmCanvas *self)
{
  guint32 now_ms =
      gtk_event_controller_get_current_event_time (GTK_EVENT_CONTROLLER (controller));

  if (gdk_keyval_to_lower (keyval) != GDK_KEY_l)
    return;
  if (self->loupe_key == WM_LOUPE_KEY_ON && now_ms - self->loupe_key_ms > HELD_MS)
    wm_canvas_set_loupe (self, FALSE);
  self->loupe_key = WM_LOUPE_KEY_UP;
}

void
wm_canvas_watch_loupe_key (WmCanvas *self, GtkWidget *widget)
{
  GtkEventController *key = gtk_event_controller_key_new ();

  gtk_event_controller_set_propagation_phase (key, GTK_PHASE_CAPTURE);
  g_signal_connect_object (key, "key-pressed", G_CALLBACK (on_loupe_key), self, 0);
  g_signal_connect_object (key, "key-released", G_CALLBACK (on_loupe_key_up), self, 0);
  gtk_widget_add_controller (widget, key);
}

void
wm_canvas_init_input (WmCanvas *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  GtkGesture *drag = gtk_gesture_drag_new (), *pinch = gtk_gesture_zoom_new ();
  GtkEventController *scroll =
      gtk_event_controller_scroll_new (GTK_EVENT_CONTROLLER_SCROLL_BOTH_AXES);
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkEventController *key = gtk_event_controller_key_new ();

  self->drag = GTK_EVENT_CONTROLLER (drag);
  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (drag), 0);
  g_signal_connect (drag, "drag-begin", G_CALLBACK (on_drag_begin), self);
  g_signal_connect (drag, "drag-update", G_CALLBACK (on_drag_update), self);
  g_signal_connect (drag, "drag-end", G_CALLBACK (on_drag_end), self);
  g_signal_connect (drag, "cancel", G_CALLBACK (on_drag_cancel), self);
  gtk_widget_add_controller (widget, GTK_EVENT_CONTROLLER (drag));

  g_signal_connect (pinch, "begin", G_CALLBACK (on_pinch_begin), self);
  g_signal_connect (pinch, "scale-changed", G_CALLBACK (on_pinch), self);
  gtk_widget_add_controller (widget, GTK_EVENT_CONTROLLER (pinch));

  g_signal_connect (scroll, "scroll", G_CALLBACK (on_scroll), self);
  gtk_widget_add_controller (widget, scroll);
  g_signal_connect (motion, "enter", G_CALLBACK (on_motion), self);
  g_signal_connect (motion, "motion", G_CALLBACK (on_motion), self);
  g_signal_connect (motion, "leave", G_CALLBACK (on_leave), self);
  gtk_widget_add_controller (widget, motion);
  g_signal_connect (key, "key-pressed", G_CALLBACK (on_key_pressed), self);
  g_signal_connect (key, "key-released", G_CALLBACK (on_key_released), self);
  gtk_widget_add_controller (widget, key);
}
