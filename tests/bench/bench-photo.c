/* bench-photo.c: the photo room beside djpeg, libvips and libpng
 *
 * The photo is invented: 8000 x 6000 px of smooth colours with grain, quality 90, made
 * by ImageMagick. CPU time unless a row says otherwise.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "bench.h"

#include "photo/load.h"
#include "photo/photo-start.h"
#include "photo/png-write.h"
#include "photo/thumbnail.h"
#include "photo/tiles.h"

#include <glib/gstdio.h>
#include <png.h>
#include <stdio.h>
#include <stdlib.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <vips/vips.h>

#define TIMES 3
#define THUMBNAILS 40 /* five times this is the 200 of the goal */

static const char hash[] = "00112233445566778899aabbccddeeff"
                           "00112233445566778899aabbccddeeff";
static char *folder, *large, *twelve, *cache;

static void shell (const char *format, ...) G_GNUC_PRINTF (1, 2);

static void
shell (const char *format, ...)
{
  g_autofree char *command = NULL;
  va_list arguments;

  va_start (arguments, format);
  command = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  if (system (command) != 0)
    g_error ("failed: %s", command);
}

static double
children_cpu_s (void)
{
  struct rusage usage;

  getrusage (RUSAGE_CHILDREN, &usage);
  return (double)(usage.ru_utime.tv_sec + usage.ru_stime.tv_sec)
         + 1e-6 * (double)(usage.ru_utime.tv_usec + usage.ru_stime.tv_usec);
}

static double
run_djpeg (const char *options, const char *file)
{
  double start = children_cpu_s ();

  shell ("djpeg %s -outfile /dev/null '%s'", options, file);
  return children_cpu_s () - start;
}

static void
bench_first_view (void)
{
  double ours = G_MAXDOUBLE, peer = G_MAXDOUBLE, second = G_MAXDOUBLE;

  for (int i = 0; i < TIMES; i++)
    {
      double start = bench_cpu_s ();
      g_autoptr (WmPixels) pixels = wm_photo_load_about (large, WM_PREVIEW, NULL, NULL);
      g_autoptr (WmPixels) kept = NULL;
      g_autoptr (WmPixels) again = NULL;

      ours = MIN (ours, bench_cpu_s () - start);
      peer = MIN (peer, run_djpeg ("-scale 1/4", large));

      kept = wm_thumbnail_load (cache, hash, large, WM_PREVIEW, NULL, NULL);
      start = bench_cpu_s ();
      again = wm_thumbnail_load (cache, hash, large, WM_PREVIEW, NULL, NULL);
      second = MIN (second, bench_cpu_s () - start);
    }
  bench_print_ms ("first view of 48 MP, djpeg -scale 1/4", ours, peer, "1.2");
  bench_print_ms ("second view, from the preview, the same", second, peer, "below 1");
}

static void
bench_check (void)
{
  double ours = G_MAXDOUBLE, peer = G_MAXDOUBLE;

  for (int i = 0; i < TIMES; i++)
    {
      double start = bench_cpu_s () + children_cpu_s ();

      wm_photo_check_whole (large, NULL, NULL);
      ours = MIN (ours, bench_cpu_s () + children_cpu_s () - start);
      peer = MIN (peer, run_djpeg ("", large));
    }
  bench_print_ms ("48 MP read to its last row, djpeg", ours, peer, "1");
}

static void
ours_thumbnails (gpointer unused)
{
  for (int i = 0; i < THUMBNAILS; i++)
    {
      g_autoptr (WmPixels) pixels =
          wm_photo_load_fit (twelve, WM_THUMBNAIL_SMALL, WM_THUMBNAIL_SMALL, NULL, NULL);
    }
}

static void
vips_thumbnails (gpointer unused)
{
  for (int i = 0; i < THUMBNAILS; i++)
    {
      VipsImage *image = NULL;
      void *pixels;

      if (vips_thumbnail (twelve, &image, WM_THUMBNAIL_SMALL, NULL))
        g_error ("vips_thumbnail");
      pixels = vips_image_write_to_memory (image, NULL);
      g_free (pixels);
      g_object_unref (image);
    }
}

static void
bench_thumbnails (void)
{
  double ours, peer;

  bench_in_turn (ours_thumbnails, vips_thumbnails, NULL, TIMES, FALSE, &ours, &peer);
  bench_print_ms ("40 thumbnails of 12 MP, vips_thumbnail", ours, peer, "1.1");
}

typedef struct
{
  GMainLoop *loop;
  int wanted;
} Waiting;

static void
on_tile (WmTileStore *store, int level, int column, int row, WmPixels *tile,
         const GError *error, gpointer user_data)
{
  Waiting *waiting = user_data;

  if (--waiting->wanted == 0)
    g_main_loop_quit (waiting->loop);
}

/* What a window of 1440 x 900 shows at true pixels, through the threads. */
static double
true_pixels_s (void)
{
  g_autoptr (WmTileStore) store = wm_tile_store_new (large, hash, cache, NULL);
  Waiting waiting = { g_main_loop_new (NULL, FALSE), 12 };
  gint64 start = g_get_monotonic_time ();

  for (int row = 5; row < 8; row++)
    for (int column = 6; column < 10; column++)
      wm_tile_store_request (store, 0, column, row, 0, on_tile, &waiting);
  g_main_loop_run (waiting.loop);
  g_main_loop_unref (waiting.loop);
  return 1e-6 * (double)(g_get_monotonic_time () - start);
}

static void
bench_true_pixels (void)
{
  double first, kept = G_MAXDOUBLE;

  shell ("rm -rf '%s'", cache);
  first = true_pixels_s ();
  wm_tiles_prepare (large, hash, cache, NULL);
  for (int i = 0; i < TIMES; i++)
    kept = MIN (kept, true_pixels_s ());
  bench_print_ms ("true pixels of 48 MP on a screen, clock, 300 ms", kept, 0.3, "1");
  bench_print_ms ("the same with nothing kept yet, 300 ms", first, 0.3, "");
}

static long
write_usual (WmPixels *pixels, const char *path)
{
  FILE *file = fopen (path, "wb");
  png_structp png = png_create_write_struct (PNG_LIBPNG_VER_STRING, NULL, NULL, NULL);
  png_infop info = png_create_info_struct (png);
  long size;

  png_init_io (png, file);
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
  size = ftell (file);
  fclose (file);
  return size;
}

static void
bench_png (void)
{
  g_autoptr (WmPixels) pixels = wm_photo_load_fit (twelve, 9999, 9999, NULL, NULL);
  g_autofree char *ours_path = g_build_filename (folder, "ours.png", NULL);
  g_autofree char *peer_path = g_build_filename (folder, "usual.png", NULL);
  double ours, peer, start = bench_cpu_s ();
  struct stat status;
  long usual;

  wm_pixels_write_png (pixels, ours_path, NULL, NULL);
  ours = bench_cpu_s () - start;
  start = bench_cpu_s ();
  usual = write_usual (pixels, peer_path);
  peer = bench_cpu_s () - start;
  bench_print_ms ("PNG of 12 MP, libpng's default", ours, peer, "0.2");
  if (g_stat (ours_path, &status) == 0)
    g_print ("its size, libpng's default\t%.1f MB\t%.1f MB\t%.2f\t1.3\n",
             (double)status.st_size / 1e6, (double)usual / 1e6,
             (double)status.st_size / (double)usual);
}

static void
print_memory (void)
{
  struct rusage usage;

  getrusage (RUSAGE_SELF, &usage);
  g_print ("most memory in all the above\t%.0f MB\t\t\t\n",
           (double)usage.ru_maxrss / 1024);
}

int
main (void)
{
  folder = g_dir_make_tmp ("wearmark-bench-XXXXXX", NULL);
  large = g_build_filename (folder, "large.jpg", NULL);
  twelve = g_build_filename (folder, "twelve.jpg", NULL);
  cache = g_build_filename (folder, "cache", NULL);
  shell ("convert -size 2000x1500 -seed 3 plasma:tan-navy -attenuate 0.15 "
         "+noise gaussian -resize 8000x6000! -quality 90 '%s' && "
         "convert '%s' -resize 50%% '%s'",
         large, large, twelve);
  wm_photo_start ();

  bench_first_view ();
  bench_check ();
  bench_thumbnails ();
  bench_true_pixels ();
  print_memory ();
  bench_png ();

  shell ("rm -rf '%s'", folder);
  return 0;
}
