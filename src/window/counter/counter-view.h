/* counter-view.h: what the customer sees, in a window of its own
 *
 * Full screen, on the second monitor if there is one. Shows one visit as it was when the
 * window was opened, or refreshed; knows no other piece. Arrows, Space, touch and clicks
 * only go from finding to finding. It is left by holding Escape for a second, by
 * Control+Shift+Q, or by a finger held on the head of the page for three seconds; closing
 * it otherwise is refused.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/session.h"

#define WM_TYPE_COUNTER_VIEW (wm_counter_view_get_type ())
G_DECLARE_FINAL_TYPE (WmCounterView, wm_counter_view, WM, COUNTER_VIEW, GtkWindow)

/**
 * wm_counter_view_open:
 * @over: the jeweller's window; the counter view goes with it
 *
 * Opens it on the shown visit, or brings the open one to the front, refreshed. Failure to
 * read the visit is told by the session's toast.
 */
void wm_counter_view_open (GtkWindow *over, WmSession *session);

/* The page shown, from 0; findings first, then the rest. */
guint wm_counter_view_get_page (WmCounterView *self);
guint wm_counter_view_get_n_pages (WmCounterView *self);
void wm_counter_view_show_page (WmCounterView *self, guint page);
