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
  return strcmp (*(const char *const *)a, *(const char *const *)b);
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
  return g_strconcat (section->kind, " ", section->key, NULL);
}

/* Enters the sections of one file; the same section twice in one layer is a mistake. */
static gboolean
enter_sections (GHashTable *seen, GPtrArray *from, GError **error)
{
  for (guint i = 0; i < from->len; i++)
    {
      WmTableSection *section = g_ptr_array_index (from, i);
      g_autofree char *name = section_name (section);
      const WmTableSection *first = g_hash_table_lookup (seen, name);

      if (first != NULL)
        {
          g_set_error (error, WM_TRADE_ERROR, WM_TRADE_ERROR_DUPLICATE,
                       "%s:%u: [%s] is already at %s:%u; give one of them another key",
                       section->file, section->line, name, first->file, first->line);
          return FALSE;
        }
      g_hash_table_insert (seen, g_steal_pointer (&name), section);
    }
  return TRUE;
}

static GPtrArray *
read_shipped (const char *dir, GError **error)
{
  g_autoptr (GPtrArray) sections =
      g_ptr_array_new_with_free_func ((GDestroyNotify)wm_table_section_free);
  g_autoptr (GHashTable) seen =
      g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
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
      g_autoptr (GPtrArray) from =
          wm_table_file_read (g_ptr_array_index (paths, i), error);

      if (from == NULL || !enter_sections (seen, from, error))
        return NULL;
      g_ptr_array_extend_and_steal (sections, g_steal_pointer (&from));
    }
  return g_steal_pointer (&sections);
}

/* Lays one section of the shop over the others; what has to change is copied
 * first, and the copy kept in @owned. */
static void
lay_section (GPtrArray *sections, GHashTable *places, GPtrArray *owned,
             WmTableSection *section)
{
  g_autofree char *name = section_name (section);
  gpointer place;
  WmTableSection *copy;

  if (!g_hash_table_lookup_extended (places, name, NULL, &place))
    {
      g_hash_table_insert (places, g_steal_pointer (&name),
                           GUINT_TO_POINTER (sections->len));
      g_ptr_array_add (sections, section);
      return;
    }

  copy = wm_table_section_copy (g_ptr_array_index (sections, GPOINTER_TO_UINT (place)));
  wm_table_section_merge (copy, section);
  g_ptr_array_index (sections, GPOINTER_TO_UINT (place)) = copy;
  g_ptr_array_add (owned, copy);
}

/* The shop's sections over the shipped ones: a new array that owns nothing. */
static GPtrArray *
lay_over (GPtrArray *shipped, GPtrArray *shop_files, GPtrArray *owned)
{
  GPtrArray *sections = g_ptr_array_new ();
  g_autoptr (GHashTable) places =
      g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (guint i = 0; i < shipped->len; i++)
    {
      g_ptr_array_add (sections, g_ptr_array_index (shipped, i));
      if (shop_files->len > 0)
        g_hash_table_insert (places, section_name (g_ptr_array_index (shipped, i)),
                             GUINT_TO_POINTER (i));
    }

  for (guint i = 0; i < shop_files->len; i++)
    {
      GPtrArray *file = g_ptr_array_index (shop_files, i);

      for (guint j = 0; j < file->len; j++)
        lay_section (sections, places, owned, g_ptr_array_index (file, j));
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

static gboolean
is_section_of (gpointer name, gpointer section, gpointer file)
{
  return g_ptr_array_find (file, section, NULL);
}

/* Every file of the shop that can be read and repeats no section. */
static GPtrArray *
read_shop (const char *dir, GPtrArray *problems)
{
  GPtrArray *files = g_ptr_array_new_with_free_func ((GDestroyNotify)g_ptr_array_unref);
  g_autoptr (GHashTable) seen =
      g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (GPtrArray) paths = wm_layers_find_files (dir);

  for (guint i = 0; i < paths->len; i++)
    {
      g_autoptr (GError) cause = NULL;
      g_autoptr (GPtrArray) from =
          wm_table_file_read (g_ptr_array_index (paths, i), &cause);

      if (from == NULL || !enter_sections (seen, from, &cause))
        {
          if (from != NULL)
            g_hash_table_foreach_remove (seen, is_section_of, from);
          tell_problem (problems, cause);
        }
      else if (from->len > 0)
        g_ptr_array_add (files, g_steal_pointer (&from));
    }
  return files;
}

/* At most one of the shop's files has this path. */
static gboolean
leave_out (GPtrArray *shop_files, const char *path)
{
  for (guint i = 0; i < shop_files->len; i++)
    {
      GPtrArray *file = g_ptr_array_index (shop_files, i);
      const WmTableSection *first = g_ptr_array_index (file, 0);

      if (strcmp (first->file, path) == 0)
        {
          g_ptr_array_remove_index (shop_files, i);
          return TRUE;
        }
    }
  return FALSE;
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
             ? g_ptr_array_new_with_free_func ((GDestroyNotify)g_ptr_array_unref)
             : read_shop (shop_dir, problems);

  /* Each turn either succeeds or leaves one of the shop's files out. */
  while (TRUE)
    {
      g_autoptr (GPtrArray) owned =
          g_ptr_array_new_with_free_func ((GDestroyNotify)wm_table_section_free);
      g_autoptr (GPtrArray) sections = lay_over (shipped, shop, owned);
      g_autoptr (GError) cause = NULL;
      WmRowPlace place = { NULL, 0 };
      WmRows *rows = wm_rows_build (sections, &place, &cause);

      if (rows != NULL)
        return rows;

      if (!leave_out (shop, place.file))
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
