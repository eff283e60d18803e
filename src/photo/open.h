/* open.h: foreign bytes as a libvips image
 *
 * Inside this room only: for every format but the common JPEGs, which jpeg-read.h
 * decodes directly.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/pixels.h"
#include "photo/probe.h"
#include "photo/source.h"

typedef VipsImage WmVipsImage;
G_DEFINE_AUTOPTR_CLEANUP_FUNC (WmVipsImage, g_object_unref)

/**
 * wm_photo_open:
 * @is_strict: refuse damaged data while decoding (import); else show what there is
 *
 * The first picture of the file, as stored: not turned, own colours. Rows must be
 * asked for from the top down.
 *
 * Returns: (transfer full): an image, or NULL with a WM_PHOTO_ERROR
 */
WmVipsImage *wm_photo_open (WmSource *source, WmPhotoFormat format, gboolean is_strict,
                            GError **error);

/* As stored, but 8 bit sRGB of three bands: profile applied, transparency on white. */
WmVipsImage *wm_photo_open_srgb (WmSource *source, WmPhotoFormat format,
                                 gboolean is_strict, GError **error);

/* Scales exactly to @width x @height when they differ; takes @in over. */
WmVipsImage *wm_vips_scale_to (WmVipsImage *in, int width, int height, const char *name,
                               GError **error);

/* Decodes a three or four band 8 bit image into pixels. */
WmPixels *wm_vips_to_pixels (WmVipsImage *image, const char *name,
                             GCancellable *cancellable, GError **error);

/* The pixels as a four band image (blue first), sharing memory. */
WmVipsImage *wm_pixels_to_vips (WmPixels *pixels);

/* Turns what libvips last said into one of our errors and empties it. */
void wm_vips_set_error (GError **error, const char *name, GCancellable *cancellable);
