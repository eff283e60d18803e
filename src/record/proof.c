/* proof.c: a test after the work: of a finding, or of the whole piece
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "record/proof.h"

#include <glib/gi18n.h>

static const WmField fields[] = {
  { "visit_id", WM_FIELD_KEY, G_STRUCT_OFFSET (WmProof, visit_id), N_ ("visit"),
    WM_KIND_VISIT },
  { "check_id", WM_FIELD_KEY, G_STRUCT_OFFSET (WmProof, check_id), N_ ("check"),
    WM_KIND_CHECK },
  { "position", WM_FIELD_NUMBER, G_STRUCT_OFFSET (WmProof, position), N_ ("position") },
  { "test", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmProof, test), N_ ("test") },
  { "reading", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmProof, reading), N_ ("reading") },
  { "passed", WM_FIELD_FLAG, G_STRUCT_OFFSET (WmProof, passed), N_ ("passed") },
  { "tested_at_s", WM_FIELD_INT, G_STRUCT_OFFSET (WmProof, tested_at_s), N_ ("tested") },
  { "tested_by", WM_FIELD_KEY, G_STRUCT_OFFSET (WmProof, tested_by), N_ ("tested by"),
    WM_KIND_PERSON },
};

static const WmKindInfo info = { WM_KIND_PROOF, "proof", N_ ("proof"), fields,
                                 G_N_ELEMENTS (fields) };

WM_DEFINE_RECORD (WmProof, wm_proof, &info)
