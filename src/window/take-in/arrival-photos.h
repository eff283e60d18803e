/* arrival-photos.h: photos of one moment: the first one large, the others under it
 *
 * On the take-in page those taken on arrival, on the proof page those after the work.
 * Property, for templates: moment (WM_PHOTO_...; "before" unless set).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/session.h"

#define WM_TYPE_ARRIVAL_PHOTOS (wm_arrival_photos_get_type ())
G_DECLARE_FINAL_TYPE (WmArrivalPhotos, wm_arrival_photos, WM, ARRIVAL_PHOTOS, GtkWidget)

/* Returns: how many photos there are */
guint wm_arrival_photos_show (WmArrivalPhotos *self, WmSession *session);
/* Opens the file chooser; what is chosen becomes photos of the shown visit. */
void wm_arrival_photos_choose (WmArrivalPhotos *self);
