/* test-judge.c: sharp is called sharp and blurred blurred, by known amounts of blur
 *
 * Blur, grain and movement are put in by ImageMagick, so how much is known. The
 * sample pieces' photos are used where they are there; invented ones always.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/focus.h"
#include "photo/judge.h"
#include "photo/load.h"
#include "photo/photo-start.h"

#include "corpus.h"

#include <locale.h>
#include <math.h>
#include <string.h>

static WmJudgement
judge (const char *name)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *summary = NULL;
  WmJudgement judgement;
  gboolean done = wm_photo_judge (corpus_path (name), &judgement, NULL, &error);

  g_assert_no_error (error);
  g_assert_true (done);
  summary = wm_judgement_summary (&judgement);
  g_test_message ("%s: focus %.2f bright %.4f dark %.4f shake %.2f, %s: %s", name,
                  judgement.focus, judgement.clipped_bright, judgement.clipped_dark,
                  judgement.shake, wm_verdict_code (judgement.verdict), summary);
  return judgement;
}

/* A plain bangle: two smooth bands of polished metal on cloth, a dozen soft shadings
 * and hardly an edge. */
static void
make_bangle (const char *name, const char *options)
{
  corpus_run (
      "convert -size 1600x1200 radial-gradient:'#6b6b70'-'#4a4a4e' "
      "-fill none -stroke '#c9a24a' -strokewidth 90 -draw 'circle 800,600 800,180' "
      "-stroke '#e4c878' -strokewidth 30 -draw 'circle 800,600 800,190' "
      "%s -quality 92 %s",
      options, name);
}

static void
test_plain_bangle (void)
{
  WmJudgement sharp, soft, blurred;

  make_bangle ("bangle.jpg", "");
  sharp = judge ("bangle.jpg");
  g_assert_cmpint (sharp.verdict, ==, WM_VERDICT_GOOD);
  g_assert_cmpuint (sharp.reasons, ==, 0);

  make_bangle ("soft.jpg", "-gaussian-blur 0x1.8");
  soft = judge ("soft.jpg");
  g_assert_cmpint (soft.verdict, ==, WM_VERDICT_USABLE);
  g_assert_cmpuint (soft.reasons & WM_REASON_SOFT, !=, 0);

  make_bangle ("blurred.jpg", "-gaussian-blur 0x4");
  blurred = judge ("blurred.jpg");
  g_assert_cmpint (blurred.verdict, ==, WM_VERDICT_RETAKE);
  g_assert_cmpuint (blurred.reasons & WM_REASON_BLURRED, !=, 0);
  g_assert_cmpfloat (sharp.focus, >, soft.focus);
  g_assert_cmpfloat (soft.focus, >, blurred.focus);
}

/* Grain is no sharpness: a blurred photo with noise stays blurred, a sharp one sharp. */
static void
test_grain (void)
{
  make_bangle ("grain.jpg", "-attenuate 0.3 +noise gaussian");
  g_assert_cmpint (judge ("grain.jpg").verdict, ==, WM_VERDICT_GOOD);

  make_bangle ("grain-blurred.jpg", "-gaussian-blur 0x4 -attenuate 0.3 +noise gaussian");
  g_assert_cmpint (judge ("grain-blurred.jpg").verdict, ==, WM_VERDICT_RETAKE);
}

/* A known gaussian blur of an ideal step is measured in pixels. */
static void
test_known_blur (void)
{
  static const double blurs[] = { 1.0, 1.5, 2.0, 3.0, 4.0 };

  for (gsize i = 0; i < G_N_ELEMENTS (blurs); i++)
    {
      g_autoptr (WmPixels) pixels = NULL;
      g_autoptr (GArray) edges = NULL;
      double blur;

      corpus_run (
          "convert -size 600x400 xc:'gray(60)' -fill 'gray(190)' "
          "-draw 'polygon 200,0 420,0 300,400 80,400' -gaussian-blur 0x%g step.png",
          blurs[i]);
      pixels = wm_photo_load_fit (corpus_path ("step.png"), 600, 600, NULL, NULL);
      edges = wm_edges_find (pixels, 100000);
      blur = wm_edges_blur (edges, 60);
      g_test_message ("blur %.1f measured as %.2f", blurs[i], blur);
      /* The pixel grid itself blurs by 1/sqrt 12 = 0.29 px. */
      g_assert_cmpfloat_with_epsilon (blur, hypot (blurs[i], 0.29), 0.15 * blurs[i]);
    }
}

/* The two constants of noise: Immerkaer's estimate, and that of focus.c. */
static void
test_noise (void)
{
  g_autoptr (WmPixels) pixels = wm_pixels_new (500, 400);
  g_autoptr (GRand) rand = g_rand_new_with_seed (99);
  g_autoptr (GArray) edges = NULL;

  for (int y = 0; y < 400; y++)
    for (int x = 0; x < 500; x++)
      {
        double sum = 0;
        guint8 *p = pixels->data + y * pixels->stride + x * 4;

        /* Twelve uniform numbers: nearly normal, standard deviation 1. */
        for (int i = 0; i < 12; i++)
          sum += g_rand_double (rand);
        p[0] = p[1] = p[2] = (guint8)lround (128 + 8 * (sum - 6));
        p[3] = 255;
      }

  g_test_message ("noise of 8 estimated as %.2f", wm_noise_estimate (pixels));
  g_assert_cmpfloat_with_epsilon (wm_noise_estimate (pixels), 8, 0.4);

  /* Of 200,000 pixels of nothing but noise, hardly any passes for an edge. */
  edges = wm_edges_find (pixels, 100000);
  g_test_message ("%u edges in noise", edges->len);
  g_assert_cmpuint (edges->len, <, 60);
}

static void
test_shaken (void)
{
  WmJudgement along, across;

  corpus_run ("convert -size 1600x1200 xc:'gray(90)' -fill none -stroke 'gray(200)' "
              "-strokewidth 40 -draw 'circle 500,600 500,200' -draw 'circle 1100,600 "
              "1100,300' -draw 'circle 800,300 800,200' shape.png");
  corpus_run ("convert shape.png -motion-blur 0x6+0 -quality 92 along.jpg && "
              "convert shape.png -motion-blur 0x6+90 -quality 92 across.jpg");
  along = judge ("along.jpg");
  across = judge ("across.jpg");
  g_assert_cmpuint (along.reasons & WM_REASON_SHAKEN, !=, 0);
  g_assert_cmpuint (across.reasons & WM_REASON_SHAKEN, !=, 0);
  g_assert_cmpint (along.verdict, !=, WM_VERDICT_GOOD);
  g_assert_cmpfloat (fmin (along.shake_degrees, 180 - along.shake_degrees), <=, 23);
  g_assert_cmpfloat_with_epsilon (across.shake_degrees, 90, 23);

  /* Held on its side, the same photo: the direction turns with it. */
  corpus_run ("exiftool -q -overwrite_original -n -Orientation=6 along.jpg");
  g_assert_cmpfloat_with_epsilon (judge ("along.jpg").shake_degrees, 90, 23);
}

static void
test_clipping (void)
{
  WmJudgement burnt, paper, velvet;

  /* A glare of exactly a quarter of the frame, not at its edge. */
  corpus_run ("convert -size 1600x1200 xc:'gray(100)' -fill white -draw 'rectangle "
              "400,300 1199,899' -fill black -draw 'rectangle 0,0 39,39' glare.png");
  burnt = judge ("glare.png");
  g_assert_cmpfloat_with_epsilon (burnt.clipped_bright, 0.25, 1e-9);
  g_assert_cmpfloat_with_epsilon (burnt.clipped_dark, 40 * 40 / (1600.0 * 1200), 1e-9);
  g_assert_cmpuint (burnt.reasons & WM_REASON_BLOWN, !=, 0);
  g_assert_cmpint (burnt.verdict, ==, WM_VERDICT_RETAKE);

  /* On pure white paper and on pure black velvet: no fault. */
  corpus_run ("convert -size 1600x1200 xc:white -fill none -stroke '#b08030' "
              "-strokewidth 60 -draw 'circle 800,600 800,250' -quality 95 paper.jpg && "
              "convert -size 1600x1200 xc:black -fill none -stroke '#b08030' "
              "-strokewidth 60 -draw 'circle 800,600 800,250' -quality 95 velvet.jpg");
  paper = judge ("paper.jpg");
  velvet = judge ("velvet.jpg");
  g_assert_cmpfloat (paper.clipped_bright, >, 0.5);
  g_assert_cmpuint (paper.reasons & WM_REASON_BLOWN, ==, 0);
  g_assert_cmpuint (velvet.reasons & WM_REASON_BLOCKED, ==, 0);
}

static void
test_nothing (void)
{
  WmJudgement flat, small;
  g_autofree const char **codes = NULL;

  corpus_run ("convert -size 1600x1200 xc:'gray(120)' flat.jpg");
  flat = judge ("flat.jpg");
  g_assert_true (isnan (flat.focus));
  g_assert_cmpint (flat.verdict, ==, WM_VERDICT_USABLE);
  codes = wm_judgement_reason_codes (&flat);
  g_assert_cmpstr (codes[0], ==, "no-detail");
  g_assert_null (codes[1]);
  g_assert_cmpuint (strlen (wm_reason_advice (WM_REASON_NO_DETAIL)), >, 10);

  corpus_make_scene ("tiny.jpg", 300, 200, "");
  small = judge ("tiny.jpg");
  g_assert_cmpuint (small.reasons & WM_REASON_SMALL, !=, 0);
  g_assert_cmpint (small.verdict, ==, WM_VERDICT_RETAKE);
}

/* One half sharp, one half not: judged at the mark, and on the map. */
static void
test_at_place (void)
{
  g_autoptr (WmPixels) pixels = NULL;
  g_autofree guint8 *map = NULL;
  double left, right, sky;
  int columns, rows;

  corpus_run ("convert -size 800x800 pattern:checkerboard -scale 200%% -crop 800x800+0+0 "
              "+repage tile.png && convert tile.png -gaussian-blur 0x5 blur.png && "
              "convert tile.png blur.png -size 400x800 xc:'gray(80)' +append half.png");
  g_assert_true (wm_photo_focus_at (corpus_path ("half.png"), (WmPoint) { 300, 400 }, 100,
                                    &left, NULL, NULL));
  g_assert_true (wm_photo_focus_at (corpus_path ("half.png"), (WmPoint) { 1200, 400 },
                                    100, &right, NULL, NULL));
  g_assert_true (wm_photo_focus_at (corpus_path ("half.png"), (WmPoint) { 1850, 400 }, 64,
                                    &sky, NULL, NULL));
  g_test_message ("sharp %.2f blurred %.2f", left, right);
  g_assert_cmpfloat (left, >, 0.7);
  g_assert_cmpfloat (right, <, 0.3);
  g_assert_true (isnan (sky));

  pixels = wm_photo_load_fit (corpus_path ("half.png"), 2000, 2000, NULL, NULL);
  map = wm_focus_map (pixels, 100, &columns, &rows);
  g_assert_cmpint (columns, ==, 20);
  g_assert_cmpint (rows, ==, 8);
  g_assert_cmpint (map[3 * columns + 3], >, 178);
  g_assert_cmpint (map[3 * columns + 12], <, 90);
  g_assert_cmpint (map[3 * columns + 12], >, 0);
  g_assert_cmpint (map[3 * columns + 18], ==, 0);
}

/* The data the limits were chosen on: each photo good as it is, soft at 2 px, to be
 * taken again at 4 px. */
static void
test_sample_pieces (void)
{
  g_autofree char *list = corpus_read ("ls '%s'/sample-pieces/photos/*/*.jpg "
                                       "2>/dev/null || true",
                                       g_getenv ("WM_SOURCE_DIR"));
  g_auto (GStrv) paths = g_strsplit (g_strstrip (list), "\n", -1);
  int count = 0;

  for (char **path = paths; *path != NULL && **path != '\0' && count < 6; path++, count++)
    {
      corpus_run ("cp '%s' as-is.jpg && convert as-is.jpg -gaussian-blur 0x2 -quality 92 "
                  "two.jpg && convert as-is.jpg -gaussian-blur 0x4 -quality 92 four.jpg",
                  *path);
      g_test_message ("%s", *path);
      g_assert_cmpint (judge ("as-is.jpg").verdict, ==, WM_VERDICT_GOOD);
      g_assert_cmpint (judge ("two.jpg").verdict, ==, WM_VERDICT_USABLE);
      g_assert_cmpint (judge ("four.jpg").verdict, ==, WM_VERDICT_RETAKE);
    }
  if (count == 0)
    g_test_skip ("no sample photos here");
}

int
main (int argc, char **argv)
{
  int result;

  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  wm_photo_start ();
  corpus_begin ();

  g_test_add_func ("/photo/judge/plain-bangle", test_plain_bangle);
  g_test_add_func ("/photo/judge/grain", test_grain);
  g_test_add_func ("/photo/judge/known-blur", test_known_blur);
  g_test_add_func ("/photo/judge/noise", test_noise);
  g_test_add_func ("/photo/judge/shaken", test_shaken);
  g_test_add_func ("/photo/judge/clipping", test_clipping);
  g_test_add_func ("/photo/judge/nothing", test_nothing);
  g_test_add_func ("/photo/judge/at-place", test_at_place);
  g_test_add_func ("/photo/judge/sample-pieces", test_sample_pieces);

  result = g_test_run ();
  corpus_end ();
  wm_photo_stop ();
  return result;
}
