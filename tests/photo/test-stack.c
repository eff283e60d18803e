/* test-stack.c: every place of a stack is as sharp as its sharpest frame
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/judge.h"
#include "photo/load.h"
#include "photo/photo-start.h"
#include "photo/stack.h"

#include "corpus.h"

#include <locale.h>
#include <math.h>
#include <string.h>

/* Three frames of one scene, each sharp in another third and blurred elsewhere. */
static void
make_frames (void)
{
  corpus_run ("convert -size 600x400 -seed 9 plasma:tan-navy -fill none -stroke white "
              "-strokewidth 2 -draw 'line 0,30 600,370' -draw 'line 0,370 600,15' "
              "-draw 'circle 100,200 100,130' -draw 'circle 300,200 300,145' "
              "-draw 'circle 500,200 500,125' \\( -size 60x40 -seed 3 xc: +noise Random "
              "-scale 600x400! \\) -compose blend -define compose:args=30 -composite "
              "sharp.png && convert sharp.png -gaussian-blur 0x5 soft.png");
  for (int i = 0; i < 3; i++)
    corpus_run (
        "convert -size 600x400 xc:black -fill white -draw 'rectangle %d,0 %d,399' "
        "-blur 0x14 mask.png && convert soft.png sharp.png mask.png -composite "
        "frame%d.png",
        200 * i, 200 * i + 199, i);
}

static double
distance (const char *name)
{
  g_autoptr (WmPixels) is = corpus_magick_pixels (name, "");
  g_autoptr (WmPixels) wanted = corpus_magick_pixels ("sharp.png", "");
  double mean;

  corpus_difference (is, wanted, &mean);
  return mean;
}

static void
on_progress (double done, gpointer user_data)
{
  double *last = user_data;

  g_assert_cmpfloat (done, >=, *last);
  *last = done;
}

static void
test_merge (void)
{
  const char *paths[3];
  g_autoptr (GError) error = NULL;
  double last = 0, frame, merged;

  make_frames ();
  for (int i = 0; i < 3; i++)
    {
      g_autofree char *name = g_strdup_printf ("frame%d.png", i);

      paths[i] = corpus_path (name);
    }
  g_assert_true (wm_photo_stack (paths, 3, corpus_path ("stack.jpg"), NULL, on_progress,
                                 &last, NULL, &error));
  g_assert_no_error (error);
  g_assert_cmpfloat (last, ==, 1.0);

  frame = distance ("frame1.png");
  merged = distance ("stack.jpg");
  g_test_message ("from the sharp scene: middle frame %.2f, merged %.2f", frame, merged);
  g_assert_cmpfloat (merged, <, frame / 2);

  /* As sharp in each third as the frame that was focused there. */
  for (int i = 0; i < 3; i++)
    {
      double focus, best;

      g_assert_true (wm_photo_focus_at (corpus_path ("stack.jpg"),
                                        (WmPoint) { 100 + 200 * i, 200 }, 75, &focus,
                                        NULL, NULL));
      g_assert_true (wm_photo_focus_at (corpus_path ("sharp.png"),
                                        (WmPoint) { 100 + 200 * i, 200 }, 75, &best, NULL,
                                        NULL));
      g_test_message ("third %d: focus %.2f of %.2f", i, focus, best);
      g_assert_cmpfloat (focus, >, 0.85 * best);
    }
}

/* A frame that lies a little aside is laid on the others first, or left: the result is
 * never worse than the middle frame alone. */
static void
test_shifted (void)
{
  const char *paths[3];
  g_autoptr (GError) error = NULL;
  int moved = -1;

  make_frames ();
  corpus_run ("convert frame0.png -distort SRT '300,200 1.01 0 304,198' aside.png");
  paths[0] = corpus_path ("aside.png");
  paths[1] = corpus_path ("frame1.png");
  paths[2] = corpus_path ("frame2.png");
  g_assert_true (wm_photo_stack (paths, 3, corpus_path ("stack.jpg"), &moved, NULL, NULL,
                                 NULL, &error));
  g_test_message ("%d moved; middle frame %.2f, merged %.2f", moved,
                  distance ("frame1.png"), distance ("stack.jpg"));
  g_assert_cmpint (moved, <=, 2);
  g_assert_cmpfloat (distance ("stack.jpg"), <, distance ("frame1.png"));
}

static void
test_refused (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  const char *paths[2];

  make_frames ();
  corpus_run ("convert frame0.png -resize 50%% half.png; echo no > no.png");
  paths[0] = corpus_path ("half.png");
  paths[1] = corpus_path ("frame1.png");
  g_assert_false (
      wm_photo_stack (paths, 2, corpus_path ("x.jpg"), NULL, NULL, NULL, NULL, &error));
  g_assert_error (error, WM_PHOTO_ERROR, WM_PHOTO_ERROR_LYING);
  g_assert_nonnull (strstr (error->message, "half.png"));
  g_clear_error (&error);

  paths[0] = corpus_path ("no.png");
  g_assert_false (
      wm_photo_stack (paths, 2, corpus_path ("x.jpg"), NULL, NULL, NULL, NULL, &error));
  g_assert_error (error, WM_PHOTO_ERROR, WM_PHOTO_ERROR_NOT_A_PICTURE);
  g_clear_error (&error);

  g_cancellable_cancel (cancellable);
  paths[0] = corpus_path ("frame0.png");
  g_assert_false (wm_photo_stack (paths, 2, corpus_path ("x.jpg"), NULL, NULL, NULL,
                                  cancellable, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
  g_assert_false (g_file_test (corpus_path ("x.jpg"), G_FILE_TEST_EXISTS));
}

int
main (int argc, char **argv)
{
  int result;

  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  wm_photo_start ();
  corpus_begin ();

  g_test_add_func ("/photo/stack/merge", test_merge);
  g_test_add_func ("/photo/stack/shifted", test_shifted);
  g_test_add_func ("/photo/stack/refused", test_refused);

  result = g_test_run ();
  corpus_end ();
  wm_photo_stop ();
  return result;
}
