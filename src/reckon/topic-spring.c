/* topic-spring.c: tongue, notch and catch, as topics
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/topics.h"

#include "reckon/catch.h"
#include "reckon/tongue.h"
#include "reckon/words.h"

static const WmTopicInput tongue_inputs[] = {
  { "width", WM_INPUT_NUMBER, "mm", N_ ("width of the tongue"), WM_REQUIRED, 0, 50 },
  { "thickness", WM_INPUT_NUMBER, "mm", N_ ("thickness of the leaf"), WM_REQUIRED, 0,
    10 },
  { "length", WM_INPUT_NUMBER, "mm", N_ ("free length from the fold"), WM_REQUIRED, 0,
    100 },
  { "press", WM_INPUT_NUMBER, "mm", N_ ("how far the tip is pressed"), WM_REQUIRED, 0,
    20 },
  { "modulus_mpa", WM_INPUT_NUMBER, "MPa", N_ ("Young's modulus"), WM_REQUIRED, 0, 1e6 },
  { "yield_mpa", WM_INPUT_NUMBER, "MPa", N_ ("yield strength hardened, 0 = not known"), 0,
    0, 3000 },
  { "yield_annealed_mpa", WM_INPUT_NUMBER, "MPa",
    N_ ("yield strength annealed by soldering, 0 = not known"), 0, 0, 3000 },
};

enum
{
  STIFFNESS,
  FORCE,
  STRAIN,
  ELASTIC,
  YIELD_PRESS,
  YIELD_FORCE,
  LIMIT_FORCE,
  SET,
  SAYS,
  ANNEALED_FORCE,
  ANNEALED_SET,
  ANNEALED_SAYS
};

static const WmTopicOutput tongue_outputs[] = {
  [STIFFNESS] = { "stiffness", "N/mm", N_ ("stiffness at the tip"), 0 },
  [FORCE] = { "force", "N", N_ ("force at full press"), 0 },
  [STRAIN] = { "strain", "", N_ ("strain at the root"), 0 },
  [ELASTIC] = { "elastic_stress", "MPa", N_ ("stress if it stayed elastic"), 0 },
  [YIELD_PRESS] = { "yield_press", "mm", N_ ("press at which it begins to set"), 0 },
  [YIELD_FORCE] = { "yield_force", "N", N_ ("force there"), 0 },
  [LIMIT_FORCE] = { "limit_force", "N", N_ ("most it can push"), 0 },
  [SET] = { "set", "mm", N_ ("permanent set"), 0 },
  [SAYS] = { "says", "word", N_ ("in words"), 0 },
  [ANNEALED_FORCE] = { "annealed_force", "N", N_ ("annealed: force at full press"), 0 },
  [ANNEALED_SET] = { "annealed_set", "mm", N_ ("annealed: permanent set"), 0 },
  [ANNEALED_SAYS] = { "annealed_says", "word", N_ ("annealed by soldering"), 0 },
};

static const char *
tongue_words (const WmTongueLoad *load)
{
  if (isnan (load->set_mm.value))
    return N_ ("No yield strength given: whether it springs back is not known.");

  if (load->is_hinge)
    return N_ ("It folds like a hinge and stays bent: it has lost its temper.");

  return load->takes_set ? N_ ("It takes a set: raise it again, harden it, test it.")
                         : N_ ("It springs back.");
}

static WmResult
run_tongue (const WmTopicGiven *in, WmTopicAnswer *out, const char **which)
{
  WmTongue tongue = { in[0].value, in[1].value, in[2].value,
                      in[3].value, in[4].value, in[5].value };
  WmTongueLoad load;
  WmResult result = wm_tongue_load (&tongue, &load, which);

  if (result != WM_OK)
    return result;

  wm_answer_value (out, STIFFNESS, 0, load.stiffness_n_mm);
  wm_answer_value (out, FORCE, 0, load.force_n);
  wm_answer_value (out, STRAIN, 0, load.strain);
  wm_answer_value (out, ELASTIC, 0, load.elastic_mpa);
  if (!isnan (load.set_mm.value))
    {
      wm_answer_value (out, YIELD_PRESS, 0, load.yield_press_mm);
      wm_answer_value (out, YIELD_FORCE, 0, load.yield_force_n);
      wm_answer_value (out, LIMIT_FORCE, 0, load.limit_force_n);
      wm_answer_value (out, SET, 0, load.set_mm);
    }

  wm_answer_word (out, SAYS, 0, tongue_words (&load));
  if (in[6].value.value <= 0.0)
    return WM_OK;

  tongue.yield_mpa = in[6].value;
  result = wm_tongue_load (&tongue, &load, which);
  if (result != WM_OK)
    return wm_refuse (result, "yield_annealed_mpa", which);

  wm_answer_value (out, ANNEALED_FORCE, 0, load.force_n);
  wm_answer_value (out, ANNEALED_SET, 0, load.set_mm);
  wm_answer_word (out, ANNEALED_SAYS, 0, tongue_words (&load));
  return WM_OK;
}

const WmTopic wm_topic_tongue = {
  "tongue",
  N_ ("Spring tongue of a box clasp"),
  N_ ("Length at least 5 times the thickness, press at most a fifth of the length; the "
      "fold "
      "neither yields nor turns."),
  N_ ("Euler-Bernoulli cantilever (Timoshenko); set re-derived, elastic and perfectly "
      "plastic"),
  tongue_inputs,
  WM_TOPIC_ROWS_OF (tongue_inputs),
  tongue_outputs,
  WM_TOPIC_ROWS_OF (tongue_outputs),
  run_tongue,
};

static const WmTopicInput notch_inputs[] = {
  { "thickness", WM_INPUT_NUMBER, "mm", N_ ("thickness of the metal"), WM_REQUIRED, 0,
    10 },
  { "depth", WM_INPUT_NUMBER, "mm", N_ ("depth of the notch"), WM_REQUIRED, 0, 10 },
  { "root_radius", WM_INPUT_NUMBER, "mm", N_ ("radius at its root, 0 = not known"), 0, 0,
    10 },
};

static const WmTopicOutput notch_outputs[] = {
  { "pull_left", "", N_ ("pull left, share"), 0 },
  { "bending_left", "", N_ ("bending strength left, share"), 0 },
  { "stiffness_left", "", N_ ("stiffness left, share"), 0 },
  { "concentration", "", N_ ("stress concentration, upper guide"), 0 },
  { "says", "word", N_ ("in words"), 0 },
};

static WmResult
run_notch (const WmTopicGiven *in, WmTopicAnswer *out, const char **which)
{
  WmNotch notch;
  WmResult result = wm_notch (in[0].value, in[1].value, in[2].value, &notch, which);

  if (result != WM_OK)
    return result;

  wm_answer_value (out, 0, 0, notch.pull_left);
  wm_answer_value (out, 1, 0, notch.bending_left);
  wm_answer_value (out, 2, 0, notch.stiff_left);
  if (!isnan (notch.concentration.value))
    wm_answer_value (out, 3, 0, notch.concentration);
  wm_answer_word (out, 4, 0,
                  notch.is_too_deep
                      ? N_ ("The notch is too deep: too little metal is left under it.")
                      : N_ ("Enough metal is left under the notch."));
  return WM_OK;
}

const WmTopic wm_topic_notch = {
  "notch",
  N_ ("Metal left under a notch"),
  N_ ("Shallow notch in bending; for daily snapping the concentration warns of cracks."),
  N_ ("Inglis 1913; limit of 0.60: our own proposal"),
  notch_inputs,
  WM_TOPIC_ROWS_OF (notch_inputs),
  notch_outputs,
  WM_TOPIC_ROWS_OF (notch_outputs),
  run_notch,
};

static const WmTopicInput catch_inputs[] = {
  { "notch_depth", WM_INPUT_NUMBER, "mm", N_ ("depth of the notch"), WM_REQUIRED, 0, 10 },
  { "catch_height", WM_INPUT_NUMBER, "mm", N_ ("height of the catch"), WM_REQUIRED, 0,
    10 },
  { "slack", WM_INPUT_NUMBER, "mm", N_ ("slack"), 0, 0, 10 },
  { "set", WM_INPUT_NUMBER, "mm", N_ ("set of the tongue"), 0, 0, 10 },
  { "force", WM_INPUT_NUMBER, "N", N_ ("force of the tongue at the tip"), WM_REQUIRED, 0,
    1000 },
  { "friction", WM_INPUT_NUMBER, "", N_ ("friction; 0.2 is an example, not a fact"), 0.2,
    0, 1 },
  { "front", WM_INPUT_NUMBER, "deg", N_ ("slope going in"), 30, 1, 89 },
  { "back", WM_INPUT_NUMBER, "deg", N_ ("slope coming out, 90 = square"), 90, 1, 90 },
  { "width", WM_INPUT_NUMBER, "mm", N_ ("width of the catching edge, 0 = not known"), 0,
    0, 50 },
  { "yield_mpa", WM_INPUT_NUMBER, "MPa", N_ ("yield strength, 0 = not known"), 0, 0,
    3000 },
};

static const WmTopicOutput catch_outputs[] = {
  { "engaged", "mm", N_ ("engagement"), 0 },
  { "push_in", "N", N_ ("push to close"), 0 },
  { "pull_out", "N", N_ ("pull that opens it over the slope"), 0 },
  { "shear", "N", N_ ("load at which the catch shears"), 0 },
  { "says", "word", N_ ("in words"), 0 },
  { "test", "word", N_ ("hold test"), 0 },
};

static WmResult
run_catch (const WmTopicGiven *in, WmTopicAnswer *out, const char **which)
{
  const WmCatch c = { in[0].value, in[1].value, in[2].value, in[3].value, in[4].value,
                      in[5].value, in[6].value, in[7].value, in[8].value, in[9].value };
  WmCatchHold hold;
  WmResult result = wm_catch_hold (&c, &hold, which);

  if (result != WM_OK)
    return result;

  wm_answer_value (out, 0, 0, hold.engaged_mm);
  wm_answer_value (out, 1, 0, hold.push_in_n);
  if (!isnan (hold.pull_out_n.value))
    wm_answer_value (out, 2, 0, hold.pull_out_n);
  if (!isnan (hold.shear_n.value))
    wm_answer_value (out, 3, 0, hold.shear_n);

  if (hold.engaged_mm.value <= 0.0)
    wm_answer_word (out, 4, 0, N_ ("It does not catch at all."));
  else
    wm_answer_word (out, 4, 0,
                    hold.locks ? N_ ("It locks; the catch would have to shear.")
                               : N_ ("It opens over the slope under a pull."));

  wm_answer_word (out, 5, 0,
                  hold.needs_hold_test ? N_ ("A hold test is needed.")
                                       : N_ ("Test it as after every repair."));
  return WM_OK;
}

const WmTopic wm_topic_catch = {
  "catch",
  N_ ("Hold of a catch"),
  N_ ("Clean faces, friction as stated; near self-locking no number is given."),
  N_ ("Snap-fit design guides; von Mises 1913; least engagement 0.20 mm: our own "
      "proposal"),
  catch_inputs,
  WM_TOPIC_ROWS_OF (catch_inputs),
  catch_outputs,
  WM_TOPIC_ROWS_OF (catch_outputs),
  run_catch,
};
