/* stack.h: frames focused at different depths merged into one photo
 *
 * Under the microscope only a slice of a claw is sharp at a time. Every frame is laid
 * on the middle one (when that measurably fits better than leaving it), and each place
 * of the result comes from the frames that are sharpest there. The frames stay as they
 * are; the caller labels the result "stacked".
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/photo-error.h"

#include <gio/gio.h>

#define WM_STACK_LEAST 2
#define WM_STACK_MOST 30

/* Larger frames are merged at this many pixels: about 500 MB while working. */
#define WM_STACK_PIXELS 16000000

/* Called on the working thread, @done from 0 to 1, never running back. */
typedef void (*WmStackProgress) (double done, gpointer user_data);

/**
 * wm_photo_stack:
 * @paths: @n frames of one size (upright), in the order of their focus
 * @dest: a JPEG, written whole or not at all
 * @n_moved: (out) (optional): how many frames had to be laid on the middle one
 *
 * Returns: FALSE with a WM_PHOTO_ERROR that names the frame (WM_PHOTO_ERROR_LYING when
 * it is of another size than the others), or G_IO_ERROR_CANCELLED
 */
gboolean wm_photo_stack (const char *const *paths, int n, const char *dest, int *n_moved,
                         WmStackProgress progress, gpointer user_data,
                         GCancellable *cancellable, GError **error);
