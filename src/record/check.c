/* check.c: one checklist item answered in one visit
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "record/check.h"

#include <glib/gi18n.h>

static const WmField fields[] = {
  { "visit_id", WM_FIELD_KEY, G_STRUCT_OFFSET (WmCheck, visit_id), N_ ("visit"),
    WM_KIND_VISIT },
  { "position", WM_FIELD_NUMBER, G_STRUCT_OFFSET (WmCheck, position), N_ ("position") },
  { "item", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmCheck, item), N_ ("item") },
  { "part", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmCheck, part), N_ ("part") },
  { "title", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmCheck, title), N_ ("title") },
  { "fault", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmCheck, fault), N_ ("fault") },
  { "look", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmCheck, look), N_ ("how to look") },
  { "if_left", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmCheck, if_left),
    N_ ("what failure leads to") },
  { "remedies", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmCheck, remedies),
    N_ ("usual remedies") },
  { "customer", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmCheck, customer),
    N_ ("sentence for the customer") },
  { "source", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmCheck, source), N_ ("source") },
  { "number", WM_FIELD_INT, G_STRUCT_OFFSET (WmCheck, number), N_ ("number") },
  { "severity", WM_FIELD_NUMBER, G_STRUCT_OFFSET (WmCheck, severity), N_ ("severity") },
  { "note", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmCheck, note), N_ ("note") },
  { "answered_at_s", WM_FIELD_INT, G_STRUCT_OFFSET (WmCheck, answered_at_s),
    N_ ("answered") },
  { "answered_by", WM_FIELD_KEY, G_STRUCT_OFFSET (WmCheck, answered_by),
    N_ ("answered by"), WM_KIND_PERSON },
  { "after_severity", WM_FIELD_NUMBER, G_STRUCT_OFFSET (WmCheck, after_severity),
    N_ ("severity after the work") },
  { "suggested", WM_FIELD_NUMBER, G_STRUCT_OFFSET (WmCheck, suggested),
    N_ ("severity the numbers point to") },
  { "suggested_reason", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmCheck, suggested_reason),
    N_ ("why the numbers point to it") },
  { "other_word_note", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmCheck, other_word_note),
    N_ ("why the jeweller says something else") },
};

static const WmKindInfo info = { WM_KIND_CHECK, "check", N_ ("check"), fields,
                                 G_N_ELEMENTS (fields) };

WM_DEFINE_RECORD (WmCheck, wm_check, &info)
