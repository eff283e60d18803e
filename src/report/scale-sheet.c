/* scale-sheet.c: the printed sheet that gives photos their scale
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "report/scale-sheet.h"

#include <glib/gi18n.h>
#include <math.h>

#include "report/pdf-file.h"
#include "wearmark-config.h"

/* Where things stand, mm from the top of the page and from the text area's left edge.
 * All above 260 mm, so that the same page fits A4 and Letter. */
#define TITLE_MM 13.0
#define HOW_MM 23.0
#define LARGE_X_MM 7.0
#define LARGE_Y_MM 40.0
#define SMALL_X_MM 7.0
#define SMALL_Y_MM 158.0
#define SIDE_X_MM 94.0
#define SIDE_MM 80.0
#define STEPS_Y_MM 162.0
#define STEP_HIGH_MM 12.0
#define RINGS_Y_MM 199.0
#define RING_MM 14.0
#define CHECK_Y_MM 231.0
#define LABEL_Y_MM 242.0

/* Lightness L* of the grey steps, as coded in sRGB (IEC 61966-2-1, rounded). */
static const struct
{
  int lightness;
  double coded;
} steps[] = {
  { 100, 1.0 },  { 90, 0.886 }, { 80, 0.777 }, { 70, 0.671 },
  { 50, 0.466 }, { 35, 0.321 }, { 20, 0.189 }, { 0, 0.0 },
};

static double
points (double mm)
{
  return mm * WM_POINTS_PER_MM;
}

WmPoint
wm_scale_sheet_origin (WmPaper paper, WmSheetField field)
{
  double width, height;
  double left;

  wm_paper_get_size_mm (paper, &width, &height);
  left = (width - WM_SHEET_WIDTH_MM) / 2;
  return field == WM_SHEET_LARGE ? (WmPoint) { left + LARGE_X_MM, LARGE_Y_MM }
                                 : (WmPoint) { left + SMALL_X_MM, SMALL_Y_MM };
}

static void
draw_mark (cairo_t *cr, WmSheetField field, int index)
{
  double side = wm_sheet_form (field)->mark_mm;
  double ring = side * (1 - WM_SHEET_HOLE) / 2;
  WmPoint o = wm_sheet_mark_origin (field, index);
  WmPoint dots[WM_SHEET_N_MARKS];

  cairo_rectangle (cr, o.x, o.y, side, side);
  cairo_rectangle (cr, o.x + ring, o.y + ring, side - 2 * ring, side - 2 * ring);
  cairo_set_fill_rule (cr, CAIRO_FILL_RULE_EVEN_ODD);
  cairo_fill (cr);
  wm_sheet_mark_dots (field, index, dots);
  for (int i = 0; i <= index; i++)
    {
      cairo_arc (cr, dots[i].x, dots[i].y, WM_SHEET_DOT * side / 2, 0, 2 * G_PI);
      cairo_fill (cr);
    }
}

/* Ticks inwards from a field's lower or left edge, clear of the marks. */
static void
draw_ticks (cairo_t *cr, const WmSheetForm *form, gboolean is_upright)
{
  double quiet = form->mark_mm * (1 + 2 * WM_SHEET_QUIET);
  double room = (is_upright ? form->height_mm : form->width_mm) - 2 * quiet;
  int n = (int)floor (room / 10) * 10;
  double start = quiet + (room - n) / 2;

  for (int mm = 0; mm <= n; mm++)
    {
      double tick = mm % 10 == 0 ? 4.0 : mm % 5 == 0 ? 2.8 : 1.7;

      if (is_upright)
        {
          cairo_move_to (cr, 0, start + mm);
          cairo_rel_line_to (cr, tick, 0);
        }
      else
        {
          cairo_move_to (cr, start + mm, form->height_mm);
          cairo_rel_line_to (cr, 0, -tick);
        }
    }
  cairo_set_line_width (cr, 0.12);
  cairo_stroke (cr);
}

static void
draw_field (WmSheet *sheet, WmPaper paper, WmSheetField field)
{
  WmPoint origin = wm_scale_sheet_origin (paper, field);
  cairo_t *cr = sheet->cr;

  cairo_save (cr);
  cairo_scale (cr, WM_POINTS_PER_MM, WM_POINTS_PER_MM);
  cairo_translate (cr, origin.x, origin.y);
  cairo_set_source_rgb (cr, 0, 0, 0);
  for (int i = 0; i < WM_SHEET_N_MARKS; i++)
    draw_mark (cr, field, i);
  draw_ticks (cr, wm_sheet_form (field), FALSE);
  draw_ticks (cr, wm_sheet_form (field), TRUE);
  cairo_restore (cr);
}

static void
draw_steps (WmSheet *sheet)
{
  double wide = SIDE_MM / G_N_ELEMENTS (steps);
  cairo_t *cr = sheet->cr;

  wm_sheet_text (
      sheet, SIDE_X_MM, STEPS_Y_MM - 5, 0, WM_TEXT_SMALL_STRONG,
      wm_say (sheet->language, N_ ("Grey steps, for exposure: all must differ")));
  for (guint i = 0; i < G_N_ELEMENTS (steps); i++)
    {
      double x = SIDE_X_MM + i * wide;
      g_autofree char *label = g_strdup_printf ("%d", steps[i].lightness);

      cairo_rectangle (cr, points (sheet->left_mm + x), points (STEPS_Y_MM),
                       points (wide), points (STEP_HIGH_MM));
      cairo_set_source_rgb (cr, steps[i].coded, steps[i].coded, steps[i].coded);
      cairo_fill_preserve (cr);
      cairo_set_source_rgb (cr, 0.54, 0.54, 0.54);
      cairo_set_line_width (cr, points (0.1));
      cairo_stroke (cr);
      wm_sheet_text (sheet, x + 0.5, STEPS_Y_MM + STEP_HIGH_MM + 0.4, 0, WM_TEXT_TINY,
                     label);
    }
}

static void
stroke_ring (WmSheet *sheet, double x_mm, double radius_mm, double weight_mm)
{
  cairo_new_sub_path (sheet->cr);
  cairo_arc (sheet->cr, points (sheet->left_mm + x_mm), points (RINGS_Y_MM),
             points (radius_mm), 0, 2 * G_PI);
  cairo_set_line_width (sheet->cr, points (weight_mm));
  cairo_set_source_rgb (sheet->cr, 0.1, 0.1, 0.1);
  cairo_stroke (sheet->cr);
}

static void
stroke_spoke (WmSheet *sheet, double x_mm, double angle, double from_mm, double to_mm)
{
  double x = sheet->left_mm + x_mm;

  cairo_move_to (sheet->cr, points (x + from_mm * cos (angle)),
                 points (RINGS_Y_MM + from_mm * sin (angle)));
  cairo_line_to (sheet->cr, points (x + to_mm * cos (angle)),
                 points (RINGS_Y_MM + to_mm * sin (angle)));
  cairo_set_line_width (sheet->cr, points (0.15));
  cairo_set_source_rgb (sheet->cr, 0.1, 0.1, 0.1);
  cairo_stroke (sheet->cr);
}

/* A dial of twelve hours about the dot on which a pin is stood. */
static void
draw_light (WmSheet *sheet)
{
  double x = SIDE_X_MM + RING_MM;

  stroke_ring (sheet, x, RING_MM, 0.2);
  for (int hour = 0; hour < 12; hour++)
    stroke_spoke (sheet, x, hour * G_PI / 6, hour % 3 == 0 ? RING_MM - 3.5 : RING_MM - 2,
                  RING_MM);
  stroke_ring (sheet, x, 2.2, 0.15);
  cairo_new_sub_path (sheet->cr);
  cairo_arc (sheet->cr, points (sheet->left_mm + x), points (RINGS_Y_MM), points (0.5), 0,
             2 * G_PI);
  cairo_fill (sheet->cr);
  wm_sheet_text (sheet, SIDE_X_MM, RINGS_Y_MM - RING_MM - 5.4, 38, WM_TEXT_SMALL_STRONG,
                 wm_say (sheet->language, N_ ("Light")));
  wm_sheet_text (
      sheet, SIDE_X_MM, RINGS_Y_MM + RING_MM + 1, 38, WM_TEXT_TINY,
      wm_say (sheet->language,
              N_ ("A pin stood upright on the dot in a bead of wax: its shadow "
                  "points away from the light.")));
}

static void
draw_tilt (WmSheet *sheet)
{
  double x = SIDE_X_MM + SIDE_MM - RING_MM - 10;

  for (int i = 1; i <= 4; i++)
    stroke_ring (sheet, x, RING_MM * i / 4, i == 4 ? 0.3 : 0.15);
  for (int i = 0; i < 4; i++)
    stroke_spoke (sheet, x, i * G_PI / 2, 0, RING_MM);
  wm_sheet_text (sheet, x - RING_MM, RINGS_Y_MM - RING_MM - 5.4, 38, WM_TEXT_SMALL_STRONG,
                 wm_say (sheet->language, N_ ("Tilt")));
  wm_sheet_text (
      sheet, x - RING_MM, RINGS_Y_MM + RING_MM + 1, 38, WM_TEXT_TINY,
      wm_say (sheet->language, N_ ("The rings look round when the camera stands "
                                   "square above the sheet.")));
}

static void
draw_check (WmSheet *sheet)
{
  WmLanguage *language = sheet->language;
  g_autofree char *label = NULL;

  wm_sheet_rule (sheet, 0, CHECK_Y_MM, WM_SHEET_CHECK_MM);
  wm_sheet_text (sheet, 0, CHECK_Y_MM + 2.4, 0, WM_TEXT_TINY, "0");
  wm_sheet_text_right (sheet, WM_SHEET_CHECK_MM, CHECK_Y_MM + 2.4, WM_TEXT_TINY,
                       "100 mm");
  wm_sheet_text (sheet, WM_SHEET_CHECK_MM + 6, CHECK_Y_MM - 2.5, 68, WM_TEXT_BODY,
                 wm_say (language, N_ ("On the paper, by a steel rule: ______ mm")));
  label = g_strdup_printf (
      wm_say (language, N_ ("Wearmark scale sheet, form 1 · large field 160 × 110 mm, "
                            "small field 76 × 57 mm over the marks · program %s")),
      WM_VERSION);
  wm_sheet_line (sheet, 0, LABEL_Y_MM, WM_SHEET_WIDTH_MM, 0.1);
  wm_sheet_text (sheet, 0, LABEL_Y_MM + 1.6, 0, WM_TEXT_TINY, label);
  wm_sheet_text (
      sheet, 0, LABEL_Y_MM + 5.4, WM_SHEET_WIDTH_MM, WM_TEXT_TINY,
      wm_say (language, N_ ("Paper grows and shrinks with the damp by up to some "
                            "tenths of a percent (common practice, no source): "
                            "check the rule again now and then, and print a new "
                            "sheet when this one is bent or stained.")));
}

void
wm_scale_sheet_draw (WmPaper paper, WmLanguage *language, cairo_t *cr)
{
  WmSheet sheet;

  wm_sheet_init (&sheet, paper, language, FALSE);
  sheet.cr = cr;
  wm_sheet_tag (&sheet, "H1");
  wm_sheet_text (&sheet, 0, TITLE_MM, 0, WM_TEXT_TITLE,
                 wm_say (language, N_ ("Scale sheet")));
  wm_sheet_tag_end (&sheet, "H1");
  wm_sheet_tag (&sheet, "P");
  wm_sheet_text (
      &sheet, 0, HOW_MM, WM_SHEET_WIDTH_MM, WM_TEXT_BODY,
      wm_say (
          language,
          N_ ("Print at 100 %, then check the 100 mm below with a rule: the program asks "
              "what it measures if the printer did not keep the size. Lay the piece in a "
              "field, hold the camera square above it, and have three or four of that "
              "field's marks whole in the photo.")));
  wm_sheet_tag_end (&sheet, "P");
  wm_sheet_tag (&sheet, "Figure");
  draw_field (&sheet, paper, WM_SHEET_LARGE);
  draw_field (&sheet, paper, WM_SHEET_SMALL);
  draw_steps (&sheet);
  draw_light (&sheet);
  draw_tilt (&sheet);
  draw_check (&sheet);
  wm_sheet_tag_end (&sheet, "Figure");
  wm_sheet_clear (&sheet);
}

typedef struct
{
  WmPaper paper;
  WmLanguage *language;
} Job;

static void
draw_job (cairo_t *cr, gpointer user_data)
{
  Job *job = user_data;

  wm_scale_sheet_draw (job->paper, job->language, cr);
}

gboolean
wm_scale_sheet_write_pdf (WmPaper paper, WmLanguage *language, const char *path,
                          GError **error)
{
  Job job = { paper, language };
  double width, height;
  g_autoptr (GBytes) pdf = NULL;

  wm_paper_get_size_mm (paper, &width, &height);
  pdf = wm_pdf_make_page (width, height, wm_say (language, N_ ("Scale sheet")), draw_job,
                          &job, error);
  return pdf != NULL && wm_pdf_write_file (pdf, path, error);
}
