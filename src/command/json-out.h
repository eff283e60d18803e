/* json-out.h: values and records as JSON members, the same in every verb
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <json-glib/json-glib.h>

#include "record/record.h"

/* Each adds one member to the object that is open; nothing said is null. */
void wm_json_add_text (JsonBuilder *builder, const char *key, const char *text);
void wm_json_add_int (JsonBuilder *builder, const char *key, gint64 number);
void wm_json_add_real (JsonBuilder *builder, const char *key, double number);
void wm_json_add_flag (JsonBuilder *builder, const char *key, gboolean flag);
/* UTC seconds as ISO 8601: "2026-11-25T09:52:00Z". */
void wm_json_add_time (JsonBuilder *builder, const char *key, gint64 time_s);
void wm_json_add_severity (JsonBuilder *builder, const char *key, gint64 severity);

/* "id" and all fields of a record under their own names, except that a time
 * ("..._at_s") is text under the name without its "_s", and a severity is its code. */
void wm_json_add_fields (JsonBuilder *builder, gpointer record);
