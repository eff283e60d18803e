/* block-list.c: the whole checklist, unanswered checks included, and final tests
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>

#include "report/blocks.h"
#include "report/words.h"

#define WM_LIST_TEXT_MM 9.0
#define WM_LIST_NOTE_MM 84.0
#define WM_LIST_WORD_MM 174.0

double
wm_block_list_heading (const WmPageContext *context, gconstpointer item, double y_mm)
{
  WmSheet *sheet = context->sheet;
  WmLanguage *language = sheet->language;
  WmVisitData *data = context->data;
  guint open = wm_visit_data_count (data, WM_SEVERITY_NOT_LOOKED_AT);
  g_autofree char *counted =
      g_strdup_printf (wm_say (language, N_ ("%u of %u places were looked at.")),
                       data->checks->len - open, data->checks->len);
  double height;

  wm_sheet_tag (sheet, "H2");
  height = wm_sheet_text (sheet, 0, y_mm, 0, WM_TEXT_HEADING,
                          wm_say (language, N_ ("Everything on the list")));
  wm_sheet_tag_end (sheet, "H2");
  wm_sheet_tag (sheet, "P");
  height += wm_sheet_text (sheet, 0, y_mm + height, 0, WM_TEXT_SMALL, counted);
  if (open > 0 && data->visit->open_reason != NULL)
    {
      g_autofree char *reason =
          g_strdup_printf (wm_say (language, N_ ("Why some were not looked at: %s")),
                           data->visit->open_reason);

      height += wm_sheet_text (sheet, 0, y_mm + height, WM_SHEET_WIDTH_MM, WM_TEXT_SMALL,
                               reason);
    }
  wm_sheet_tag_end (sheet, "P");
  return height + 1.5;
}

double
wm_block_list_part (const WmPageContext *context, gconstpointer item, double y_mm)
{
  WmSheet *sheet = context->sheet;
  WmCheck *check = (WmCheck *)item;
  double height;

  wm_sheet_tag (sheet, "H3");
  height = 1.5
           + wm_sheet_text (sheet, 0, y_mm + 1.5, 0, WM_TEXT_SMALL_STRONG,
                            wm_say (sheet->language, check->part));
  wm_sheet_tag_end (sheet, "H3");
  height += 0.6;
  wm_sheet_line (sheet, 0, y_mm + height, WM_SHEET_WIDTH_MM, 0.2);
  return height;
}

double
wm_block_list_check (const WmPageContext *context, gconstpointer item, double y_mm)
{
  WmSheet *sheet = context->sheet;
  WmLanguage *language = sheet->language;
  WmCheck *check = (WmCheck *)item;
  gboolean is_finding = wm_severity_is_finding (check->severity);
  const char *title =
      wm_say (language, is_finding && check->fault != NULL ? check->fault : check->title);
  g_autofree char *word = NULL;
  double height;
  double note;

  if (check->after_severity != WM_SEVERITY_NOT_LOOKED_AT
      && check->after_severity != check->severity)
    word = g_strdup_printf ("%s → %s", wm_words_severity (language, check->severity),
                            wm_words_severity (language, check->after_severity));
  else
    word = g_strdup (wm_words_severity (language, check->severity));

  wm_sheet_tag (sheet, "P");
  height = wm_sheet_text (sheet, WM_LIST_TEXT_MM, y_mm + 0.6,
                          WM_LIST_NOTE_MM - WM_LIST_TEXT_MM - 3,
                          is_finding ? WM_TEXT_STRONG : WM_TEXT_BODY, title);
  note = wm_sheet_text (sheet, WM_LIST_NOTE_MM, y_mm + 0.95, 52, WM_TEXT_SMALL,
                        check->note != NULL ? check->note : "");
  wm_sheet_text_right (sheet, WM_LIST_WORD_MM, y_mm + 0.6,
                       is_finding ? WM_TEXT_STRONG : WM_TEXT_BODY, word);
  wm_sheet_tag_end (sheet, "P");
  height = MAX (height, note) + 1.2;
  wm_sheet_glyph (sheet, 3.4, y_mm + height / 2, WM_MARK_R_PAPER_LEAST_MM,
                  check->severity,
                  is_finding && check->number != WM_UNKNOWN ? (int)check->number : 0);
  wm_sheet_line (sheet, 0, y_mm + height, WM_SHEET_WIDTH_MM, 0.1);
  return height;
}

double
wm_block_tests_heading (const WmPageContext *context, gconstpointer item, double y_mm)
{
  WmSheet *sheet = context->sheet;
  double height;

  wm_sheet_tag (sheet, "H2");
  height = wm_sheet_text (sheet, 0, y_mm + 5, 0, WM_TEXT_HEADING,
                          wm_say (sheet->language, N_ ("Final tests")));
  wm_sheet_tag_end (sheet, "H2");
  height += 6;
  wm_sheet_line (sheet, 0, y_mm + height, WM_SHEET_WIDTH_MM, 0.2);
  return height;
}

double
wm_block_test (const WmPageContext *context, gconstpointer item, double y_mm)
{
  WmSheet *sheet = context->sheet;
  WmLanguage *language = sheet->language;
  WmProof *proof = (WmProof *)item;
  double height;

  wm_sheet_tag (sheet, "P");
  height = wm_sheet_text (sheet, 0, y_mm + 0.6, 100, WM_TEXT_BODY,
                          wm_say (language, proof->test));
  wm_sheet_text (sheet, 104, y_mm + 0.6, 44, WM_TEXT_BODY,
                 proof->reading != NULL ? proof->reading : "");
  wm_sheet_text_right (
      sheet, WM_LIST_WORD_MM, y_mm + 0.6, WM_TEXT_STRONG,
      wm_say (language, proof->passed ? N_ ("passed") : N_ ("not passed")));
  wm_sheet_tag_end (sheet, "P");
  height += 1.8;
  wm_sheet_line (sheet, 0, y_mm + height, WM_SHEET_WIDTH_MM, 0.1);
  return height;
}
