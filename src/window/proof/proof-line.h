/* proof-line.h: one test after the work: what, reading, passed
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/session.h"

#define WM_TYPE_PROOF_LINE (wm_proof_line_get_type ())
G_DECLARE_FINAL_TYPE (WmProofLine, wm_proof_line, WM, PROOF_LINE, GtkWidget)

GtkWidget *wm_proof_line_new (WmSession *session);
void wm_proof_line_show (WmProofLine *self, WmProof *proof);
void wm_proof_line_leave (WmProofLine *self);
