/* verb-report.c: report NUMBER -o FILE.pdf: the before/after report of a visit
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>

#include "command/choose-visit.h"
#include "command/verbs.h"
#include "photo/photo-start.h"
#include "report/report.h"

/* FALSE when the reason is told. */
static gboolean
read_options (WmCall *call, WmArchive *archive, WmReportOptions *out)
{
  const char *paper = wm_call_get_option (call, "paper");

  *out = (WmReportOptions) { .paper = wm_report_get_paper (archive) };
  out->size =
      wm_call_get_option (call, "mail") != NULL ? WM_REPORT_MAIL : WM_REPORT_PRINT;
  out->grey = wm_call_get_option (call, "grey") != NULL;
  out->language = wm_call_get_option (call, "language");
  if (g_strcmp0 (paper, "letter") == 0)
    out->paper = WM_PAPER_LETTER;
  else if (g_strcmp0 (paper, "a4") == 0)
    out->paper = WM_PAPER_A4;
  else if (paper != NULL)
    return FALSE;
  return TRUE;
}

static void
print_result (WmCall *call, WmPiece *piece, const char *path, WmReport *report)
{
  g_autofree char *shown = wm_shown_path (path);

  if (wm_call_wants_json (call))
    {
      g_autoptr (JsonBuilder) builder = json_builder_new ();

      json_builder_begin_object (builder);
      json_builder_set_member_name (builder, "number");
      json_builder_add_string_value (builder, piece->number);
      json_builder_set_member_name (builder, "file");
      json_builder_add_string_value (builder, shown);
      json_builder_set_member_name (builder, "pages");
      json_builder_add_int_value (builder, wm_report_get_n_pages (report));
      json_builder_end_object (builder);
      wm_call_print_json (call, json_builder_get_root (builder));
    }
  else
    {
      wm_call_print (call, _ ("%s: %u pages, written to %s\n"), piece->number,
                     wm_report_get_n_pages (report), shown);
    }
}

static WmExit
run (WmCall *call)
{
  const char *path = wm_call_get_option (call, "output");
  g_autoptr (WmArchive) archive = NULL;
  g_autoptr (WmPiece) piece = NULL;
  g_autoptr (WmVisit) visit = NULL;
  g_autoptr (WmReport) report = NULL;
  g_autoptr (GError) error = NULL;
  WmReportOptions options;
  WmTrade *trade;
  WmExit exit = WM_EXIT_FAILED;

  if (path == NULL)
    return wm_call_misused (call, _ ("say where to with -o FILE.pdf"));

  wm_photo_start ();
  archive = wm_call_look_at_archive (call);
  trade = archive != NULL ? wm_call_get_trade (call) : NULL;
  piece = trade != NULL
              ? wm_call_find_piece (call, archive, wm_call_get_operand (call, 0))
              : NULL;
  if (piece == NULL)
    return WM_EXIT_FAILED;
  if (!read_options (call, archive, &options))
    return wm_call_misused (call, _ ("--paper is a4 or letter"));
  visit = wm_call_choose_visit (call, archive, piece, &exit);
  if (visit == NULL)
    return exit;

  report = wm_report_new (archive, trade, wm_record_get_id (WM_RECORD (visit)), &options,
                          &error);
  if (report == NULL || !wm_report_write_pdf (report, path, &error))
    return wm_call_fail_with (call, error);
  print_result (call, piece, path, report);
  return WM_EXIT_DONE;
}

static const WmVerbOption verb_options[] = {
  { "output", 'o', N_ ("FILE.pdf"), N_ ("where to") },
  WM_VISIT_OPTION,
  { "mail", 0, NULL, N_ ("small, to be mailed: pictures as large as their places") },
  { "paper", 0, N_ ("PAPER"), N_ ("a4 or letter (default: the shop's)") },
  { "grey", 0, NULL, N_ ("marks in grey, for a black-and-white printer") },
  { "language", 0, N_ ("TAG"), N_ ("en, de ... (default: the owner's)") },
  { NULL },
};

const WmVerb wm_verb_report = {
  .name = "report",
  .operands = N_ ("NUMBER"),
  .min_operands = 1,
  .max_operands = 1,
  .summary = N_ ("write the before/after report of a piece as PDF"),
  .options = verb_options,
  .run = run,
};
