/* visit.c: one stay of a piece in the shop
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "record/visit.h"

#include <glib/gi18n.h>

static const WmField fields[] = {
  { "piece_id", WM_FIELD_KEY, G_STRUCT_OFFSET (WmVisit, piece_id), N_ ("piece"),
    WM_KIND_PIECE },
  { "moment", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmVisit, moment), N_ ("moment") },
  { "taken_in_at_s", WM_FIELD_INT, G_STRUCT_OFFSET (WmVisit, taken_in_at_s),
    N_ ("taken in") },
  { "taken_in_by", WM_FIELD_KEY, G_STRUCT_OFFSET (WmVisit, taken_in_by),
    N_ ("taken in by"), WM_KIND_PERSON },
  { "promised_on", WM_FIELD_DATE, G_STRUCT_OFFSET (WmVisit, promised_on),
    N_ ("promised for") },
  { "wishes", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmVisit, wishes), N_ ("owner's wishes") },
  { "condition", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmVisit, condition),
    N_ ("condition on arrival") },
  { "mass_in_mg", WM_FIELD_INT, G_STRUCT_OFFSET (WmVisit, mass_in_mg),
    N_ ("weight on arrival") },
  { "mass_out_mg", WM_FIELD_INT, G_STRUCT_OFFSET (WmVisit, mass_out_mg),
    N_ ("weight at hand-back") },
  { "price_limit_minor", WM_FIELD_INT, G_STRUCT_OFFSET (WmVisit, price_limit_minor),
    N_ ("price limit") },
  { "inspected_at_s", WM_FIELD_INT, G_STRUCT_OFFSET (WmVisit, inspected_at_s),
    N_ ("inspected") },
  { "inspected_by", WM_FIELD_KEY, G_STRUCT_OFFSET (WmVisit, inspected_by),
    N_ ("inspected by"), WM_KIND_PERSON },
  { "open_reason", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmVisit, open_reason),
    N_ ("why checks stay unanswered") },
  { "handed_back_at_s", WM_FIELD_INT, G_STRUCT_OFFSET (WmVisit, handed_back_at_s),
    N_ ("handed back") },
  { "handed_back_by", WM_FIELD_KEY, G_STRUCT_OFFSET (WmVisit, handed_back_by),
    N_ ("handed back by"), WM_KIND_PERSON },
  { "next_check_on", WM_FIELD_DATE, G_STRUCT_OFFSET (WmVisit, next_check_on),
    N_ ("next check") },
  { "next_check_reason", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmVisit, next_check_reason),
    N_ ("reason for the next check") },
  { "shop_note", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmVisit, shop_note), N_ ("shop note") },
};

static const WmKindInfo info = { WM_KIND_VISIT, "visit", N_ ("visit"), fields,
                                 G_N_ELEMENTS (fields) };

WM_DEFINE_RECORD (WmVisit, wm_visit, &info)
