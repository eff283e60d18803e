/* test-span-profile.c: grey along a span, and spans snapped to edges
 *
 * Expected values: bars drawn here with exact coverage of each pixel at known places,
 * straight and slanted; ImageMagick writes the files.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/photo-error.h"
#include "photo/photo-start.h"
#include "photo/span-profile.h"

#include "corpus.h"

#include <math.h>

#define SIDE 300

static double
coded (double light)
{
  return light <= 0.0031308 ? 12.92 * light : 1.055 * pow (light, 1 / 2.4) - 0.055;
}

/* A bar of light 0.5 on 0.05, its middle through the middle of the picture, at an angle;
 * each pixel by 16 x 16 points. */
static void
write_bar (const char *name, double width_px, double angle)
{
  GString *ppm = g_string_new ("P5 300 300 255\n");

  for (int y = 0; y < SIDE; y++)
    for (int x = 0; x < SIDE; x++)
      {
        int inside = 0;

        for (int i = 0; i < 256; i++)
          {
            double px = x + (i % 16 + 0.5) / 16 - SIDE / 2.0;
            double py = y + (i / 16 + 0.5) / 16 - SIDE / 2.0;

            inside += fabs (px * cos (angle) + py * sin (angle)) <= width_px / 2;
          }
        g_string_append_c (ppm, (char)round (255 * coded (0.05 + 0.45 * inside / 256.0)));
      }

  corpus_write ("bar.pgm", ppm->str, ppm->len);
  g_string_free (ppm, TRUE);
  corpus_run ("convert bar.pgm %s", name);
}

static void
test_snap (void)
{
  static const double widths[] = { 20.0, 33.4, 77.7 };
  static const double angles[] = { 0.0, 0.3, 0.8, 1.4 };

  for (guint w = 0; w < G_N_ELEMENTS (widths); w++)
    for (guint k = 0; k < G_N_ELEMENTS (angles); k++)
      {
        double half = widths[w] / 2 - 2.5;
        WmPoint a = { 150 - half * cos (angles[k]), 150 - half * sin (angles[k]) };
        WmPoint b = { 150 + half * cos (angles[k]), 150 + half * sin (angles[k]) };
        g_autoptr (GError) error = NULL;
        WmSnappedEnd ends[2];
        WmResult result;

        write_bar ("snap.png", widths[w], angles[k]);
        g_assert_true (wm_photo_snap_span (corpus_path ("snap.png"), a, b, 8.0, ends,
                                           &result, NULL, &error));
        g_assert_no_error (error);
        g_assert_cmpfloat (
            fabs (hypot (ends[1].at.x - ends[0].at.x, ends[1].at.y - ends[0].at.y)
                  - widths[w]),
            <, 0.25);
        g_assert_true (ends[0].is_snapped && ends[1].is_snapped);
        g_assert_cmpfloat (ends[0].u_seen_px, >=, WM_EDGE_MODEL_U_PX);
        g_assert_cmpfloat (ends[0].u_px, >=, ends[0].u_seen_px);
      }
}

static void
test_refusals (void)
{
  WmPoint a = { 20, 20 };
  WmPoint b = { 40, 20 };
  g_autoptr (GError) error = NULL;
  WmSnappedEnd ends[2];
  WmResult result;

  write_bar ("flat.png", 10, 0);
  g_assert_false (wm_photo_snap_span (corpus_path ("flat.png"), a, b, 8.0, ends, &result,
                                      NULL, &error));
  g_assert_no_error (error);
  g_assert_cmpint (result, ==, WM_NO_EDGE);
  g_assert_false (wm_photo_snap_span (corpus_path ("flat.png"), a, a, 8.0, ends, &result,
                                      NULL, &error));
  g_assert_cmpint (result, ==, WM_TOO_SHORT);
  g_assert_false (wm_photo_snap_span (corpus_path ("none.png"), a, b, 8.0, ends, &result,
                                      NULL, &error));
  g_assert_error (error, WM_PHOTO_ERROR, WM_PHOTO_ERROR_NOT_FOUND);
}

/* Grey of a plain picture is its light, whatever the line; the border repeats. */
static void
test_profile (void)
{
  g_autoptr (WmPixels) pixels = wm_pixels_new (30, 20);
  g_autofree double *grey = NULL;
  double start;
  int n;

  for (int i = 0; i < 30 * 20 * 4; i++)
    pixels->data[i] = i % 4 == 3 ? 255 : 128;

  grey = wm_pixels_span_profile (pixels, (WmPoint) { 5, 5 }, (WmPoint) { 25, 15 }, 30,
                                 1.0, &n, &start);
  g_assert_cmpint (n, ==, 60 + 23 + 1);
  g_assert_cmpfloat (start, ==, 30);
  for (int i = 0; i < 3 * n; i++)
    g_assert_cmpfloat (fabs (grey[i] - 0.2158605001), <, 1e-9);
}

int
main (int argc, char **argv)
{
  int status;

  g_test_init (&argc, &argv, NULL);
  corpus_begin ();
  g_test_add_func ("/photo/span-profile/profile", test_profile);
  g_test_add_func ("/photo/span-profile/snap", test_snap);
  g_test_add_func ("/photo/span-profile/refusals", test_refusals);
  status = g_test_run ();
  corpus_end ();
  wm_photo_stop ();
  return status;
}
