/* close-up-show.h: a matched close-up on a canvas
 *
 * Shows what report/close-up.h says: the part of the photo, turned and scaled as its
 * partner, with its mark. The canvas looks at the box; what lies beyond it is seen as
 * far as there is room.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "report/close-up.h"
#include "window/canvas/canvas.h"

/**
 * wm_close_up_show:
 * @close: as wm_close_ups_find () gave it for a box of @width by @height
 * @number: of the mark's disc, 0 for none; below 0 no mark is shown
 *
 * Returns: FALSE when there is nothing to show; the canvas has no layer then
 */
gboolean wm_close_up_show (WmCanvas *canvas, WmVisitData *data, const char *cache_folder,
                           const WmCloseUp *close, double width, double height,
                           WmSeverity severity, int number);

/* Box units that a true millimetre takes in both; NaN when no scale is known. */
double wm_close_ups_px_per_mm (const WmCloseUps *close);
