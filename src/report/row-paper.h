/* row-paper.h: a paper of rows: headings, sentences and amounts, page after page
 *
 * For papers without photos. Rows are added from top to bottom, each as high as its text;
 * the pages, with the shop's head and the foot, are made when it is written.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "report/sheet.h"
#include "report/visit-data.h"

typedef struct _WmRowPaper WmRowPaper;

/* Keeps references to both. */
WmRowPaper *wm_row_paper_new (WmVisitData *data, WmLanguage *language, WmPaper paper);
void wm_row_paper_free (WmRowPaper *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (WmRowPaper, wm_row_paper_free)

/* All texts are in the paper's language already, and copied. */

/* "H1" with a sentence under it. */
void wm_row_paper_title (WmRowPaper *self, const char *title, const char *lead);
/* A heading; never the last row of a page. */
void wm_row_paper_heading (WmRowPaper *self, const char *text);
/* A sentence over the whole width. */
void wm_row_paper_text (WmRowPaper *self, WmTextStyle style, const char *text);
/* A sentence in a frame: what must not be missed. */
void wm_row_paper_notice (WmRowPaper *self, const char *text);

/**
 * wm_row_paper_line:
 * @severity: of the glyph before it; NOT_LOOKED_AT: none
 * @number: in the glyph
 * @amount: (nullable): at the right edge
 *
 * A line of a list; @strong begins a group and has a rule above, and stays with the row
 * after it.
 */
void wm_row_paper_line (WmRowPaper *self, gboolean strong, WmSeverity severity,
                        int number, const char *text, const char *amount);

/* Room to sign, and under the line what goes there. */
void wm_row_paper_sign (WmRowPaper *self, const char *text);

guint wm_row_paper_get_n_pages (WmRowPaper *self);
/* Page from 0; @cr in points. */
void wm_row_paper_draw_page (WmRowPaper *self, guint page, cairo_t *cr);
/* Errors as wm_pdf_write_file (). @name: what the paper is, for the file's properties */
gboolean wm_row_paper_write_pdf (WmRowPaper *self, const char *name, const char *path,
                                 GError **error);
