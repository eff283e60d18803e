/* canvas-actions.c: the actions of the canvas, and moving the focus over its marks
 *
 * Keys are given to these names in window/action-table.c.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/canvas/canvas-private.h"

#include <string.h>

/* One step of the zoom keys. */
#define KEY_FACTOR 1.25

/* Arrow keys on the photo pan by a part of the view. */
#define KEY_PAN 0.125

/* Nudges, photo px: the brief of the canvas; Shift makes the step ten times. */
#define NUDGE 1.0
#define NUDGE_FAR 10.0

static const struct
{
  const char *name;
  WmShape shape;
  gboolean is_bare;
} tools[] = {
  { "spot", WM_SHAPE_SPOT, FALSE },       { "line", WM_SHAPE_LINE, FALSE },
  { "outline", WM_SHAPE_OUTLINE, FALSE }, { "span", WM_SHAPE_SPAN, FALSE },
  { "ruler", WM_SHAPE_SPAN, TRUE },       { "corners", WM_SHAPE_OUTLINE, TRUE },
};

static WmMarkItem *
selected_item (WmCanvas *self)
{
  return wm_canvas_find_item (self, &self->selected);
}

/* Shows and tells a change of the selected mark made by a key: one edit. */
static void
edit_selected (WmCanvas *self, const WmMarkValue *value)
{
  WmMarkItem *item = selected_item (self);

  if (item == NULL || wm_mark_value_equal (wm_mark_view_get_value (item->view), value))
    return;
  wm_canvas_show_value (self, item, value);
  if (self->selected_point >= 0)
    wm_canvas_place_loupe (self);
  wm_canvas_emit (self, WM_CANVAS_MARK_EDITED, value);
}

/* ---- looking --------------------------------------------------------------- */

static void
on_zoom_in (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  wm_canvas_zoom_by (user_data, KEY_FACTOR, wm_canvas_anchor (user_data), TRUE);
}

static void
on_zoom_out (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  wm_canvas_zoom_by (user_data, 1 / KEY_FACTOR, wm_canvas_anchor (user_data), TRUE);
}

static void
on_fit (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  wm_canvas_fit (user_data);
}

static void
on_true_pixels (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  WmCanvas *self = user_data;

  wm_canvas_zoom_to (self, 1 / wm_canvas_scale (self), wm_canvas_anchor (self), TRUE);
}

static void
turn (WmCanvas *self, int quarter)
{
  if (self->layer == NULL)
    return;
  wm_canvas_set_turns (self, self->view.turns + quarter);
  wm_canvas_emit (self, WM_CANVAS_TURNED, self->view.turns);
}

static void
on_turn_left (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  turn (user_data, -1);
}

static void
on_turn_right (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  turn (user_data, 1);
}

void
wm_canvas_set_loupe (WmCanvas *self, gboolean on)
{
  g_action_group_change_action_state (G_ACTION_GROUP (self->actions), "loupe",
                                      g_variant_new_boolean (on));
}

static void
on_loupe_state (GSimpleAction *action, GVariant *state, gpointer user_data)
{
  WmCanvas *self = user_data;

  g_simple_action_set_state (action, state);
  self->loupe_on = g_variant_get_boolean (state);
  wm_canvas_place_loupe (self);
}

/* ---- marking --------------------------------------------------------------- */

static void
on_tool_state (GSimpleAction *action, GVariant *state, gpointer user_data)
{
  WmCanvas *self = user_data;
  const char *name = g_variant_get_string (state, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (tools); i++)
    if (g_str_equal (name, tools[i].name))
      {
        wm_canvas_draft_cancel (self);
        self->tool = tools[i].shape;
        self->tool_is_bare = tools[i].is_bare;
        g_simple_action_set_state (action, state);
        wm_canvas_place_loupe (self);
      }
}

static void
on_place (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  wm_canvas_draft_place (user_data);
}

static void
on_finish (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  wm_canvas_draft_finish (user_data);
}

static void
on_cancel (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  WmCanvas *self = user_data;

  if (wm_canvas_is_drawing (self))
    wm_canvas_draft_cancel (self);
  else
    wm_canvas_choose (self, NULL);
}

static void
on_remove (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  WmCanvas *self = user_data;
  WmMarkItem *item = selected_item (self);
  WmId id;

  if (wm_canvas_is_drawing (self))
    {
      wm_canvas_draft_drop_point (self);
      return;
    }
  if (item == NULL)
    return;
  if (self->selected_point >= 0)
    {
      g_autoptr (WmMarkValue) value =
          wm_mark_value_copy (wm_mark_view_get_value (item->view));

      /* A chosen point goes alone, as long as the form can spare it. */
      if (wm_mark_value_remove_point (value, self->selected_point))
        {
          self->selected_point = -1;
          edit_selected (self, value);
          return;
        }
    }
  id = self->selected;
  wm_canvas_emit (self, WM_CANVAS_MARK_REMOVED, &id);
}

static void
on_unpin (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  WmMarkItem *item = selected_item (user_data);
  g_autoptr (WmMarkValue) value = NULL;

  if (item == NULL)
    return;
  value = wm_mark_value_copy (wm_mark_view_get_value (item->view));
  wm_mark_value_unpin (value);
  item->has_disc = FALSE;
  edit_selected (user_data, value);
}

static void
on_menu (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  WmCanvas *self = user_data;
  WmMarkItem *item = selected_item (self);
  const WmMarkLook *look;
  WmId id = self->selected;

  if (item == NULL)
    return;
  look = wm_mark_view_get_look (item->view);
  wm_canvas_emit (self, WM_CANVAS_MARK_MENU, &id, look->disc.x, look->disc.y);
}

/* A step in the view for "left", "right", "up", "down". */
static WmPoint
direction_of (GVariant *parameter)
{
  const char *name = g_variant_get_string (parameter, NULL);

  return (WmPoint) { g_str_equal (name, "right") - g_str_equal (name, "left"),
                     g_str_equal (name, "down") - g_str_equal (name, "up") };
}

static void
move (WmCanvas *self, GVariant *parameter, double px)
{
  WmPoint direction = direction_of (parameter), step;
  WmMarkItem *item = selected_item (self);
  g_autoptr (WmMarkValue) value = NULL;
  double width = self->view.photo_width, height = self->view.photo_height;

  if (item == NULL || self->mode != WM_CANVAS_MARKING)
    {
      double reach = KEY_PAN * px * MIN (self->view.view_width, self->view.view_height);

      self->is_fit = FALSE;
      wm_view_transform_pan (&self->view, -direction.x * MIN (reach, 400),
                             -direction.y * MIN (reach, 400));
      wm_canvas_view_moved (self);
      return;
    }

  /* Left is left as the photo is held, whole photo px long. */
  step = wm_view_transform_step_to_photo (
      &self->view, (WmPoint) { direction.x * px * self->view.zoom,
                               direction.y * px * self->view.zoom });
  value = wm_mark_value_copy (wm_mark_view_get_value (item->view));
  if (self->selected_point >= 0 && (guint)self->selected_point < value->points->len)
    {
      WmPoint from = wm_mark_value_point (value, self->selected_point);

      wm_mark_value_move_point (value, self->selected_point,
                                (WmPoint) { from.x + step.x, from.y + step.y }, width,
                                height);
    }
  else
    wm_mark_value_move (value, step.x, step.y, width, height);
  edit_selected (self, value);
}

static void
on_move (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  move (user_data, parameter, NUDGE);
}

static void
on_move_far (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  move (user_data, parameter, NUDGE_FAR);
}

static void
step_point (WmCanvas *self, int step)
{
  WmMarkItem *item = selected_item (self);
  int n;

  if (item == NULL)
    return;
  /* All of it, then each point in turn. */
  n = wm_mark_view_get_value (item->view)->points->len + 1;
  self->selected_point = (self->selected_point + 1 + step + n) % n - 1;
  wm_canvas_place_loupe (self);
  gtk_widget_queue_allocate (GTK_WIDGET (self));
}

static void
on_next_point (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  step_point (user_data, 1);
}

static void
on_previous_point (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  step_point (user_data, -1);
}

static const GActionEntry entries[] = {
  { "zoom-in", on_zoom_in },
  { "zoom-out", on_zoom_out },
  { "fit", on_fit },
  { "true-pixels", on_true_pixels },
  { "turn-left", on_turn_left },
  { "turn-right", on_turn_right },
  { "loupe", NULL, NULL, "false", on_loupe_state },
  { "tool", NULL, "s", "'spot'", on_tool_state },
  { "place", on_place },
  { "finish", on_finish },
  { "cancel", on_cancel },
  { "remove", on_remove },
  { "unpin", on_unpin },
  { "menu", on_menu },
  { "move", on_move, "s" },
  { "move-far", on_move_far, "s" },
  { "next-point", on_next_point },
  { "previous-point", on_previous_point },
};

static void
enable (WmCanvas *self, const char *name, gboolean enabled)
{
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (self->actions), name);

  g_simple_action_set_enabled (G_SIMPLE_ACTION (action), enabled);
}

void
wm_canvas_update_actions (WmCanvas *self)
{
  static const char *const looking[] = { "zoom-in", "zoom-out", "fit",     "true-pixels",
                                         "loupe",   "move",     "move-far" };
  static const char *const on_mark[] = { "unpin", "menu", "next-point",
                                         "previous-point" };
  gboolean has_photo = self->layer != NULL;
  gboolean marking = has_photo && self->mode == WM_CANVAS_MARKING;
  gboolean has_mark = marking && selected_item (self) != NULL;
  gboolean drawing = wm_canvas_is_drawing (self);

  for (guint i = 0; i < G_N_ELEMENTS (looking); i++)
    enable (self, looking[i], has_photo);
  for (guint i = 0; i < G_N_ELEMENTS (on_mark); i++)
    enable (self, on_mark[i], has_mark);
  enable (self, "turn-left", marking);
  enable (self, "turn-right", marking);
  enable (self, "tool", marking);
  enable (self, "place", marking);
  enable (self, "finish", drawing);
  enable (self, "remove", drawing || has_mark);
  enable (self, "cancel", drawing || !wm_id_is_none (&self->selected));
}

void
wm_canvas_init_actions (WmCanvas *self)
{
  self->actions = g_simple_action_group_new ();
  g_action_map_add_action_entries (G_ACTION_MAP (self->actions), entries,
                                   G_N_ELEMENTS (entries), self);
  gtk_widget_insert_action_group (GTK_WIDGET (self), "canvas",
                                  G_ACTION_GROUP (self->actions));
  wm_canvas_update_actions (self);
}

/* ---- focus ------------------------------------------------------------------ */

static int
focused_index (WmCanvas *self)
{
  for (guint i = 0; i < self->items->len; i++)
    {
      WmMarkItem *item = g_ptr_array_index (self->items, i);

      if (gtk_widget_has_focus (GTK_WIDGET (item->view)))
        return i;
    }
  return -1;
}

/* Tab goes from the photo over its marks in the order of their numbers. */
gboolean
wm_canvas_move_focus (GtkWidget *widget, GtkDirectionType direction)
{
  WmCanvas *self = WM_CANVAS (widget);
  int step = direction == GTK_DIR_TAB_FORWARD ? 1 : -1;
  int last = (int)self->items->len - 1;
  int at = focused_index (self);

  if ((direction != GTK_DIR_TAB_FORWARD && direction != GTK_DIR_TAB_BACKWARD)
      || self->mode == WM_CANVAS_STILL)
    return FALSE;
  if (!gtk_widget_has_focus (widget) && at < 0)
    {
      /* Coming in: by Tab to the photo first, by Shift+Tab to the last mark. */
      if (step > 0 || last < 0)
        return gtk_widget_grab_focus (widget);
      at = last + 1;
    }
  else if (at < 0)
    at = step > 0 ? -1 : -2;

  for (at += step; at >= 0 && at <= last; at += step)
    {
      WmMarkItem *item = g_ptr_array_index (self->items, at);

      if (gtk_widget_grab_focus (GTK_WIDGET (item->view)))
        return TRUE;
    }
  /* Back over the first mark: the photo itself, unless it had the focus. */
  return at == -1 && step < 0 && !gtk_widget_has_focus (widget)
         && gtk_widget_grab_focus (widget);
}
