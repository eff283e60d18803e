/* test-align-hand.c: points placed by hand, refined, and kept when that fails
 *
 * Truth: pairs drawn from formulas (align-scene.h), written to files.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <math.h>
#include <string.h>

#include <glib/gstdio.h>

#include "align-scene.h"
#include "photo/photo-start.h"
#include "photo/png-write.h"

typedef struct
{
  Scene before, after;
  char *folder;
  char *before_path, *after_path;
  WmPoint before_points[4], after_points[4];
} HandFixture;

static void
write_scene (const Scene *scene, const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (WmPixels) pixels = wm_pixels_new (SCENE_W, SCENE_H);
  WmAlignImage image;
  g_autofree guint8 *drawn = draw_scene (scene, &image);

  for (int y = 0; y < SCENE_H; y++)
    for (int x = 0; x < SCENE_W; x++)
      {
        const guint8 *from = drawn + (y * SCENE_W + x) * 3;
        guint8 *to = pixels->data + (gsize)y * pixels->stride + (gsize)x * 4;

        to[0] = from[2];
        to[1] = from[1];
        to[2] = from[0];
        to[3] = 255;
      }
  g_assert_true (wm_pixels_write_png (pixels, path, NULL, &error));
  g_assert_no_error (error);
}

/* The piece turned, farther and on another cloth; four places of it, exact. */
static void
set_up (HandFixture *f, gconstpointer unused)
{
  const WmPoint on_piece[4] = { { -130, -90 }, { 130, -90 }, { 130, 90 }, { -130, 90 } };
  double photo_before[9], photo_after[9];

  f->before = plain_scene (5, 1);
  f->after = plain_scene (5, 44);
  place_plane (380, 285, -33, 0.85, 0, f->after.to_piece);
  wm_align_invert (f->before.to_piece, photo_before);
  wm_align_invert (f->after.to_piece, photo_after);
  for (int k = 0; k < 4; k++)
    {
      f->before_points[k] = wm_align_map (photo_before, on_piece[k]);
      f->after_points[k] = wm_align_map (photo_after, on_piece[k]);
    }
  f->folder = g_dir_make_tmp ("wm-align-hand-XXXXXX", NULL);
  f->before_path = g_build_filename (f->folder, "before.png", NULL);
  f->after_path = g_build_filename (f->folder, "after.png", NULL);
  write_scene (&f->before, f->before_path);
  write_scene (&f->after, f->after_path);
}

static void
tear_down (HandFixture *f, gconstpointer unused)
{
  g_remove (f->before_path);
  g_remove (f->after_path);
  g_rmdir (f->folder);
  g_free (f->before_path);
  g_free (f->after_path);
  g_free (f->folder);
}

static void
align_by_hand (HandFixture *f, int n, WmAlignment *out, double *hand_px)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (wm_align_by_hand (f->before_path, f->after_path, f->before_points,
                                   f->after_points, n, NULL, NULL, NULL, out, hand_px,
                                   &error));
  g_assert_no_error (error);
}

static void
assert_hand_kept (HandFixture *f, int n, const WmAlignment *out, double hand_px)
{
  double hand[9];

  g_assert_cmpint (
      wm_align_from_points (f->before_points, f->after_points, n, hand, NULL), ==, WM_OK);
  g_assert_false (out->aligned);
  g_assert_cmpmem (out->matrix, sizeof hand, hand, sizeof hand);
  g_assert_cmpfloat (hand_px, <, 1e-6);
  g_assert_cmpfloat (out->residual_px, ==, 0);
}

/* Slips of 4 to 9 px, the hand's on a small view: taken back, and told. */
static void
test_slips_are_mended (HandFixture *f, gconstpointer unused)
{
  const WmPoint slips[4] = { { 6, -4 }, { -7, 3 }, { 5, 7 }, { -4, -5 } };

  for (int n = 2; n <= 4; n++)
    {
      WmAlignment out;
      double hand_px = -1;

      for (int k = 0; k < 4; k++)
        {
          f->before_points[k].x += n == 2 ? slips[k].x : 0;
          f->before_points[k].y += n == 2 ? slips[k].y : 0;
        }
      align_by_hand (f, n, &out, &hand_px);
      g_assert_cmpstr (wm_align_reason_name (out.reason), ==, "found");
      g_assert_true (out.aligned);
      g_assert_cmpfloat (measure_error (&f->before, &f->after, out.matrix), <, 0.5);
      g_assert_cmpfloat (out.residual_px, >, 0);
      /* the slips themselves: 7.2 to 8.6 px, two of them under 2 px of each other */
      g_assert_cmpfloat (hand_px, >, 6);
      g_assert_cmpfloat (hand_px, <, 9);
    }
}

/* Every pair 24 px off the same way: the piece is found there, but that is farther
 * than 2 % of 800 px, so it is not taken without being asked. */
static void
test_wandering_is_told (HandFixture *f, gconstpointer unused)
{
  WmAlignment out;
  double hand_px = -1;

  for (int k = 0; k < 4; k++)
    f->before_points[k].x += 24;
  align_by_hand (f, 4, &out, &hand_px);
  g_assert_cmpstr (wm_align_reason_name (out.reason), ==, "wandered");
  assert_hand_kept (f, 4, &out, hand_px);
}

static void
test_two_pieces_keep_the_hand (HandFixture *f, gconstpointer unused)
{
  WmAlignment out;
  double hand_px = -1;

  f->after.piece = 8;
  write_scene (&f->after, f->after_path);
  align_by_hand (f, 3, &out, &hand_px);
  assert_hand_kept (f, 3, &out, hand_px);
}

static void
test_bad_points_and_files (HandFixture *f, gconstpointer unused)
{
  g_autoptr (GError) error = NULL;
  WmAlignment out = { .places = 42 };

  g_assert_false (wm_align_by_hand (f->before_path, f->after_path, f->before_points,
                                    f->after_points, 1, NULL, NULL, NULL, &out, NULL,
                                    &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_INVALID_ARGUMENT);
  g_clear_error (&error);
  g_remove (f->after_path);
  g_assert_false (wm_align_by_hand (f->before_path, f->after_path, f->before_points,
                                    f->after_points, 4, NULL, NULL, NULL, &out, NULL,
                                    &error));
  g_assert_error (error, WM_PHOTO_ERROR, WM_PHOTO_ERROR_NOT_FOUND);
  g_assert_cmpint (out.places, ==, 42);
}

static void
test_cancel (HandFixture *f, gconstpointer unused)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  WmAlignment out = { .places = 42 };

  g_cancellable_cancel (cancellable);
  g_assert_false (wm_align_by_hand (f->before_path, f->after_path, f->before_points,
                                    f->after_points, 4, cancellable, NULL, NULL, &out,
                                    NULL, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
  g_assert_cmpint (out.places, ==, 42);
}

#define ADD(path, func)                                                                  \
  g_test_add ("/photo/align/hand/" path, HandFixture, NULL, set_up, func, tear_down)

int
main (int argc, char **argv)
{
  int status;

  g_test_init (&argc, &argv, NULL);
  ADD ("slips-are-mended", test_slips_are_mended);
  ADD ("wandering-is-told", test_wandering_is_told);
  ADD ("two-pieces", test_two_pieces_keep_the_hand);
  ADD ("bad-points-and-files", test_bad_points_and_files);
  ADD ("cancel", test_cancel);
  status = g_test_run ();
  wm_photo_stop ();
  return status;
}
