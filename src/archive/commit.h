/* commit.h: what edits, undo and redo share on their way to the disk
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "archive/archive-private.h"

/* A key and a time above those of every entry before; write_lock is held. */
void wm_commit_stamp (WmArchive *self, WmLogEntry *entry);

/* Writes @changes in the open transaction and commits it, or rolls it back. */
gboolean wm_commit_finish (WmArchive *self, const WmLogEntry *entry, GPtrArray *changes,
                           GError **error);
