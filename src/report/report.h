/* report.h: the before/after report of one visit, page by page
 *
 * Made once from the archive, then independent of it: the same pages go to the
 * printer, to PDF and to the window. A report belongs to one thread at a time;
 * making and drawing may take seconds with large photos: not on the main thread,
 * but for the small pages of the window.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "report/photo-box.h"
#include "report/sheet.h"
#include "report/visit-data.h"

typedef struct
{
  WmPaper paper;
  WmReportSize size;
  gboolean grey;        /* grey fills in the marks, for a black-and-white printer */
  const char *language; /* (nullable): NULL for the owner's, else BCP 47 */
} WmReportOptions;

typedef struct _WmReport WmReport;

/**
 * wm_report_new:
 * @options: (nullable): A4, for print, in colour, in the owner's language
 *
 * Returns: (transfer full): NULL with the archive's error
 */
WmReport *wm_report_new (WmArchive *archive, WmTrade *trade, const WmId *visit_id,
                         const WmReportOptions *options, GError **error);
void wm_report_free (WmReport *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (WmReport, wm_report_free)

guint wm_report_get_n_pages (WmReport *self);
void wm_report_get_page_size_mm (WmReport *self, double *out_width, double *out_height);

/* @cr in points, page's top left corner at the origin. @page from 0. */
void wm_report_draw_page (WmReport *self, guint page, cairo_t *cr);

/* Cancelling leaves photos still to come out of the page; a PDF then is not written. */
void wm_report_set_cancellable (WmReport *self, GCancellable *cancellable);

/* Writes the PDF whole or not at all: first beside it, synced, then renamed. Errors:
 * G_FILE_ERROR (a sentence with the file's name), G_IO_ERROR, G_IO_ERROR_CANCELLED. */
gboolean wm_report_write_pdf (WmReport *self, const char *path, GError **error);

/* The same bytes without a file. */
GBytes *wm_report_make_pdf (WmReport *self, GError **error);

/* "2026-0151-Q-2026-11-26.pdf": a good name for the file. Caller frees. */
char *wm_report_suggest_name (WmReport *self);

/* The paper named in the archive's settings: "a4" or "letter". */
WmPaper wm_report_get_paper (WmArchive *archive);
