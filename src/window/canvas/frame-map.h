/* frame-map.h: a photo laid in the frame of another one
 *
 * Photo: pixels of the upright photo that is drawn. Frame: pixels of the upright photo
 * it is laid on, which is what a view transform of the canvas then looks at. Between
 * them is a 3x3 matrix.
 *
 * Pure computation: no widget, no state of its own.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/canvas/view-transform.h"

typedef struct
{
  double to_frame[9]; /* photo px to frame px, row by row */
  double to_photo[9];
  double width; /* of the frame, px */
  double height;
} WmFrameMap;

/* An affine map: x' = xx x + xy y + x0, y' = yx x + yy y + y0. */
typedef struct
{
  double xx, xy, yx, yy, x0, y0;
} WmAffine;

/* FALSE, and nothing changed, when @matrix can not be inverted. */
gboolean
wm_frame_map_init (WmFrameMap *self, const double matrix[9], double width, double height);

/* The map to the view about @photo: value and slope there. FALSE beyond the horizon. */
gboolean wm_frame_map_near (const WmFrameMap *self, const WmViewTransform *view,
                            WmPoint photo, WmAffine *out);

/* View px per photo px in the middle of the view. */
double wm_frame_map_zoom (const WmFrameMap *self, const WmViewTransform *view);

/* The box of the photo that @view shows: x, y, width, height; not cut to the photo.
 * FALSE when a corner of the view lies beyond the horizon. */
gboolean wm_frame_map_box_to_photo (const WmFrameMap *self, const WmViewTransform *view,
                                    double photo[4]);

/* Parts a side into which a texture must be cut, so that drawing each by its own affine
 * map is right to WM_FRAME_ERROR_PX: 1, 2, 4 ... WM_FRAME_MOST_PARTS.
 * @box: what it covers, photo px; @pixels: its longer side in its own pixels */
#define WM_FRAME_ERROR_PX 0.25
#define WM_FRAME_MOST_PARTS 16
int wm_frame_map_parts (const WmFrameMap *self, const double box[4], int pixels);
