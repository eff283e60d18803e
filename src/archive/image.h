/* image.h: a row as text, for the log of edits
 *
 * A JSON object of the fields that say something and "made_at_us"; keys are written
 * as RFC 9562 text. A field this program does not know is passed over, one that is
 * not there says nothing: so images outlive changes of the schema.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "archive/row.h"

/* Returns: (transfer full) */
char *wm_image_write (const WmRow *row);

/* The record gets key @id and no stamp. DAMAGED if @text is no such object. */
gboolean wm_image_read (const char *text, WmKind kind, const WmId *id, WmRow *out_row,
                        GError **error);
