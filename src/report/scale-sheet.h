/* scale-sheet.h: the printed sheet that gives photos their scale
 *
 * Two fields with marks that the program finds by itself (photo/sheet-find.h), mm
 * scales, grey steps, a place for a pin that shows where the light comes from, rings that
 * show a tilted camera, and a 100 mm rule to check the printer by.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gio/gio.h>

#include "photo/sheet-form.h"
#include "report/sheet.h"

/* Where the field's first mark begins, mm from the page's top left corner. */
WmPoint wm_scale_sheet_origin (WmPaper paper, WmSheetField field);

/* The page; @cr in points. */
void wm_scale_sheet_draw (WmPaper paper, WmLanguage *language, cairo_t *cr);

/* Writes it as PDF; errors as wm_pdf_write_file (). */
gboolean wm_scale_sheet_write_pdf (WmPaper paper, WmLanguage *language, const char *path,
                                   GError **error);
