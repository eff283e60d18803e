/* mark.c: a place on a photo, tied to a check
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "record/mark.h"

#include <glib/gi18n.h>

static const WmField fields[] = {
  { "photo_id", WM_FIELD_KEY, G_STRUCT_OFFSET (WmMark, photo_id), N_ ("photo"),
    WM_KIND_PHOTO },
  { "check_id", WM_FIELD_KEY, G_STRUCT_OFFSET (WmMark, check_id), N_ ("check"),
    WM_KIND_CHECK },
  { "shape", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmMark, shape), N_ ("shape") },
  { "points", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmMark, points), N_ ("points") },
  { "disc_x", WM_FIELD_REAL, G_STRUCT_OFFSET (WmMark, disc_x), N_ ("disc pinned at") },
  { "disc_y", WM_FIELD_REAL, G_STRUCT_OFFSET (WmMark, disc_y), N_ ("disc pinned at") },
  { "carried_from", WM_FIELD_KEY, G_STRUCT_OFFSET (WmMark, carried_from),
    N_ ("carried from"), WM_KIND_MARK },
  { "confirmed", WM_FIELD_FLAG, G_STRUCT_OFFSET (WmMark, confirmed), N_ ("confirmed") },
};

static const WmKindInfo info = { WM_KIND_MARK, "mark", N_ ("mark"), fields,
                                 G_N_ELEMENTS (fields) };

WM_DEFINE_RECORD (WmMark, wm_mark, &info)
