/* mark-text.c: the little text a mark carries
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/mark-text.h"

#include <pango/pangocairo.h>

/* The look book's pictures use Cantarell; any sans stands in for it. */
#define DEFAULT_FONT "Cantarell, Sans"

static PangoLayout *
lay_out (cairo_t *cr, const char *text, const char *font, double size, gboolean is_heavy)
{
  PangoLayout *layout = pango_cairo_create_layout (cr);
  PangoFontDescription *description = pango_font_description_new ();
  PangoAttrList *attributes = pango_attr_list_new ();

  pango_font_description_set_family (description, font != NULL ? font : DEFAULT_FONT);
  pango_font_description_set_weight (description, is_heavy ? PANGO_WEIGHT_ULTRABOLD
                                                           : PANGO_WEIGHT_BOLD);
  pango_font_description_set_absolute_size (description, size * PANGO_SCALE);
  pango_layout_set_font_description (layout, description);

  /* Figures of one width, so that numbers do not jump while a value changes. */
  pango_attr_list_insert (attributes, pango_attr_font_features_new ("tnum 1"));
  pango_layout_set_attributes (layout, attributes);
  pango_layout_set_text (layout, text, -1);

  pango_attr_list_unref (attributes);
  pango_font_description_free (description);
  return layout;
}

void
wm_mark_draw_text (cairo_t *cr, const char *text, const char *font, double size,
                   gboolean is_heavy, WmPoint middle)
{
  PangoLayout *layout = lay_out (cr, text, font, size, is_heavy);
  PangoRectangle ink, logical;
  double baseline = (double)pango_layout_get_baseline (layout) / PANGO_SCALE;

  pango_layout_get_extents (layout, &ink, &logical);

  /* Figures stand on the baseline and have one height: centre what is inked. */
  cairo_move_to (cr, middle.x - (double)(logical.x + logical.width / 2) / PANGO_SCALE,
                 middle.y - baseline + (baseline - (double)ink.y / PANGO_SCALE) / 2);
  pango_cairo_show_layout (cr, layout);
  g_object_unref (layout);
}

void
wm_mark_measure_text (cairo_t *cr, const char *text, const char *font, double size,
                      gboolean is_heavy, double *width, double *height)
{
  PangoLayout *layout = lay_out (cr, text, font, size, is_heavy);
  PangoRectangle ink, logical;

  pango_layout_get_extents (layout, &ink, &logical);
  *width = (double)logical.width / PANGO_SCALE;
  *height = (double)ink.height / PANGO_SCALE;
  g_object_unref (layout);
}
