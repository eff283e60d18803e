/* probe.h: what a file says about its picture, read from its header
 *
 * Reads at most the header and the metadata: no pixel is decoded, so a file that
 * passes here can still be truncated (wm_photo_check_whole () in load.h finds
 * out). Bounded in time and memory whatever the bytes are.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/photo-error.h"

/* The limits, checked before any pixel is decoded. 20,000 x 20,000 px is to open
 * (our own goal), so the area ends a quarter above; 65,500 is the longest side a
 * JPEG can have with libjpeg (JPEG_MAX_DIMENSION). Pictures that their format
 * only lets be decoded whole (interlaced PNG, WebP, HEIC, AVIF, progressive
 * JPEG) end at 150 million pixels: 600 MB while decoding. */
#define WM_PHOTO_MAX_SIDE 65500
#define WM_PHOTO_MAX_PIXELS 500000000
#define WM_PHOTO_MAX_PIXELS_WHOLE 150000000

typedef enum
{
  WM_PHOTO_JPEG,
  WM_PHOTO_PNG,
  WM_PHOTO_TIFF,
  WM_PHOTO_WEBP,
  WM_PHOTO_HEIC,
  WM_PHOTO_AVIF
} WmPhotoFormat;

typedef struct
{
  WmPhotoFormat format;
  int coded_width; /* px, as stored */
  int coded_height;
  int orientation; /* EXIF 1..8; 1 when not given or outside 1..8 */
  int width;       /* px, upright: all coordinates of marks are in these */
  int height;
  int pages;               /* 1, or how many pictures the file has; the first is used */
  gboolean is_progressive; /* progressive JPEG or interlaced PNG */
  gboolean is_grey;
  gboolean is_cmyk;
  gboolean has_icc; /* an embedded colour profile */
  gboolean has_gps; /* says where it was taken; stripped on mailing */
  double dpi;       /* as stored; 0 when not given. Says nothing about millimetres */
  gboolean has_taken_at;
  gint64 taken_at_us;    /* microseconds since 1970-01-01 UTC */
  gboolean offset_known; /* else the clock of the camera is taken as local time */
  int offset_s;          /* seconds east of UTC, when offset_known */
  gint64 file_size;      /* bytes */
} WmPhotoFacts;

/**
 * wm_photo_probe_file:
 * @path: the file, in the file system's bytes
 *
 * Returns: (transfer full): the facts, or NULL with a WM_PHOTO_ERROR
 */
WmPhotoFacts *wm_photo_probe_file (const char *path, GError **error);

/* The same from bytes; @name stands for the file in messages. */
WmPhotoFacts *wm_photo_probe_bytes (GBytes *bytes, const char *name, GError **error);

WmPhotoFacts *wm_photo_facts_copy (const WmPhotoFacts *facts);
void wm_photo_facts_free (WmPhotoFacts *facts);

/* "jpeg", "png", "tiff", "webp", "heic", "avif": stable, for --json and archives. */
const char *wm_photo_format_name (WmPhotoFormat format);

/* ".jpg", ".png" ...: the ending of a stored original. */
const char *wm_photo_format_suffix (WmPhotoFormat format);

/* The type for a file chooser or a bundle: "image/jpeg" ... */
const char *wm_photo_format_mime (WmPhotoFormat format);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (WmPhotoFacts, wm_photo_facts_free)
