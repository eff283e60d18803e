/* test-mark-draw.c: the mark's geometry measured in pixels, its colours by WCAG
 *
 * The numbers are those of the look book, sections 3 and 4.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/mark-draw.h"
#include "photo/pixels.h"

#include <math.h>
#include <stdlib.h>

#define SIDE 800
#define R 100.0
#define MIDDLE 400.0

static WmMarkStyle style;

/* WCAG 2.2, "relative luminance" and "contrast ratio". */
static double
luminance (WmColour colour)
{
  double parts[3] = { colour.red, colour.green, colour.blue };

  for (int i = 0; i < 3; i++)
    parts[i] =
        parts[i] <= 0.04045 ? parts[i] / 12.92 : pow ((parts[i] + 0.055) / 1.055, 2.4);
  return 0.2126 * parts[0] + 0.7152 * parts[1] + 0.0722 * parts[2];
}

static double
contrast (WmColour a, WmColour b)
{
  double high = MAX (luminance (a), luminance (b));
  double low = MIN (luminance (a), luminance (b));

  return (high + 0.05) / (low + 0.05);
}

static double
number_contrast (WmSeverity severity)
{
  return contrast (wm_severity_fill (severity, FALSE),
                   wm_severity_number_colour (severity, FALSE));
}

/* Look book, section 3: "Numbers: on white 21, yellow 15.88, ...". */
static void
test_contrast (void)
{
  g_assert_cmpfloat_with_epsilon (number_contrast (WM_SEVERITY_SOUND), 21, 0.005);
  g_assert_cmpfloat_with_epsilon (number_contrast (WM_SEVERITY_WATCH), 15.88, 0.005);
  g_assert_cmpfloat_with_epsilon (number_contrast (WM_SEVERITY_REPAIR), 5.43, 0.005);
  g_assert_cmpfloat_with_epsilon (number_contrast (WM_SEVERITY_NO_WEAR), 21, 0.005);
  g_assert_cmpfloat_with_epsilon (contrast (wm_mark_edge, wm_mark_halo), 17.40, 0.005);
  g_assert_cmpfloat_with_epsilon (contrast (wm_mark_gauge, wm_mark_edge), 7.54, 0.005);
  g_assert_cmpfloat_with_epsilon (
      contrast (wm_severity_fill (WM_SEVERITY_REPAIR, FALSE), wm_mark_edge), 4.50, 0.005);

  /* WCAG 2.2, 1.4.3: text at least 4.5, on the grey print fills too. */
  for (int s = WM_SEVERITY_SOUND; s <= WM_SEVERITY_NO_WEAR; s++)
    g_assert_cmpfloat (
        contrast (wm_severity_fill (s, TRUE), wm_severity_number_colour (s, TRUE)), >=,
        4.5);
}

/* CIE 1976 L*: darker is worse, in colour as in grey; look book: 100, 80, 53, 0. */
static double
lightness (WmColour colour)
{
  double y = luminance (colour);

  return y > 216.0 / 24389.0 ? 116 * cbrt (y) - 16 : y * 24389.0 / 27.0;
}

static void
test_order_in_grey (void)
{
  static const double greys[] = { 100, 80, 53, 0 };

  for (int s = WM_SEVERITY_SOUND; s <= WM_SEVERITY_NO_WEAR; s++)
    {
      g_assert_cmpfloat_with_epsilon (lightness (wm_severity_fill (s, TRUE)),
                                      greys[s - WM_SEVERITY_SOUND], 0.5);
      if (s > WM_SEVERITY_SOUND)
        g_assert_cmpfloat (lightness (wm_severity_fill (s, FALSE)), <,
                           lightness (wm_severity_fill (s - 1, FALSE)) - 10);
    }
}

static WmPixels *
begin (cairo_t **cr)
{
  WmPixels *pixels = wm_pixels_new (SIDE, SIDE);
  cairo_surface_t *surface = wm_pixels_get_surface (pixels);

  *cr = cairo_create (surface);
  cairo_surface_destroy (surface);

  /* A mid blue that the mark never uses: what stays so was not painted. */
  cairo_set_source_rgb (*cr, 0, 0, 1);
  cairo_paint (*cr);
  return pixels;
}

static const guint8 *
at_polar (WmPixels *pixels, double degrees, double radius)
{
  int x = (int)floor (MIDDLE + radius * R * cos (degrees * G_PI / 180));
  int y = (int)floor (MIDDLE + radius * R * sin (degrees * G_PI / 180));

  return pixels->data + y * pixels->stride + x * 4;
}

static gboolean
is_colour (const guint8 *p, WmColour colour)
{
  return abs (p[2] - (int)lround (colour.red * 255)) <= 2
         && abs (p[1] - (int)lround (colour.green * 255)) <= 2
         && abs (p[0] - (int)lround (colour.blue * 255)) <= 2;
}

static gboolean
is_background (const guint8 *p)
{
  return p[0] == 255 && p[1] == 0 && p[2] == 0;
}

#define assert_colour(pixels, degrees, radius, colour)                                   \
  g_assert_true (is_colour (at_polar (pixels, degrees, radius), colour))

static WmPixels *
draw_disc (WmSeverity severity, guint state)
{
  cairo_t *cr;
  WmPixels *pixels = begin (&cr);
  WmMarkLook look = {
    .severity = severity, .disc = { MIDDLE, MIDDLE }, .radius = R, .state = state
  };

  wm_mark_draw_disc (cr, &look, &style);
  cairo_destroy (cr);
  return pixels;
}

/* From the middle outwards along a direction without a claw, each edge 0.02 R
 * inside and outside of where it is to be. */
static void
test_rings (void)
{
  static const WmSeverity severities[] = { WM_SEVERITY_SOUND, WM_SEVERITY_WATCH,
                                           WM_SEVERITY_REPAIR };
  static const double free_of_claws[] = { 0, 90, 90 };

  for (int i = 0; i < 3; i++)
    {
      g_autoptr (WmPixels) p = draw_disc (severities[i], 0);
      WmColour fill = wm_severity_fill (severities[i], FALSE);
      double d = free_of_claws[i];

      assert_colour (p, d, 0.5, fill);
      assert_colour (p, d, 0.93, fill);
      assert_colour (p, d, 0.97, wm_mark_edge);
      assert_colour (p, d, 1.03, wm_mark_edge);
      assert_colour (p, d, 1.07, wm_mark_halo);
      assert_colour (p, d, 1.215, wm_mark_halo);
      assert_colour (p, d, 1.255, wm_mark_edge);
      assert_colour (p, d, 1.345, wm_mark_edge);
      assert_colour (p, d, 1.385, wm_mark_halo);
      assert_colour (p, d, 1.475, wm_mark_halo);
      g_assert_true (is_background (at_polar (p, d, 1.515)));
    }
}

/* Which of 72 directions are dark at 1.55 R, beyond the ring: there only claws are. */
static void
test_claws (void)
{
  static const struct
  {
    WmSeverity severity;
    int count;
    int degrees[4];
  } cases[] = { { WM_SEVERITY_SOUND, 4, { 45, 135, 225, 315 } },
                { WM_SEVERITY_WATCH, 3, { 270, 30, 150 } },
                { WM_SEVERITY_REPAIR, 2, { 0, 180 } } };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (WmPixels) p = draw_disc (cases[i].severity, 0);

      for (int d = 0; d < 360; d += 5)
        {
          gboolean is_claw = FALSE;

          for (int c = 0; c < cases[i].count; c++)
            is_claw |= cases[i].degrees[c] == d;
          if (is_claw)
            assert_colour (p, d, 1.55, wm_mark_edge);
          else if (d % 15 == 0)
            g_assert_false (is_colour (at_polar (p, d, 1.55), wm_mark_edge));
        }

      /* Round ends: 0.84 - 0.21 inside, 1.62 + 0.21 outside, then the halo. */
      for (int c = 0; c < cases[i].count; c++)
        {
          int d = cases[i].degrees[c];

          assert_colour (p, d, 0.66, wm_mark_edge);
          assert_colour (p, d, 0.60, wm_severity_fill (cases[i].severity, FALSE));
          assert_colour (p, d, 1.81, wm_mark_edge);
          assert_colour (p, d, 1.86, wm_mark_halo);
          g_assert_true (is_background (at_polar (p, d, 1.99)));
        }
    }
}

/* No claw, and a ring sprung open: arcs of 120 degrees about 45 and 225, moved out
 * by 0.20, nothing at 135 and 315. */
static void
test_broken_ring (void)
{
  g_autoptr (WmPixels) p = draw_disc (WM_SEVERITY_NO_WEAR, 0);
  WmColour black = { 0, 0, 0 };

  assert_colour (p, 10, 0.5, black);
  assert_colour (p, 45, 1.50, wm_mark_edge);
  assert_colour (p, 225, 1.50, wm_mark_edge);
  assert_colour (p, 45, 1.35, wm_mark_halo);
  assert_colour (p, 45, 1.65, wm_mark_halo);
  assert_colour (p, 135, 1.1, wm_mark_halo);
  g_assert_true (is_background (at_polar (p, 135, 1.4)));
  g_assert_true (is_background (at_polar (p, 315, 1.4)));
}

/* The leader's point is exactly the place, from every side; hardly anything of the
 * place itself is covered. */
static void
test_tip (void)
{
  for (int d = 0; d < 360; d += 15)
    {
      cairo_t *cr;
      g_autoptr (WmPixels) p = begin (&cr);
      WmPoint tip = { MIDDLE, MIDDLE };
      WmMarkLook look = { .severity = WM_SEVERITY_REPAIR,
                          .points = &tip,
                          .n_points = 1,
                          .radius = 40,
                          .number = 5 };

      look.disc.x = MIDDLE + 200 * cos (d * G_PI / 180);
      look.disc.y = MIDDLE + 200 * sin (d * G_PI / 180);
      wm_mark_draw (cr, &look, &style);
      cairo_destroy (cr);

      /* 3 px along the leader is painted, 3 px past the place is not. */
      g_assert_false (is_background (at_polar (p, d, 0.03)));
      g_assert_true (is_background (at_polar (p, d + 180, 0.03)));
      g_assert_true (is_background (at_polar (p, d + 90, 0.09)));

      /* In the middle of the leader: its dark core, and white beside it. */
      assert_colour (p, d, 1.0, wm_mark_edge);
    }
}

static void
test_selected (void)
{
  g_autoptr (WmPixels) p = NULL;
  cairo_t *cr;
  WmPoint tip = { MIDDLE, 700 };
  WmMarkLook look = { .severity = WM_SEVERITY_SOUND,
                      .points = &tip,
                      .n_points = 1,
                      .disc = { MIDDLE, MIDDLE },
                      .radius = R,
                      .state = WM_MARK_SELECTED };

  p = begin (&cr);
  wm_mark_draw (cr, &look, &style);
  cairo_destroy (cr);
  assert_colour (p, 0, (1.62 * R + 5) / R, wm_mark_gauge);
  assert_colour (p, 180, (1.62 * R + 5) / R, wm_mark_gauge);
  /* Ring round the tip: 0.62 R. */
  g_assert_true (is_colour (p->data + 700 * p->stride + (400 + 62) * 4, wm_mark_gauge));
}

static void
test_states (void)
{
  g_autoptr (WmPixels) open = draw_disc (WM_SEVERITY_WATCH, WM_MARK_UNCONFIRMED);
  g_autoptr (WmPixels) ghost = draw_disc (WM_SEVERITY_WATCH, WM_MARK_CARRIED);
  g_autoptr (WmPixels) hovered = draw_disc (WM_SEVERITY_WATCH, WM_MARK_HOVERED);
  int dark = 0;

  /* Not confirmed: white inside 0.76, the fill outside it. */
  assert_colour (open, 90, 0.72, wm_mark_halo);
  assert_colour (open, 90, 0.85, wm_severity_fill (WM_SEVERITY_WATCH, FALSE));

  /* A ghost has no fill, a dashed ring, hollow claws. */
  g_assert_false (
      is_colour (at_polar (ghost, 90, 0.5), wm_severity_fill (WM_SEVERITY_WATCH, FALSE)));
  assert_colour (ghost, 270, 1.3, wm_mark_halo);
  for (int d = 0; d < 360; d++)
    dark += is_colour (at_polar (ghost, d, 1.3), wm_mark_edge);
  g_assert_cmpint (dark, >, 120);
  g_assert_cmpint (dark, <, 270);

  /* Hovered: the halo half as wide again, 0.13 to 0.195. */
  assert_colour (hovered, 90, 1.54, wm_mark_halo);
  g_assert_true (is_background (at_polar (hovered, 90, 1.59)));
}

/* The inner faces of a span's jaws are the two places; between them only the thin
 * line is painted. */
static void
test_span (void)
{
  cairo_t *cr;
  g_autoptr (WmPixels) p = begin (&cr);
  WmPoint ends[] = { { 300, 400 }, { 500, 400 } };
  WmMarkLook look = { .severity = WM_SEVERITY_REPAIR,
                      .shape = WM_SHAPE_SPAN,
                      .points = ends,
                      .n_points = 2,
                      .disc = { 400, 200 },
                      .radius = 30 };

  wm_mark_draw_form (cr, &look, &style);
  cairo_destroy (cr);
#define AT(x, y) (p->data + (y)*p->stride + (x)*4)
  for (int y = 376; y < 424; y += 4)
    {
      if (abs (y - 400) < 8)
        continue;
      g_assert_true (is_background (AT (301, y)));
      g_assert_true (is_background (AT (498, y)));
      g_assert_false (is_background (AT (298, y)));
      g_assert_false (is_background (AT (501, y)));
    }
  /* 1.8 R long: 27 px up and down. */
  g_assert_true (is_background (AT (297, 400 - 32)));
  g_assert_true (is_background (AT (297, 400 + 32)));
#undef AT
}

static void
test_tips_and_parts (void)
{
  WmPoint line[] = { { 0, 0 }, { 100, 0 }, { 100, 100 } };
  WmMarkLook look = { .shape = WM_SHAPE_LINE,
                      .points = line,
                      .n_points = 3,
                      .disc = { 130, 40 },
                      .radius = 10 };
  int vertex;

  g_assert_cmpfloat (wm_mark_tip (&look).x, ==, 100);
  g_assert_cmpfloat (wm_mark_tip (&look).y, ==, 0);
  g_assert_cmpint (wm_mark_part_at (&look, look.disc, 2, &vertex), ==, WM_MARK_PART_DISC);
  g_assert_cmpint (wm_mark_part_at (&look, (WmPoint) { 101, 99 }, 2, &vertex), ==,
                   WM_MARK_PART_VERTEX);
  g_assert_cmpint (vertex, ==, 2);
  g_assert_cmpint (wm_mark_part_at (&look, (WmPoint) { 50, 1 }, 2, &vertex), ==,
                   WM_MARK_PART_FORM);
  g_assert_cmpint (vertex, ==, 0);
  g_assert_cmpint (wm_mark_part_at (&look, (WmPoint) { 113, 17 }, 2, &vertex), ==,
                   WM_MARK_PART_LEADER);
  g_assert_cmpint (wm_mark_part_at (&look, (WmPoint) { 50, 60 }, 2, &vertex), ==,
                   WM_MARK_PART_NONE);

  look.shape = WM_SHAPE_SPAN;
  look.n_points = 2;
  g_assert_cmpfloat (wm_mark_tip (&look).x, ==, 100);
  look.disc.x = 40;
  g_assert_cmpfloat (wm_mark_tip (&look).x, ==, 40);
}

/* Everything painted is inside the extents, for every severity, state and shape. */
static void
test_extents (void)
{
  static const guint states[] = { 0,
                                  WM_MARK_HOVERED,
                                  WM_MARK_SELECTED,
                                  WM_MARK_CARRIED,
                                  WM_MARK_UNCONFIRMED,
                                  WM_MARK_MEASURING };
  WmPoint points[] = { { 380, 420 }, { 470, 380 }, { 440, 470 } };

  for (int shape = 0; shape < 4; shape++)
    for (int s = 1; s <= 4; s++)
      for (gsize i = 0; i < G_N_ELEMENTS (states); i++)
        {
          cairo_t *cr;
          g_autoptr (WmPixels) p = begin (&cr);
          double box[4];
          WmMarkLook look = { .severity = s,
                              .shape = shape,
                              .points = points,
                              .n_points = shape == WM_SHAPE_SPOT   ? 1
                                          : shape == WM_SHAPE_SPAN ? 2
                                                                   : 3,
                              .disc = { 320, 300 },
                              .radius = 13 + 4 * s,
                              .number = 10 * s,
                              .state = states[i],
                              .value = "0.60 ± 0.03 mm" };

          wm_mark_draw (cr, &look, &style);
          cairo_destroy (cr);
          wm_mark_extents (&look, &style, box);
          for (int y = 0; y < SIDE; y++)
            for (int x = 0; x < SIDE; x++)
              if (!is_background (p->data + y * p->stride + x * 4))
                {
                  g_assert_cmpfloat (x, >=, floor (box[0]) - 1);
                  g_assert_cmpfloat (y, >=, floor (box[1]) - 1);
                  g_assert_cmpfloat (x, <=, box[0] + box[2] + 1);
                  g_assert_cmpfloat (y, <=, box[1] + box[3] + 1);
                }
        }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  wm_mark_style_init (&style);

  g_test_add_func ("/photo/mark/contrast", test_contrast);
  g_test_add_func ("/photo/mark/order-in-grey", test_order_in_grey);
  g_test_add_func ("/photo/mark/rings", test_rings);
  g_test_add_func ("/photo/mark/claws", test_claws);
  g_test_add_func ("/photo/mark/broken-ring", test_broken_ring);
  g_test_add_func ("/photo/mark/tip", test_tip);
  g_test_add_func ("/photo/mark/selected", test_selected);
  g_test_add_func ("/photo/mark/states", test_states);
  g_test_add_func ("/photo/mark/span", test_span);
  g_test_add_func ("/photo/mark/tips-and-parts", test_tips_and_parts);
  g_test_add_func ("/photo/mark/extents", test_extents);
  return g_test_run ();
}
