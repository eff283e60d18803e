/* load.h: pictures decoded into pixels: upright, sRGB, at the size asked for
 *
 * All functions block: call them off the interface thread. All may be cancelled
 * (G_IO_ERROR_CANCELLED); other failures are WM_PHOTO_ERRORs that name the file.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/pixels.h"
#include "photo/probe.h"

#include <gio/gio.h>

/**
 * wm_photo_load_fit:
 * @max_width, @max_height: px, at least 1; the result is the largest that fits,
 *   never enlarged
 *
 * A JPEG is decoded at 1/2, 1/4 or 1/8 in the DCT where that is enough.
 *
 * Returns: (transfer full): pixels, or NULL with the error set
 */
WmPixels *wm_photo_load_fit (const char *path, int max_width, int max_height,
                             GCancellable *cancellable, GError **error);

/**
 * wm_photo_load_about:
 * @long_side: px, wished for
 *
 * The quickest picture of about @long_side: 0.71 to 1.42 times that for a JPEG
 * (a whole DCT scale, no second scaling), exactly that for others; never
 * enlarged. For the first view.
 */
WmPixels *wm_photo_load_about (const char *path, int long_side, GCancellable *cancellable,
                               GError **error);

/**
 * wm_photo_load_region:
 * @x, @y, @width, @height: part of the upright photo, photo px; cut to the photo
 * @out_width, @out_height: px of the result, each 1 to 16384; may be above
 *   @width and @height (enlarged by cubic interpolation)
 *
 * A close-up.
 *
 * Returns: (transfer full): pixels, or NULL with the error set; a region that
 * does not touch the photo is WM_PHOTO_ERROR_LYING
 */
WmPixels *wm_photo_load_region (const char *path, double x, double y, double width,
                                double height, int out_width, int out_height,
                                GCancellable *cancellable, GError **error);

/* From bytes in memory (paste, fuzzing); @name stands for the file in messages. */
WmPixels *
wm_photo_load_bytes_fit (GBytes *bytes, const char *name, int max_width, int max_height,
                         GCancellable *cancellable, GError **error);

/**
 * wm_photo_check_whole:
 *
 * Decodes the picture to its last row, in bounded memory and keeping nothing,
 * and refuses what is truncated or damaged. For import, and first: it is done by a
 * process of its own (guard.h), so that a file that breaks a decoder does not break
 * the program. About half the time of a full decode, and 30 ms for that process.
 */
gboolean
wm_photo_check_whole (const char *path, GCancellable *cancellable, GError **error);
