/* span-profile.h: the grey values along a measured span, for the edge finder
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/pixels.h"
#include "reckon/edge.h"
#include "reckon/point.h"

#include <gio/gio.h>

/**
 * wm_pixels_span_profile:
 * @pixels: true pixels of a part of the photo
 * @a, @b: ends of the span in px of @pixels
 * @margin: px beyond each end
 * @samples_per_px: 1, or less for a span too long for the edge finder
 * @n: (out): how many samples; @start: (out): the one at @a
 *
 * Grey proportional to light, 0..1, each the mean over five lines a pixel apart; outside
 * the picture the border repeats.
 *
 * Returns: (transfer full): @n values
 */
double *wm_pixels_span_profile (WmPixels *pixels, WmPoint a, WmPoint b, double margin,
                                double samples_per_px, int *n, double *start);

/**
 * wm_photo_snap_span:
 * @path: the photo
 * @a, @b: (inout): placed ends, photo px; moved to the edges on success
 * @reach_px: how far each end may move
 * @u_px: (out): standard uncertainty of each end along the span, px: first, second
 * @result: (out): WM_OK, or why the edge finder refused (then FALSE without an error)
 *
 * Blocks: off the interface thread.
 *
 * Returns: TRUE when both ends were snapped; FALSE with a WM_PHOTO_ERROR when the photo
 * can not be read
 */
gboolean wm_photo_snap_span (const char *path, WmPoint *a, WmPoint *b, double reach_px,
                             double u_px[2], WmResult *result, GCancellable *cancellable,
                             GError **error);
