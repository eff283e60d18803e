/* money-settings.h: the shop's hourly rate, tax and metal prices
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <adwaita.h>

#include "window/session.h"

/* A page of the settings; reads again what another edit changed. Floating. */
AdwPreferencesPage *wm_money_settings_page_new (WmSession *session);
