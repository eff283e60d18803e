/* expand.h: what the tables say by reference, written out
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "trade/rows.h"

G_BEGIN_DECLS

/* Gives checks the limits of their rule, blocks their items, and piece types
 * their whole list grouped by part. All references are known to be good. */
void wm_expand_rows (WmRows *rows);

G_END_DECLS
