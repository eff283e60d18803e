/* cache-folder.h: files kept beside the archive that may vanish at any time
 *
 * Inside this room only. Every kept file carries a checksum of its contents at its
 * end: what does not agree is treated as not there. The folder is held to WM_TILE_DISK
 * bytes; what was not used for longest goes first. Any thread, several programs.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gio/gio.h>

/* CACHE/@kind/ab/SHA256@ending; NULL when @cache_dir or @sha256 is, or is no hash. */
char *wm_cache_path (const char *cache_dir, const char *kind, const char *sha256,
                     const char *ending);

/* NULL when it is not there or damaged. Marks it as used. */
GBytes *wm_cache_load (const char *path);

/* Failing is no error: there is then nothing kept. */
void wm_cache_store (const char *cache_dir, const char *path, GBytes *bytes);

/* After other files were written there: removes what is too much. */
void wm_cache_trim (const char *cache_dir, gint64 most_bytes);

/* Call when @bytes were written; trims now and then. */
void wm_cache_wrote (const char *cache_dir, gint64 bytes);

/* Marks as used. */
void wm_cache_touch (const char *path);
