/* pieces-model.h: the list of pieces, filled as it is looked at
 *
 * Without words: three groups (on the bench, due, all), each with a head; a page of
 * rows is read only when one of them comes into view. With words: what was found,
 * read on as it is scrolled. All reading is off the main thread; an item whose row is
 * not there yet shows nothing and tells when it is.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/pieces/pieces-item.h"

/* A GListModel of WmPiecesItem. Emits "notify::state". */
#define WM_TYPE_PIECES_MODEL (wm_pieces_model_get_type ())
G_DECLARE_FINAL_TYPE (WmPiecesModel, wm_pieces_model, WM, PIECES_MODEL, GObject)

typedef enum
{
  WM_PIECES_STATE_READING, /* nothing known yet */
  WM_PIECES_STATE_ROWS,
  WM_PIECES_STATE_EMPTY,    /* no piece in the archive */
  WM_PIECES_STATE_NOT_FOUND /* none for these words */
} WmPiecesState;

WmPiecesModel *wm_pieces_model_new (WmArchive *archive);

/* @words (nullable): "" or NULL shows the groups. */
void wm_pieces_model_set_words (WmPiecesModel *self, const char *words);
/* Something in the archive changed. */
void wm_pieces_model_refresh (WmPiecesModel *self);
WmPiecesState wm_pieces_model_get_state (WmPiecesModel *self);

/* "2026-12-24": how far ahead a piece counts as due. Caller frees. */
char *wm_pieces_due_by (int days);
