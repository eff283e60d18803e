/* test-shop-tables.c: the shop's own tables over the shipped ones
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/trade.h"

#include <glib/gstdio.h>
#include <string.h>

typedef struct
{
  char *dir;
  GPtrArray *paths;
} Shop;

static void
set_up (Shop *shop, gconstpointer unused)
{
  shop->dir = g_dir_make_tmp ("wm-shop-XXXXXX", NULL);
  shop->paths = g_ptr_array_new_with_free_func (g_free);
}

static void
tear_down (Shop *shop, gconstpointer unused)
{
  for (guint i = 0; i < shop->paths->len; i++)
    g_unlink (g_ptr_array_index (shop->paths, i));
  g_assert_cmpint (g_rmdir (shop->dir), ==, 0);
  g_ptr_array_unref (shop->paths);
  g_free (shop->dir);
}

static void
write_file (Shop *shop, const char *name, const char *text)
{
  char *path = g_build_filename (shop->dir, name, NULL);

  g_assert_true (g_file_set_contents (path, text, -1, NULL));
  g_ptr_array_add (shop->paths, path);
}

static WmTrade *
load (Shop *shop)
{
  g_autoptr (GError) error = NULL;
  WmTrade *trade = wm_trade_new_with_shop (NULL, shop->dir, &error);

  g_assert_no_error (error);
  return trade;
}

#define OWN_CHECK                                                                        \
  "[check my01]\npart = shank\nname = Our own point\nfault = Our own fault\n"            \
  "look = Look here\ncustomer = It was so\nlevel = watch\nleft = LK\n"                   \
  "remedies = note_only\nsources = P\n"

static void
test_override_keeps_the_rest (Shop *shop, gconstpointer unused)
{
  g_autoptr (WmTrade) trade = NULL;
  g_autoptr (WmTrade) plain = wm_trade_new_with_shop (NULL, NULL, NULL);
  const WmChecklistItem *item;

  write_file (
      shop, "mine.txt",
      "[check bx08]\nfault = Endring abgenutzt\n[metal au750y]\nsolidus_c = 870\n");
  trade = load (shop);
  item = wm_trade_find_item (trade, "bx08");

  g_assert_null (wm_trade_get_problems (trade)[0]);
  g_assert_cmpstr (item->fault, ==, "Endring abgenutzt");
  g_assert_cmpstr (item->name, ==, wm_trade_find_item (plain, "bx08")->name);
  g_assert_cmpstr (wm_trade_find_item (plain, "bx08")->fault, ==, "Worn end ring");
  g_assert_cmpfloat (wm_trade_find_metal (trade, "au750y")->solidus_c.low, ==, 870.0);
}

static void
test_add_check_and_type (Shop *shop, gconstpointer unused)
{
  g_autoptr (WmTrade) trade = NULL;
  const WmPieceType *ring;
  guint n_before = 0;
  guint n_types;
  g_autoptr (WmTrade) plain = wm_trade_new_with_shop (NULL, NULL, NULL);

  write_file (shop, "a.txt", OWN_CHECK "[type ring_claw]\nadd = my01\n");
  write_file (
      shop, "b.txt",
      "[type tiara]\nname = Tiara\nyour = Your tiara\n"
      "icon = wm-brooch-symbolic\nviews = front back\nchecks = SET_RIM my01 ri01\n"
      "months_daily = 6\nmonths_often = 6 to 12\nmonths_seldom = 24\nsources = P\n");
  trade = load (shop);
  g_assert_null (wm_trade_get_problems (trade)[0]);

  n_before = wm_trade_find_piece_type (plain, "ring_claw")->n_items;
  ring = wm_trade_find_piece_type (trade, "ring_claw");
  g_assert_cmpuint (ring->n_items, ==, n_before + 1);

  /* Added behind the last check of its part, not at the end of the sheet. */
  for (guint i = 0; i < ring->n_items; i++)
    if (strcmp (ring->items[i]->key, "my01") == 0)
      {
        g_assert_cmpstr (ring->items[i - 1]->part, ==, "shank");
        g_assert_cmpuint (i, <, ring->n_items - 1);
      }

  wm_trade_list_piece_types (trade, &n_types);
  g_assert_cmpuint (n_types, ==, 11);
  /* ri01 comes with its block and again by itself: once on the sheet. */
  g_assert_cmpuint (wm_trade_find_piece_type (trade, "tiara")->n_items, ==, 6);
}

static void
test_broken_file_is_left_out (Shop *shop, gconstpointer unused)
{
  g_autoptr (WmTrade) trade = NULL;
  const char *problem;

  write_file (shop, "bad.txt", "[check bx08]\nfault = Not used\nleft = XX\n");
  write_file (shop, "good.txt", "[check bx01]\nfault = Used\n");
  trade = load (shop);
  problem = wm_trade_get_problems (trade)[0];

  g_assert_nonnull (problem);
  g_assert_nonnull (strstr (problem, "bad.txt:3: "));
  g_assert_nonnull (strstr (problem, "XX"));
  g_assert_null (wm_trade_get_problems (trade)[1]);
  g_assert_cmpstr (wm_trade_find_item (trade, "bx08")->fault, ==, "Worn end ring");
  g_assert_cmpstr (wm_trade_find_item (trade, "bx01")->fault, ==, "Used");
}

static void
test_each_mistake (Shop *shop, gconstpointer unused)
{
  static const struct
  {
    const char *text;
    const char *where;
    const char *word;
  } cases[] = {
    { "[czech x]\nname = y\n", "own.txt:1: ", "czech" },
    { "[part x]\ncolour = red\nname = y\n", "own.txt:2: ", "colour" },
    { "[part x]\n", "own.txt:1: ", "name" },
    { "[part x]\nname =\n", "own.txt:2: ", "name" },
    { "[check bx08]\nlevel = awful\n", "own.txt:2: ", "no_wear" },
    { "[check bx08]\nwatch_if = under 3\n", "own.txt:2: ", "below" },
    { "[metal au750y]\ndensity = heavy\n", "own.txt:2: ", "heavy" },
    { "[metal au750y]\ndensity = 15 to 14\n", "own.txt:2: ", "15 to 14" },
    { "[metal au750y]\ndensity = 1e999\n", "own.txt:2: ", "1e999" },
    { "[metal au750y]\ndensity = 0x10\n", "own.txt:2: ", "0x10" },
    { "[stone ruby]\nheat = maybe\n", "own.txt:2: ", "never" },
    { "[metal au750y]\npure = perhaps\n", "own.txt:2: ", "yes or no" },
    { "[type ring_claw]\nchecks = SET_CLAW nn99\n", "own.txt:2: ", "nn99" },
    { "[check bx08]\nrule = remaining half\n", "own.txt:2: ", "one key" },
    { "[part x]\nname = a\n[part x]\nname = b\n", "own.txt:3: ", "own.txt:1" },
    { "rubbish\n", "own.txt:1: ", "comment" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (WmTrade) trade = NULL;
      const char *problem;

      write_file (shop, "own.txt", cases[i].text);
      trade = load (shop);
      problem = wm_trade_get_problems (trade)[0];
      g_assert_nonnull (problem);
      g_test_message ("%s", problem);
      g_assert_nonnull (strstr (problem, cases[i].where));
      g_assert_nonnull (strstr (problem, cases[i].word));
      g_assert_cmpstr (wm_trade_find_item (trade, "bx08")->fault, ==, "Worn end ring");
    }
}

/* A shop's file that only another broken file of the shop made possible goes too. */
static void
test_dependent_files_go_together (Shop *shop, gconstpointer unused)
{
  g_autoptr (WmTrade) trade = NULL;

  write_file (shop, "a.txt", OWN_CHECK "colour = red\n");
  write_file (shop, "b.txt", "[type ring_claw]\nadd = my01\n");
  trade = load (shop);

  g_assert_nonnull (strstr (wm_trade_get_problems (trade)[0], "a.txt"));
  g_assert_nonnull (strstr (wm_trade_get_problems (trade)[1], "b.txt"));
  g_assert_null (wm_trade_get_problems (trade)[2]);
  g_assert_nonnull (wm_trade_find_piece_type (trade, "ring_claw"));
}

static void
test_other_files_are_ignored (Shop *shop, gconstpointer unused)
{
  g_autoptr (WmTrade) trade = NULL;

  write_file (shop, "notes.odt", "not a table");
  write_file (shop, ".hidden.txt", "not a table");
  trade = load (shop);
  g_assert_null (wm_trade_get_problems (trade)[0]);
}

static void
test_shipped_mistake_is_an_error (Shop *shop, gconstpointer unused)
{
  static const struct
  {
    const char *text;
    WmTradeError code;
  } cases[] = {
    { "rubbish\n", WM_TRADE_ERROR_BAD_ROW },
    { "[czech x]\n", WM_TRADE_ERROR_UNKNOWN_KIND },
    { "[part x]\nname = a\ncolour = b\n", WM_TRADE_ERROR_UNKNOWN_FIELD },
    { "[part x]\n", WM_TRADE_ERROR_MISSING_FIELD },
    { "[wire x]\nmm = thin\nsources = C\n", WM_TRADE_ERROR_BAD_VALUE },
    { "[part x]\nname = a\n[part x]\nname = b\n", WM_TRADE_ERROR_DUPLICATE },
    { "[wire x]\nmm = 1\nsources = C\n", WM_TRADE_ERROR_UNKNOWN_REFERENCE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;

      write_file (shop, "table.txt", cases[i].text);
      g_assert_null (wm_trade_new_with_shop (shop->dir, NULL, &error));
      g_assert_error (error, WM_TRADE_ERROR, (int)cases[i].code);
      g_assert_nonnull (strstr (error->message, "table.txt:"));
    }
}

static void
test_no_tables (Shop *shop, gconstpointer unused)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (wm_trade_new_with_shop (shop->dir, NULL, &error));
  g_assert_error (error, WM_TRADE_ERROR, WM_TRADE_ERROR_NO_TABLES);
  g_clear_error (&error);
  g_assert_null (wm_trade_new_with_shop ("/nowhere/tables", NULL, &error));
  g_assert_error (error, WM_TRADE_ERROR, WM_TRADE_ERROR_NO_TABLES);
  g_assert_nonnull (strstr (error->message, "/nowhere/tables"));
}

static void
test_missing_shop_folder (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (WmTrade) trade = wm_trade_new_with_shop (NULL, "/nowhere/shop", &error);

  g_assert_no_error (error);
  g_assert_null (wm_trade_get_problems (trade)[0]);
}

/* The user's data folder by the XDG base directory specification. */
static void
test_users_folder (Shop *shop, gconstpointer unused)
{
  g_autofree char *program = g_build_filename (shop->dir, "wearmark", NULL);
  g_autofree char *tables = g_build_filename (program, "tables", NULL);
  g_autofree char *path = g_build_filename (tables, "mine.txt", NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (WmTrade) trade = NULL;
  g_autoptr (WmTrade) second = NULL;

  /* Read once by GLib: this test has to be the first that asks for it. */
  g_setenv ("XDG_DATA_HOME", shop->dir, TRUE);
  g_assert_cmpint (g_mkdir_with_parents (tables, 0700), ==, 0);
  g_assert_true (g_file_set_contents (path, "[check bx08]\nfault = Mine\n", -1, NULL));
  trade = wm_trade_new (NULL, &error);
  g_assert_no_error (error);
  second = wm_trade_ref (trade);
  g_assert_cmpstr (wm_trade_find_item (second, "bx08")->fault, ==, "Mine");
  g_assert_cmpint (g_unlink (path), ==, 0);
  g_assert_cmpint (g_rmdir (tables), ==, 0);
  g_assert_cmpint (g_rmdir (program), ==, 0);
}

#define ADD(path, func) g_test_add (path, Shop, NULL, set_up, func, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("/trade/shop/users-folder", test_users_folder);
  ADD ("/trade/shop/override", test_override_keeps_the_rest);
  ADD ("/trade/shop/add", test_add_check_and_type);
  ADD ("/trade/shop/broken-file", test_broken_file_is_left_out);
  ADD ("/trade/shop/each-mistake", test_each_mistake);
  ADD ("/trade/shop/dependent-files", test_dependent_files_go_together);
  ADD ("/trade/shop/other-files", test_other_files_are_ignored);
  ADD ("/trade/shop/shipped-mistake", test_shipped_mistake_is_an_error);
  ADD ("/trade/shop/no-tables", test_no_tables);
  g_test_add_func ("/trade/shop/missing-folder", test_missing_shop_folder);
  return g_test_run ();
}
