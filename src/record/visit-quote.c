/* visit-quote.c: what the remedies of a visit cost, line by line
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "record/visit-quote.h"

static void
free_row (gpointer data)
{
  WmQuoteRow *row = data;

  g_clear_object (&row->check);
  g_object_unref (row->remedy);
  g_ptr_array_unref (row->materials);
  g_free (row);
}

gint64
wm_material_price (WmMaterial *material)
{
  WmQuoteLine line = { .metal_mg = material->mass_mg,
                       .price_per_g_minor = material->gram_price_minor };
  WmQuoteLineSum sum;

  if (material->metal == NULL)
    return material->price_minor;
  if (material->mass_mg == WM_UNKNOWN || material->gram_price_minor == WM_UNKNOWN
      || wm_quote_line (&line, WM_ROUND_HALF_EVEN, &sum, NULL) != WM_OK)
    return WM_UNKNOWN;
  return sum.net_minor;
}

/* TRUE if the time could be reckoned. */
static gboolean
reckon_labour (WmQuoteRow *row, const WmQuoteTerms *terms)
{
  WmQuoteLine line = { .minutes = row->remedy->minutes,
                       .rate_per_hour_minor = terms->rate_minor };
  WmQuoteLineSum sum;

  if (row->remedy->minutes == WM_UNKNOWN)
    return TRUE;
  if (terms->rate_minor == WM_UNKNOWN)
    {
      row->lacks_rate = TRUE;
      return TRUE;
    }
  if (wm_quote_line (&line, WM_ROUND_HALF_EVEN, &sum, NULL) != WM_OK)
    return FALSE;
  row->labour_minor = sum.labour_minor;
  row->lines_minor = sum.labour_minor;
  return TRUE;
}

static void
reckon_materials (WmQuoteRow *row)
{
  for (guint i = 0; i < row->materials->len; i++)
    {
      gint64 price = wm_material_price (row->materials->pdata[i]);

      if (price == WM_UNKNOWN)
        {
          row->lacks_gram_price = TRUE;
          continue;
        }
      row->material_minor += price;
      row->lines_minor =
          row->lines_minor == WM_UNKNOWN ? price : row->lines_minor + price;
    }
}

static gboolean
reckon_row (WmQuoteRow *row, const WmQuoteTerms *terms)
{
  row->lines_minor = WM_UNKNOWN;
  row->is_agreed = g_strcmp0 (row->remedy->answer, "agreed") == 0;
  row->is_declined = g_strcmp0 (row->remedy->answer, "declined") == 0;
  if (!reckon_labour (row, terms))
    return FALSE;
  reckon_materials (row);
  row->is_typed = row->remedy->price_minor != WM_UNKNOWN;
  row->price_minor = row->is_typed ? row->remedy->price_minor : row->lines_minor;
  row->differs = row->is_typed && row->lines_minor != WM_UNKNOWN
                 && row->lines_minor != row->price_minor;
  return row->price_minor == WM_UNKNOWN || row->price_minor >= 0;
}

static void
add_rows (WmVisitQuote *self, GPtrArray *checks, GPtrArray *remedies,
          GPtrArray *materials)
{
  for (guint i = 0; i < remedies->len; i++)
    {
      WmQuoteRow *row = g_new0 (WmQuoteRow, 1);

      row->remedy = g_object_ref (remedies->pdata[i]);
      row->materials = g_ptr_array_new_with_free_func (g_object_unref);
      for (guint k = 0; k < checks->len; k++)
        if (wm_id_equal (wm_record_get_id (checks->pdata[k]), &row->remedy->check_id))
          row->check = g_object_ref (checks->pdata[k]);
      for (guint k = 0; k < materials->len; k++)
        if (wm_id_equal (&((WmMaterial *)materials->pdata[k])->remedy_id,
                         wm_record_get_id (WM_RECORD (row->remedy))))
          g_ptr_array_add (row->materials, g_object_ref (materials->pdata[k]));
      g_ptr_array_add (self->rows, row);
      self->is_refused |= !reckon_row (row, &self->terms);
    }
}

/* Tax on the total, rounded once, half to even (a local rule may want another). */
static void
add_up (WmVisitQuote *self, gboolean only_agreed, WmQuoteSum *out)
{
  g_autoptr (GArray) lines = g_array_new (FALSE, TRUE, sizeof (WmQuoteLine));

  *out = (WmQuoteSum) { 0 };
  for (guint i = 0; i < self->rows->len; i++)
    {
      WmQuoteRow *row = self->rows->pdata[i];
      WmQuoteLine line = { .parts_minor = row->price_minor };

      if (row->price_minor != WM_UNKNOWN && !row->is_declined
          && (row->is_agreed || !only_agreed))
        g_array_append_val (lines, line);
    }
  if (lines->len > 0
      && wm_quote ((const WmQuoteLine *)(gpointer)lines->data, (int)lines->len,
                   self->terms.tax_bp, WM_TAX_ON_TOTAL, WM_ROUND_HALF_EVEN, NULL, out,
                   NULL)
             != WM_OK)
    self->is_refused = TRUE;
}

WmVisitQuote *
wm_visit_quote_new (const WmQuoteTerms *terms, GPtrArray *checks, GPtrArray *remedies,
                    GPtrArray *materials)
{
  WmVisitQuote *self = g_new0 (WmVisitQuote, 1);

  self->terms = *terms;
  self->rows = g_ptr_array_new_with_free_func (free_row);
  add_rows (self, checks, remedies, materials);
  for (guint i = 0; i < self->rows->len; i++)
    {
      WmQuoteRow *row = self->rows->pdata[i];

      if (row->price_minor == WM_UNKNOWN)
        self->n_unpriced += !row->is_declined;
      else if (row->is_declined)
        self->declined_minor += row->price_minor;
      else if (!row->is_agreed)
        self->open_minor += row->price_minor;
    }
  if (!self->is_refused)
    {
      add_up (self, TRUE, &self->agreed);
      add_up (self, FALSE, &self->all);
    }
  self->is_over_limit =
      terms->limit_minor != WM_UNKNOWN && self->all.total_minor > terms->limit_minor;
  return self;
}

void
wm_visit_quote_free (WmVisitQuote *self)
{
  g_ptr_array_unref (self->rows);
  g_free (self);
}

WmQuoteRow *
wm_visit_quote_find (WmVisitQuote *self, const WmId *remedy_id)
{
  for (guint i = 0; i < self->rows->len; i++)
    {
      WmQuoteRow *row = self->rows->pdata[i];

      if (wm_id_equal (wm_record_get_id (WM_RECORD (row->remedy)), remedy_id))
        return row;
    }
  return NULL;
}
