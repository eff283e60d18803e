/* links.c: which rows go with which, and which only name each other
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "archive/links.h"

const WmLink wm_links[] = {
  { WM_KIND_PIECE, "owner_id", WM_LINK_HOLDS },
  { WM_KIND_STONE_GROUP, "piece_id", WM_LINK_BELONGS },
  { WM_KIND_VISIT, "piece_id", WM_LINK_BELONGS },
  /* Who did something stays named: a worker who left is retired, not removed. */
  { WM_KIND_VISIT, "taken_in_by", WM_LINK_HOLDS },
  { WM_KIND_VISIT, "inspected_by", WM_LINK_HOLDS },
  { WM_KIND_VISIT, "handed_back_by", WM_LINK_HOLDS },
  { WM_KIND_PHOTO, "visit_id", WM_LINK_BELONGS },
  /* A frame outlives the photo it was merged into. */
  { WM_KIND_PHOTO, "stacked_into", WM_LINK_NAMES },
  { WM_KIND_PAIRING, "before_photo_id", WM_LINK_BELONGS },
  { WM_KIND_PAIRING, "after_photo_id", WM_LINK_BELONGS },
  { WM_KIND_CHECK, "visit_id", WM_LINK_BELONGS },
  { WM_KIND_CHECK, "answered_by", WM_LINK_HOLDS },
  { WM_KIND_MARK, "photo_id", WM_LINK_BELONGS },
  /* A mark without its check waits for another one. */
  { WM_KIND_MARK, "check_id", WM_LINK_NAMES },
  { WM_KIND_MARK, "carried_from", WM_LINK_NAMES },
  { WM_KIND_MEASUREMENT, "check_id", WM_LINK_BELONGS },
  { WM_KIND_MEASUREMENT, "mark_id", WM_LINK_NAMES },
  { WM_KIND_REMEDY, "check_id", WM_LINK_BELONGS },
  { WM_KIND_REMEDY, "done_by", WM_LINK_HOLDS },
  { WM_KIND_MATERIAL, "remedy_id", WM_LINK_BELONGS },
  { WM_KIND_PROOF, "visit_id", WM_LINK_BELONGS },
  /* Emptied, it would turn into a final test of the whole piece: so it goes. */
  { WM_KIND_PROOF, "check_id", WM_LINK_BELONGS },
  { WM_KIND_PROOF, "tested_by", WM_LINK_HOLDS },
  { WM_KIND_REMINDER, "piece_id", WM_LINK_BELONGS },
  { WM_KIND_REMINDER, "visit_id", WM_LINK_NAMES },
};

const guint wm_n_links = G_N_ELEMENTS (wm_links);
