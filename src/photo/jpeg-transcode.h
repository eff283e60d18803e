/* jpeg-transcode.h: the same JPEG with a restart at every row of blocks
 *
 * Inside this room only. Coefficients are copied, nothing is lost; progressive
 * becomes sequential. A colour profile is carried along.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/source.h"

GBytes *wm_jpeg_with_restarts (WmSource *jpeg, GCancellable *cancellable, GError **error);
