/* mark-text.h: the little text a mark carries
 *
 * Inside this room only.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/point.h"

#include <cairo.h>
#include <glib.h>

/* Weight 800; the middle of a capital's height on @middle, in the colour set. */
void wm_mark_draw_text (cairo_t *cr, const char *text, const char *font, double size,
                        gboolean is_heavy, WmPoint middle);

void wm_mark_measure_text (cairo_t *cr, const char *text, const char *font, double size,
                           gboolean is_heavy, double *width, double *height);
