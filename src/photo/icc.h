/* icc.h: rows of pixels from a photo's own colours to sRGB
 *
 * Inside this room only. For JPEGs decoded directly; other formats use libvips,
 * which does the same through the same library (Little CMS).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

typedef struct _WmIccToSrgb WmIccToSrgb;

/* Returns NULL when there is nothing to do: the profile is sRGB itself, is no
 * three-colour profile, or can not be read. */
WmIccToSrgb *wm_icc_to_srgb_new (const void *profile, gsize length);
void wm_icc_to_srgb_free (WmIccToSrgb *self);

/* Changes @count pixels (blue, green, red, alpha) where they are. */
void wm_icc_to_srgb_apply (WmIccToSrgb *self, guint8 *pixels, int count);

/* Whether a profile's colours are those of sRGB. */
gboolean wm_icc_is_srgb (const void *profile, gsize length);
