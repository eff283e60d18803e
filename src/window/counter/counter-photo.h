/* counter-photo.h: the photo of a finding, close, with its one mark
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "report/visit-data.h"
#include "window/canvas/canvas.h"
#include "window/canvas/scale-bar.h"

/**
 * wm_counter_photo_show:
 * @bar: of this canvas: hides itself when no scale is known
 * @finding: (nullable): NULL shows the overview, whole and without marks
 * @moment: WM_PHOTO_BEFORE or WM_PHOTO_AFTER
 *
 * Where before and after are in register both show the same place at the same scale and
 * turn (report/close-up.h). Else the place where the finding is marked; without a mark of
 * that moment the overview; without any photo nothing, and the canvas has no layer then.
 */
void wm_counter_photo_show (WmCanvas *canvas, WmScaleBar *bar, WmVisitData *data,
                            const char *cache_folder, const WmFinding *finding,
                            const char *moment);

/* Once for each canvas: its bar follows its zoom. */
void wm_counter_photo_init (WmCanvas *canvas, WmScaleBar *bar);

/**
 * wm_counter_photo_box:
 * @points: places of the mark, photo px
 * @width, @height: of the photo
 * @box: (out): x, y, width, height of what is shown
 *
 * The mark with room for its disc: at least a third of the photo's short side, so that
 * the customer still knows which part it is.
 */
void wm_counter_photo_box (const WmPoint *points, guint n_points, double width,
                           double height, double box[4]);
