/* mark-layout.c: where the discs go
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/mark-layout.h"

#include "photo/layout-shape.h"
#include "photo/mark-look.h"

#include <math.h>

/* Look book, section 4, "Places". */
#define DIRECTIONS 16
static const double distances[] = { 3.5, 5.0, 7.0 };

/* Further out, when those are all taken: a ring each 2 R. */
#define RING_STEP 2.0

/* The last search before giving up: at most so many columns and rows. */
#define GRID 96

/* Metal covered is compared in eighths: less is not worth a longer leader. */
#define METAL_STEPS 8

/* What a disc paints at rest: claw end, half a claw, outline. */
#define PAINT (WM_MARK_CLAW_OUTER + WM_MARK_CLAW_LINE / 2 + WM_MARK_HALO)

/* Vertices of one form from which places are tried; the others only keep clear. */
#define MAX_ANCHORS 8

typedef struct
{
  const WmLayoutView *view;
  WmLayoutMark *marks;
  gsize n_marks;
  WmLayoutBox *bounds; /* of each mark's form */
  gboolean *is_placed; /* whose disc already stands */
  gboolean *is_in_view;
} Layout;

typedef struct
{
  WmPoint disc;
  int crossings;
  int metal;
  double length;
} Place;

gboolean
wm_layout_discs_clear (WmPoint a, WmPoint b, double radius)
{
  return wm_distance (a, b) >= (2 * PAINT + WM_LAYOUT_GAP) * radius;
}

/* How far the disc's paint stays clear of everything; negative: it overlaps. */
static double
clearance (const Layout *layout, gsize index, WmPoint disc, double enough)
{
  double r = layout->view->radius;
  double paint = PAINT * r;
  double least = MIN (MIN (disc.x, layout->view->width - disc.x),
                      MIN (disc.y, layout->view->height - disc.y))
                 - paint;

  for (gsize i = 0; i < layout->view->n_taken && least >= enough; i++)
    least = MIN (least, wm_box_distance (&layout->view->taken[i], disc) - paint);

  for (gsize i = 0; i < layout->n_marks && least >= enough; i++)
    {
      const WmLayoutMark *mark = &layout->marks[i];

      if (i != index && layout->is_placed[i])
        least =
            MIN (least, wm_distance (mark->disc, disc) - (2 * PAINT + WM_LAYOUT_GAP) * r);
      if (least >= enough && wm_box_distance (&layout->bounds[i], disc) - paint < least)
        least = MIN (least, wm_form_distance (mark, disc) - paint);
    }

  return least;
}

static gboolean
is_free (const Layout *layout, gsize index, WmPoint disc)
{
  return clearance (layout, index, disc, 0) >= 0;
}

/* How many leaders, discs and tips of the placed marks this leader would cross. */
static int
count_crossings (const Layout *layout, gsize index, WmPoint disc, WmPoint tip)
{
  double r = layout->view->radius;
  int count = 0;

  for (gsize i = 0; i < layout->n_marks; i++)
    {
      const WmLayoutMark *mark = &layout->marks[i];
      WmPoint other;

      if (i == index || !layout->is_in_view[i])
        continue;
      if (wm_segment_distance (tip, disc, mark->points[0]) < WM_MARK_HALO * 2 * r
          && wm_distance (mark->points[0], tip) > r)
        count++;
      if (!layout->is_placed[i])
        continue;
      other = wm_form_tip (mark, mark->disc);
      if (wm_segments_cross (tip, disc, other, mark->disc))
        count++;
      if (wm_segment_distance (tip, disc, mark->disc) < PAINT * r)
        count++;
      if (wm_segment_distance (other, mark->disc, disc) < PAINT * r)
        count++;
    }

  return count;
}

static double
metal_at (const WmLayoutView *view, WmPoint at)
{
  int column = (int)(at.x / view->width * view->metal_columns);
  int row = (int)(at.y / view->height * view->metal_rows);

  column = CLAMP (column, 0, view->metal_columns - 1);
  row = CLAMP (row, 0, view->metal_rows - 1);
  return view->metal[row * view->metal_columns + column] / 255.0;
}

/* Share of metal under the disc, in METAL_STEPS; sampled at its middle and on two
 * rings of eight. */
static int
metal_covered (const WmLayoutView *view, WmPoint disc)
{
  double sum;

  if (view->metal == NULL || view->metal_columns < 1 || view->metal_rows < 1)
    return 0;

  sum = metal_at (view, disc);
  for (int i = 0; i < 16; i++)
    {
      double radius = (i < 8 ? 0.8 : 1.5) * view->radius;
      WmPoint at = { disc.x + radius * cos (i * G_PI / 4),
                     disc.y + radius * sin (i * G_PI / 4) };

      sum += metal_at (view, at);
    }

  return (int)(sum / 17 * METAL_STEPS);
}

static gboolean
is_better (const Place *a, const Place *b)
{
  if (a->crossings != b->crossings)
    return a->crossings < b->crossings;
  if (a->metal != b->metal)
    return a->metal < b->metal;

  return a->length < b->length - 1e-9;
}

static void
try_place (const Layout *layout, gsize index, WmPoint disc, Place *best)
{
  const WmLayoutMark *mark = &layout->marks[index];
  WmPoint tip;
  Place place = { .disc = disc };

  if (!is_free (layout, index, disc))
    return;

  tip = wm_form_tip (mark, disc);
  place.length = wm_distance (disc, tip);
  place.crossings = count_crossings (layout, index, disc, tip);
  place.metal = metal_covered (layout->view, disc);
  if (is_better (&place, best))
    *best = place;
}

/* Directions start up and to the right, where a hand does not hide the mark. */
static WmPoint
place_in_direction (WmPoint anchor, int direction, double distance)
{
  double angle = -G_PI / 4 + direction * 2 * G_PI / DIRECTIONS;

  return (WmPoint) { anchor.x + distance * cos (angle),
                     anchor.y + distance * sin (angle) };
}

static void
try_ring (const Layout *layout, gsize index, double distance, Place *best)
{
  const WmLayoutMark *mark = &layout->marks[index];
  gsize anchors = MIN (mark->n_points, MAX_ANCHORS);

  for (gsize i = 0; i < anchors; i++)
    {
      WmPoint anchor = mark->points[i * mark->n_points / anchors];

      if (mark->shape == WM_SHAPE_SPAN && i == 1 && anchors == 2)
        anchor = (WmPoint) { (mark->points[0].x + mark->points[1].x) / 2,
                             (mark->points[0].y + mark->points[1].y) / 2 };
      for (int d = 0; d < DIRECTIONS; d++)
        try_place (layout, index, place_in_direction (anchor, d, distance), best);
    }
}

/* Visits a grid over the whole view; with @any also places that are not free, to
 * find the one that overlaps least. */
static void
search_grid (const Layout *layout, gsize index, gboolean any, Place *best)
{
  const WmLayoutView *view = layout->view;
  double paint = PAINT * view->radius;
  double room_x = MAX (view->width - 2 * paint, 0);
  double room_y = MAX (view->height - 2 * paint, 0);
  int columns = CLAMP ((int)(room_x / view->radius * 2), 1, GRID);
  int rows = CLAMP ((int)(room_y / view->radius * 2), 1, GRID);
  double most = -G_MAXDOUBLE;

  for (int row = 0; row <= rows; row++)
    for (int column = 0; column <= columns; column++)
      {
        WmPoint disc = { paint + room_x * column / columns, paint + room_y * row / rows };

        if (!any)
          try_place (layout, index, disc, best);
        else if (clearance (layout, index, disc, most) > most)
          {
            most = clearance (layout, index, disc, -G_MAXDOUBLE);
            best->disc = disc;
          }
      }
}

static void
place_disc (Layout *layout, gsize index)
{
  WmLayoutMark *mark = &layout->marks[index];
  Place best = { .crossings = G_MAXINT };
  double r = layout->view->radius;
  double furthest = hypot (layout->view->width, layout->view->height);

  /* A longer leader only helps where the nearer places cross or cover something. */
  for (gsize i = 0;
       i < G_N_ELEMENTS (distances) && (best.crossings != 0 || best.metal != 0); i++)
    try_ring (layout, index, distances[i] * r, &best);

  for (double at = distances[G_N_ELEMENTS (distances) - 1] + RING_STEP;
       best.crossings == G_MAXINT && at * r < MIN (furthest, 40 * r); at += RING_STEP)
    try_ring (layout, index, at * r, &best);

  if (best.crossings == G_MAXINT)
    search_grid (layout, index, FALSE, &best);
  if (best.crossings == G_MAXINT)
    search_grid (layout, index, TRUE, &best);

  mark->disc = best.disc;
  layout->is_placed[index] = TRUE;
}

static gboolean
has_point_in_view (const WmLayoutMark *mark, const WmLayoutView *view)
{
  for (gsize i = 0; i < mark->n_points; i++)
    if (mark->points[i].x >= 0 && mark->points[i].x <= view->width
        && mark->points[i].y >= 0 && mark->points[i].y <= view->height)
      return TRUE;

  return FALSE;
}

/* Do not wear first, sound after the findings, the rest last; else as given. */
static int
urgency (WmSeverity severity)
{
  return severity == WM_SEVERITY_NOT_PRESENT ? 0 : (int)severity;
}

static gsize *
order_by_severity (const WmLayoutMark *marks, gsize n_marks)
{
  gsize *order = g_new (gsize, n_marks);
  gsize at = 0;

  for (int level = WM_SEVERITY_NO_WEAR; level >= 0; level--)
    for (gsize i = 0; i < n_marks; i++)
      if (urgency (marks[i].severity) == level)
        order[at++] = i;

  return order;
}

static void
keep_standing (Layout *layout, const gsize *order)
{
  for (gsize i = 0; i < layout->n_marks; i++)
    if (layout->marks[i].is_pinned && layout->is_in_view[i])
      layout->is_placed[i] = TRUE;

  for (gsize i = 0; i < layout->n_marks; i++)
    {
      gsize index = order[i];

      if (layout->is_in_view[index] && !layout->is_placed[index]
          && layout->marks[index].has_disc
          && is_free (layout, index, layout->marks[index].disc))
        layout->is_placed[index] = TRUE;
    }
}

static int
mark_crowded (Layout *layout)
{
  int crowded = 0;

  for (gsize i = 0; i < layout->n_marks; i++)
    {
      WmLayoutMark *mark = &layout->marks[i];

      /* A hair of tolerance: the sums are not exactly those of the search. */
      mark->crowded =
          layout->is_in_view[i] && clearance (layout, i, mark->disc, -1e-6) < -1e-6;
      crowded += mark->crowded;
    }

  return crowded;
}

int
wm_mark_layout (WmLayoutMark *marks, gsize n_marks, const WmLayoutView *view)
{
  g_autofree WmLayoutBox *bounds = g_new0 (WmLayoutBox, n_marks);
  g_autofree gboolean *is_placed = g_new0 (gboolean, n_marks);
  g_autofree gboolean *is_in_view = g_new0 (gboolean, n_marks);
  g_autofree gsize *order = order_by_severity (marks, n_marks);
  Layout layout = { view, marks, n_marks, bounds, is_placed, is_in_view };

  for (gsize i = 0; i < n_marks; i++)
    {
      bounds[i] = wm_form_bounds (&marks[i]);
      is_in_view[i] = has_point_in_view (&marks[i], view);
      if (!is_in_view[i] && !marks[i].is_pinned)
        marks[i].disc = (WmPoint) { marks[i].points[0].x + distances[0] * view->radius,
                                    marks[i].points[0].y };
    }

  keep_standing (&layout, order);
  for (gsize i = 0; i < n_marks; i++)
    if (is_in_view[order[i]] && !is_placed[order[i]])
      place_disc (&layout, order[i]);

  return mark_crowded (&layout);
}
