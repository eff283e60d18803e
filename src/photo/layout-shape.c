/* layout-shape.c: distances from discs to forms, boxes and leaders
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/layout-shape.h"

#include "photo/mark-look.h"

double
wm_segment_distance (WmPoint a, WmPoint b, WmPoint at)
{
  double dx = b.x - a.x, dy = b.y - a.y;
  double length2 = dx * dx + dy * dy;
  double t = length2 > 0 ? ((at.x - a.x) * dx + (at.y - a.y) * dy) / length2 : 0;

  t = CLAMP (t, 0, 1);
  return wm_distance ((WmPoint) { a.x + t * dx, a.y + t * dy }, at);
}

static double
turn (WmPoint a, WmPoint b, WmPoint c)
{
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

gboolean
wm_segments_cross (WmPoint a, WmPoint b, WmPoint c, WmPoint d)
{
  return turn (a, b, c) * turn (a, b, d) < 0 && turn (c, d, a) * turn (c, d, b) < 0;
}

double
wm_box_distance (const WmLayoutBox *box, WmPoint at)
{
  double dx = MAX (MAX (box->x - at.x, at.x - box->x - box->width), 0);
  double dy = MAX (MAX (box->y - at.y, at.y - box->y - box->height), 0);

  return sqrt (dx * dx + dy * dy);
}

/* Even-odd rule: how many edges a ray to the right crosses. */
static gboolean
is_inside (const WmLayoutMark *mark, WmPoint at)
{
  gboolean inside = FALSE;

  for (gsize i = 0, j = mark->n_points - 1; i < mark->n_points; j = i++)
    {
      WmPoint a = mark->points[i], b = mark->points[j];

      if ((a.y > at.y) != (b.y > at.y)
          && at.x < (b.x - a.x) * (at.y - a.y) / (b.y - a.y) + a.x)
        inside = !inside;
    }

  return inside;
}

double
wm_form_distance (const WmLayoutMark *mark, WmPoint at)
{
  gsize n = mark->n_points;
  gboolean is_closed = mark->shape == WM_SHAPE_OUTLINE && n > 2;
  double least = wm_distance (mark->points[0], at);

  if (is_closed && is_inside (mark, at))
    return 0;

  for (gsize i = 1; i < n + (is_closed ? 1 : 0); i++)
    least =
        MIN (least, wm_segment_distance (mark->points[i - 1], mark->points[i % n], at));
  return least;
}

WmLayoutBox
wm_form_bounds (const WmLayoutMark *mark)
{
  double left = mark->points[0].x, right = left;
  double top = mark->points[0].y, bottom = top;

  for (gsize i = 1; i < mark->n_points; i++)
    {
      left = MIN (left, mark->points[i].x);
      right = MAX (right, mark->points[i].x);
      top = MIN (top, mark->points[i].y);
      bottom = MAX (bottom, mark->points[i].y);
    }

  return (WmLayoutBox) { left, top, right - left, bottom - top };
}

WmPoint
wm_form_tip (const WmLayoutMark *mark, WmPoint disc)
{
  WmMarkLook look = {
    .shape = mark->shape, .points = mark->points, .n_points = mark->n_points, .disc = disc
  };

  return wm_mark_tip (&look);
}
