/* pdf-file.c: pages put into a PDF, and the PDF into a file, whole or not at all
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "report/pdf-file.h"

#include <cairo-pdf.h>
#include <glib/gi18n.h>

#include "photo/photo-error.h"
#include "report/sheet.h"
#include "wearmark-config.h"

static cairo_status_t
append_bytes (void *closure, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

GBytes *
wm_pdf_make_page (double width_mm, double height_mm, const char *title, WmPdfPage draw,
                  gpointer user_data, GError **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  cairo_surface_t *surface = cairo_pdf_surface_create_for_stream (
      append_bytes, bytes, width_mm * WM_POINTS_PER_MM, height_mm * WM_POINTS_PER_MM);
  cairo_t *cr = cairo_create (surface);
  cairo_status_t status;

  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, title);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATOR,
                                  "Wearmark " WM_VERSION);
  cairo_tag_begin (cr, "Document", "");
  draw (cr, user_data);
  cairo_tag_end (cr, "Document");
  cairo_show_page (cr);
  status = cairo_status (cr);
  cairo_destroy (cr);
  cairo_surface_finish (surface);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_status (surface);
  cairo_surface_destroy (surface);
  if (status != CAIRO_STATUS_SUCCESS)
    {
      g_set_error (error, G_IO_ERROR, G_IO_ERROR_FAILED, "PDF: %s",
                   cairo_status_to_string (status));
      return NULL;
    }
  return g_byte_array_free_to_bytes (g_steal_pointer (&bytes));
}

gboolean
wm_pdf_write_file (GBytes *pdf, const char *path, GError **error)
{
  g_autoptr (GError) problem = NULL;
  g_autofree char *name = NULL, *sentence = NULL;
  gsize size;
  const char *data = g_bytes_get_data (pdf, &size);

  if (g_file_set_contents_full (
          path, data, (gssize)size,
          G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE, 0666, &problem))
    return TRUE;
  /* A whole sentence in place of the system's words alone; the code stays. */
  name = wm_photo_display_name (path);
  sentence = g_strdup_printf (
      _ ("“%s” could not be written there. What was there before is kept."
         " Choose another place and try again."),
      name);
  g_set_error (error, problem->domain, problem->code, "%s (%s)", sentence,
               problem->message);
  return FALSE;
}
