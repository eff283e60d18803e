/* piece-row-view.h: one line of the list of pieces on the screen
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/pieces/pieces-item.h"
#include "window/session.h"

#define WM_TYPE_PIECE_ROW_VIEW (wm_piece_row_view_get_type ())
G_DECLARE_FINAL_TYPE (WmPieceRowView, wm_piece_row_view, WM, PIECE_ROW_VIEW, GtkWidget)

GtkWidget *wm_piece_row_view_new (WmSession *session);
/* @item (nullable) */
void wm_piece_row_view_set_item (WmPieceRowView *self, WmPiecesItem *item);

/* "in since 26 Nov", "due 2 Dec": where a piece is. Translated; caller frees. */
char *wm_piece_row_describe_status (WmPieceRow *row);
