/* test-view-transform.c: photo pixels to view pixels and back
 *
 * Expected values are worked out by hand from the definition: a quarter turn
 * clockwise puts the photo's top left corner at the top right.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/canvas/view-transform.h"

#include <math.h>

#define assert_near(a, b) g_assert_cmpfloat_with_epsilon (a, b, 1e-9)

static WmViewTransform
make (int turns, double view_width, double view_height)
{
  WmViewTransform t;

  wm_view_transform_init (&t, 4000, 3000, turns);
  t.view_width = view_width;
  t.view_height = view_height;
  wm_view_transform_fit (&t);
  return t;
}

static void
test_fit (void)
{
  WmViewTransform t = make (0, 1000, 600);

  assert_near (t.zoom, 0.2); /* 600 / 3000 */
  assert_near (wm_view_transform_to_view (&t, (WmPoint) { 0, 0 }).x, 100);
  assert_near (wm_view_transform_to_view (&t, (WmPoint) { 4000, 3000 }).y, 600);

  t = make (1, 1000, 600);
  assert_near (t.zoom, 0.15); /* 600 / 4000: the long side stands upright */
}

/* Where each turn puts the corner (0, 0) and a point right of it. */
static void
test_turns (void)
{
  static const struct
  {
    int turns;
    double x0, y0, x1, y1;
  } cases[] = {
    { 0, 100, 0, 300, 0 },     /* top left; its row runs right */
    { 1, 725, 0, 725, 150 },   /* top right; its row runs down */
    { 2, 900, 600, 700, 600 }, /* bottom right; its row runs left */
    { 3, 275, 600, 275, 450 }, /* bottom left; its row runs up */
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      WmViewTransform t = make (cases[i].turns, 1000, 600);
      WmPoint a = wm_view_transform_to_view (&t, (WmPoint) { 0, 0 });
      WmPoint b = wm_view_transform_to_view (&t, (WmPoint) { 1000, 0 });

      assert_near (a.x, cases[i].x0);
      assert_near (a.y, cases[i].y0);
      assert_near (b.x, cases[i].x1);
      assert_near (b.y, cases[i].y1);
    }
}

static void
test_round_trip (void)
{
  for (int turns = 0; turns < 4; turns++)
    for (int step = 0; step < 40; step++)
      {
        WmViewTransform t = make (turns, 941, 607);
        WmPoint p = { 37.25 + step * 91.5, 12.75 + step * 71.25 };
        WmPoint back;

        wm_view_transform_zoom_at (&t, (WmPoint) { 17.0 * step, 11.0 * step },
                                   0.01 * pow (1.22, step), 0.001);
        back = wm_view_transform_to_photo (&t, wm_view_transform_to_view (&t, p));
        g_assert_cmpfloat_with_epsilon (back.x, p.x, 1e-6);
        g_assert_cmpfloat_with_epsilon (back.y, p.y, 1e-6);
      }
}

static void
test_zoom_keeps_anchor (void)
{
  for (int turns = 0; turns < 4; turns++)
    {
      WmViewTransform t = make (turns, 1000, 600);
      WmPoint anchor = { 430, 350 };
      WmPoint before = wm_view_transform_to_photo (&t, anchor), after;

      wm_view_transform_zoom_at (&t, anchor, 2.5, 0.1);
      after = wm_view_transform_to_photo (&t, anchor);
      assert_near (t.zoom, 2.5);
      g_assert_cmpfloat_with_epsilon (before.x, after.x, 1e-6);
      g_assert_cmpfloat_with_epsilon (before.y, after.y, 1e-6);
    }
}

static void
test_zoom_limits (void)
{
  WmViewTransform t = make (0, 1000, 600);

  wm_view_transform_zoom_at (&t, (WmPoint) { 500, 300 }, 1e6, 0.2);
  assert_near (t.zoom, WM_VIEW_ZOOM_MAX);
  wm_view_transform_zoom_at (&t, (WmPoint) { 500, 300 }, 1e-9, 0.2);
  assert_near (t.zoom, 0.2);
  assert_near (wm_view_transform_least_zoom (&t, 1), 0.2);
  assert_near (wm_view_transform_least_zoom (&t, 0.1), 0.1);
}

static void
test_pan_follows_and_stops (void)
{
  for (int turns = 0; turns < 4; turns++)
    {
      WmViewTransform t = make (turns, 1000, 600);
      WmPoint grabbed, now;

      wm_view_transform_zoom_at (&t, (WmPoint) { 500, 300 }, 1, 0.1);
      grabbed = wm_view_transform_to_photo (&t, (WmPoint) { 400, 200 });
      wm_view_transform_pan (&t, 30, -20);
      now = wm_view_transform_to_view (&t, grabbed);
      assert_near (now.x, 430);
      assert_near (now.y, 180);

      /* A hard push: the photo's edge comes in by the slack and no further. */
      wm_view_transform_pan (&t, 1e6, 1e6);
      g_assert_true (wm_view_transform_is_on_photo (
          &t, (WmPoint) { WM_VIEW_SLACK + 1, WM_VIEW_SLACK + 1 }));
      g_assert_false (wm_view_transform_is_on_photo (
          &t, (WmPoint) { WM_VIEW_SLACK - 1, WM_VIEW_SLACK - 1 }));
    }
}

static void
test_small_photo_is_centred (void)
{
  WmViewTransform t = make (0, 1000, 600);
  WmPoint middle;

  wm_view_transform_pan (&t, 300, 40);
  middle = wm_view_transform_to_view (&t, (WmPoint) { 2000, 1500 });
  assert_near (middle.x, 500);
  assert_near (middle.y, 300);
}

static void
test_fill_lets_no_edge_in (void)
{
  for (int turns = 0; turns < 4; turns++)
    {
      WmViewTransform t = make (turns, 1000, 600);

      t.zoom = 1;
      t.centre = (WmPoint) { 20, 2990 };
      wm_view_transform_fill (&t);
      for (int corner = 0; corner < 4; corner++)
        g_assert_true (wm_view_transform_is_on_photo (
            &t,
            (WmPoint) { corner % 2 == 0 ? 0.5 : 999.5, corner / 2 == 0 ? 0.5 : 599.5 }));
    }
}

static void
test_turning_keeps_the_middle (void)
{
  WmViewTransform t = make (0, 1000, 600);
  WmPoint middle;

  wm_view_transform_zoom_at (&t, (WmPoint) { 500, 300 }, 1, 0.1);
  for (int i = 0; i < 4; i++)
    {
      wm_view_transform_turn (&t, 1);
      middle = wm_view_transform_to_photo (&t, (WmPoint) { 500, 300 });
      assert_near (middle.x, 2000);
      assert_near (middle.y, 1500);
    }
  g_assert_cmpint (t.turns, ==, 0);
  wm_view_transform_turn (&t, -1);
  g_assert_cmpint (t.turns, ==, 3);
}

static void
test_boxes (void)
{
  WmViewTransform t = make (1, 1000, 600);
  double photo[4] = { 0, 0, 1000, 500 }, view[4], back[4];

  wm_view_transform_box_to_view (&t, photo, view);
  assert_near (view[0], 650); /* 725 - 500 * 0.15 */
  assert_near (view[1], 0);
  assert_near (view[2], 75);
  assert_near (view[3], 150);
  wm_view_transform_box_to_photo (&t, view, back);
  for (int i = 0; i < 4; i++)
    g_assert_cmpfloat_with_epsilon (back[i], photo[i], 1e-6);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/window/view-transform/fit", test_fit);
  g_test_add_func ("/window/view-transform/turns", test_turns);
  g_test_add_func ("/window/view-transform/round-trip", test_round_trip);
  g_test_add_func ("/window/view-transform/zoom/anchor", test_zoom_keeps_anchor);
  g_test_add_func ("/window/view-transform/zoom/limits", test_zoom_limits);
  g_test_add_func ("/window/view-transform/pan", test_pan_follows_and_stops);
  g_test_add_func ("/window/view-transform/fill", test_fill_lets_no_edge_in);
  g_test_add_func ("/window/view-transform/small", test_small_photo_is_centred);
  g_test_add_func ("/window/view-transform/turn", test_turning_keeps_the_middle);
  g_test_add_func ("/window/view-transform/boxes", test_boxes);
  return g_test_run ();
}
