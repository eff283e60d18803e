/* test-make-checks.c: a visit's checklist from the shipped tables
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "record/make-checks.h"

static void
test_every_type (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (WmTrade) trade =
      wm_trade_new_with_shop (g_getenv ("WEARMARK_TABLES"), NULL, &error);
  const WmPieceType *const *types;
  WmId visit_id = wm_id_new ();
  guint n_types = 0;

  g_assert_no_error (error);
  types = wm_trade_list_piece_types (trade, &n_types);
  /* Ten piece types with 8 to 20 checks or more are asked for. */
  g_assert_cmpuint (n_types, >=, 10);
  for (guint t = 0; t < n_types; t++)
    {
      g_autoptr (GPtrArray) checks = wm_make_checks (trade, types[t]->key, &visit_id);

      g_assert_cmpuint (checks->len, ==, types[t]->n_items);
      g_assert_cmpuint (checks->len, >=, 8);
      for (guint i = 0; i < checks->len; i++)
        {
          WmCheck *check = g_ptr_array_index (checks, i);

          g_assert_true (wm_id_equal (&check->visit_id, &visit_id));
          g_assert_cmpint (check->position, ==, i);
          g_assert_cmpint (check->severity, ==, WM_SEVERITY_NOT_LOOKED_AT);
          g_assert_cmpstr (check->item, ==, types[t]->items[i]->key);
          g_assert_nonnull (check->part);
          g_assert_nonnull (check->title);
          g_assert_nonnull (check->fault);
          g_assert_nonnull (check->if_left);
          g_assert_nonnull (check->remedies);
          g_assert_nonnull (check->customer);
        }
    }
}

static void
test_unknown_type (void)
{
  g_autoptr (WmTrade) trade =
      wm_trade_new_with_shop (g_getenv ("WEARMARK_TABLES"), NULL, NULL);
  WmId visit_id = wm_id_new ();
  g_autoptr (GPtrArray) none = wm_make_checks (trade, "snow-globe", &visit_id);
  g_autoptr (GPtrArray) nothing = wm_make_checks (trade, NULL, &visit_id);

  g_assert_cmpuint (none->len, ==, 0);
  g_assert_cmpuint (nothing->len, ==, 0);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/record/make-checks/every-type", test_every_type);
  g_test_add_func ("/record/make-checks/unknown-type", test_unknown_type);
  return g_test_run ();
}
