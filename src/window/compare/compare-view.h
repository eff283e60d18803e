/* compare-view.h: two photos of the same piece, looked at together
 *
 * The photo of before is the frame; the one of after is laid in it, by its layer
 * (tile-layer.h, wm_tile_layer_set_frame ()). Both canvases look at the same place.
 * Marks are the owner's: it gives them to the two canvases, those of the after photo in
 * pixels of the frame.
 *
 * Actions, as a group (prefix "compare"): mode (state: a word below), flip,
 * seam (target: left right far-left far-right).
 *
 * Signal: mode-changed (void)
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/canvas/canvas.h"

typedef enum
{
  WM_COMPARE_SIDE,       /* "side": beside each other, moving together */
  WM_COMPARE_SEAM,       /* "seam": before left of it, after right */
  WM_COMPARE_BLINK,      /* "blink": one after the other */
  WM_COMPARE_DIFFERENCE, /* "difference": what only before has is orange, what only
                          * after has is blue */
  WM_COMPARE_POINTS,     /* "points": beside each other, each for itself */
  WM_N_COMPARE_MODES
} WmCompareMode;

#define WM_TYPE_COMPARE_VIEW (wm_compare_view_get_type ())
G_DECLARE_FINAL_TYPE (WmCompareView, wm_compare_view, WM, COMPARE_VIEW, GtkWidget)

WmCanvas *wm_compare_view_get_before (WmCompareView *self);
WmCanvas *wm_compare_view_get_after (WmCompareView *self);
GActionGroup *wm_compare_view_get_actions (WmCompareView *self);

/* Both (nullable). Looks at the whole photo again. */
void wm_compare_view_set_layers (WmCompareView *self, WmTileLayer *before, int turns,
                                 WmTileLayer *after, int after_turns);
/* The frame of a layer was changed: draws again. */
void wm_compare_view_redraw (WmCompareView *self);

void wm_compare_view_set_mode (WmCompareView *self, WmCompareMode mode);
WmCompareMode wm_compare_view_get_mode (WmCompareView *self);
/* A word of the modes above; -1 if it is none. */
int wm_compare_mode_parse (const char *word);
const char *wm_compare_mode_word (WmCompareMode mode);
