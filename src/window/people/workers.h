/* workers.h: the people who work here, from the archive
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/session.h"

/* In the order they were entered; @retired: those who left too. (transfer full)
 * (element-type WmPerson) */
GPtrArray *wm_workers_list (WmArchive *archive, gboolean retired);

/* "TO" for "Tilda Osk"; never the same as another's. Caller frees. */
char *wm_workers_make_initials (WmArchive *archive, const char *name);
