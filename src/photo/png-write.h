/* png-write.h: pictures out as PNG, with their facts written into them
 *
 * Written through libpng with compression level 1 and the sub filter (measured:
 * an eighth of the default's time for a tenth more bytes), in strips: memory stays
 * under about 600 MB however large the photo is (row-source.h). First under a
 * temporary name in the same folder, synced, then renamed: what stood there
 * before is replaced whole or not at all.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/mark-draw.h"
#include "photo/mark-layout.h"
#include "photo/pixels.h"
#include "photo/photo-error.h"

#include <gio/gio.h>

/* All may be NULL; UTF-8. Plain ASCII goes into tEXt, else iTXt (PNG, third
 * edition, section 11.3.3), with the specification's own keywords. */
typedef struct
{
  const char *title;       /* "Title": the piece's number and what it is */
  const char *source;      /* "Source": which photo */
  const char *description; /* "Description": the findings in words */
  const char *software;    /* "Software": NULL gives the program and its version */
  const char *comment;     /* "Comment" */
  gboolean has_created;
  gint64 created_us; /* "Creation Time", written as RFC 3339 in UTC */
  double mm_per_px;  /* of the photo at true size, for pHYs; 0: not known. Only
                      * when the whole picture is one calibrated plane */
} WmPngNote;

/* One mark in photo pixels. */
typedef struct
{
  WmSeverity severity;
  WmShape shape;
  const WmPoint *points; /* upright photo px */
  gsize n_points;
  int number;
  guint state;       /* WmMarkState: carried or not confirmed */
  const char *value; /* span: its value in words */
  gboolean is_pinned;
  WmPoint disc; /* upright photo px, when pinned */
} WmPictureMark;

typedef struct
{
  int long_side;              /* px of the result; 0: as the photo is; not enlarged */
  const WmPictureMark *marks; /* or NULL */
  gsize n_marks;
  double radius; /* R in px of the result; 0: 1/70 of the long side, at
                  * least 13 px */
  gboolean grey; /* the mark's grey print fills; the photo in grey too */
  const char *font;
  WmPngNote note;
} WmPictureOptions;

/**
 * wm_picture_write_png:
 * @photo: path of the original
 * @dest: where to; replaced if it exists
 *
 * The photo as the window shows it, upright and sRGB, with the marks over it.
 * Without marks: design.md's `photo -o UPRIGHT.png`.
 */
gboolean wm_picture_write_png (const char *photo, const char *dest,
                               const WmPictureOptions *options, GCancellable *cancellable,
                               GError **error);

/* Pixels as they are, opaque. (Aligned pictures, tests, the clipboard.) */
gboolean wm_pixels_write_png (WmPixels *pixels, const char *dest, const WmPngNote *note,
                              GError **error);
GBytes *wm_pixels_to_png (WmPixels *pixels, const WmPngNote *note, GError **error);
