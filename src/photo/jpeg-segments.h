/* jpeg-segments.h: the header of a JPEG, read segment by segment
 *
 * Inside this room only. Stops at the first scan; bounded by a number of segments.
 * Source: ITU-T T.81 annex B (markers), from memory; checked against libjpeg.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/source.h"

typedef struct
{
  int width, height, components, precision;
  int sof;          /* 0xC0 baseline, 0xC1 extended, 0xC2 progressive ... */
  int max_h, max_v; /* largest sampling factors */
  int blocks_per_mcu;
  gint64 exif_at; /* of the TIFF header inside the file; 0 when none */
  gint64 exif_length;
  gboolean has_jfif;
  double dpi;          /* from JFIF; 0 when none */
  int adobe_transform; /* -1 when there is no Adobe segment */
  gboolean has_icc;
  gint64 scan_at; /* of the first SOS marker */
} WmJpegHeader;

/* FALSE with WM_PHOTO_ERROR_TRUNCATED or _LYING. */
gboolean wm_jpeg_header_read (WmSource *source, WmJpegHeader *out, GError **error);

/* Called for each segment before the first scan; @at is the marker's 0xFF, @length
 * counts from there. Return FALSE to stop. */
typedef gboolean (*WmJpegSegment) (WmSource *source, int marker, gint64 at, gint64 length,
                                   gpointer user_data);

/* Returns the offset of the first SOS, or -1 with the error set. */
gint64 wm_jpeg_segments_walk (WmSource *source, WmJpegSegment visit, gpointer user_data,
                              GError **error);
