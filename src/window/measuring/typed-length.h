/* typed-length.h: a length as a person types it, in any usual unit, to millimetres
 *
 * Pure: no widgets, no archive.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/form/field-check.h"

/* Longer than anything that lies beside jewellery on a photo: a slip of the point or of
 * the unit (common practice, no source). */
#define WM_TYPED_LENGTH_MOST_MM 1000.0

/**
 * wm_typed_length:
 * @text: "10", "10 mm", "1,5 cm", "250 µm", "0.5 in", "1/2 in", "1 1/4\""; without a unit
 *   millimetres; decimal point or comma
 * @out_mm: (out): above 0; NaN for an empty text
 * @out_remark: (out) (transfer full): what is wrong and what to do; for another unit than
 *   mm what it is in mm, also when it is right; NULL else
 *
 * An inch is 25.4 mm exactly (international yard and pound agreement of 1959).
 */
WmFieldVerdict wm_typed_length (const char *text, double *out_mm, char **out_remark);
