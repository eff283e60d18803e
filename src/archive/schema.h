/* schema.h: the released schema files, and bringing an older database up to date
 *
 * schema/001.sql and on are compiled into the program. A released file never
 * changes; a change is the next file and a row in schema.c.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "archive/database.h"

/* The newest version this program knows: how many files there are. */
guint wm_schema_get_version (void);

/* SQL that leads from version @version - 1 to @version; NULL: none. Static. */
const char *wm_schema_get_file (guint version);

/**
 * wm_schema_upgrade:
 * @get_file: wm_schema_get_file, or a test's own
 * @newest: the version to reach
 *
 * Runs the missing files and sets application_id and user_version, all in one
 * transaction.
 */
gboolean wm_schema_upgrade (WmDatabase *db, const char *(*get_file) (guint version),
                            guint newest, GError **error);

/* A copy by SQLite's backup call (the database may have a log beside it), synced. */
gboolean wm_schema_set_aside (WmDatabase *db, const char *path, GError **error);

/* NULL if all that the files make is there as they make it, and no trigger or view
 * besides; else what is not. Caller frees. */
char *wm_schema_compare (WmDatabase *db, GError **error);
