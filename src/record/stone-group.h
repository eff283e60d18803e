/* stone-group.h: stones of one kind on a piece
 *
 * Sizes are of one stone. basis says how the species is known.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "record/record.h"

#define WM_TYPE_STONE_GROUP (wm_stone_group_get_type ())
G_DECLARE_FINAL_TYPE (WmStoneGroup, wm_stone_group, WM, STONE_GROUP, WmRecord)

/* Members are read freely and written through the properties of the same name. */
struct _WmStoneGroup
{
  WmRecord parent_instance;

  WmId piece_id;
  gint64 position; /* order on the page, from 0 */
  char *species;   /* key of the stones table, or plain words */
  gint64 count;    /* counted at take-in */
  char *cut;       /* key of the cuts table, or plain words */
  double length_mm;
  double width_mm;
  double depth_mm;
  char *basis; /* "said", "seen", "tested", "assumed" */
  char *note;
};

WmStoneGroup *wm_stone_group_new (void);
