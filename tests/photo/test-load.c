/* test-load.c: the pixels that come out, against other readers
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/load.h"
#include "photo/photo-start.h"

#include "corpus.h"

#include <locale.h>
#include <string.h>

static WmPixels *
load (const char *name, int side)
{
  g_autoptr (GError) error = NULL;
  WmPixels *pixels = wm_photo_load_fit (corpus_path (name), side, side, NULL, &error);

  g_assert_no_error (error);
  g_assert_nonnull (pixels);
  return pixels;
}

/* The reckoning reference's own table: a 3 x 2 picture in all eight ways. */
static void
test_orientation_table (void)
{
  static const char *const shown[] = { "10 20 30 40 50 60", "30 20 10 60 50 40",
                                       "60 50 40 30 20 10", "40 50 60 10 20 30",
                                       "10 40 20 50 30 60", "40 10 50 20 60 30",
                                       "60 30 50 20 40 10", "30 60 20 50 10 40" };

  corpus_write ("six.pgm", "P2 3 2 255 10 20 30 40 50 60 ", 29);
  corpus_run ("convert six.pgm six.png");
  corpus_make_orientations ("six.png");
  for (int o = 1; o <= 8; o++)
    {
      g_autoptr (WmPixels) pixels = NULL;
      g_autoptr (GString) row = g_string_new (NULL);

      g_autofree char *name = g_strdup_printf ("%d-six.png", o);

      pixels = load (name, 100);
      g_assert_cmpint (pixels->width, ==, o > 4 ? 2 : 3);
      for (int i = 0; i < 6; i++)
        g_string_append_printf (row, i > 0 ? " %d" : "%d", pixels->data[4 * i]);
      g_assert_cmpstr (row->str, ==, shown[o - 1]);
    }
}

/* Every orientation of JPEG, TIFF and WebP against ImageMagick's -auto-orient. */
static void
test_orientation_formats (void)
{
  static const char *const names[] = { "o.jpg", "o.png", "o.tif", "o.webp" };

  static const char *const words[] = {
    "TopLeft", "TopRight", "BottomRight", "BottomLeft",
    "LeftTop", "RightTop", "RightBottom", "LeftBottom"
  };

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      gboolean is_webp = g_str_has_suffix (names[i], "webp");

      corpus_make_scene (names[i], 61, 43,
                         is_webp ? "-define webp:lossless=true" : "-quality 95");
      corpus_make_orientations (names[i]);
      for (int o = 1; o <= 8; o++)
        {
          /* ImageMagick 6 reads no EXIF from PNG and WebP: told by hand there. */
          g_autofree char *options =
              g_strdup_printf ("-orient %s -auto-orient +repage", words[o - 1]);
          g_autofree char *name = g_strdup_printf ("%d-%s", o, names[i]);
          g_autoptr (WmPixels) ours = load (name, 1000);
          g_autoptr (WmPixels) theirs =
              corpus_magick_pixels (name, i == 0 ? "-auto-orient +repage" : options);

          g_test_message ("%s", name);
          g_assert_cmpint (corpus_difference (ours, theirs, NULL), <=, 1);
        }
    }
}

/* Colour types, depths, interlacing and transparency against ImageMagick. */
static const struct
{
  int colour_type, depth;
  const char *options;
} png_kinds[] = {
  { 0, 1, "-colorspace Gray -type Bilevel -depth 1" },
  { 0, 2, "-colorspace Gray +dither -posterize 4 -depth 2 -type Grayscale" },
  { 0, 4, "-colorspace Gray +dither -posterize 16 -depth 4 -type Grayscale" },
  { 0, 8, "-colorspace Gray -depth 8 -type Grayscale" },
  { 0, 16, "-colorspace Gray -depth 16 -type Grayscale" },
  { 2, 8, "-depth 8 -define png:color-type=2" },
  { 2, 16, "-depth 16 -define png:color-type=2" },
  { 3, 2, "-colors 4 -type Palette -define png:format=png8 -define png:bit-depth=2" },
  { 3, 4, "-colors 16 -type Palette -define png:format=png8 -define png:bit-depth=4" },
  { 3, 8, "-colors 200 -type Palette -define png:format=png8" },
  { 4, 8,
    "-colorspace Gray -alpha set -channel A -evaluate set 40% +channel -depth 8 "
    "-define png:color-type=4" },
  { 4, 16,
    "-colorspace Gray -alpha set -channel A -evaluate set 40% +channel -depth 16 "
    "-define png:color-type=4" },
  { 6, 8,
    "-alpha set -channel A -evaluate set 40% +channel -depth 8 "
    "-define png:color-type=6" },
  { 6, 16,
    "-alpha set -channel A -evaluate set 40% +channel -depth 16 "
    "-define png:color-type=6" }
};

static void
test_png_kinds (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (png_kinds); i++)
    for (int interlaced = 0; interlaced < 2; interlaced++)
      {
        g_autofree char *options =
            g_strconcat (png_kinds[i].options, interlaced ? " -interlace PNG" : "", NULL);
        g_autofree guint8 *bytes = NULL;
        g_autoptr (WmPixels) ours = NULL;
        g_autoptr (WmPixels) theirs = NULL;
        gsize length;

        corpus_make_scene ("kind.png", 37, 29, options);
        corpus_run ("pngcheck -q kind.png");
        bytes = corpus_load ("kind.png", &length);
        g_test_message ("type %d depth %d interlaced %d", bytes[25], bytes[24],
                        bytes[28]);
        g_assert_cmpint (bytes[25], ==, png_kinds[i].colour_type);
        g_assert_cmpint (bytes[24], ==, png_kinds[i].depth);
        g_assert_cmpint (bytes[28], ==, interlaced);

        ours = load ("kind.png", 100);
        theirs = corpus_magick_pixels ("kind.png", "-background white -flatten");
        g_assert_cmpint (corpus_difference (ours, theirs, NULL), <=, 1);
      }
}

static void
test_jpeg_kinds (void)
{
  static const char *const kinds[] = { "-quality 90",
                                       "-interlace JPEG -quality 90",
                                       "-colorspace Gray -quality 90",
                                       "-sampling-factor 4:4:4",
                                       "-sampling-factor 4:2:2",
                                       "-sampling-factor 4:2:0",
                                       "-sampling-factor 4:1:1" };

  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      g_autoptr (WmPixels) ours = NULL;
      g_autoptr (WmPixels) theirs = NULL;

      corpus_make_scene ("kind.jpg", 131, 97, kinds[i]);
      ours = load ("kind.jpg", 1000);
      theirs = corpus_magick_pixels ("kind.jpg", "");
      g_test_message ("%s", kinds[i]);
      g_assert_cmpint (corpus_difference (ours, theirs, NULL), <=, 1);
    }
}

/* CMYK has no one right answer without a profile: its greys must be near. */
static void
test_jpeg_cmyk (void)
{
  g_autoptr (WmPixels) ours = NULL;

  corpus_run ("convert -size 40x30 xc:white -fill black -draw 'rectangle 20,0 40,30' "
              "-colorspace CMYK cmyk.jpg");
  ours = load ("cmyk.jpg", 100);
  g_assert_cmpint (ours->width, ==, 40);
  for (int c = 0; c < 3; c++)
    {
      g_assert_cmpint (ours->data[4 * 5 + c], >, 240);
      g_assert_cmpint (ours->data[4 * 35 + c], <, 70);
    }
}

static void
test_first_frame (void)
{
  g_autoptr (WmPixels) tiff = NULL;
  g_autoptr (WmPixels) webp = NULL;

  corpus_run ("convert -size 20x20 xc:red xc:lime xc:blue pages.tif");
  corpus_run ("convert -size 20x20 xc:red xc:lime xc:blue -delay 10 anim.webp");
  tiff = load ("pages.tif", 100);
  webp = load ("anim.webp", 100);
  g_assert_cmpint (tiff->height, ==, 20);
  g_assert_cmpint (tiff->data[2], >, 250);
  g_assert_cmpint (tiff->data[1], <, 5);
  g_assert_cmpint (webp->height, ==, 20);
  g_assert_cmpint (webp->data[2], >, 240);
}

/* A profile far from sRGB; ImageMagick converts through the same library, so this
 * shows that the profile is found, joined and applied the right way round. */
static void
test_profile (void)
{
  static const char *const names[] = { "icc.jpg", "icc.png", "icc.tif" };
  const char *wide = "/usr/share/color/icc/ghostscript/a98.icc";
  const char *srgb = "/usr/share/color/icc/ghostscript/srgb.icc";

  if (!g_file_test (wide, G_FILE_TEST_EXISTS))
    {
      g_test_skip ("no profile here (package libgs-common)");
      return;
    }

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *options = g_strdup_printf ("-quality 100 -profile %s", wide);
      g_autofree char *reading = g_strdup_printf ("-intent relative "
                                                  "-profile %s",
                                                  srgb);
      g_autoptr (WmPixels) ours = NULL;
      g_autoptr (WmPixels) theirs = NULL;
      g_autoptr (WmPixels) plain = NULL;
      double mean;

      corpus_make_scene (names[i], 64, 48, options);
      ours = load (names[i], 100);
      theirs = corpus_magick_pixels (names[i], reading);
      plain = corpus_magick_pixels (names[i], "-strip");
      g_test_message ("%s: %d, without the profile %d", names[i],
                      corpus_difference (ours, theirs, NULL),
                      corpus_difference (ours, plain, NULL));
      corpus_difference (ours, theirs, &mean);
      g_assert_cmpint (corpus_difference (ours, theirs, NULL), <=, 6);
      g_assert_cmpfloat (mean, <, 1.0);
      g_assert_cmpint (corpus_difference (ours, plain, NULL), >, 20);
    }
}

/* Scaled: sizes are those promised, and the picture is ImageMagick's, nearly. */
static void
test_fit_sizes (void)
{
  static const struct
  {
    int max_width, max_height, width, height;
  } cases[] = { { 1000, 1000, 800, 600 }, { 400, 400, 400, 300 }, { 200, 600, 200, 150 },
                { 333, 333, 333, 250 },   { 7, 7, 7, 5 },         { 1, 1, 1, 1 },
                { 800, 75, 100, 75 } };

  corpus_make_scene ("fit.jpg", 800, 600, "-quality 95");
  corpus_make_scene ("fit.png", 800, 600, "");
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    for (int is_png = 0; is_png < 2; is_png++)
      {
        g_autoptr (WmPixels) ours =
            wm_photo_load_fit (corpus_path (is_png ? "fit.png" : "fit.jpg"),
                               cases[i].max_width, cases[i].max_height, NULL, NULL);
        g_autofree char *options =
            g_strdup_printf ("-resize %dx%d!", cases[i].width, cases[i].height);
        g_autoptr (WmPixels) theirs = NULL;
        double mean;

        g_assert_nonnull (ours);
        g_assert_cmpint (ours->width, ==, cases[i].width);
        g_assert_cmpint (ours->height, ==, cases[i].height);
        if (cases[i].width < 100)
          continue;
        theirs = corpus_magick_pixels (is_png ? "fit.png" : "fit.jpg", options);
        corpus_difference (ours, theirs, &mean);
        g_test_message ("%dx%d mean %.2f", cases[i].width, cases[i].height, mean);
        g_assert_cmpfloat (mean, <, 3.0);
      }
}

static void
test_about (void)
{
  g_autoptr (WmPixels) small = NULL;
  g_autoptr (WmPixels) large = NULL;

  corpus_make_scene ("about.jpg", 1600, 1000, "");
  small = wm_photo_load_about (corpus_path ("about.jpg"), 400, NULL, NULL);
  g_assert_cmpint (small->width, ==, 400);
  large = wm_photo_load_about (corpus_path ("about.jpg"), 3000, NULL, NULL);
  g_assert_cmpint (large->width, ==, 1600);
}

/* A region at true size is exactly that part of the whole, in every orientation. */
static void
test_region (void)
{
  corpus_make_scene ("region.jpg", 301, 203, "-quality 90 -sampling-factor 4:2:0");
  corpus_make_orientations ("region.jpg");
  for (int o = 1; o <= 8; o++)
    {
      g_autofree char *name = g_strdup_printf ("%d-region.jpg", o);
      g_autoptr (WmPixels) whole = load (name, 1000);
      g_autoptr (WmPixels) part = NULL;
      g_autoptr (GError) error = NULL;

      part =
          wm_photo_load_region (corpus_path (name), 50, 70, 40, 30, 40, 30, NULL, &error);
      g_assert_no_error (error);
      for (int y = 0; y < 30; y++)
        g_assert_cmpmem (part->data + y * part->stride, 160,
                         whole->data + (y + 70) * whole->stride + 50 * 4, 160);
    }
}

static void
test_region_scaled (void)
{
  g_autoptr (WmPixels) ours = NULL;
  g_autoptr (WmPixels) theirs = NULL;
  g_autoptr (WmPixels) grown = NULL;
  g_autoptr (GError) error = NULL;
  double mean;

  corpus_make_scene ("scaled.png", 800, 600, "");
  ours = wm_photo_load_region (corpus_path ("scaled.png"), 200, 120, 400, 320, 100, 80,
                               NULL, NULL);
  theirs = corpus_magick_pixels ("scaled.png", "-crop 400x320+200+120 +repage "
                                               "-resize 100x80!");
  corpus_difference (ours, theirs, &mean);
  g_assert_cmpfloat (mean, <, 3.0);

  grown = wm_photo_load_region (corpus_path ("scaled.png"), 10.5, 20.25, 30, 30, 300, 300,
                                NULL, NULL);
  g_assert_cmpint (grown->width, ==, 300);

  g_assert_null (wm_photo_load_region (corpus_path ("scaled.png"), 900, 0, 10, 10, 10, 10,
                                       NULL, &error));
  g_assert_error (error, WM_PHOTO_ERROR, WM_PHOTO_ERROR_LYING);
}

static void
test_cancelled (void)
{
  static const char *const names[] = { "c.jpg", "c.png" };
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();

  g_cancellable_cancel (cancellable);
  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autoptr (GError) error = NULL;

      corpus_make_scene (names[i], 900, 900, "");
      g_assert_null (
          wm_photo_load_fit (corpus_path (names[i]), 900, 900, cancellable, &error));
      g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
    }
}

/* Sharing memory with cairo and GBytes outlives the caller's own reference. */
static void
test_pixels_shared (void)
{
  WmPixels *pixels = wm_pixels_new (4, 3);
  GBytes *bytes;
  cairo_surface_t *surface;

  pixels->data[0] = 77;
  bytes = wm_pixels_get_bytes (pixels);
  surface = wm_pixels_get_surface (pixels);
  wm_pixels_unref (pixels);
  g_assert_cmpuint (g_bytes_get_size (bytes), ==, 48);
  g_assert_cmpint (((const guint8 *)g_bytes_get_data (bytes, NULL))[0], ==, 77);
  g_assert_cmpint (cairo_image_surface_get_data (surface)[0], ==, 77);
  g_bytes_unref (bytes);
  cairo_surface_destroy (surface);

  g_assert_null (wm_pixels_new (0, 5));
  g_assert_null (wm_pixels_new (70000, 1));
}

int
main (int argc, char **argv)
{
  int result;

  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  wm_photo_start ();
  corpus_begin ();

  g_test_add_func ("/photo/load/orientation-table", test_orientation_table);
  g_test_add_func ("/photo/load/orientation-formats", test_orientation_formats);
  g_test_add_func ("/photo/load/png-kinds", test_png_kinds);
  g_test_add_func ("/photo/load/jpeg-kinds", test_jpeg_kinds);
  g_test_add_func ("/photo/load/jpeg-cmyk", test_jpeg_cmyk);
  g_test_add_func ("/photo/load/first-frame", test_first_frame);
  g_test_add_func ("/photo/load/profile", test_profile);
  g_test_add_func ("/photo/load/fit-sizes", test_fit_sizes);
  g_test_add_func ("/photo/load/about", test_about);
  g_test_add_func ("/photo/load/region", test_region);
  g_test_add_func ("/photo/load/region-scaled", test_region_scaled);
  g_test_add_func ("/photo/load/cancelled", test_cancelled);
  g_test_add_func ("/photo/load/pixels-shared", test_pixels_shared);

  result = g_test_run ();
  corpus_end ();
  wm_photo_stop ();
  return result;
}
