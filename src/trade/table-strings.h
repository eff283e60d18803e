/* table-strings.h: the texts of the tables as a list that xgettext can read
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

#include "trade/error.h"

G_BEGIN_DECLS

/**
 * wm_table_strings_make:
 * @dir: the shipped tables
 *
 * Returns: (transfer full): C text with one N_("...") for every different text,
 * each under a comment that says where it stands
 */
char *wm_table_strings_make (const char *dir, GError **error);

G_END_DECLS
