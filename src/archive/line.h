/* line.h: the list of pieces and its words, made from the records
 *
 * A line is what one row of the list shows; its words are what search finds it by.
 * Both are written in the same transaction as the edit that changes them, and only
 * when they differ from what is there.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "archive/change.h"

/* The lines of all pieces that @changes touch: also of an owner who changed name. */
gboolean wm_lines_refresh_changed (WmDatabase *db, WmTrade *trade, GPtrArray *changes,
                                   GError **error);

/* One line made anew; taken out if the piece is gone. */
gboolean
wm_line_refresh (WmDatabase *db, WmTrade *trade, const WmId *piece_id, GError **error);

/* What a line ought to say and what it says, for the audit: NULL if the same. */
char *wm_line_compare (WmDatabase *db, const WmId *piece_id, GError **error);
