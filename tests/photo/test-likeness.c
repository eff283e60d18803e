/* test-likeness.c: one view from another, on the sample pieces' photos
 *
 * ImageMagick blurs, moves, brightens and turns; what is expected follows from what was
 * done to the picture.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/likeness.h"

#include <glib.h>

#include "corpus.h"
#include "photo/load.h"
#include "photo/photo-start.h"

static void
take (const char *path, WmLikeness *out)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (WmPixels) pixels = wm_photo_load_fit (path, 384, 384, NULL, &error);

  g_assert_no_error (error);
  wm_likeness_take (pixels, out);
}

static char *
sample (const char *name)
{
  return g_build_filename (g_getenv ("WM_SOURCE_DIR"), "sample-pieces", "photos", name,
                           NULL);
}

static const char *const views[] = {
  "ring/before-top.jpg",
  "ring/before-finger.jpg",
  "ring/before-head.jpg",
  "bangle/before-hinge.jpg",
  "bangle/before-front.jpg",
  "bangle/before-clasp.jpg",
  "earrings/before-pair.jpg",
  "earrings/before-wire.jpg",
  "brooch/before-back.jpg",
  "brooch/before-front.jpg",
  "brooch/before-catch.jpg",
  "pendant/2026-before-front.jpg",
  "pendant/2026-before-jump-ring.jpg",
  "strand/before-whole.jpg",
  "strand/before-clasp.jpg",
};

static char **
list_samples (void)
{
  GPtrArray *names = g_ptr_array_new ();

  for (guint i = 0; i < G_N_ELEMENTS (views); i++)
    {
      char *path = sample (views[i]);

      if (g_file_test (path, G_FILE_TEST_EXISTS))
        g_ptr_array_add (names, path);
      else
        g_free (path);
    }
  g_assert_cmpuint (names->len, >=, 4);
  g_ptr_array_add (names, NULL);
  return (char **)g_ptr_array_free (names, FALSE);
}

static void
test_same_view (void)
{
  static const char *const changes[] = {
    "-blur 0x2",
    "-blur 0x4",
    "-distort SRT '15,10 1 0 0,0'",
    "-distort SRT '0,0 1 1.5 10,8'",
    "-modulate 125",
    "-evaluate multiply 0.75 -attenuate 0.4 +noise Gaussian",
  };
  g_auto (GStrv) paths = list_samples ();
  double least = 1;

  for (int i = 0; paths[i] != NULL; i++)
    for (guint c = 0; c < G_N_ELEMENTS (changes); c++)
      {
        WmLikeness a, b;
        double likeness;

        corpus_run ("convert -size 500x500 '%s' -resize 500x500 -virtual-pixel edge %s"
                    " changed.jpg",
                    paths[i], changes[c]);
        take (paths[i], &a);
        take (corpus_path ("changed.jpg"), &b);
        likeness = wm_likeness_compare (&a, &b);
        least = MIN (least, likeness);
        g_assert_cmpfloat (likeness, >, WM_LIKENESS_SAME);
      }
  g_test_message ("the least likeness of one view, changed: %.3f", least);
}

static void
test_other_view (void)
{
  g_auto (GStrv) paths = list_samples ();
  double most = 0;

  for (int i = 0; paths[i] != NULL; i++)
    for (int j = i + 1; paths[j] != NULL; j++)
      {
        WmLikeness a, b;

        take (paths[i], &a);
        take (paths[j], &b);
        most = MAX (most, wm_likeness_compare (&a, &b));
        g_assert_cmpfloat (wm_likeness_compare (&a, &b), <, WM_LIKENESS_SAME);
      }
  g_test_message ("the most likeness of two views: %.3f", most);
}

static void
test_turned (void)
{
  g_autofree char *path = sample ("ring/before-top.jpg");
  WmLikeness a, b;

  corpus_run ("convert '%s' -rotate 90 turned.jpg", path);
  take (path, &a);
  take (corpus_path ("turned.jpg"), &b);
  g_assert_cmpfloat (wm_likeness_compare (&a, &b), ==, 0);
}

static void
test_plain (void)
{
  WmLikeness light, dark, scene, none = { 0 };

  corpus_run ("convert -size 300x200 xc:'gray(200)' light.png");
  corpus_run ("convert -size 300x200 xc:'gray(60)' dark.png");
  corpus_make_scene ("scene.png", 300, 200, "");
  take (corpus_path ("light.png"), &light);
  take (corpus_path ("dark.png"), &dark);
  take (corpus_path ("scene.png"), &scene);
  g_assert_cmpfloat (wm_likeness_compare (&light, &light), ==, 1);
  g_assert_cmpfloat (wm_likeness_compare (&light, &dark), ==, 0);
  g_assert_cmpfloat (wm_likeness_compare (&light, &scene), ==, 0);
  g_assert_cmpfloat (wm_likeness_compare (&none, &none), ==, 0);
}

int
main (int argc, char **argv)
{
  int status;

  g_test_init (&argc, &argv, NULL);
  wm_photo_start ();
  corpus_begin ();
  g_test_add_func ("/photo/likeness/same-view", test_same_view);
  g_test_add_func ("/photo/likeness/other-view", test_other_view);
  g_test_add_func ("/photo/likeness/turned", test_turned);
  g_test_add_func ("/photo/likeness/plain", test_plain);
  status = g_test_run ();
  corpus_end ();
  wm_photo_stop ();
  return status;
}
