/* row-paper.c: a paper of rows: headings, sentences and amounts, page after page
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "report/row-paper.h"

#include <cairo-pdf.h>
#include <gio/gio.h>
#include <glib/gi18n.h>

#include "report/pdf-file.h"
#include "report/words.h"
#include "wearmark-config.h"

/* Look book, section 6, as the report. */
#define WM_HEAD_MM 14.0
#define WM_TOP_MM 26.0
#define WM_BOTTOM_MM 18.0
/* Room for a glyph before a line, for an amount after it, and in a frame. */
#define WM_INDENT_MM 10.0
#define WM_AMOUNT_MM 40.0
#define WM_FRAME_MM 3.0
/* Room for a signature, and its line. */
#define WM_SIGN_MM 16.0
#define WM_SIGN_WIDTH_MM 90.0

typedef enum
{
  ROW_TEXT,
  ROW_NOTICE,
  ROW_LINE
} RowKind;

typedef struct
{
  RowKind kind;
  const char *tag; /* of the PDF's structure */
  WmTextStyle style;
  char *text;
  char *amount;
  WmSeverity severity;
  int number;
  double above_mm;
  gboolean is_ruled;
  gboolean is_signed; /* a line to write on right above the text */
  gboolean keep_with_next;
  guint page;
  double y_mm;
} Row;

struct _WmRowPaper
{
  WmVisitData *data;
  WmLanguage *language;
  WmPaper paper;
  GArray *rows; /* Row */
  guint n_pages;
  gboolean is_laid_out;
};

static void
clear_row (gpointer data)
{
  Row *row = data;

  g_free (row->text);
  g_free (row->amount);
}

WmRowPaper *
wm_row_paper_new (WmVisitData *data, WmLanguage *language, WmPaper paper)
{
  WmRowPaper *self = g_new0 (WmRowPaper, 1);

  self->data = wm_visit_data_ref (data);
  self->language = wm_language_ref (language);
  self->paper = paper;
  self->rows = g_array_new (FALSE, TRUE, sizeof (Row));
  g_array_set_clear_func (self->rows, clear_row);
  return self;
}

void
wm_row_paper_free (WmRowPaper *self)
{
  g_array_unref (self->rows);
  wm_language_unref (self->language);
  wm_visit_data_unref (self->data);
  g_free (self);
}

/* ---- rows ------------------------------------------------------------------------- */

static void
add_row (WmRowPaper *self, const Row *row)
{
  g_array_append_vals (self->rows, row, 1);
  self->is_laid_out = FALSE;
}

void
wm_row_paper_title (WmRowPaper *self, const char *title, const char *lead)
{
  const Row head = { .kind = ROW_TEXT,
                     .tag = "H1",
                     .style = WM_TEXT_TITLE,
                     .text = g_strdup (title),
                     .keep_with_next = TRUE };
  const Row under = {
    .kind = ROW_TEXT, .tag = "P", .style = WM_TEXT_LEAD, .text = g_strdup (lead)
  };

  add_row (self, &head);
  add_row (self, &under);
}

void
wm_row_paper_heading (WmRowPaper *self, const char *text)
{
  const Row row = { .kind = ROW_TEXT,
                    .tag = "H2",
                    .style = WM_TEXT_HEADING,
                    .text = g_strdup (text),
                    .above_mm = 5.0,
                    .keep_with_next = TRUE };

  add_row (self, &row);
}

void
wm_row_paper_text (WmRowPaper *self, WmTextStyle style, const char *text)
{
  const Row row = {
    .kind = ROW_TEXT, .tag = "P", .style = style, .text = g_strdup (text), .above_mm = 0.8
  };

  add_row (self, &row);
}

void
wm_row_paper_notice (WmRowPaper *self, const char *text)
{
  const Row row = { .kind = ROW_NOTICE,
                    .tag = "P",
                    .style = WM_TEXT_STRONG,
                    .text = g_strdup (text),
                    .above_mm = 3.0 };

  add_row (self, &row);
}

void
wm_row_paper_line (WmRowPaper *self, gboolean strong, WmSeverity severity, int number,
                   const char *text, const char *amount)
{
  const Row row = { .kind = ROW_LINE,
                    .tag = "P",
                    .style = strong ? WM_TEXT_STRONG : WM_TEXT_BODY,
                    .text = g_strdup (text),
                    .amount = g_strdup (amount),
                    .severity = severity,
                    .number = number,
                    .above_mm = strong ? 2.4 : 0.4,
                    .is_ruled = strong,
                    .keep_with_next = strong };

  add_row (self, &row);
}

void
wm_row_paper_sign (WmRowPaper *self, const char *text)
{
  const Row row = { .kind = ROW_TEXT,
                    .tag = "P",
                    .style = WM_TEXT_SMALL,
                    .text = g_strdup (text),
                    .above_mm = WM_SIGN_MM,
                    .is_signed = TRUE };

  add_row (self, &row);
}

/* Height taken, with the space above. */
static double
place_row (WmSheet *sheet, const Row *row, double y_mm)
{
  double top = y_mm + row->above_mm;
  double height;

  if (row->is_ruled)
    wm_sheet_line (sheet, 0, y_mm + 1.0, WM_SHEET_WIDTH_MM, 0.1);
  if (row->is_signed)
    wm_sheet_line (sheet, 0, top - 0.6, WM_SIGN_WIDTH_MM, 0.2);
  wm_sheet_tag (sheet, row->tag);
  if (row->kind == ROW_NOTICE)
    {
      height =
          2 * WM_FRAME_MM
          + wm_sheet_text (sheet, WM_FRAME_MM, top + WM_FRAME_MM,
                           WM_SHEET_WIDTH_MM - 2 * WM_FRAME_MM, row->style, row->text);
      wm_sheet_frame (sheet, 0, top, WM_SHEET_WIDTH_MM, height);
    }
  else if (row->kind == ROW_LINE)
    {
      height = wm_sheet_text (sheet, WM_INDENT_MM, top,
                              WM_SHEET_WIDTH_MM - WM_INDENT_MM
                                  - (row->amount != NULL ? WM_AMOUNT_MM : 0),
                              row->style, row->text);
      if (row->amount != NULL)
        wm_sheet_text_right (sheet, WM_SHEET_WIDTH_MM, top, row->style, row->amount);
    }
  else
    {
      height = wm_sheet_text (sheet, 0, top, WM_SHEET_WIDTH_MM, row->style, row->text);
    }
  wm_sheet_tag_end (sheet, row->tag);
  if (row->severity != WM_SEVERITY_NOT_LOOKED_AT)
    wm_sheet_glyph (sheet, 3.4, top + 2.0, WM_MARK_R_PAPER_LEAST_MM, row->severity,
                    row->number);
  return row->above_mm + height;
}

static void
lay_out (WmRowPaper *self)
{
  WmSheet sheet;
  double y = WM_TOP_MM;
  guint page = 0;

  wm_sheet_init (&sheet, self->paper, self->language, FALSE);
  for (guint i = 0; i < self->rows->len; i++)
    {
      double run = 0;
      Row *row = &g_array_index (self->rows, Row, i);

      /* With the rows it must not be parted from. */
      for (guint k = i; k < self->rows->len; k++)
        {
          const Row *next = &g_array_index (self->rows, Row, k);

          run += place_row (&sheet, next, 0);
          if (!next->keep_with_next)
            break;
        }
      if (y > WM_TOP_MM && y + run > sheet.height_mm - WM_BOTTOM_MM)
        {
          page++;
          y = WM_TOP_MM;
        }
      row->page = page;
      row->y_mm = y;
      y += place_row (&sheet, row, 0);
    }
  self->n_pages = page + 1;
  self->is_laid_out = TRUE;
  wm_sheet_clear (&sheet);
}

guint
wm_row_paper_get_n_pages (WmRowPaper *self)
{
  if (!self->is_laid_out)
    lay_out (self);
  return self->n_pages;
}

/* ---- pages ------------------------------------------------------------------------ */

static void
draw_frame_of_page (WmRowPaper *self, WmSheet *sheet, guint page)
{
  double top = sheet->height_mm - 15;
  g_autofree char *pages = g_strdup_printf (wm_say (self->language, N_ ("Page %u of %u")),
                                            page + 1, self->n_pages);

  wm_sheet_text (sheet, 0, WM_HEAD_MM, 0, WM_TEXT_STRONG, self->data->shop_name);
  wm_sheet_text_right (sheet, WM_SHEET_WIDTH_MM, WM_HEAD_MM, WM_TEXT_STRONG,
                       self->data->piece->number);
  wm_sheet_rule (sheet, 0, WM_HEAD_MM + 5.2, WM_SHEET_WIDTH_MM);
  wm_sheet_line (sheet, 0, top, WM_SHEET_WIDTH_MM, 0.1);
  wm_sheet_text (sheet, 0, top + 1.6, 0, WM_TEXT_TINY, self->data->shop_contact);
  wm_sheet_text_right (sheet, WM_SHEET_WIDTH_MM, top + 1.6, WM_TEXT_TINY, pages);
}

void
wm_row_paper_draw_page (WmRowPaper *self, guint page, cairo_t *cr)
{
  WmSheet sheet;

  g_return_if_fail (page < wm_row_paper_get_n_pages (self));

  wm_sheet_init (&sheet, self->paper, self->language, FALSE);
  sheet.cr = cr;
  draw_frame_of_page (self, &sheet, page);
  for (guint i = 0; i < self->rows->len; i++)
    {
      const Row *row = &g_array_index (self->rows, Row, i);

      if (row->page == page)
        place_row (&sheet, row, row->y_mm);
    }
  wm_sheet_clear (&sheet);
}

static cairo_status_t
append_bytes (void *closure, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

gboolean
wm_row_paper_write_pdf (WmRowPaper *self, const char *name, const char *path,
                        GError **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  g_autoptr (GBytes) pdf = NULL;
  g_autofree char *title = g_strdup_printf ("%s, %s", self->data->piece->number, name);
  double width, height;
  cairo_surface_t *surface;
  cairo_status_t status;
  cairo_t *cr;

  wm_paper_get_size_mm (self->paper, &width, &height);
  surface = cairo_pdf_surface_create_for_stream (
      append_bytes, bytes, width * WM_POINTS_PER_MM, height * WM_POINTS_PER_MM);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, title);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_AUTHOR,
                                  self->data->shop_name);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATOR,
                                  "Wearmark " WM_VERSION);
  cr = cairo_create (surface);
  cairo_tag_begin (cr, "Document", "");
  for (guint page = 0; page < wm_row_paper_get_n_pages (self); page++)
    {
      wm_row_paper_draw_page (self, page, cr);
      cairo_show_page (cr);
    }
  cairo_tag_end (cr, "Document");
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
      return FALSE;
    }

  pdf = g_byte_array_free_to_bytes (g_steal_pointer (&bytes));
  return wm_pdf_write_file (pdf, path, error);
}
