/* photo.h: one photo of a visit; its file is kept byte for byte in the archive
 *
 * Sizes and places are of the upright photo (EXIF orientation obeyed, turn not).
 * The scale is two places of known distance.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "record/record.h"

#define WM_PHOTO_BEFORE "before"
#define WM_PHOTO_DURING "during"
#define WM_PHOTO_AFTER "after"

#define WM_TYPE_PHOTO (wm_photo_get_type ())
G_DECLARE_FINAL_TYPE (WmPhoto, wm_photo, WM, PHOTO, WmRecord)

/* Members are read freely and written through the properties of the same name. */
struct _WmPhoto
{
  WmRecord parent_instance;

  WmId visit_id;
  gint64 position; /* order in the strip within its moment, from 0 */
  char *moment;    /* WM_PHOTO_BEFORE, _DURING or _AFTER */
  char *view;      /* key of a standard view of the piece type, or NULL */
  char *caption;
  char *sha256; /* 64 lower-case hex digits: names the file in the archive */
  char *format; /* "jpeg", "png" ...: also the file name ending in the archive */
  gint64 byte_size;
  gint64 width;       /* pixels, upright */
  gint64 height;      /* pixels, upright */
  gint64 orientation; /* EXIF 1 to 8 as it is in the file */
  /* 0 to 3, clockwise, how the jeweller likes to see it; marks stay in upright pixels */
  gint64 quarter_turns;
  gint64 taken_at_s;   /* UTC seconds, from EXIF where it says */
  char *original_name; /* without folders */
  double scale_x1;
  double scale_y1;
  double scale_x2;
  double scale_y2;
  double scale_mm;       /* mm; NaN while no scale is set */
  char *verdict;         /* "good", "usable", "retake"; NULL until judged */
  char *verdict_reasons; /* words of photo/judge.h separated by spaces */
  char *scale_kind;      /* "points", "rectangle", "sheet"; NULL: two points */
  char *scale_plane; /* rectangle, sheet: four corners in order, as record/points.h writes
                        them */
  double scale_width_mm;  /* corner 1 to corner 2 */
  double scale_height_mm; /* corner 2 to corner 3 */
  double scale_u_mm;      /* standard uncertainty of the known length */
  double scale_depth_mm;  /* standard uncertainty: place off the plane of the scale */
  char *scale_basis;      /* plain words: "steel rule" */
  char *made_from;        /* "stack", "camera"; NULL: a file */
  WmId stacked_into;      /* of a frame: the photo it was merged into */
};

WmPhoto *wm_photo_new (void);
