/* sniff.h: what kind of file this is, by its first bytes
 *
 * Inside this room only. Names and endings are never believed.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/probe.h"
#include "photo/source.h"

/* FALSE with WM_PHOTO_ERROR_WRONG_KIND (a PDF, an archive, a film ...),
 * _NOT_READ_HERE (a picture of another kind) or _NOT_A_PICTURE. */
gboolean wm_photo_sniff (WmSource *source, WmPhotoFormat *format, GError **error);
