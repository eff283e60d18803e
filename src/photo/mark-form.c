/* mark-form.c: what a mark draws on the place itself: stroke, outline, jaws
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/mark-draw.h"
#include "photo/mark-text.h"

#include <math.h>

/* Share of the severity's colour inside a selected outline. */
#define SELECTED_FILL 0.10

/* The plate's text and its margins, in R. */
#define PLATE_TEXT 0.86
#define PLATE_MARGIN_X 0.62
#define PLATE_MARGIN_Y 0.42
#define PLATE_ROUND 0.3

/* How thick a jaw is, in R; its inner face is the place. */
#define JAW_THICK 0.24

static void
set_colour (cairo_t *cr, WmColour colour, double alpha)
{
  cairo_set_source_rgba (cr, colour.red, colour.green, colour.blue, alpha);
}

static double
outline_width (const WmMarkLook *look, const WmMarkStyle *style)
{
  double outline = MAX (WM_MARK_HALO * look->radius, style->px);

  return look->state & WM_MARK_HOVERED ? outline * 1.5 : outline;
}

static void
draw_stroke (cairo_t *cr, const WmMarkLook *look, const WmMarkStyle *style)
{
  double r = look->radius;
  double line = WM_MARK_FORM_LINE * r;
  double outline = outline_width (look, style);
  gboolean is_closed = look->shape == WM_SHAPE_OUTLINE && look->n_points > 2;
  WmColour fill = look->state & WM_MARK_MEASURING
                      ? wm_mark_gauge
                      : wm_severity_fill (look->severity, style->grey);

  cairo_new_path (cr);
  for (gsize i = 0; i < look->n_points; i++)
    cairo_line_to (cr, look->points[i].x, look->points[i].y);
  if (is_closed)
    cairo_close_path (cr);

  if (is_closed && look->state & WM_MARK_SELECTED)
    {
      set_colour (cr, fill, SELECTED_FILL);
      cairo_fill_preserve (cr);
    }

  /* White, dark, colour, from wide to narrow: seen on any metal. */
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  set_colour (cr, wm_mark_halo, 1);
  cairo_set_line_width (cr, line + 4 * outline);
  cairo_stroke_preserve (cr);
  set_colour (cr, wm_mark_edge, 1);
  cairo_set_line_width (cr, line + 2 * outline);
  cairo_stroke_preserve (cr);

  if (look->state & WM_MARK_CARRIED)
    {
      double dash[2] = { 0.34 * r, 0.24 * r };

      cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
      cairo_set_dash (cr, dash, 2, 0);
      set_colour (cr, wm_mark_halo, 1);
    }
  else
    set_colour (cr, fill, 1);
  cairo_set_line_width (cr, line);
  cairo_stroke (cr);
}

/* A corner of the scale: a circle whose middle is the place. */
static void
draw_handles (cairo_t *cr, const WmMarkLook *look, const WmMarkStyle *style)
{
  double r = WM_MARK_HANDLE * look->radius;
  double outline = outline_width (look, style);

  for (gsize i = 0; i < look->n_points; i++)
    {
      cairo_new_path (cr);
      cairo_arc (cr, look->points[i].x, look->points[i].y, r, 0, 2 * G_PI);
      set_colour (cr, wm_mark_edge, 1);
      cairo_set_line_width (cr, 3 * outline);
      cairo_stroke_preserve (cr);
      set_colour (cr, wm_mark_gauge, 1);
      cairo_set_line_width (cr, outline);
      cairo_stroke (cr);
    }
}

/* One jaw: a bar across the span whose face towards the other end is the place. */
static void
add_jaw (cairo_t *cr, double face, double outwards, double radius)
{
  double thick = JAW_THICK * radius * outwards;

  cairo_rectangle (cr, face, -WM_MARK_JAW * radius / 2, thick, WM_MARK_JAW * radius);
}

static void
add_plate (cairo_t *cr, WmPoint middle, double half_x, double half_y, double round)
{
  double x = half_x - round, y = half_y - round;

  cairo_new_path (cr);
  cairo_arc (cr, middle.x + x, middle.y + y, round, 0, G_PI_2);
  cairo_arc (cr, middle.x - x, middle.y + y, round, G_PI_2, G_PI);
  cairo_arc (cr, middle.x - x, middle.y - y, round, G_PI, 3 * G_PI_2);
  cairo_arc (cr, middle.x + x, middle.y - y, round, 3 * G_PI_2, 2 * G_PI);
  cairo_close_path (cr);
}

static void
draw_plate (cairo_t *cr, const WmMarkLook *look, const WmMarkStyle *style)
{
  double r = look->radius;
  double width, height, half_x, half_y, reach;
  double dx = look->points[1].x - look->points[0].x;
  double dy = look->points[1].y - look->points[0].y;
  WmPoint middle = { (look->points[0].x + look->points[1].x) / 2,
                     (look->points[0].y + look->points[1].y) / 2 };
  double length = MAX (hypot (dx, dy), 1e-9);
  WmPoint away = { -dy / length, dx / length };

  wm_mark_measure_text (cr, look->value, style->font, PLATE_TEXT * r, FALSE, &width,
                        &height);
  half_x = width / 2 + PLATE_MARGIN_X * r;
  half_y = height / 2 + PLATE_MARGIN_Y * r;

  /* On the side away from the disc. */
  if ((look->disc.x - middle.x) * away.x + (look->disc.y - middle.y) * away.y > 0)
    away = (WmPoint) { -away.x, -away.y };
  reach = WM_MARK_JAW * r / 2 + WM_MARK_PLATE_GAP * r + fabs (away.x) * half_x
          + fabs (away.y) * half_y;
  middle.x += away.x * reach;
  middle.y += away.y * reach;

  add_plate (cr, middle, half_x, half_y, PLATE_ROUND * r);
  set_colour (cr, wm_mark_halo, 1);
  cairo_set_line_width (cr, 2 * MAX (0.08 * r, style->px));
  cairo_stroke_preserve (cr);
  set_colour (cr, wm_mark_plate, 1);
  cairo_fill (cr);

  set_colour (cr, wm_mark_halo, 1);
  wm_mark_draw_text (cr, look->value, style->font, PLATE_TEXT * r, FALSE, middle);
}

static void
draw_span (cairo_t *cr, const WmMarkLook *look, const WmMarkStyle *style)
{
  double r = look->radius;
  double dx = look->points[1].x - look->points[0].x;
  double dy = look->points[1].y - look->points[0].y;
  double length = hypot (dx, dy);
  WmColour face = look->state & WM_MARK_MEASURING ? wm_mark_gauge : wm_mark_halo;
  double px = MAX (0.08 * r, style->px);

  cairo_save (cr);
  cairo_translate (cr, look->points[0].x, look->points[0].y);
  cairo_rotate (cr, atan2 (dy, dx));
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_MITER);

  /* The thin line between the faces, dark with a light core. */
  cairo_new_path (cr);
  cairo_move_to (cr, 0, 0);
  cairo_line_to (cr, length, 0);
  set_colour (cr, wm_mark_edge, 1);
  cairo_set_line_width (cr, 3 * px);
  cairo_stroke_preserve (cr);
  set_colour (cr, face, 1);
  cairo_set_line_width (cr, px);
  cairo_stroke (cr);

  /* The dark edge stays outside the faces: what is measured is not covered. */
  cairo_new_path (cr);
  add_jaw (cr, -px, -1, r);
  add_jaw (cr, length + px, 1, r);
  set_colour (cr, wm_mark_edge, 1);
  cairo_set_line_width (cr, 2 * px);
  cairo_stroke_preserve (cr);
  set_colour (cr, face, 1);
  cairo_fill (cr);
  cairo_restore (cr);

  if (look->value != NULL && *look->value != '\0' && !style->no_words)
    draw_plate (cr, look, style);
}

void
wm_mark_draw_form (cairo_t *cr, const WmMarkLook *look, const WmMarkStyle *style)
{
  if (look->shape == WM_SHAPE_SPOT || look->n_points < 2)
    return;

  cairo_save (cr);
  if (look->shape == WM_SHAPE_SPAN)
    draw_span (cr, look, style);
  else
    draw_stroke (cr, look, style);
  if (look->state & WM_MARK_BARE && look->shape != WM_SHAPE_SPAN)
    draw_handles (cr, look, style);
  cairo_restore (cr);
}
