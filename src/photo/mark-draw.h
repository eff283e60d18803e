/* mark-draw.h: the mark drawn with cairo
 *
 * The one place where a mark is painted: window, report, PNG and icons call it.
 * Text is laid out by pango, so it stays text in a PDF. Leaves the cairo context
 * as it was. Any thread, one context a thread.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/mark-look.h"

#include <cairo.h>

/* All of one mark: form, leader, disc, rings of selection. */
void wm_mark_draw (cairo_t *cr, const WmMarkLook *look, const WmMarkStyle *style);

/* Its layers, so that with several marks no form hides another's disc: draw all
 * forms, then all leaders, then all discs (wm_mark_draw_all () does). */
void wm_mark_draw_form (cairo_t *cr, const WmMarkLook *look, const WmMarkStyle *style);
void wm_mark_draw_leader (cairo_t *cr, const WmMarkLook *look, const WmMarkStyle *style);
void wm_mark_draw_disc (cairo_t *cr, const WmMarkLook *look, const WmMarkStyle *style);
void wm_mark_draw_all (cairo_t *cr, const WmMarkLook *looks, gsize n_looks,
                       const WmMarkStyle *style);

/**
 * wm_mark_draw_glyph:
 * @x, @y: middle
 * @radius: R, drawing units
 * @number: 0 for none
 *
 * The glyph alone, for chips, rows, reports and icons. Not looked at is a dotted
 * circle, not present a dotted circle with a bar.
 */
void wm_mark_draw_glyph (cairo_t *cr, double x, double y, double radius,
                         WmSeverity severity, int number, const WmMarkStyle *style);
