/* close-up-pair.h: the place of a finding before and after, small, beside each other
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "report/visit-data.h"
#include "window/session.h"

#define WM_TYPE_CLOSE_UP_PAIR (wm_close_up_pair_get_type ())
G_DECLARE_FINAL_TYPE (WmCloseUpPair, wm_close_up_pair, WM, CLOSE_UP_PAIR, GtkWidget)

/* @finding (nullable): hides itself. */
void wm_close_up_pair_show (WmCloseUpPair *self, WmSession *session, WmVisitData *data,
                            const WmFinding *finding);
