/* pieces-item.h: one line of the list of pieces: a head, or a piece
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "archive/archive.h"

#define WM_TYPE_PIECES_ITEM (wm_pieces_item_get_type ())
G_DECLARE_FINAL_TYPE (WmPiecesItem, wm_pieces_item, WM, PIECES_ITEM, GObject)

WmPiecesItem *wm_pieces_item_new (void);
WmPiecesItem *wm_pieces_item_new_head (const char *title, const char *count);
/* @row: (transfer none) */
void wm_pieces_item_set_row (WmPiecesItem *self, WmPieceRow *row);

gboolean wm_pieces_item_is_head (WmPiecesItem *self);
/* Of a head; translated. */
const char *wm_pieces_item_get_title (WmPiecesItem *self);
/* Of a head: "412", or "100+" while more may follow. */
const char *wm_pieces_item_get_count (WmPiecesItem *self);
/* Of a piece: NULL while it is being read; emits "notify::row" then. */
WmPieceRow *wm_pieces_item_get_row (WmPiecesItem *self);
