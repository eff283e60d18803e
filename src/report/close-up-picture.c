/* close-up-picture.c: a finding's matched close-ups as one PNG
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "report/close-up-picture.h"

#include <glib/gi18n.h>
#include <math.h>

#include "photo/pixels.h"
#include "photo/png-write.h"
#include "report/blocks.h"
#include "report/close-up.h"

/* Layout, mm of the picture: boxes as in the report (look book, section 6), within a
 * white edge. */
#define BOX_WIDTH 85.0
#define BOX_HEIGHT 56.0
#define EDGE 5.0
#define HEAD 11.0
#define CAPTION 7.0
#define WIDTH (2 * BOX_WIDTH + WM_SHEET_GUTTER_MM + 2 * EDGE)
#define HEIGHT (HEAD + BOX_HEIGHT + CAPTION + EDGE)

/* Pixels a mm of the picture: 305 dots an inch, as fine as print is looked at. */
#define PX_PER_MM 12.0

static void
draw_side (WmPhotoBoxes *boxes, WmSheet *sheet, const WmCloseUp *close, double x_mm,
           int number, WmSeverity severity, const char *caption)
{
  WmBoxMark mark = { close->mark, number, severity };

  if (!close->is_there)
    return;
  wm_photo_box_draw (boxes, sheet, &close->view, x_mm, HEAD, BOX_WIDTH, BOX_HEIGHT, &mark,
                     close->mark != NULL ? 1 : 0, TRUE);
  wm_sheet_text (sheet, x_mm, HEAD + BOX_HEIGHT + 1.4, 0, WM_TEXT_SMALL,
                 wm_say (sheet->language, caption));
}

static void
draw (WmVisitData *data, const WmFinding *finding, const WmCloseUps *close,
      WmSheet *sheet)
{
  g_autofree char *sentence = wm_finding_sentence (sheet->language, finding);
  int number = (int)MAX (finding->check->number, 0);
  WmPhotoBoxes boxes;

  wm_photo_boxes_init (&boxes, data, WM_REPORT_MAIL);
  wm_sheet_text (sheet, 0, 3, 2 * BOX_WIDTH, WM_TEXT_HEADING, sentence);
  draw_side (&boxes, sheet, &close->before, 0, number, finding->check->severity,
             N_ ("Before"));
  draw_side (&boxes, sheet, &close->after, BOX_WIDTH + WM_SHEET_GUTTER_MM, number,
             finding->check->after_severity,
             close->in_register ? N_ ("After, same place, same scale") : N_ ("After"));
  wm_photo_boxes_clear (&boxes);
}

/* One calibrated scale over the whole picture: true mm a pixel; 0 when there is none. */
static double
get_mm_per_px (const WmCloseUps *close)
{
  const WmCloseUp *known = &close->before;
  const cairo_matrix_t *m = &known->view.to_box;
  double true_mm;

  if (!known->is_there || !(close->same_scale || !close->after.is_there))
    return 0;
  true_mm = wm_photo_px_per_true_mm (known->view.photo)
            * sqrt (fabs (m->xx * m->yy - m->xy * m->yx)) * PX_PER_MM;
  return isfinite (true_mm) && true_mm > 0 ? 1 / true_mm : 0;
}

gboolean
wm_close_up_picture_write (WmVisitData *data, const WmFinding *finding,
                           WmLanguage *language, const char *dest, GError **error)
{
  g_autoptr (WmPixels) pixels = NULL;
  WmPngNote note = { .title = data->piece->number,
                     .description = finding->check->fault != NULL
                                        ? finding->check->fault
                                        : finding->check->title };
  cairo_surface_t *surface;
  WmCloseUps close;
  WmSheet sheet;

  wm_close_ups_find (data, finding, BOX_WIDTH, BOX_HEIGHT, &close);
  if (!close.before.is_there && !close.after.is_there)
    {
      g_set_error (error, G_IO_ERROR, G_IO_ERROR_NOT_FOUND,
                   "finding %d is not marked on any photo", (int)finding->check->number);
      return FALSE;
    }
  pixels = wm_pixels_new ((int)ceil (WIDTH * PX_PER_MM), (int)ceil (HEIGHT * PX_PER_MM));
  if (pixels == NULL)
    {
      g_set_error (error, G_IO_ERROR, G_IO_ERROR_NO_SPACE, "not enough memory");
      return FALSE;
    }
  surface = wm_pixels_get_surface (pixels);
  wm_sheet_init (&sheet, WM_PAPER_A4, language, FALSE);
  sheet.cr = cairo_create (surface);
  sheet.left_mm = EDGE;
  cairo_set_source_rgb (sheet.cr, 1, 1, 1);
  cairo_paint (sheet.cr);
  cairo_scale (sheet.cr, PX_PER_MM / WM_POINTS_PER_MM, PX_PER_MM / WM_POINTS_PER_MM);
  draw (data, finding, &close, &sheet);
  cairo_destroy (sheet.cr);
  sheet.cr = NULL;
  wm_sheet_clear (&sheet);
  cairo_surface_flush (surface);
  cairo_surface_destroy (surface);
  note.mm_per_px = get_mm_per_px (&close);
  return wm_pixels_write_png (pixels, dest, &note, error);
}
