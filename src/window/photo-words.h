/* photo-words.h: what the judge said of a photo, in words
 *
 * From the words kept with the record; translated, caller frees.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "record/photo.h"

/* "sharp, well lit"; NULL while the photo is not judged. */
char *wm_photo_verdict_words (WmPhoto *photo);

/* What to do about it, a sentence each; NULL when nothing need be done. */
char *wm_photo_verdict_advice (WmPhoto *photo);

/* Photo pixels a true millimetre has, in the middle of the photo; NaN while the photo has no scale. */
double wm_photo_scale_px_per_mm (WmPhoto *photo);
