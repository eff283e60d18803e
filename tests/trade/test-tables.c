/* test-tables.c: the shipped checklists are whole
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/trade.h"

#include <math.h>
#include <string.h>

static WmTrade *trade;

static const char *const type_keys[] = {
  "line_bracelet", "ring_claw", "pendant_chain",  "earrings",  "brooch",
  "bangle",        "strand",    "watch_bracelet", "cufflinks", "locket"
};

static void
test_types (void)
{
  guint n;

  wm_trade_list_piece_types (trade, &n);
  g_assert_cmpuint (n, ==, G_N_ELEMENTS (type_keys));

  for (gsize i = 0; i < G_N_ELEMENTS (type_keys); i++)
    {
      const WmPieceType *type = wm_trade_find_piece_type (trade, type_keys[i]);

      g_assert_nonnull (type);
      g_assert_cmpuint (type->n_items, >=, 8);
      g_assert_cmpuint (type->n_items, <=, 20);
      g_assert_null (type->items[type->n_items]);
      g_assert_cmpuint (g_strv_length ((char **)type->views), >=, 6);
      for (guint j = 0; type->views[j] != NULL; j++)
        g_assert_nonnull (wm_trade_find_view (trade, type->views[j])->name);
      for (guint j = 0; type->also[j] != NULL; j++)
        g_assert_cmpuint (wm_trade_find_block (trade, type->also[j])->n_items, >, 0);
    }
}

/* Every check stands in the sheet once, under one heading for each part. */
static void
test_items_are_grouped (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (type_keys); i++)
    {
      const WmPieceType *type = wm_trade_find_piece_type (trade, type_keys[i]);
      g_autoptr (GHashTable) parts = g_hash_table_new (g_str_hash, g_str_equal);
      g_autoptr (GHashTable) keys = g_hash_table_new (g_str_hash, g_str_equal);
      const char *part = "";

      for (guint j = 0; j < type->n_items; j++)
        {
          const WmChecklistItem *item = type->items[j];

          g_assert_true (g_hash_table_add (keys, (gpointer)item->key));
          if (strcmp (part, item->part) != 0)
            g_assert_true (g_hash_table_add (parts, (gpointer)item->part));
          part = item->part;
        }
      g_assert_cmpuint (g_hash_table_size (parts), >=, 2);
    }
}

static void
assert_text (const char *text)
{
  g_assert_nonnull (text);
  g_assert_cmpuint (strlen (text), >, 2);
  g_assert_false (g_ascii_isspace (text[0]));
}

static void
test_items_are_whole (void)
{
  guint n;
  const WmChecklistItem *const *items = wm_trade_list_items (trade, &n);

  g_assert_cmpuint (n, >, 150);
  for (guint i = 0; i < n; i++)
    {
      const WmChecklistItem *item = items[i];

      assert_text (item->name);
      assert_text (item->fault);
      assert_text (item->look);
      assert_text (item->customer);
      assert_text (item->threshold);
      g_assert_false (g_str_has_suffix (item->customer, "."));
      g_assert_nonnull (wm_trade_find_part (trade, item->part));
      g_assert_nonnull (item->left[0]);
      g_assert_nonnull (item->remedies[0]);
      g_assert_nonnull (item->sources[0]);
      for (guint j = 0; item->left[j] != NULL; j++)
        assert_text (wm_trade_find_consequence (trade, item->left[j])->customer);
      for (guint j = 0; item->remedies[j] != NULL; j++)
        assert_text (wm_trade_find_remedy (trade, item->remedies[j])->done);
      for (guint j = 0; item->tests[j] != NULL; j++)
        assert_text (wm_trade_find_test (trade, item->tests[j])->customer);
      for (guint j = 0; item->ways[j] != NULL; j++)
        assert_text (wm_trade_find_way (trade, item->ways[j])->how);
      for (guint j = 0; item->sources[j] != NULL; j++)
        assert_text (wm_trade_find_source (trade, item->sources[j])->words);
    }
}

/* A check that no sheet and no "also look at" names could never be answered. */
static void
test_no_item_is_forgotten (void)
{
  g_autoptr (GHashTable) reached = g_hash_table_new (g_str_hash, g_str_equal);
  guint n;
  const WmChecklistItem *const *items = wm_trade_list_items (trade, &n);

  for (gsize i = 0; i < G_N_ELEMENTS (type_keys); i++)
    {
      const WmPieceType *type = wm_trade_find_piece_type (trade, type_keys[i]);

      for (guint j = 0; j < type->n_items; j++)
        g_hash_table_add (reached, (gpointer)type->items[j]->key);
      for (guint j = 0; type->also[j] != NULL; j++)
        {
          const WmBlock *block = wm_trade_find_block (trade, type->also[j]);

          for (guint k = 0; k < block->n_items; k++)
            g_hash_table_add (reached, (gpointer)block->items[k]->key);
        }
    }
  for (guint i = 0; i < n; i++)
    if (!g_hash_table_contains (reached, items[i]->key))
      g_error ("check %s is on no sheet and in no block of one", items[i]->key);
}

/* Our own proposal of levels: 80, 60 and 40 % of the thickness as made. */
static void
test_remaining_section (void)
{
  static const struct
  {
    double share;
    WmSeverity usual, strict;
  } cases[] = {
    { 1.00, WM_SEVERITY_SOUND, WM_SEVERITY_SOUND },
    { 0.80, WM_SEVERITY_SOUND, WM_SEVERITY_SOUND },
    { 0.79, WM_SEVERITY_WATCH, WM_SEVERITY_REPAIR },
    { 0.60, WM_SEVERITY_WATCH, WM_SEVERITY_REPAIR },
    { 0.59, WM_SEVERITY_REPAIR, WM_SEVERITY_NO_WEAR },
    { 0.40, WM_SEVERITY_REPAIR, WM_SEVERITY_NO_WEAR },
    { 0.39, WM_SEVERITY_NO_WEAR, WM_SEVERITY_NO_WEAR },
    { 0.00, WM_SEVERITY_NO_WEAR, WM_SEVERITY_NO_WEAR },
  };
  const WmLimits *usual = &wm_trade_find_item (trade, "bx08")->limits;
  const WmLimits *strict = &wm_trade_find_item (trade, "lb10")->limits;

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      WmSeverity level = WM_SEVERITY_NOT_LOOKED_AT;

      g_assert_true (wm_limits_judge (usual, cases[i].share, &level));
      g_assert_cmpint (level, ==, cases[i].usual);
      g_assert_true (wm_limits_judge (strict, cases[i].share, &level));
      g_assert_cmpint (level, ==, cases[i].strict);
    }
}

static void
test_other_limits (void)
{
  static const struct
  {
    const char *key;
    double value;
    WmSeverity level;
  } cases[] = {
    { "rg01", 1.6, WM_SEVERITY_SOUND },    { "rg01", 1.3, WM_SEVERITY_WATCH },
    { "rg01", 1.0, WM_SEVERITY_REPAIR },   { "rg01", 0.7, WM_SEVERITY_NO_WEAR },
    { "lb02", 1.0, WM_SEVERITY_SOUND },    { "lb02", 2.0, WM_SEVERITY_WATCH },
    { "lb02", 3.1, WM_SEVERITY_REPAIR },   { "cl02", 0.49, WM_SEVERITY_REPAIR },
    { "cl02", 0.29, WM_SEVERITY_NO_WEAR }, { "cl02", 0.5, WM_SEVERITY_SOUND },
    { "er01", 0.85, WM_SEVERITY_SOUND },   { "er01", 0.7, WM_SEVERITY_WATCH },
    { "br02", 80.0, WM_SEVERITY_REPAIR },  { "br02", 90.0, WM_SEVERITY_SOUND },
  };
  WmSeverity level = WM_SEVERITY_NOT_PRESENT;

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const WmChecklistItem *item = wm_trade_find_item (trade, cases[i].key);

      g_assert_true (wm_limits_judge (&item->limits, cases[i].value, &level));
      g_assert_cmpint (level, ==, cases[i].level);
    }

  level = WM_SEVERITY_NOT_PRESENT;
  g_assert_false (
      wm_limits_judge (&wm_trade_find_item (trade, "bx02")->limits, 1.0, &level));
  g_assert_false (
      wm_limits_judge (&wm_trade_find_item (trade, "bx08")->limits, NAN, &level));
  g_assert_cmpint (level, ==, WM_SEVERITY_NOT_PRESENT);
}

/* A worse level never begins nearer to new than a better one. */
static void
test_limits_are_in_order (void)
{
  guint n;
  guint n_limits = 0;
  const WmChecklistItem *const *items = wm_trade_list_items (trade, &n);

  for (guint i = 0; i < n; i++)
    {
      const WmBound *bounds[] = { &items[i]->limits.watch, &items[i]->limits.repair,
                                  &items[i]->limits.no_wear };
      const WmBound *last = NULL;

      for (gsize j = 0; j < G_N_ELEMENTS (bounds); j++)
        {
          if (bounds[j]->side == WM_BOUND_NONE)
            continue;
          g_assert_nonnull (items[i]->limits.measure);
          g_assert_nonnull (wm_trade_find_measure (trade, items[i]->limits.measure));
          if (last != NULL && last->side == WM_BOUND_BELOW)
            g_assert_cmpfloat (bounds[j]->value, <, last->value);
          if (last != NULL && last->side == WM_BOUND_ABOVE)
            g_assert_cmpfloat (bounds[j]->value, >, last->value);
          last = bounds[j];
          n_limits++;
        }
      g_assert_true ((items[i]->limits.measure == NULL) == (last == NULL));
    }
  g_assert_cmpuint (n_limits, >, 60);
}

static void
test_intervals (void)
{
  guint n;
  const WmIntervalReason *const *reasons = wm_trade_list_interval_reasons (trade, &n);

  for (gsize i = 0; i < G_N_ELEMENTS (type_keys); i++)
    {
      const WmPieceType *type = wm_trade_find_piece_type (trade, type_keys[i]);

      g_assert_cmpfloat (type->months_daily.low, >=, 2.0);
      g_assert_cmpfloat (type->months_daily.high, <=, type->months_seldom.high);
      g_assert_nonnull (type->sources[0]);
    }
  /* Common practice of the trade, no source: six months for a line bracelet. */
  g_assert_cmpfloat (wm_trade_find_piece_type (trade, "line_bracelet")->months_daily.low,
                     ==, 6.0);

  g_assert_cmpuint (n, >, 10);
  for (guint i = 0; i < n; i++)
    {
      g_assert_true (isnan (reasons[i]->factor) != isnan (reasons[i]->months));
      if (!isnan (reasons[i]->factor))
        g_assert_cmpfloat (reasons[i]->factor, <, 1.0);
    }
  g_assert_cmpfloat (wm_trade_find_interval_reason (trade, "floor")->months, ==, 2.0);
}

static void
test_descriptions (void)
{
  const WmChecklistItem *item = wm_trade_find_item (trade, "bx08");
  const WmChecklistItem *shank = wm_trade_find_item (trade, "rg01");
  g_autofree char *left = wm_trade_describe_left (trade, item);
  g_autofree char *remedies = wm_trade_describe_remedies (trade, item);
  g_autofree char *sources =
      wm_trade_describe_sources (trade, item->sources, item->source_note);
  g_autofree char *mixed =
      wm_trade_describe_sources (trade, shank->sources, shank->source_note);

  g_assert_cmpstr (left, ==, "The piece can be lost");
  g_assert_cmpstr (remedies, ==, "new ring, round, soldered; solder again");
  g_assert_cmpstr (sources, ==, "common practice, no source");
  g_assert_nonnull (strstr (mixed, "Ring Shank Repair"));
  g_assert_nonnull (strstr (mixed, "our own proposal"));
  g_assert_null (wm_trade_text (NULL));
  g_assert_cmpstr (wm_trade_text (""), ==, "");
  g_assert_null (wm_trade_find_item (trade, "xx99"));
  g_assert_null (wm_trade_find_item (trade, NULL));
}

int
main (int argc, char **argv)
{
  g_autoptr (GError) error = NULL;
  int result;

  g_test_init (&argc, &argv, NULL);
  trade = wm_trade_new_with_shop (NULL, NULL, &error);
  g_assert_no_error (error);

  g_test_add_func ("/trade/tables/types", test_types);
  g_test_add_func ("/trade/tables/grouped", test_items_are_grouped);
  g_test_add_func ("/trade/tables/whole", test_items_are_whole);
  g_test_add_func ("/trade/tables/none-forgotten", test_no_item_is_forgotten);
  g_test_add_func ("/trade/tables/limits/remaining", test_remaining_section);
  g_test_add_func ("/trade/tables/limits/others", test_other_limits);
  g_test_add_func ("/trade/tables/limits/order", test_limits_are_in_order);
  g_test_add_func ("/trade/tables/intervals", test_intervals);
  g_test_add_func ("/trade/tables/descriptions", test_descriptions);
  result = g_test_run ();

  wm_trade_unref (trade);
  return result;
}
