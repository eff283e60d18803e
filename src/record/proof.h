/* proof.h: a test after the work: of a finding, or of the whole piece
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "record/record.h"

#define WM_TYPE_PROOF (wm_proof_get_type ())
G_DECLARE_FINAL_TYPE (WmProof, wm_proof, WM, PROOF, WmRecord)

/* Members are read freely and written through the properties of the same name. */
struct _WmProof
{
  WmRecord parent_instance;

  WmId visit_id;
  WmId check_id; /* none for a final test of the whole piece */
  gint64 position;
  char *test;    /* plain words: "Pulled by hand in line" */
  char *reading; /* as read: "15 N", "ten of ten" */
  gboolean passed;
  gint64 tested_at_s; /* UTC seconds */
  WmId tested_by;
};

WmProof *wm_proof_new (void);
