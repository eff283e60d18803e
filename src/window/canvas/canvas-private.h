/* canvas-private.h: what the files of the canvas share
 *
 * canvas.c         the widget: photo, view, drawing
 * canvas-marks.c   marks: widgets, discs, choosing
 * canvas-metal.c   where the metal is
 * canvas-draft.c   a form in the making
 * canvas-input.c   pointer, touch
 * canvas-actions.c actions and keys
 * canvas-loupe.c   where the loupe is and what it looks at
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/mark-layout.h"
#include "photo/mark-look.h"
#include "window/canvas/canvas.h"
#include "window/canvas/loupe.h"
#include "window/canvas/mark-view.h"

/* One mark and where its disc is. */
typedef struct
{
  WmMarkView *view;  /* a child of the canvas */
  gboolean has_disc; /* offset holds a place found before */
  WmPoint offset;    /* disc's middle from the first point, view px */
  WmPoint shown;     /* the same as drawn now, on its way to offset */
} WmMarkItem;

/* What a pressed pointer is doing. */
typedef enum
{
  WM_HOLD_NONE,
  WM_HOLD_MAYBE, /* pressed, not moved yet */
  WM_HOLD_PAN,
  WM_HOLD_DISC,
  WM_HOLD_POINT,
  WM_HOLD_FORM
} WmHold;

struct _WmCanvas
{
  GtkWidget parent_instance;

  WmCanvasMode mode;
  WmTileLayer *layer;
  gulong layer_changed, layer_failed;
  WmViewTransform view;
  gboolean is_fit; /* shows all of the photo, or all of box, whatever its size */
  gboolean has_box;
  double box[4];                /* photo px: x, y, width, height */
  double part_left, part_right; /* view px; NaN: to the edge */
  gboolean is_glass;

  /* A zoom under way (canvas.c). */
  double zoom_from, zoom_to;
  WmPoint zoom_anchor; /* view px */
  gint64 zoom_began_us;
  guint zoom_tick;

  /* Marks (canvas-marks.c). */
  GPtrArray *items; /* WmMarkItem, in order of number */
  WmId selected;
  WmId hovered;
  int selected_point; /* of the selected form, or -1: all of it */
  double radius;
  GPtrArray *covers; /* GtkWidget, weak by signal */
  guint8 *detail;    /* map of the preview: where the piece lies */
  int detail_columns, detail_rows;
  gint64 discs_began_us;
  guint disc_tick;
  WmMarkView *draft;     /* the form being drawn, or NULL */
  GArray *draft_points;  /* WmPoint, photo px */
  WmPoint draft_pointer; /* photo px */

  /* Pointer (canvas-input.c). */
  WmShape tool;
  gboolean tool_is_bare; /* draws the scale, not a mark */
  WmPoint pointer;       /* view px */
  gboolean pointer_inside;
  WmHold hold;
  WmMarkPart held_part;
  WmId held_id;
  int held_vertex;
  WmMarkValue *held_value;  /* as it was when the drag began */
  WmPoint held_disc;        /* view px, at the beginning */
  double held_x, held_y;    /* pan so far */
  GtkEventController *drag; /* the widget's own */
  guint32 clicked_at_ms;    /* time of the last click's event; 0: none to pair with */
  WmPoint clicked_at;
  gboolean space_down;
  double pinch_zoom;
  gboolean touching;

  GSimpleActionGroup *actions;
  WmLoupe *loupe;
  gboolean loupe_on;
  gboolean loupe_stands_off; /* beside loupe_place, not on it */
  WmPoint loupe_place;       /* what it looks at, view px */
  WmPoint loupe_middle;      /* where it is, view px */
  enum
  {
    WM_LOUPE_KEY_UP,
    WM_LOUPE_KEY_ON, /* held, and turned the loupe on */
    WM_LOUPE_KEY_OFF
  } loupe_key;
  guint32 loupe_key_ms;

  WmCanvasTimes times;
};

enum
{
  WM_CANVAS_MARK_ADDED,
  WM_CANVAS_MARK_MOVING,
  WM_CANVAS_MARK_EDITED,
  WM_CANVAS_MARK_REMOVED,
  WM_CANVAS_MARK_CHOSEN,
  WM_CANVAS_MARK_MENU,
  WM_CANVAS_TURNED,
  WM_CANVAS_VIEW_CHANGED,
  WM_CANVAS_FAILED,
  WM_CANVAS_N_SIGNALS
};

void wm_canvas_emit (WmCanvas *self, int signal, ...);

/* canvas.c */
double wm_canvas_scale (WmCanvas *self);
gboolean wm_canvas_has_photo (WmCanvas *self);
void wm_canvas_view_moved (WmCanvas *self);
void wm_canvas_zoom_by (WmCanvas *self, double factor, WmPoint anchor, gboolean animated);
void wm_canvas_zoom_to (WmCanvas *self, double zoom, WmPoint anchor, gboolean animated);
void wm_canvas_fit (WmCanvas *self);
gboolean wm_canvas_has_part (WmCanvas *self);
/* The part of the view in use, from edge to edge unless one was set. */
void wm_canvas_get_part (WmCanvas *self, double *left, double *right);
gboolean wm_canvas_is_animated (WmCanvas *self);
WmPoint wm_canvas_anchor (WmCanvas *self);

/* canvas-marks.c */
void wm_canvas_init_marks (WmCanvas *self);
void wm_canvas_clear_marks (WmCanvas *self);
void wm_canvas_dispose_marks (WmCanvas *self);
void wm_canvas_place_marks (WmCanvas *self);
WmMarkItem *wm_canvas_find_item (WmCanvas *self, const WmId *id);
WmMarkItem *wm_canvas_item_at (WmCanvas *self, WmPoint at, double slack, WmMarkPart *part,
                               int *vertex);
/* Selects and tells the owner. */
void wm_canvas_choose (WmCanvas *self, const WmId *id);
/* Shows a changed value at once, keeping the disc where it is. */
void wm_canvas_show_value (WmCanvas *self, WmMarkItem *item, const WmMarkValue *value);

/* canvas-loupe.c */
/* Shows, moves or hides the loupe as pointer, drag and chosen point are now. */
void wm_canvas_place_loupe (WmCanvas *self);
void wm_canvas_allocate_loupe (WmCanvas *self);
/* The line from a loupe that stands off to its place. */
void wm_canvas_snapshot_loupe_line (WmCanvas *self, GtkSnapshot *snapshot);
void wm_canvas_want_tiles (WmCanvas *self);

/* canvas-metal.c */
/* Grid over the view that says where metal is; a cell is about a disc wide. */
#define WM_METAL_COLUMNS 48
#define WM_METAL_ROWS 32

/* Asks for the map of the shown photo, once its preview is there. */
void wm_canvas_learn_detail (WmCanvas *self);
/* FALSE while it is not known. */
gboolean
wm_canvas_fill_metal (WmCanvas *self, guint8 metal[WM_METAL_COLUMNS * WM_METAL_ROWS]);

/* canvas-draft.c */
void wm_canvas_draft_add (WmCanvas *self, WmPoint photo);
void wm_canvas_draft_follow (WmCanvas *self, WmPoint photo);
void wm_canvas_draft_drop_point (WmCanvas *self);
void wm_canvas_draft_finish (WmCanvas *self);
void wm_canvas_draft_cancel (WmCanvas *self);
/* Points after which the tool's form is whole; 0: a double click or Enter ends it. */
guint wm_canvas_tool_points (WmCanvas *self);
/* Makes the tool's form in the middle of the view, for a hand without a pointer. */
void wm_canvas_draft_place (WmCanvas *self);
/* Whether the tool measures: its places are found with the loupe. */
gboolean wm_canvas_tool_measures (WmCanvas *self);

/* canvas-input.c */
void wm_canvas_init_input (WmCanvas *self);

/* canvas-actions.c */
void wm_canvas_init_actions (WmCanvas *self);
void wm_canvas_update_actions (WmCanvas *self);
void wm_canvas_set_loupe (WmCanvas *self, gboolean on);
gboolean wm_canvas_move_focus (GtkWidget *widget, GtkDirectionType direction);
