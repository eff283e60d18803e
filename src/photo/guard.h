/* guard.h: a foreign file is first read whole by another process
 *
 * Inside this room only. The decoders of four picture formats are large, and a file
 * may come from anyone: the program `wearmark-photo-reader` decodes it once, with
 * limits on time and memory. If that process dies, the window does not, and the file
 * is refused. What has passed is then read by the program itself.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gio/gio.h>

/* Limits of the reading process: longer than 500 megapixels take on a slow machine
 * (common practice, no source), and four times what the largest picture needs. */
#define WM_GUARD_CPU_S 60
#define WM_GUARD_BYTES (G_GUINT64_CONSTANT (4) << 30)

/* The reader's exit status when it refuses; its output is then the code, a line
 * break, and the message. */
#define WM_GUARD_REFUSED 3

/**
 * wm_guard_check:
 * @was_read: (out): FALSE when there is no reader to be started; nothing was checked
 *
 * Returns: whether the file was read to its last row; else the error is set
 */
gboolean wm_guard_check (const char *path, gboolean *was_read, GCancellable *cancellable,
                         GError **error);

/* wm_photo_check_whole () in this very process, for the reader. */
gboolean
wm_photo_check_whole_here (const char *path, GCancellable *cancellable, GError **error);
