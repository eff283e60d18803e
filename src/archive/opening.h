/* opening.h: from a folder to a database that is ours, whole and up to date
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "archive/archive-private.h"

/* Lock, create or migrate, open to write. The paths of @self are set. */
gboolean wm_opening_take (WmArchive *self, WmArchiveMode mode, GError **error);

/* Open only to look: nothing in the folder is written. */
gboolean wm_opening_look (WmArchive *self, GError **error);

/* Sets a copy aside in @folder, then runs the files that are missing. @get_file and
 * @newest: those of schema.h, or a test's own. NEWER and untouched if it is above. */
gboolean wm_opening_bring_up_to_date (const char *folder, WmDatabase *db,
                                      const char *(*get_file) (guint version),
                                      guint newest, GError **error);

/* Removes what looking needed elsewhere. */
void wm_opening_forget (WmArchive *self);
