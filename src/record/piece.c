/* piece.c: one piece of jewellery, for its whole life
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "record/piece.h"

#include <glib/gi18n.h>

static const WmField fields[] = {
  { "number", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPiece, number), N_ ("piece number") },
  { "type", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPiece, type), N_ ("kind of piece") },
  { "owner_id", WM_FIELD_KEY, G_STRUCT_OFFSET (WmPiece, owner_id), N_ ("owner"),
    WM_KIND_PERSON },
  { "metal", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPiece, metal), N_ ("metal") },
  { "fineness", WM_FIELD_INT, G_STRUCT_OFFSET (WmPiece, fineness), N_ ("fineness") },
  { "fineness_basis", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPiece, fineness_basis),
    N_ ("how the fineness is known") },
  { "description", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPiece, description),
    N_ ("description") },
  { "unlike", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPiece, unlike),
    N_ ("what makes it unlike its twins") },
  { "worn", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPiece, worn), N_ ("how it is worn") },
  { "size", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPiece, size), N_ ("size") },
  { "length_mm", WM_FIELD_REAL, G_STRUCT_OFFSET (WmPiece, length_mm), N_ ("length") },
  { "declared_minor", WM_FIELD_INT, G_STRUCT_OFFSET (WmPiece, declared_minor),
    N_ ("declared value") },
  { "currency", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPiece, currency), N_ ("currency") },
  { "declared_basis", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPiece, declared_basis),
    N_ ("basis of the value") },
  { "shop_note", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPiece, shop_note), N_ ("shop note") },
  { "old_joints", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPiece, old_joints),
    N_ ("old joints") },
};

static const WmKindInfo info = { WM_KIND_PIECE, "piece", N_ ("piece"), fields,
                                 G_N_ELEMENTS (fields) };

WM_DEFINE_RECORD (WmPiece, wm_piece, &info)
