/* mark-look.c: measures and places of a mark, without drawing
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/mark-look.h"

#include <math.h>

/* Look book, section 3. */
const WmColour wm_mark_edge = { 0x1A / 255.0, 0x1A / 255.0, 0x1A / 255.0 };
const WmColour wm_mark_halo = { 1, 1, 1 };
const WmColour wm_mark_gauge = { 0x56 / 255.0, 0xB4 / 255.0, 0xE9 / 255.0 };
const WmColour wm_mark_plate = { 0x1E / 255.0, 0x1E / 255.0, 0x1E / 255.0 };

/* Yellow and vermilion of the Okabe-Ito palette between white and black. */
static const WmColour fills[] = {
  [WM_SEVERITY_SOUND] = { 1, 1, 1 },
  [WM_SEVERITY_WATCH] = { 0xF0 / 255.0, 0xE4 / 255.0, 0x42 / 255.0 },
  [WM_SEVERITY_REPAIR] = { 0xD5 / 255.0, 0x5E / 255.0, 0x00 / 255.0 },
  [WM_SEVERITY_NO_WEAR] = { 0, 0, 0 }
};

/* L* 100, 80, 53, 0. */
static const WmColour grey_fills[] = {
  [WM_SEVERITY_SOUND] = { 1, 1, 1 },
  [WM_SEVERITY_WATCH] = { 0xC6 / 255.0, 0xC6 / 255.0, 0xC6 / 255.0 },
  [WM_SEVERITY_REPAIR] = { 0x7F / 255.0, 0x7F / 255.0, 0x7F / 255.0 },
  [WM_SEVERITY_NO_WEAR] = { 0, 0, 0 }
};

void
wm_mark_style_init (WmMarkStyle *style)
{
  *style = (WmMarkStyle) { .px = 1.0 };
}

static gboolean
has_stone (WmSeverity severity)
{
  return severity >= WM_SEVERITY_SOUND && severity <= WM_SEVERITY_NO_WEAR;
}

WmColour
wm_severity_fill (WmSeverity severity, gboolean grey)
{
  if (!has_stone (severity))
    return wm_mark_halo;

  return grey ? grey_fills[severity] : fills[severity];
}

WmColour
wm_severity_number_colour (WmSeverity severity, gboolean grey)
{
  static const WmColour black = { 0, 0, 0 };

  return severity == WM_SEVERITY_NO_WEAR ? wm_mark_halo : black;
}

int
wm_severity_claws (WmSeverity severity, double angles[4])
{
  static const struct
  {
    int count;
    double angles[4];
  } claws[] = { [WM_SEVERITY_SOUND] = { 4, { 45, 135, 225, 315 } },
                [WM_SEVERITY_WATCH] = { 3, { 270, 30, 150 } },
                [WM_SEVERITY_REPAIR] = { 2, { 0, 180 } },
                [WM_SEVERITY_NO_WEAR] = { 0, { 0 } } };

  if (!has_stone (severity))
    return 0;

  for (int i = 0; i < claws[severity].count; i++)
    angles[i] = claws[severity].angles[i];
  return claws[severity].count;
}

static double
distance (WmPoint a, WmPoint b)
{
  return hypot (a.x - b.x, a.y - b.y);
}

static WmPoint
nearest_on_edge (WmPoint a, WmPoint b, WmPoint to)
{
  double dx = b.x - a.x, dy = b.y - a.y;
  double length2 = dx * dx + dy * dy;
  double t = length2 > 0 ? ((to.x - a.x) * dx + (to.y - a.y) * dy) / length2 : 0;

  t = CLAMP (t, 0, 1);
  return (WmPoint) { a.x + t * dx, a.y + t * dy };
}

WmPoint
wm_mark_tip (const WmMarkLook *look)
{
  WmPoint tip;

  if (look->n_points == 0)
    return look->disc;
  tip = look->points[0];

  if (look->shape == WM_SHAPE_SPAN && look->n_points >= 2)
    return nearest_on_edge (look->points[0], look->points[1], look->disc);

  for (gsize i = 1; i < look->n_points; i++)
    if (distance (look->points[i], look->disc) < distance (tip, look->disc))
      tip = look->points[i];

  return tip;
}

static void
grow_box (double edges[4], WmPoint at, double by)
{
  edges[0] = MIN (edges[0], at.x - by);
  edges[1] = MIN (edges[1], at.y - by);
  edges[2] = MAX (edges[2], at.x + by);
  edges[3] = MAX (edges[3], at.y + by);
}

void
wm_mark_extents (const WmMarkLook *look, const WmMarkStyle *style, double box[4])
{
  double r = look->radius;
  double edges[4] = { look->disc.x, look->disc.y, look->disc.x, look->disc.y };
  double outline = 1.5 * MAX (WM_MARK_HALO * r, style->px);
  double disc = (WM_MARK_CLAW_OUTER + WM_MARK_CLAW_LINE / 2) * r + outline;
  double form = WM_MARK_FORM_LINE / 2 * r + 2 * outline;

  /* Ring of selection round the disc and the tip (look book: 2.4 px at 1.62 R + 5,
   * 0.62 R or 7 px). */
  if (look->state & WM_MARK_SELECTED)
    {
      disc = MAX (disc, WM_MARK_CLAW_OUTER * r + 8 * style->px);
      form = MAX (form, MAX (0.62 * r, 7 * style->px) + 3 * style->px);
    }
  if (look->state & WM_MARK_UNCONFIRMED)
    form = MAX (form, 0.5 * r + outline);
  if (look->shape == WM_SHAPE_SPAN)
    form = MAX (form, WM_MARK_JAW * r);

  if (look->state & WM_MARK_BARE && look->n_points > 0)
    {
      edges[0] = edges[2] = look->points[0].x;
      edges[1] = edges[3] = look->points[0].y;
      form = MAX (form, WM_MARK_HANDLE * r + 2 * outline);
    }
  else
    grow_box (edges, look->disc, disc);
  for (gsize i = 0; i < look->n_points; i++)
    grow_box (edges, look->points[i], form);

  /* The plate: its text is at most about 20 figures of 0.6 R. */
  if (look->shape == WM_SHAPE_SPAN && look->value != NULL && look->n_points >= 2)
    {
      WmPoint middle = { (look->points[0].x + look->points[1].x) / 2,
                         (look->points[0].y + look->points[1].y) / 2 };

      grow_box (edges, middle, distance (look->points[0], look->points[1]) / 2 + 12 * r);
    }

  box[0] = edges[0];
  box[1] = edges[1];
  box[2] = edges[2] - edges[0];
  box[3] = edges[3] - edges[1];
}

static int
vertex_at (const WmMarkLook *look, WmPoint at, double slack)
{
  int found = -1;
  double best = slack;

  for (gsize i = 0; i < look->n_points; i++)
    if (distance (look->points[i], at) <= best)
      {
        best = distance (look->points[i], at);
        found = (int)i;
      }

  return found;
}

static int
edge_at (const WmMarkLook *look, WmPoint at, double slack)
{
  gsize edges = look->n_points > 0 ? look->n_points - 1 : 0;

  if (look->shape == WM_SHAPE_SPOT)
    return -1;
  if (look->shape == WM_SHAPE_OUTLINE && look->n_points > 2)
    edges++;

  for (gsize i = 0; i < edges; i++)
    {
      WmPoint next = look->points[(i + 1) % look->n_points];

      if (distance (nearest_on_edge (look->points[i], next, at), at) <= slack)
        return (int)i;
    }

  return -1;
}

WmMarkPart
wm_mark_part_at (const WmMarkLook *look, WmPoint at, double slack, int *vertex)
{
  int ignored;
  int *found = vertex != NULL ? vertex : &ignored;

  *found = -1;
  if (!(look->state & WM_MARK_BARE)
      && distance (look->disc, at) <= WM_MARK_RING * look->radius + slack)
    return WM_MARK_PART_DISC;

  *found = vertex_at (look, at, slack + 0.4 * look->radius);
  if (*found >= 0)
    return WM_MARK_PART_VERTEX;

  *found = edge_at (look, at, slack + 0.2 * look->radius);
  if (*found >= 0)
    return WM_MARK_PART_FORM;

  if (look->n_points > 0 && !(look->state & WM_MARK_BARE)
      && distance (nearest_on_edge (look->disc, wm_mark_tip (look), at), at)
             <= slack + WM_MARK_LEADER_LINE * look->radius)
    return WM_MARK_PART_LEADER;

  return WM_MARK_PART_NONE;
}
