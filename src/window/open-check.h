/* open-check.h: which check of the visit was opened last, for windows over the page
 *
 * Kept with the session, so that a window that opens over any page begins with it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/session.h"

/* @check_id none: no check is open. */
void wm_open_check_set (WmSession *session, const WmId *check_id);
/* None while none was opened; it may be of another visit. */
WmId wm_open_check_get (WmSession *session);
