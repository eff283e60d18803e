/* verb-measure.c: measure FILE: a length on a photo with its uncertainty
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#include "command/verbs.h"
#include "photo/load.h"
#include "photo/probe.h"
#include "photo/sheet-find.h"
#include "photo/span-profile.h"
#include "reckon/plane.h"
#include "reckon/scale.h"

static const WmVerbOption options[] = {
  { "scale", 0, N_ ("X1,Y1,X2,Y2,MM"), N_ ("two points a known distance apart") },
  { "plane", 0, N_ ("X1,Y1,…,X4,Y4,W,H"),
    N_ ("instead: four corners in order, and the two lengths") },
  { "sheet", 0, NULL, N_ ("instead: find the printed scale sheet on the photo") },
  { "sheet-check", 0, N_ ("MM"),
    N_ ("what the sheet's 100 mm measures on the paper, 100 unless given") },
  { "span", 0, N_ ("X1,Y1,X2,Y2"), N_ ("the span to be measured") },
  { "snap", 0, NULL, N_ ("move the ends of the span to the edges of the metal") },
  { "point-uncertainty", 0, N_ ("PX"),
    N_ ("standard uncertainty of a placed point, 1 px unless given") },
  { "reference-uncertainty", 0, N_ ("MM"),
    N_ ("standard uncertainty of the known lengths, 0 unless given") },
  { "depth", 0, N_ ("MM,CAMERA"),
    N_ ("unknown depth plus or minus MM with the camera at CAMERA mm") },
  { "tilt", 0, N_ ("DEGREES"), N_ ("the line may lean by up to so much") },
  { NULL },
};

typedef struct
{
  WmPoint a, b;
  double u_end_px;
  double u_point_px;
  WmRuler ruler;
  WmPlane plane;
  gboolean is_plane;
  gboolean is_sheet;
  double sheet_check_mm;
  gboolean wants_snap;
  gboolean snapped[2];
  WmLie lie;
} Measuring;

static gboolean
numbers_of (WmCall *call, const char *option, guint n, double *numbers, WmExit *exit_code)
{
  const char *text = wm_call_get_option (call, option);

  if (text == NULL)
    return TRUE;

  if (!wm_parse_numbers (text, n, numbers))
    {
      g_autofree char *shown = wm_shown_path (text);

      *exit_code = wm_call_misused (call, _ ("--%s needs %u numbers, not “%s”."), option,
                                    n, shown);
      return FALSE;
    }

  return TRUE;
}

static gboolean
read_options (WmCall *call, Measuring *m, WmExit *exit_code)
{
  double scale[5], plane[10], span[4];
  double u_point[1] = { WM_PLACED_POINT_U_PX };
  double u_reference[1] = { 0.0 };
  double depth[2] = { 0.0, 0.0 };
  double tilt[1] = { 0.0 };
  double check[1] = { WM_SHEET_CHECK_MM };

  m->is_sheet = wm_call_get_option (call, "sheet") != NULL;
  m->is_plane = m->is_sheet || wm_call_get_option (call, "plane") != NULL;
  if ((wm_call_get_option (call, "scale") != NULL)
          + (wm_call_get_option (call, "plane") != NULL) + m->is_sheet
      != 1)
    {
      *exit_code =
          wm_call_misused (call, "%s", _ ("Give one of --scale, --plane and --sheet."));
      return FALSE;
    }
  if (wm_call_get_option (call, "span") == NULL)
    {
      *exit_code = wm_call_misused (call, "%s", _ ("--span is missing."));
      return FALSE;
    }
  if (!numbers_of (call, "scale", 5, scale, exit_code)
      || !numbers_of (call, "plane", 10, plane, exit_code)
      || !numbers_of (call, "span", 4, span, exit_code)
      || !numbers_of (call, "point-uncertainty", 1, u_point, exit_code)
      || !numbers_of (call, "reference-uncertainty", 1, u_reference, exit_code)
      || !numbers_of (call, "depth", 2, depth, exit_code)
      || !numbers_of (call, "tilt", 1, tilt, exit_code)
      || !numbers_of (call, "sheet-check", 1, check, exit_code))
    return FALSE;
  if (!(check[0] >= 80 && check[0] <= 125))
    {
      *exit_code = wm_call_misused (call, "%s", _ ("--sheet-check is 80 to 125 mm."));
      return FALSE;
    }

  m->a = (WmPoint) { span[0], span[1] };
  m->b = (WmPoint) { span[2], span[3] };
  m->u_point_px = m->u_end_px = u_point[0];
  m->lie = (WmLie) { 0.0, depth[0], depth[1], tilt[0] };
  m->sheet_check_mm = check[0];
  if (m->is_sheet)
    m->plane.width_mm = m->plane.height_mm = wm_value (0.0, u_reference[0]);
  else if (m->is_plane)
    {
      for (int i = 0; i < 4; i++)
        m->plane.corners[i] = (WmPoint) { plane[2 * i], plane[2 * i + 1] };
      m->plane.width_mm = wm_value (plane[8], u_reference[0]);
      m->plane.height_mm = wm_value (plane[9], u_reference[0]);
      m->plane.u_corner_px = u_point[0];
    }
  else
    m->ruler = (WmRuler) { { scale[0], scale[1] },
                           { scale[2], scale[3] },
                           { scale[4], u_reference[0] },
                           u_point[0] };
  return TRUE;
}

/* ---- measuring
 * ------------------------------------------------------------------------- */

/* What @which of the reckoning room is called here. */
static const char *
option_of (const char *which)
{
  static const char *const names[][2] = {
    { "scale_mm", "scale" },
    { "plane_mm", "plane" },
    { "u_point_px", "point-uncertainty" },
    { "u_end_px", "point-uncertainty" },
    { "depth_half_mm", "depth" },
    { "camera_mm", "depth" },
    { "tilt_max_deg", "tilt" },
    { "profile", "span" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    if (g_strcmp0 (which, names[i][0]) == 0)
      return names[i][1];
  return which != NULL ? which : "span";
}

static WmExit
refuse (WmCall *call, WmResult result, const char *which)
{
  return wm_call_fail (call, _ ("--%s %s."), option_of (which),
                       _ (wm_result_text (result)));
}

static gboolean
is_on_photo (WmPoint p, const WmPhotoFacts *facts)
{
  return p.x >= 0.0 && p.y >= 0.0 && p.x <= facts->width && p.y <= facts->height;
}

/* Ends and corners that are not on the photo are a slip, whatever they measure. */
static WmExit
check_places (WmCall *call, const Measuring *m, const WmPhotoFacts *facts)
{
  gboolean span = is_on_photo (m->a, facts) && is_on_photo (m->b, facts);
  gboolean reference = TRUE;

  for (int i = 0; i < 4 && m->is_plane && !m->is_sheet; i++)
    reference = reference && is_on_photo (m->plane.corners[i], facts);
  if (!m->is_plane)
    reference = is_on_photo (m->ruler.a, facts) && is_on_photo (m->ruler.b, facts);

  if (span && reference)
    return WM_EXIT_DONE;

  return wm_call_fail (call, _ ("--%s lies outside the photo, which is %d × %d px."),
                       !span         ? "span"
                       : m->is_plane ? "plane"
                                     : "scale",
                       facts->width, facts->height);
}

/* The plane of the printed sheet, or why there is none. */
static WmExit
find_sheet (WmCall *call, const char *path, Measuring *m)
{
  g_autoptr (GError) error = NULL;
  WmSheetPlace place;

  if (!wm_sheet_find (path, m->sheet_check_mm, &place, NULL, &error))
    return wm_call_fail_with (call, error);
  if (place.answer != WM_SHEET_FOUND)
    return wm_call_fail (call, "%s", _ (wm_sheet_answer_text (place.answer)));

  memcpy (m->plane.corners, place.corners, sizeof place.corners);
  m->plane.width_mm.value = place.width_mm;
  m->plane.height_mm.value = place.height_mm;
  m->plane.u_corner_px = place.u_corner_px;
  return WM_EXIT_DONE;
}

/* Both ends moved to edges where there are any; without an edge an end stays as placed,
 * as uncertain as the hand. */
static WmExit
snap (WmCall *call, const char *path, Measuring *m)
{
  g_autoptr (GError) error = NULL;
  WmSnappedEnd ends[2];
  WmResult result;

  m->wants_snap = TRUE;
  m->u_end_px = WM_EDGE_REACH_PX * WM_EDGE_HAND_SHARE;
  if (wm_photo_snap_span (path, m->a, m->b, WM_EDGE_REACH_PX, ends, &result, NULL,
                          &error))
    {
      m->a = ends[0].at;
      m->b = ends[1].at;
      m->snapped[0] = ends[0].is_snapped;
      m->snapped[1] = ends[1].is_snapped;
      /* One figure for both ends: the same sum of squares. */
      m->u_end_px = hypot (ends[0].u_px, ends[1].u_px) / sqrt (2.0);
    }
  else if (error != NULL)
    return wm_call_fail_with (call, error);
  else if (result != WM_NO_EDGE)
    return refuse (call, result, "span");

  return WM_EXIT_DONE;
}

static void
add_point (JsonBuilder *builder, WmPoint p)
{
  json_builder_begin_array (builder);
  json_builder_add_double_value (builder, p.x);
  json_builder_add_double_value (builder, p.y);
  json_builder_end_array (builder);
}

/* What the value is to be taken with caution for; the codes never change. */
static const struct
{
  unsigned bit;
  const char *code;
  const char *words;
} warnings[] = {
  { WM_LENGTH_REFERENCE_ROUGH, "reference-rough",
    N_ ("The known length is known to worse than 5 %.") },
  { WM_LENGTH_TILT_LARGE, "tilt-large",
    N_ ("The line may lean by more than 20 degrees: take a squarer photo.") },
  { WM_LENGTH_FAR_OUTSIDE, "far-outside",
    N_ ("An end lies far outside the known rectangle.") },
};

static void
add_warnings (JsonBuilder *builder, unsigned given)
{
  json_builder_set_member_name (builder, "warnings");
  json_builder_begin_array (builder);
  for (guint i = 0; i < G_N_ELEMENTS (warnings); i++)
    if (given & warnings[i].bit)
      json_builder_add_string_value (builder, warnings[i].code);
  json_builder_end_array (builder);
}

static void
print_json (WmCall *call, const Measuring *m, const WmLength *length, const char *text)
{
  const struct
  {
    const char *key;
    double value;
  } numbers[] = {
    { "value_mm", length->value_mm },
    { "standard_uncertainty_mm", length->u_mm },
    { "expanded_uncertainty_mm", length->expanded_mm },
    { "raw_mm", length->raw_mm },
    { "from_reference_mm", length->from_reference_mm },
    { "from_reference_points_mm", length->from_reference_points_mm },
    { "from_ends_mm", length->from_ends_mm },
    { "from_depth_mm", length->from_depth_mm },
    { "from_tilt_mm", length->from_tilt_mm },
  };
  g_autoptr (JsonBuilder) builder = json_builder_new ();

  json_builder_begin_object (builder);
  for (guint i = 0; i < G_N_ELEMENTS (numbers); i++)
    {
      json_builder_set_member_name (builder, numbers[i].key);
      json_builder_add_double_value (builder, numbers[i].value);
    }
  json_builder_set_member_name (builder, "ends");
  json_builder_begin_array (builder);
  add_point (builder, m->a);
  add_point (builder, m->b);
  json_builder_end_array (builder);
  json_builder_set_member_name (builder, "snapped");
  json_builder_begin_array (builder);
  json_builder_add_boolean_value (builder, m->snapped[0]);
  json_builder_add_boolean_value (builder, m->snapped[1]);
  json_builder_end_array (builder);
  add_warnings (builder, length->warnings);
  json_builder_set_member_name (builder, "text");
  json_builder_add_string_value (builder, text);
  json_builder_end_object (builder);
  wm_call_print_json (call, json_builder_get_root (builder));
}

static void
print_warnings (WmCall *call, unsigned given)
{
  for (guint i = 0; i < G_N_ELEMENTS (warnings); i++)
    if (given & warnings[i].bit)
      wm_call_print (call, "%s\n", _ (warnings[i].words));
}

static WmExit
measure (WmCall *call, Measuring *m)
{
  char text[WM_LENGTH_TEXT_MAX];
  const char *which = NULL;
  WmLength length;
  WmResult result;

  if (m->is_plane)
    {
      result = wm_plane_solve (&m->plane, &which);
      if (result == WM_OK)
        result = wm_plane_measure (&m->plane, &m->lie, m->a, m->b, m->u_end_px, &length,
                                   &which);
    }
  else
    result =
        wm_scale_measure (&m->ruler, &m->lie, m->a, m->b, m->u_end_px, &length, &which);
  if (result != WM_OK)
    return refuse (call, result, which);

  wm_length_text (length.value_mm, length.expanded_mm, "mm", text);
  if (wm_call_wants_json (call))
    {
      print_json (call, m, &length, text);
      return WM_EXIT_DONE;
    }

  wm_call_print (call, "%s\n", text);
  wm_call_print (call, _ ("standard uncertainty %.4f mm, expanded (k = 2) %.4f mm\n"),
                 length.u_mm, length.expanded_mm);
  wm_call_print (call, _ ("from %.2f, %.2f to %.2f, %.2f px\n"), m->a.x, m->a.y, m->b.x,
                 m->b.y);
  if (m->wants_snap && !(m->snapped[0] && m->snapped[1]))
    wm_call_print (call, "%s\n",
                   m->snapped[0] || m->snapped[1]
                       ? _ ("One end has no clear edge nearby and stays as placed.")
                       : _ ("Neither end has a clear edge nearby: both stay as placed."));
  print_warnings (call, length.warnings);
  return WM_EXIT_DONE;
}

static WmExit
run (WmCall *call)
{
  const char *path = wm_call_get_operand (call, 0);
  Measuring m = { .wants_snap = FALSE };
  WmExit exit_code = WM_EXIT_DONE;
  g_autoptr (WmPhotoFacts) facts = NULL;
  g_autoptr (GError) error = NULL;

  if (!read_options (call, &m, &exit_code))
    return exit_code;

  /* Read whole first, in a process of its own, as by every verb; and a length on the
   * grey of a photo that is cut off would be one of nothing. */
  if (!wm_photo_check_whole (path, NULL, &error)
      || (facts = wm_photo_probe_file (path, &error)) == NULL)
    return wm_call_fail_with (call, error);

  exit_code = check_places (call, &m, facts);
  if (exit_code == WM_EXIT_DONE && m.is_sheet)
    exit_code = find_sheet (call, path, &m);
  if (exit_code == WM_EXIT_DONE && wm_call_get_option (call, "snap") != NULL)
    exit_code = snap (call, path, &m);

  return exit_code == WM_EXIT_DONE ? measure (call, &m) : exit_code;
}

const WmVerb wm_verb_measure = {
  .name = "measure",
  .operands = N_ ("FILE"),
  .min_operands = 1,
  .max_operands = 1,
  .summary = N_ ("a length on a photo, with its uncertainty"),
  .options = options,
  .run = run,
};
