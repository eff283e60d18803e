/* topic-quote.c: the quote, as a topic
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/topics.h"

#include "reckon/quote.h"
#include "reckon/words.h"

#define MAX_LINES 80
#define N_COLUMNS 7
/* Whole numbers up to here are exact in a double: 2^53. */
#define MAX_EXACT 9007199254740992.0

/* In the order of WmTaxRule and WmRounding. */
static const char *const tax_rules[] = { "total", "line", NULL };
static const char *const roundings[] = { "half-even", "half-up", NULL };

static const WmTopicInput quote_inputs[] = {
  { "lines", WM_INPUT_ROWS, "mg:minor/g:bp:min:minor/h:minor:",
    N_ ("metal, price a gram, loss, minutes, rate an hour, parts, declined 1/0"),
    WM_REQUIRED, 0, 0 },
  { "tax", WM_INPUT_WHOLE, "bp", N_ ("tax in hundredths of a per cent"), 0, 0, 10000 },
  { "tax_rule", WM_INPUT_CHOICE, "", N_ ("tax on the total or line by line"), 0, 0, 0,
    tax_rules },
  { "rounding", WM_INPUT_CHOICE, "", N_ ("rounding of a half"), 0, 0, 0, roundings },
};

static const WmTopicOutput quote_outputs[] = {
  { "metal", "minor units", N_ ("metal"), 1 },
  { "labour", "minor units", N_ ("labour"), 1 },
  { "line", "minor units", N_ ("line without tax"), 1 },
  { "net", "minor units", N_ ("sum of the lines not declined"), 0 },
  { "tax", "minor units", N_ ("tax"), 0 },
  { "total", "minor units", N_ ("total"), 0 },
};

/* Whole, known and exact, or the refusal; a column left out counts as 0. */
static WmResult
read_line (const double *row, WmQuoteLine *line, const char **which)
{
  int64_t whole[N_COLUMNS];

  for (int i = 0; i < N_COLUMNS; i++)
    {
      double v = isnan (row[i]) ? 0.0 : row[i];

      if (fabs (v) > MAX_EXACT)
        return wm_refuse (WM_TOO_BIG, "lines", which);

      if (v != floor (v))
        return wm_refuse (WM_NOT_A_NUMBER, "lines", which);

      whole[i] = (int64_t)v;
    }

  *line = (WmQuoteLine) { whole[0], whole[1], whole[2],     whole[3],
                          whole[4], whole[5], whole[6] != 0 };
  return WM_OK;
}

static WmResult
run_quote (const WmTopicGiven *in, WmTopicAnswer *out, const char **which)
{
  WmQuoteLine lines[MAX_LINES];
  WmQuoteLineSum sums[MAX_LINES];
  WmQuoteSum sum;
  int n = in[0].n_rows;
  WmResult result = WM_OK;

  if (n < 1 || n > MAX_LINES)
    return wm_refuse (n < 1 ? WM_TOO_FEW : WM_OUT_OF_RANGE, "lines", which);

  for (int i = 0; i < n && result == WM_OK; i++)
    result = read_line (&in[0].numbers[N_COLUMNS * i], &lines[i], which);

  if (result == WM_OK)
    result = wm_quote (lines, n, (int64_t)in[1].value.value, (WmTaxRule)in[2].value.value,
                       (WmRounding)in[3].value.value, sums, &sum, NULL);
  if (result != WM_OK)
    return wm_refuse (result, "lines", which);

  for (int i = 0; i < n; i++)
    {
      wm_answer_number (out, 0, i, (double)sums[i].metal_minor);
      wm_answer_number (out, 1, i, (double)sums[i].labour_minor);
      wm_answer_number (out, 2, i, (double)sums[i].net_minor);
    }

  wm_answer_number (out, 3, 0, (double)sum.net_minor);
  wm_answer_number (out, 4, 0, (double)sum.tax_minor);
  wm_answer_number (out, 5, 0, (double)sum.total_minor);
  return WM_OK;
}

const WmTopic wm_topic_quote = {
  "quote",
  N_ ("Quote"),
  N_ ("Whole minor units of one currency; a quote states its date and that of the metal "
      "price."),
  N_ ("Rounding half to even: IEEE 754, ISO 80000-1; tax rule: local"),
  quote_inputs,
  WM_TOPIC_ROWS_OF (quote_inputs),
  quote_outputs,
  WM_TOPIC_ROWS_OF (quote_outputs),
  run_quote,
};
