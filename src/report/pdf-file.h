/* pdf-file.h: pages put into a PDF, and the PDF into a file, whole or not at all
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <cairo.h>
#include <gio/gio.h>

/* Draws one page; points, top left corner at the origin. */
typedef void (*WmPdfPage) (cairo_t *cr, gpointer user_data);

/**
 * wm_pdf_make_page:
 * @title: in the file's properties
 *
 * Returns: (transfer full): the bytes of a tagged PDF of one page, or NULL with
 * G_IO_ERROR_FAILED
 */
GBytes *wm_pdf_make_page (double width_mm, double height_mm, const char *title,
                          WmPdfPage draw, gpointer user_data, GError **error);

/* First beside it, synced, then renamed; what was there before is kept on failure.
 * Errors: G_FILE_ERROR, with a sentence that names the file. */
gboolean wm_pdf_write_file (GBytes *pdf, const char *path, GError **error);
