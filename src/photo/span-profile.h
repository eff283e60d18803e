/* span-profile.h: the light along a measured span, for the edge finder
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
 * Red, green and blue proportional to light, 0..1, each the mean over five lines a pixel
 * apart; outside the picture the border repeats.
 *
 * Returns: (transfer full): 3 times @n values, the channels of a sample together
 */
double *wm_pixels_span_profile (WmPixels *pixels, WmPoint a, WmPoint b, double margin,
                                double samples_per_px, int *n, double *start);

/* One end of a span after snapping. */
typedef struct
{
  WmPoint at;          /* photo px */
  double u_px;         /* standard uncertainty along the span, doubt included */
  double u_seen_px;    /* the same once a person has seen that this is the edge meant */
  gboolean is_snapped; /* FALSE: no clear edge, as placed, as uncertain as the hand */
} WmSnappedEnd;

/**
 * wm_photo_snap_span:
 * @path: the photo
 * @a, @b: placed ends, photo px
 * @reach_px: how far each end may move
 * @ends: (out): first, second; written on TRUE only
 * @result: (out): WM_OK, or why the edge finder refused (then FALSE without an error);
 * WM_NO_EDGE when neither end has a clear edge
 *
 * Blocks: off the interface thread.
 *
 * Returns: TRUE when at least one end was snapped; FALSE with a WM_PHOTO_ERROR when the
 * photo can not be read
 */
gboolean wm_photo_snap_span (const char *path, WmPoint a, WmPoint b, double reach_px,
                             WmSnappedEnd ends[2], WmResult *result,
                             GCancellable *cancellable, GError **error);
