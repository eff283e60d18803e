/* photo-tray.h: new photos of the watched folder, offered over the strip
 *
 * Hidden while there is nothing to offer. Its buttons reach the actions
 * "photo.tray-take", "photo.tray-aside" and "photo.tray-back", which its owner installs.
 * Signal: chosen-changed (void)   another photo is chosen, or one fewer
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <adwaita.h>

#include "window/moment-page.h"
#include "window/tray/arrivals.h"

#define WM_TYPE_PHOTO_TRAY (wm_photo_tray_get_type ())
G_DECLARE_FINAL_TYPE (WmPhotoTray, wm_photo_tray, WM, PHOTO_TRAY, AdwBin)

/* Shows what @arrivals has now; call it again at every "changed". */
void wm_photo_tray_show (WmPhotoTray *self, WmArrivals *arrivals);
void wm_photo_tray_set_room (WmPhotoTray *self, WmRoom room);
