/* strips.h: a JPEG whose rows can be decoded one by one
 *
 * Inside this room only. A JPEG has to be read from its top to reach any row of it.
 * Strips are the same picture, coefficient for coefficient, with a restart at every
 * row of blocks and the place of each noted: any band of rows is decoded alone, to
 * exactly the pixels of a full decode, at about the size of the original.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/orient.h"
#include "photo/source.h"

/* Coefficients are held whole while the strips are made: three bytes a pixel. */
#define WM_STRIPS_MAX_PIXELS 150000000

typedef struct _WmStrips WmStrips;

/**
 * wm_strips_build:
 *
 * Returns: (transfer full): bytes for wm_strips_new () and the cache folder; NULL
 * with an error when the file can not be made into strips
 */
GBytes *wm_strips_build (WmSource *jpeg, GCancellable *cancellable, GError **error);

/* NULL when the bytes are no strips of a picture of that size. */
WmStrips *wm_strips_new (GBytes *bytes, int coded_width, int coded_height);
void wm_strips_free (WmStrips *self);

/* As wm_jpeg_decode (): @window in scaled px of the stored picture. */
WmPixels *wm_strips_decode (WmStrips *self, int denom, const WmRect *window,
                            GCancellable *cancellable, GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (WmStrips, wm_strips_free)
