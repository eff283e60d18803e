/* archive-error.h: what can go wrong with an archive, as codes
 *
 * The message of an error is for the log; window/ and command/ choose the sentence
 * and the next step by the code.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

#define WM_ARCHIVE_ERROR (wm_archive_error_quark ())
GQuark wm_archive_error_quark (void);

typedef enum
{
  WM_ARCHIVE_ERROR_NOT_THERE, /* no archive in this folder */
  WM_ARCHIVE_ERROR_FOREIGN,   /* the folder or database belongs to another program */
  WM_ARCHIVE_ERROR_NEWER,     /* made by a newer Wearmark; untouched */
  WM_ARCHIVE_ERROR_DAMAGED,   /* the database can not be read or contradicts itself */
  WM_ARCHIVE_ERROR_READ_ONLY, /* opened read-only, or the folder can not be written */
  WM_ARCHIVE_ERROR_FULL,      /* no room left; nothing of this edit was kept */
  WM_ARCHIVE_ERROR_OPEN_ELSEWHERE, /* another Wearmark has it open */
  WM_ARCHIVE_ERROR_BUSY,           /* a lock held too long; try again */
  WM_ARCHIVE_ERROR_NOT_FOUND,      /* no such record */
  WM_ARCHIVE_ERROR_CONFLICT, /* changed since by somebody else; nothing was written */
  WM_ARCHIVE_ERROR_REFUSED,  /* breaks a rule of the record (unknown key, bad value) */
  WM_ARCHIVE_ERROR_NOTHING,  /* nothing to undo, or to redo */
  WM_ARCHIVE_ERROR_PHOTO_MISSING, /* the file of a photo is not there */
  WM_ARCHIVE_ERROR_PHOTO_CHANGED, /* the file of a photo is not what was stored */
  WM_ARCHIVE_ERROR_NOT_EMPTY,     /* needs an empty archive */
  WM_ARCHIVE_ERROR_IO             /* anything else the system said */
} WmArchiveError;
