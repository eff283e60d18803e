/* rows.c: sections turned into the rows that the other rooms read
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/rows.h"

#include <stdarg.h>
#include <string.h>

#include "trade/expand.h"
#include "trade/values.h"

gboolean
wm_rows_fail (WmRowPlace *place, const char *file, guint line, GError **error,
              WmTradeError code, const char *format, ...)
{
  g_autofree char *text = NULL;
  va_list args;

  va_start (args, format);
  text = g_strdup_vprintf (format, args);
  va_end (args);

  place->file = file;
  place->line = line;
  g_set_error (error, WM_TRADE_ERROR, code, "%s:%u: %s", file, line, text);
  return FALSE;
}

gpointer
wm_rows_alloc (WmRows *self, gsize size)
{
  gpointer memory = g_malloc0 (size);

  g_ptr_array_add (self->memory, memory);
  return memory;
}

static WmRows *
new_rows (void)
{
  WmRows *self = g_new0 (WmRows, 1);

  self->texts = g_string_chunk_new (4096);
  self->memory = g_ptr_array_new_with_free_func (g_free);
  for (guint kind = 0; kind < WM_N_KINDS; kind++)
    {
      self->rows[kind] = g_ptr_array_new ();
      self->by_key[kind] = g_hash_table_new (g_str_hash, g_str_equal);
    }
  return self;
}

void
wm_rows_free (WmRows *self)
{
  if (self == NULL)
    return;

  for (guint kind = 0; kind < WM_N_KINDS; kind++)
    {
      g_ptr_array_unref (self->rows[kind]);
      g_hash_table_unref (self->by_key[kind]);
    }
  g_ptr_array_unref (self->memory);
  g_string_chunk_free (self->texts);
  g_free (self);
}

static char *
list_fields (WmKind kind)
{
  GString *list = g_string_new (NULL);

  for (const WmFieldSpec *spec = wm_schema_kind (kind)->fields; spec->field; spec++)
    g_string_append_printf (list, "%s%s", list->len > 0 ? ", " : "", spec->field);
  return g_string_free (list, FALSE);
}

static gboolean
fill_row (WmRows *self, WmKind kind, const WmTableSection *section, gpointer row,
          WmRowPlace *place, GError **error)
{
  for (guint i = 0; i < section->entries->len; i++)
    {
      const WmTableEntry *entry = g_ptr_array_index (section->entries, i);
      const WmFieldSpec *spec = wm_schema_find_field (kind, entry->field);
      const char *hint = NULL;

      if (spec == NULL)
        {
          g_autofree char *fields = list_fields (kind);

          return wm_rows_fail (place, entry->file, entry->line, error,
                               WM_TRADE_ERROR_UNKNOWN_FIELD,
                               "a %s has no field \"%s\"; it can have: %s", section->kind,
                               entry->field, fields);
        }
      if (!wm_value_read (self, spec, entry->value, row, &hint))
        return wm_rows_fail (
            place, entry->file, entry->line, error, WM_TRADE_ERROR_BAD_VALUE,
            "\"%s\" cannot be read as %s; write %s", entry->value, entry->field, hint);
    }
  return TRUE;
}

static gboolean
add_row (WmRows *self, const WmTableSection *section, WmRowPlace *place, GError **error)
{
  const WmKindSpec *spec;
  gpointer row;
  WmKind kind;

  if (!wm_schema_find_kind (section->kind, &kind))
    return wm_rows_fail (place, section->file, section->line, error,
                         WM_TRADE_ERROR_UNKNOWN_KIND,
                         "no table has sections of kind \"%s\"; look at the shipped "
                         "tables for the kinds there are",
                         section->kind);

  spec = wm_schema_kind (kind);
  row = wm_rows_alloc (self, spec->size);
  *(const char **)row = g_string_chunk_insert_const (self->texts, section->key);

  for (const WmFieldSpec *field = spec->fields; field->field != NULL; field++)
    {
      wm_value_clear (field, row);
      if (field->is_needed && wm_table_section_find (section, field->field) == NULL)
        return wm_rows_fail (place, section->file, section->line, error,
                             WM_TRADE_ERROR_MISSING_FIELD,
                             "[%s %s] has no \"%s\"; add a line \"%s = ...\"",
                             section->kind, section->key, field->field, field->field);
    }
  if (!fill_row (self, kind, section, row, place, error))
    return FALSE;

  g_ptr_array_add (self->rows[kind], row);
  g_hash_table_insert (self->by_key[kind], (gpointer) * (const char **)row, row);
  return TRUE;
}

/* Whether @key is defined where the field may refer to. */
static gboolean
has_target (WmRows *self, const WmFieldSpec *spec, const char *key)
{
  if (spec->type == WM_FIELD_CHECKS)
    return g_hash_table_contains (self->by_key[WM_KIND_BLOCK], key)
           || g_hash_table_contains (self->by_key[WM_KIND_CHECK], key);
  return g_hash_table_contains (self->by_key[spec->ref], key);
}

static gboolean
check_references (WmRows *self, const WmTableSection *section, WmRowPlace *place,
                  GError **error)
{
  WmKind kind = 0;

  wm_schema_find_kind (section->kind, &kind);
  for (guint i = 0; i < section->entries->len; i++)
    {
      const WmTableEntry *entry = g_ptr_array_index (section->entries, i);
      const WmFieldSpec *spec = wm_schema_find_field (kind, entry->field);
      g_auto (GStrv) keys = NULL;

      if (spec->type != WM_FIELD_KEY && spec->type != WM_FIELD_KEYS
          && spec->type != WM_FIELD_CHECKS)
        continue;

      keys = g_strsplit_set (entry->value, " \t", -1);
      for (guint j = 0; keys[j] != NULL; j++)
        if (*keys[j] != '\0' && !has_target (self, spec, keys[j]))
          return wm_rows_fail (
              place, entry->file, entry->line, error, WM_TRADE_ERROR_UNKNOWN_REFERENCE,
              "%s: there is no [%s %s]; correct the key or write that section",
              entry->field,
              spec->type == WM_FIELD_CHECKS ? "check" : wm_schema_kind (spec->ref)->word,
              keys[j]);
    }
  return TRUE;
}

WmRows *
wm_rows_build (GPtrArray *sections, WmRowPlace *out_place, GError **error)
{
  g_autoptr (WmRows) self = new_rows ();

  for (guint i = 0; i < sections->len; i++)
    if (!add_row (self, g_ptr_array_index (sections, i), out_place, error))
      return NULL;

  for (guint i = 0; i < sections->len; i++)
    if (!check_references (self, g_ptr_array_index (sections, i), out_place, error))
      return NULL;

  wm_expand_rows (self);

  for (guint kind = 0; kind < WM_N_KINDS; kind++)
    {
      self->n_rows[kind] = self->rows[kind]->len;
      g_ptr_array_add (self->rows[kind], NULL);
    }
  return g_steal_pointer (&self);
}
