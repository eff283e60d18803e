/* outlook-private.h: what the files of the outlook share
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "report/outlook.h"

typedef struct
{
  WmArchive *archive;
  WmTrade *trade;
  WmVisit *shown;
  WmPiece *piece;
  WmOutlook *out;
} WmOutlookLoad;

/* Whether a remedy of @check (among @remedies, WmRemedy) is done. */
gboolean wm_outlook_is_mended (WmCheck *check, GPtrArray *remedies);

/* Reasons from the answers and remedies of the shown visit, and from the piece itself,
 * its parts' wear (fitted before) included; into out->reasons. */
gboolean wm_outlook_add_check_reasons (WmOutlookLoad *load, GError **error);
void wm_outlook_add_piece_reasons (WmOutlookLoad *load);
