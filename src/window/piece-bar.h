/* piece-bar.h: the shown piece in one line, with its visits by date
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/moment-page.h"

#define WM_TYPE_PIECE_BAR (wm_piece_bar_get_type ())
G_DECLARE_FINAL_TYPE (WmPieceBar, wm_piece_bar, WM, PIECE_BAR, GtkWidget)

void wm_piece_bar_set_session (WmPieceBar *self, WmSession *session);
void wm_piece_bar_set_room (WmPieceBar *self, WmRoom room);

/* Shows the visit @steps earlier (below 0) or later; FALSE if there is none. */
gboolean wm_piece_bar_step (WmPieceBar *self, int steps);
