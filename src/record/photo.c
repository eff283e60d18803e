/* photo.c: one photo of a visit; its file is kept byte for byte in the archive
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "record/photo.h"

#include <glib/gi18n.h>

static const WmField fields[] = {
  { "visit_id", WM_FIELD_KEY, G_STRUCT_OFFSET (WmPhoto, visit_id), N_ ("visit"),
    WM_KIND_VISIT },
  { "position", WM_FIELD_NUMBER, G_STRUCT_OFFSET (WmPhoto, position), N_ ("position") },
  { "moment", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPhoto, moment), N_ ("moment") },
  { "view", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPhoto, view), N_ ("view") },
  { "caption", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPhoto, caption), N_ ("caption") },
  { "sha256", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPhoto, sha256), N_ ("content hash") },
  { "format", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPhoto, format), N_ ("format") },
  { "byte_size", WM_FIELD_INT, G_STRUCT_OFFSET (WmPhoto, byte_size), N_ ("file size") },
  { "width", WM_FIELD_INT, G_STRUCT_OFFSET (WmPhoto, width), N_ ("width") },
  { "height", WM_FIELD_INT, G_STRUCT_OFFSET (WmPhoto, height), N_ ("height") },
  { "orientation", WM_FIELD_INT, G_STRUCT_OFFSET (WmPhoto, orientation),
    N_ ("orientation") },
  { "quarter_turns", WM_FIELD_NUMBER, G_STRUCT_OFFSET (WmPhoto, quarter_turns),
    N_ ("turned") },
  { "taken_at_s", WM_FIELD_INT, G_STRUCT_OFFSET (WmPhoto, taken_at_s), N_ ("taken") },
  { "original_name", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPhoto, original_name),
    N_ ("name of the file it came from") },
  { "scale_x1", WM_FIELD_REAL, G_STRUCT_OFFSET (WmPhoto, scale_x1),
    N_ ("first place of the scale") },
  { "scale_y1", WM_FIELD_REAL, G_STRUCT_OFFSET (WmPhoto, scale_y1),
    N_ ("first place of the scale") },
  { "scale_x2", WM_FIELD_REAL, G_STRUCT_OFFSET (WmPhoto, scale_x2),
    N_ ("second place of the scale") },
  { "scale_y2", WM_FIELD_REAL, G_STRUCT_OFFSET (WmPhoto, scale_y2),
    N_ ("second place of the scale") },
  { "scale_mm", WM_FIELD_REAL, G_STRUCT_OFFSET (WmPhoto, scale_mm),
    N_ ("true distance of the scale") },
  { "verdict", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPhoto, verdict),
    N_ ("verdict on arrival") },
  { "verdict_reasons", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPhoto, verdict_reasons),
    N_ ("reasons of the verdict") },
  { "scale_kind", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPhoto, scale_kind),
    N_ ("what the scale was taken from") },
  { "scale_plane", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPhoto, scale_plane),
    N_ ("corners of the scale") },
  { "scale_width_mm", WM_FIELD_REAL, G_STRUCT_OFFSET (WmPhoto, scale_width_mm),
    N_ ("width of the scale") },
  { "scale_height_mm", WM_FIELD_REAL, G_STRUCT_OFFSET (WmPhoto, scale_height_mm),
    N_ ("height of the scale") },
  { "scale_u_mm", WM_FIELD_REAL, G_STRUCT_OFFSET (WmPhoto, scale_u_mm),
    N_ ("uncertainty of the scale") },
  { "scale_depth_mm", WM_FIELD_REAL, G_STRUCT_OFFSET (WmPhoto, scale_depth_mm),
    N_ ("height above or below the scale") },
  { "scale_basis", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPhoto, scale_basis), N_ ("scale") },
  { "made_from", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPhoto, made_from),
    N_ ("how the photo was made") },
  { "stacked_into", WM_FIELD_KEY, G_STRUCT_OFFSET (WmPhoto, stacked_into),
    N_ ("stacked photo"), WM_KIND_PHOTO },
};

static const WmKindInfo info = { WM_KIND_PHOTO, "photo", N_ ("photo"), fields,
                                 G_N_ELEMENTS (fields) };

WM_DEFINE_RECORD (WmPhoto, wm_photo, &info)
