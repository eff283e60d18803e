/* reminder.c: one call to the owner to come back
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "record/reminder.h"

#include <glib/gi18n.h>

static const WmField fields[] = {
  { "piece_id", WM_FIELD_KEY, G_STRUCT_OFFSET (WmReminder, piece_id), N_ ("piece"),
    WM_KIND_PIECE },
  { "visit_id", WM_FIELD_KEY, G_STRUCT_OFFSET (WmReminder, visit_id), N_ ("visit"),
    WM_KIND_VISIT },
  { "due_on", WM_FIELD_DATE, G_STRUCT_OFFSET (WmReminder, due_on), N_ ("due") },
  { "reason", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmReminder, reason), N_ ("reason") },
  { "sent_on", WM_FIELD_DATE, G_STRUCT_OFFSET (WmReminder, sent_on), N_ ("letter sent") },
  { "way", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmReminder, way), N_ ("sent by") },
  { "result", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmReminder, result), N_ ("result") },
};

static const WmKindInfo info = { WM_KIND_REMINDER, "reminder", N_ ("reminder"), fields,
                                 G_N_ELEMENTS (fields) };

WM_DEFINE_RECORD (WmReminder, wm_reminder, &info)
