/* folder.h: the folder of an archive: whose it is, and who has it open
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "archive/archive.h"

#define WM_DATABASE_NAME "records.sqlite"
#define WM_NEW_DATABASE_NAME "records.sqlite.new"
#define WM_PHOTOS_NAME "photos"
#define WM_CACHE_NAME "cache"
#define WM_LOCK_NAME "lock"
#define WM_SET_ASIDE_NAME "set-aside"
/* A photo on its way in: may be left by a killed program, never by a finished one. */
#define WM_INCOMING_PREFIX ".incoming-"

/**
 * wm_folder_look:
 * @out_is_new: (out): the folder is absent or empty: an archive may be made in it
 *
 * Reads and writes nothing but the names in the folder and the first bytes of the
 * database. NOT_THERE FOREIGN NEWER DAMAGED READ_ONLY IO
 */
gboolean wm_folder_look (const char *folder, WmArchiveMode mode, gboolean *out_is_new,
                         GError **error);

/* The lock is the kernel's, on an open file: it goes when the program goes, however
 * it goes, so that a file left by a killed program means nothing. OPEN_ELSEWHERE
 * READ_ONLY IO. Returns: the file, to be closed; -1 on error */
int wm_folder_lock (const char *folder, GError **error);

/* Whether somebody has it; nothing is taken or made. */
gboolean wm_folder_is_locked (const char *folder);

/* Waits until the names in @folder are on the disk. */
gboolean wm_folder_sync (const char *folder, GError **error);

/* @text with the code that fits @system_errno. */
void wm_folder_set_error (GError **error, int system_errno, const char *text);
