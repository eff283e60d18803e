/* block-finding.c: one finding: the same place before and after, and its story
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>
#include <math.h>

#include "report/blocks.h"
#include "report/close-up.h"
#include "report/words.h"

/* Look book, section 6. */
#define WM_CLOSE_WIDTH_MM 85.0
#define WM_CLOSE_HEIGHT_MM 56.0

static void
place_empty (WmSheet *sheet, double x_mm, double y_mm, const char *text)
{
  wm_sheet_frame (sheet, x_mm, y_mm, WM_CLOSE_WIDTH_MM, WM_CLOSE_HEIGHT_MM);
  wm_sheet_tag (sheet, "P");
  wm_sheet_text (sheet, x_mm + 4, y_mm + WM_CLOSE_HEIGHT_MM / 2 - 2,
                 WM_CLOSE_WIDTH_MM - 8, WM_TEXT_SMALL, wm_say (sheet->language, text));
  wm_sheet_tag_end (sheet, "P");
}

static void
place_view (const WmPageContext *context, const WmBoxView *view, double x_mm, double y_mm,
            WmMark *mark, int number, WmSeverity severity)
{
  WmBoxMark box = { mark, number, severity };

  wm_sheet_tag (context->sheet, "Figure");
  wm_photo_box_draw (context->boxes, context->sheet, view, x_mm, y_mm, WM_CLOSE_WIDTH_MM,
                     WM_CLOSE_HEIGHT_MM, &box, mark != NULL ? 1 : 0, TRUE);
  wm_sheet_tag_end (context->sheet, "Figure");
}

/* Both close-ups with their captions. */
static double
place_close_ups (const WmPageContext *context, const WmFinding *finding, double y_mm)
{
  WmSheet *sheet = context->sheet;
  WmLanguage *language = sheet->language;
  WmCheck *check = finding->check;
  int number = (int)MAX (check->number, 0);
  double right = WM_CLOSE_WIDTH_MM + WM_SHEET_GUTTER_MM;
  double caption_mm = y_mm + WM_CLOSE_HEIGHT_MM + 1.4;
  const char *after_words = NULL;
  WmCloseUps close;
  double height;

  wm_close_ups_find (context->data, finding, WM_CLOSE_WIDTH_MM, WM_CLOSE_HEIGHT_MM,
                     &close);
  if (close.before.is_there)
    place_view (context, &close.before.view, 0, y_mm, close.before.mark, number,
                check->severity);
  else
    place_empty (sheet, 0, y_mm, N_ ("This place was not marked on a photo."));

  if (close.after.is_there)
    {
      place_view (context, &close.after.view, right, y_mm, close.after.mark, number,
                  check->after_severity);
      after_words =
          close.in_register ? N_ ("After, same place, same scale") : N_ ("After");
    }
  else if (context->finished)
    place_empty (sheet, right, y_mm, N_ ("There is no after photo of this place."));
  else if (close.before.is_there)
    {
      WmBoxView whole;

      /* Nothing to compare with yet: show where on the piece the place is. */
      wm_box_view_fit (&whole, close.before.view.photo, WM_CLOSE_WIDTH_MM,
                       WM_CLOSE_HEIGHT_MM);
      place_view (context, &whole, right, y_mm, close.before.mark, number,
                  check->severity);
      after_words = N_ ("Where it is");
    }

  wm_sheet_tag (sheet, "Caption");
  height = wm_sheet_text (sheet, 0, caption_mm, 0, WM_TEXT_SMALL,
                          wm_say (language, N_ ("Before")));
  if (after_words != NULL)
    wm_sheet_text (sheet, right, caption_mm, 0, WM_TEXT_SMALL,
                   wm_say (language, after_words));
  wm_sheet_tag_end (sheet, "Caption");
  return WM_CLOSE_HEIGHT_MM + 1.4 + height;
}

/* The four columns of the story. */
static double
place_story (const WmPageContext *context, const WmFinding *finding, double y_mm)
{
  WmSheet *sheet = context->sheet;
  WmLanguage *language = sheet->language;
  g_autofree char *found = wm_finding_found (language, context->data, finding);
  g_autofree char *done = wm_finding_done (language, finding);
  g_autofree char *tested = wm_finding_tested (language, finding);
  const char *headings[] = { N_ ("Found"), N_ ("Measured"), N_ ("Done"), N_ ("Tested") };
  const char *texts[] = { found, NULL, done, tested };
  const double column = (WM_SHEET_WIDTH_MM - 3 * WM_SHEET_GUTTER_MM) / 4;
  double tallest = 0;

  for (int i = 0; i < 4; i++)
    {
      double x = i * (column + WM_SHEET_GUTTER_MM);
      double height = 1;

      wm_sheet_line (sheet, x, y_mm, column, 0.3);
      wm_sheet_tag (sheet, "P");
      height += wm_sheet_text (sheet, x, y_mm + height, 0, WM_TEXT_SMALL_STRONG,
                               wm_say (language, headings[i]));
      height += 0.4;
      height +=
          texts[i] != NULL
              ? wm_sheet_text (sheet, x, y_mm + height, column, WM_TEXT_BODY, texts[i])
              : wm_block_measured (context, finding, x, y_mm + height, column);
      wm_sheet_tag_end (sheet, "P");
      tallest = MAX (tallest, height);
    }
  return tallest;
}

double
wm_block_finding (const WmPageContext *context, gconstpointer item, double y_mm)
{
  const WmFinding *finding = item;
  WmSheet *sheet = context->sheet;
  WmLanguage *language = sheet->language;
  WmCheck *check = finding->check;
  gboolean has_after = check->after_severity != WM_SEVERITY_NOT_LOOKED_AT;
  g_autofree char *sentence = wm_finding_sentence (language, finding);
  const char *was = wm_words_severity (language, check->severity);
  double height;
  double line;

  wm_sheet_glyph (sheet, 4.4, y_mm + 5.5, WM_MARK_R_PAPER_PICTURE_MM, check->severity,
                  (int)MAX (check->number, 0));
  if (has_after)
    wm_sheet_glyph (sheet, WM_SHEET_WIDTH_MM - 4.4, y_mm + 5.5,
                    WM_MARK_R_PAPER_PICTURE_MM, check->after_severity,
                    (int)MAX (check->number, 0));
  wm_sheet_tag (sheet, "H2");
  height =
      wm_sheet_text (sheet, 11, y_mm, WM_SHEET_WIDTH_MM - 24, WM_TEXT_SENTENCE, sentence);
  wm_sheet_tag_end (sheet, "H2");
  wm_sheet_tag (sheet, "P");
  line = wm_sheet_text (sheet, 11, y_mm + height, 0, WM_TEXT_BODY, was);
  if (has_after)
    {
      double x = 11 + wm_sheet_text_width (sheet, WM_TEXT_BODY, was) + 2;

      wm_sheet_arrow (sheet, x, y_mm + height + line / 2, 6);
      wm_sheet_text (sheet, x + 8, y_mm + height, 0, WM_TEXT_STRONG,
                     wm_words_severity (language, check->after_severity));
    }
  wm_sheet_tag_end (sheet, "P");
  height += line + 2;
  height += place_close_ups (context, finding, y_mm + height);
  height += 2;
  height += place_story (context, finding, y_mm + height);
  height += wm_block_wear (context, finding, y_mm + height);
  return height + 4;
}
