/* take-stack.h: from the frames of a focus stack to one photo of a visit
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "archive/archive.h"
#include "photo/stack.h"

/**
 * wm_take_stack:
 * @frames: (element-type WmPhoto): WM_STACK_LEAST to WM_STACK_MOST photos of one size,
 *   in the order of their focus
 *
 * Merges the frames and takes the result in beside the first of them: same visit, moment,
 * view, and made_from "stack". The frames' files are not touched. Takes seconds a frame:
 * not on the main thread. The record is not yet in the archive, nor do the frames say
 * what they were merged into: put both by one edit.
 *
 * Returns: (transfer full): NULL with a WM_PHOTO_ERROR, a WM_ARCHIVE_ERROR or
 *   G_IO_ERROR_CANCELLED
 */
WmPhoto *wm_take_stack (WmArchive *archive, GPtrArray *frames, WmStackProgress progress,
                        gpointer user_data, GCancellable *cancellable, GError **error);
