/* pieces-pane.h: search, diary and the list of pieces at the left
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/session.h"

#define WM_TYPE_PIECES_PANE (wm_pieces_pane_get_type ())
G_DECLARE_FINAL_TYPE (WmPiecesPane, wm_pieces_pane, WM, PIECES_PANE, GtkWidget)

/* Emits "chosen" when a piece was picked by hand, after the session shows it. */
void wm_pieces_pane_set_session (WmPiecesPane *self, WmSession *session);
void wm_pieces_pane_grab_search (WmPiecesPane *self);
