/* test-table-file.c: the format of a table file, and what is said about mistakes
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/table-file.h"

#include <glib/gstdio.h>
#include <string.h>

static GPtrArray *
parse (const char *text, GError **error)
{
  return wm_table_file_parse ("shop.txt", text, -1, error);
}

static const WmTableEntry *
find (GPtrArray *sections, guint i, const char *field)
{
  return wm_table_section_find (g_ptr_array_index (sections, i), field);
}

static void
test_reads_all_forms (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) sections = parse ("\xEF\xBB\xBF# a comment\r\n"
                                          "\r\n"
                                          "[part clasp]\r\n"
                                          "name = Schloß = Verschluss  \r\n"
                                          "[ view   top ]\n"
                                          "name =\n"
                                          "   Top,\n"
                                          "   # a comment between\n"
                                          "\tfrom above\n"
                                          "\n"
                                          "other= x",
                                          &error);

  g_assert_no_error (error);
  g_assert_cmpuint (sections->len, ==, 2);
  g_assert_cmpstr (find (sections, 0, "name")->value, ==, "Schloß = Verschluss");
  g_assert_cmpuint (find (sections, 0, "name")->line, ==, 4);
  g_assert_cmpstr (((WmTableSection *)sections->pdata[1])->kind, ==, "view");
  g_assert_cmpstr (((WmTableSection *)sections->pdata[1])->key, ==, "top");
  g_assert_cmpstr (find (sections, 1, "name")->value, ==, "Top, from above");
  g_assert_cmpstr (find (sections, 1, "other")->value, ==, "x");
  g_assert_null (find (sections, 1, "none"));
}

static void
test_empty_file (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) sections = parse ("", &error);

  g_assert_no_error (error);
  g_assert_cmpuint (sections->len, ==, 0);
}

static void
test_mistakes_name_the_line (void)
{
  static const struct
  {
    const char *text;
    WmTradeError code;
    const char *start;
  } cases[] = {
    { "[part clasp\n", WM_TRADE_ERROR_BAD_ROW, "shop.txt:1: " },
    { "\n\n[part]\n", WM_TRADE_ERROR_BAD_ROW, "shop.txt:3: " },
    { "[part a b]\n", WM_TRADE_ERROR_BAD_ROW, "shop.txt:1: " },
    { "[part a-b]\n", WM_TRADE_ERROR_BAD_ROW, "shop.txt:1: " },
    { "[]\n", WM_TRADE_ERROR_BAD_ROW, "shop.txt:1: " },
    { "name = x\n", WM_TRADE_ERROR_BAD_ROW, "shop.txt:1: " },
    { "[part a]\nname\n", WM_TRADE_ERROR_BAD_ROW, "shop.txt:2: " },
    { "[part a]\n= x\n", WM_TRADE_ERROR_BAD_ROW, "shop.txt:2: " },
    { "[part a]\n  goes on\n", WM_TRADE_ERROR_BAD_ROW, "shop.txt:2: " },
    { "[part a]\nname = x\n\n  after a gap\n", WM_TRADE_ERROR_BAD_ROW, "shop.txt:4: " },
    { "[part a]\nname = x\nname = y\n", WM_TRADE_ERROR_DUPLICATE, "shop.txt:3: " },
    { "[part a]\nname = \xE4\n", WM_TRADE_ERROR_UNREADABLE, "shop.txt:2: " },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (GPtrArray) sections = parse (cases[i].text, &error);

      g_assert_null (sections);
      g_assert_error (error, WM_TRADE_ERROR, (int)cases[i].code);
      g_assert_true (g_str_has_prefix (error->message, cases[i].start));
    }
}

static void
test_nul_byte_refused (void)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (wm_table_file_parse ("shop.txt", "[part a]\nname = \0x\n", 19, &error));
  g_assert_error (error, WM_TRADE_ERROR, WM_TRADE_ERROR_UNREADABLE);
}

static void
test_missing_file (void)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (wm_table_file_read ("/nowhere/at all.txt", &error));
  g_assert_error (error, WM_TRADE_ERROR, WM_TRADE_ERROR_UNREADABLE);
  g_assert_nonnull (strstr (error->message, "/nowhere/at all.txt"));
}

static void
test_huge_file (void)
{
  g_autofree char *dir = g_dir_make_tmp ("wm-table-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (dir, "huge.txt", NULL);
  g_autofree char *text = g_strnfill (5 * 1024 * 1024, '#');
  g_autoptr (GError) error = NULL;

  g_assert_true (g_file_set_contents (path, text, -1, NULL));
  g_assert_null (wm_table_file_read (path, &error));
  g_assert_error (error, WM_TRADE_ERROR, WM_TRADE_ERROR_UNREADABLE);
  g_assert_cmpint (g_unlink (path), ==, 0);
  g_assert_cmpint (g_rmdir (dir), ==, 0);
}

/* Whatever bytes a file has, reading it ends in sections or in an error. */
static void
test_random_bytes (void)
{
  static const char pieces[][12] = { "[",    "]", "[part a]", "\n", " ",    "=",
                                     "name", "#", "\t",       "\r", "\xC3", "\xA9" };
  guint n_read = 0;
  guint n_refused = 0;

  for (guint i = 0; i < 4000; i++)
    {
      g_autoptr (GString) text = g_string_new (NULL);
      g_autoptr (GPtrArray) sections = NULL;
      g_autoptr (GError) error = NULL;
      int n = g_test_rand_int_range (0, 24);

      for (int j = 0; j < n; j++)
        g_string_append (text, pieces[g_test_rand_int_range (0, G_N_ELEMENTS (pieces))]);

      sections = wm_table_file_parse ("x", text->str, (gssize)text->len, &error);
      g_assert_true ((sections == NULL) == (error != NULL));
      *(sections == NULL ? &n_refused : &n_read) += 1;
    }
  g_assert_cmpuint (n_read, >, 0);
  g_assert_cmpuint (n_refused, >, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/table-file/forms", test_reads_all_forms);
  g_test_add_func ("/trade/table-file/empty", test_empty_file);
  g_test_add_func ("/trade/table-file/mistakes", test_mistakes_name_the_line);
  g_test_add_func ("/trade/table-file/nul-byte", test_nul_byte_refused);
  g_test_add_func ("/trade/table-file/missing", test_missing_file);
  g_test_add_func ("/trade/table-file/huge", test_huge_file);
  g_test_add_func ("/trade/table-file/random", test_random_bytes);
  return g_test_run ();
}
