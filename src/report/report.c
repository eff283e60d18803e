/* report.c: the before/after report of one visit, page by page
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "report/report.h"

#include <cairo-pdf.h>
#include <gio/gio.h>
#include <glib/gi18n.h>

#include "report/blocks.h"
#include "report/pdf-file.h"
#include "report/words.h"
#include "wearmark-config.h"

/* Look book, section 6: margins 16 top, 18 bottom; the head and the foot lie in them. */
#define WM_HEAD_MM 14.0
#define WM_TOP_MM 26.0
#define WM_BOTTOM_MM 18.0

/* A block higher than a page (a long note) goes on over the next pages. So much of it
 * stands on both, the height of the largest line that runs on (14 pt), so that no line
 * is cut in two on either. */
#define WM_REPEATED_MM 6.5
/* Such a block may begin so far down a page: below its headings (our choice). */
#define WM_HEADINGS_MM 40.0

typedef struct
{
  WmBlockUse use;
  guint page;
  guint last_page; /* above page only if it is higher than a page */
  double y_mm;     /* on page */
} WmPlacedBlock;

struct _WmReport
{
  WmVisitData *data;
  WmOutlook *outlook;
  WmLanguage *language;
  WmReportOptions options;
  WmPhotoBoxes boxes;
  GArray *blocks; /* WmPlacedBlock */
  guint n_pages;
};

/* ---- what goes on the pages ------------------------------------------------ */

static void
add_block (WmReport *self, WmPlaceBlock place, gconstpointer item, gboolean keep,
           gboolean own_page)
{
  WmPlacedBlock block = { .use = { place, item, keep, own_page } };

  g_array_append_val (self->blocks, block);
}

static void
add_checklist (WmReport *self)
{
  const char *part = NULL;

  add_block (self, wm_block_list_heading, NULL, TRUE, FALSE);
  for (guint i = 0; i < self->data->checks->len; i++)
    {
      WmCheck *check = g_ptr_array_index (self->data->checks, i);

      if (i == 0 || g_strcmp0 (part, check->part) != 0)
        add_block (self, wm_block_list_part, check, TRUE, FALSE);
      add_block (self, wm_block_list_check, check, FALSE, FALSE);
      part = check->part;
    }
}

static void
add_final_tests (WmReport *self)
{
  gboolean first = TRUE;

  for (guint i = 0; i < self->data->proofs->len; i++)
    {
      WmProof *proof = g_ptr_array_index (self->data->proofs, i);

      if (!wm_id_is_none (&proof->check_id))
        continue;
      if (first)
        add_block (self, wm_block_tests_heading, NULL, TRUE, FALSE);
      first = FALSE;
      add_block (self, wm_block_test, proof, FALSE, FALSE);
    }
}

static void
choose_blocks (WmReport *self, gboolean signatures_first)
{
  WmVisitData *data = self->data;

  g_array_set_size (self->blocks, 0);
  add_block (self, wm_block_title, NULL, TRUE, FALSE);
  add_block (self, wm_block_facts, NULL, FALSE, FALSE);
  add_block (self, wm_block_overview, NULL, FALSE, FALSE);
  add_block (self, wm_block_in_short, NULL, data->findings->len > 0, FALSE);
  for (guint i = 0; i < data->findings->len; i++)
    add_block (self, wm_block_short_row, g_ptr_array_index (data->findings, i), FALSE,
               FALSE);
  if (data->visit->next_check_on != NULL)
    add_block (self, wm_block_come_back, NULL, FALSE, FALSE);
  add_block (self, wm_block_good_to_know, NULL, FALSE, FALSE);
  if (signatures_first)
    add_block (self, wm_block_signatures, NULL, FALSE, FALSE);
  for (guint i = 0; i < data->findings->len; i++)
    add_block (self, wm_block_finding, g_ptr_array_index (data->findings, i), FALSE,
               i == 0);
  add_checklist (self);
  add_final_tests (self);
  if (!signatures_first)
    add_block (self, wm_block_signatures, NULL, FALSE, FALSE);
}

/* ---- on which page -------------------------------------------------------- */

static void
make_context (WmReport *self, WmSheet *sheet, WmPageContext *out_context)
{
  out_context->data = self->data;
  out_context->boxes = &self->boxes;
  out_context->sheet = sheet;
  out_context->outlook = self->outlook;
  out_context->finished =
      wm_visit_data_find_overview (self->data, WM_PHOTO_AFTER) != NULL;
}

/* How much of a block that goes on over several pages each of them takes. */
static double
get_slice_mm (const WmSheet *sheet)
{
  return sheet->height_mm - WM_BOTTOM_MM - WM_TOP_MM - WM_REPEATED_MM;
}

/* Height of block @i with all the blocks it must not be parted from. */
static double
get_run_height (WmReport *self, const WmSheet *sheet, const double *heights, guint i)
{
  const double page_mm = get_slice_mm (sheet) + WM_REPEATED_MM;
  double run = 0;

  for (;; i++)
    {
      run += heights[i] > page_mm ? page_mm - WM_HEADINGS_MM : heights[i];
      if (i + 1 >= self->blocks->len
          || !g_array_index (self->blocks, WmPlacedBlock, i).use.keep_with_next)
        return run;
    }
}

/* Puts @block at @page and @y_mm, and moves both to where it ends. */
static void
place_block (WmPlacedBlock *block, const WmSheet *sheet, double height_mm, guint *page,
             double *y_mm)
{
  block->page = *page;
  block->y_mm = *y_mm;
  *y_mm += height_mm;
  while (*y_mm > sheet->height_mm - WM_BOTTOM_MM)
    {
      (*page)++;
      *y_mm -= get_slice_mm (sheet);
    }
  block->last_page = *page;
}

static void
lay_out (WmReport *self)
{
  WmSheet sheet;
  WmPageContext context;
  g_autofree double *heights = g_new (double, self->blocks->len);
  double y = WM_TOP_MM;
  guint page = 0;

  wm_sheet_init (&sheet, self->options.paper, self->language, self->options.grey);
  make_context (self, &sheet, &context);
  for (guint i = 0; i < self->blocks->len; i++)
    {
      WmPlacedBlock *block = &g_array_index (self->blocks, WmPlacedBlock, i);

      heights[i] = block->use.place (&context, block->use.item, 0);
    }

  for (guint i = 0; i < self->blocks->len; i++)
    {
      WmPlacedBlock *block = &g_array_index (self->blocks, WmPlacedBlock, i);
      double bottom = sheet.height_mm - WM_BOTTOM_MM;

      if (y > WM_TOP_MM
          && ((block->use.own_page && page == 0)
              || y + get_run_height (self, &sheet, heights, i) > bottom))
        {
          page++;
          y = WM_TOP_MM;
        }
      place_block (block, &sheet, heights[i], &page, &y);
    }
  self->n_pages = page + 1;
  wm_sheet_clear (&sheet);
}

static gboolean
is_signed_on_first_page (WmReport *self)
{
  for (guint i = 0; i < self->blocks->len; i++)
    {
      WmPlacedBlock *block = &g_array_index (self->blocks, WmPlacedBlock, i);

      if (block->use.place == wm_block_signatures)
        return block->page == 0;
    }
  return FALSE;
}

WmPaper
wm_report_get_paper (WmArchive *archive)
{
  g_autofree char *paper = wm_archive_get_setting (archive, WM_SETTING_PAPER);

  return g_strcmp0 (paper, "letter") == 0 ? WM_PAPER_LETTER : WM_PAPER_A4;
}

WmReport *
wm_report_new (WmArchive *archive, WmTrade *trade, const WmId *visit_id,
               const WmReportOptions *options, GError **error)
{
  const WmReportOptions usual = { .paper = wm_report_get_paper (archive) };
  g_autoptr (WmVisitData) data = wm_visit_data_load (archive, trade, visit_id, error);
  g_autoptr (WmOutlook) outlook = NULL;
  WmReport *self;
  const char *tag;

  if (data == NULL)
    return NULL;
  /* Its date is not printed: that is the jeweller's, kept with the visit. */
  outlook = wm_outlook_load (archive, trade, visit_id, 0, error);
  if (outlook == NULL)
    return NULL;

  self = g_new0 (WmReport, 1);
  self->outlook = g_steal_pointer (&outlook);
  self->options = options != NULL ? *options : usual;
  tag = self->options.language != NULL ? self->options.language
        : data->owner != NULL          ? data->owner->language
                                       : NULL;
  self->language = wm_language_new (tag);
  self->options.language = NULL; /* the caller's text is not kept */
  self->data = g_steal_pointer (&data);
  self->blocks = g_array_new (FALSE, TRUE, sizeof (WmPlacedBlock));
  wm_photo_boxes_init (&self->boxes, self->data, self->options.size);
  choose_blocks (self, TRUE);
  lay_out (self);
  if (!is_signed_on_first_page (self))
    {
      /* Alone on a page they would look forgotten: they close the report instead. */
      choose_blocks (self, FALSE);
      lay_out (self);
    }
  return self;
}

void
wm_report_free (WmReport *self)
{
  wm_photo_boxes_clear (&self->boxes);
  g_array_unref (self->blocks);
  wm_language_unref (self->language);
  wm_visit_data_unref (self->data);
  wm_outlook_free (self->outlook);
  g_free (self);
}

void
wm_report_set_cancellable (WmReport *self, GCancellable *cancellable)
{
  g_set_object (&self->boxes.cancellable, cancellable);
}

guint
wm_report_get_n_pages (WmReport *self)
{
  return self->n_pages;
}

void
wm_report_get_page_size_mm (WmReport *self, double *out_width, double *out_height)
{
  wm_paper_get_size_mm (self->options.paper, out_width, out_height);
}

/* ---- drawing -------------------------------------------------------------- */

static void
draw_head (WmReport *self, WmSheet *sheet)
{
  wm_sheet_text (sheet, 0, WM_HEAD_MM, 0, WM_TEXT_STRONG, self->data->shop_name);
  wm_sheet_text_right (sheet, WM_SHEET_WIDTH_MM, WM_HEAD_MM, WM_TEXT_STRONG,
                       self->data->piece->number);
  wm_sheet_rule (sheet, 0, WM_HEAD_MM + 5.2, WM_SHEET_WIDTH_MM);
}

static char *
describe_foot (WmReport *self)
{
  WmLanguage *language = self->language;
  WmVisit *visit = self->data->visit;
  const char *type = wm_piece_type_words (language, self->data);
  const char *owner = self->data->owner != NULL && self->data->owner->name != NULL
                          ? self->data->owner->name
                          : "";
  g_autofree char *day = NULL;

  if (visit->handed_back_at_s != WM_UNKNOWN)
    {
      day = wm_words_day_of (language, visit->handed_back_at_s);
      /* Translators: piece, owner, date */
      return g_strdup_printf (wm_say (language, N_ ("%s of %s, handed back %s")), type,
                              owner, day);
    }
  day = visit->taken_in_at_s != WM_UNKNOWN
            ? wm_words_day_of (language, visit->taken_in_at_s)
            : g_strdup ("");
  /* Translators: piece, owner, date */
  return g_strdup_printf (wm_say (language, N_ ("%s of %s, taken in %s")), type, owner,
                          day);
}

static void
draw_foot (WmReport *self, WmSheet *sheet, guint page)
{
  double top = sheet->height_mm - 15;
  g_autofree char *foot = describe_foot (self);
  g_autofree char *pages = g_strdup_printf (wm_say (self->language, N_ ("Page %u of %u")),
                                            page + 1, self->n_pages);

  wm_sheet_line (sheet, 0, top, WM_SHEET_WIDTH_MM, 0.1);
  wm_sheet_text (sheet, 0, top + 1.6, 0, WM_TEXT_TINY, foot);
  wm_sheet_text_right (sheet, WM_SHEET_WIDTH_MM, top + 1.6, WM_TEXT_TINY, pages);
  wm_sheet_rule (sheet, 0, top + 6.3, 20);
  wm_sheet_text (
      sheet, 22.5, top + 5.9, 0, WM_TEXT_TINY,
      wm_say (self->language,
              N_ ("This rule is 20 mm long when the page is printed at full size.")));
}

/* The part of @block that @page shows, if any. */
static void
draw_block (const WmPlacedBlock *block, const WmPageContext *context, guint page)
{
  const WmSheet *sheet = context->sheet;
  double y_mm = block->y_mm - (page - block->page) * get_slice_mm (sheet);

  if (page < block->page || page > block->last_page)
    return;
  if (block->page == block->last_page)
    {
      block->use.place (context, block->use.item, y_mm);
      return;
    }
  cairo_save (sheet->cr);
  cairo_rectangle (sheet->cr, 0, WM_TOP_MM * WM_POINTS_PER_MM,
                   sheet->width_mm * WM_POINTS_PER_MM,
                   (sheet->height_mm - WM_BOTTOM_MM - WM_TOP_MM) * WM_POINTS_PER_MM);
  cairo_clip (sheet->cr);
  block->use.place (context, block->use.item, y_mm);
  cairo_restore (sheet->cr);
}

void
wm_report_draw_page (WmReport *self, guint page, cairo_t *cr)
{
  WmSheet sheet;
  WmPageContext context;

  g_return_if_fail (page < self->n_pages);

  wm_sheet_init (&sheet, self->options.paper, self->language, self->options.grey);
  sheet.cr = cr;
  make_context (self, &sheet, &context);
  draw_head (self, &sheet);
  for (guint i = 0; i < self->blocks->len; i++)
    draw_block (&g_array_index (self->blocks, WmPlacedBlock, i), &context, page);
  draw_foot (self, &sheet, page);
  wm_sheet_clear (&sheet);
}

/* ---- PDF ------------------------------------------------------------------ */

static cairo_status_t
append_bytes (void *closure, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

static void
set_metadata (WmReport *self, cairo_surface_t *surface)
{
  const char *type = wm_piece_type_words (self->language, self->data);
  g_autofree char *title = g_strdup_printf ("%s, %s", self->data->piece->number, type);

  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, title);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_AUTHOR,
                                  self->data->shop_name);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATOR,
                                  "Wearmark " WM_VERSION);
}

GBytes *
wm_report_make_pdf (WmReport *self, GError **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  double width;
  double height;
  cairo_surface_t *surface;
  cairo_t *cr;
  cairo_status_t status;

  wm_report_get_page_size_mm (self, &width, &height);
  surface = cairo_pdf_surface_create_for_stream (
      append_bytes, bytes, width * WM_POINTS_PER_MM, height * WM_POINTS_PER_MM);
  set_metadata (self, surface);
  cr = cairo_create (surface);
  cairo_tag_begin (cr, "Document", "");
  for (guint page = 0; page < self->n_pages; page++)
    {
      if (g_cancellable_set_error_if_cancelled (self->boxes.cancellable, error))
        break;
      wm_report_draw_page (self, page, cr);
      cairo_show_page (cr);
    }
  cairo_tag_end (cr, "Document");
  status = cairo_status (cr);
  cairo_destroy (cr);
  cairo_surface_finish (surface);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_status (surface);
  cairo_surface_destroy (surface);

  if (g_cancellable_is_cancelled (self->boxes.cancellable))
    {
      if (error != NULL && *error == NULL)
        g_cancellable_set_error_if_cancelled (self->boxes.cancellable, error);
      return NULL;
    }
  if (status != CAIRO_STATUS_SUCCESS)
    {
      g_set_error (error, G_IO_ERROR, G_IO_ERROR_FAILED, "PDF: %s",
                   cairo_status_to_string (status));
      return NULL;
    }
  return g_byte_array_free_to_bytes (g_steal_pointer (&bytes));
}

gboolean
wm_report_write_pdf (WmReport *self, const char *path, GError **error)
{
  g_autoptr (GBytes) pdf = wm_report_make_pdf (self, error);

  return pdf != NULL && wm_pdf_write_file (pdf, path, error);
}

char *
wm_report_suggest_name (WmReport *self)
{
  WmVisit *visit = self->data->visit;
  g_autoptr (GDateTime) day = visit->taken_in_at_s != WM_UNKNOWN
                                  ? g_date_time_new_from_unix_local (visit->taken_in_at_s)
                                  : NULL;
  g_autofree char *date = day != NULL ? g_date_time_format (day, "%Y-%m-%d") : NULL;

  return g_strdup_printf ("%s-%s.pdf", self->data->piece->number,
                          date != NULL ? date : "report");
}
