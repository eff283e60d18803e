/* sheet-corners.h: the corners of a mark to a fraction of a pixel
 *
 * Private to the sheet finder.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gio/gio.h>

#include "reckon/point.h"

/**
 * wm_sheet_corners_refine:
 * @corners: (inout): photo px, known to a twentieth of the side; refined on success
 *
 * Each side is the straight line through the places where the light is half way between
 * frame and paper; the corners are where the sides cross. In light, not in sRGB steps,
 * so that blur moves no edge.
 *
 * Returns: FALSE without an error where a side is not clearly seen (covered, blurred);
 * FALSE with @error when the photo can not be read
 */
gboolean wm_sheet_corners_refine (const char *path, WmPoint corners[4],
                                  GCancellable *cancellable, GError **error);
