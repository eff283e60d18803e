/* warp.h: the after photo drawn in the frame of the before photo
 *
 * For the compare views and for writing the aligned photo. Sampling is
 * bilinear between pixel middles; where the after photo is shown smaller than
 * it is, several samples a pixel are averaged, so that nothing flickers.
 * Blocking and safe on any thread.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/align.h"
#include "photo/pixels.h"

/**
 * wm_warp_region:
 * @after: pixels of the after photo, whole, at any size
 * @after_scale: after photo px per pixel of @after (photo width / pixels' width);
 *   1 when @after is at full size
 * @matrix: after photo px to before photo px (WmAlignment)
 * @x_img_px, @y_img_px: top left corner of the wanted part, before photo px
 * @scale: before photo px per pixel of the result, above 0: 1 for true pixels, 2
 *   for a view at half size, 0.1 for a loupe
 *
 * Returns: (transfer full): @width x @height pixels, transparent where the after
 * photo does not reach; NULL when @matrix can not be inverted, a size is not
 * possible or there is not enough memory
 */
WmPixels *
wm_warp_region (const WmPixels *after, double after_scale, const double matrix[9],
                double x_img_px, double y_img_px, double scale, int width, int height);

/**
 * wm_warp_photo:
 * @before_path: gives the frame (its upright width and height)
 * @matrix: after photo px to before photo px
 * @png_path: written whole or not at all
 *
 * Writes the after photo in the frame of the before photo as PNG at the before
 * photo's full size, white where the after photo does not reach.
 *
 * Returns: FALSE with a WM_PHOTO_ERROR, or G_IO_ERROR_CANCELLED
 */
gboolean
wm_warp_photo (const char *before_path, const char *after_path, const double matrix[9],
               const char *png_path, GCancellable *cancellable, GError **error);
