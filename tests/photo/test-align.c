/* test-align.c: two photos of one piece into register, and honest refusals
 *
 * Truth: pairs drawn from formulas (align-scene.h). Limits: half a pixel at 800
 * is well inside the demand of 3 pixels at 1600, and above what the fit reached
 * when this was written (0.05 to 0.25), so that it catches a loss.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <string.h>

#include "align-scene.h"

typedef struct
{
  const char *path;
  Scene before, after;
  double limit; /* px */
} Pair;

static void
align_scenes (const Scene *before, const Scene *after, WmAlignment *out)
{
  g_autoptr (GError) error = NULL;
  WmAlignImage a, b;
  g_autofree guint8 *pa = draw_scene (before, &a);
  g_autofree guint8 *pb = draw_scene (after, &b);

  g_assert_true (wm_align_images (&a, &b, NULL, NULL, NULL, out, &error));
  g_assert_no_error (error);
}

static void
test_pair (gconstpointer data)
{
  const Pair *pair = data;
  WmAlignment out;
  double error;

  align_scenes (&pair->before, &pair->after, &out);
  g_assert_cmpstr (wm_align_reason_name (out.reason), ==, "found");
  g_assert_true (out.aligned);
  error = measure_error (&pair->before, &pair->after, out.matrix);
  g_test_message ("error %.3f px, residual %.3f px, %d of %d places", error,
                  out.residual_px, out.places, out.places_tried);
  g_assert_cmpfloat (error, <, pair->limit);
  g_assert_cmpfloat (out.residual_px, >, 0);
  g_assert_cmpfloat (out.residual_px, <, 1);
  g_assert_cmpfloat (out.overlap, >, 0.2);
  g_assert_cmpfloat (out.overlap, <=, 1);
  g_assert_cmpint (out.places, <=, out.places_tried);
}

static void
add_pairs (void)
{
  static Pair pairs[7];
  int n = G_N_ELEMENTS (pairs);

  for (int k = 0; k < n; k++)
    {
      pairs[k].before = plain_scene (5, 1);
      pairs[k].after = plain_scene (5, 1);
      pairs[k].limit = 0.5;
    }
  pairs[0].path = "/photo/align/moved-on-a-cloth-that-stayed";
  place_plane (420, 255, 11, 1, 0, pairs[0].after.to_piece);

  pairs[1].path = "/photo/align/slightly-turned-on-a-cloth-that-stayed";
  place_plane (403, 266, 1.5, 1, 0, pairs[1].after.to_piece);

  pairs[2].path = "/photo/align/other-cloth-quarter-turn-mended";
  pairs[2].after.cloth = 40;
  pairs[2].after.is_mended = TRUE;
  place_plane (380, 280, 90, 0.9, 0, pairs[2].after.to_piece);

  pairs[3].path = "/photo/align/darker-tilted-nearer";
  pairs[3].after.gain = 0.6;
  pairs[3].after.bias = 12;
  place_plane (410, 260, -24, 1.3, 3e-4, pairs[3].after.to_piece);
  place_plane (410, 260, -24, 1.3, 3e-4, pairs[3].after.to_cloth);

  pairs[4].path = "/photo/align/farther-other-cloth";
  pairs[4].after.cloth = 77;
  place_plane (430, 240, 37, 0.62, 0, pairs[4].after.to_piece);

  pairs[5].path = "/photo/align/much-nearer";
  place_plane (150, 150, 0, 0.6, 0, pairs[5].before.to_piece);
  place_plane (400, 267, 5, 1.0, 0, pairs[5].after.to_piece);

  /* Reckoning-reference 9.3: half a turn shows a pixel-centre mistake as a shift
   * of the whole; below 0.05 px is asked for. */
  pairs[6].path = "/photo/align/half-turn-shows-pixel-centres";
  pairs[6].limit = 0.05;
  place_plane (SCENE_W - 400, SCENE_H - 267, 180, 1, 0, pairs[6].after.to_piece);
  place_plane (SCENE_W - 400, SCENE_H - 267, 180, 1, 0, pairs[6].after.to_cloth);

  for (int k = 0; k < n; k++)
    g_test_add_data_func (pairs[k].path, &pairs[k], test_pair);
}

static void
assert_refused (const Scene *before, const Scene *after)
{
  static const double identity[9] = { 1, 0, 0, 0, 1, 0, 0, 0, 1 };
  WmAlignment out;

  align_scenes (before, after, &out);
  g_test_message ("%s", wm_align_reason_name (out.reason));
  g_assert_false (out.aligned);
  g_assert_cmpint (out.reason, !=, WM_ALIGN_FOUND);
  g_assert_cmpmem (out.matrix, sizeof out.matrix, identity, sizeof identity);
  g_assert_cmpfloat (out.residual_px, ==, 0);
  g_assert_cmpstr (wm_align_reason_text (out.reason), !=, "");
}

/* The cloth fits perfectly; the pieces on it are two. */
static void
test_different_pieces_on_one_cloth (void)
{
  Scene before = plain_scene (5, 1);
  Scene after = plain_scene (6, 1);

  assert_refused (&before, &after);
}

static void
test_different_pieces_on_two_cloths (void)
{
  Scene before = plain_scene (9, 1);
  Scene after = plain_scene (12, 30);

  assert_refused (&before, &after);
}

/* A ring without a mark on it can be turned as one likes. */
static void
test_plain_ring (void)
{
  Scene before = plain_scene (5, 1);
  Scene after = plain_scene (5, 33);

  before.is_plain = after.is_plain = TRUE;
  place_plane (420, 250, 50, 1, 0, after.to_piece);
  assert_refused (&before, &after);
}

static void
test_nothing_there (void)
{
  g_autofree guint8 *grey = g_malloc (640 * 480);
  const int sizes[][2] = { { 640, 480 }, { 1, 1 },   { 3, 200 },
                           { 200, 3 },   { 17, 17 }, { 40, 41 } };

  memset (grey, 128, 640 * 480);
  for (gsize k = 0; k < G_N_ELEMENTS (sizes); k++)
    {
      g_autoptr (GError) error = NULL;
      WmAlignImage image = { grey, sizes[k][0], sizes[k][1], (gsize)sizes[k][0], 1 };
      WmAlignment out;

      g_assert_true (wm_align_images (&image, &image, NULL, NULL, NULL, &out, &error));
      g_assert_false (out.aligned);
      g_assert_cmpint (out.reason, ==, WM_ALIGN_TOO_PLAIN);
    }
}

static void
test_no_pixels (void)
{
  g_autoptr (GError) error = NULL;
  guint8 one = 0;
  WmAlignImage none = { NULL, 0, 0, 0, 3 };
  WmAlignImage image = { &one, 1, 1, 1, 1 };
  WmAlignment out = { .places = 7 };

  g_assert_false (wm_align_images (&none, &image, NULL, NULL, NULL, &out, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_INVALID_ARGUMENT);
  g_assert_cmpint (out.places, ==, 7);
}

static void
note_progress (double done, gpointer user_data)
{
  double *last = user_data;

  g_assert_cmpfloat (done, >=, *last);
  g_assert_cmpfloat (done, <=, 1);
  *last = done;
}

static void
cancel_soon (double done, gpointer user_data)
{
  if (done > 0.3)
    g_cancellable_cancel (user_data);
}

static void
test_progress_and_cancel (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  Scene scene = plain_scene (5, 1);
  WmAlignImage image;
  g_autofree guint8 *pixels = draw_scene (&scene, &image);
  WmAlignment out;
  double last = 0;

  g_assert_true (
      wm_align_images (&image, &image, NULL, note_progress, &last, &out, &error));
  g_assert_cmpfloat (last, ==, 1);
  g_assert_false (wm_align_images (&image, &image, cancellable, cancel_soon, cancellable,
                                   &out, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
}

/* Points put 6 to 9 px wrong by hand; the program settles them. */
static void
test_refine (void)
{
  g_autoptr (GError) error = NULL;
  Scene before = plain_scene (5, 1);
  Scene after = plain_scene (5, 44);
  const WmPoint on_piece[4] = { { -130, -90 }, { 130, -90 }, { 130, 90 }, { -130, 90 } };
  const WmPoint slips[4] = { { 6, -4 }, { -7, 3 }, { 5, 7 }, { -4, -5 } };
  double photo_before[9], photo_after[9], start[9];
  WmPoint a[4], b[4];
  WmAlignImage ia, ib;
  WmAlignment out;

  place_plane (380, 285, -33, 0.85, 0, after.to_piece);
  g_autofree guint8 *pb = draw_scene (&before, &ib);
  g_autofree guint8 *pa = draw_scene (&after, &ia);
  wm_align_invert (before.to_piece, photo_before);
  wm_align_invert (after.to_piece, photo_after);
  for (int k = 0; k < 4; k++)
    {
      b[k] = wm_align_map (photo_before, on_piece[k]);
      a[k] = wm_align_map (photo_after, on_piece[k]);
      a[k].x += slips[k].x;
      a[k].y += slips[k].y;
    }
  g_assert_cmpint (wm_align_from_points (b, a, 4, start, NULL), ==, WM_OK);
  g_assert_cmpfloat (measure_error (&before, &after, start), >, 5);

  g_assert_true (
      wm_align_refine_images (&ib, &ia, start, NULL, NULL, NULL, &out, &error));
  g_assert_true (out.aligned);
  g_assert_cmpfloat (measure_error (&before, &after, out.matrix), <, 0.5);

  /* two pieces: whatever the hand said stays, and nothing is vouched for */
  after.piece = 8;
  g_autofree guint8 *other = draw_scene (&after, &ia);
  g_assert_true (
      wm_align_refine_images (&ib, &ia, start, NULL, NULL, NULL, &out, &error));
  g_assert_false (out.aligned);
  g_assert_cmpmem (out.matrix, sizeof start, start, sizeof start);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_pairs ();
  g_test_add_func ("/photo/align/refused/two-pieces-one-cloth",
                   test_different_pieces_on_one_cloth);
  g_test_add_func ("/photo/align/refused/two-pieces-two-cloths",
                   test_different_pieces_on_two_cloths);
  g_test_add_func ("/photo/align/refused/plain-ring", test_plain_ring);
  g_test_add_func ("/photo/align/refused/nothing-there", test_nothing_there);
  g_test_add_func ("/photo/align/no-pixels", test_no_pixels);
  g_test_add_func ("/photo/align/progress-and-cancel", test_progress_and_cancel);
  g_test_add_func ("/photo/align/refine", test_refine);
  return g_test_run ();
}
