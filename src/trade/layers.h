/* layers.h: the shipped tables and the shop's own, put together
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "trade/rows.h"

G_BEGIN_DECLS

/**
 * wm_layers_load:
 * @dir: the shipped tables
 * @shop_dir: (nullable): the shop's own; need not exist
 * @problems: array of messages; one is added for each of the shop's files left out
 */
WmRows *wm_layers_load (const char *dir, const char *shop_dir, GPtrArray *problems,
                        GError **error);

/* All table files (*.txt) below a folder, sorted; empty when there is none. */
GPtrArray *wm_layers_find_files (const char *dir);

G_END_DECLS
