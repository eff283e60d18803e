/* thumbnail-view.h: a small picture of a photo, loaded off the main thread
 *
 * Shows the icon of the piece's kind until the picture is there, or when there is
 * none. Covers its place; corners are rounded by the style class "thumbnail".
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "archive/archive.h"

#define WM_TYPE_THUMBNAIL_VIEW (wm_thumbnail_view_get_type ())
G_DECLARE_FINAL_TYPE (WmThumbnailView, wm_thumbnail_view, WM, THUMBNAIL_VIEW, GtkWidget)

/* @width, @height: px it asks for; -1 leaves that side to its parent */
GtkWidget *wm_thumbnail_view_new (int width, int height);
void wm_thumbnail_view_set_size (WmThumbnailView *self, int width, int height);

/* @icon_name (nullable): shown while there is no picture */
void wm_thumbnail_view_set_icon (WmThumbnailView *self, const char *icon_name);

/* @sha256 (nullable): NULL shows the icon. A picture already in memory is shown at
 * once; a late answer for another photo is dropped. */
void wm_thumbnail_view_set_photo (WmThumbnailView *self, WmArchive *archive,
                                  const char *sha256, const char *format);
