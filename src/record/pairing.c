/* pairing.c: a before and an after photo in register
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "record/pairing.h"

#include <glib/gi18n.h>

static const WmField fields[] = {
  { "before_photo_id", WM_FIELD_KEY, G_STRUCT_OFFSET (WmPairing, before_photo_id),
    N_ ("before photo"), WM_KIND_PHOTO },
  { "after_photo_id", WM_FIELD_KEY, G_STRUCT_OFFSET (WmPairing, after_photo_id),
    N_ ("after photo"), WM_KIND_PHOTO },
  { "m0", WM_FIELD_REAL, G_STRUCT_OFFSET (WmPairing, m0), N_ ("matrix") },
  { "m1", WM_FIELD_REAL, G_STRUCT_OFFSET (WmPairing, m1), N_ ("matrix") },
  { "m2", WM_FIELD_REAL, G_STRUCT_OFFSET (WmPairing, m2), N_ ("matrix") },
  { "m3", WM_FIELD_REAL, G_STRUCT_OFFSET (WmPairing, m3), N_ ("matrix") },
  { "m4", WM_FIELD_REAL, G_STRUCT_OFFSET (WmPairing, m4), N_ ("matrix") },
  { "m5", WM_FIELD_REAL, G_STRUCT_OFFSET (WmPairing, m5), N_ ("matrix") },
  { "m6", WM_FIELD_REAL, G_STRUCT_OFFSET (WmPairing, m6), N_ ("matrix") },
  { "m7", WM_FIELD_REAL, G_STRUCT_OFFSET (WmPairing, m7), N_ ("matrix") },
  { "m8", WM_FIELD_REAL, G_STRUCT_OFFSET (WmPairing, m8), N_ ("matrix") },
  { "residual_px", WM_FIELD_REAL, G_STRUCT_OFFSET (WmPairing, residual_px),
    N_ ("residual") },
  { "overlap", WM_FIELD_REAL, G_STRUCT_OFFSET (WmPairing, overlap), N_ ("overlap") },
  { "made_by", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPairing, made_by), N_ ("made by") },
  { "points", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPairing, points),
    N_ ("points placed by hand") },
  { "refused", WM_FIELD_FLAG, G_STRUCT_OFFSET (WmPairing, refused),
    N_ ("could not be aligned") },
  { "reason", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPairing, reason),
    N_ ("why it could not be aligned") },
  { "engine", WM_FIELD_NUMBER, G_STRUCT_OFFSET (WmPairing, engine),
    N_ ("version of the alignment") },
};

static const WmKindInfo info = { WM_KIND_PAIRING, "pairing", N_ ("pairing"), fields,
                                 G_N_ELEMENTS (fields) };

WM_DEFINE_RECORD (WmPairing, wm_pairing, &info)
