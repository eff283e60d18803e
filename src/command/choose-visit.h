/* choose-visit.h: which visit of a piece a verb is about, and its photos in order
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "command/command.h"

/* The row for a verb's table of options: --visit N, 1 for the first. */
#define WM_VISIT_OPTION                                                                  \
  {                                                                                      \
    "visit", 0, N_ ("N"), N_ ("which visit, 1 for the first (default: the last)")        \
  }

/* The visit of --visit, or the last; NULL when the reason is told, and then @out_exit
 * is what to return. */
WmVisit *
wm_call_choose_visit (WmCall *call, WmArchive *archive, WmPiece *piece, WmExit *out_exit);

/* The photos of a visit as the strip shows them: before, during, after, each in its
 * order. (transfer full) (element-type WmPhoto) */
GPtrArray *wm_list_photos (WmArchive *archive, const WmId *visit_id, GError **error);
