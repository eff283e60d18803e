/* mark-draw.c: the mark drawn with cairo
 *
 * Everything is drawn twice, in two tones: first grown by the outline in white
 * (so it stands off dark metal), then in its own colour (so it stands off light).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/mark-draw.h"

#include "photo/mark-text.h"

#include <math.h>

#define RADIANS (G_PI / 180.0)

/* Not confirmed: white inside this radius, and the open tip's radius. */
#define HOLLOW 0.76
#define OPEN_TIP 0.30

/* Carried: dash and gap, and the pale grey behind the number (look book, picture
 * of the states: the metal shows through). */
#define DASH_ON 0.34
#define DASH_OFF 0.24
#define GHOST_VEIL 0.62

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
set_dash (cairo_t *cr, double radius)
{
  double dash[2] = { DASH_ON * radius, DASH_OFF * radius };

  cairo_set_dash (cr, dash, 2, 0);
}

/* The ring as one path, and as two sprung arcs for "do not wear". */
static void
add_ring (cairo_t *cr, const WmMarkLook *look)
{
  double r = look->radius;

  cairo_new_path (cr);
  if (look->severity != WM_SEVERITY_NO_WEAR)
    {
      cairo_arc (cr, look->disc.x, look->disc.y, WM_MARK_RING * r, 0, 2 * G_PI);
      return;
    }

  for (int i = 0; i < 2; i++)
    {
      double middle = 45.0 + 180.0 * i;
      double x = look->disc.x + WM_MARK_SPRUNG * r * cos (middle * RADIANS);
      double y = look->disc.y + WM_MARK_SPRUNG * r * sin (middle * RADIANS);

      cairo_new_sub_path (cr);
      cairo_arc (cr, x, y, WM_MARK_RING * r, (middle - WM_MARK_SPRUNG_ARC / 2) * RADIANS,
                 (middle + WM_MARK_SPRUNG_ARC / 2) * RADIANS);
    }
}

static void
add_claws (cairo_t *cr, const WmMarkLook *look)
{
  double angles[4];
  int count = wm_severity_claws (look->severity, angles);

  cairo_new_path (cr);
  for (int i = 0; i < count; i++)
    {
      double c = cos (angles[i] * RADIANS) * look->radius;
      double s = sin (angles[i] * RADIANS) * look->radius;

      cairo_move_to (cr, look->disc.x + WM_MARK_CLAW_INNER * c,
                     look->disc.y + WM_MARK_CLAW_INNER * s);
      cairo_line_to (cr, look->disc.x + WM_MARK_CLAW_OUTER * c,
                     look->disc.y + WM_MARK_CLAW_OUTER * s);
    }
}

static void
fill_circle (cairo_t *cr, WmPoint at, double radius)
{
  cairo_new_path (cr);
  cairo_arc (cr, at.x, at.y, radius, 0, 2 * G_PI);
  cairo_fill (cr);
}

static void
draw_outline (cairo_t *cr, const WmMarkLook *look, const WmMarkStyle *style)
{
  double r = look->radius;
  double outline = outline_width (look, style);

  set_colour (cr, wm_mark_halo, 1);

  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_line_width (cr, WM_MARK_RING_LINE * r + 2 * outline);
  if (look->severity == WM_SEVERITY_NO_WEAR)
    {
      /* The outline goes round the ends of the sprung arcs too. */
      cairo_set_line_cap (cr, CAIRO_LINE_CAP_SQUARE);
      add_ring (cr, look);
      cairo_stroke (cr);
      if (look->state & WM_MARK_CARRIED)
        {
          cairo_set_line_width (cr, WM_MARK_DISC_LINE * r + 2 * outline);
          cairo_new_path (cr);
          cairo_arc (cr, look->disc.x, look->disc.y, r, 0, 2 * G_PI);
          cairo_stroke (cr);
        }
      else
        fill_circle (cr, look->disc, r * (1 + WM_MARK_DISC_LINE / 2) + outline);
    }
  else
    {
      add_ring (cr, look);
      cairo_stroke (cr);
      if (!(look->state & WM_MARK_CARRIED))
        fill_circle (cr, look->disc, WM_MARK_RING * r);
    }

  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_width (cr, WM_MARK_CLAW_LINE * r + 2 * outline);
  add_claws (cr, look);
  cairo_stroke (cr);
}

static void
draw_stone (cairo_t *cr, const WmMarkLook *look, const WmMarkStyle *style)
{
  double r = look->radius;

  if (look->state & WM_MARK_CARRIED)
    {
      set_colour (cr, wm_mark_halo, GHOST_VEIL);
      fill_circle (cr, look->disc, r);
    }
  else
    {
      set_colour (cr, wm_severity_fill (look->severity, style->grey), 1);
      fill_circle (cr, look->disc, r);
      if (look->state & WM_MARK_UNCONFIRMED)
        {
          set_colour (cr, wm_mark_halo, 1);
          fill_circle (cr, look->disc, HOLLOW * r);
        }
    }

  set_colour (cr, wm_mark_edge, 1);
  cairo_set_line_width (cr, WM_MARK_DISC_LINE * r);
  cairo_new_path (cr);
  cairo_arc (cr, look->disc.x, look->disc.y, r, 0, 2 * G_PI);
  cairo_stroke (cr);
}

static void
draw_ring_and_claws (cairo_t *cr, const WmMarkLook *look)
{
  double r = look->radius;

  set_colour (cr, wm_mark_edge, 1);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_line_width (cr, WM_MARK_RING_LINE * r);
  if (look->state & WM_MARK_CARRIED)
    set_dash (cr, r);
  add_ring (cr, look);
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0);

  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_width (cr, WM_MARK_CLAW_LINE * r);
  add_claws (cr, look);
  cairo_stroke_preserve (cr);
  if (look->state & WM_MARK_CARRIED)
    {
      set_colour (cr, wm_mark_halo, 1);
      cairo_set_line_width (cr, (WM_MARK_CLAW_LINE - 0.2) * r);
      cairo_stroke_preserve (cr);
    }
  cairo_new_path (cr);
}

static void
draw_number (cairo_t *cr, const WmMarkLook *look, const WmMarkStyle *style)
{
  char text[16];
  double size = WM_MARK_NUMBER_1;
  WmColour colour = wm_severity_number_colour (look->severity, style->grey);
  int figures = look->number > 99 ? 3 : look->number > 9 ? 2 : 1;

  if (look->number <= 0 || style->no_words)
    return;

  g_snprintf (text, sizeof text, "%d%s", MIN (look->number, 999),
              look->state & WM_MARK_UNCONFIRMED ? "?" : "");
  if (look->state & WM_MARK_UNCONFIRMED)
    figures = MIN (figures + 1, 3);
  if (figures == 2)
    size = WM_MARK_NUMBER_2;
  else if (figures == 3)
    size = WM_MARK_NUMBER_3;

  /* Black is only on the rim of a hollow stone and not at all in a ghost. */
  if (look->state & (WM_MARK_UNCONFIRMED | WM_MARK_CARRIED))
    colour = (WmColour) { 0, 0, 0 };
  set_colour (cr, colour, 1);
  wm_mark_draw_text (cr, text, style->font, size * look->radius, TRUE, look->disc);
}

static void
draw_selection (cairo_t *cr, WmPoint at, double radius, double px)
{
  /* Edge under the blue, so that it shows on light metal too. */
  cairo_new_path (cr);
  cairo_arc (cr, at.x, at.y, radius, 0, 2 * G_PI);
  set_colour (cr, wm_mark_edge, 1);
  cairo_set_line_width (cr, 4.4 * px);
  cairo_stroke_preserve (cr);
  set_colour (cr, wm_mark_gauge, 1);
  cairo_set_line_width (cr, 2.4 * px);
  cairo_stroke (cr);
}

void
wm_mark_draw_disc (cairo_t *cr, const WmMarkLook *look, const WmMarkStyle *style)
{
  double r = look->radius;

  if (look->state & WM_MARK_BARE)
    return;
  cairo_save (cr);
  draw_outline (cr, look, style);
  draw_stone (cr, look, style);
  draw_ring_and_claws (cr, look);
  draw_number (cr, look, style);

  if (look->state & WM_MARK_SELECTED)
    {
      draw_selection (cr, look->disc, WM_MARK_CLAW_OUTER * r + 5 * style->px, style->px);
      if (look->n_points > 0)
        draw_selection (cr, wm_mark_tip (look), MAX (0.62 * r, 7 * style->px), style->px);
    }
  cairo_restore (cr);
}

/* The leader as a closed path: @grown on each side, from the ring to the point. */
static void
add_leader (cairo_t *cr, WmPoint tip, double length, double half, double point,
            double from, double grown)
{
  double narrow = MIN (point, MAX (length - from, 0));

  cairo_save (cr);
  cairo_translate (cr, tip.x, tip.y);
  cairo_new_path (cr);
  cairo_move_to (cr, length - from, half + grown);
  cairo_line_to (cr, narrow, half + grown);
  if (grown > 0)
    cairo_line_to (cr, 0, grown);
  else
    cairo_line_to (cr, 0, 0);
  if (grown > 0)
    cairo_line_to (cr, 0, -grown);
  cairo_line_to (cr, narrow, -half - grown);
  cairo_line_to (cr, length - from, -half - grown);
  cairo_close_path (cr);
  cairo_restore (cr);
}

static void
draw_dashed_leader (cairo_t *cr, double length, double from, double width, double outline,
                    double radius)
{
  cairo_new_path (cr);
  cairo_move_to (cr, 0, 0);
  cairo_line_to (cr, length - from, 0);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  set_colour (cr, wm_mark_halo, 1);
  cairo_set_line_width (cr, width + 2 * outline);
  cairo_stroke_preserve (cr);
  set_colour (cr, wm_mark_edge, 1);
  cairo_set_line_width (cr, width);
  set_dash (cr, radius);
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0);
}

static void
draw_open_tip (cairo_t *cr, WmPoint tip, double radius, double outline)
{
  cairo_new_path (cr);
  cairo_arc (cr, tip.x, tip.y, OPEN_TIP * radius, 0, 2 * G_PI);
  set_colour (cr, wm_mark_halo, 1);
  cairo_set_line_width (cr, WM_MARK_LEADER_LINE * radius + 2 * outline);
  cairo_stroke_preserve (cr);
  set_colour (cr, wm_mark_edge, 1);
  cairo_set_line_width (cr, WM_MARK_LEADER_LINE * radius);
  cairo_stroke (cr);
}

void
wm_mark_draw_leader (cairo_t *cr, const WmMarkLook *look, const WmMarkStyle *style)
{
  WmPoint tip = wm_mark_tip (look);
  double r = look->radius;
  double dx = look->disc.x - tip.x, dy = look->disc.y - tip.y;
  double length = hypot (dx, dy);
  double half = WM_MARK_LEADER_LINE * r / 2;
  double outline = outline_width (look, style);
  gboolean is_dashed = (look->state & (WM_MARK_CARRIED | WM_MARK_UNCONFIRMED)) != 0;

  if (length <= WM_MARK_LEADER_FROM * r || look->state & WM_MARK_BARE)
    return;
  if (look->state & WM_MARK_HOVERED)
    half *= 1.5;

  cairo_save (cr);
  cairo_translate (cr, tip.x, tip.y);
  cairo_rotate (cr, atan2 (dy, dx));
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_MITER);

  if (is_dashed)
    draw_dashed_leader (cr, length, WM_MARK_LEADER_FROM * r, 2 * half, outline, r);
  else
    {
      WmPoint origin = { 0, 0 };
      double from = WM_MARK_LEADER_FROM * r, point = WM_MARK_LEADER_POINT * r;

      /* The outline ends where the point does: the place itself stays free. */
      set_colour (cr, wm_mark_halo, 1);
      add_leader (cr, origin, length, half, point, from, outline);
      cairo_fill (cr);
      set_colour (cr, wm_mark_edge, 1);
      add_leader (cr, origin, length, half, point, from, 0);
      cairo_fill (cr);
    }
  cairo_restore (cr);

  if (look->state & WM_MARK_UNCONFIRMED)
    {
      cairo_save (cr);
      draw_open_tip (cr, tip, r, outline);
      cairo_restore (cr);
    }
}

void
wm_mark_draw (cairo_t *cr, const WmMarkLook *look, const WmMarkStyle *style)
{
  wm_mark_draw_all (cr, look, 1, style);
}

void
wm_mark_draw_all (cairo_t *cr, const WmMarkLook *looks, gsize n_looks,
                  const WmMarkStyle *style)
{
  for (gsize i = 0; i < n_looks; i++)
    wm_mark_draw_form (cr, &looks[i], style);
  for (gsize i = 0; i < n_looks; i++)
    wm_mark_draw_leader (cr, &looks[i], style);
  for (gsize i = 0; i < n_looks; i++)
    wm_mark_draw_disc (cr, &looks[i], style);
}

/* A circle of dots: nobody has looked there, so nothing is held and nothing shown. */
static void
draw_not_looked_at (cairo_t *cr, double x, double y, double radius, gboolean has_bar)
{
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_width (cr, 0.22 * radius);
  set_colour (cr, wm_mark_edge, 0.62);

  for (int i = 0; i < 12; i++)
    {
      double c = cos (i * 30 * RADIANS) * 1.2 * radius;
      double s = sin (i * 30 * RADIANS) * 1.2 * radius;

      cairo_move_to (cr, x + c, y + s);
      cairo_line_to (cr, x + c, y + s);
    }
  if (has_bar)
    {
      cairo_move_to (cr, x - 0.5 * radius, y);
      cairo_line_to (cr, x + 0.5 * radius, y);
    }
  cairo_stroke (cr);
}

void
wm_mark_draw_glyph (cairo_t *cr, double x, double y, double radius, WmSeverity severity,
                    int number, const WmMarkStyle *style)
{
  WmMarkLook look = {
    .severity = severity, .disc = { x, y }, .radius = radius, .number = number
  };

  if (severity >= WM_SEVERITY_SOUND && severity <= WM_SEVERITY_NO_WEAR)
    {
      wm_mark_draw_disc (cr, &look, style);
      return;
    }

  cairo_save (cr);
  cairo_new_path (cr);
  draw_not_looked_at (cr, x, y, radius, severity == WM_SEVERITY_NOT_PRESENT);
  cairo_restore (cr);
}
