/* block-short.c: "In short": one row a finding
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>

#include "report/blocks.h"
#include "report/words.h"

/* Where the columns begin, mm, and the row's least height (look book, section 6). */
#define WM_FOUND_MM 15.0
#define WM_DONE_MM 67.0
#define WM_TESTED_MM 113.0
#define WM_NOW_MM 150.0
#define WM_ROW_MM 10.4

double
wm_block_in_short (const WmPageContext *context, gconstpointer item, double y_mm)
{
  WmSheet *sheet = context->sheet;
  WmLanguage *language = sheet->language;
  double height;

  wm_sheet_tag (sheet, "H2");
  height = wm_sheet_text (sheet, 0, y_mm, 0, WM_TEXT_HEADING,
                          wm_say (language, N_ ("In short")));
  wm_sheet_tag_end (sheet, "H2");
  height += 0.8;
  if (context->data->findings->len == 0)
    {
      wm_sheet_tag (sheet, "P");
      height +=
          wm_sheet_text (sheet, 0, y_mm + height, WM_SHEET_WIDTH_MM, WM_TEXT_BODY,
                         wm_say (language, N_ ("Nothing was found that needs work.")));
      wm_sheet_tag_end (sheet, "P");
      return height + 2;
    }

  wm_sheet_tag (sheet, "P");
  wm_sheet_text (sheet, 0, y_mm + height, 0, WM_TEXT_SMALL_STRONG,
                 wm_say (language, N_ ("Place")));
  wm_sheet_text (sheet, WM_FOUND_MM, y_mm + height, 0, WM_TEXT_SMALL_STRONG,
                 wm_say (language, N_ ("Found")));
  wm_sheet_text (sheet, WM_DONE_MM, y_mm + height, 0, WM_TEXT_SMALL_STRONG,
                 wm_say (language, N_ ("Done")));
  wm_sheet_text (sheet, WM_TESTED_MM, y_mm + height, 0, WM_TEXT_SMALL_STRONG,
                 wm_say (language, N_ ("Tested")));
  height += wm_sheet_text_right (sheet, WM_SHEET_WIDTH_MM, y_mm + height,
                                 WM_TEXT_SMALL_STRONG, wm_say (language, N_ ("Now")));
  wm_sheet_tag_end (sheet, "P");
  height += 0.8;
  wm_sheet_line (sheet, 0, y_mm + height, WM_SHEET_WIDTH_MM, 0.2);
  return height;
}

double
wm_block_short_row (const WmPageContext *context, gconstpointer item, double y_mm)
{
  const WmFinding *finding = item;
  WmSheet *sheet = context->sheet;
  WmLanguage *language = sheet->language;
  WmCheck *check = finding->check;
  WmSeverity now = check->after_severity != WM_SEVERITY_NOT_LOOKED_AT
                       ? check->after_severity
                       : check->severity;
  g_autofree char *sentence = wm_finding_sentence (language, finding);
  g_autofree char *done = wm_finding_done (language, finding);
  g_autofree char *tested = wm_finding_tested (language, finding);
  double top = y_mm + 1.2;
  double height;
  double least;
  double middle;

  wm_sheet_tag (sheet, "P");
  height = wm_sheet_text (sheet, WM_FOUND_MM, top, WM_DONE_MM - WM_FOUND_MM - 3,
                          WM_TEXT_STRONG, sentence);
  height += wm_sheet_text (sheet, WM_FOUND_MM, top + height, 0, WM_TEXT_SMALL,
                           wm_words_severity (language, check->severity));
  least = wm_sheet_text (sheet, WM_DONE_MM, top, WM_TESTED_MM - WM_DONE_MM - 3,
                         WM_TEXT_BODY, done);
  height = MAX (height, least);
  least = wm_sheet_text (sheet, WM_TESTED_MM, top, WM_NOW_MM - WM_TESTED_MM - 3,
                         WM_TEXT_BODY, tested);
  height = MAX (MAX (height, least) + 2.4, WM_ROW_MM);
  middle = y_mm + height / 2;
  wm_sheet_text_right (sheet, WM_SHEET_WIDTH_MM - 8, middle - 2.1, WM_TEXT_STRONG,
                       wm_words_severity (language, now));
  wm_sheet_tag_end (sheet, "P");
  wm_sheet_glyph (sheet, 4.6, middle, WM_MARK_R_PAPER_LINE_MM, check->severity,
                  (int)MAX (check->number, 0));
  wm_sheet_glyph (sheet, WM_SHEET_WIDTH_MM - 3.2, middle, WM_MARK_R_PAPER_LINE_MM, now,
                  0);
  wm_sheet_line (sheet, 0, y_mm + height, WM_SHEET_WIDTH_MM, 0.1);
  return height;
}
