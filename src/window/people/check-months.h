/* check-months.h: the shop's own months to the next check, for each kind of piece
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <adwaita.h>

#include "window/session.h"

/* A page of the settings; reads again what another edit changed. Floating. */
AdwPreferencesPage *wm_check_months_page_new (WmSession *session);
