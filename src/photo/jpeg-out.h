/* jpeg-out.h: JPEG bytes for pages and for mail
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/pixels.h"
#include "photo/probe.h"

#include <gio/gio.h>

/**
 * wm_jpeg_can_pass_through:
 * @path: an original
 *
 * Whether a PDF can carry the file's own bytes: a baseline or progressive JPEG,
 * 8 bit, grey or YCbCr/RGB, orientation 1, and no colour profile but sRGB. A PDF
 * carries the location and the rest of the metadata too: use
 * wm_jpeg_load_stripped () for the bytes.
 */
gboolean wm_jpeg_can_pass_through (const char *path);

/**
 * wm_jpeg_load_stripped:
 *
 * The file's bytes without EXIF (location, camera, time), XMP, IPTC and comments:
 * the picture data is untouched, bit for bit. JFIF, Adobe and ICC segments stay.
 *
 * Returns: (transfer full): bytes for cairo_surface_set_mime_data (), or NULL
 */
GBytes *wm_jpeg_load_stripped (const char *path, GError **error);

/**
 * wm_jpeg_encode:
 * @quality: 1 to 100; 85 is for mail, 92 for print
 *
 * Returns: (transfer full): a baseline JPEG, sRGB, upright, without any metadata;
 * 4:2:0, or 4:4:4 from quality 90 on
 */
GBytes *wm_jpeg_encode (WmPixels *pixels, int quality, GError **error);

/**
 * wm_jpeg_for_mail:
 * @long_side: px, not enlarged
 *
 * A photo re-encoded for mail or for the size it takes on a page: upright, sRGB,
 * no location.
 *
 * Returns: (transfer full): the JPEG bytes; *@out_width and *@out_height (both
 * optional) say its size
 */
GBytes *wm_jpeg_for_mail (const char *path, int long_side, int quality, int *out_width,
                          int *out_height, GCancellable *cancellable, GError **error);
