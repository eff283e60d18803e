/* carry.h: marks carried from one photo to another through their pairing
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "record/mark.h"
#include "record/photo.h"

/* The check a carried mark belongs to; NULL or none: it waits for one. */
typedef const WmId *(*WmCarryCheck) (WmMark *source, gpointer user_data);

/**
 * wm_carry_marks:
 * @sources: (element-type WmMark): any marks; those on @from and tied to a check are
 *   carried, unless they wait to be accepted themselves
 * @there: (element-type WmMark): marks of the visit that @to belongs to; what is on
 *   @to already for the same source or the same check is not carried again
 * @matrix: pixels of @from to pixels of @to, row by row
 * @check: (nullable): NULL: the check of the source itself
 *
 * A form whose middle falls off the photo stays behind; points just outside are put
 * on its edge.
 *
 * Returns: (transfer full) (element-type WmMark): new, not confirmed, in no archive
 */
GPtrArray *
wm_carry_marks (GPtrArray *sources, WmPhoto *from, GPtrArray *there, WmPhoto *to,
                const double matrix[9], WmCarryCheck check, gpointer user_data);
