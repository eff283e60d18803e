/* png-stream.h: rows into a PNG, with its text chunks and physical scale
 *
 * Inside this room only.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/png-write.h"

#include <stdio.h>

typedef struct _WmPngStream WmPngStream;

/* Writes to @file, or when that is NULL to @bytes. @out_mm_per_px: of the result. */
WmPngStream *wm_png_stream_new (FILE *file, GByteArray *bytes, int width, int height,
                                const WmPngNote *note, double out_mm_per_px,
                                const char *name, GError **error);

/* Rows of WmPixels bytes. */
gboolean wm_png_stream_write (WmPngStream *self, const guint8 *rows, gsize stride,
                              int count, GError **error);
gboolean wm_png_stream_finish (WmPngStream *self, GError **error);
void wm_png_stream_free (WmPngStream *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (WmPngStream, wm_png_stream_free)
