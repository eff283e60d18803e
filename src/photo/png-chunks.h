/* png-chunks.h: the header of a PNG, read chunk by chunk
 *
 * Inside this room only. Source: PNG, third edition, sections 5 and 11, from
 * memory; checked against pngcheck in tests.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/source.h"

typedef struct
{
  guint32 width, height;
  int depth;
  int colour_type; /* 1 palette, 2 colour, 4 alpha, added */
  gboolean is_interlaced;
  gboolean has_icc;
  double dpi;     /* 0 when none */
  int frames;     /* 1, or those of an animated PNG */
  gint64 exif_at; /* 0 when none */
  gint64 exif_length;
  gint64 data_bytes; /* compressed bytes of the picture */
  gboolean has_end;
} WmPngHeader;

/* FALSE with WM_PHOTO_ERROR_TRUNCATED or _LYING. */
gboolean wm_png_header_read (WmSource *source, WmPngHeader *out, GError **error);
