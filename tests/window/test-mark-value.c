/* test-mark-value.c: what a hand can do to a mark, without a widget
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/canvas/mark-value.h"

static WmMarkValue *
make_outline (void)
{
  static const WmPoint points[] = { { 10, 10 }, { 30, 10 }, { 30, 40 } };

  return wm_mark_value_new (WM_SHAPE_OUTLINE, points, G_N_ELEMENTS (points));
}

static void
assert_point (const WmMarkValue *mark, guint index, double x, double y)
{
  g_assert_cmpfloat (wm_mark_value_point (mark, index).x, ==, x);
  g_assert_cmpfloat (wm_mark_value_point (mark, index).y, ==, y);
}

static void
test_copy_is_its_own (void)
{
  g_autoptr (WmMarkValue) a = make_outline ();
  g_autoptr (WmMarkValue) b = NULL;

  a->name = g_strdup ("Mark 1");
  b = wm_mark_value_copy (a);
  g_assert_true (wm_mark_value_equal (a, b));
  wm_mark_value_move_point (b, 1, (WmPoint) { 31, 10 }, 100, 100);
  g_assert_false (wm_mark_value_equal (a, b));
  assert_point (a, 1, 30, 10);
}

static void
test_move_takes_all_points_and_the_pin (void)
{
  g_autoptr (WmMarkValue) mark = make_outline ();

  wm_mark_value_pin (mark, (WmPoint) { 50, 60 });
  wm_mark_value_move (mark, 5, -3, 100, 100);
  assert_point (mark, 0, 15, 7);
  assert_point (mark, 2, 35, 37);
  g_assert_cmpfloat (mark->pin.x, ==, 55);
  g_assert_cmpfloat (mark->pin.y, ==, 57);
}

static void
test_move_stops_at_the_edge_in_one_piece (void)
{
  g_autoptr (WmMarkValue) mark = make_outline ();

  wm_mark_value_move (mark, 1000, -1000, 100, 100);
  assert_point (mark, 0, 80, 0);
  assert_point (mark, 1, 100, 0);
  assert_point (mark, 2, 100, 30);
}

static void
test_move_point_is_cut_to_the_photo (void)
{
  g_autoptr (WmMarkValue) mark = make_outline ();

  wm_mark_value_move_point (mark, 1, (WmPoint) { 500, -5 }, 100, 80);
  assert_point (mark, 1, 100, 0);
}

static void
test_points_come_and_go (void)
{
  g_autoptr (WmMarkValue) mark = make_outline ();

  g_assert_false (wm_mark_value_remove_point (mark, 0)); /* three are needed */
  g_assert_true (wm_mark_value_add_point (mark, 2, (WmPoint) { 20, 30 }));
  g_assert_cmpuint (mark->points->len, ==, 4);
  assert_point (mark, 3, 20, 30);
  g_assert_true (wm_mark_value_add_point (mark, 0, (WmPoint) { 20, 10 }));
  assert_point (mark, 1, 20, 10);
  g_assert_true (wm_mark_value_remove_point (mark, 4));
  assert_point (mark, 3, 30, 40);
}

static void
test_spots_and_spans_keep_their_points (void)
{
  static const WmPoint points[] = { { 1, 1 }, { 2, 2 } };
  g_autoptr (WmMarkValue) spot = wm_mark_value_new (WM_SHAPE_SPOT, points, 1);
  g_autoptr (WmMarkValue) span = wm_mark_value_new (WM_SHAPE_SPAN, points, 2);

  g_assert_false (wm_mark_value_add_point (spot, 0, (WmPoint) { 5, 5 }));
  g_assert_false (wm_mark_value_remove_point (spot, 0));
  g_assert_false (wm_mark_value_add_point (span, 0, (WmPoint) { 5, 5 }));
  g_assert_false (wm_mark_value_remove_point (span, 1));
}

static void
test_equal_sees_every_part (void)
{
  g_autoptr (WmMarkValue) a = make_outline ();
  g_autoptr (WmMarkValue) b = make_outline ();

  b->severity = WM_SEVERITY_REPAIR;
  g_assert_false (wm_mark_value_equal (a, b));
  b->severity = a->severity;
  b->number = 3;
  g_assert_false (wm_mark_value_equal (a, b));
  b->number = a->number;
  wm_mark_value_pin (b, (WmPoint) { 1, 2 });
  g_assert_false (wm_mark_value_equal (a, b));
  wm_mark_value_unpin (b); /* where a loose disc once was says nothing */
  g_assert_true (wm_mark_value_equal (a, b));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/window/mark-value/copy", test_copy_is_its_own);
  g_test_add_func ("/window/mark-value/move/all", test_move_takes_all_points_and_the_pin);
  g_test_add_func ("/window/mark-value/move/edge",
                   test_move_stops_at_the_edge_in_one_piece);
  g_test_add_func ("/window/mark-value/move-point", test_move_point_is_cut_to_the_photo);
  g_test_add_func ("/window/mark-value/points", test_points_come_and_go);
  g_test_add_func ("/window/mark-value/fixed", test_spots_and_spans_keep_their_points);
  g_test_add_func ("/window/mark-value/equal", test_equal_sees_every_part);
  return g_test_run ();
}
