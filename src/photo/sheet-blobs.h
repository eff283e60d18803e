/* sheet-blobs.h: dark and light patches of a photo, and which lies in which
 *
 * Private to the sheet finder. Dark is what is darker than its surroundings (a local
 * mean), so that uneven light does not matter.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/pixels.h"

typedef struct
{
  int parent; /* index of the patch round it, -1 for one at the top border */
  int area;   /* px */
  int left, top, right, bottom; /* both ends included */
  gboolean is_dark;
} WmBlob;

typedef struct
{
  int width, height;
  int *labels;   /* of each pixel: index into blobs */
  GArray *blobs; /* WmBlob */
} WmBlobs;

WmBlobs *wm_blobs_new (WmPixels *pixels);
void wm_blobs_free (WmBlobs *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (WmBlobs, wm_blobs_free)
