/* canvas.h: the photo with its marks, to look at and to mark
 *
 * Shows one photo through a tile layer and one widget a mark. What the hand does it
 * shows at once and tells by signals; the owner of the canvas turns that into edits
 * and hands the marks back with wm_canvas_set_marks (). It knows no record and no
 * archive. Main thread only.
 *
 * Signals (pointers are lent for the call):
 *   mark-added (WmMarkValue *)     drawn by hand; its id is none
 *   mark-moving (WmMarkValue *)    while it is dragged: nothing to keep yet
 *   mark-edited (WmMarkValue *)    moved, reshaped, pinned: once, at the end of a drag
 *   mark-removed (WmId *)          Delete was pressed on it
 *   mark-chosen (WmId *)           selected by hand; NULL: none any more
 *   mark-menu (WmId *, double x, double y)   its menu was asked for, view px
 *   turned (int)                   the photo is held another way, 0 to 3 clockwise
 *   view-changed (void)            zoom, place or size changed
 *   failed (const GError *)        the photo can not be read
 *
 * Actions, as a group (prefix "canvas"): zoom-in zoom-out fit true-pixels turn-left
 * turn-right loupe tool move move-far next-point previous-point remove finish cancel
 * unpin menu.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "window/canvas/mark-value.h"
#include "window/canvas/tile-layer.h"
#include "window/canvas/view-transform.h"

typedef enum
{
  WM_CANVAS_MARKING, /* everything */
  WM_CANVAS_LOOKING, /* zoom, pan, choose; nothing is changed */
  WM_CANVAS_STILL    /* a picture: no pointing at all */
} WmCanvasMode;

#define WM_TYPE_CANVAS (wm_canvas_get_type ())
G_DECLARE_FINAL_TYPE (WmCanvas, wm_canvas, WM, CANVAS, GtkWidget)

WmCanvas *wm_canvas_new (void);

void wm_canvas_set_mode (WmCanvas *self, WmCanvasMode mode);
/* R of the discs, view px; WM_MARK_R_PHOTO at first. */
void wm_canvas_set_radius (WmCanvas *self, double radius);

/* Shows @layer (nullable) whole, held by @turns quarter turns. Forgets the marks. */
void wm_canvas_set_layer (WmCanvas *self, WmTileLayer *layer, int turns);
WmTileLayer *wm_canvas_get_layer (WmCanvas *self);
/* Another way of holding the same photo, as an edit or its undo says. */
void wm_canvas_set_turns (WmCanvas *self, int turns);

/* (element-type WmMarkValue): copied. Marks of a known id keep their widget, focus and
 * disc. */
void wm_canvas_set_marks (WmCanvas *self, GPtrArray *values);

/* NULL or none: no mark. Does not move the view. */
void wm_canvas_set_selected (WmCanvas *self, const WmId *id);
const WmId *wm_canvas_get_selected (WmCanvas *self);

/* Moves the view so that the mark's place is in sight, if it is not. */
void wm_canvas_show_mark (WmCanvas *self, const WmId *id);
/* Shows this box of the photo (x, y, width, height; photo px), as large as it fits, also
 * when the widget gets another size; until the view is moved. */
void wm_canvas_show_box (WmCanvas *self, const double box[4]);

/* A widget that lies over the photo: no disc is put under it while it is visible. */
void wm_canvas_add_cover (WmCanvas *self, GtkWidget *cover);

const WmViewTransform *wm_canvas_get_view (WmCanvas *self);
/* Looks at the same place, at the same zoom, turned alike; @is_fit: and goes on showing
 * all of it. Tells nobody: for canvases that move together. */
void wm_canvas_follow (WmCanvas *self, const WmViewTransform *view, gboolean is_fit);
gboolean wm_canvas_is_fit (WmCanvas *self);

/* Only this part of the view is drawn and takes the pointer, from @left to @right, view
 * px; marks outside it are not shown and no disc is put there. NaN: all of it. */
void wm_canvas_set_part (WmCanvas *self, double left, double right);
/* Draws its marks and no photo: another widget shows that. */
void wm_canvas_set_glass (WmCanvas *self, gboolean glass);

/* Device px per photo px: 1 is true pixels. */
double wm_canvas_get_pixel_zoom (WmCanvas *self);
/* Whether a line or outline is begun and not ended. */
gboolean wm_canvas_is_drawing (WmCanvas *self);

/* (transfer none): to insert as "canvas" where keys and buttons look. */
GActionGroup *wm_canvas_get_actions (WmCanvas *self);

/* Lets a held L show the loupe only while it is held, wherever in @widget the focus is.
 */
void wm_canvas_watch_loupe_key (WmCanvas *self, GtkWidget *widget);

/* Frames drawn and their longest and total time in snapshot, since the last call. */
typedef struct
{
  guint n_frames;
  double longest_ms;
  double total_ms;
} WmCanvasTimes;

void wm_canvas_take_times (WmCanvas *self, WmCanvasTimes *times);
