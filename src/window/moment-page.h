/* moment-page.h: what the window asks of the page of a moment
 *
 * A page is made once and shown for every visit. It reads what it shows from the
 * session's archive and listens to the session's rows-changed itself, or by
 * implementing rows_changed.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/session.h"

/* How much room the window has (look book, section 5). */
typedef enum
{
  WM_ROOM_NARROW, /* 1000 wide: icons for moments, one column, strip 44 */
  WM_ROOM_NORMAL, /* 1440 wide */
  WM_ROOM_WIDE    /* from 2200 wide: pieces pinned, checklist 460 */
} WmRoom;

#define WM_TYPE_MOMENT_PAGE (wm_moment_page_get_type ())
G_DECLARE_INTERFACE (WmMomentPage, wm_moment_page, WM, MOMENT_PAGE, GtkWidget)

struct _WmMomentPageInterface
{
  GTypeInterface parent_iface;

  void (*show_visit) (WmMomentPage *self, WmSession *session);
  void (*rows_changed) (WmMomentPage *self, WmSession *session, const WmChange *change);
  void (*set_room) (WmMomentPage *self, WmRoom room);
  void (*leave) (WmMomentPage *self);
};

/* Another visit is shown, or the same after a page was away: read everything again.
 * wm_session_get_visit () may be NULL: show nothing. */
void wm_moment_page_show_visit (WmMomentPage *self, WmSession *session);

/* Rows of the shown piece changed while this page is the one shown. Pages that are
 * not shown get show_visit when they come back. Optional: the default calls
 * show_visit. */
void wm_moment_page_rows_changed (WmMomentPage *self, WmSession *session,
                                  const WmChange *change);

/* Optional. */
void wm_moment_page_set_room (WmMomentPage *self, WmRoom room);

/* Another page comes, or the window closes: commit what is being typed. Optional. */
void wm_moment_page_leave (WmMomentPage *self);
