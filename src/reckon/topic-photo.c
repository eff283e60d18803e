/* topic-photo.c: lengths on a photo, as topics
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/topics.h"

#include "reckon/edge.h"
#include "reckon/plane.h"
#include "reckon/scale.h"
#include "reckon/words.h"

static const WmTopicOutput length_outputs[] = {
  { "length", "mm", N_ ("length"), 0 },
  { "expanded", "mm", N_ ("expanded uncertainty, k = 2"), 0 },
  { "raw", "mm", N_ ("before corrections"), 0 },
  { "from_reference", "mm", N_ ("part from the reference's length"), 0 },
  { "from_reference_points", "mm", N_ ("part from the reference's points"), 0 },
  { "from_ends", "mm", N_ ("part from the ends of the span"), 0 },
  { "from_depth", "mm", N_ ("part from the depth"), 0 },
  { "from_tilt", "mm", N_ ("part from the tilt"), 0 },
  { "warning", "word", N_ ("warning"), 1 },
};

static void
answer_length (const WmLength *length, WmTopicAnswer *out)
{
  static const char *const warnings[] = {
    N_ ("the reference itself is known to worse than 5 %"),
    N_ ("the line may lean by more than 20 degrees: take a squarer photo"),
    N_ ("an end lies far outside the reference rectangle"),
  };
  int row = 0;

  wm_answer_value (out, 0, 0, wm_value (length->value_mm, length->u_mm));
  wm_answer_number (out, 1, 0, length->expanded_mm);
  wm_answer_number (out, 2, 0, length->raw_mm);
  wm_answer_number (out, 3, 0, length->from_reference_mm);
  wm_answer_number (out, 4, 0, length->from_reference_points_mm);
  wm_answer_number (out, 5, 0, length->from_ends_mm);
  wm_answer_number (out, 6, 0, length->from_depth_mm);
  wm_answer_number (out, 7, 0, length->from_tilt_mm);

  for (int i = 0; i < 3; i++)
    if (length->warnings & (1u << i))
      wm_answer_word (out, 8, row++, warnings[i]);
}

static const WmTopicInput photo_length_inputs[] = {
  { "scale_mm", WM_INPUT_NUMBER, "mm", N_ ("known length"), WM_REQUIRED, 0, 1e4 },
  { "scale_px", WM_INPUT_NUMBER, "px", N_ ("known length on the photo"), WM_REQUIRED, 0,
    1e6 },
  { "span_px", WM_INPUT_NUMBER, "px", N_ ("span on the photo"), WM_REQUIRED, 0, 1e6 },
  { "u_point_px", WM_INPUT_NUMBER, "px", N_ ("standard uncertainty of a placed point"),
    WM_PLACED_POINT_U_PX, 0, 1000 },
  { "nearer_mm", WM_INPUT_NUMBER, "mm", N_ ("part nearer the camera by"), 0, -1000,
    1000 },
  { "depth_half_mm", WM_INPUT_NUMBER, "mm", N_ ("unknown depth, plus or minus"), 0, 0,
    1000 },
  { "camera_mm", WM_INPUT_NUMBER, "mm", N_ ("distance of the camera"), 0, 0, 1e5 },
  { "tilt_max_deg", WM_INPUT_NUMBER, "deg", N_ ("tilt at most"), 0, 0, 45 },
};

static WmResult
run_photo_length (const WmTopicGiven *in, WmTopicAnswer *out, const char **which)
{
  const WmRuler ruler = {
    { 0, 0 }, { in[1].value.value, 0 }, in[0].value, in[3].value.value
  };
  const WmLie lie = { in[4].value.value, in[5].value.value, in[6].value.value,
                      in[7].value.value };
  const WmPoint a = { 0, 0 };
  const WmPoint b = { in[2].value.value, 0 };
  WmLength length;
  const char *at = NULL;
  WmResult result =
      wm_scale_measure (&ruler, &lie, a, b, in[3].value.value, &length, &at);

  if (result != WM_OK)
    {
      /* The points of this topic are lengths in px. */
      if (result == WM_TOO_SHORT)
        at = in[1].value.value < WM_MIN_RULER_PX ? "scale_px" : "span_px";
      return wm_refuse (result, at, which);
    }

  answer_length (&length, out);
  return WM_OK;
}

const WmTopic wm_topic_photo_length = {
  "photo-length",
  N_ ("Length on a photo from a known length"),
  N_ ("Part in the plane of the reference, lens without distortion; depth and tilt as "
      "stated."),
  N_ ("GUM (JCGM 100:2008) 4.3.7, 5.1.2, 6.2; checked against a Monte Carlo run"),
  photo_length_inputs,
  WM_TOPIC_ROWS_OF (photo_length_inputs),
  length_outputs,
  WM_TOPIC_ROWS_OF (length_outputs),
  run_photo_length,
};

static const WmTopicInput photo_plane_inputs[] = {
  { "plane", WM_INPUT_ROWS, "px:px", N_ ("four corners in order"), WM_REQUIRED, 0, 0 },
  { "width", WM_INPUT_NUMBER, "mm", N_ ("from the first corner to the second"),
    WM_REQUIRED, 0, 1e4 },
  { "height", WM_INPUT_NUMBER, "mm", N_ ("from the second corner to the third"),
    WM_REQUIRED, 0, 1e4 },
  { "span", WM_INPUT_ROWS, "px:px", N_ ("the two ends"), WM_REQUIRED, 0, 0 },
  { "u_point_px", WM_INPUT_NUMBER, "px", N_ ("standard uncertainty of a placed point"),
    WM_PLACED_POINT_U_PX, 0, 1000 },
};

static WmResult
run_photo_plane (const WmTopicGiven *in, WmTopicAnswer *out, const char **which)
{
  WmPlane plane = { .width_mm = in[1].value,
                    .height_mm = in[2].value,
                    .u_corner_px = in[4].value.value };
  const double *corner = in[0].numbers;
  const double *end = in[3].numbers;
  WmLength length;
  WmResult result;

  if (in[0].n_rows != 4)
    return wm_refuse (in[0].n_rows < 4 ? WM_TOO_FEW : WM_OUT_OF_RANGE, "plane", which);

  if (in[3].n_rows != 2)
    return wm_refuse (in[3].n_rows < 2 ? WM_TOO_FEW : WM_OUT_OF_RANGE, "span", which);

  for (int i = 0; i < 4; i++)
    plane.corners[i] = (WmPoint) { corner[2 * i], corner[2 * i + 1] };

  result = wm_plane_solve (&plane, which);
  if (result == WM_OK)
    result = wm_plane_measure (&plane, NULL, (WmPoint) { end[0], end[1] },
                               (WmPoint) { end[2], end[3] }, in[4].value.value, &length,
                               which);
  if (result != WM_OK)
    return result;

  answer_length (&length, out);
  return WM_OK;
}

const WmTopic wm_topic_photo_plane = {
  "photo-plane",
  N_ ("Length on a photo from a known rectangle"),
  N_ ("Flat rectangle, part in its plane, lens without distortion."),
  N_ ("Hartley and Zisserman, Multiple View Geometry, ch. 4; GUM (JCGM 100:2008)"),
  photo_plane_inputs,
  WM_TOPIC_ROWS_OF (photo_plane_inputs),
  length_outputs,
  WM_TOPIC_ROWS_OF (length_outputs),
  run_photo_plane,
};

static const WmTopicInput edge_inputs[] = {
  { "profile", WM_INPUT_ROWS, "", N_ ("grey along a line, proportional to light, 0 to 1"),
    WM_REQUIRED, 0, 0 },
  { "near", WM_INPUT_NUMBER, "", N_ ("sample where the end was placed"), WM_REQUIRED, 0,
    WM_EDGE_MAX_SAMPLES },
  { "samples_per_px", WM_INPUT_NUMBER, "", N_ ("samples a pixel"), 1, 0, 8 },
  { "reach_px", WM_INPUT_NUMBER, "px", N_ ("how far to look"), WM_EDGE_REACH_PX, 1, 200 },
};

static const WmTopicOutput edge_outputs[] = {
  { "edge", "", N_ ("place in samples"), 0 },
  { "uncertainty", "px", N_ ("standard uncertainty"), 0 },
  { "contrast", "", N_ ("step"), 0 },
};

static WmResult
run_edge (const WmTopicGiven *in, WmTopicAnswer *out, const char **which)
{
  const WmLightProfile profile = { in[0].numbers, in[0].n_rows, 1, in[2].value.value };
  WmEdge edge;
  WmResult result =
      wm_edge_find (&profile, in[1].value.value, in[3].value.value, 0, &edge, which);

  if (result != WM_OK)
    return result;

  wm_answer_value (out, 0, 0, wm_value (edge.at, edge.u_px * in[2].value.value));
  wm_answer_number (out, 1, 0, edge.u_px);
  wm_answer_number (out, 2, 0, edge.contrast);
  return WM_OK;
}

const WmTopic wm_topic_edge = {
  "edge",
  N_ ("Edge on a grey profile"),
  N_ ("One clear step within reach; can always be overruled by hand."),
  N_ ("Steepest slope after Canny 1986; the model part is our own measurement"),
  edge_inputs,
  WM_TOPIC_ROWS_OF (edge_inputs),
  edge_outputs,
  WM_TOPIC_ROWS_OF (edge_outputs),
  run_edge,
};
