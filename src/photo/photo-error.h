/* photo-error.h: how a photo can fail, and names fit to be shown
 *
 * Every message of this room is one or two whole translated sentences: it names
 * the file, says what is wrong and what to do. The code is for programs.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

#define WM_PHOTO_ERROR (wm_photo_error_quark ())

typedef enum
{
  WM_PHOTO_ERROR_NOT_FOUND,     /* no such file */
  WM_PHOTO_ERROR_NO_PERMISSION, /* the file or its folder may not be read or written */
  WM_PHOTO_ERROR_EMPTY,         /* zero bytes */
  WM_PHOTO_ERROR_WRONG_KIND,    /* a folder, a device, a PDF, a film ... */
  WM_PHOTO_ERROR_NOT_A_PICTURE, /* unknown bytes */
  WM_PHOTO_ERROR_NOT_READ_HERE, /* a picture, but this system can not decode it */
  WM_PHOTO_ERROR_TRUNCATED,     /* the picture ends before its last row */
  WM_PHOTO_ERROR_LYING,         /* header and contents do not agree, or are damaged */
  WM_PHOTO_ERROR_TOO_LARGE,     /* above the limits of probe.h */
  WM_PHOTO_ERROR_NO_MEMORY,
  WM_PHOTO_ERROR_NO_SPACE, /* the disk is full */
  WM_PHOTO_ERROR_NO_PLACE, /* nothing can be written there: no folder, no right */
  WM_PHOTO_ERROR_IO        /* anything else the system reported */
} WmPhotoErrorCode;

GQuark wm_photo_error_quark (void);

/**
 * wm_photo_display_name:
 * @path: any file name, in the file system's own bytes
 *
 * Returns: (transfer full): the last part of @path as valid UTF-8 on one line:
 * bytes that are no UTF-8 and control characters are shown as U+FFFD, and a very
 * long name is shortened in the middle
 */
char *wm_photo_display_name (const char *path);
