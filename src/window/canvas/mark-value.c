/* mark-value.c: a mark as the canvas has it, and what a hand can do to it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/canvas/mark-value.h"

#include <string.h>

WmMarkValue *
wm_mark_value_new (WmShape shape, const WmPoint *points, guint n_points)
{
  WmMarkValue *self = g_new0 (WmMarkValue, 1);

  self->shape = shape;
  self->points = g_array_new (FALSE, FALSE, sizeof (WmPoint));
  g_array_append_vals (self->points, points, n_points);
  return self;
}

WmMarkValue *
wm_mark_value_copy (const WmMarkValue *self)
{
  WmMarkValue *copy = g_memdup2 (self, sizeof *self);

  copy->points = g_array_copy (self->points);
  copy->name = g_strdup (self->name);
  copy->value = g_strdup (self->value);
  return copy;
}

void
wm_mark_value_free (WmMarkValue *self)
{
  if (self == NULL)
    return;
  g_array_unref (self->points);
  g_free (self->name);
  g_free (self->value);
  g_free (self);
}

gboolean
wm_mark_value_equal (const WmMarkValue *a, const WmMarkValue *b)
{
  return wm_id_equal (&a->id, &b->id) && a->shape == b->shape
         && a->severity == b->severity && a->number == b->number
         && a->is_ghost == b->is_ghost && a->is_unconfirmed == b->is_unconfirmed
         && a->is_pinned == b->is_pinned && a->is_measuring == b->is_measuring
         && a->is_bare == b->is_bare && g_strcmp0 (a->value, b->value) == 0
         && (!a->is_pinned || (a->pin.x == b->pin.x && a->pin.y == b->pin.y))
         && a->points->len == b->points->len
         && memcmp (a->points->data, b->points->data, a->points->len * sizeof (WmPoint))
                == 0
         && g_strcmp0 (a->name, b->name) == 0;
}

guint
wm_mark_value_least_points (WmShape shape)
{
  static const guint least[] = {
    [WM_SHAPE_SPOT] = 1, [WM_SHAPE_LINE] = 2, [WM_SHAPE_OUTLINE] = 3, [WM_SHAPE_SPAN] = 2
  };

  return least[shape];
}

WmPoint
wm_mark_value_point (const WmMarkValue *self, guint index)
{
  return g_array_index (self->points, WmPoint, index);
}

void
wm_mark_value_move (WmMarkValue *self, double dx, double dy, double width, double height)
{
  double left = width, top = height, right = 0, bottom = 0;

  for (guint i = 0; i < self->points->len; i++)
    {
      WmPoint p = wm_mark_value_point (self, i);

      left = MIN (left, p.x);
      right = MAX (right, p.x);
      top = MIN (top, p.y);
      bottom = MAX (bottom, p.y);
    }
  /* A form that already reaches outside may come in, but go no further out. */
  dx = CLAMP (dx, MIN (-left, 0), MAX (width - right, 0));
  dy = CLAMP (dy, MIN (-top, 0), MAX (height - bottom, 0));

  for (guint i = 0; i < self->points->len; i++)
    {
      g_array_index (self->points, WmPoint, i).x += dx;
      g_array_index (self->points, WmPoint, i).y += dy;
    }
  if (self->is_pinned)
    {
      self->pin.x += dx;
      self->pin.y += dy;
    }
}

void
wm_mark_value_move_point (WmMarkValue *self, guint index, WmPoint to, double width,
                          double height)
{
  g_return_if_fail (index < self->points->len);

  g_array_index (self->points, WmPoint, index) =
      (WmPoint) { CLAMP (to.x, 0, width), CLAMP (to.y, 0, height) };
}

gboolean
wm_mark_value_add_point (WmMarkValue *self, guint index, WmPoint at)
{
  if (self->shape == WM_SHAPE_SPOT || self->shape == WM_SHAPE_SPAN)
    return FALSE;
  g_array_insert_val (self->points, MIN (index + 1, self->points->len), at);
  return TRUE;
}

gboolean
wm_mark_value_remove_point (WmMarkValue *self, guint index)
{
  if (index >= self->points->len
      || self->points->len <= wm_mark_value_least_points (self->shape))
    return FALSE;
  g_array_remove_index (self->points, index);
  return TRUE;
}

void
wm_mark_value_pin (WmMarkValue *self, WmPoint disc)
{
  self->is_pinned = TRUE;
  self->pin = disc;
}

void
wm_mark_value_unpin (WmMarkValue *self)
{
  self->is_pinned = FALSE;
}
