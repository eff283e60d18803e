/* moment-page.c: what the window asks of the page of a moment
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/moment-page.h"

G_DEFINE_INTERFACE (WmMomentPage, wm_moment_page, GTK_TYPE_WIDGET)

static void
wm_moment_page_default_init (WmMomentPageInterface *iface)
{
}

void
wm_moment_page_show_visit (WmMomentPage *self, WmSession *session)
{
  g_return_if_fail (WM_IS_MOMENT_PAGE (self));

  WM_MOMENT_PAGE_GET_IFACE (self)->show_visit (self, session);
}

void
wm_moment_page_rows_changed (WmMomentPage *self, WmSession *session,
                             const WmChange *change)
{
  WmMomentPageInterface *iface;

  g_return_if_fail (WM_IS_MOMENT_PAGE (self));

  iface = WM_MOMENT_PAGE_GET_IFACE (self);
  if (iface->rows_changed != NULL)
    iface->rows_changed (self, session, change);
  else
    iface->show_visit (self, session);
}

void
wm_moment_page_set_room (WmMomentPage *self, WmRoom room)
{
  g_return_if_fail (WM_IS_MOMENT_PAGE (self));

  if (WM_MOMENT_PAGE_GET_IFACE (self)->set_room != NULL)
    WM_MOMENT_PAGE_GET_IFACE (self)->set_room (self, room);
}

void
wm_moment_page_leave (WmMomentPage *self)
{
  g_return_if_fail (WM_IS_MOMENT_PAGE (self));

  if (WM_MOMENT_PAGE_GET_IFACE (self)->leave != NULL)
    WM_MOMENT_PAGE_GET_IFACE (self)->leave (self);
}
