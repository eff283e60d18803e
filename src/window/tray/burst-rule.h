/* burst-rule.h: which new photos belong to one burst, and which of it is the sharpest
 *
 * A burst is what the shutter took while the piece lay still: frames that follow each
 * other within WM_BURST_SECONDS and show the same from the same side.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/likeness.h"

/* Between two frames of a burst, seconds: longer than a microscope camera needs to
 * write one, shorter than turning the piece takes (common practice, no source). */
#define WM_BURST_SECONDS 3

typedef struct
{
  gint64 taken_at_us; /* UTC */
  const WmLikeness *likeness;
  double focus; /* 0 to 1; NaN: nothing to judge it by */
} WmBurstFrame;

/**
 * wm_burst_group:
 * @frames: in the order of their time
 * @groups: (out): the number of the group each belongs to, from 0, rising
 * @places: (out): its place in its group by sharpness; 0 is the sharpest
 */
void wm_burst_group (const WmBurstFrame *frames, guint n, guint *groups, guint *places);
