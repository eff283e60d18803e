/* canvas-marks.c: the marks of the canvas: widgets, discs, choosing
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/canvas/canvas-private.h"

#include <math.h>

/* Look book, "Motion": 90 ms for a disc finding room. */
#define DISC_US 90000

/* ---- placing --------------------------------------------------------------- */

static gboolean
is_same_id (const WmId *a, const WmId *b)
{
  return !wm_id_is_none (a) && wm_id_equal (a, b);
}

/* The mark's points in the view, appended to @points. */
static void
points_to_view (WmCanvas *self, const WmMarkValue *value, GArray *points)
{
  for (guint i = 0; i < value->points->len; i++)
    {
      WmPoint p = wm_view_transform_to_view (&self->view, wm_mark_value_point (value, i));

      g_array_append_val (points, p);
    }
}

static gboolean
is_in_view (WmCanvas *self, const WmPoint *points, guint n_points)
{
  double left, right;

  wm_canvas_get_part (self, &left, &right);
  for (guint i = 0; i < n_points; i++)
    if (points[i].x >= left && points[i].y >= 0 && points[i].x <= right
        && points[i].y <= self->view.view_height)
      return TRUE;
  return FALSE;
}

/* The parts of the view that are not this canvas's. */
static void
cover_other_part (WmCanvas *self, GArray *boxes)
{
  double left, right;
  WmLayoutBox box = { 0, 0, 0, self->view.view_height };

  wm_canvas_get_part (self, &left, &right);
  box.width = left;
  if (left > 0)
    g_array_append_val (boxes, box);
  box.x = right;
  box.width = self->view.view_width - right;
  if (box.width > 0)
    g_array_append_val (boxes, box);
}

static GArray *
find_covers (WmCanvas *self)
{
  GArray *boxes = g_array_new (FALSE, FALSE, sizeof (WmLayoutBox));

  cover_other_part (self, boxes);
  for (guint i = 0; i < self->covers->len; i++)
    {
      GtkWidget *cover = g_ptr_array_index (self->covers, i);
      graphene_rect_t bounds;
      WmLayoutBox box;

      if (!gtk_widget_get_mapped (cover)
          || !gtk_widget_compute_bounds (cover, GTK_WIDGET (self), &bounds))
        continue;
      box = (WmLayoutBox) { bounds.origin.x, bounds.origin.y, bounds.size.width,
                            bounds.size.height };
      g_array_append_val (boxes, box);
    }
  return boxes;
}

/* Finds the discs' places, for the marks that are in sight. @points holds all points in
 * the view, @starts where each mark's begin. */
static void
lay_out (WmCanvas *self, GArray *points, const guint *starts)
{
  g_autofree WmLayoutMark *marks = g_new0 (WmLayoutMark, self->items->len + 1);
  g_autofree WmMarkItem **laid = g_new0 (WmMarkItem *, self->items->len + 1);
  g_autoptr (GArray) covers = find_covers (self);
  guint8 metal[WM_METAL_COLUMNS * WM_METAL_ROWS];
  WmLayoutView view = { .width = self->view.view_width,
                        .height = self->view.view_height,
                        .radius = self->radius,
                        .taken = (const WmLayoutBox *)covers->data,
                        .n_taken = covers->len };
  guint n = 0;

  if (wm_canvas_fill_metal (self, metal))
    {
      view.metal = metal;
      view.metal_columns = WM_METAL_COLUMNS;
      view.metal_rows = WM_METAL_ROWS;
    }
  for (guint i = 0; i < self->items->len; i++)
    {
      WmMarkItem *item = g_ptr_array_index (self->items, i);
      const WmMarkValue *value = wm_mark_view_get_value (item->view);
      const WmPoint *own = &g_array_index (points, WmPoint, starts[i]);
      WmLayoutMark *mark = &marks[n];

      if (value->is_bare || !is_in_view (self, own, value->points->len))
        continue;
      mark->severity = value->severity;
      mark->shape = value->shape;
      mark->points = own;
      mark->n_points = value->points->len;
      mark->has_disc = item->has_disc || value->is_pinned;
      mark->is_pinned = value->is_pinned;
      mark->disc = value->is_pinned ? wm_view_transform_to_view (&self->view, value->pin)
                                    : (WmPoint) { own[0].x + item->offset.x,
                                                  own[0].y + item->offset.y };
      laid[n++] = item;
    }
  if (n == 0)
    return;

  wm_mark_layout (marks, n, &view);
  for (guint i = 0; i < n; i++)
    {
      laid[i]->offset = (WmPoint) { marks[i].disc.x - marks[i].points[0].x,
                                    marks[i].disc.y - marks[i].points[0].y };
      if (!laid[i]->has_disc || marks[i].is_pinned)
        laid[i]->shown = laid[i]->offset;
      laid[i]->has_disc = TRUE;
    }
}

static gboolean
on_disc_tick (GtkWidget *widget, GdkFrameClock *clock, gpointer user_data)
{
  WmCanvas *self = WM_CANVAS (widget);
  double passed_us = gdk_frame_clock_get_frame_time (clock) - self->discs_began_us;
  double part = CLAMP (passed_us / DISC_US, 0, 1);
  gboolean moving = FALSE;

  self->discs_began_us = gdk_frame_clock_get_frame_time (clock);
  for (guint i = 0; i < self->items->len; i++)
    {
      WmMarkItem *item = g_ptr_array_index (self->items, i);
      double dx = item->offset.x - item->shown.x, dy = item->offset.y - item->shown.y;

      /* Ease out: a frame's share of the way twice over, then the last half pixel. */
      if (hypot (dx, dy) < 0.5 || part >= 0.5)
        item->shown = item->offset;
      else
        {
          item->shown.x += dx * 2 * part;
          item->shown.y += dy * 2 * part;
          moving = TRUE;
        }
    }
  gtk_widget_queue_allocate (widget);
  if (moving)
    return G_SOURCE_CONTINUE;
  self->disc_tick = 0;
  return G_SOURCE_REMOVE;
}

static void
start_discs (WmCanvas *self)
{
  gboolean moving = FALSE;

  for (guint i = 0; i < self->items->len; i++)
    {
      WmMarkItem *item = g_ptr_array_index (self->items, i);

      if (hypot (item->offset.x - item->shown.x, item->offset.y - item->shown.y) < 0.5
          || self->hold != WM_HOLD_NONE || !wm_canvas_is_animated (self))
        item->shown = item->offset;
      else
        moving = TRUE;
    }
  if (!moving || self->disc_tick != 0)
    return;
  self->discs_began_us =
      gdk_frame_clock_get_frame_time (gtk_widget_get_frame_clock (GTK_WIDGET (self)));
  self->disc_tick =
      gtk_widget_add_tick_callback (GTK_WIDGET (self), on_disc_tick, NULL, NULL);
}

static guint
state_of (WmCanvas *self, WmMarkItem *item)
{
  const WmMarkValue *value = wm_mark_view_get_value (item->view);
  guint state = WM_MARK_PLAIN;

  if (is_same_id (&value->id, &self->selected)
      || gtk_widget_has_focus (GTK_WIDGET (item->view)))
    state |= WM_MARK_SELECTED;
  if (is_same_id (&value->id, &self->hovered))
    state |= WM_MARK_HOVERED;
  return state;
}

static void
place_view (WmCanvas *self, WmMarkView *view, const WmPoint *points, WmPoint disc,
            guint state)
{
  GtkAllocation box;

  wm_mark_view_place (view, points, disc, self->radius, state, self->view.view_width,
                      self->view.view_height);
  wm_mark_view_get_allocation_box (view, &box);
  gtk_widget_size_allocate (GTK_WIDGET (view), &box, -1);
}

static void
place_draft (WmCanvas *self)
{
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (WmPoint));
  WmPoint disc;

  if (self->draft == NULL)
    return;
  points_to_view (self, wm_mark_view_get_value (self->draft), points);
  /* The disc of a form in the making waits beside its first point. */
  disc = g_array_index (points, WmPoint, 0);
  disc.x -= 3.5 * self->radius;
  disc.y -= 3.5 * self->radius;
  place_view (self, self->draft, (const WmPoint *)points->data, disc, WM_MARK_SELECTED);
}

void
wm_canvas_place_marks (WmCanvas *self)
{
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (WmPoint));
  g_autofree guint *starts = g_new0 (guint, self->items->len + 1);

  for (guint i = 0; i < self->items->len; i++)
    {
      WmMarkItem *item = g_ptr_array_index (self->items, i);

      starts[i] = points->len;
      points_to_view (self, wm_mark_view_get_value (item->view), points);
    }
  if (self->items->len > 0)
    lay_out (self, points, starts);
  start_discs (self);

  for (guint i = 0; i < self->items->len; i++)
    {
      WmMarkItem *item = g_ptr_array_index (self->items, i);
      const WmPoint *own = &g_array_index (points, WmPoint, starts[i]);
      WmPoint disc = { own[0].x + item->shown.x, own[0].y + item->shown.y };

      if (wm_canvas_has_part (self)
          || !gtk_widget_get_child_visible (GTK_WIDGET (item->view)))
        gtk_widget_set_child_visible (
            GTK_WIDGET (item->view),
            !wm_canvas_has_part (self)
                || is_in_view (self, own,
                               wm_mark_view_get_value (item->view)->points->len));
      place_view (self, item->view, own, disc, state_of (self, item));
    }
  place_draft (self);
}

/* ---- the set of marks ------------------------------------------------------ */

static void
item_free (gpointer data)
{
  WmMarkItem *item = data;

  gtk_widget_unparent (GTK_WIDGET (item->view));
  g_free (item);
}

WmMarkItem *
wm_canvas_find_item (WmCanvas *self, const WmId *id)
{
  for (guint i = 0; i < self->items->len; i++)
    {
      WmMarkItem *item = g_ptr_array_index (self->items, i);

      if (is_same_id (&wm_mark_view_get_value (item->view)->id, id))
        return item;
    }
  return NULL;
}

static void
on_mark_focused (GtkWidget *view, GParamSpec *pspec, WmCanvas *self)
{
  if (gtk_widget_has_focus (view))
    wm_canvas_choose (self, &wm_mark_view_get_value (WM_MARK_VIEW (view))->id);
}

static WmMarkItem *
add_item (WmCanvas *self, const WmMarkValue *value)
{
  WmMarkItem *item = g_new0 (WmMarkItem, 1);

  item->view = wm_mark_view_new (value);
  g_signal_connect_object (item->view, "notify::has-focus", G_CALLBACK (on_mark_focused),
                           self, 0);
  gtk_widget_insert_before (GTK_WIDGET (item->view), GTK_WIDGET (self),
                            GTK_WIDGET (self->loupe));
  return item;
}

void
wm_canvas_set_marks (WmCanvas *self, GPtrArray *values)
{
  g_autoptr (GPtrArray) old = g_steal_pointer (&self->items);
  gboolean had_focus = gtk_widget_get_focus_child (GTK_WIDGET (self)) != NULL;

  self->items = g_ptr_array_new_with_free_func (item_free);
  for (guint i = 0; i < values->len; i++)
    {
      const WmMarkValue *value = g_ptr_array_index (values, i);
      WmMarkItem *item = NULL;

      for (guint k = 0; k < old->len && item == NULL; k++)
        {
          WmMarkItem *had = g_ptr_array_index (old, k);

          if (wm_id_equal (&wm_mark_view_get_value (had->view)->id, &value->id))
            {
              item = g_ptr_array_steal_index (old, k);
              wm_mark_view_set_value (item->view, value);
            }
        }
      g_ptr_array_add (self->items, item != NULL ? item : add_item (self, value));
    }
  /* The mark that had the keyboard is gone: the photo keeps it. */
  g_ptr_array_set_size (old, 0);
  if (had_focus && gtk_widget_get_focus_child (GTK_WIDGET (self)) == NULL)
    gtk_widget_grab_focus (GTK_WIDGET (self));
  if (wm_canvas_find_item (self, &self->selected) == NULL)
    self->selected_point = -1;
  wm_canvas_update_actions (self);
  gtk_widget_queue_allocate (GTK_WIDGET (self));
}

void
wm_canvas_show_value (WmCanvas *self, WmMarkItem *item, const WmMarkValue *value)
{
  wm_mark_view_set_value (item->view, value);
  gtk_widget_queue_allocate (GTK_WIDGET (self));
}

WmMarkItem *
wm_canvas_item_at (WmCanvas *self, WmPoint at, double slack, WmMarkPart *part,
                   int *vertex)
{
  WmMarkItem *found = NULL;

  *part = WM_MARK_PART_NONE;
  /* A disc goes before any leader that runs past it; then the last drawn first. */
  for (guint i = self->items->len; i-- > 0;)
    {
      WmMarkItem *item = g_ptr_array_index (self->items, i);
      int at_vertex = -1;
      WmMarkPart at_part =
          wm_mark_part_at (wm_mark_view_get_look (item->view), at, slack, &at_vertex);

      if (at_part == WM_MARK_PART_NONE || wm_mark_view_get_value (item->view)->is_ghost)
        continue;
      if (found != NULL && at_part >= *part)
        continue;
      found = item;
      *part = at_part;
      *vertex = at_vertex;
    }
  return found;
}

void
wm_canvas_set_selected (WmCanvas *self, const WmId *id)
{
  WmId wanted = id != NULL ? *id : WM_ID_NONE;

  if (wm_id_equal (&wanted, &self->selected))
    return;
  self->selected = wanted;
  self->selected_point = -1;
  if (self->loupe_stands_off)
    wm_canvas_place_loupe (self);
  for (guint i = 0; i < self->items->len; i++)
    {
      WmMarkItem *item = g_ptr_array_index (self->items, i);
      const WmMarkValue *value = wm_mark_view_get_value (item->view);

      gtk_accessible_update_state (
          GTK_ACCESSIBLE (item->view), GTK_ACCESSIBLE_STATE_PRESSED,
          is_same_id (&value->id, &wanted) ? GTK_ACCESSIBLE_TRISTATE_TRUE
                                           : GTK_ACCESSIBLE_TRISTATE_FALSE,
          -1);
    }
  wm_canvas_update_actions (self);
  gtk_widget_queue_allocate (GTK_WIDGET (self));
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

const WmId *
wm_canvas_get_selected (WmCanvas *self)
{
  return &self->selected;
}

void
wm_canvas_choose (WmCanvas *self, const WmId *id)
{
  WmId wanted = id != NULL ? *id : WM_ID_NONE;

  if (wm_id_equal (&wanted, &self->selected))
    return;
  wm_canvas_set_selected (self, &wanted);
  wm_canvas_emit (self, WM_CANVAS_MARK_CHOSEN, &wanted);
}

void
wm_canvas_show_mark (WmCanvas *self, const WmId *id)
{
  WmMarkItem *item = wm_canvas_find_item (self, id);
  g_autoptr (GArray) points = NULL;
  WmPoint p;

  if (item == NULL || self->view.view_width < 1)
    return;
  points = g_array_new (FALSE, FALSE, sizeof (WmPoint));
  points_to_view (self, wm_mark_view_get_value (item->view), points);
  if (is_in_view (self, (const WmPoint *)points->data, points->len))
    return;
  p = g_array_index (points, WmPoint, 0);
  wm_view_transform_pan (&self->view, self->view.view_width / 2 - p.x,
                         self->view.view_height / 2 - p.y);
  wm_canvas_view_moved (self);
}

static void
on_cover_gone (gpointer data, GObject *cover)
{
  g_ptr_array_remove_fast (data, cover);
}

void
wm_canvas_add_cover (WmCanvas *self, GtkWidget *cover)
{
  g_ptr_array_add (self->covers, cover);
  g_object_weak_ref (G_OBJECT (cover), on_cover_gone, self->covers);
}

void
wm_canvas_init_marks (WmCanvas *self)
{
  self->items = g_ptr_array_new_with_free_func (item_free);
  self->covers = g_ptr_array_new ();
  self->radius = WM_MARK_R_PHOTO;
  self->selected_point = -1;
}

void
wm_canvas_clear_marks (WmCanvas *self)
{
  wm_canvas_draft_cancel (self);
  g_ptr_array_set_size (self->items, 0);
  g_clear_pointer (&self->detail, g_free);
  self->detail_columns = self->detail_rows = 0;
  self->selected = self->hovered = WM_ID_NONE;
  self->selected_point = -1;
}

void
wm_canvas_dispose_marks (WmCanvas *self)
{
  if (self->items == NULL)
    return;
  if (self->disc_tick != 0)
    gtk_widget_remove_tick_callback (GTK_WIDGET (self), self->disc_tick);
  self->disc_tick = 0;
  wm_canvas_clear_marks (self);
  for (guint i = 0; i < self->covers->len; i++)
    g_object_weak_unref (g_ptr_array_index (self->covers, i), on_cover_gone,
                         self->covers);
  g_clear_pointer (&self->covers, g_ptr_array_unref);
  g_clear_pointer (&self->items, g_ptr_array_unref);
  g_clear_pointer (&self->held_value, wm_mark_value_free);
}
