/* desk-private.h: what the files of the compare desk share
 *
 * compare-desk.c  pairs, what is shown, actions
 * desk-show.c     layers, cards, words over the photos
 * desk-marks.c    marks of both photos, and those carried over
 * desk-points.c   points placed by hand
 * desk-choose.c   which photo belongs to which
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/compare/compare-desk.h"

#define WM_POINTS_MOST 4
#define WM_POINTS_LEAST 3

struct _WmCompareDesk
{
  AdwBin parent_instance;

  GtkStack *stack;
  AdwStatusPage *empty;
  GtkWidget *empty_add;
  WmCompareView *view;
  GtkWidget *before_card, *after_card, *hint_card, *mode_bar, *choose, *popover;
  GtkLabel *before_title, *before_facts, *after_title, *after_facts, *hint;
  GtkWidget *mode_points, *mode_side, *mode_seam, *mode_blink, *mode_difference, *loupe;
  GtkBox *choices;

  WmSession *session;
  WmPairer *pairer;
  WmVisitData *data;
  GPtrArray *earlier;  /* photos of the visit before; keeps them */
  GPtrArray *pairings; /* as data->pairings, or read again */
  GArray *pairs;       /* WmPair */
  int current;         /* of pairs, or -1 */
  WmId check_id;       /* the finding looked at, or none */
  GSimpleActionGroup *actions;

  /* What the canvases show now. */
  WmId shown_before, shown_after;
  WmTileLayer *before_layer, *after_layer;
  gboolean is_laid; /* the after photo lies in the before's frame */
  double matrix[9]; /* after to before, while it is laid */
  WmCompareMode wanted_mode;
  gboolean wants_points; /* while points are placed: they, not what they make */
  gboolean showing;
  GPtrArray *marks; /* WmMark of both photos */

  /* Points placed by hand. */
  gboolean by_hand;
  GArray *points[2]; /* WmPoint: before, after */
  WmId point_ids[2][WM_POINTS_MOST];
  WmTileLayer *live_layers[2]; /* of the small picture beside them */
  gboolean has_live;
  double live[9];
  double live_fit_px;
  gboolean is_refining, is_refined;
  char *note;
};

/* compare-desk.c */
const WmPair *wm_desk_get_pair (WmCompareDesk *self);
gboolean wm_desk_can_write (WmCompareDesk *self);
void wm_desk_tell (WmCompareDesk *self);
void wm_desk_show_pair (WmCompareDesk *self, int index);
void wm_desk_update_actions (WmCompareDesk *self);
void wm_desk_choose_finding (WmCompareDesk *self, const WmId *check_id);

/* desk-show.c */
/* Loads what is not loaded, lays the photos on each other where that is known. */
void wm_desk_show (WmCompareDesk *self);
void wm_desk_note (WmCompareDesk *self, const char *note);

/* desk-marks.c */
void wm_desk_init_marks (WmCompareDesk *self);
void wm_desk_load_marks (WmCompareDesk *self);
void wm_desk_show_marks (WmCompareDesk *self);
void wm_desk_accept (WmCompareDesk *self);
void wm_desk_carry (WmCompareDesk *self);
guint wm_desk_count_waiting (WmCompareDesk *self);

/* desk-points.c */
void wm_desk_set_loupe (WmCompareDesk *self, gboolean on);
void wm_desk_begin_points (WmCompareDesk *self);
void wm_desk_end_points (WmCompareDesk *self);
void wm_desk_show_points (WmCompareDesk *self);
void wm_desk_refine (WmCompareDesk *self);
void wm_desk_keep_points (WmCompareDesk *self);
void wm_desk_point_added (WmCompareDesk *self, int side, const WmMarkValue *value);
void wm_desk_point_moving (WmCompareDesk *self, int side, const WmMarkValue *value);
void wm_desk_point_edited (WmCompareDesk *self, int side, const WmMarkValue *value);
void wm_desk_point_removed (WmCompareDesk *self, int side, const WmId *id);

/* desk-choose.c */
void wm_desk_fill_choices (WmCompareDesk *self);
char *wm_desk_name_photo (WmCompareDesk *self, WmPhoto *photo);
