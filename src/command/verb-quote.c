/* verb-quote.c: quote NUMBER -o FILE.pdf: what the repairs of a visit would cost
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>

#include "command/choose-visit.h"
#include "command/json-out.h"
#include "command/verbs.h"
#include "report/quote-paper.h"
#include "report/report.h"

static void
add_minor (JsonBuilder *builder, const char *key, gint64 minor)
{
  json_builder_set_member_name (builder, key);
  if (minor == WM_UNKNOWN)
    json_builder_add_null_value (builder);
  else
    json_builder_add_int_value (builder, minor);
}

static void
add_sum (JsonBuilder *builder, const char *key, const WmQuoteSum *sum, gboolean refused)
{
  json_builder_set_member_name (builder, key);
  json_builder_begin_object (builder);
  add_minor (builder, "net_minor", refused ? WM_UNKNOWN : sum->net_minor);
  add_minor (builder, "tax_minor", refused ? WM_UNKNOWN : sum->tax_minor);
  add_minor (builder, "total_minor", refused ? WM_UNKNOWN : sum->total_minor);
  json_builder_end_object (builder);
}

static void
add_lines (JsonBuilder *builder, const WmVisitQuote *quote)
{
  json_builder_set_member_name (builder, "lines");
  json_builder_begin_array (builder);
  for (guint i = 0; i < quote->rows->len; i++)
    {
      const WmQuoteRow *row = quote->rows->pdata[i];

      json_builder_begin_object (builder);
      wm_json_add_text (builder, "what", row->remedy->what);
      wm_json_add_text (builder, "answer", row->remedy->answer);
      add_minor (builder, "price_minor", row->price_minor);
      wm_json_add_flag (builder, "price_by_hand", row->is_typed);
      add_minor (builder, "lines_minor", row->lines_minor);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
}

static void
print_result (WmCall *call, WmPiece *piece, const char *path, const WmVisitQuote *quote,
              const char *currency, guint n_pages)
{
  g_autofree char *shown = wm_shown_path (path);

  if (wm_call_wants_json (call))
    {
      g_autoptr (JsonBuilder) builder = json_builder_new ();

      json_builder_begin_object (builder);
      wm_json_add_text (builder, "number", piece->number);
      wm_json_add_text (builder, "file", shown);
      json_builder_set_member_name (builder, "pages");
      json_builder_add_int_value (builder, n_pages);
      wm_json_add_text (builder, "currency", currency);
      json_builder_set_member_name (builder, "tax_basis_points");
      json_builder_add_int_value (builder, quote->terms.tax_bp);
      add_lines (builder, quote);
      add_sum (builder, "agreed", &quote->agreed, quote->is_refused);
      add_sum (builder, "all", &quote->all, quote->is_refused);
      add_minor (builder, "declined_net_minor", quote->declined_minor);
      wm_json_add_flag (builder, "over_limit", quote->is_over_limit);
      json_builder_end_object (builder);
      wm_call_print_json (call, json_builder_get_root (builder));
    }
  else
    {
      wm_call_print (call,
                     ngettext ("%s: quote of %u page, written to %s\n",
                               "%s: quote of %u pages, written to %s\n", n_pages),
                     piece->number, n_pages, shown);
    }
}

static WmExit
write_quote (WmCall *call, WmArchive *archive, WmPiece *piece, WmVisit *visit,
             const char *path)
{
  const char *tag = wm_call_get_option (call, "language");
  g_autoptr (GError) error = NULL;
  g_autoptr (WmVisitData) data = wm_visit_data_load (
      archive, wm_call_get_trade (call), wm_record_get_id (WM_RECORD (visit)), &error);
  g_autoptr (WmVisitQuote) quote = NULL;
  g_autoptr (WmLanguage) language = NULL;
  g_autoptr (WmRowPaper) paper = NULL;
  g_autofree char *currency = NULL;

  if (data != NULL)
    quote = wm_quote_load (archive, data, &error);
  if (quote == NULL)
    return wm_call_fail_with (call, error);
  if (tag == NULL && data->owner != NULL)
    tag = data->owner->language;
  language = wm_language_new (tag);
  currency = wm_quote_currency (archive, piece);
  paper =
      wm_quote_paper_new (data, quote, currency, language, wm_report_get_paper (archive),
                          g_get_real_time () / G_USEC_PER_SEC);
  if (!wm_row_paper_write_pdf (paper, wm_say (language, N_ ("Quote")), path, &error))
    return wm_call_fail_with (call, error);
  print_result (call, piece, path, quote, currency, wm_row_paper_get_n_pages (paper));
  return WM_EXIT_DONE;
}

static WmExit
run (WmCall *call)
{
  const char *path = wm_call_get_option (call, "output");
  g_autoptr (WmArchive) archive = NULL;
  g_autoptr (WmPiece) piece = NULL;
  g_autoptr (WmVisit) visit = NULL;
  WmExit exit = WM_EXIT_FAILED;

  if (path == NULL)
    return wm_call_misused (call, _ ("say where to with -o FILE.pdf"));
  archive = wm_call_look_at_archive (call);
  if (archive != NULL && wm_call_get_trade (call) != NULL)
    piece = wm_call_find_piece (call, archive, wm_call_get_operand (call, 0));
  if (piece == NULL)
    return WM_EXIT_FAILED;
  visit = wm_call_choose_visit (call, archive, piece, &exit);
  return visit != NULL ? write_quote (call, archive, piece, visit, path) : exit;
}

static const WmVerbOption options[] = {
  { "output", 'o', N_ ("FILE.pdf"), N_ ("where to") },
  WM_VISIT_OPTION,
  { "language", 0, N_ ("TAG"), N_ ("en, de ... (default: the owner's)") },
  { NULL },
};

const WmVerb wm_verb_quote = {
  .name = "quote",
  .operands = N_ ("NUMBER"),
  .min_operands = 1,
  .max_operands = 1,
  .summary = N_ ("write what the repairs of a piece would cost, as PDF"),
  .options = options,
  .run = run,
};
