/* topic-stone.c: stone weights and ring sizes, as topics
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/topics.h"

#include "reckon/ring-size.h"
#include "reckon/stone-weight.h"
#include "reckon/words.h"

/* In the order of WmStoneCut; test-topics.c holds them against wm_stone_cut_key. */
static const char *const cuts[] = { "round",    "round-old", "oval",     "emerald-cut",
                                    "marquise", "pear",      "princess", "heart",
                                    "triangle", "baguette",  "tapered",  "rectangle",
                                    "square",   "cabochon",  "sphere",   NULL };

static const WmTopicInput stone_inputs[] = {
  { "cut", WM_INPUT_CHOICE, "", N_ ("cut"), WM_REQUIRED, 0, 0, cuts },
  { "length", WM_INPUT_NUMBER, "mm", N_ ("length or diameter"), WM_REQUIRED, 0, 200 },
  { "width", WM_INPUT_NUMBER, "mm", N_ ("width; as the length when not given"), 0, 0,
    200 },
  { "depth", WM_INPUT_NUMBER, "mm", N_ ("depth; not for a round bead"), 0, 0, 200 },
  { "specific_gravity", WM_INPUT_NUMBER, "", N_ ("specific gravity, 0 = diamond"), 0, 0,
    8 },
  { "correction", WM_INPUT_NUMBER, "%", N_ ("for girdle or bulge"), 0, -10, 20 },
};

static const WmTopicOutput stone_outputs[] = {
  { "carat", "ct", N_ ("weight"), 0 },
  { "gram", "g", N_ ("weight"), 0 },
  { "factor", "", N_ ("factor of the cut"), 0 },
};

static WmResult
run_stone (const WmTopicGiven *in, WmTopicAnswer *out, const char **which)
{
  WmStoneMeasures stone = { (WmStoneCut)in[0].value.value,
                            in[1].value,
                            in[2].is_given ? in[2].value : in[1].value,
                            in[3].value,
                            in[4].value,
                            in[5].value.value };
  WmStoneWeight weight;
  WmResult result = wm_stone_weight (&stone, &weight, which);

  if (result != WM_OK)
    return result;

  wm_answer_value (out, 0, 0, weight.carat);
  wm_answer_value (out, 1, 0,
                   wm_value (weight.carat.value / WM_CARAT_PER_GRAM,
                             weight.carat.u / WM_CARAT_PER_GRAM));
  wm_answer_number (out, 2, 0, weight.factor);
  return WM_OK;
}

const WmTopic wm_topic_stone_weight = {
  "stone-weight",
  N_ ("Stone weight from measurements"),
  N_ ("Ordinary proportions; an estimate, never a weighing."),
  N_ ("Published estimating tables (1931 and later) and common practice; see the cut"),
  stone_inputs,
  WM_TOPIC_ROWS_OF (stone_inputs),
  stone_outputs,
  WM_TOPIC_ROWS_OF (stone_outputs),
  run_stone,
};

/* In the order of WmSizeScale. */
static const char *const scales[] = { "circumference", "diameter", "us", "minus-40",
                                      NULL };

static const WmTopicInput size_inputs[] = {
  { "scale", WM_INPUT_CHOICE, "", N_ ("scale"), WM_REQUIRED, 0, 0, scales },
  { "size", WM_INPUT_NUMBER, "", N_ ("size"), WM_REQUIRED, -10, 100 },
  { "thickness", WM_INPUT_NUMBER, "mm", N_ ("thickness of the shank, for the blank"), 0,
    0, 20 },
};

static const WmTopicOutput size_outputs[] = {
  { "circumference", "mm", N_ ("inner circumference (ISO size)"), 0 },
  { "diameter", "mm", N_ ("inner diameter"), 0 },
  { "us", "", N_ ("United States"), 0 },
  { "minus_40", "", N_ ("Italy, Spain, Switzerland, Netherlands"), 0 },
  { "uk_about", "", N_ ("United Kingdom, about (1.25 mm a letter)"), 0 },
  { "uk_about_list", "", N_ ("United Kingdom, about (list of 1.30 mm a letter)"), 0 },
  { "blank", "mm", N_ ("length of the blank"), 0 },
};

static WmResult
run_size (const WmTopicGiven *in, WmTopicAnswer *out, const char **which)
{
  char letter[8];
  WmRingSize s;
  WmResult result =
      wm_ring_size ((WmSizeScale)in[0].value.value, in[1].value, in[2].value, &s, which);

  if (result != WM_OK)
    return result;

  wm_answer_value (out, 0, 0, s.circumference_mm);
  wm_answer_value (out, 1, 0, s.diameter_mm);
  wm_answer_value (out, 2, 0, s.us);
  wm_answer_value (out, 3, 0, s.minus_40);
  wm_ring_letter (s.uk_1250, letter);
  if (letter[0] != '\0')
    wm_answer_note (out, 4, 0, letter);
  wm_ring_letter (s.uk_1300, letter);
  if (letter[0] != '\0')
    wm_answer_note (out, 5, 0, letter);
  if (!isnan (s.blank_mm.value))
    wm_answer_value (out, 6, 0, s.blank_mm);
  return WM_OK;
}

const WmTopic wm_topic_ring_size = {
  "ring-size",
  N_ ("Ring size"),
  N_ ("Letters differ between lists: the millimetres count."),
  N_ ("ISO 8653 (read in excerpt); trade tables"),
  size_inputs,
  WM_TOPIC_ROWS_OF (size_inputs),
  size_outputs,
  WM_TOPIC_ROWS_OF (size_outputs),
  run_size,
};
