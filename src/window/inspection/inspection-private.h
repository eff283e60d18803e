/* inspection-private.h: what the files of the inspection page share
 *
 * inspection-page.c    the page: what is shown
 * inspection-checks.c  answering, opening, concluding
 * inspection-marks.c   marks of the shown photo, and tying them to checks
 * inspection-carried.c marks of the last visit, to be accepted
 * inspection-scale.c   the scale of the shown photo
 * inspection-spans.c   how long a span is, snapping, readings that follow
 * inspection-measuring.c  measuring beside the photo, taking a reading
 * inspection-photos.c  photos coming in, their order, view, removal
 * inspection-focus.c   is the marked place sharp, and which part of the photo is
 * inspection-picture.c the shown photo with its marks, saved or copied
 * inspection-stack.c   frames merged into one photo, and folded behind it
 * inspection-tray.c    new photos of the watched folder
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/length.h"
#include "trade/trade.h"
#include "window/canvas/canvas.h"
#include "window/canvas/scale-bar.h"
#include "window/inspection/checklist-pane.h"
#include "window/inspection/checks.h"
#include "window/inspection/inspection-page.h"
#include "window/measuring/measuring-pane.h"
#include "window/measuring/scale-pane.h"
#include "window/moment-page.h"
#include "window/photo-import.h"
#include "window/photo-strip.h"
#include "window/tray/photo-tray.h"

/* What stands beside the photo. */
typedef enum
{
  WM_BESIDE_CHECKLIST,
  WM_BESIDE_SCALE,
  WM_BESIDE_MEASURING
} WmBeside;

/* What is known of the ends of a span while the page is open. */
typedef struct
{
  WmPoint at[2];
  WmPoint placed[2]; /* before they were snapped */
  double u_px[2];
  gboolean is_snapped[2];
} WmSpanEnds;

struct _WmInspectionPage
{
  AdwBin parent_instance;

  GtkStack *stack;
  GtkOverlay *overlay;
  WmCanvas *canvas;
  GtkWidget *photo_card, *hint_card, *scale_card, *marking_bar;
  GtkLabel *photo_title, *photo_facts, *hint, *zoom_label;
  GtkWidget *tool_spot, *tool_line, *tool_outline, *tool_span, *loupe, *turn_right;
  GtkWidget *zoom_out, *zoom_fit, *zoom_in;
  AdwStatusPage *empty;
  WmScaleBar *scale_bar;
  WmPhotoTray *tray;
  WmPhotoStrip *strip;
  AdwClamp *beside_clamp;
  GtkStack *panes;
  WmChecklistPane *pane;
  WmScalePane *scale_pane;
  WmMeasuringPane *measuring_pane;
  GtkWidget *mark_menu;

  WmSession *session;
  WmId visit_id;           /* what the lists below are of */
  GPtrArray *checks;       /* WmCheck */
  GPtrArray *photos;       /* WmPhoto, by moment and position */
  GPtrArray *marks;        /* WmMark of the visit */
  GPtrArray *measurements; /* WmMeasurement of the visit */
  gboolean checks_are_new; /* made from the tables, not in the archive yet */

  WmId open_id;  /* the open check, or none */
  WmId photo_id; /* the photo in the canvas, or none */
  WmId tying;    /* a mark that waits for the check that is chosen next, or none */
  /* Measuring (inspection-measuring.c, -spans.c). */
  WmBeside beside;
  WmId measured_id;      /* the span that is measured, or none */
  WmId subject_id;       /* the check the measuring pane was opened for, or none */
  GHashTable *span_ends; /* WmId of a span -> WmSpanEnds */
  GCancellable *snapping;
  gboolean snaps;          /* ends go to the metal's edge by themselves */
  gboolean unworn_next;    /* the next span is a place as it was made */
  gboolean take_when_tied; /* the value is taken once the check is chosen */

  /* The scale while it is looked at (inspection-scale.c). */
  WmPoint scale_points[4];
  gboolean has_scale_points, scale_is_rectangle;
  WmId scale_photo_id;

  WmId canvas_photo_id; /* what the canvas has loaded */

  GSimpleActionGroup *actions, *photo_actions;
  WmArrivals *arrivals;
  WmPhotoImport *import;
  WmId import_piece_id; /* what its photos are of, whatever is shown by then */
  guint import_taken;
  guint n_pending;       /* edits of this page on their way to disk */
  GtkLabel *place_focus; /* says that the marked place is not sharp */
  WmId judged_mark;      /* whose place was asked for last */
  gboolean shows_tint;   /* where the photo is sharp */
  gboolean shows_frames; /* the frames of stacks stand in the strip, too */
  WmRoom room;
};

/* ---- inspection-page.c ---- */
/* Reads the visit again and shows it. */
void wm_inspection_reload (WmInspectionPage *self);
/* Shows checks, marks and photos again as the lists are now. */
void wm_inspection_show (WmInspectionPage *self);
void wm_inspection_show_photo (WmInspectionPage *self, const WmId *id);
WmPhoto *wm_inspection_get_photo (WmInspectionPage *self);
/* A line over the photo that says what is waited for; NULL: nothing. */
void wm_inspection_hint (WmInspectionPage *self, const char *text);
/* Takes @record's place in @list, or goes to its end. */
void wm_inspection_replace (GPtrArray *list, gpointer record);
gpointer wm_inspection_find (GPtrArray *list, const WmId *id);
/* The session's commit; a refused edit is shown as it is on disk. Takes @edit. */
void wm_inspection_commit (WmInspectionPage *self, WmEdit *edit);

/* ---- inspection-checks.c ---- */
void wm_inspection_init_checks (WmInspectionPage *self);
/* @index -1 closes. A waiting mark is tied only by on_open_check () and Enter. */
void wm_inspection_open_check (WmInspectionPage *self, int index, gboolean with_focus);
/* Fills the open check of the pane again. */
void wm_inspection_show_open_check (WmInspectionPage *self);
void wm_inspection_answer (WmInspectionPage *self, WmSeverity severity);
void wm_inspection_change_note (WmInspectionPage *self, const char *note);
/* The last reading of the check before the work, or NULL. */
WmMeasurement *wm_inspection_find_reading (WmInspectionPage *self, const WmId *check_id);
/* Puts a changed copy of a check, and the whole list where it is new. */
void wm_inspection_put_check (WmInspectionPage *self, WmEdit *edit, WmCheck *check);
void wm_inspection_update_actions (WmInspectionPage *self);
char *wm_inspection_concluded_words (WmInspectionPage *self);

/* ---- inspection-marks.c ---- */
void wm_inspection_init_marks (WmInspectionPage *self);
void wm_inspection_show_marks (WmInspectionPage *self);
/* Selects the first mark of the open check on the shown photo, or none. */
void wm_inspection_select_mark_of_open (WmInspectionPage *self);
guint wm_inspection_count_marks_of_check (WmInspectionPage *self, const WmId *check_id);
guint wm_inspection_count_marks_of_photo (WmInspectionPage *self, const WmId *photo_id);
/* Ties the waiting mark to this check; FALSE if none waits. */
gboolean wm_inspection_tie_waiting (WmInspectionPage *self, int check_index);
void wm_inspection_wait_for_check (WmInspectionPage *self, const WmId *mark_id);
void wm_inspection_stop_waiting (WmInspectionPage *self);

/* ---- inspection-carried.c ---- */
void wm_inspection_init_carried (WmInspectionPage *self);
gboolean wm_inspection_is_carried (WmMark *mark);
/* Of self->checks, or -1. */
int wm_inspection_find_carried_check (WmInspectionPage *self, WmMark *mark);
void wm_inspection_choose_carried (WmInspectionPage *self, WmMark *mark);
/* Confirms @mark, ties it to its check and opens that again where it was called sound
 * before the place was shown. @mark itself is the caller's to put, after this. */
void wm_inspection_put_accepted (WmInspectionPage *self, WmEdit *edit, WmMark *mark);

/* ---- inspection-scale.c ---- */
double wm_inspection_get_camera (WmInspectionPage *self);
void wm_inspection_open_scale (WmInspectionPage *self, gboolean is_rectangle);
/* Another photo, or its record changed. */
void wm_inspection_scale_reloaded (WmInspectionPage *self);
/* (nullable): the points of the scale, to be shown with the marks. */
WmMarkValue *wm_inspection_make_scale_value (WmInspectionPage *self);
void wm_inspection_scale_placed (WmInspectionPage *self, const WmMarkValue *value);
void wm_inspection_scale_removed (WmInspectionPage *self);
void wm_inspection_use_scale (WmInspectionPage *self);
/* Looks for our printed sheet on the shown photo, and takes the scale from it. */
void wm_inspection_find_sheet (WmInspectionPage *self);

/* ---- inspection-spans.c ---- */
/* FALSE for what is no span of two places. */
gboolean wm_inspection_read_span (WmMark *mark, WmPoint ends[2]);
void wm_inspection_get_ends (WmInspectionPage *self, WmMark *mark, const WmPoint at[2],
                             WmSpanEnds *out);
double wm_inspection_u_end_px (const WmSpanEnds *ends);
/* WM_MISSING: the photo has no scale. */
WmResult wm_inspection_measure_span (WmInspectionPage *self, WmMark *mark,
                                     WmSpanEnds *ends, WmLength *length);
WmMeasurement *wm_inspection_find_of_mark (WmInspectionPage *self, const WmId *mark_id);
/* What its plate says; NULL: nothing yet. Caller frees. */
char *wm_inspection_describe_span (WmInspectionPage *self, WmMark *mark);
/* Puts what follows from a changed mark, photo or reading into the same edit. */
void wm_inspection_remeasure (WmInspectionPage *self, WmEdit *edit, WmMark *mark);
void wm_inspection_remeasure_photo (WmInspectionPage *self, WmEdit *edit, WmPhoto *photo);
void wm_inspection_put_suggestion (WmInspectionPage *self, WmEdit *edit,
                                   WmMeasurement *reading);
void wm_inspection_snap (WmInspectionPage *self, WmMark *mark, gboolean is_unworn);
void wm_inspection_move_ends (WmInspectionPage *self, WmMark *shown,
                              const WmPoint ends[2], const char *label);
void wm_inspection_take_unworn (WmInspectionPage *self, WmMark *mark);

/* ---- inspection-measuring.c ---- */
void wm_inspection_init_measuring (WmInspectionPage *self);
void wm_inspection_dispose_measuring (WmInspectionPage *self);
void wm_inspection_set_beside (WmInspectionPage *self, WmBeside beside);
void wm_inspection_open_measuring (WmInspectionPage *self, gboolean by_gauge);
void wm_inspection_leave_measuring (WmInspectionPage *self);
void wm_inspection_show_measuring (WmInspectionPage *self);
void wm_inspection_tool_chosen (WmInspectionPage *self, const char *tool);
void wm_inspection_span_placed (WmInspectionPage *self, WmMark *mark);
void wm_inspection_span_chosen (WmInspectionPage *self, WmMark *mark);
void wm_inspection_take_value (WmInspectionPage *self);
/* @mark was just tied to @check: a value that waited for it is taken. */
void wm_inspection_tied (WmInspectionPage *self, WmMark *mark, WmCheck *check);

/* ---- inspection-photos.c ---- */
void wm_inspection_init_photos (WmInspectionPage *self);
void wm_inspection_show_strip (WmInspectionPage *self);
void wm_inspection_sort_photos (GPtrArray *photos);
void wm_inspection_drop_import (WmInspectionPage *self);
/* Beside the shown photo. FALSE: nothing can come in now. */
gboolean wm_inspection_add_files (WmInspectionPage *self, GListModel *files);
void wm_inspection_turned (WmInspectionPage *self, int turns);

/* ---- inspection-tray.c ---- */
/* After init_photos (), whose actions it joins. */
void wm_inspection_init_tray (WmInspectionPage *self);
/* Watches the folder of the settings, if it is not watched already. */
void wm_inspection_watch (WmInspectionPage *self);

/* ---- inspection-stack.c ---- */
/* After init_photos (), whose actions it joins. */
void wm_inspection_init_stack (WmInspectionPage *self);
/* Whether the strip leaves it out: a frame behind its stack. */
gboolean wm_inspection_is_folded (WmInspectionPage *self, WmPhoto *photo);

/* ---- inspection-focus.c ---- */
/* After init_photos (), whose actions it joins. */
void wm_inspection_init_focus (WmInspectionPage *self);
/* Says by and by whether the place of @mark (nullable) is out of focus. */
void wm_inspection_judge_place (WmInspectionPage *self, WmMark *mark);
/* The tint of the shown photo, if tints are shown. */
void wm_inspection_show_tint (WmInspectionPage *self);

/* ---- inspection-picture.c ---- */
/* After init_photos (), whose actions it joins. */
void wm_inspection_init_picture (WmInspectionPage *self);
