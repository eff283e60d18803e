/* quote-paper.c: what the repairs of a visit would cost, for the customer to decide
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "report/quote-paper.h"

#include <glib/gi18n.h>

#include "report/blocks.h"
#include "report/words.h"

typedef struct
{
  WmRowPaper *paper;
  WmVisitData *data;
  const WmVisitQuote *quote;
  const char *currency;
  WmLanguage *language;
} Writing;

/* ---- from the archive ----------------------------------------------------------------
 */

/* "6500 EUR"; in another currency it says nothing here. */
static gint64
read_rate (WmArchive *archive, WmPiece *piece)
{
  g_autofree char *text = wm_archive_get_setting (archive, WM_SETTING_HOURLY_RATE);
  g_autofree char *currency = wm_quote_currency (archive, piece);
  g_auto (GStrv) words = g_strsplit (text != NULL ? text : "", " ", 2);
  gint64 minor;

  if (g_strv_length (words) != 2 || !g_str_equal (words[1], currency)
      || !g_ascii_string_to_signed (words[0], 10, 0, G_MAXINT64, &minor, NULL))
    return WM_UNKNOWN;
  return minor;
}

static gint64
read_tax (WmArchive *archive)
{
  g_autofree char *text = wm_archive_get_setting (archive, WM_SETTING_TAX_BP);
  gint64 bp;

  if (text == NULL || !g_ascii_string_to_signed (text, 10, 0, 10000, &bp, NULL))
    return 0;
  return bp;
}

WmVisitQuote *
wm_quote_load (WmArchive *archive, WmVisitData *data, GError **error)
{
  const WmQuoteTerms terms = {
    .rate_minor = read_rate (archive, data->piece),
    .tax_bp = read_tax (archive),
    .limit_minor = data->visit->price_limit_minor,
  };
  g_autoptr (GPtrArray) materials = wm_archive_list_of_visit (
      archive, WM_KIND_MATERIAL, wm_record_get_id (WM_RECORD (data->visit)), error);

  return materials != NULL
             ? wm_visit_quote_new (&terms, data->checks, data->remedies, materials)
             : NULL;
}

char *
wm_quote_currency (WmArchive *archive, WmPiece *piece)
{
  char *currency = piece->currency != NULL
                       ? g_strdup (piece->currency)
                       : wm_archive_get_setting (archive, WM_SETTING_CURRENCY);

  return currency != NULL ? currency : g_strdup ("EUR");
}

/* ---- lines ----------------------------------------------------------------------------
 */

static char *
money (Writing *w, gint64 minor)
{
  return minor == WM_UNKNOWN ? g_strdup (wm_say (w->language, N_ ("not priced yet")))
                             : wm_words_money (w->language, minor, w->currency);
}

static void
add_amount (Writing *w, gboolean strong, const char *text, gint64 minor)
{
  g_autofree char *amount = money (w, minor);

  wm_row_paper_line (w->paper, strong, WM_SEVERITY_NOT_LOOKED_AT, 0, text, amount);
}

static void
add_labour (Writing *w, const WmQuoteRow *row)
{
  int minutes = (int)row->remedy->minutes;
  g_autofree char *rate = NULL, *text = NULL;

  if (row->remedy->minutes == WM_UNKNOWN || row->lacks_rate)
    return;
  rate = money (w, w->quote->terms.rate_minor);
  /* Translators: minutes of work, price of an hour */
  text = g_strdup_printf (wm_say_n (w->language, "Work: %d minute at %s an hour",
                                    "Work: %d minutes at %s an hour", minutes),
                          minutes, rate);
  add_amount (w, FALSE, text, row->labour_minor);
}

static void
add_material (Writing *w, WmMaterial *material)
{
  const WmMetal *metal = material->metal != NULL
                             ? wm_trade_find_metal (w->data->trade, material->metal)
                             : NULL;
  const char *what = material->what != NULL ? wm_say (w->language, material->what)
                     : metal != NULL        ? wm_say (w->language, metal->name)
                                            : wm_say (w->language, N_ ("Part"));
  g_autofree char *text = NULL;

  if (material->metal != NULL && material->mass_mg != WM_UNKNOWN
      && material->gram_price_minor != WM_UNKNOWN)
    {
      g_autofree char *mass = wm_words_mass (w->language, material->mass_mg);
      g_autofree char *gram = money (w, material->gram_price_minor);

      /* Translators: what of metal, its weight, price of a gram */
      text = g_strdup_printf (wm_say (w->language, N_ ("%s: %s at %s a gram")), what,
                              mass, gram);
    }
  add_amount (w, FALSE, text != NULL ? text : what, wm_material_price (material));
}

/* What it leads to if it is left, in the customer's words. */
static void
add_left (Writing *w, WmCheck *check)
{
  g_auto (GStrv) lines = g_strsplit (
      check != NULL && check->if_left != NULL ? check->if_left : "", "\n", -1);

  if (lines[0] == NULL || *lines[0] == '\0')
    return;
  for (guint i = 0; lines[i] != NULL; i++)
    if (*lines[i] != '\0')
      {
        g_autofree char *text =
            g_strdup_printf ("%s %s", wm_say (w->language, N_ ("If it is left:")),
                             wm_say (w->language, lines[i]));

        wm_row_paper_line (w->paper, FALSE, WM_SEVERITY_NOT_LOOKED_AT, 0, text, NULL);
      }
}

static void
add_row (Writing *w, const WmQuoteRow *row)
{
  const char *answer = row->is_agreed     ? N_ ("agreed")
                       : row->is_declined ? N_ ("declined, not counted")
                                          : N_ ("not answered yet");
  const char *what =
      row->remedy->what != NULL ? wm_say (w->language, row->remedy->what) : "";
  WmSeverity severity =
      row->check != NULL ? (WmSeverity)row->check->severity : WM_SEVERITY_NOT_LOOKED_AT;
  int number = row->check != NULL && row->check->number != WM_UNKNOWN
                   ? (int)row->check->number
                   : 0;
  g_autofree char *price = money (w, row->price_minor);
  /* Translators: what is done, the customer's answer */
  g_autofree char *text = g_strdup_printf (wm_say (w->language, N_ ("%s (%s)")), what,
                                           wm_say (w->language, answer));

  wm_row_paper_line (w->paper, TRUE, severity, number, text, price);
  if (row->check != NULL)
    {
      const char *fault =
          row->check->fault != NULL ? row->check->fault : row->check->title;

      wm_row_paper_line (w->paper, FALSE, WM_SEVERITY_NOT_LOOKED_AT, 0,
                         wm_say (w->language, fault), NULL);
    }
  if (row->is_declined)
    {
      add_left (w, row->check);
      return;
    }
  /* A price made by hand stands for itself: its lines would come to another sum. */
  if (row->is_typed && row->differs)
    return;
  add_labour (w, row);
  for (guint i = 0; i < row->materials->len; i++)
    add_material (w, row->materials->pdata[i]);
}

/* ---- sums
 * ------------------------------------------------------------------------------ */

/* "19 %", "7.7 %" from hundredths of a per cent. */
static char *
describe_rate (gint64 tax_bp)
{
  if (tax_bp % 100 == 0)
    return g_strdup_printf ("%d %%", (int)(tax_bp / 100));
  if (tax_bp % 10 == 0)
    return g_strdup_printf ("%d.%d %%", (int)(tax_bp / 100), (int)(tax_bp % 100 / 10));
  return g_strdup_printf ("%d.%02d %%", (int)(tax_bp / 100), (int)(tax_bp % 100));
}

static void
add_sum (Writing *w, const char *title, const WmQuoteSum *sum)
{
  g_autofree char *rate = describe_rate (w->quote->terms.tax_bp);
  g_autofree char *tax = NULL;

  if (w->quote->terms.tax_bp == 0)
    {
      add_amount (w, TRUE, title, sum->total_minor);
      return;
    }
  /* Translators: rate of the tax */
  tax = g_strdup_printf (wm_say (w->language, N_ ("tax of %s")), rate);
  add_amount (w, TRUE, title, sum->total_minor);
  add_amount (w, FALSE, wm_say (w->language, N_ ("before tax")), sum->net_minor);
  add_amount (w, FALSE, tax, sum->tax_minor);
}

static void
add_sums (Writing *w)
{
  const WmVisitQuote *quote = w->quote;
  WmLanguage *language = w->language;

  wm_row_paper_heading (w->paper, wm_say (language, N_ ("In sum")));
  if (quote->is_refused)
    {
      wm_row_paper_notice (w->paper,
                           wm_say (language, N_ ("A price or a weight here can not be "
                                                 "reckoned with: there is no total.")));
      return;
    }
  add_sum (w, wm_say (language, N_ ("Agreed so far")), &quote->agreed);
  if (quote->all.net_minor != quote->agreed.net_minor)
    add_sum (w, wm_say (language, N_ ("With everything that is not answered yet")),
             &quote->all);
  if (quote->declined_minor > 0)
    add_amount (w, TRUE, wm_say (language, N_ ("Declined, not counted, before tax")),
                quote->declined_minor);
  if (quote->n_unpriced > 0)
    {
      int n = (int)quote->n_unpriced;
      g_autofree char *text = g_strdup_printf (
          wm_say_n (language, "%d line has no price yet and is not in the total.",
                    "%d lines have no price yet and are not in the total.", n),
          n);

      wm_row_paper_notice (w->paper, text);
    }
  if (quote->is_over_limit)
    {
      g_autofree char *limit = money (w, quote->terms.limit_minor);
      g_autofree char *text = g_strdup_printf (
          wm_say (language, N_ ("This is more than the %s you told us not to go over. We "
                                "do not go on without your word.")),
          limit);

      wm_row_paper_notice (w->paper, text);
    }
}

WmRowPaper *
wm_quote_paper_new (WmVisitData *data, const WmVisitQuote *quote, const char *currency,
                    WmLanguage *language, WmPaper paper, gint64 today_s)
{
  Writing w = { wm_row_paper_new (data, language, paper), data, quote, currency,
                language };
  g_autofree char *day = wm_words_day_of (language, today_s);
  g_autofree char *metal = wm_piece_metal_words (language, data);
  g_autofree char *facts = g_strdup_printf (
      "%s%s%s. %s. %s", wm_piece_type_words (language, data),
      metal != NULL && *metal != '\0' ? ", " : "", metal != NULL ? metal : "",
      data->owner != NULL && data->owner->name != NULL ? data->owner->name : "", day);

  wm_row_paper_title (
      w.paper, wm_say (language, N_ ("Quote")),
      wm_say (language, N_ ("What each repair would cost. You decide line "
                            "by line.")));
  wm_row_paper_text (w.paper, WM_TEXT_BODY, facts);
  if (quote->rows->len == 0)
    wm_row_paper_notice (w.paper, wm_say (language, N_ ("No repair is planned.")));
  for (guint i = 0; i < quote->rows->len; i++)
    add_row (&w, quote->rows->pdata[i]);
  if (quote->rows->len > 0)
    add_sums (&w);
  wm_row_paper_text (
      w.paper, WM_TEXT_SMALL,
      wm_say (language, N_ ("Sums are exact to the smallest coin, halves rounded to the "
                            "even one; metal at the price of a gram named here.")));
  wm_row_paper_heading (w.paper, wm_say (language, N_ ("Your answer")));
  wm_row_paper_sign (w.paper, wm_say (language, N_ ("Date, signature")));
  return w.paper;
}
