/* photo-popover.h: view, caption and moment of one photo
 *
 * Signals:
 *   described (WmId *, const char *view, const char *caption)   "" for none
 *   moment-chosen (WmId *, const char *moment)
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "record/kinds.h"
#include "trade/trade.h"

#define WM_TYPE_PHOTO_POPOVER (wm_photo_popover_get_type ())
G_DECLARE_FINAL_TYPE (WmPhotoPopover, wm_photo_popover, WM, PHOTO_POPOVER, GtkPopover)

WmPhotoPopover *wm_photo_popover_new (void);

/* Opens it; @trade and @type (both nullable) give the standard views. */
void wm_photo_popover_show (WmPhotoPopover *self, WmTrade *trade, const char *type,
                            WmPhoto *photo);
