/* photo-strip.h: the photos of a visit in a row: before, during, after
 *
 * Shows what it is given and tells what is wanted; its owner makes the edits. Buttons
 * reach the actions "photo.add" (target: moment), "photo.add-view" (target: view),
 * "photo.remove", "photo.step" (target: "earlier" or "later").
 *
 * Signals (pointers are lent for the call):
 *   photo-chosen (WmId *)                        shown from now on
 *   photo-moved (WmId *, const char *moment, int position)   dragged, or by key
 *   photo-described (WmId *, const char *view, const char *caption)   "" for none
 *   import-cancelled (void)
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <adwaita.h>

#include "trade/trade.h"
#include "window/moment-page.h"

#define WM_TYPE_PHOTO_STRIP (wm_photo_strip_get_type ())
G_DECLARE_FINAL_TYPE (WmPhotoStrip, wm_photo_strip, WM, PHOTO_STRIP, AdwBin)

/* What the strip knows of one photo beside the record. */
typedef struct
{
  WmPhoto *photo; /* borrowed */
  guint n_marks;
} WmStripPhoto;

/**
 * wm_photo_strip_show:
 * @trade: (nullable): for the standard views of @type (nullable)
 * @photos: in order of moment and position
 * @current: (nullable): the photo shown in the canvas
 */
void wm_photo_strip_show (WmPhotoStrip *self, WmArchive *archive, WmTrade *trade,
                          const char *type, const WmStripPhoto *photos, guint n_photos,
                          const WmId *current);

void wm_photo_strip_set_room (WmPhotoStrip *self, WmRoom room);

/* @n_total 0: nothing comes in. @name (nullable): the file under way */
void wm_photo_strip_set_progress (WmPhotoStrip *self, guint n_done, guint n_total,
                                  const char *name);

/* Opens the popover where a photo's view, caption and moment are changed. */
void wm_photo_strip_describe (WmPhotoStrip *self, const WmId *id);

/* "Before": translated, static. */
const char *wm_photo_moment_words (const char *moment);
/* "Before, face up" with the view's name or the caption. Caller frees. */
char *wm_photo_title (WmTrade *trade, WmPhoto *photo);
