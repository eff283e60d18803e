/* topic-chance.c: chances, evidence and value at risk, as topics
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/topics.h"

#include "reckon/chance.h"
#include "reckon/words.h"

#define MAX_ITEMS 2000
/* Whole numbers up to here are exact in a double: 2^53. */
#define MAX_EXACT 9007199254740992.0

static const WmTopicOutput series_outputs[] = {
  { "chance", "", N_ ("chance that at least one fails, independent"), 0 },
  { "at_least", "", N_ ("at least, whatever they share"), 0 },
  { "at_most", "", N_ ("at most, whatever they share"), 0 },
};

static void
answer_series (const WmSeriesChance *c, WmTopicAnswer *out)
{
  wm_answer_number (out, 0, 0, c->chance);
  wm_answer_number (out, 1, 0, c->at_least);
  wm_answer_number (out, 2, 0, c->at_most);
}

static const WmTopicInput equal_inputs[] = {
  { "p", WM_INPUT_NUMBER, "", N_ ("chance of each"), WM_REQUIRED, 0, 1 },
  { "count", WM_INPUT_WHOLE, "", N_ ("how many alike"), WM_REQUIRED, 1, 100000 },
};

static WmResult
run_equal (const WmTopicGiven *in, WmTopicAnswer *out, const char **which)
{
  WmSeriesChance c;
  WmResult result =
      wm_chance_equal (in[0].value.value, (int)in[1].value.value, &c, which);

  if (result == WM_OK)
    answer_series (&c, out);

  return result;
}

const WmTopic wm_topic_chance_equal = {
  "chance",
  N_ ("Chance of a failure among alike items"),
  N_ ("Items worn alike are not independent: look at the bounds too."),
  N_ ("Probability of independent items in series"),
  equal_inputs,
  WM_TOPIC_ROWS_OF (equal_inputs),
  series_outputs,
  WM_TOPIC_ROWS_OF (series_outputs),
  run_equal,
};

static const WmTopicInput series_inputs[] = {
  { "p", WM_INPUT_ROWS, "", N_ ("chance of each"), WM_REQUIRED, 0, 0 },
};

static WmResult
run_series (const WmTopicGiven *in, WmTopicAnswer *out, const char **which)
{
  WmSeriesChance c;
  WmResult result = wm_chance_series (in[0].numbers, in[0].n_rows, &c, which);

  if (result == WM_OK)
    answer_series (&c, out);

  return result;
}

const WmTopic wm_topic_chance_series = {
  "chance-series",
  N_ ("Chance of a failure among different items"),
  N_ ("Items worn alike are not independent: look at the bounds too."),
  N_ ("Probability of independent items in series"),
  series_inputs,
  WM_TOPIC_ROWS_OF (series_inputs),
  series_outputs,
  WM_TOPIC_ROWS_OF (series_outputs),
  run_series,
};

static const WmTopicOutput chance_outputs[] = {
  { "chance", "", N_ ("chance"), 0 },
};

static const WmTopicInput wear_inputs[] = {
  { "shape", WM_INPUT_NUMBER, "", N_ ("Weibull shape, over 1 for wear-out"), WM_REQUIRED,
    0, 50 },
  { "scale", WM_INPUT_NUMBER, "years", N_ ("Weibull scale"), WM_REQUIRED, 0, 1000 },
  { "age", WM_INPUT_NUMBER, "years", N_ ("survived to"), WM_REQUIRED, 0, 1000 },
  { "ahead", WM_INPUT_NUMBER, "years", N_ ("until the next check"), WM_REQUIRED, 0,
    1000 },
};

static WmResult
run_wear (const WmTopicGiven *in, WmTopicAnswer *out, const char **which)
{
  double chance = 0.0;
  WmResult result =
      wm_chance_weibull (in[0].value.value, in[1].value.value, in[2].value.value,
                         in[3].value.value, &chance, which);

  if (result == WM_OK)
    wm_answer_number (out, 0, 0, chance);

  return result;
}

const WmTopic wm_topic_chance_wear = {
  "chance-wear",
  N_ ("Chance of wearing out before the next check"),
  N_ ("Weibull life with the shop's own shape and scale."),
  N_ ("Weibull 1951 (from memory)"),
  wear_inputs,
  WM_TOPIC_ROWS_OF (wear_inputs),
  chance_outputs,
  WM_TOPIC_ROWS_OF (chance_outputs),
  run_wear,
};

static const WmTopicInput margin_inputs[] = {
  { "expected", WM_INPUT_NUMBER, "mm", N_ ("expected thickness, with its uncertainty"),
    WM_REQUIRED, -1e6, 1e6 },
  { "minimum", WM_INPUT_NUMBER, "mm", N_ ("least allowed"), WM_REQUIRED, -1e6, 1e6 },
};

static WmResult
run_margin (const WmTopicGiven *in, WmTopicAnswer *out, const char **which)
{
  double chance = 0.0;
  WmResult result = wm_chance_margin (in[0].value, in[1].value.value, &chance, which);

  if (result == WM_OK)
    wm_answer_number (out, 0, 0, chance);

  return result;
}

const WmTopic wm_topic_chance_margin = {
  "chance-margin",
  N_ ("Chance of being under the minimum"),
  N_ ("Normal distribution."),
  N_ ("Normal distribution, GSL"),
  margin_inputs,
  WM_TOPIC_ROWS_OF (margin_inputs),
  chance_outputs,
  WM_TOPIC_ROWS_OF (chance_outputs),
  run_margin,
};

static const WmTopicInput evidence_inputs[] = {
  { "failed", WM_INPUT_WHOLE, "", N_ ("failed"), WM_REQUIRED, 0, 1e7 },
  { "seen", WM_INPUT_WHOLE, "", N_ ("seen"), WM_REQUIRED, 0, 1e7 },
  { "level", WM_INPUT_NUMBER, "", N_ ("level of the interval"), 0.95, 0.5, 0.999999 },
};

static const WmTopicOutput evidence_outputs[] = {
  { "share", "", N_ ("share that failed"), 0 },
  { "low", "", N_ ("exact interval, low (Clopper-Pearson)"), 0 },
  { "high", "", N_ ("exact interval, high"), 0 },
  { "wilson_low", "", N_ ("Wilson interval, low"), 0 },
  { "wilson_high", "", N_ ("Wilson interval, high"), 0 },
};

static WmResult
run_evidence (const WmTopicGiven *in, WmTopicAnswer *out, const char **which)
{
  WmEvidence e;
  WmResult result = wm_evidence ((int)in[0].value.value, (int)in[1].value.value,
                                 in[2].value.value, &e, which);

  if (result != WM_OK)
    return result;

  wm_answer_number (out, 0, 0, e.share);
  wm_answer_number (out, 1, 0, e.exact_low);
  wm_answer_number (out, 2, 0, e.exact_high);
  wm_answer_number (out, 3, 0, e.wilson_low);
  wm_answer_number (out, 4, 0, e.wilson_high);
  return WM_OK;
}

const WmTopic wm_topic_evidence = {
  "evidence",
  N_ ("Evidence from the shop's own archive"),
  N_ ("Equal follow-up of all pieces; under 5 cases no percentage is given."),
  N_ ("Clopper and Pearson 1934, Wilson 1927 (from memory)"),
  evidence_inputs,
  WM_TOPIC_ROWS_OF (evidence_inputs),
  evidence_outputs,
  WM_TOPIC_ROWS_OF (evidence_outputs),
  run_evidence,
};

static const WmTopicInput risk_inputs[] = {
  { "items", WM_INPUT_ROWS, ":", N_ ("chance and declared value in minor units"),
    WM_REQUIRED, 0, 0 },
};

static const WmTopicOutput risk_outputs[] = {
  { "loss", "minor units", N_ ("expected loss"), 0 },
  { "value", "minor units", N_ ("declared value in all"), 0 },
};

static WmResult
run_risk (const WmTopicGiven *in, WmTopicAnswer *out, const char **which)
{
  double p[MAX_ITEMS];
  int64_t value[MAX_ITEMS];
  double sum = 0.0;
  int64_t loss = 0;
  WmResult result;

  if (in[0].n_rows > MAX_ITEMS)
    return wm_refuse (WM_OUT_OF_RANGE, "items", which);

  for (int i = 0; i < in[0].n_rows; i++)
    {
      double v = in[0].numbers[2 * i + 1];

      if (!(fabs (v) <= MAX_EXACT) || v != floor (v))
        return wm_refuse (isnan (v) ? WM_NOT_A_NUMBER : WM_OUT_OF_RANGE, "items", which);

      p[i] = in[0].numbers[2 * i];
      value[i] = (int64_t)v;
      sum += v;
    }

  result = wm_value_at_risk (p, value, in[0].n_rows, &loss, NULL);
  if (result != WM_OK)
    return wm_refuse (result, "items", which);

  wm_answer_number (out, 0, 0, (double)loss);
  wm_answer_number (out, 1, 0, sum);
  return WM_OK;
}

const WmTopic wm_topic_value_at_risk = {
  "value-at-risk",
  N_ ("Value at risk until the next check"),
  N_ ("Declared values, never an appraisal; one currency."),
  N_ ("Expected value; holds for dependent items too"),
  risk_inputs,
  WM_TOPIC_ROWS_OF (risk_inputs),
  risk_outputs,
  WM_TOPIC_ROWS_OF (risk_outputs),
  run_risk,
};
