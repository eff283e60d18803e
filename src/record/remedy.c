/* remedy.c: what is done about a finding
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "record/remedy.h"

#include <glib/gi18n.h>

static const WmField fields[] = {
  { "check_id", WM_FIELD_KEY, G_STRUCT_OFFSET (WmRemedy, check_id), N_ ("check"),
    WM_KIND_CHECK },
  { "position", WM_FIELD_NUMBER, G_STRUCT_OFFSET (WmRemedy, position), N_ ("position") },
  { "what", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmRemedy, what), N_ ("what is done") },
  { "minutes", WM_FIELD_INT, G_STRUCT_OFFSET (WmRemedy, minutes), N_ ("time") },
  { "price_minor", WM_FIELD_INT, G_STRUCT_OFFSET (WmRemedy, price_minor), N_ ("price") },
  { "answer", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmRemedy, answer),
    N_ ("customer's answer") },
  { "done_at_s", WM_FIELD_INT, G_STRUCT_OFFSET (WmRemedy, done_at_s), N_ ("done") },
  { "done_by", WM_FIELD_KEY, G_STRUCT_OFFSET (WmRemedy, done_by), N_ ("done by"),
    WM_KIND_PERSON },
  { "method", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmRemedy, method),
    N_ ("how it is joined") },
  { "solder", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmRemedy, solder), N_ ("solder") },
  { "stone_mm", WM_FIELD_REAL, G_STRUCT_OFFSET (WmRemedy, stone_mm),
    N_ ("distance of the nearest stone") },
  { "stones_out", WM_FIELD_FLAG, G_STRUCT_OFFSET (WmRemedy, stones_out),
    N_ ("stones come out first") },
};

static const WmKindInfo info = { WM_KIND_REMEDY, "remedy", N_ ("remedy"), fields,
                                 G_N_ELEMENTS (fields) };

WM_DEFINE_RECORD (WmRemedy, wm_remedy, &info)
