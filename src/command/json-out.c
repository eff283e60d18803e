/* json-out.c: values and records as JSON members
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "command/json-out.h"

#include <math.h>

#include "command/severity-words.h"

void
wm_json_add_text (JsonBuilder *builder, const char *key, const char *text)
{
  json_builder_set_member_name (builder, key);
  if (text != NULL)
    json_builder_add_string_value (builder, text);
  else
    json_builder_add_null_value (builder);
}

void
wm_json_add_int (JsonBuilder *builder, const char *key, gint64 number)
{
  json_builder_set_member_name (builder, key);
  if (number != WM_UNKNOWN)
    json_builder_add_int_value (builder, number);
  else
    json_builder_add_null_value (builder);
}

void
wm_json_add_real (JsonBuilder *builder, const char *key, double number)
{
  json_builder_set_member_name (builder, key);
  if (isfinite (number))
    json_builder_add_double_value (builder, number);
  else
    json_builder_add_null_value (builder);
}

void
wm_json_add_flag (JsonBuilder *builder, const char *key, gboolean flag)
{
  json_builder_set_member_name (builder, key);
  json_builder_add_boolean_value (builder, flag);
}

void
wm_json_add_time (JsonBuilder *builder, const char *key, gint64 time_s)
{
  g_autoptr (GDateTime) time =
      time_s != WM_UNKNOWN ? g_date_time_new_from_unix_utc (time_s) : NULL;
  g_autofree char *text = time != NULL ? g_date_time_format_iso8601 (time) : NULL;

  wm_json_add_text (builder, key, text);
}

void
wm_json_add_severity (JsonBuilder *builder, const char *key, gint64 severity)
{
  wm_json_add_text (builder, key, wm_severity_code (severity));
}

static void
add_int_field (JsonBuilder *builder, const char *name, gint64 number)
{
  if (g_str_has_suffix (name, "_at_s"))
    {
      g_autofree char *key = g_strndup (name, strlen (name) - 2);

      wm_json_add_time (builder, key, number);
    }
  else if (g_str_equal (name, "severity") || g_str_equal (name, "after_severity"))
    {
      wm_json_add_severity (builder, name, number);
    }
  else
    {
      wm_json_add_int (builder, name, number);
    }
}

static void
add_key (JsonBuilder *builder, const char *name, const WmId *id)
{
  g_autofree char *text = wm_id_is_none (id) ? NULL : wm_id_to_string (id);

  wm_json_add_text (builder, name, text);
}

void
wm_json_add_fields (JsonBuilder *builder, gpointer record)
{
  const WmKindInfo *info = wm_record_get_info (record);

  add_key (builder, "id", wm_record_get_id (record));
  for (guint i = 0; i < info->n_fields; i++)
    {
      const WmField *field = &info->fields[i];
      gpointer member = wm_record_get_member (record, field);

      switch (field->type)
        {
        case WM_FIELD_TEXT:
        case WM_FIELD_DATE:
          wm_json_add_text (builder, field->name, *(char **)member);
          break;
        case WM_FIELD_INT:
        case WM_FIELD_NUMBER:
          add_int_field (builder, field->name, *(gint64 *)member);
          break;
        case WM_FIELD_REAL:
          wm_json_add_real (builder, field->name, *(double *)member);
          break;
        case WM_FIELD_FLAG:
          wm_json_add_flag (builder, field->name, *(gboolean *)member);
          break;
        case WM_FIELD_KEY:
          add_key (builder, field->name, member);
          break;
        }
    }
}
