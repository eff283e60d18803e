/* test-table-strings.c: translators see every text of the tables
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/table-strings.h"

#include <glib/gi18n.h>
#include <glib/gstdio.h>
#include <locale.h>
#include <string.h>

#include "trade/trade.h"

static void
test_list_is_fresh (void)
{
  g_autofree char *path =
      g_build_filename (g_getenv ("WM_SOURCE_DIR"), "po", "table-strings.h", NULL);
  g_autofree char *kept = NULL;
  g_autofree char *made = NULL;
  g_autoptr (GError) error = NULL;

  made = wm_table_strings_make (g_getenv ("WEARMARK_TABLES"), &error);
  g_assert_no_error (error);
  g_assert_true (g_file_get_contents (path, &kept, NULL, &error));
  g_assert_no_error (error);

  if (strcmp (kept, made) != 0)
    g_test_message ("po/table-strings.h is older than the tables: run \"meson compile "
                    "-C BUILD table-strings\"");
  g_assert_cmpint (strcmp (kept, made), ==, 0);
  g_assert_nonnull (strstr (made, "N_(\"Worn end ring\")"));
}

static void
test_quotes_are_kept (void)
{
  g_autofree char *dir = g_dir_make_tmp ("wm-strings-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (dir, "a.txt", NULL);
  g_autofree char *made = NULL;

  g_assert_true (g_file_set_contents (
      path, "[part a]\nname = a \"b\" \\ c\n[part b]\nname = a \"b\" \\ c\n", -1, NULL));
  made = wm_table_strings_make (dir, NULL);
  g_assert_true (
      g_str_has_suffix (made, "/* a.txt, part a: name */\nN_(\"a \\\"b\\\" \\\\ c\")\n"));
  g_assert_cmpint (g_unlink (path), ==, 0);
  g_assert_cmpint (g_rmdir (dir), ==, 0);
}

/* German is complete: every sentence that a customer reads of a check has one. */
static void
test_german (void)
{
  g_autofree char *catalogues = g_build_filename (g_getenv ("WM_BUILD_DIR"), "po", NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (WmTrade) trade = wm_trade_new_with_shop (NULL, NULL, &error);
  const WmChecklistItem *const *items;
  guint n;

  g_assert_no_error (error);
  g_setenv ("LANGUAGE", "de", TRUE);
  g_assert_nonnull (setlocale (LC_ALL, ""));
  g_assert_nonnull (bindtextdomain (GETTEXT_PACKAGE, catalogues));
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);

  g_assert_cmpstr (wm_trade_text ("Worn end ring"), ==, "Abgenutzter Endring");
  items = wm_trade_list_items (trade, &n);
  for (guint i = 0; i < n; i++)
    {
      g_assert_cmpstr (wm_trade_text (items[i]->customer), !=, items[i]->customer);
      g_assert_cmpstr (wm_trade_text (items[i]->fault), !=, items[i]->fault);
      g_assert_cmpstr (wm_trade_text (items[i]->look), !=, items[i]->look);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/table-strings/fresh", test_list_is_fresh);
  g_test_add_func ("/trade/table-strings/quotes", test_quotes_are_kept);
  g_test_add_func ("/trade/table-strings/german", test_german);
  return g_test_run ();
}
