/* row-source.h: a photo as rows from the top down, upright, sRGB, at one size
 *
 * Inside this room only; the export's reader. Memory stays bounded however large
 * the photo is: up to WM_ROWS_IN_MEMORY pixels may be held whole, above that the
 * photo streams, or waits in a temporary file when it has to be turned.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/pixels.h"

#include <gio/gio.h>

#define WM_ROWS_IN_MEMORY 64000000 /* 256 MB */

typedef struct _WmRowSource WmRowSource;

/* @long_side: 0 for true size; never enlarged. */
WmRowSource *wm_row_source_new (const char *path, int long_side,
                                GCancellable *cancellable, GError **error);
void wm_row_source_free (WmRowSource *self);

int wm_row_source_get_width (WmRowSource *self);
int wm_row_source_get_height (WmRowSource *self);

/* Result px per photo px. */
double wm_row_source_get_scale (WmRowSource *self);

/* Fills the first @rows rows of @strip (as wide as the result) with the next rows. */
gboolean
wm_row_source_read (WmRowSource *self, WmPixels *strip, int rows, GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (WmRowSource, wm_row_source_free)
