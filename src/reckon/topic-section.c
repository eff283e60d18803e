/* topic-section.c: what is left of a section or ring, and the suggested severity
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/topics.h"

#include "reckon/ring-load.h"
#include "reckon/section.h"
#include "reckon/suggest.h"
#include "reckon/words.h"

/* In the order of WmSectionShape. */
static const char *const shapes[] = { "round", "oval",    "rectangle", "half-round", "d",
                                      "tube",  "flatted", "saddle",    NULL };

static const WmTopicInput section_inputs[] = {
  { "shape", WM_INPUT_CHOICE, "", N_ ("section as it is now"), WM_REQUIRED, 0, 0,
    shapes },
  { "made_height", WM_INPUT_NUMBER, "mm", N_ ("thickness as made; diameter of a wire"),
    WM_REQUIRED, 0, 100 },
  { "height", WM_INPUT_NUMBER, "mm", N_ ("thickness left at the thinnest"), WM_REQUIRED,
    0, 100 },
  { "made_width", WM_INPUT_NUMBER, "mm", N_ ("width as made"), 0, 0, 100 },
  { "width", WM_INPUT_NUMBER, "mm", N_ ("width now; as made when not given"), 0, 0, 100 },
  { "made_extra", WM_INPUT_NUMBER, "mm", N_ ("as made: bore, or height of the sides"), 0,
    0, 1000 },
  { "extra", WM_INPUT_NUMBER, "mm",
    N_ ("now: bore, height of the sides, or inner radius of the mate's bow"), 0, 0,
    1000 },
  { "yield_mpa", WM_INPUT_NUMBER, "MPa",
    N_ ("yield strength for this alloy and state, 0 = not known"), 0, 0, 3000 },
};

static const WmTopicOutput section_outputs[] = {
  { "thickness_left", "", N_ ("thickness left, share"), 0 },
  { "area_left", "", N_ ("metal left, share: pull"), 0 },
  { "bending_left", "", N_ ("bending strength left, share"), 0 },
  { "stiffness_left", "", N_ ("stiffness left, share"), 0 },
  { "area", "mm2", N_ ("area now"), 0 },
  { "made_area", "mm2", N_ ("area as made"), 0 },
  { "second_moment", "mm4", N_ ("second moment of area now"), 0 },
  { "modulus", "mm3", N_ ("section modulus now"), 0 },
  { "pull_made", "N", N_ ("straight pull at first yield, as made"), 0 },
  { "pull_left", "N", N_ ("straight pull at first yield, now"), 0 },
  { "moment_made", "N mm", N_ ("bending moment at first yield, as made"), 0 },
  { "moment_left", "N mm", N_ ("bending moment at first yield, now"), 0 },
  { "words", "word", N_ ("in words"), 0 },
  { "suggested", "word", N_ ("suggested"), 0 },
  { "why", "word", N_ ("why"), 0 },
};

static const char *
severity_word (WmSeverity severity)
{
  switch (severity)
    {
    case WM_SEVERITY_SOUND:
      return N_ ("sound");
    case WM_SEVERITY_WATCH:
      return N_ ("watch");
    case WM_SEVERITY_REPAIR:
      return N_ ("repair");
    case WM_SEVERITY_NO_WEAR:
    case WM_SEVERITY_NOT_LOOKED_AT:
    case WM_SEVERITY_NOT_PRESENT:
    default:
      return N_ ("do not wear");
    }
}

static void
answer_suggestion (const WmSuggestion *s, WmTopicAnswer *out, int word, int reason)
{
  wm_answer_word (out, word, 0, severity_word (s->severity));
  wm_answer_word (out, reason, 0, wm_suggest_reason_text (s->reason));
}

static void
answer_section (const WmSectionLeft *left, WmTopicAnswer *out)
{
  const WmValue values[] = {
    left->height_left,
    left->area_left,
    left->bending_left,
    left->stiff_left,
    left->worn.area_mm2,
    left->made.area_mm2,
    left->worn.second_moment_mm4,
    left->worn.modulus_mm3,
    left->pull_made_n,
    left->pull_left_n,
    left->moment_made_nmm,
    left->moment_left_nmm,
  };
  const WmThresholds rule = WM_THRESHOLDS_DEFAULT;
  WmSuggestion suggestion;

  for (int i = 0; i < WM_TOPIC_ROWS_OF (values); i++)
    if (!isnan (values[i].value))
      wm_answer_value (out, i, 0, values[i]);

  wm_answer_word (out, 12, 0, wm_section_words (left->area_left.value));
  if (wm_suggest (left->height_left, 0, wm_exact (0), 0, rule, &suggestion, NULL)
      == WM_OK)
    answer_suggestion (&suggestion, out, 13, 14);
}

static WmResult
run_section (const WmTopicGiven *in, WmTopicAnswer *out, const char **which)
{
  WmSection worn = { (WmSectionShape)in[0].value.value, in[4].value, in[2].value,
                     in[6].value };
  WmSection made = { worn.shape, in[3].value, in[1].value, in[5].value };
  WmSectionLeft left;
  WmResult result;

  if (made.shape >= WM_SECTION_FLATTED)
    made.shape = WM_SECTION_ROUND;
  if (!in[4].is_given)
    worn.width_mm = made.width_mm;
  if (!in[6].is_given)
    worn.extra_mm = made.extra_mm;

  result = wm_section_left (&made, &worn, in[7].value, &left, which);
  if (result != WM_OK)
    return result;

  answer_section (&left, out);
  return WM_OK;
}

const WmTopic wm_topic_section = {
  "section",
  N_ ("What is left of a worn section"),
  N_ ("Sound metal without cracks; a load only for a yield strength entered for this "
      "alloy "
      "and state. A chain is as strong as its weakest section."),
  N_ ("Timoshenko, Strength of Materials I; Roark; thresholds: our own proposal"),
  section_inputs,
  WM_TOPIC_ROWS_OF (section_inputs),
  section_outputs,
  WM_TOPIC_ROWS_OF (section_outputs),
  run_section,
};

static const WmTopicInput ring_load_inputs[] = {
  { "inside", WM_INPUT_NUMBER, "mm", N_ ("inside diameter"), WM_REQUIRED, 0, 100 },
  { "wire", WM_INPUT_NUMBER, "mm", N_ ("wire at the thinnest"), WM_REQUIRED, 0, 20 },
  { "yield_mpa", WM_INPUT_NUMBER, "MPa", N_ ("yield strength for this alloy and state"),
    WM_REQUIRED, 0, 3000 },
  { "modulus_mpa", WM_INPUT_NUMBER, "MPa", N_ ("Young's modulus, 0 = not known"), 0, 0,
    1e6 },
};

static const WmTopicOutput ring_load_outputs[] = {
  { "mean_radius", "mm", N_ ("mean radius"), 0 },
  { "curved_factor", "", N_ ("curved-bar factor, inner side"), 0 },
  { "plastic_moment", "N mm", N_ ("plastic moment of the wire"), 0 },
  { "open_yield", "N", N_ ("open ring: first yield"), 0 },
  { "open_pull", "N", N_ ("open ring, seam at the side: pulled open"), 0 },
  { "open_pull_plain", "N", N_ ("the same without the axial force"), 0 },
  { "open_at_seam", "N", N_ ("open ring, seam at the load: pulled open"), 0 },
  { "open_gap", "mm/N", N_ ("opening of the seam, elastic"), 0 },
  { "closed_yield", "N", N_ ("soldered ring: first yield"), 0 },
  { "closed_limit", "N", N_ ("soldered ring: plastic limit"), 0 },
  { "straight_limit", "N", N_ ("two straight legs: upper limit, not the strength"), 0 },
  { "gain", "", N_ ("soldered over open"), 0 },
};

static WmResult
run_ring_load (const WmTopicGiven *in, WmTopicAnswer *out, const char **which)
{
  WmRingLoad l;
  WmResult result =
      wm_ring_load (in[0].value, in[1].value, in[2].value, in[3].value, &l, which);
  const WmValue values[] = {
    l.mean_radius_mm, l.curved_factor,     l.plastic_moment_nmm, l.open_yield_n,
    l.open_pull_n,    l.open_pull_plain_n, l.open_at_seam_n,     l.open_gap_mm_per_n,
    l.closed_yield_n, l.closed_limit_n,    l.straight_limit_n,   l.gain,
  };

  if (result != WM_OK)
    return result;

  for (int i = 0; i < WM_TOPIC_ROWS_OF (values); i++)
    if (!isnan (values[i].value))
      wm_answer_value (out, i, 0, values[i]);

  return WM_OK;
}

const WmTopic wm_topic_ring_load = {
  "ring-load",
  N_ ("Open against soldered ring"),
  N_ ("Round wire, mean radius at least 1.5 times half the wire; a solder joint may be "
      "weaker."),
  N_ ("Timoshenko, Strength of Materials I and II; Roark, circular rings"),
  ring_load_inputs,
  WM_TOPIC_ROWS_OF (ring_load_inputs),
  ring_load_outputs,
  WM_TOPIC_ROWS_OF (ring_load_outputs),
  run_ring_load,
};

static const char *const yes_no[] = { "no", "yes", NULL };

static const WmTopicInput severity_inputs[] = {
  { "share", WM_INPUT_NUMBER, "", N_ ("thickness left over thickness as made"),
    WM_REQUIRED, 0, 1.5 },
  { "crack", WM_INPUT_CHOICE, "", N_ ("a crack is seen"), 0, 0, 0, yes_no },
  { "left", WM_INPUT_NUMBER, "mm", N_ ("thickness left"), 0, 0, 100 },
  { "minimum", WM_INPUT_NUMBER, "mm", N_ ("least allowed, 0 = no such rule"), 0, 0, 100 },
  { "watch", WM_INPUT_NUMBER, "", N_ ("watch below this share"), 0.80, 0, 1 },
  { "repair", WM_INPUT_NUMBER, "", N_ ("repair below this share"), 0.60, 0, 1 },
  { "no_wear", WM_INPUT_NUMBER, "", N_ ("do not wear below this share"), 0.40, 0, 1 },
};

static const WmTopicOutput severity_outputs[] = {
  { "suggested", "word", N_ ("suggested"), 0 },
  { "why", "word", N_ ("why"), 0 },
  { "level", "", N_ ("level, 1 sound to 4 do not wear"), 0 },
  { "careful_share", "", N_ ("share less its expanded uncertainty"), 0 },
};

static WmResult
run_severity (const WmTopicGiven *in, WmTopicAnswer *out, const char **which)
{
  const WmThresholds rule = { in[4].value.value, in[5].value.value, in[6].value.value };
  WmSuggestion s;
  WmResult result = wm_suggest (in[0].value, in[1].value.value > 0, in[2].value,
                                in[3].value.value, rule, &s, which);

  if (result != WM_OK)
    return result;

  answer_suggestion (&s, out, 0, 1);
  wm_answer_number (out, 2, 0, s.severity);
  wm_answer_number (out, 3, 0, s.careful_share);
  return WM_OK;
}

const WmTopic wm_topic_severity = {
  "severity",
  N_ ("Severity suggested by the numbers"),
  N_ ("A suggestion: the jeweller decides."),
  N_ ("Thresholds: our own proposal, changed by the shop"),
  severity_inputs,
  WM_TOPIC_ROWS_OF (severity_inputs),
  severity_outputs,
  WM_TOPIC_ROWS_OF (severity_outputs),
  run_severity,
};
