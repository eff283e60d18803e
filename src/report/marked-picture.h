/* marked-picture.h: a photo with its marks as a file to be given away
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "archive/archive.h"

/**
 * wm_marked_picture_write:
 * @dest: where to, replaced if it exists; a JPEG when it ends in .jpg or .jpeg, else a
 *   PNG
 * @long_side: px of the result; 0: as the photo is; not enlarged
 * @grey: photo and marks in grey; claws and numbers say the same
 *
 * The photo as the window shows it, with the marks as the archive has them. The original
 * is not touched, and nothing of its metadata goes along: no place, no camera. A PNG says
 * the piece's number, the findings in words and, where the photo has a scale, its
 * millimetres; a JPEG is for mail and says nothing. Takes seconds: not on the main
 * thread.
 */
gboolean wm_marked_picture_write (WmArchive *archive, WmPiece *piece, WmPhoto *photo,
                                  const char *dest, int long_side, gboolean grey,
                                  GCancellable *cancellable, GError **error);
