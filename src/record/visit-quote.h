/* visit-quote.h: what the remedies of a visit cost, line by line
 *
 * A line's price is the one typed by hand (remedy.price_minor), or else what its time,
 * metal and parts come to. A typed price is never overwritten: when the lines come to
 * something else, both are told. Prices are before tax.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "record/kinds.h"
#include "reckon/quote.h"

typedef struct
{
  gint64 rate_minor;  /* for an hour; WM_UNKNOWN: the shop has not said */
  gint64 tax_bp;      /* hundredths of a per cent; 0: none */
  gint64 limit_minor; /* the visit's; WM_UNKNOWN: none */
} WmQuoteTerms;

typedef struct
{
  WmCheck *check;
  WmRemedy *remedy;
  GPtrArray *materials; /* WmMaterial */
  gint64 labour_minor;
  gint64 material_minor;
  gint64 lines_minor; /* both together; WM_UNKNOWN: there are none */
  gint64 price_minor; /* what counts; WM_UNKNOWN: not known yet */
  gboolean is_typed;
  gboolean differs;    /* typed, and the lines come to something else */
  gboolean lacks_rate; /* minutes, but no hourly rate */
  gboolean lacks_gram_price;
  gboolean is_agreed;
  gboolean is_declined;
} WmQuoteRow;

typedef struct
{
  GPtrArray *rows; /* WmQuoteRow, in the order of @remedies */
  WmQuoteTerms terms;
  WmQuoteSum agreed;
  WmQuoteSum all;        /* agreed and not answered yet */
  gint64 open_minor;     /* before tax */
  gint64 declined_minor; /* before tax */
  guint n_unpriced;      /* not declined and without a price */
  gboolean is_over_limit;
  gboolean is_refused; /* a number that can not be reckoned with */
} WmVisitQuote;

/**
 * wm_visit_quote_new:
 * @checks: (element-type WmCheck); @remedies: (element-type WmRemedy)
 * @materials: (element-type WmMaterial): of the whole visit
 *
 * Returns: (transfer full)
 */
WmVisitQuote *wm_visit_quote_new (const WmQuoteTerms *terms, GPtrArray *checks,
                                  GPtrArray *remedies, GPtrArray *materials);
void wm_visit_quote_free (WmVisitQuote *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (WmVisitQuote, wm_visit_quote_free)

/* The row of a remedy, or NULL. */
WmQuoteRow *wm_visit_quote_find (WmVisitQuote *self, const WmId *remedy_id);

/* Price of a material line: of metal by mass, else as entered; WM_UNKNOWN if it can not
 * be told. */
gint64 wm_material_price (WmMaterial *material);
