/* test-png-write.c: marked pictures read back by pngcheck, exiftool, ImageMagick
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/load.h"
#include "photo/photo-start.h"
#include "photo/png-write.h"

#include "corpus.h"

#include <glib/gstdio.h>
#include <locale.h>
#include <math.h>
#include <png.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

static void
write_png (const char *photo, const char *dest, const WmPictureOptions *options)
{
  g_autoptr (GError) error = NULL;
  gboolean done = wm_picture_write_png (corpus_path (photo), corpus_path (dest), options,
                                        NULL, &error);

  g_assert_no_error (error);
  g_assert_true (done);
}

/* Without marks: the photo's pixels, upright, in every orientation. */
static void
test_upright (void)
{
  corpus_make_scene ("u.jpg", 321, 543, "-quality 92");
  corpus_make_orientations ("u.jpg");
  for (int o = 1; o <= 8; o++)
    {
      WmPictureOptions options = { 0 };
      g_autofree char *name = g_strdup_printf ("%d-u.jpg", o);
      g_autoptr (WmPixels) out = NULL;
      g_autoptr (WmPixels) photo = NULL;
      g_autoptr (WmPixels) theirs = NULL;

      write_png (name, "u.png", &options);
      corpus_run ("pngcheck -q u.png");

      out = corpus_magick_pixels ("u.png", "");
      photo = wm_photo_load_fit (corpus_path (name), 9999, 9999, NULL, NULL);
      theirs = corpus_magick_pixels (name, "-auto-orient +repage");
      g_assert_cmpint (corpus_difference (out, photo, NULL), ==, 0);
      g_assert_cmpint (corpus_difference (out, theirs, NULL), <=, 1);
    }
}

/* The three ways rows come: a JPEG's rows, libvips' region, pixels in memory. */
static void
test_other_formats (void)
{
  static const char *const names[] = { "f.png", "f.tif", "f.webp", "f.jpg" };
  static const int sides[] = { 0, 200 };

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      corpus_make_scene (names[i], 700, 401, "");
      corpus_make_orientations (names[i]);
      for (gsize s = 0; s < G_N_ELEMENTS (sides); s++)
        for (int o = 1; o <= 6; o += 5)
          {
            WmPictureOptions options = { .long_side = sides[s] };
            int side = sides[s] > 0 ? sides[s] : 9999;
            g_autofree char *name = g_strdup_printf ("%d-%s", o, names[i]);
            g_autoptr (WmPixels) out = NULL;
            g_autoptr (WmPixels) photo = NULL;

            write_png (name, "f-out.png", &options);
            out = corpus_magick_pixels ("f-out.png", "");
            photo = wm_photo_load_fit (corpus_path (name), side, side, NULL, NULL);
            g_test_message ("%s to %d", name, side);
            g_assert_cmpint (MAX (out->width, out->height), ==, MIN (side, 700));
            g_assert_cmpint (corpus_difference (out, photo, NULL), <=, 1);
          }
    }
}

static char *
read_tag (const char *name, const char *tag)
{
  g_autofree char *out = corpus_read ("exiftool -s3 -charset UTF8 -PNG:%s %s", tag, name);

  return g_strdup (g_strchomp (out));
}

static void
test_notes (void)
{
  static const struct
  {
    const char *tag, *value;
  } expected[] = { { "Title", "2026-0151-Q line bracelet" },
                   { "Source", "photo 3 of 7" },
                   { "Description", "Öse geschwächt, 0,52 ± 0,02 mm" },
                   { "Comment", "checked" },
                   { "CreationTime", "2026-03-14T09:39:26Z" } };
  WmPictureOptions options = { .note = { .title = "2026-0151-Q line bracelet",
                                         .source = "photo 3 of 7",
                                         .description = "Öse geschwächt, 0,52 ± 0,02 mm",
                                         .comment = "checked",
                                         .has_created = TRUE,
                                         .created_us =
                                             G_GINT64_CONSTANT (1773481166000000),
                                         .mm_per_px = 0.0125 } };
  g_autofree char *chunks = NULL;
  g_autofree char *software = NULL;

  corpus_make_scene ("n.jpg", 400, 300, "");
  write_png ("n.jpg", "n.png", &options);

  for (gsize i = 0; i < G_N_ELEMENTS (expected); i++)
    {
      g_autofree char *value = read_tag ("n.png", expected[i].tag);

      g_assert_cmpstr (value, ==, expected[i].value);
    }
  software = read_tag ("n.png", "Software");
  g_assert_true (g_str_has_prefix (software, "Wearmark"));

  /* pngcheck: valid, sRGB said, text before data, UTF-8 only in iTXt, 80000 px/m. */
  chunks = corpus_read ("pngcheck -v n.png");
  g_assert_nonnull (strstr (chunks, "No errors detected"));
  g_assert_nonnull (strstr (chunks, "chunk sRGB"));
  g_assert_nonnull (strstr (chunks, "iTXt"));
  g_assert_nonnull (strstr (chunks, "80000x80000 pixels/meter"));
  g_assert_true (strstr (chunks, "tEXt") < strstr (chunks, "IDAT"));
}

static gboolean
contains (const guint8 *data, gsize length, const guint8 *part, gsize part_length)
{
  for (gsize i = 0; i + part_length <= length; i++)
    if (memcmp (data + i, part, part_length) == 0)
      return TRUE;

  return FALSE;
}

/* Reckoning reference, section 11: the whole chunk with its check sum. */
static void
test_physical_scale (void)
{
  static const struct
  {
    double mm_per_px;
    guint8 chunk[21];
  } cases[] = {
    { 1000.0 / 11811, { 0,    0, 0, 9,    'p',  'H', 'Y',  's',  0,    0,   0x2e,
                        0x23, 0, 0, 0x2e, 0x23, 1,   0x78, 0xa5, 0x3f, 0x76 } },
    { 0.0125, { 0,    0, 0, 9,    'p',  'H', 'Y',  's',  0,    1,   0x38,
                0x80, 0, 1, 0x38, 0x80, 1,   0x0a, 0xb4, 0xa2, 0xd1 } },
    { 1000.0 / 3780, { 0,    0, 0, 9,    'p',  'H', 'Y',  's',  0,    0,   0x0e,
                       0xc4, 0, 0, 0x0e, 0xc4, 1,   0x95, 0x2b, 0x0e, 0x1b } }
  };
  g_autoptr (WmPixels) pixels = wm_pixels_new (5, 4);

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      WmPngNote note = { .mm_per_px = cases[i].mm_per_px };
      g_autoptr (GBytes) bytes = wm_pixels_to_png (pixels, &note, NULL);
      gsize length;
      const guint8 *data = g_bytes_get_data (bytes, &length);

      g_assert_true (contains (data, length, cases[i].chunk, sizeof cases[i].chunk));
    }
}

/* Scaled to a quarter, a pixel is four times as large on the piece. */
static void
test_scale_follows_size (void)
{
  WmPictureOptions options = { .long_side = 100, .note = { .mm_per_px = 0.01 } };
  g_autofree char *chunks = NULL;

  corpus_make_scene ("s.jpg", 400, 300, "");
  write_png ("s.jpg", "s.png", &options);
  chunks = corpus_read ("pngcheck -v s.png");
  g_assert_nonnull (strstr (chunks, "25000x25000 pixels/meter"));
}

static void
test_no_scale (void)
{
  WmPictureOptions options = { 0 };
  g_autofree char *chunks = NULL;

  corpus_make_scene ("s.jpg", 40, 30, "-density 300");
  write_png ("s.jpg", "s.png", &options);
  chunks = corpus_read ("pngcheck -v s.png");
  g_assert_null (strstr (chunks, "pHYs"));
}

/* Marks are drawn over strip borders without a seam, and away from them the photo
 * is untouched. */
static void
test_marks (void)
{
  WmPoint spot = { 300, 511 };
  WmPoint line[] = { { 500, 200 }, { 520, 800 } };
  WmPictureMark marks[] = { { .severity = WM_SEVERITY_REPAIR,
                              .points = &spot,
                              .n_points = 1,
                              .number = 1,
                              .is_pinned = TRUE,
                              .disc = { 300, 512 } },
                            { .severity = WM_SEVERITY_WATCH,
                              .shape = WM_SHAPE_LINE,
                              .points = line,
                              .n_points = 2,
                              .number = 2 } };
  WmPictureOptions options = { .marks = marks, .n_marks = 2, .radius = 40 };
  g_autoptr (WmPixels) marked = NULL;
  g_autoptr (WmPixels) plain = NULL;
  WmMarkLook look = { .severity = WM_SEVERITY_REPAIR,
                      .points = &spot,
                      .n_points = 1,
                      .number = 1,
                      .disc = { 300, 512 },
                      .radius = 40 };
  WmMarkStyle style;
  cairo_surface_t *surface;
  cairo_t *cr;

  corpus_make_scene ("m.jpg", 900, 1000, "");
  write_png ("m.jpg", "m.png", &options);
  marked = corpus_magick_pixels ("m.png", "");
  plain = wm_photo_load_fit (corpus_path ("m.jpg"), 9999, 9999, NULL, NULL);

  /* Far corners: as the photo. */
  for (int i = 0; i < 50; i++)
    g_assert_cmpmem (marked->data + i * marked->stride, 400,
                     plain->data + i * plain->stride, 400);

  /* The disc drawn in one piece on the photo is the disc that went over the border
   * of two strips (row 512). */
  wm_mark_style_init (&style);
  style.px = 40 / WM_MARK_R_PHOTO;
  surface = wm_pixels_get_surface (plain);
  cr = cairo_create (surface);
  wm_mark_draw_disc (cr, &look, &style);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  for (int y = 440; y < 585; y++)
    for (int x = 230; x < 370; x++)
      for (int c = 0; c < 3; c++)
        g_assert_cmpint (abs (marked->data[y * marked->stride + x * 4 + c]
                              - plain->data[y * plain->stride + x * 4 + c]),
                         <=, 2);
}

static void
test_grey (void)
{
  WmPoint spot = { 100, 100 };
  WmPictureMark mark = {
    .severity = WM_SEVERITY_REPAIR, .points = &spot, .n_points = 1, .number = 1
  };
  WmPictureOptions options = { .marks = &mark, .n_marks = 1, .grey = TRUE };
  g_autoptr (WmPixels) out = NULL;

  corpus_make_scene ("g.jpg", 300, 300, "");
  write_png ("g.jpg", "g.png", &options);
  out = corpus_magick_pixels ("g.png", "");
  for (int i = 0; i < 300 * 300; i++)
    g_assert_true (out->data[4 * i] == out->data[4 * i + 1]
                   && out->data[4 * i] == out->data[4 * i + 2]);
}

/* What stood there is kept whole when the writing fails, and no scrap is left. */
static void
test_failures (void)
{
  WmPictureOptions options = { 0 };
  g_autoptr (GError) error = NULL;
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autofree char *left = NULL;
  g_autofree guint8 *kept = NULL;
  gsize length;

  corpus_run ("mkdir target");
  corpus_make_scene ("ok.jpg", 300, 900, "");
  corpus_write ("target/out.png", "old", 3);

  g_cancellable_cancel (cancellable);
  g_assert_false (wm_picture_write_png (corpus_path ("ok.jpg"),
                                        corpus_path ("target/out.png"), &options,
                                        cancellable, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
  g_clear_error (&error);

  corpus_write ("bad.jpg", "no picture", 10);
  g_assert_false (wm_picture_write_png (
      corpus_path ("bad.jpg"), corpus_path ("target/out.png"), &options, NULL, &error));
  g_assert_error (error, WM_PHOTO_ERROR, WM_PHOTO_ERROR_NOT_A_PICTURE);
  g_clear_error (&error);

  g_assert_false (wm_picture_write_png (
      corpus_path ("ok.jpg"), corpus_path ("nowhere/out.png"), &options, NULL, &error));
  g_assert_error (error, WM_PHOTO_ERROR, WM_PHOTO_ERROR_NO_PLACE);
  g_assert_nonnull (strstr (error->message, "out.png"));
  g_clear_error (&error);
  g_assert_false (wm_picture_write_png (corpus_path ("ok.jpg"), corpus_path ("target"),
                                        &options, NULL, &error));
  g_assert_error (error, WM_PHOTO_ERROR, WM_PHOTO_ERROR_NO_PLACE);
  g_clear_error (&error);

  kept = corpus_load ("target/out.png", &length);
  g_assert_cmpmem (kept, length, "old", 3);
  left = corpus_read ("ls -A target");
  g_assert_cmpstr (left, ==, "out.png\n");
}

/* The choice of level and filter, beside libpng's default (levels in the report of
 * the measurement; here only that ours is not slower and not much larger). */
typedef struct
{
  double seconds;
  long bytes;
} Cost;

static Cost
write_plain (WmPixels *pixels, int level, int filter, const char *name)
{
  FILE *file = fopen (corpus_path (name), "wb");
  png_structp png = png_create_write_struct (PNG_LIBPNG_VER_STRING, NULL, NULL, NULL);
  png_infop info = png_create_info_struct (png);
  Cost cost;
  gint64 start = g_get_monotonic_time ();

  png_init_io (png, file);
  if (level >= 0)
    png_set_compression_level (png, level);
  if (filter >= 0)
    png_set_filter (png, PNG_FILTER_TYPE_BASE, filter);
  png_set_IHDR (png, info, (png_uint_32)pixels->width, (png_uint_32)pixels->height, 8,
                PNG_COLOR_TYPE_RGB, PNG_INTERLACE_NONE, PNG_COMPRESSION_TYPE_DEFAULT,
                PNG_FILTER_TYPE_DEFAULT);
  png_write_info (png, info);
  png_set_bgr (png);
  png_set_filler (png, 0, PNG_FILLER_AFTER);
  for (int y = 0; y < pixels->height; y++)
    png_write_row (png, pixels->data + y * pixels->stride);
  png_write_end (png, info);
  png_destroy_write_struct (&png, &info);

  cost.seconds = (double)(g_get_monotonic_time () - start) / G_USEC_PER_SEC;
  cost.bytes = ftell (file);
  fclose (file);
  return cost;
}

static void
test_cost (void)
{
  g_autoptr (WmPixels) pixels = NULL;
  g_autoptr (GError) error = NULL;
  Cost usual, ours;
  struct stat status;
  gint64 start;

  corpus_make_scene ("cost.png", 1200, 900, "-attenuate 0.3 +noise gaussian");
  pixels = wm_photo_load_fit (corpus_path ("cost.png"), 1200, 1200, NULL, NULL);
  usual = write_plain (pixels, -1, -1, "usual.png");

  start = g_get_monotonic_time ();
  g_assert_true (wm_pixels_write_png (pixels, corpus_path ("ours.png"), NULL, &error));
  ours.seconds = (double)(g_get_monotonic_time () - start) / G_USEC_PER_SEC;
  g_assert_cmpint (g_stat (corpus_path ("ours.png"), &status), ==, 0);
  ours.bytes = status.st_size;

  g_test_message ("libpng's default %.3f s %ld bytes, ours %.3f s %ld bytes",
                  usual.seconds, usual.bytes, ours.seconds, ours.bytes);
  g_assert_cmpfloat (ours.seconds, <, usual.seconds);
  g_assert_cmpfloat ((double)ours.bytes, <, 1.25 * (double)usual.bytes);
}

int
main (int argc, char **argv)
{
  int result;

  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  wm_photo_start ();
  corpus_begin ();

  g_test_add_func ("/photo/png/upright", test_upright);
  g_test_add_func ("/photo/png/other-formats", test_other_formats);
  g_test_add_func ("/photo/png/notes", test_notes);
  g_test_add_func ("/photo/png/physical-scale", test_physical_scale);
  g_test_add_func ("/photo/png/scale-follows-size", test_scale_follows_size);
  g_test_add_func ("/photo/png/no-scale", test_no_scale);
  g_test_add_func ("/photo/png/marks", test_marks);
  g_test_add_func ("/photo/png/grey", test_grey);
  g_test_add_func ("/photo/png/failures", test_failures);
  g_test_add_func ("/photo/png/cost", test_cost);

  result = g_test_run ();
  corpus_end ();
  wm_photo_stop ();
  return result;
}
