/* canvas-draft.c: a line or outline while it is being drawn
 *
 * Clicks add points; a double click or Enter ends the form (a span, or the scale: its
 * last point), Escape forgets it, Backspace takes the last point back.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/canvas/canvas-private.h"

#include <glib/gi18n.h>

gboolean
wm_canvas_is_drawing (WmCanvas *self)
{
  return self->draft_points != NULL;
}

gboolean
wm_canvas_tool_measures (WmCanvas *self)
{
  return self->tool == WM_SHAPE_SPAN || self->tool_is_bare;
}

guint
wm_canvas_tool_points (WmCanvas *self)
{
  if (self->tool == WM_SHAPE_SPAN)
    return 2;
  return self->tool_is_bare ? 4 : 0;
}

/* The form so far, with the pointer as its next point. */
static void
show_draft (WmCanvas *self)
{
  guint n = self->draft_points->len;
  WmShape shape = self->tool == WM_SHAPE_SPAN                ? WM_SHAPE_SPAN
                  : self->tool == WM_SHAPE_OUTLINE && n >= 2 ? WM_SHAPE_OUTLINE
                                                             : WM_SHAPE_LINE;
  g_autoptr (WmMarkValue) value =
      wm_mark_value_new (shape, (const WmPoint *)self->draft_points->data, n);

  g_array_append_val (value->points, self->draft_pointer);
  value->is_unconfirmed = TRUE;
  value->is_measuring = value->is_bare = wm_canvas_tool_measures (self);
  value->name = g_strdup (_ ("New mark"));
  if (self->draft == NULL)
    {
      self->draft = wm_mark_view_new (value);
      gtk_widget_set_focusable (GTK_WIDGET (self->draft), FALSE);
      gtk_widget_insert_before (GTK_WIDGET (self->draft), GTK_WIDGET (self),
                                GTK_WIDGET (self->loupe));
    }
  else
    {
      wm_mark_view_set_value (self->draft, value);
      gtk_widget_set_focusable (GTK_WIDGET (self->draft), FALSE);
    }
  gtk_widget_queue_allocate (GTK_WIDGET (self));
}

void
wm_canvas_draft_add (WmCanvas *self, WmPoint photo)
{
  if (self->draft_points == NULL)
    self->draft_points = g_array_new (FALSE, FALSE, sizeof (WmPoint));
  g_array_append_val (self->draft_points, photo);
  self->draft_pointer = photo;
  if (self->draft_points->len == wm_canvas_tool_points (self))
    {
      wm_canvas_draft_finish (self);
      return;
    }
  show_draft (self);
  wm_canvas_update_actions (self);
}

void
wm_canvas_draft_follow (WmCanvas *self, WmPoint photo)
{
  if (self->draft_points == NULL)
    return;
  self->draft_pointer = (WmPoint) { CLAMP (photo.x, 0, self->view.photo_width),
                                    CLAMP (photo.y, 0, self->view.photo_height) };
  show_draft (self);
}

void
wm_canvas_draft_drop_point (WmCanvas *self)
{
  if (self->draft_points == NULL)
    return;
  g_array_set_size (self->draft_points, self->draft_points->len - 1);
  if (self->draft_points->len == 0)
    wm_canvas_draft_cancel (self);
  else
    show_draft (self);
}

void
wm_canvas_draft_cancel (WmCanvas *self)
{
  g_clear_pointer (&self->draft_points, g_array_unref);
  if (self->draft != NULL)
    gtk_widget_unparent (GTK_WIDGET (self->draft));
  self->draft = NULL;
  wm_canvas_update_actions (self);
}

void
wm_canvas_draft_finish (WmCanvas *self)
{
  g_autoptr (WmMarkValue) value = NULL;

  if (self->draft_points == NULL
      || self->draft_points->len < MAX (wm_mark_value_least_points (self->tool),
                                        wm_canvas_tool_points (self)))
    return;
  value = wm_mark_value_new (self->tool, (const WmPoint *)self->draft_points->data,
                             self->draft_points->len);
  value->is_bare = self->tool_is_bare;
  wm_canvas_draft_cancel (self);
  wm_canvas_emit (self, WM_CANVAS_MARK_ADDED, value);
}

void
wm_canvas_draft_place (WmCanvas *self)
{
  /* Round the middle of the view, in shares of its shorter side: large enough to be
   * seen whole, small enough that every point is near. */
  static const WmPoint spread[] = {
    { -0.1, -0.07 }, { 0.1, -0.07 }, { 0.1, 0.07 }, { -0.1, 0.07 }
  };
  static const WmPoint across[] = { { -0.1, 0 }, { 0.1, 0 } };
  gboolean is_line = self->tool == WM_SHAPE_LINE || self->tool == WM_SHAPE_SPAN;
  guint n = self->tool == WM_SHAPE_SPOT ? 1 : is_line ? 2 : G_N_ELEMENTS (spread);
  double side = MIN (self->view.view_width, self->view.view_height);
  g_autoptr (WmMarkValue) value = NULL;
  WmPoint points[G_N_ELEMENTS (spread)];

  for (guint i = 0; i < n; i++)
    {
      WmPoint off = n == 1 ? (WmPoint) { 0, 0 } : is_line ? across[i] : spread[i];
      WmPoint photo = wm_view_transform_to_photo (
          &self->view, (WmPoint) { self->view.view_width / 2 + off.x * side,
                                   self->view.view_height / 2 + off.y * side });

      points[i] = (WmPoint) { CLAMP (photo.x, 0, self->view.photo_width),
                              CLAMP (photo.y, 0, self->view.photo_height) };
    }
  value = wm_mark_value_new (self->tool, points, n);
  value->is_bare = self->tool_is_bare;
  wm_canvas_draft_cancel (self);
  wm_canvas_emit (self, WM_CANVAS_MARK_ADDED, value);
}
