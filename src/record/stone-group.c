/* stone-group.c: stones of one kind on a piece
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "record/stone-group.h"

#include <glib/gi18n.h>

static const WmField fields[] = {
  { "piece_id", WM_FIELD_KEY, G_STRUCT_OFFSET (WmStoneGroup, piece_id), N_ ("piece"),
    WM_KIND_PIECE },
  { "position", WM_FIELD_NUMBER, G_STRUCT_OFFSET (WmStoneGroup, position),
    N_ ("position") },
  { "species", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmStoneGroup, species), N_ ("species") },
  { "count", WM_FIELD_INT, G_STRUCT_OFFSET (WmStoneGroup, count), N_ ("count") },
  { "cut", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmStoneGroup, cut), N_ ("cut") },
  { "length_mm", WM_FIELD_REAL, G_STRUCT_OFFSET (WmStoneGroup, length_mm),
    N_ ("length") },
  { "width_mm", WM_FIELD_REAL, G_STRUCT_OFFSET (WmStoneGroup, width_mm), N_ ("width") },
  { "depth_mm", WM_FIELD_REAL, G_STRUCT_OFFSET (WmStoneGroup, depth_mm), N_ ("depth") },
  { "basis", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmStoneGroup, basis),
    N_ ("how it is known") },
  { "note", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmStoneGroup, note), N_ ("note") },
};

static const WmKindInfo info = { WM_KIND_STONE_GROUP, "stone_group", N_ ("stone group"),
                                 fields, G_N_ELEMENTS (fields) };

WM_DEFINE_RECORD (WmStoneGroup, wm_stone_group, &info)
