/* compare-desk.h: before and after of a visit, with what can be done to them
 *
 * Shows one pair of photos at a time: today's before and after, and the last visit's
 * beside today's. Holds the carried marks and the points placed by hand; its owner shows
 * how the photos meet (wm_compare_desk_get_meeting ()).
 *
 * Signals (pointers are lent for the call):
 *   finding-chosen (WmId *check)   by its mark
 *   changed (void)                 another pair, another answer, or on the way to one
 *
 * Actions, as a group (prefix "desk"): pair finding accept carry choose by-hand refine
 * confirm again stop. Those of the view (prefix "compare") and of the photo ("canvas")
 * are the desk's, too; wm_compare_desk_lend_actions () gives all to the page.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <adwaita.h>

#include "report/visit-data.h"
#include "window/compare/compare-view.h"
#include "window/compare/pairer.h"
#include "window/session.h"

#define WM_TYPE_COMPARE_DESK (wm_compare_desk_get_type ())
G_DECLARE_FINAL_TYPE (WmCompareDesk, wm_compare_desk, WM, COMPARE_DESK, AdwBin)

/* How the shown photos meet. */
typedef struct
{
  gboolean has_pair;
  gboolean is_aligned;
  gboolean is_by_hand_now; /* points are being placed */
  gboolean can_write;
  guint n_before, n_after; /* points placed */
  double fit_px;           /* NaN: not known */
  double overlap;          /* NaN: not known */
  WmPairing *pairing;      /* (nullable) borrowed */
  WmPairerState state;
  double progress;
  gboolean is_refining;
  gboolean is_refined; /* of the points being placed */
  const char *note;    /* (nullable) a sentence about the last thing done */
  guint n_waiting;     /* carried marks not accepted yet, on this pair */
} WmMeeting;

void wm_compare_desk_show (WmCompareDesk *self, WmSession *session, WmVisitData *data);
void wm_compare_desk_get_meeting (WmCompareDesk *self, WmMeeting *out);
/* Selects the marks of this check and goes to a pair that shows it. */
void wm_compare_desk_choose (WmCompareDesk *self, const WmId *check_id);
void wm_compare_desk_lend_actions (WmCompareDesk *self, GtkWidget *page);
/* For a small picture of how they meet while points are placed: layers of the desk laid
 * on each other, the same ones while the points move; or FALSE. */
gboolean wm_compare_desk_get_live (WmCompareDesk *self, WmTileLayer **before,
                                   WmTileLayer **after, int *turns);
