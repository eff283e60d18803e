/* sheet.h: a sheet of paper to write on, in millimetres
 *
 * Everything the papers of the shop are made of: text in the few sizes of the look
 * book, the gauge rule, glyphs, lines. The same calls measure (no cairo context) and
 * draw, so a block is as high as it was measured to be. The cairo context is in
 * points, as PDF and printing have it; a screen scales it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <cairo.h>
#include <pango/pangocairo.h>

#include "photo/mark-draw.h"
#include "report/language.h"

#define WM_POINTS_PER_MM (72.0 / 25.4)

/* Six columns of 25.7 mm with gutters of 4 mm, on A4 and on Letter (look book, 6). */
#define WM_SHEET_WIDTH_MM 174.0
#define WM_SHEET_COLUMN_MM 25.7
#define WM_SHEET_GUTTER_MM 4.0

typedef enum
{
  WM_PAPER_A4,    /* ISO 216: 210 x 297 mm */
  WM_PAPER_LETTER /* ASME Y14.1: 8.5 x 11 inches */
} WmPaper;

typedef enum
{
  WM_TEXT_TITLE,        /* 22 pt, heavy */
  WM_TEXT_SENTENCE,     /* 14 pt, bold */
  WM_TEXT_LEAD,         /* 13 pt */
  WM_TEXT_HEADING,      /* 13 pt, bold */
  WM_TEXT_BODY,         /* 9.5 pt */
  WM_TEXT_STRONG,       /* 9.5 pt, bold */
  WM_TEXT_SMALL,        /* 8 pt, dim */
  WM_TEXT_SMALL_STRONG, /* 8 pt, bold */
  WM_TEXT_TINY          /* 7 pt, dim */
} WmTextStyle;

typedef struct
{
  cairo_t *cr; /* NULL while measuring */
  PangoContext *context;
  WmLanguage *language;
  gboolean grey;
  double left_mm;   /* of the text area on the page */
  double height_mm; /* of the page */
  double width_mm;
} WmSheet;

/* @cr: (nullable): borrowed for as long as the sheet is in use. */
void wm_sheet_init (WmSheet *self, WmPaper paper, WmLanguage *language, gboolean grey);
void wm_sheet_clear (WmSheet *self);
void wm_paper_get_size_mm (WmPaper paper, double *out_width_mm, double *out_height_mm);

/**
 * wm_sheet_text:
 * @x_mm: from the left edge of the text area
 * @y_mm: top of the text, from the top of the page
 * @width_mm: wrapped within; 0: one line as wide as it is
 *
 * Returns: height taken, mm
 */
double wm_sheet_text (WmSheet *self, double x_mm, double y_mm, double width_mm,
                      WmTextStyle style, const char *text);

/* The same with the last letter at @right_mm. */
double wm_sheet_text_right (WmSheet *self, double right_mm, double y_mm,
                            WmTextStyle style, const char *text);

/* Width of one line of @text. */
double wm_sheet_text_width (WmSheet *self, WmTextStyle style, const char *text);

/* A hairline; @weight_mm 0.1 to 0.3. */
void wm_sheet_line (WmSheet *self, double x_mm, double y_mm, double width_mm,
                    double weight_mm);

/* The gauge rule in true millimetres: ticks of each mm, longer at 5 and 10. */
void wm_sheet_rule (WmSheet *self, double x_mm, double y_mm, double length_mm);

/* A severity's glyph of disc radius @radius_mm about a middle. */
void wm_sheet_glyph (WmSheet *self, double x_mm, double y_mm, double radius_mm,
                     WmSeverity severity, int number);

/* A frame of 0.3 mm with rounded corners. */
void wm_sheet_frame (WmSheet *self, double x_mm, double y_mm, double width_mm,
                     double height_mm);

/* The wire section: dashed as made, filled what is left (0 to 1 of the height). */
void
wm_sheet_section (WmSheet *self, double x_mm, double y_mm, double radius_mm, double left);

/* An arrow from left to right, @width_mm long. */
void wm_sheet_arrow (WmSheet *self, double x_mm, double y_mm, double width_mm);

/* PDF structure (PDF 32000-1, 14.8): "H1", "P", "Table", "TR" ... */
void wm_sheet_tag (WmSheet *self, const char *tag);
void wm_sheet_tag_end (WmSheet *self, const char *tag);
