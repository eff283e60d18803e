/* pyramid.h: tiles made, from whatever is quickest at hand
 *
 * Inside this room only; the working half of a tile store, for its threads. Coarse
 * levels are cut from the preview; fine ones come from strips (JPEG) or a pack
 * (others), which are looked for in the cache folder and else made; while strips are
 * not there yet, JPEG tiles come from the photo itself.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/pixels.h"
#include "photo/probe.h"

#include <gio/gio.h>

typedef struct _WmPyramid WmPyramid;

WmPyramid *wm_pyramid_new (const char *path, const char *sha256, const char *cache_dir,
                           GError **error);
void wm_pyramid_free (WmPyramid *self);

const WmPhotoFacts *wm_pyramid_get_facts (WmPyramid *self);
int wm_pyramid_get_levels (WmPyramid *self);
void wm_pyramid_get_level_size (WmPyramid *self, int level, int *width, int *height);
guint64 wm_pyramid_get_owner (WmPyramid *self);

/* Whether two tiles of a level are best made together: one band of stored rows. */
gboolean
wm_pyramid_share_band (WmPyramid *self, int column_a, int row_a, int column_b, int row_b);

/* Makes these tiles (all in one band) and puts them into the memory; returns the
 * first. */
WmPixels *
wm_pyramid_make (WmPyramid *self, int level, const int *columns, const int *rows,
                 int count, GCancellable *cancellable, GError **error);

/* The preview, from the cache folder or made. */
WmPixels *
wm_pyramid_get_preview (WmPyramid *self, GCancellable *cancellable, GError **error);

/* Whether strips or a pack would help and are not there yet. */
gboolean wm_pyramid_wants_preparing (WmPyramid *self);

/* Makes them and keeps them; failing is no error (tiles then come slower). */
void wm_pyramid_prepare (WmPyramid *self, GCancellable *cancellable);
