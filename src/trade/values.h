/* values.h: the text of one field turned into its C value
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "trade/rows.h"

G_BEGIN_DECLS

/* Writes the member of @row that @spec describes. @out_hint is what the value
 * should look like, static, when FALSE is returned. */
gboolean wm_value_read (WmRows *rows, const WmFieldSpec *spec, const char *text,
                        gpointer row, const char **out_hint);

/* Members that a section leaves out: NAN for numbers, an empty list for lists. */
void wm_value_clear (const WmFieldSpec *spec, gpointer row);

G_END_DECLS
