/* take-photo.h: from a file somewhere to a photo of a visit
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "archive/archive.h"

/**
 * wm_take_photo:
 * @path: the file, in the file system's bytes
 * @visit_id: the visit it is of
 * @moment: WM_PHOTO_BEFORE, _DURING or _AFTER
 *
 * Reads the header, decodes the picture once to its last row (a truncated one is
 * refused while the piece is still on the bench), copies the file into the archive,
 * judges it and keeps its small pictures. Takes seconds: not on the main thread.
 * The file is in the archive then, the record is not yet: put it by an edit, with its
 * position, caption and view set.
 *
 * Returns: (transfer full): NULL with a WM_PHOTO_ERROR, a WM_ARCHIVE_ERROR or
 *   G_IO_ERROR_CANCELLED
 */
WmPhoto *wm_take_photo (WmArchive *archive, const char *path, const WmId *visit_id,
                        const char *moment, GCancellable *cancellable, GError **error);
