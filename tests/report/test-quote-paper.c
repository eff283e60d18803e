/* test-quote-paper.c: the quote of a visit, from the archive to the paper
 *
 * Sums worked by hand: 45 minutes at 65.00 are 48.75; 1.234 g at 68.00 are 83.912, 83.91;
 * with a part of 12.00 together 144.66; tax of 19 % is 27.4854, 27.49; total 172.15.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "report/quote-paper.h"

#include <string.h>

#include "fixture.h"

static void
put_setting (Fixture *f, const char *name, const char *value)
{
  g_autoptr (WmEdit) edit = wm_edit_new ("Setting", NULL, NULL);
  g_autoptr (GError) error = NULL;

  g_assert_true (wm_archive_put_setting (f->archive, edit, name, value, &error));
  wm_archive_commit (f->archive, edit, &error);
  g_assert_no_error (error);
}

static WmRemedy *
add_remedy (Fixture *f, guint check, const char *what, gint64 minutes, gint64 price,
            const char *answer)
{
  WmRemedy *remedy = wm_remedy_new ();

  g_object_set (remedy, "check-id",
                wm_record_get_id (WM_RECORD (f->checks->pdata[check])), "what", what,
                "minutes", minutes, "price-minor", price, "answer", answer, NULL);
  fixture_put (f, remedy);
  return remedy;
}

static void
add_material (Fixture *f, WmRemedy *remedy, const char *what, const char *metal,
              gint64 mass_mg, gint64 gram, gint64 price)
{
  g_autoptr (WmMaterial) material = wm_material_new ();

  g_object_set (material, "remedy-id", wm_record_get_id (WM_RECORD (remedy)), "what",
                what, "metal", metal, "mass-mg", mass_mg, "gram-price-minor", gram,
                "price-minor", price, NULL);
  fixture_put (f, material);
}

static WmVisitData *
load (Fixture *f)
{
  g_autoptr (GError) error = NULL;
  WmVisitData *data = wm_visit_data_load (
      f->archive, f->trade, wm_record_get_id (WM_RECORD (f->visit)), &error);

  g_assert_no_error (error);
  return data;
}

static void
fill (Fixture *f)
{
  g_autoptr (WmRemedy) agreed = NULL, open = NULL, declined = NULL;

  put_setting (f, WM_SETTING_CURRENCY, "EUR");
  put_setting (f, WM_SETTING_HOURLY_RATE, "6500 EUR");
  put_setting (f, WM_SETTING_TAX_BP, "1900");
  agreed = add_remedy (f, 0, "new end ring", 45, WM_UNKNOWN, "agreed");
  add_material (f, agreed, "end ring, 0.9 mm wire", "au750y", 1234, 6800, WM_UNKNOWN);
  add_material (f, agreed, "pin", NULL, WM_UNKNOWN, WM_UNKNOWN, 1200);
  open = add_remedy (f, 1, "true the band", WM_UNKNOWN, 5000, NULL);
  declined = add_remedy (f, 2, "plate it again", WM_UNKNOWN, 3000, "declined");
  g_object_set (f->checks->pdata[2], "if-left", "the stone can be lost", NULL);
  fixture_put (f, f->checks->pdata[2]);
}

static void
test_sums (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmVisitData) data = NULL;
  g_autoptr (WmVisitQuote) quote = NULL;
  g_autoptr (GError) error = NULL;

  fill (f);
  data = load (f);
  quote = wm_quote_load (f->archive, data, &error);
  g_assert_no_error (error);
  g_assert_cmpint (quote->agreed.net_minor, ==, 14466);
  g_assert_cmpint (quote->agreed.tax_minor, ==, 2749);
  g_assert_cmpint (quote->agreed.total_minor, ==, 17215);
  g_assert_cmpint (quote->all.net_minor, ==, 19466);
  g_assert_cmpint (quote->declined_minor, ==, 3000);
  g_assert_cmpuint (quote->n_unpriced, ==, 0);
}

/* A rate in another currency is never mixed in: then the time has no price. */
static void
test_other_currency (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmVisitData) data = NULL;
  g_autoptr (WmVisitQuote) quote = NULL;

  fill (f);
  g_object_set (f->piece, "currency", "CHF", NULL);
  fixture_put (f, f->piece);
  data = load (f);
  quote = wm_quote_load (f->archive, data, NULL);
  g_assert_cmpint (quote->terms.rate_minor, ==, WM_UNKNOWN);
  g_assert_cmpint (quote->agreed.net_minor, ==, 8391 + 1200);
}

static char *
write_text (Fixture *f, WmVisitData *data, WmVisitQuote *quote)
{
  g_autoptr (WmLanguage) language = wm_language_new ("en");
  g_autoptr (WmRowPaper) paper =
      wm_quote_paper_new (data, quote, "EUR", language, WM_PAPER_A4, 1795680000);
  g_autofree char *path = g_build_filename (f->folder, "quote.pdf", NULL);
  const char *const argv[] = { "pdftotext", "-layout", path, "-", NULL };
  g_autoptr (GError) error = NULL;

  g_assert_cmpuint (wm_row_paper_get_n_pages (paper), >=, 1);
  g_assert_true (wm_row_paper_write_pdf (paper, "Quote", path, &error));
  g_assert_no_error (error);
  return fixture_run (argv);
}

static void
test_paper (Fixture *f, gconstpointer unused)
{
  static const char *const wanted[] = {
    "Ostrey Lane Bench",
    "new end ring (agreed)",
    "45 minutes",
    "48.75 EUR",
    "83.91 EUR",
    "12.00 EUR",
    "144.66 EUR",
    "172.15 EUR",
    "tax of 19 %",
    "27.49 EUR",
    "plate it again (declined",
    "If it is left: the stone can be lost",
    "true the band (not answered yet)",
  };
  g_autoptr (WmVisitData) data = NULL;
  g_autoptr (WmVisitQuote) quote = NULL;
  g_autofree char *text = NULL;

  fill (f);
  g_object_set (f->visit, "price-limit-minor", (gint64)20000, NULL);
  fixture_put (f, f->visit);
  data = load (f);
  quote = wm_quote_load (f->archive, data, NULL);
  text = write_text (f, data, quote);
  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++)
    if (strstr (text, wanted[i]) == NULL)
      g_error ("no \"%s\" in:\n%s", wanted[i], text);
  /* 194.66 and its tax of 36.99 are over 200.00. */
  g_assert_nonnull (strstr (text, "This is more than the 200.00 EUR"));
  /* What the shop wrote for itself. */
  g_assert_null (strstr (text, "credit"));
  g_assert_null (strstr (text, "hurry"));
}

/* More lines than a page holds: none is lost, every page is numbered. */
static void
test_many_pages (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmVisitData) data = NULL;
  g_autoptr (WmVisitQuote) quote = NULL;
  g_autofree char *text = NULL;

  for (int i = 0; i < 40; i++)
    {
      g_autofree char *what = g_strdup_printf ("work number %d", 100 + i);

      g_object_unref (add_remedy (f, 0, what, WM_UNKNOWN, 1000, NULL));
    }
  data = load (f);
  quote = wm_quote_load (f->archive, data, NULL);
  text = write_text (f, data, quote);
  for (int i = 0; i < 40; i++)
    {
      g_autofree char *what = g_strdup_printf ("work number %d", 100 + i);

      g_assert_nonnull (strstr (text, what));
    }
  g_assert_nonnull (strstr (text, "Page 2 of "));
}

#define ADD(path, test)                                                                  \
  g_test_add ("/report/quote-paper/" path, Fixture, NULL, fixture_set_up, test,          \
              fixture_tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("sums", test_sums);
  ADD ("other-currency", test_other_currency);
  ADD ("paper", test_paper);
  ADD ("many-pages", test_many_pages);
  return g_test_run ();
}
