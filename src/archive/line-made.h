/* line-made.h: what a piece's line ought to say, and what it says
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "archive/row.h"

typedef struct
{
  gint64 place; /* -1: none yet */
  char *number;
  char *type;
  char *owner_name;
  char *description;
  gint64 severity;
  gint64 on_bench;
  gint64 taken_in_at_s;
  gint64 handed_back_at_s;
  char *moment;
  char *promised_on;
  char *next_check_on;
  char *photo_sha256;
  char *photo_format;
} WmLine;

void wm_line_clear (WmLine *line);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (WmLine, wm_line_clear)

/* From the records; the place is left at -1. */
gboolean wm_line_make (WmDatabase *db, WmPiece *piece, WmLine *line, GError **error);

/* From the list as it is kept; the place is -1 if it is not there. */
gboolean
wm_line_load (WmDatabase *db, const WmId *piece_id, WmLine *line, GError **error);

/* NULL if the same, else the name of what differs. The place is not compared. */
const char *wm_line_find_difference (const WmLine *a, const WmLine *b);
