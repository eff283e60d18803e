/* image.c: a row as text, for the log of edits
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "archive/image.h"

#include <json-glib/json-glib.h>
#include <math.h>

#define WM_MADE "made_at_us"

static void
write_field (JsonBuilder *builder, const WmField *field, gpointer member)
{
  json_builder_set_member_name (builder, field->name);
  switch (field->type)
    {
    case WM_FIELD_TEXT:
    case WM_FIELD_DATE:
      json_builder_add_string_value (builder, *(char **)member);
      break;
    case WM_FIELD_INT:
    case WM_FIELD_NUMBER:
      json_builder_add_int_value (builder, *(gint64 *)member);
      break;
    case WM_FIELD_REAL:
      json_builder_add_double_value (builder, *(double *)member);
      break;
    case WM_FIELD_FLAG:
      json_builder_add_boolean_value (builder, *(gboolean *)member);
      break;
    case WM_FIELD_KEY:
      {
        g_autofree char *text = wm_id_to_string (member);

        json_builder_add_string_value (builder, text);
        break;
      }
    }
}

static gboolean
says_something (const WmField *field, gpointer member)
{
  switch (field->type)
    {
    case WM_FIELD_TEXT:
    case WM_FIELD_DATE:
      return *(char **)member != NULL;
    case WM_FIELD_INT:
      return *(gint64 *)member != WM_UNKNOWN;
    case WM_FIELD_NUMBER:
      return *(gint64 *)member != 0;
    case WM_FIELD_REAL:
      return !isnan (*(double *)member);
    case WM_FIELD_FLAG:
      return *(gboolean *)member;
    case WM_FIELD_KEY:
      return !wm_id_is_none (member);
    }
  g_return_val_if_reached (FALSE);
}

char *
wm_image_write (const WmRow *row)
{
  const WmKindInfo *info = wm_record_get_info (row->record);
  g_autoptr (JsonBuilder) builder = json_builder_new_immutable ();
  g_autoptr (JsonGenerator) generator = json_generator_new ();
  g_autoptr (JsonNode) root = NULL;

  json_builder_begin_object (builder);
  json_builder_set_member_name (builder, WM_MADE);
  json_builder_add_int_value (builder, row->made_at_us);
  for (guint i = 0; i < info->n_fields; i++)
    {
      gpointer member = wm_record_get_member (row->record, &info->fields[i]);

      if (says_something (&info->fields[i], member))
        write_field (builder, &info->fields[i], member);
    }
  json_builder_end_object (builder);
  root = json_builder_get_root (builder);
  json_generator_set_root (generator, root);
  return json_generator_to_data (generator, NULL);
}

static gboolean
read_field (JsonNode *node, const WmField *field, gpointer member)
{
  GType type =
      JSON_NODE_HOLDS_VALUE (node) ? json_node_get_value_type (node) : G_TYPE_INVALID;

  if (type == G_TYPE_INVALID)
    return FALSE;
  switch (field->type)
    {
    case WM_FIELD_TEXT:
    case WM_FIELD_DATE:
      if (type != G_TYPE_STRING)
        return FALSE;
      g_free (*(char **)member);
      *(char **)member = g_strdup (json_node_get_string (node));
      return TRUE;
    case WM_FIELD_INT:
    case WM_FIELD_NUMBER:
      *(gint64 *)member = json_node_get_int (node);
      return type == G_TYPE_INT64;
    case WM_FIELD_REAL:
      *(double *)member = json_node_get_double (node);
      return type == G_TYPE_DOUBLE || type == G_TYPE_INT64;
    case WM_FIELD_FLAG:
      *(gboolean *)member = json_node_get_boolean (node);
      return type == G_TYPE_BOOLEAN;
    case WM_FIELD_KEY:
      return type == G_TYPE_STRING
             && wm_id_from_string (json_node_get_string (node), member);
    }
  g_return_val_if_reached (FALSE);
}

static gboolean
read_object (JsonObject *object, WmRecord *record)
{
  const WmKindInfo *info = wm_record_get_info (record);

  for (guint i = 0; i < info->n_fields; i++)
    {
      const WmField *field = &info->fields[i];
      JsonNode *node = json_object_get_member (object, field->name);

      if (node != NULL && !read_field (node, field, wm_record_get_member (record, field)))
        return FALSE;
    }
  return TRUE;
}

gboolean
wm_image_read (const char *text, WmKind kind, const WmId *id, WmRow *out_row,
               GError **error)
{
  g_autoptr (JsonParser) parser = json_parser_new_immutable ();
  g_autoptr (WmRecord) record = wm_record_new (kind);
  JsonNode *root;

  wm_record_set_id (record, id);
  if (json_parser_load_from_data (parser, text, -1, NULL)
      && (root = json_parser_get_root (parser)) != NULL && JSON_NODE_HOLDS_OBJECT (root)
      && read_object (json_node_get_object (root), record))
    {
      out_row->made_at_us = json_object_get_int_member_with_default (
          json_node_get_object (root), WM_MADE, 0);
      out_row->record = g_steal_pointer (&record);
      return TRUE;
    }
  g_set_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_DAMAGED,
               "the log's image of a %s can not be read", wm_kind_get_info (kind)->name);
  return FALSE;
}
