/* warp.h: the after photo drawn in the frame of the before photo
 *
 * For the compare views and for writing the aligned photo. Sampling is
 * bilinear between pixel middles; where the after photo is shown smaller than
 * it is, the mean over the pixels that meet is taken, so nothing flickers.
 * Pure computation on pixels in memory; safe on any thread.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/align.h"

/**
 * wm_warp_region:
 * @after: the after photo; 1, 3 or 4 bands
 * @matrix: after pixels to before pixels (WmAlignment)
 * @x_img_px, @y_img_px: top left corner of the wanted part, before pixels
 * @scale: before pixels per pixel written, above 0: 1 for true pixels, 2 for a
 *   view at half size, 0.1 for a loupe
 * @out: (out): @width x @height pixels of 4 bytes, R G B A, rows
 *   @out_stride bytes apart; A is 0 where the after photo does not reach and
 *   255 elsewhere, colours are not premultiplied
 *
 * Returns: FALSE when @matrix can not be inverted or a size is not positive;
 *   @out is then untouched
 */
gboolean wm_warp_region (const WmAlignImage *after, const double matrix[9],
                         double x_img_px, double y_img_px, double scale,
                         int width, int height, guint8 *out, gsize out_stride);

/**
 * wm_warp_photo:
 * @before_path: gives the frame (its upright width and height)
 * @matrix: after pixels to before pixels
 * @png_path: written whole or not at all
 *
 * Writes the after photo, warped into the frame of the before photo, as PNG
 * with alpha, at the before photo's full size.
 */
gboolean wm_warp_photo (const char *before_path, const char *after_path,
                        const double matrix[9], const char *png_path,
                        GCancellable *cancellable, GError **error);
