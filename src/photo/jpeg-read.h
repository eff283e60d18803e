/* jpeg-read.h: JPEGs decoded row by row, scaled in the DCT, with libjpeg-turbo
 *
 * Inside this room only. For the JPEGs that are usual (8 bit, grey without a
 * profile, or three components); others go through open.h.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/orient.h"
#include "photo/probe.h"
#include "photo/source.h"

typedef struct _WmJpegReader WmJpegReader;

gboolean wm_jpeg_is_usual (const WmPhotoFacts *facts);

/**
 * wm_jpeg_reader_new:
 * @denom: 1, 2, 4 or 8: each side is divided by it, rounded up
 * @window: the part wanted, in scaled px of the stored picture; NULL: all. Its left
 *   and right edge are exact only some pixels inside (chroma is smoothed)
 */
WmJpegReader *wm_jpeg_reader_new (WmSource *source, int denom, const WmRect *window,
                                  GCancellable *cancellable, GError **error);
void wm_jpeg_reader_free (WmJpegReader *self);

int wm_jpeg_reader_get_width (WmJpegReader *self);
int wm_jpeg_reader_get_height (WmJpegReader *self);

/* Reads the next @rows rows as WmPixels bytes, in sRGB. */
gboolean wm_jpeg_reader_read (WmJpegReader *self, guint8 *to, gsize stride, int rows,
                              GError **error);

/* After the last row: whether anything was missing or damaged. */
gboolean wm_jpeg_reader_check (WmJpegReader *self, GError **error);

/* All of it at once. */
WmPixels *wm_jpeg_decode (WmSource *source, int denom, const WmRect *window,
                          GCancellable *cancellable, GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (WmJpegReader, wm_jpeg_reader_free)
