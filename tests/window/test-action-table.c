/* test-action-table.c: every action has a key, and no two keys clash
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/action-table.h"

#include "archive/archive-error.h"
#include "window/problem.h"

typedef struct
{
  guint keyval;
  GdkModifierType modifiers;
  const WmActionRow *row;
} Key;

static GArray *
list_keys (void)
{
  GArray *keys = g_array_new (FALSE, FALSE, sizeof (Key));
  guint n_rows;
  const WmActionRow *rows = wm_action_table (&n_rows);

  for (guint i = 0; i < n_rows; i++)
    {
      g_auto (GStrv) words = g_strsplit (rows[i].keys, " ", -1);

      g_assert_cmpuint (g_strv_length (words), >, 0);
      for (guint k = 0; words[k] != NULL; k++)
        {
          Key key = { 0, 0, &rows[i] };

          g_test_message ("%s: %s", rows[i].name, words[k]);
          g_assert_true (gtk_accelerator_parse (words[k], &key.keyval, &key.modifiers));
          g_assert_cmpuint (key.keyval, !=, 0);
          g_array_append_val (keys, key);
        }
    }

  return keys;
}

static void
test_keys_do_not_clash (void)
{
  g_autoptr (GArray) keys = list_keys ();

  g_assert_cmpuint (keys->len, >, 20);
  for (guint i = 0; i < keys->len; i++)
    for (guint j = i + 1; j < keys->len; j++)
      {
        Key *a = &g_array_index (keys, Key, i), *b = &g_array_index (keys, Key, j);

        if (a->keyval != b->keyval || a->modifiers != b->modifiers
            || !wm_action_places_meet (a->row->places, b->row->places))
          continue;
        g_test_message ("%s and %s", a->row->name, b->row->name);
        g_test_fail ();
      }
}

/* A plain letter of the window would never reach an entry. */
static void
test_window_keys_leave_typing_alone (void)
{
  g_autoptr (GArray) keys = list_keys ();

  for (guint i = 0; i < keys->len; i++)
    {
      Key *key = &g_array_index (keys, Key, i);
      gboolean is_function = key->keyval >= GDK_KEY_F1 && key->keyval <= GDK_KEY_F35;

      if ((key->row->places & WM_PLACE_WINDOW) == 0)
        continue;
      g_test_message ("%s", key->row->name);
      g_assert_true (is_function
                     || (key->modifiers & (GDK_CONTROL_MASK | GDK_ALT_MASK)) != 0);
    }
}

static void
test_rows_are_whole (void)
{
  guint n_rows;
  const WmActionRow *rows = wm_action_table (&n_rows);

  for (guint i = 0; i < n_rows; i++)
    {
      g_autofree char *name = NULL;
      g_autoptr (GVariant) target = NULL;

      g_test_message ("%s", rows[i].name);
      g_assert_true (g_action_parse_detailed_name (rows[i].name, &name, &target, NULL));
      g_assert_nonnull (rows[i].label);
      g_assert_cmpint (rows[i].group, <, WM_N_GROUPS);
      g_assert_cmpint (rows[i].menu, <, WM_N_MENUS);
      g_assert_cmpuint (rows[i].places, !=, 0);
      g_assert_true (wm_action_find (rows[i].name) == &rows[i]);
    }
}

/* Every code of the archive has its own words; anything else gets the last row. */
static void
test_problems (void)
{
  guint n_rows;
  const WmProblemWords *rows = wm_problem_table (&n_rows);
  g_autoptr (GError) other = g_error_new_literal (G_FILE_ERROR, G_FILE_ERROR_IO, "other");

  g_assert_cmpuint (n_rows, ==, WM_ARCHIVE_ERROR_IO + 1);
  for (int code = 0; code <= WM_ARCHIVE_ERROR_IO; code++)
    {
      g_autoptr (GError) error = g_error_new_literal (WM_ARCHIVE_ERROR, code, "x");
      const WmProblemWords *words = wm_problem_words (error);
      g_autofree char *line = wm_problem_line (error);

      g_assert_cmpint (words->code, ==, code);
      g_assert_true (g_str_has_prefix (line, words->sentence));
      g_assert_true (g_str_has_suffix (line, words->next_step));
    }
  g_assert_true (wm_problem_words (other) == &rows[n_rows - 1]);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/window/action/keys-do-not-clash", test_keys_do_not_clash);
  g_test_add_func ("/window/action/typing-left-alone",
                   test_window_keys_leave_typing_alone);
  g_test_add_func ("/window/action/rows-are-whole", test_rows_are_whole);
  g_test_add_func ("/window/problem/every-code", test_problems);

  return g_test_run ();
}
