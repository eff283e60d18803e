/* table-strings.c: the texts of the tables as a list that xgettext can read
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/table-strings.h"

#include <string.h>

#include "trade/layers.h"
#include "trade/schema.h"

static void
append_quoted (GString *out, const char *text)
{
  for (const char *p = text; *p != '\0'; p++)
    {
      if (*p == '"' || *p == '\\')
        g_string_append_c (out, '\\');
      g_string_append_c (out, *p);
    }
}

static void
append_section (GString *out, GHashTable *seen, const char *file,
                const WmTableSection *section)
{
  WmKind kind;

  if (!wm_schema_find_kind (section->kind, &kind))
    return;

  for (guint i = 0; i < section->entries->len; i++)
    {
      const WmTableEntry *entry = g_ptr_array_index (section->entries, i);
      const WmFieldSpec *spec = wm_schema_find_field (kind, entry->field);

      if (spec == NULL || spec->type != WM_FIELD_TEXT
          || !g_hash_table_add (seen, g_strdup (entry->value)))
        continue;

      g_string_append_printf (out, "/* %s, %s %s: %s */\nN_(\"", file, section->kind,
                              section->key, entry->field);
      append_quoted (out, entry->value);
      g_string_append (out, "\")\n");
    }
}

char *
wm_table_strings_make (const char *dir, GError **error)
{
  g_autoptr (GHashTable) seen =
      g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (GPtrArray) paths = wm_layers_find_files (dir);
  g_autoptr (GString) out = g_string_new (
      "/* table-strings.h: texts of src/trade/tables, for translators\n"
      " *\n"
      " * Made by \"meson compile table-strings\"; not to be edited by hand.\n"
      " *\n"
      " * SPDX-License-Identifier: GPL-3.0-or-later\n"
      " */\n");

  for (guint i = 0; i < paths->len; i++)
    {
      const char *path = g_ptr_array_index (paths, i);
      g_autoptr (GPtrArray) sections = wm_table_file_read (path, error);
      const char *file = path + strlen (dir);

      if (sections == NULL)
        return NULL;
      while (*file == G_DIR_SEPARATOR)
        file++;
      for (guint j = 0; j < sections->len; j++)
        append_section (out, seen, file, g_ptr_array_index (sections, j));
    }
  return g_string_free (g_steal_pointer (&out), FALSE);
}
