/* words.h: the words a piece is found by, and the words typed to find it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "archive/database.h"
#include "record/piece.h"
#include "trade/trade.h"

/* Puts the piece's words at @place, replacing what is there if they differ. */
gboolean wm_words_put (WmDatabase *db, WmTrade *trade, gint64 place, WmPiece *piece,
                       const char *owner_name, GError **error);
gboolean wm_words_remove (WmDatabase *db, gint64 place, GError **error);

/* What was typed as an FTS5 expression in which nothing typed is an operator; NULL if
 * it has no letter and no digit. Caller frees. */
char *wm_words_to_match (const char *typed);
