/* photo-file.h: the files of photos, named by what is in them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gio/gio.h>

/* Of a file as it is, read in one go; cancellable. Caller frees. */
char *wm_photo_file_hash (const char *path, gint64 *out_byte_size,
                          GCancellable *cancellable, GError **error);
