/* inspection-private.h: what the files of the inspection page share
 *
 * inspection-page.c    the page: what is shown
 * inspection-checks.c  answering, opening, concluding
 * inspection-marks.c   marks of the shown photo, and tying them to checks
 * inspection-carried.c marks of the last visit, to be accepted
 * inspection-photos.c  photos coming in, their order, view, removal
 * inspection-tray.c    new photos of the watched folder
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "trade/trade.h"
#include "window/canvas/canvas.h"
#include "window/canvas/scale-bar.h"
#include "window/inspection/checklist-pane.h"
#include "window/inspection/checks.h"
#include "window/inspection/inspection-page.h"
#include "window/moment-page.h"
#include "window/photo-import.h"
#include "window/photo-strip.h"
#include "window/tray/photo-tray.h"

struct _WmInspectionPage
{
  AdwBin parent_instance;

  GtkStack *stack;
  GtkOverlay *overlay;
  WmCanvas *canvas;
  GtkWidget *photo_card, *hint_card, *scale_card, *marking_bar;
  GtkLabel *photo_title, *photo_facts, *hint, *zoom_label;
  GtkWidget *tool_spot, *tool_line, *tool_outline, *loupe, *turn_right;
  GtkWidget *zoom_out, *zoom_fit, *zoom_in;
  AdwStatusPage *empty;
  WmScaleBar *scale_bar;
  WmPhotoTray *tray;
  WmPhotoStrip *strip;
  WmChecklistPane *pane;
  GtkWidget *mark_menu;

  WmSession *session;
  WmId visit_id;           /* what the lists below are of */
  GPtrArray *checks;       /* WmCheck */
  GPtrArray *photos;       /* WmPhoto, by moment and position */
  GPtrArray *marks;        /* WmMark of the visit */
  GPtrArray *measurements; /* WmMeasurement of the visit */
  gboolean checks_are_new; /* made from the tables, not in the archive yet */

  WmId open_id;         /* the open check, or none */
  WmId photo_id;        /* the photo in the canvas, or none */
  WmId tying;           /* a mark that waits for the check that is chosen next, or none */
  WmId canvas_photo_id; /* what the canvas has loaded */

  GSimpleActionGroup *actions, *photo_actions;
  WmArrivals *arrivals;
  WmPhotoImport *import;
  WmId import_piece_id; /* what its photos are of, whatever is shown by then */
  guint import_taken;
  guint n_pending; /* edits of this page on their way to disk */
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
