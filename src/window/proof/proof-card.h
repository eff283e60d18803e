/* proof-card.h: one finding after the work: how it is now, and how that was tested
 *
 * Without a finding: the final tests of the whole piece. A finding is one line until it
 * is opened.
 *
 * Signal: chosen (void)   its line was clicked
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "report/visit-data.h"
#include "window/session.h"

#define WM_TYPE_PROOF_CARD (wm_proof_card_get_type ())
G_DECLARE_FINAL_TYPE (WmProofCard, wm_proof_card, WM, PROOF_CARD, GtkWidget)

GtkWidget *wm_proof_card_new (void);

/**
 * wm_proof_card_show:
 * @check: (nullable): NULL for the tests of the whole piece
 * @proofs: (element-type WmProof): those of @check, or of no check
 * @tests: (element-type WmFinalTest): that fit
 */
void wm_proof_card_show (WmProofCard *self, WmSession *session, WmCheck *check,
                         GPtrArray *proofs, GPtrArray *tests);
/* @chosen: looked at now; @open: with severity and tests, too */
void wm_proof_card_set_open (WmProofCard *self, gboolean chosen, gboolean open);
/* (nullable) (transfer none) */
WmCheck *wm_proof_card_get_check (WmProofCard *self);
void wm_proof_card_leave (WmProofCard *self);
