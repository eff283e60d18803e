/* exif.h: the few EXIF entries that matter here, read from foreign bytes
 *
 * Inside this room only. Follows each of the three directories (main, Exif, GPS)
 * at most once and reads at most EXIF_MAX_ENTRIES of each: no cycle, no bomb.
 * Source of tags and types: CIPA DC-008 (Exif), TIFF 6.0; numbers from memory,
 * checked in tests against exiftool.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/source.h"

typedef struct
{
  int orientation;      /* 1..8, 0 when absent or senseless */
  double x_resolution;  /* 0 when absent */
  int resolution_unit;  /* 2 inch, 3 cm, 0 absent */
  char taken[20];       /* "YYYY:MM:DD HH:MM:SS", or "" */
  char taken_offset[7]; /* "+HH:MM", or "" */
  gboolean has_gps;
  gboolean is_raw; /* the first directory is only the preview of a raw file */
} WmExif;

/**
 * wm_exif_read:
 * @base: where the TIFF header ("II*" or "MM*") begins in @source
 * @length: bytes from @base that may be read
 *
 * Returns: FALSE when there is no readable EXIF; *@out is then all zero
 */
gboolean wm_exif_read (WmSource *source, gint64 base, gint64 length, WmExif *out);

/* The moment as microseconds since 1970 UTC; without an offset the camera's clock
 * is taken as this machine's local time. FALSE when there is none or it is no date. */
gboolean wm_exif_get_taken (const WmExif *exif, gint64 *taken_us, gboolean *offset_known,
                            int *offset_s);
