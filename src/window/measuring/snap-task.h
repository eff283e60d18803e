/* snap-task.h: a span moved to the metal's edges, off the interface thread
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gio/gio.h>

#include "photo/span-profile.h"

/* @zoom: device px per photo px while the ends were placed: the smaller the photo was
 * shown, the farther off an end may lie. */
void wm_snap_async (const char *path, WmPoint a, WmPoint b, double zoom,
                    GCancellable *cancellable, GAsyncReadyCallback callback,
                    gpointer user_data);

/* FALSE without an error: no clear edge near either end. */
gboolean wm_snap_finish (GAsyncResult *result, WmSnappedEnd ends[2], GError **error);

/* Standard uncertainty of an end placed by hand, px: of the pixel aimed at, or of the
 * screen's where one of those is more. */
double wm_snap_hand_u_px (double zoom);
