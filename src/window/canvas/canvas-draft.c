/* canvas-draft.c: a line or outline while it is being drawn
 *
 * Clicks add points; a double click or Enter ends the form, Escape forgets it,
 * Backspace takes the last point back.
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

/* The form so far, with the pointer as its next point. */
static void
show_draft (WmCanvas *self)
{
  guint n = self->draft_points->len;
  WmShape shape =
      self->tool == WM_SHAPE_OUTLINE && n >= 2 ? WM_SHAPE_OUTLINE : WM_SHAPE_LINE;
  g_autoptr (WmMarkValue) value =
      wm_mark_value_new (shape, (const WmPoint *)self->draft_points->data, n);

  g_array_append_val (value->points, self->draft_pointer);
  value->is_unconfirmed = TRUE;
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
      || self->draft_points->len < wm_mark_value_least_points (self->tool))
    return;
  value = wm_mark_value_new (self->tool, (const WmPoint *)self->draft_points->data,
                             self->draft_points->len);
  wm_canvas_draft_cancel (self);
  wm_canvas_emit (self, WM_CANVAS_MARK_ADDED, value);
}
