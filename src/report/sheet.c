/* sheet.c: a sheet of paper to write on, in millimetres
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "report/sheet.h"

#include <math.h>

/* Paper colours of the look book, section 3. */
#define WM_INK 0x1a / 255.0
#define WM_DIM 0x4a / 255.0
#define WM_LINE 0x8a / 255.0

static const struct
{
  double points;
  PangoWeight weight;
  gboolean dim;
} styles[] = {
  [WM_TEXT_TITLE] = { 22, PANGO_WEIGHT_ULTRABOLD, FALSE },
  [WM_TEXT_SENTENCE] = { 14, PANGO_WEIGHT_BOLD, FALSE },
  [WM_TEXT_LEAD] = { 11, PANGO_WEIGHT_NORMAL, TRUE },
  [WM_TEXT_HEADING] = { 13, PANGO_WEIGHT_BOLD, FALSE },
  [WM_TEXT_BODY] = { 9.5, PANGO_WEIGHT_NORMAL, FALSE },
  [WM_TEXT_STRONG] = { 9.5, PANGO_WEIGHT_BOLD, FALSE },
  [WM_TEXT_SMALL] = { 8, PANGO_WEIGHT_NORMAL, TRUE },
  [WM_TEXT_SMALL_STRONG] = { 8, PANGO_WEIGHT_BOLD, FALSE },
  [WM_TEXT_TINY] = { 7, PANGO_WEIGHT_NORMAL, TRUE },
};

/* "1.24 leading": from one line to the next, in type sizes (look book, section 2). */
#define WM_LEADING 1.24

static double
to_points (double mm)
{
  return mm * WM_POINTS_PER_MM;
}

void
wm_paper_get_size_mm (WmPaper paper, double *out_width_mm, double *out_height_mm)
{
  *out_width_mm = paper == WM_PAPER_LETTER ? 215.9 : 210.0;
  *out_height_mm = paper == WM_PAPER_LETTER ? 279.4 : 297.0;
}

void
wm_sheet_init (WmSheet *self, WmPaper paper, WmLanguage *language, gboolean grey)
{
  cairo_font_options_t *options = cairo_font_options_create ();

  self->cr = NULL;
  self->language = language;
  self->grey = grey;
  wm_paper_get_size_mm (paper, &self->width_mm, &self->height_mm);
  self->left_mm = (self->width_mm - WM_SHEET_WIDTH_MM) / 2.0;

  /* Letters are laid out as on paper whatever they are drawn on. */
  self->context = pango_font_map_create_context (pango_cairo_font_map_get_default ());
  cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  pango_cairo_context_set_font_options (self->context, options);
  pango_cairo_context_set_resolution (self->context, 72.0);
  pango_context_set_round_glyph_positions (self->context, FALSE);
  pango_context_set_language (
      self->context, pango_language_from_string (wm_language_get_tag (language)));
  cairo_font_options_destroy (options);
}

void
wm_sheet_clear (WmSheet *self)
{
  g_clear_object (&self->context);
  self->cr = NULL;
}

static PangoLayout *
make_layout (WmSheet *self, double width_mm, WmTextStyle style, const char *text)
{
  PangoLayout *layout = pango_layout_new (self->context);
  PangoFontDescription *font = pango_font_description_from_string ("Cantarell, Sans");
  PangoAttrList *attributes = pango_attr_list_new ();

  pango_font_description_set_weight (font, styles[style].weight);
  pango_font_description_set_absolute_size (font, styles[style].points * PANGO_SCALE);
  pango_attr_list_insert (attributes, pango_attr_font_features_new ("tnum=1"));
  pango_attr_list_insert (attributes,
                          pango_attr_line_height_new_absolute (
                              (int)(styles[style].points * WM_LEADING * PANGO_SCALE)));
  pango_layout_set_font_description (layout, font);
  pango_layout_set_attributes (layout, attributes);
  pango_layout_set_text (layout, text != NULL ? text : "", -1);
  if (width_mm > 0)
    {
      pango_layout_set_width (layout, (int)(to_points (width_mm) * PANGO_SCALE));
      pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
    }
  pango_attr_list_unref (attributes);
  pango_font_description_free (font);
  return layout;
}

static void
set_grey (cairo_t *cr, double value)
{
  cairo_set_source_rgb (cr, value, value, value);
}

/* Draws (if there is a context) and gives the layout's size in mm. */
static void
place_layout (WmSheet *self, PangoLayout *layout, double x_mm, double y_mm,
              WmTextStyle style, gboolean right, double *out_width_mm,
              double *out_height_mm)
{
  PangoRectangle logical;

  pango_layout_get_extents (layout, NULL, &logical);
  *out_width_mm = (double)logical.width / PANGO_SCALE / WM_POINTS_PER_MM;
  *out_height_mm = (double)logical.height / PANGO_SCALE / WM_POINTS_PER_MM;
  if (self->cr == NULL)
    return;

  set_grey (self->cr, styles[style].dim ? WM_DIM : WM_INK);
  cairo_move_to (self->cr, to_points (self->left_mm + x_mm - (right ? *out_width_mm : 0)),
                 to_points (y_mm));
  pango_cairo_show_layout (self->cr, layout);
}

double
wm_sheet_text (WmSheet *self, double x_mm, double y_mm, double width_mm,
               WmTextStyle style, const char *text)
{
  g_autoptr (PangoLayout) layout = make_layout (self, width_mm, style, text);
  double width;
  double height;

  place_layout (self, layout, x_mm, y_mm, style, FALSE, &width, &height);
  return height;
}

double
wm_sheet_text_right (WmSheet *self, double right_mm, double y_mm, WmTextStyle style,
                     const char *text)
{
  g_autoptr (PangoLayout) layout = make_layout (self, 0, style, text);
  double width;
  double height;

  place_layout (self, layout, right_mm, y_mm, style, TRUE, &width, &height);
  return height;
}

double
wm_sheet_text_width (WmSheet *self, WmTextStyle style, const char *text)
{
  g_autoptr (PangoLayout) layout = make_layout (self, 0, style, text);
  PangoRectangle logical;

  pango_layout_get_extents (layout, NULL, &logical);
  return (double)logical.width / PANGO_SCALE / WM_POINTS_PER_MM;
}

void
wm_sheet_line (WmSheet *self, double x_mm, double y_mm, double width_mm, double weight_mm)
{
  if (self->cr == NULL)
    return;
  set_grey (self->cr, weight_mm < 0.2 ? WM_LINE : WM_INK);
  cairo_set_line_width (self->cr, to_points (weight_mm));
  cairo_move_to (self->cr, to_points (self->left_mm + x_mm), to_points (y_mm));
  cairo_rel_line_to (self->cr, to_points (width_mm), 0);
  cairo_stroke (self->cr);
}

void
wm_sheet_rule (WmSheet *self, double x_mm, double y_mm, double length_mm)
{
  if (self->cr == NULL)
    return;

  /* Ticks 3, 5 and 7 px of the screen's rule are about these on paper. */
  set_grey (self->cr, WM_LINE);
  cairo_set_line_width (self->cr, to_points (0.1));
  cairo_move_to (self->cr, to_points (self->left_mm + x_mm), to_points (y_mm));
  cairo_rel_line_to (self->cr, to_points (length_mm), 0);
  for (int mm = 0; mm <= (int)length_mm; mm++)
    {
      double tick_mm = mm % 10 == 0 ? 1.9 : mm % 5 == 0 ? 1.35 : 0.8;

      cairo_move_to (self->cr, to_points (self->left_mm + x_mm + mm), to_points (y_mm));
      cairo_rel_line_to (self->cr, 0, to_points (tick_mm));
    }
  cairo_stroke (self->cr);
}

void
wm_sheet_glyph (WmSheet *self, double x_mm, double y_mm, double radius_mm,
                WmSeverity severity, int number)
{
  WmMarkStyle style;

  if (self->cr == NULL)
    return;
  wm_mark_style_init (&style);
  style.grey = self->grey;
  style.px = 0.24; /* a 300 dpi dot in points */
  wm_mark_draw_glyph (self->cr, to_points (self->left_mm + x_mm), to_points (y_mm),
                      to_points (radius_mm), severity, number, &style);
}

static void
rounded_path (cairo_t *cr, double x, double y, double width, double height, double radius)
{
  cairo_new_sub_path (cr);
  cairo_arc (cr, x + width - radius, y + radius, radius, -G_PI_2, 0);
  cairo_arc (cr, x + width - radius, y + height - radius, radius, 0, G_PI_2);
  cairo_arc (cr, x + radius, y + height - radius, radius, G_PI_2, G_PI);
  cairo_arc (cr, x + radius, y + radius, radius, G_PI, 3 * G_PI_2);
  cairo_close_path (cr);
}

void
wm_sheet_frame (WmSheet *self, double x_mm, double y_mm, double width_mm,
                double height_mm)
{
  if (self->cr == NULL)
    return;
  rounded_path (self->cr, to_points (self->left_mm + x_mm), to_points (y_mm),
                to_points (width_mm), to_points (height_mm), to_points (2.0));
  set_grey (self->cr, WM_INK);
  cairo_set_line_width (self->cr, to_points (0.3));
  cairo_stroke (self->cr);
}

void
wm_sheet_section (WmSheet *self, double x_mm, double y_mm, double radius_mm, double left)
{
  double x = to_points (self->left_mm + x_mm);
  double y = to_points (y_mm);
  double r = to_points (radius_mm);
  double share = CLAMP (left, 0.0, 1.0);
  /* Height of the flat above the middle, in radii: what is left stands on the
   * bottom of the circle. */
  double angle = asin (CLAMP (2 * share - 1, -1.0, 1.0));
  const double dash[] = { 0.8, 0.8 };

  if (self->cr == NULL)
    return;
  cairo_save (self->cr);
  cairo_new_path (self->cr); /* text leaves a current point behind */
  cairo_set_line_width (self->cr, 0.5);
  cairo_arc (self->cr, x, y, r, 0, 2 * G_PI);
  set_grey (self->cr, WM_DIM);
  cairo_set_dash (self->cr, dash, 2, 0);
  cairo_stroke (self->cr);
  cairo_set_dash (self->cr, NULL, 0, 0);
  if (share > 0)
    {
      cairo_new_sub_path (self->cr);
      cairo_arc (self->cr, x, y, r, -angle, G_PI + angle);
      cairo_close_path (self->cr);
      if (self->grey)
        set_grey (self->cr, 0.8);
      else
        cairo_set_source_rgb (self->cr, 0xb0 / 255.0, 0xd4 / 255.0, 0xe8 / 255.0);
      cairo_fill_preserve (self->cr);
      set_grey (self->cr, WM_INK);
      cairo_stroke (self->cr);
    }
  cairo_restore (self->cr);
}

void
wm_sheet_arrow (WmSheet *self, double x_mm, double y_mm, double width_mm)
{
  double x = to_points (self->left_mm + x_mm);
  double y = to_points (y_mm);
  double width = to_points (width_mm);

  if (self->cr == NULL)
    return;
  set_grey (self->cr, WM_INK);
  cairo_set_line_width (self->cr, 0.8);
  cairo_move_to (self->cr, x, y);
  cairo_line_to (self->cr, x + width, y);
  cairo_move_to (self->cr, x + width - 3, y - 2.4);
  cairo_line_to (self->cr, x + width, y);
  cairo_line_to (self->cr, x + width - 3, y + 2.4);
  cairo_stroke (self->cr);
}

void
wm_sheet_tag (WmSheet *self, const char *tag)
{
  if (self->cr != NULL)
    cairo_tag_begin (self->cr, tag, "");
}

void
wm_sheet_tag_end (WmSheet *self, const char *tag)
{
  if (self->cr != NULL)
    cairo_tag_end (self->cr, tag);
}
