/* wear-plot.c: the wear of one part drawn over time
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "report/wear-plot.h"

#include <glib/gi18n.h>
#include <math.h>

#include "report/words.h"

/* Years drawn beyond the last reading, at the least and at the most (our choice). */
#define WM_LEAST_AHEAD 0.6
#define WM_MOST_AHEAD 8.0
/* Points of the band's outline. */
#define N_BAND 48

typedef struct
{
  cairo_t *cr;
  const WmWear *wear;
  const WmPlotLook *look;
  double left, right, top, bottom; /* of the plot's area */
  double first, last;              /* years */
  double low, high;                /* mm */
  double label_end;                /* of the last label on the time axis */
} Plot;

static double
x_of (const Plot *plot, double years)
{
  return plot->left
         + (plot->right - plot->left) * (years - plot->first)
               / (plot->last - plot->first);
}

static double
y_of (const Plot *plot, double mm)
{
  return plot->bottom
         - (plot->bottom - plot->top) * (mm - plot->low) / (plot->high - plot->low);
}

static double
years_of (const WmWearPoint *point)
{
  return point->day / WM_DAYS_PER_YEAR;
}

static void
set_colour (const Plot *plot, const WmPlotColour *colour)
{
  cairo_set_source_rgba (plot->cr, colour->red, colour->green, colour->blue,
                         colour->alpha);
}

/* What the line is drawn for: up to the careful date and a little beyond. */
static void
choose_range (Plot *plot)
{
  const WmWear *wear = plot->wear;
  const WmWearPoint *points = (const WmWearPoint *)wear->points->data;
  guint n = wear->points->len;
  double ahead = WM_LEAST_AHEAD, room;

  plot->first = years_of (&points[0]);
  plot->last = years_of (&points[n - 1]);
  if (wear->has_forecast && isfinite (wear->forecast.careful_years))
    ahead = CLAMP (1.12 * (wear->forecast.careful_years - plot->last), WM_LEAST_AHEAD,
                   WM_MOST_AHEAD);
  room = 0.05 * (plot->last + ahead - plot->first);
  plot->first -= room;
  plot->last += ahead;

  plot->low = wear->minimum_mm;
  plot->high = isfinite (wear->made_mm) ? wear->made_mm : 0;
  for (guint i = 0; i < n; i++)
    {
      plot->low = MIN (plot->low, points[i].left_mm.value - 2 * points[i].left_mm.u);
      plot->high = MAX (plot->high, points[i].left_mm.value + 2 * points[i].left_mm.u);
    }
  /* A line of letters fits above the highest and under the lowest. */
  room = 1.9 * plot->look->font / (plot->bottom - plot->top) * (plot->high - plot->low);
  plot->low = plot->low - room;
  plot->high += room;
}

/* @align: 0 left of the letters at @x, 0.5 middle, 1 right. Returns: width */
static double
put_text (const Plot *plot, double x, double y, double align, const WmPlotColour *colour,
          const char *text)
{
  g_autoptr (PangoLayout) layout = pango_layout_new (plot->look->context);
  PangoFontDescription *font = pango_font_description_from_string ("Cantarell, Sans");
  PangoRectangle logical;
  double width;

  pango_font_description_set_absolute_size (font, plot->look->font * PANGO_SCALE);
  pango_layout_set_font_description (layout, font);
  pango_font_description_free (font);
  pango_layout_set_text (layout, text, -1);
  pango_layout_get_extents (layout, NULL, &logical);
  width = (double)logical.width / PANGO_SCALE;
  set_colour (plot, colour);
  cairo_move_to (plot->cr, x - align * width,
                 y - (double)logical.height / PANGO_SCALE / 2);
  pango_cairo_show_layout (plot->cr, layout);
  cairo_new_path (plot->cr);
  return width;
}

/* A level across with its words above it at the left. */
static void
draw_level (const Plot *plot, double mm, const char *words, const WmPlotColour *colour,
            gboolean is_dashed)
{
  const double dash[] = { 3 * plot->look->line, 3 * plot->look->line };
  g_autofree char *value = wm_words_mm (plot->look->language, mm, 2);
  g_autofree char *text =
      g_strdup_printf ("%s  %s", wm_say (plot->look->language, words), value);
  double y = y_of (plot, mm);

  if (is_dashed)
    cairo_set_dash (plot->cr, dash, 2, 0);
  set_colour (plot, colour);
  cairo_set_line_width (plot->cr, plot->look->line);
  cairo_move_to (plot->cr, plot->left, y);
  cairo_line_to (plot->cr, plot->right, y);
  cairo_stroke (plot->cr);
  cairo_set_dash (plot->cr, NULL, 0, 0);
  put_text (plot, plot->left, y - 0.75 * plot->look->font, 0, colour, text);
}

/* The gauge rule: a tick a quarter, longer each year, which has its number. */
static void
draw_years (Plot *plot)
{
  double font = plot->look->font;
  int first = (int)ceil (plot->first * 4), last = (int)floor (plot->last * 4);
  double year_px = x_of (plot, plot->first + 1) - x_of (plot, plot->first);
  int every = MAX (1, (int)ceil (3.2 * font / year_px));

  set_colour (plot, &plot->look->dim);
  cairo_set_line_width (plot->cr, plot->look->line);
  cairo_move_to (plot->cr, plot->left, plot->bottom);
  cairo_line_to (plot->cr, plot->right, plot->bottom);
  for (int quarter = first; quarter <= last; quarter++)
    {
      double x = x_of (plot, quarter / 4.0);

      cairo_move_to (plot->cr, x, plot->bottom);
      cairo_rel_line_to (plot->cr, 0, (quarter % 4 == 0 ? 0.6 : 0.3) * font);
    }
  cairo_stroke (plot->cr);
  for (int quarter = first; quarter <= last; quarter++)
    {
      g_autofree char *year = g_strdup_printf ("%d", 1970 + quarter / 4);
      double x = x_of (plot, quarter / 4.0);

      if (quarter % 4 == 0 && quarter / 4 % every == 0
          && x + 1.3 * font <= plot->look->width)
        put_text (plot, x, plot->bottom + 1.3 * font, 0.5, &plot->look->dim, year);
    }
}

static void
draw_band (const Plot *plot)
{
  const WmForecast *f = &plot->wear->forecast;
  double lower[N_BAND + 1], upper[N_BAND + 1], central, at;
  double span = plot->last - f->first_years;

  cairo_save (plot->cr);
  cairo_rectangle (plot->cr, plot->left, plot->top, plot->right - plot->left,
                   plot->bottom - plot->top);
  cairo_clip (plot->cr);
  for (int i = 0; i <= N_BAND; i++)
    {
      at = f->first_years + span * i / N_BAND;
      wm_forecast_band (f, at, &central, &lower[i], &upper[i]);
      cairo_line_to (plot->cr, x_of (plot, at), y_of (plot, upper[i]));
    }
  for (int i = N_BAND; i >= 0; i--)
    cairo_line_to (plot->cr, x_of (plot, f->first_years + span * i / N_BAND),
                   y_of (plot, lower[i]));
  cairo_close_path (plot->cr);
  set_colour (plot, &plot->look->band);
  cairo_fill (plot->cr);
  set_colour (plot, &plot->look->accent);
  cairo_set_line_width (plot->cr, 1.6 * plot->look->line);
  wm_forecast_band (f, f->first_years, &central, &lower[0], &upper[0]);
  cairo_move_to (plot->cr, x_of (plot, f->first_years), y_of (plot, central));
  wm_forecast_band (f, plot->last, &central, &lower[0], &upper[0]);
  cairo_line_to (plot->cr, x_of (plot, plot->last), y_of (plot, central));
  cairo_stroke (plot->cr);
  cairo_restore (plot->cr);
}

/* The place where the careful bound is at the least, and its day. */
static void
draw_careful (const Plot *plot)
{
  const WmForecast *f = &plot->wear->forecast;
  double x, y, r = 0.36 * plot->look->font;
  g_autofree char *day = NULL, *date = NULL;

  if (f->kind != WM_FORECAST_DATED || f->careful_years > plot->last)
    return;
  x = x_of (plot, f->careful_years);
  y = y_of (plot, f->minimum_mm);
  set_colour (plot, &plot->look->limit);
  cairo_set_line_width (plot->cr, plot->look->line);
  cairo_move_to (plot->cr, x, y);
  cairo_line_to (plot->cr, x, plot->bottom);
  cairo_stroke (plot->cr);
  cairo_arc (plot->cr, x, y, r, 0, 2 * G_PI);
  set_colour (plot, &plot->look->ground);
  cairo_fill_preserve (plot->cr);
  set_colour (plot, &plot->look->limit);
  cairo_set_line_width (plot->cr, 1.6 * plot->look->line);
  cairo_stroke (plot->cr);
  day = wm_wear_date (f->careful_years);
  date = wm_words_date (plot->look->language, day);
  put_text (plot, x - 0.6 * plot->look->font, y + 0.85 * plot->look->font, 1.0,
            &plot->look->text, date);
}

/* Filled: fitted. Hollow: of a part since mended, or after the work. */
static void
draw_points (const Plot *plot)
{
  double r = 0.3 * plot->look->font;

  cairo_set_line_width (plot->cr, 1.3 * plot->look->line);
  for (guint i = 0; i < plot->wear->points->len; i++)
    {
      const WmWearPoint *p = &g_array_index (plot->wear->points, WmWearPoint, i);
      double x = x_of (plot, years_of (p)), y = y_of (plot, p->left_mm.value);
      double y1 = y_of (plot, p->left_mm.value + 2 * p->left_mm.u);
      double y2 = y_of (plot, p->left_mm.value - 2 * p->left_mm.u);
      gboolean hollow = p->is_old || (p->is_after && plot->wear->is_renewed);

      set_colour (plot, &plot->look->text);
      cairo_move_to (plot->cr, x, y1);
      cairo_line_to (plot->cr, x, y2);
      cairo_move_to (plot->cr, x - 0.7 * r, y1);
      cairo_rel_line_to (plot->cr, 1.4 * r, 0);
      cairo_move_to (plot->cr, x - 0.7 * r, y2);
      cairo_rel_line_to (plot->cr, 1.4 * r, 0);
      cairo_stroke (plot->cr);
      cairo_arc (plot->cr, x, y, r, 0, 2 * G_PI);
      set_colour (plot, hollow ? &plot->look->ground : &plot->look->text);
      cairo_fill_preserve (plot->cr);
      set_colour (plot, &plot->look->text);
      cairo_stroke (plot->cr);
    }
}

void
wm_wear_plot_draw (cairo_t *cr, const WmWear *wear, const WmPlotLook *look)
{
  Plot plot = { .cr = cr, .wear = wear, .look = look };
  double font = look->font;

  plot.left = 0.6 * font;
  plot.right = look->width - 0.6 * font;
  plot.top = 0.4 * font;
  plot.bottom = look->height - 2.1 * font;
  choose_range (&plot);
  cairo_save (cr);
  cairo_new_path (cr);
  if (wear->has_forecast && wear->forecast.kind != WM_FORECAST_TOO_CLOSE)
    draw_band (&plot);
  if (isfinite (wear->made_mm))
    draw_level (&plot, wear->made_mm, N_ ("as made"), &look->dim, TRUE);
  draw_level (&plot, wear->minimum_mm, N_ ("least allowed"), &look->limit, FALSE);
  draw_years (&plot);
  draw_points (&plot);
  if (wear->has_forecast)
    draw_careful (&plot);
  cairo_restore (cr);
}
