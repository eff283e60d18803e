/* test-frame-map.c: a photo laid in the frame of another one
 *
 * Expected values: the projective map itself, multiplied out here; tilts as a hand holds
 * a camera (20 degrees, focal length about the photo's width: hypot (m6, m7) 2e-4).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/canvas/frame-map.h"

#include <math.h>

static const double plain[9] = { 1.03, 0.11, -70, -0.11, 1.03, 107, -3.6e-6, 1.1e-6, 1 };
static const double tilted[9] = { 1.1, -0.2, 60, 0.25, 0.95, -40, 1.6e-4, -1.2e-4, 1 };

static WmViewTransform
make_view (double zoom, int turns)
{
  WmViewTransform view;

  wm_view_transform_init (&view, 2000, 1334, turns);
  view.view_width = 1000;
  view.view_height = 700;
  view.zoom = zoom;
  view.centre = (WmPoint) { 900, 600 };
  return view;
}

static WmPoint
apply (const double m[9], WmPoint p)
{
  double w = m[6] * p.x + m[7] * p.y + m[8];

  return (WmPoint) { (m[0] * p.x + m[1] * p.y + m[2]) / w,
                     (m[3] * p.x + m[4] * p.y + m[5]) / w };
}

static double
miss (const WmAffine *near, WmPoint photo, const WmViewTransform *view, const double m[9])
{
  WmPoint wanted = wm_view_transform_to_view (view, apply (m, photo));
  double x = near->xx * photo.x + near->xy * photo.y + near->x0;
  double y = near->yx * photo.x + near->yy * photo.y + near->y0;

  return hypot (x - wanted.x, y - wanted.y);
}

/* Exact where it is taken, and within the error that is promised over a part. */
static void
test_parts (void)
{
  const double *matrices[] = { plain, tilted };
  int levels[] = { 1, 2, 4 };

  for (guint k = 0; k < 2; k++)
    for (guint i = 0; i < G_N_ELEMENTS (levels); i++)
      for (int turns = 0; turns < 4; turns++)
        {
          /* One px of the texture on one px of the screen: the most that is shown. */
          WmViewTransform view = make_view (1.0 / levels[i], turns);
          double size = 512.0 * levels[i], box[4] = { 300, 200, size, size };
          WmFrameMap map;
          int n;

          g_assert_true (wm_frame_map_init (&map, matrices[k], 2000, 1334));
          n = wm_frame_map_parts (&map, box, 512);
          g_assert_cmpint (n, >=, 1);
          for (int part = 0; part < n; part++)
            {
              double side = size / n;
              WmPoint middle = { box[0] + (part + 0.5) * side,
                                 box[1] + (part + 0.5) * side };
              WmAffine near;

              g_assert_true (wm_frame_map_near (&map, &view, middle, &near));
              g_assert_cmpfloat (miss (&near, middle, &view, matrices[k]), <, 1e-6);
              for (int corner = 0; corner < 4; corner++)
                {
                  WmPoint at = { middle.x + (corner & 1 ? 0.5 : -0.5) * side,
                                 middle.y + (corner & 2 ? 0.5 : -0.5) * side };

                  /* Corners are sqrt 2 as far as sides, scale up to 1.3. */
                  g_assert_cmpfloat (miss (&near, at, &view, matrices[k]), <,
                                     n < WM_FRAME_MOST_PARTS ? 2.6 * WM_FRAME_ERROR_PX
                                                             : 1);
                }
            }
        }
}

/* A hand's usual pair needs no cutting, a tilt does, and one part can not do it. */
static void
test_only_where_needed (void)
{
  double box[4] = { 300, 200, 512, 512 };
  WmPoint corner = { 300, 200 }, middle = { 556, 456 };
  WmViewTransform view = make_view (1, 0);
  WmFrameMap map;
  WmAffine near;

  g_assert_true (wm_frame_map_init (&map, plain, 2000, 1334));
  g_assert_cmpint (wm_frame_map_parts (&map, box, 512), ==, 1);
  g_assert_true (wm_frame_map_init (&map, tilted, 2000, 1334));
  g_assert_cmpint (wm_frame_map_parts (&map, box, 512), >, 2);
  g_assert_true (wm_frame_map_near (&map, &view, middle, &near));
  g_assert_cmpfloat (miss (&near, corner, &view, tilted), >, 4 * WM_FRAME_ERROR_PX);
}

/* The box holds every place of the photo that is seen. */
static void
test_box (void)
{
  WmViewTransform view = make_view (0.7, 1);
  WmFrameMap map;
  double box[4];

  g_assert_true (wm_frame_map_init (&map, tilted, 2000, 1334));
  g_assert_true (wm_frame_map_box_to_photo (&map, &view, box));
  for (int i = 0; i <= 10; i++)
    for (int k = 0; k <= 10; k++)
      {
        WmPoint frame = wm_view_transform_to_photo (
            &view, (WmPoint) { i * view.view_width / 10, k * view.view_height / 10 });
        WmPoint p = apply (map.to_photo, frame);

        g_assert_cmpfloat (p.x, >=, box[0] - 1e-6);
        g_assert_cmpfloat (p.y, >=, box[1] - 1e-6);
        g_assert_cmpfloat (p.x, <=, box[0] + box[2] + 1e-6);
        g_assert_cmpfloat (p.y, <=, box[1] + box[3] + 1e-6);
      }
}

static void
test_refuses (void)
{
  const double flat[9] = { 1, 2, 0, 2, 4, 0, 0, 0, 1 };
  const double horizon[9] = { 1, 0, 0, 0, 1, 0, 1e-2, 0, 1 };
  WmViewTransform view = make_view (1, 0);
  WmFrameMap map = { .width = 7 };
  WmAffine near;
  double box[4];

  g_assert_false (wm_frame_map_init (&map, flat, 10, 10));
  g_assert_cmpfloat (map.width, ==, 7);
  g_assert_true (wm_frame_map_init (&map, horizon, 2000, 1334));
  g_assert_false (wm_frame_map_near (&map, &view, (WmPoint) { -150, 0 }, &near));
  g_assert_false (wm_frame_map_box_to_photo (&map, &view, box));
}

static void
test_zoom (void)
{
  const double twice[9] = { 0, -2, 900, 2, 0, 0, 0, 0, 1 };
  WmViewTransform view = make_view (0.25, 0);
  WmFrameMap map;

  g_assert_true (wm_frame_map_init (&map, twice, 2000, 1334));
  g_assert_cmpfloat_with_epsilon (wm_frame_map_zoom (&map, &view), 0.5, 1e-12);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/window/frame-map/parts", test_parts);
  g_test_add_func ("/window/frame-map/only-where-needed", test_only_where_needed);
  g_test_add_func ("/window/frame-map/box", test_box);
  g_test_add_func ("/window/frame-map/refuses", test_refuses);
  g_test_add_func ("/window/frame-map/zoom", test_zoom);
  return g_test_run ();
}
