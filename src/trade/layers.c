/* layers.c: the shipped tables and the shop's own, put together
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/layers.h"

#include <string.h>

/* Ours: checklists/ and blocks/ are one level down; more would be a loop of
 * links or another folder by mistake. */
#define WM_TABLES_MAX_DEPTH 3

static int
compare_paths (gconstpointer a, gconstpointer b)
{
  return strcmp (*(const char *const *) a, *(const char *const *) b);
}

/* All *.txt below @dir. A folder that cannot be opened has none. */
static void
list_files (const char *dir, guint depth, GPtrArray *paths)
{
  g_autoptr (GDir) folder = g_dir_open (dir, 0, NULL);
  const char *name;

  while (folder != NULL && (name = g_dir_read_name (folder)) != NULL)
    {
      g_autofree char *path = g_build_filename (dir, name, NULL);

      if (name[0] == '.')
        continue;
      if (g_file_test (path, G_FILE_TEST_IS_DIR))
        {
          if (depth < WM_TABLES_MAX_DEPTH)
            list_files (path, depth + 1, paths);
        }
      else if (g_str_has_suffix (name, ".txt"))
        g_ptr_array_add (paths, g_steal_pointer (&path));
    }
}

static char *
section_name (const WmTableSection *section)
{
  return g_strdup_printf ("%s %s", section->kind, section->key);
}

/* Adds the sections of one file; the same section twice in one layer is a mistake. */
static gboolean
add_sections (GPtrArray *sections, GHashTable *seen, GPtrArray *from, GError **error)
{
  for (guint i = 0; i < from->len; i++)
    {
      const WmTableSection *section = g_ptr_array_index (from, i);
      g_autofree char *name = section_name (section);
      const WmTableSection *first = g_hash_table_lookup (seen, name);
      WmTableSection *copy;

      if (first != NULL)
        {
          g_set_error (error, WM_TRADE_ERROR, WM_TRADE_ERROR_DUPLICATE,
                       "%s:%u: [%s] is already at %s:%u; give one of them another key",
                       section->file, section->line, name, first->file, first->line);
          return FALSE;
        }
      copy = wm_table_section_copy (section);
      g_ptr_array_add (sections, copy);
      g_hash_table_insert (seen, g_steal_pointer (&name), copy);
    }
  return TRUE;
}

static GPtrArray *
read_shipped (const char *dir, GError **error)
{
  g_autoptr (GPtrArray) sections
    = g_ptr_array_new_with_free_func ((GDestroyNotify) wm_table_section_free);
  g_autoptr (GHashTable) seen
    = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (GPtrArray) paths = wm_layers_find_files (dir);

  if (paths->len == 0)
    {
      g_set_error (error, WM_TRADE_ERROR, WM_TRADE_ERROR_NO_TABLES,
                   "%s: no tables (*.txt) are here; install the program again, or "
                   "name their folder in WEARMARK_TABLES",
                   dir);
      return NULL;
    }

  for (guint i = 0; i < paths->len; i++)
    {
      g_autoptr (GPtrArray) from
        = wm_table_file_read (g_ptr_array_index (paths, i), error);

      if (from == NULL || !add_sections (sections, seen, from, error))
        return NULL;
    }
  return g_steal_pointer (&sections);
}

/* The shop's sections over the shipped ones, as a new array. */
static GPtrArray *
lay_over (GPtrArray *shipped, GPtrArray *shop_files)
{
  GPtrArray *sections
    = g_ptr_array_new_with_free_func ((GDestroyNotify) wm_table_section_free);
  g_autoptr (GHashTable) by_name
    = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (guint i = 0; i < shipped->len; i++)
    {
      WmTableSection *copy = wm_table_section_copy (g_ptr_array_index (shipped, i));

      g_ptr_array_add (sections, copy);
      g_hash_table_insert (by_name, section_name (copy), copy);
    }

  for (guint i = 0; i < shop_files->len; i++)
    {
      GPtrArray *file = g_ptr_array_index (shop_files, i);

      for (guint j = 0; j < file->len; j++)
        {
          const WmTableSection *section = g_ptr_array_index (file, j);
          g_autofree char *name = section_name (section);
          WmTableSection *under = g_hash_table_lookup (by_name, name);

          if (under == NULL)
            {
              under = wm_table_section_copy (section);
              g_ptr_array_add (sections, under);
              g_hash_table_insert (by_name, g_steal_pointer (&name), under);
            }
          else
            wm_table_section_merge (under, section);
        }
    }
  return sections;
}

static void
tell_problem (GPtrArray *problems, const GError *cause)
{
  g_ptr_array_add (problems,
                   g_strdup_printf ("%s. This file of the shop's tables was left out; "
                                    "everything else is used.",
                                    cause->message));
}

/* Every file of the shop that can be read and repeats no section. */
static GPtrArray *
read_shop (const char *dir, GPtrArray *problems)
{
  GPtrArray *files = g_ptr_array_new_with_free_func ((GDestroyNotify) g_ptr_array_unref);
  g_autoptr (GPtrArray) sections
    = g_ptr_array_new_with_free_func ((GDestroyNotify) wm_table_section_free);
  g_autoptr (GHashTable) seen
    = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (GPtrArray) paths = wm_layers_find_files (dir);

  for (guint i = 0; i < paths->len; i++)
    {
      g_autoptr (GError) cause = NULL;
      g_autoptr (GPtrArray) from
        = wm_table_file_read (g_ptr_array_index (paths, i), &cause);

      if (from == NULL || !add_sections (sections, seen, from, &cause))
        tell_problem (problems, cause);
      else if (from->len > 0)
        g_ptr_array_add (files, g_steal_pointer (&from));
    }
  return files;
}

static gboolean
is_file_at (GPtrArray *file, const char *path)
{
  const WmTableSection *first = g_ptr_array_index (file, 0);

  return strcmp (first->file, path) == 0;
}

WmRows *
wm_layers_load (const char *dir, const char *shop_dir, GPtrArray *problems,
                GError **error)
{
  g_autoptr (GPtrArray) shipped = read_shipped (dir, error);
  g_autoptr (GPtrArray) shop = NULL;

  if (shipped == NULL)
    return NULL;

  shop = shop_dir == NULL
           ? g_ptr_array_new_with_free_func ((GDestroyNotify) g_ptr_array_unref)
           : read_shop (shop_dir, problems);

  /* Each turn either succeeds or leaves one of the shop's files out. */
  while (TRUE)
    {
      g_autoptr (GPtrArray) sections = lay_over (shipped, shop);
      g_autoptr (GError) cause = NULL;
      WmRowPlace place = { NULL, 0 };
      WmRows *rows = wm_rows_build (sections, &place, &cause);
      guint n_before = shop->len;

      if (rows != NULL)
        return rows;

      for (guint i = shop->len; i > 0; i--)
        if (is_file_at (g_ptr_array_index (shop, i - 1), place.file))
          g_ptr_array_remove_index (shop, i - 1);

      if (shop->len == n_before)
        {
          g_propagate_error (error, g_steal_pointer (&cause));
          return NULL;
        }
      tell_problem (problems, cause);
    }
}

GPtrArray *
wm_layers_find_files (const char *dir)
{
  GPtrArray *paths = g_ptr_array_new_with_free_func (g_free);

  list_files (dir, 0, paths);
  g_ptr_array_sort (paths, compare_paths);
  return paths;
}
