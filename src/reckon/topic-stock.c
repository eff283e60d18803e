/* topic-stock.c: stock metal, as topics
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/topics.h"

#include "reckon/stock.h"
#include "reckon/words.h"

/* In the order of WmStockShape and WmStripEdge. */
static const char *const stock_shapes[] = { "round", "square", "sheet",
                                            "tube",  "sphere", NULL };
static const char *const strip_edges[] = { "square", "round", NULL };

static const WmTopicInput stock_inputs[] = {
  { "shape", WM_INPUT_CHOICE, "", N_ ("shape"), WM_REQUIRED, 0, 0, stock_shapes },
  { "first", WM_INPUT_NUMBER, "mm", N_ ("diameter, side or width"), WM_REQUIRED, 0, 1e4 },
  { "second", WM_INPUT_NUMBER, "mm", N_ ("thickness of a sheet, bore of a tube"), 0, 0,
    1e4 },
  { "length", WM_INPUT_NUMBER, "mm", N_ ("length"), 0, 0, 1e6 },
  { "density", WM_INPUT_NUMBER, "g/cm3", N_ ("density"), WM_REQUIRED, 0.5, 25 },
};

static const WmTopicOutput weight_outputs[] = {
  { "weight", "g", N_ ("weight"), 0 },
};

static WmResult
run_stock (const WmTopicGiven *in, WmTopicAnswer *out, const char **which)
{
  WmValue grams;
  WmResult result =
      wm_stock_weight ((WmStockShape)in[0].value.value, in[1].value, in[2].value,
                       in[3].value, in[4].value, &grams, which);

  if (result == WM_OK)
    wm_answer_value (out, 0, 0, grams);

  return result;
}

const WmTopic wm_topic_stock = {
  "stock",
  N_ ("Weight of stock metal"),
  N_ ("Solid metal, true dimensions."),
  N_ ("Geometry; density of the alloy from the supplier"),
  stock_inputs,
  WM_TOPIC_ROWS_OF (stock_inputs),
  weight_outputs,
  WM_TOPIC_ROWS_OF (weight_outputs),
  run_stock,
};

static const WmTopicInput strip_inputs[] = {
  { "wire", WM_INPUT_NUMBER, "mm", N_ ("round wire"), WM_REQUIRED, 0, 1000 },
  { "thickness", WM_INPUT_NUMBER, "mm", N_ ("thickness of the strip"), WM_REQUIRED, 0,
    100 },
  { "edge", WM_INPUT_CHOICE, "", N_ ("edges"), WM_EDGE_ROUND, 0, 0, strip_edges },
};

static const WmTopicOutput strip_outputs[] = {
  { "width", "mm", N_ ("width at most"), 0 },
};

static WmResult
run_strip (const WmTopicGiven *in, WmTopicAnswer *out, const char **which)
{
  WmValue width;
  WmResult result = wm_strip_from_wire (in[0].value, in[1].value,
                                        (WmStripEdge)in[2].value.value, &width, which);

  if (result == WM_OK)
    wm_answer_value (out, 0, 0, width);

  return result;
}

const WmTopic wm_topic_strip = {
  "strip",
  N_ ("Strip from round wire"),
  N_ ("No lengthening: real rolling gives a little less width."),
  N_ ("Volume is kept"),
  strip_inputs,
  WM_TOPIC_ROWS_OF (strip_inputs),
  strip_outputs,
  WM_TOPIC_ROWS_OF (strip_outputs),
  run_strip,
};

static const WmTopicInput wire_inputs[] = {
  { "width", WM_INPUT_NUMBER, "mm", N_ ("width of the strip"), WM_REQUIRED, 0, 1000 },
  { "thickness", WM_INPUT_NUMBER, "mm", N_ ("thickness of the strip"), WM_REQUIRED, 0,
    100 },
  { "edge", WM_INPUT_CHOICE, "", N_ ("edges"), WM_EDGE_ROUND, 0, 0, strip_edges },
};

static const WmTopicOutput wire_outputs[] = {
  { "wire", "mm", N_ ("round wire to start from, at least"), 0 },
};

static WmResult
run_wire (const WmTopicGiven *in, WmTopicAnswer *out, const char **which)
{
  WmValue wire;
  WmResult result = wm_wire_for_strip (in[0].value, in[1].value,
                                       (WmStripEdge)in[2].value.value, &wire, which);

  if (result == WM_OK)
    wm_answer_value (out, 0, 0, wire);

  return result;
}

const WmTopic wm_topic_wire = {
  "wire-for-strip",
  N_ ("Round wire for a strip"),
  N_ ("No lengthening: start a little thicker."),
  N_ ("Volume is kept"),
  wire_inputs,
  WM_TOPIC_ROWS_OF (wire_inputs),
  wire_outputs,
  WM_TOPIC_ROWS_OF (wire_outputs),
  run_wire,
};

static const WmTopicInput drawn_inputs[] = {
  { "from", WM_INPUT_NUMBER, "mm", N_ ("wire before"), WM_REQUIRED, 0, 100 },
  { "to", WM_INPUT_NUMBER, "mm", N_ ("wire after"), WM_REQUIRED, 0, 100 },
};

static const WmTopicOutput drawn_outputs[] = {
  { "length_factor", "", N_ ("times as long"), 0 },
  { "reduction", "%", N_ ("reduction of the section"), 0 },
};

static WmResult
run_drawn (const WmTopicGiven *in, WmTopicAnswer *out, const char **which)
{
  WmDrawn drawn;
  WmResult result = wm_drawn_wire (in[0].value, in[1].value, &drawn, which);

  if (result != WM_OK)
    return result;

  wm_answer_value (out, 0, 0, drawn.length_factor);
  wm_answer_value (out, 1, 0, drawn.reduction_percent);
  return WM_OK;
}

const WmTopic wm_topic_drawn = {
  "drawn-wire",       N_ ("Drawing wire"),
  N_ ("Round wire."), N_ ("Volume is kept"),
  drawn_inputs,       WM_TOPIC_ROWS_OF (drawn_inputs),
  drawn_outputs,      WM_TOPIC_ROWS_OF (drawn_outputs),
  run_drawn,
};

static const WmTopicInput refill_inputs[] = {
  { "wire", WM_INPUT_NUMBER, "mm", N_ ("wire as made"), WM_REQUIRED, 0, 100 },
  { "kept", WM_INPUT_NUMBER, "mm", N_ ("thickness left under the flat"), WM_REQUIRED, 0,
    100 },
  { "length", WM_INPUT_NUMBER, "mm", N_ ("length of the worn place"), WM_REQUIRED, 0,
    1e4 },
  { "density", WM_INPUT_NUMBER, "g/cm3", N_ ("density"), WM_REQUIRED, 0.5, 25 },
};

static WmResult
run_refill (const WmTopicGiven *in, WmTopicAnswer *out, const char **which)
{
  WmValue grams;
  WmResult result = wm_refill_weight (in[0].value, in[1].value, in[2].value, in[3].value,
                                      &grams, which);

  if (result == WM_OK)
    wm_answer_value (out, 0, 0, grams);

  return result;
}

const WmTopic wm_topic_refill = {
  "refill",
  N_ ("Metal to refill a worn wire"),
  N_ ("One flat of even depth on a round wire."),
  N_ ("Geometry of the circular segment"),
  refill_inputs,
  WM_TOPIC_ROWS_OF (refill_inputs),
  weight_outputs,
  WM_TOPIC_ROWS_OF (weight_outputs),
  run_refill,
};

static const WmTopicInput alloy_inputs[] = {
  { "parts", WM_INPUT_ROWS, ":g/cm3", N_ ("parts per thousand and density of each metal"),
    WM_REQUIRED, 0, 0 },
};

static const WmTopicOutput alloy_outputs[] = {
  { "density", "g/cm3", N_ ("density of the mixture"), 0 },
};

static WmResult
run_alloy (const WmTopicGiven *in, WmTopicAnswer *out, const char **which)
{
  WmAlloyPart parts[12];
  double density = 0.0;
  WmResult result;

  if (in[0].n_rows > 12)
    return wm_refuse (WM_OUT_OF_RANGE, "parts", which);

  for (int i = 0; i < in[0].n_rows; i++)
    parts[i] = (WmAlloyPart) { in[0].numbers[2 * i], in[0].numbers[2 * i + 1] };

  result = wm_alloy_density (parts, in[0].n_rows, &density, which);
  if (result == WM_OK)
    wm_answer_number (out, 0, 0, density);

  return result;
}

const WmTopic wm_topic_alloy = {
  "alloy-density",
  N_ ("Density of an alloy"),
  N_ ("An estimate: real alloys differ by a few tenths."),
  N_ ("Volumes add up (mixing rule)"),
  alloy_inputs,
  WM_TOPIC_ROWS_OF (alloy_inputs),
  alloy_outputs,
  WM_TOPIC_ROWS_OF (alloy_outputs),
  run_alloy,
};
