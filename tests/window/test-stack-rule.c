/* test-stack-rule.c: which photos are one focus stack
 *
 * Expected values follow from the rules as stack-rule.h states them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/stack/stack-rule.h"

static WmPhoto *
add (GPtrArray *photos, gint64 taken_at_s, gint64 width, const char *moment)
{
  WmPhoto *photo = wm_photo_new ();

  g_object_set (photo, "taken-at-s", taken_at_s, "width", width, "height", (gint64)1000,
                "moment", moment, NULL);
  g_ptr_array_add (photos, photo);
  return photo;
}

static void
test_candidates (void)
{
  g_autoptr (GPtrArray) photos = g_ptr_array_new_with_free_func (g_object_unref);
  g_autoptr (GPtrArray) found = NULL;
  WmPhoto *shown = add (photos, 100, 1500, WM_PHOTO_BEFORE), *merged, *frame;

  add (photos, 101, 1400, WM_PHOTO_BEFORE); /* another size */
  add (photos, 102, 1500, WM_PHOTO_AFTER);  /* another moment */
  merged = add (photos, 103, 1500, WM_PHOTO_BEFORE);
  g_object_set (merged, "made-from", "stack", NULL);
  frame = add (photos, 104, 1500, WM_PHOTO_BEFORE);
  g_object_set (frame, "stacked-into", wm_record_get_id (WM_RECORD (merged)), NULL);
  add (photos, 900, 1500, WM_PHOTO_BEFORE); /* long after, but could be */

  found = wm_stack_candidates (photos, shown);
  g_assert_cmpuint (found->len, ==, 2);
  g_assert_true (g_ptr_array_index (found, 0) == shown);
  g_assert_cmpint (((WmPhoto *)g_ptr_array_index (found, 1))->taken_at_s, ==, 900);
}

static void
test_one_go (void)
{
  g_autoptr (GPtrArray) photos = g_ptr_array_new_with_free_func (g_object_unref);
  WmPhoto *a = add (photos, 100, 1500, WM_PHOTO_BEFORE);
  WmPhoto *b = add (photos, 110, 1500, WM_PHOTO_BEFORE);
  WmPhoto *c = add (photos, 120, 1500, WM_PHOTO_BEFORE);
  WmPhoto *late = add (photos, 131, 1500, WM_PHOTO_BEFORE);
  WmPhoto *timeless = add (photos, 0, 1500, WM_PHOTO_BEFORE);

  g_assert_true (wm_stack_is_of_one_go (photos, a, a));
  g_assert_true (wm_stack_is_of_one_go (photos, a, b));
  g_assert_true (wm_stack_is_of_one_go (photos, a, c)); /* through b */
  g_assert_true (wm_stack_is_of_one_go (photos, c, a));
  g_assert_false (wm_stack_is_of_one_go (photos, a, late)); /* 11 s after c */
  g_assert_false (wm_stack_is_of_one_go (photos, a, timeless));
  g_assert_true (wm_stack_is_of_one_go (photos, timeless, timeless));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/window/stack/candidates", test_candidates);
  g_test_add_func ("/window/stack/one-go", test_one_go);
  return g_test_run ();
}
