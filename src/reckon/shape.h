/* shape.h: the four shapes a mark can have
 *
 * Kept beside the severities because the record, the drawn mark and the window
 * all speak of the same four. The numbers are stored in archives: they never
 * change.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

typedef enum
{
  WM_SHAPE_SPOT = 0,    /* one point */
  WM_SHAPE_LINE = 1,    /* two points or more, open */
  WM_SHAPE_OUTLINE = 2, /* three points or more, closed */
  WM_SHAPE_SPAN = 3     /* two points: a measured width */
} WmShape;
