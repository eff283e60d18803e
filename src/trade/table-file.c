/* table-file.c: one table file, read into sections that know their lines
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/table-file.h"

#include <string.h>

/* Ours: the largest table is under 100 kB; more than this is another file by
 * mistake, and must not be drawn into memory. */
#define WM_TABLE_MAX_BYTES (4 * 1024 * 1024)

typedef struct
{
  GRefString *name;
  GPtrArray *sections;
  WmTableEntry *open; /* entry that an indented line goes on with */
} Reader;

static void
free_entry (gpointer data)
{
  WmTableEntry *entry = data;

  g_free (entry->field);
  g_free (entry->value);
  g_ref_string_release (entry->file);
  g_free (entry);
}

static WmTableEntry *
copy_entry (const WmTableEntry *from)
{
  WmTableEntry *entry = g_new0 (WmTableEntry, 1);

  entry->field = g_strdup (from->field);
  entry->value = g_strdup (from->value);
  entry->file = g_ref_string_acquire (from->file);
  entry->line = from->line;
  return entry;
}

static gboolean
is_key (const char *text)
{
  if (*text == '\0')
    return FALSE;

  for (const char *p = text; *p != '\0'; p++)
    if (!g_ascii_isalnum (*p) && *p != '_')
      return FALSE;
  return TRUE;
}

static WmTableSection *
last_section (Reader *reader)
{
  if (reader->sections->len == 0)
    return NULL;
  return g_ptr_array_index (reader->sections, reader->sections->len - 1);
}

static gboolean
read_heading (Reader *reader, char *line, guint number, GError **error)
{
  g_auto (GStrv) words = NULL;
  char *end = strrchr (line, ']');
  WmTableSection *section;
  char *space;

  if (end == NULL || end[1] != '\0')
    {
      g_set_error (error, WM_TRADE_ERROR, WM_TRADE_ERROR_BAD_ROW,
                   "%s:%u: the section is not closed; end the line with \"]\"",
                   reader->name, number);
      return FALSE;
    }

  *end = '\0';
  line = g_strstrip (line + 1);
  space = strpbrk (line, " \t");
  if (space != NULL)
    *space++ = '\0';

  if (!is_key (line) || space == NULL || !is_key (g_strstrip (space)))
    {
      g_set_error (error, WM_TRADE_ERROR, WM_TRADE_ERROR_BAD_ROW,
                   "%s:%u: a section is written [kind key], with letters, digits "
                   "and \"_\"; for example [check bx08]",
                   reader->name, number);
      return FALSE;
    }

  section = g_new0 (WmTableSection, 1);
  section->file = g_ref_string_acquire (reader->name);
  section->line = number;
  section->kind = g_strdup (line);
  section->key = g_strdup (g_strstrip (space));
  section->entries = g_ptr_array_new_with_free_func (free_entry);
  g_ptr_array_add (reader->sections, section);
  reader->open = NULL;
  return TRUE;
}

static gboolean
read_entry (Reader *reader, char *line, guint number, GError **error)
{
  WmTableSection *section = last_section (reader);
  char *equals = strchr (line, '=');
  WmTableEntry *entry;

  if (equals != NULL)
    *equals++ = '\0';

  if (equals == NULL || !is_key (g_strstrip (line)))
    {
      g_set_error (error, WM_TRADE_ERROR, WM_TRADE_ERROR_BAD_ROW,
                   "%s:%u: this is no \"field = text\", no [section] and no # comment; "
                   "a text that goes on from the line above begins with a blank",
                   reader->name, number);
      return FALSE;
    }
  if (section == NULL)
    {
      g_set_error (error, WM_TRADE_ERROR, WM_TRADE_ERROR_BAD_ROW,
                   "%s:%u: \"%s\" stands before the first [section]; put one above it",
                   reader->name, number, line);
      return FALSE;
    }
  if (wm_table_section_find (section, line) != NULL)
    {
      g_set_error (error, WM_TRADE_ERROR, WM_TRADE_ERROR_DUPLICATE,
                   "%s:%u: [%s %s] has \"%s\" twice; keep one of them", reader->name,
                   number, section->kind, section->key, line);
      return FALSE;
    }

  entry = g_new0 (WmTableEntry, 1);
  entry->field = g_strdup (line);
  entry->value = g_strdup (g_strstrip (equals));
  entry->file = g_ref_string_acquire (reader->name);
  entry->line = number;
  g_ptr_array_add (section->entries, entry);
  reader->open = entry;
  return TRUE;
}

static gboolean
go_on (Reader *reader, char *line, guint number, GError **error)
{
  char *joined;

  if (reader->open == NULL)
    {
      g_set_error (error, WM_TRADE_ERROR, WM_TRADE_ERROR_BAD_ROW,
                   "%s:%u: the line begins with a blank, but there is no text above "
                   "that it goes on; take the blank away",
                   reader->name, number);
      return FALSE;
    }

  joined = *reader->open->value == '\0'
               ? g_strdup (g_strstrip (line))
               : g_strconcat (reader->open->value, " ", g_strstrip (line), NULL);
  g_free (reader->open->value);
  reader->open->value = joined;
  return TRUE;
}

static gboolean
read_line (Reader *reader, char *line, guint number, GError **error)
{
  const char *first = line;

  while (g_ascii_isspace (*first))
    first++;

  if (*first == '#')
    return TRUE;
  if (*first == '\0')
    {
      reader->open = NULL;
      return TRUE;
    }
  if (first != line)
    return go_on (reader, line, number, error);

  g_strchomp (line);
  if (*line == '[')
    return read_heading (reader, line, number, error);
  return read_entry (reader, line, number, error);
}

static guint
count_lines (const char *text, const char *end)
{
  guint n = 1;

  for (const char *p = text; p < end; p++)
    if (*p == '\n')
      n++;
  return n;
}

void
wm_table_section_free (WmTableSection *section)
{
  if (section == NULL)
    return;

  g_ref_string_release (section->file);
  g_free (section->kind);
  g_free (section->key);
  g_ptr_array_unref (section->entries);
  g_free (section);
}

WmTableSection *
wm_table_section_copy (const WmTableSection *from)
{
  WmTableSection *section = g_new0 (WmTableSection, 1);

  section->file = g_ref_string_acquire (from->file);
  section->line = from->line;
  section->kind = g_strdup (from->kind);
  section->key = g_strdup (from->key);
  section->entries = g_ptr_array_new_with_free_func (free_entry);
  wm_table_section_merge (section, from);
  return section;
}

WmTableEntry *
wm_table_section_find (const WmTableSection *section, const char *field)
{
  for (guint i = 0; i < section->entries->len; i++)
    {
      WmTableEntry *entry = g_ptr_array_index (section->entries, i);

      if (strcmp (entry->field, field) == 0)
        return entry;
    }
  return NULL;
}

void
wm_table_section_merge (WmTableSection *section, const WmTableSection *from)
{
  for (guint i = 0; i < from->entries->len; i++)
    {
      const WmTableEntry *entry = g_ptr_array_index (from->entries, i);
      WmTableEntry *old = wm_table_section_find (section, entry->field);

      if (old != NULL)
        g_ptr_array_remove (section->entries, old);
      g_ptr_array_add (section->entries, copy_entry (entry));
    }
}

GPtrArray *
wm_table_file_parse (const char *name, const char *text, gssize length, GError **error)
{
  g_autoptr (GPtrArray) sections =
      g_ptr_array_new_with_free_func ((GDestroyNotify)wm_table_section_free);
  g_auto (GStrv) lines = NULL;
  g_autoptr (GRefString) file = g_ref_string_new (name);
  Reader reader = { file, sections, NULL };
  const char *bad = NULL;

  if (!g_utf8_validate (text, length, &bad))
    {
      g_set_error (error, WM_TRADE_ERROR, WM_TRADE_ERROR_UNREADABLE,
                   "%s:%u: a character here is not UTF-8; save the file as UTF-8 text",
                   name, count_lines (text, bad));
      return NULL;
    }
  if (g_str_has_prefix (text, "\xEF\xBB\xBF"))
    text += 3;

  lines = g_strsplit (text, "\n", -1);
  for (guint i = 0; lines[i] != NULL; i++)
    if (!read_line (&reader, lines[i], i + 1, error))
      return NULL;

  return g_steal_pointer (&sections);
}

GPtrArray *
wm_table_file_read (const char *path, GError **error)
{
  g_autoptr (GMappedFile) file = NULL;
  g_autoptr (GError) cause = NULL;
  g_autofree char *text = NULL;
  gsize length;

  file = g_mapped_file_new (path, FALSE, &cause);
  if (file == NULL)
    {
      g_set_error (error, WM_TRADE_ERROR, WM_TRADE_ERROR_UNREADABLE,
                   "%s: the table cannot be read (%s); check that it is there and that "
                   "you may read it",
                   path, cause->message);
      return NULL;
    }

  length = g_mapped_file_get_length (file);
  if (length > WM_TABLE_MAX_BYTES)
    {
      g_set_error (error, WM_TRADE_ERROR, WM_TRADE_ERROR_UNREADABLE,
                   "%s: %" G_GSIZE_FORMAT " bytes are too many for a table; if it is "
                   "another kind of file, take it out of the folder",
                   path, length);
      return NULL;
    }

  text =
      length == 0 ? g_strdup ("") : g_strndup (g_mapped_file_get_contents (file), length);
  return wm_table_file_parse (path, text, (gssize)length, error);
}
