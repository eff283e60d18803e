/* language.c: texts in the customer's language
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "report/language.h"

#include <string.h>

#include "wearmark-config.h"

/* The MO format: GNU gettext manual, section "The Format of GNU MO Files". */
#define WM_MO_MAGIC 0x950412deu
#define WM_MO_HEADER_BYTES 28

struct _WmLanguage
{
  gatomicrefcount count;
  char *tag;
  GBytes *catalogue; /* holds the bytes that @texts points into; NULL: English */
  GHashTable *texts; /* original -> translation; plural forms separated by NUL */
};

static guint32
read_word (const guint8 *data, gsize at, gboolean swapped)
{
  guint32 word;

  memcpy (&word, data + at, sizeof word);
  return swapped ? GUINT32_SWAP_LE_BE (word) : word;
}

/* The string that the table entry at @at describes, or NULL if it does not lie inside
 * the file with its closing NUL. */
static const char *
read_entry (const guint8 *data, gsize size, gsize at, gboolean swapped)
{
  gsize length = read_word (data, at, swapped);
  gsize offset = read_word (data, at + 4, swapped);

  if (offset >= size || length >= size - offset || data[offset + length] != '\0')
    return NULL;
  return (const char *)data + offset;
}

/* Fills @texts; a catalogue that is not whole is not used at all. */
static gboolean
read_catalogue (GBytes *catalogue, GHashTable *texts)
{
  gsize size;
  const guint8 *data = g_bytes_get_data (catalogue, &size);
  gboolean swapped;
  gsize n;
  gsize originals;
  gsize translations;

  if (size < WM_MO_HEADER_BYTES)
    return FALSE;
  swapped = read_word (data, 0, FALSE) == GUINT32_SWAP_LE_BE (WM_MO_MAGIC);
  if (read_word (data, 0, swapped) != WM_MO_MAGIC)
    return FALSE;

  n = read_word (data, 8, swapped);
  originals = read_word (data, 12, swapped);
  translations = read_word (data, 16, swapped);
  if (n > size / 8 || originals > size - 8 * n || translations > size - 8 * n)
    return FALSE;

  for (gsize i = 0; i < n; i++)
    {
      const char *original = read_entry (data, size, originals + 8 * i, swapped);
      const char *translation = read_entry (data, size, translations + 8 * i, swapped);

      if (original == NULL || translation == NULL)
        return FALSE;
      /* A plural entry without its second form would be read past its end. */
      if (strlen (original) < read_word (data, originals + 8 * i, swapped)
          && strlen (translation) == read_word (data, translations + 8 * i, swapped))
        return FALSE;
      /* The empty original carries the catalogue's own header. */
      if (*original != '\0' && *translation != '\0'
          && g_utf8_validate (translation, -1, NULL))
        g_hash_table_insert (texts, (gpointer)original, (gpointer)translation);
    }
  return TRUE;
}

WmLanguage *
wm_language_new_from_bytes (const char *tag, GBytes *catalogue)
{
  WmLanguage *self = g_new0 (WmLanguage, 1);

  g_atomic_ref_count_init (&self->count);
  self->tag = g_strdup (tag != NULL && *tag != '\0' ? tag : "en");
  self->texts = g_hash_table_new (g_str_hash, g_str_equal);
  if (catalogue != NULL && read_catalogue (catalogue, self->texts))
    self->catalogue = g_bytes_ref (catalogue);
  else
    g_hash_table_remove_all (self->texts);
  return self;
}

/* A tag comes from a record: only letters, digits, and the two joining signs may
 * become part of a file name. */
static gboolean
is_tag (const char *tag)
{
  if (tag == NULL || *tag == '\0')
    return FALSE;
  for (; *tag != '\0'; tag++)
    if (!g_ascii_isalnum (*tag) && *tag != '-' && *tag != '_')
      return FALSE;
  return TRUE;
}

static GBytes *
map_catalogue (const char *name)
{
  const char *named = g_getenv ("WEARMARK_LOCALE_DIR");
  g_autofree char *path = g_build_filename (named != NULL ? named : WM_LOCALE_DIR, name,
                                            "LC_MESSAGES", "wearmark.mo", NULL);
  g_autoptr (GMappedFile) file = g_mapped_file_new (path, FALSE, NULL);

  return file != NULL ? g_mapped_file_get_bytes (file) : NULL;
}

WmLanguage *
wm_language_new (const char *tag)
{
  g_autoptr (GBytes) catalogue = NULL;

  if (is_tag (tag))
    {
      g_autofree char *name = g_strdelimit (g_strdup (tag), "-", '_');

      catalogue = map_catalogue (name);
      if (catalogue == NULL && strchr (name, '_') != NULL)
        {
          *strchr (name, '_') = '\0';
          catalogue = map_catalogue (name);
        }
    }
  return wm_language_new_from_bytes (tag, catalogue);
}

WmLanguage *
wm_language_ref (WmLanguage *self)
{
  g_atomic_ref_count_inc (&self->count);
  return self;
}

void
wm_language_unref (WmLanguage *self)
{
  if (!g_atomic_ref_count_dec (&self->count))
    return;
  g_hash_table_unref (self->texts);
  g_clear_pointer (&self->catalogue, g_bytes_unref);
  g_free (self->tag);
  g_free (self);
}

const char *
wm_language_get_tag (WmLanguage *self)
{
  return self->tag;
}

const char *
wm_say (WmLanguage *self, const char *text)
{
  const char *translation;

  if (text == NULL)
    return "";
  translation = g_hash_table_lookup (self->texts, text);
  return translation != NULL ? translation : text;
}

const char *
wm_say_n (WmLanguage *self, const char *one, const char *many, gint64 n)
{
  /* In an MO file the key of a plural entry is its first form, NUL, its second;
   * a C string comparison sees the first. */
  const char *translation = g_hash_table_lookup (self->texts, one);

  if (translation == NULL)
    return n == 1 ? one : many;
  return n == 1 ? translation : translation + strlen (translation) + 1;
}
