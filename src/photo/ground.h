/* ground.h: which parts of a photo are the piece, and which the cloth under it
 *
 * A rough map for laying out discs, not a measurement: blocks whose mean colour is
 * unlike that of the photo's border. A shadow counts as piece now and then; a disc then
 * only goes elsewhere.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/pixels.h"

/**
 * wm_ground_map:
 * @block: px, 4 to 256
 * @columns, @rows: (out)
 *
 * Returns: (transfer full): one byte a block, row by row: 0 like the ground .. 255
 *   piece; NULL for a picture smaller than three blocks a side
 */
guint8 *wm_ground_map (WmPixels *pixels, int block, int *columns, int *rows);
