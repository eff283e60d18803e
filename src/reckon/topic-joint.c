/* topic-joint.c: soldered joints and bridges, as topics
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/topics.h"

#include "reckon/joint.h"
#include "reckon/words.h"

static const WmTopicInput joint_inputs[] = {
  { "angle", WM_INPUT_NUMBER, "deg", N_ ("joint's plane to the wire, 90 = straight"),
    WM_REQUIRED, 10, 90 },
  { "wire", WM_INPUT_NUMBER, "mm", N_ ("diameter of a round wire, or give the area"), 0,
    0, 50 },
  { "area", WM_INPUT_NUMBER, "mm2", N_ ("section of the wire"), 0, 0, 1e4 },
  { "gap", WM_INPUT_NUMBER, "mm", N_ ("gap"), 0.05, 0, 5 },
  { "across_mpa", WM_INPUT_NUMBER, "MPa", N_ ("solder across the joint, 0 = not known"),
    0, 0, 3000 },
  { "along_mpa", WM_INPUT_NUMBER, "MPa", N_ ("solder along the joint, 0 = not known"), 0,
    0, 3000 },
  { "yield_mpa", WM_INPUT_NUMBER, "MPa", N_ ("yield strength of the wire, 0 = not known"),
    0, 0, 3000 },
  { "solder_density", WM_INPUT_NUMBER, "g/cm3", N_ ("density of the solder"), 14, 1, 25 },
  { "fillet", WM_INPUT_NUMBER, "", N_ ("allowance for the fillet"), WM_JOINT_FILLET, 1,
    10 },
};

static const WmTopicOutput joint_outputs[] = {
  { "joint_area", "mm2", N_ ("area of the joint"), 0 },
  { "area_gain", "", N_ ("against a straight joint"), 0 },
  { "across_share", "", N_ ("share of the stress across the joint"), 0 },
  { "along_share", "", N_ ("share of the stress along the joint"), 0 },
  { "allowed", "MPa", N_ ("pull on the wire that the joint holds"), 0 },
  { "force", "N", N_ ("the same as a force"), 0 },
  { "gain", "", N_ ("strength against a straight joint"), 0 },
  { "solder_volume", "mm3", N_ ("solder, gap alone"), 0 },
  { "solder_weight", "mg", N_ ("solder, gap alone"), 0 },
  { "solder_with_fillet", "mg", N_ ("solder with fillet"), 0 },
  { "says", "word", N_ ("in words"), 1 },
};

static WmResult
run_joint (const WmTopicGiven *in, WmTopicAnswer *out, const char **which)
{
  WmValue area = in[2].value;
  int row = 0;
  WmJointStrength s;
  WmResult result;

  if (in[1].value.value > 0.0 && in[2].value.value > 0.0)
    return wm_refuse (WM_CONTRADICTION, "area", which);

  if (in[1].value.value > 0.0)
    {
      double d = in[1].value.value;

      area = wm_value (M_PI * d * d / 4.0, M_PI * d / 2.0 * in[1].value.u);
    }
  else if (area.value <= 0.0)
    return wm_refuse (in[1].is_given ? WM_NOT_POSITIVE : WM_MISSING, "wire", which);

  result = wm_joint (&(WmJoint) { in[0].value, area, in[3].value, in[4].value,
                                  in[5].value, in[6].value, in[7].value, in[8].value },
                     &s, which);
  if (result != WM_OK)
    return result;

  {
    const WmValue values[] = {
      s.joint_area_mm2, s.area_gain, s.across_share, s.along_share, s.allowed_mpa,
      s.force_n,        s.gain,      s.solder_mm3,   s.solder_mg,   s.solder_fillet_mg
    };

    for (int i = 0; i < WM_TOPIC_ROWS_OF (values); i++)
      if (!isnan (values[i].value))
        wm_answer_value (out, i, 0, values[i]);
  }

  if (isnan (s.allowed_mpa.value))
    wm_answer_word (out, 10, row++, N_ ("No solder strength given: shares only."));
  if (s.is_metal_the_limit)
    wm_answer_word (out, 10, row++, N_ ("The wire gives before the joint."));
  if (s.is_gap_wide)
    wm_answer_word (out, 10, row++,
                    N_ ("The gap is wide: solder fills a seam, fit better."));
  if (s.is_gap_narrow)
    wm_answer_word (out, 10, row++, N_ ("The gap is too tight to draw solder in."));
  return WM_OK;
}

const WmTopic wm_topic_joint = {
  "joint",
  N_ ("Straight or angled soldered joint"),
  N_ ("Angle 10 to 90 degrees, sound solder, even gap."),
  N_ ("Cauchy's stress transformation; quadratic criterion, from memory; gap: common "
      "practice"),
  joint_inputs,
  WM_TOPIC_ROWS_OF (joint_inputs),
  joint_outputs,
  WM_TOPIC_ROWS_OF (joint_outputs),
  run_joint,
};

static const WmTopicInput bridge_inputs[] = {
  { "made", WM_INPUT_NUMBER, "mm2", N_ ("section as made"), WM_REQUIRED, 0, 1e4 },
  { "left", WM_INPUT_NUMBER, "mm2", N_ ("section left"), WM_REQUIRED, 0, 1e4 },
  { "width", WM_INPUT_NUMBER, "mm", N_ ("width of the bridge"), WM_REQUIRED, 0, 100 },
  { "place", WM_INPUT_NUMBER, "mm", N_ ("length of the weak place"), 0, 0, 100 },
  { "yield_mpa", WM_INPUT_NUMBER, "MPa",
    N_ ("yield strength of the bridge, 0 = not known"), 0, 0, 3000 },
  { "along_mpa", WM_INPUT_NUMBER, "MPa", N_ ("solder in shear, 0 = not known"), 0, 0,
    3000 },
};

static const WmTopicOutput bridge_outputs[] = {
  { "thickness", "mm", N_ ("least thickness of the bridge"), 0 },
  { "lap", "mm", N_ ("least overlap each side"), 0 },
  { "length", "mm", N_ ("least length of the bridge"), 0 },
};

static WmResult
run_bridge (const WmTopicGiven *in, WmTopicAnswer *out, const char **which)
{
  WmBridge bridge;
  WmResult result = wm_bridge (in[0].value, in[1].value, in[2].value, in[3].value,
                               in[4].value, in[5].value, &bridge, which);

  if (result != WM_OK)
    return result;

  wm_answer_value (out, 0, 0, bridge.thickness_mm);
  if (!isnan (bridge.lap_mm.value))
    {
      wm_answer_value (out, 1, 0, bridge.lap_mm);
      wm_answer_value (out, 2, 0, bridge.length_mm);
    }

  return WM_OK;
}

const WmTopic wm_topic_bridge = {
  "bridge",
  N_ ("Bridge over a weak place"),
  N_ ("Even shear along the lap: take more, not less."),
  N_ ("Derived: the bridge carries the lost section, the solder what the bridge carries"),
  bridge_inputs,
  WM_TOPIC_ROWS_OF (bridge_inputs),
  bridge_outputs,
  WM_TOPIC_ROWS_OF (bridge_outputs),
  run_bridge,
};
