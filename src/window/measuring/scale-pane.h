/* scale-pane.h: the scale of the photo, beside it
 *
 * Asks what the placed points are apart, what that was taken from and how far the place
 * may lie off it; checks beside each field. Buttons reach the actions of the page.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <adwaita.h>

#include "reckon/point.h"
#include "record/photo.h"

#define WM_TYPE_SCALE_PANE (wm_scale_pane_get_type ())
G_DECLARE_FINAL_TYPE (WmScalePane, wm_scale_pane, WM, SCALE_PANE, AdwBin)

/* A photo is opened: what its record says, and the shop's camera. */
void wm_scale_pane_open (WmScalePane *self, WmPhoto *photo, double camera_mm);

/**
 * wm_scale_pane_place:
 * @points: (nullable): 2 or 4, photo px; NULL: not placed yet
 * @is_rectangle: which of the two ways
 * @zoom: device px per photo px while they were placed
 */
void wm_scale_pane_place (WmScalePane *self, const WmPoint *points, gboolean is_rectangle,
                          double zoom);

/* The keyboard goes to the first field that asks something. */
void wm_scale_pane_ask (WmScalePane *self);

/* Writes the scale into @photo; FALSE, and why is said beside the field: something is
 * missing or wrong. */
gboolean wm_scale_pane_fill (WmScalePane *self, WmPhoto *photo);
double wm_scale_pane_get_camera (WmScalePane *self);
