/* stack-rule.h: which photos of a visit can be one focus stack
 *
 * No widget.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "record/photo.h"

/* Frames of one stack follow each other within so many seconds: a hand on the fine focus
 * takes longer than a burst (common practice, no source). */
#define WM_STACK_PAUSE_S 10

/* Photos that can be merged with @shown: same visit's moment and size, themselves no
 * stack and not merged already. Returns: (transfer container) (element-type WmPhoto):
 * borrowed, in the order of @photos */
GPtrArray *wm_stack_candidates (GPtrArray *photos, WmPhoto *shown);

/* Whether @photo of @candidates is chosen at first: it was taken in one go with @shown.
 */
gboolean wm_stack_is_of_one_go (GPtrArray *candidates, WmPhoto *shown, WmPhoto *photo);
