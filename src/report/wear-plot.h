/* wear-plot.h: the wear of one part drawn over time
 *
 * Thickness against date: readings with their expanded uncertainty, the fitted line with
 * its band, as made, the least allowed, and where the careful bound reaches it. The same
 * drawing is in the window and on paper.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <cairo.h>
#include <pango/pangocairo.h>

#include "report/outlook.h"

typedef struct
{
  double red, green, blue, alpha;
} WmPlotColour;

typedef struct
{
  double width, height; /* in units of the cairo context */
  double font;          /* size of its letters, likewise */
  double line;          /* thickness of a hairline, likewise */
  PangoContext *context;
  WmLanguage *language;
  WmPlotColour text, dim, band, accent, limit, ground;
} WmPlotLook;

/* Top left corner at the origin. */
void wm_wear_plot_draw (cairo_t *cr, const WmWear *wear, const WmPlotLook *look);
