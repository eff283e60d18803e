/* proof-page.h: every finding tested again after the work, and photographed
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/moment-page.h"

#define WM_TYPE_PROOF_PAGE (wm_proof_page_get_type ())
G_DECLARE_FINAL_TYPE (WmProofPage, wm_proof_page, WM, PROOF_PAGE, GtkWidget)
