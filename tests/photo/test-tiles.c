/* test-tiles.c: tiles are the photo's own pixels, and the cache may come and go
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/cache-folder.h"
#include "photo/load.h"
#include "photo/photo-start.h"
#include "photo/thumbnail.h"
#include "photo/tile-memory.h"
#include "photo/tiles.h"

#include "corpus.h"

#include <glib/gstdio.h>
#include <locale.h>
#include <string.h>
#include <sys/stat.h>

static const char hash[] =
    "00112233445566778899aabbccddeeff00112233445566778899aabbccddeeff";

static WmTileStore *
open_store (const char *name, const char *cache)
{
  g_autoptr (GError) error = NULL;
  WmTileStore *store =
      wm_tile_store_new (corpus_path (name), cache != NULL ? hash : NULL,
                         cache != NULL ? corpus_path (cache) : NULL, &error);

  g_assert_no_error (error);
  return store;
}

/* Every tile of level 0 is, byte for byte, that part of the whole photo. */
static void
assert_same_pixels (WmTileStore *store, const char *name)
{
  g_autoptr (WmPixels) whole =
      wm_photo_load_fit (corpus_path (name), 65535, 65535, NULL, NULL);
  int width, height, seen = 0;

  wm_tile_store_get_level_size (store, 0, &width, &height);
  g_assert_cmpint (width, ==, whole->width);
  g_assert_cmpint (height, ==, whole->height);

  for (int row = 0; row * WM_TILE < height; row++)
    for (int column = 0; column * WM_TILE < width; column++, seen++)
      {
        g_autoptr (GError) error = NULL;
        g_autoptr (WmPixels) tile =
            wm_tile_store_get_now (store, 0, column, row, NULL, &error);

        g_assert_no_error (error);
        g_assert_cmpint (tile->width, ==, MIN (WM_TILE, width - column * WM_TILE));
        g_assert_cmpint (tile->height, ==, MIN (WM_TILE, height - row * WM_TILE));
        for (int y = 0; y < tile->height; y++)
          if (memcmp (tile->data + y * tile->stride,
                      whole->data + (gsize)(row * WM_TILE + y) * whole->stride
                          + (gsize)column * WM_TILE * 4,
                      tile->stride)
              != 0)
            g_error ("%s: tile %d, %d differs in its row %d", name, column, row, y);
      }
  g_assert_cmpint (seen, >=, 1);
}

/* Large enough for strips (over 8 megapixels), sizes no multiple of anything; other
 * formats a quarter of that, which still has a fine level. */
static void
make_large (const char *name, const char *options)
{
  gboolean is_jpeg = g_str_has_suffix (name, ".jpg");

  if (!g_file_test (corpus_path ("base.ppm"), G_FILE_TEST_EXISTS))
    corpus_run ("convert -size 700x500 -seed 5 plasma:tan-navy -sample 3501x2501! "
                "-fill none -stroke white -strokewidth 3 -draw 'line 10,10 3400,2400' "
                "-draw 'line 3400,33 20,2200' base.ppm && "
                "convert base.ppm -sample 2203x1571! small.ppm");
  corpus_run ("convert %s %s %s", is_jpeg ? "base.ppm" : "small.ppm",
              is_jpeg || g_str_has_suffix (name, ".webp") ? options : "-quality 10",
              name);
}

static void
test_strips (void)
{
  static const char *const kinds[] = { "-quality 90 -sampling-factor 4:2:0",
                                       "-quality 92 -sampling-factor 4:4:4",
                                       "-quality 90 -sampling-factor 4:2:2 "
                                       "-interlace JPEG",
                                       "-colorspace Gray -quality 88" };

  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      g_autoptr (WmTileStore) direct = NULL;
      g_autoptr (WmTileStore) prepared = NULL;
      g_autofree char *kept = NULL;

      make_large ("large.jpg", kinds[i]);
      g_test_message ("%s", kinds[i]);

      /* Without strips, from the photo itself. */
      direct = open_store ("large.jpg", NULL);
      assert_same_pixels (direct, "large.jpg");

      corpus_run ("rm -rf cache");
      wm_tiles_prepare (corpus_path ("large.jpg"), hash, corpus_path ("cache"), NULL);
      kept = wm_cache_path (corpus_path ("cache"), "tiles", hash, ".strips");
      g_assert_true (g_file_test (kept, G_FILE_TEST_EXISTS));
    }
}

/* Strips need the background thread: asked for through the main loop. */
typedef struct
{
  GMainLoop *loop;
  int wanted, got, failed;
  WmPixels *last;
} Waiting;

static void
on_tile (WmTileStore *store, int level, int column, int row, WmPixels *tile,
         const GError *error, gpointer user_data)
{
  Waiting *waiting = user_data;

  g_assert_true ((tile == NULL) != (error == NULL));
  waiting->failed += tile == NULL;
  g_clear_pointer (&waiting->last, wm_pixels_unref);
  if (tile != NULL)
    waiting->last = wm_pixels_ref (tile);
  if (++waiting->got == waiting->wanted)
    g_main_loop_quit (waiting->loop);
}

static gboolean
on_too_long (gpointer unused)
{
  g_error ("no answer within a minute");
  return G_SOURCE_REMOVE;
}

static void
request_level (WmTileStore *store, int level)
{
  Waiting waiting = { .loop = g_main_loop_new (NULL, FALSE) };
  guint timeout = g_timeout_add_seconds (60, on_too_long, NULL);
  int width, height;

  wm_tile_store_get_level_size (store, level, &width, &height);
  for (int row = 0; row * WM_TILE < height; row++)
    for (int column = 0; column * WM_TILE < width; column++, waiting.wanted++)
      wm_tile_store_request (store, level, column, row, row + column, on_tile, &waiting);
  g_main_loop_run (waiting.loop);

  g_assert_cmpint (waiting.failed, ==, 0);
  g_assert_cmpint (waiting.got, ==, waiting.wanted);
  g_source_remove (timeout);
  g_clear_pointer (&waiting.last, wm_pixels_unref);
  g_main_loop_unref (waiting.loop);
}

static void
test_async (void)
{
  g_autoptr (WmTileStore) store = NULL;

  make_large ("large.jpg", "-quality 90");
  corpus_run ("rm -rf cache");
  wm_tiles_prepare (corpus_path ("large.jpg"), hash, corpus_path ("cache"), NULL);

  store = open_store ("large.jpg", "cache");
  for (int level = wm_tile_store_get_levels (store) - 1; level >= 0; level--)
    request_level (store, level);

  /* Answered through the threads, with strips read from the cache: the same. */
  assert_same_pixels (store, "large.jpg");
  g_assert_cmpuint (wm_tile_memory_used (), >, 0);
  g_assert_cmpuint (wm_tile_memory_used (), <=, WM_TILE_MEMORY);
}

static void
test_orientations (void)
{
  make_large ("turn.jpg", "-quality 90");
  corpus_make_orientations ("turn.jpg");
  for (int o = 2; o <= 8; o += 2)
    {
      g_autofree char *name = g_strdup_printf ("%d-turn.jpg", o);
      g_autoptr (WmTileStore) store = NULL;

      corpus_run ("rm -rf cache");
      wm_tiles_prepare (corpus_path (name), hash, corpus_path ("cache"), NULL);
      store = open_store (name, "cache");
      request_level (store, 1);
      assert_same_pixels (store, name);
    }
}

static void
test_other_formats (void)
{
  static const char *const names[] = { "pack.png", "pack.tif", "pack.webp" };

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autoptr (WmTileStore) store = NULL;
      g_autoptr (WmTileStore) bare = NULL;
      int levels;

      make_large (names[i], "-define webp:method=0 -define webp:lossless=true");
      corpus_run ("rm -rf cache");
      store = open_store (names[i], "cache");
      assert_same_pixels (store, names[i]);
      levels = wm_tile_store_get_levels (store);
      g_assert_cmpint (levels, ==, 4);
      request_level (store, 1);
      request_level (store, levels - 1);

      bare = open_store (names[i], NULL);
      assert_same_pixels (bare, names[i]);
    }
}

/* A coarser level looks like the photo made smaller by ImageMagick. */
static void
test_coarse (void)
{
  static const char *const names[] = { "coarse.jpg", "coarse.png" };

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autoptr (WmTileStore) store = NULL;

      make_large (names[i], "-quality 95");
      store = open_store (names[i], NULL);
      for (int level = 1; level < wm_tile_store_get_levels (store); level++)
        {
          g_autofree char *options = NULL;
          g_autoptr (WmPixels) theirs = NULL;
          g_autoptr (WmPixels) tile = NULL;
          double mean;
          int width, height;

          wm_tile_store_get_level_size (store, level, &width, &height);
          options = g_strdup_printf ("-filter Box -resize %dx%d! -crop %dx%d+0+0 +repage",
                                     width, height, MIN (width, WM_TILE),
                                     MIN (height, WM_TILE));
          theirs = corpus_magick_pixels (names[i], options);
          tile = wm_tile_store_get_now (store, level, 0, 0, NULL, NULL);
          corpus_difference (tile, theirs, &mean);
          g_test_message ("%s level %d: mean %.2f", names[i], level, mean);
          g_assert_cmpfloat (mean, <, 3.0);
        }
    }
}

static void
damage (const char *path)
{
  g_autofree char *bytes = NULL;
  gsize length;

  g_assert_true (g_file_get_contents (path, &bytes, &length, NULL));
  for (gsize at = 40; at < length; at += 997)
    bytes[at] ^= 0x55;
  g_assert_true (g_file_set_contents (path, bytes, (gssize)length, NULL));
}

/* Damaged, cut, emptied, deleted, a folder in its place: the same pixels, and the
 * cache is whole again where it can be. */
static void
test_damaged_cache (void)
{
  static const char *const names[] = { "dam.jpg", "dam.png" };
  static const char *const endings[] = { ".strips", ".pack" };

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    for (int way = 0; way < 4; way++)
      {
        g_autofree char *kept = NULL;
        g_autofree char *preview = NULL;
        g_autoptr (WmTileStore) store = NULL;
        g_autoptr (WmPixels) shown = NULL;

        make_large (names[i], "-quality 90");
        corpus_run ("rm -rf cache");
        wm_tiles_prepare (corpus_path (names[i]), hash, corpus_path ("cache"), NULL);
        shown = wm_thumbnail_make_all (corpus_path ("cache"), hash,
                                       corpus_path (names[i]), NULL, NULL);
        kept = wm_cache_path (corpus_path ("cache"), "tiles", hash, endings[i]);
        preview = wm_cache_path (corpus_path ("cache"), "preview", hash, "-2000.jpg");
        g_assert_true (g_file_test (kept, G_FILE_TEST_IS_REGULAR));
        g_assert_true (g_file_test (preview, G_FILE_TEST_IS_REGULAR));

        if (way == 0)
          {
            damage (kept);
            damage (preview);
          }
        else if (way == 1)
          corpus_run ("truncate -s 5000 %s %s", kept, preview);
        else if (way == 2)
          corpus_run ("rm -rf cache");
        else
          corpus_run ("rm %s && mkdir %s", kept, kept);

        g_test_message ("%s, way %d", names[i], way);
        store = open_store (names[i], "cache");
        request_level (store, 0);
        assert_same_pixels (store, names[i]);
        request_level (store, 1);
        wm_tiles_prepare (corpus_path (names[i]), hash, corpus_path ("cache"), NULL);
        if (way < 3)
          g_assert_true (g_file_test (kept, G_FILE_TEST_IS_REGULAR));
      }
}

/* A store that goes away is never called back, whatever was under way. */
static void
on_never (WmTileStore *store, int level, int column, int row, WmPixels *tile,
          const GError *error, gpointer user_data)
{
  g_error ("called back after the store was gone");
}

static gboolean
on_quit (gpointer loop)
{
  g_main_loop_quit (loop);
  return G_SOURCE_REMOVE;
}

static void
test_gone (void)
{
  g_autoptr (GMainLoop) loop = g_main_loop_new (NULL, FALSE);

  make_large ("gone.jpg", "-quality 90");
  for (int i = 0; i < 5; i++)
    {
      WmTileStore *store = open_store ("gone.jpg", NULL);

      for (int row = 0; row < 5; row++)
        wm_tile_store_request (store, 0, 0, row, 0, on_never, NULL);
      g_usleep ((gulong)i * 2000);
      wm_tile_store_unref (store);
    }
  g_timeout_add (500, on_quit, loop);
  g_main_loop_run (loop);
}

static void
test_cancel_waiting (void)
{
  g_autoptr (WmTileStore) store = NULL;
  Waiting waiting = { .loop = g_main_loop_new (NULL, FALSE), .wanted = G_MAXINT };

  make_large ("wait.jpg", "-quality 90");
  store = open_store ("wait.jpg", NULL);
  for (int row = 0; row < 5; row++)
    wm_tile_store_request (store, 0, 0, row, 0, on_tile, &waiting);
  wm_tile_store_cancel_waiting (store);
  g_timeout_add (800, on_quit, waiting.loop);
  g_main_loop_run (waiting.loop);

  /* At most those two had begun. */
  g_assert_cmpint (waiting.got, <=, WM_TILE_THREADS);
  g_clear_pointer (&waiting.last, wm_pixels_unref);
  g_main_loop_unref (waiting.loop);
}

static void
test_unreadable (void)
{
  g_autoptr (GError) error = NULL;

  corpus_write ("no.jpg", "no picture here", 15);
  g_assert_null (wm_tile_store_new (corpus_path ("no.jpg"), NULL, NULL, &error));
  g_assert_error (error, WM_PHOTO_ERROR, WM_PHOTO_ERROR_NOT_A_PICTURE);
}

static void
test_levels (void)
{
  g_autoptr (WmTileStore) store = NULL;
  int width, height;

  corpus_run ("convert -size 8000x3000 xc:tan -quality 80 wide.jpg");
  store = open_store ("wide.jpg", NULL);
  g_assert_cmpint (wm_tile_store_get_levels (store), ==, 5);
  wm_tile_store_get_level_size (store, 4, &width, &height);
  g_assert_cmpint (width, ==, 500);
  g_assert_cmpint (height, ==, 188);

  g_assert_cmpint (wm_tile_store_level_for_scale (store, 4), ==, 0);
  g_assert_cmpint (wm_tile_store_level_for_scale (store, 1), ==, 0);
  g_assert_cmpint (wm_tile_store_level_for_scale (store, 0.51), ==, 0);
  g_assert_cmpint (wm_tile_store_level_for_scale (store, 0.5), ==, 1);
  g_assert_cmpint (wm_tile_store_level_for_scale (store, 0.2), ==, 2);
  g_assert_cmpint (wm_tile_store_level_for_scale (store, 0.001), ==, 4);
}

/* More tiles than the bound allows are put in: it holds at every moment. */
static void
test_memory_bound (void)
{
  guint64 owner = wm_tile_memory_new_owner ();

  for (int i = 0; i < WM_TILE_MEMORY / (WM_TILE * WM_TILE * 4) + 50; i++)
    {
      g_autoptr (WmPixels) tile = wm_pixels_new (WM_TILE, WM_TILE);

      wm_tile_memory_put (owner, 0, i, 0, tile);
      g_assert_cmpuint (wm_tile_memory_used (), <=, WM_TILE_MEMORY);
    }
  g_assert_null (wm_tile_memory_get (owner, 0, 0, 0));
  wm_tile_memory_drop (owner);
}

static void
test_thumbnails (void)
{
  g_autoptr (WmPixels) first = NULL;
  g_autoptr (WmPixels) again = NULL;
  g_autoptr (WmPixels) large = NULL;
  g_autofree char *kept = NULL;

  corpus_run ("rm -rf cache");
  corpus_make_scene ("thumb.jpg", 900, 600, "");
  first = wm_thumbnail_load (corpus_path ("cache"), hash, corpus_path ("thumb.jpg"), 100,
                             NULL, NULL);
  g_assert_cmpint (first->width, ==, WM_THUMBNAIL_SMALL);
  g_assert_cmpint (first->height, ==, 85);

  /* The second time the original is not needed. */
  g_assert_cmpint (g_unlink (corpus_path ("thumb.jpg")), ==, 0);
  again = wm_thumbnail_load (corpus_path ("cache"), hash, corpus_path ("thumb.jpg"), 128,
                             NULL, NULL);
  g_assert_cmpint (again->width, ==, WM_THUMBNAIL_SMALL);
  g_assert_null (wm_thumbnail_load (corpus_path ("cache"), hash,
                                    corpus_path ("thumb.jpg"), 300, NULL, NULL));

  corpus_make_scene ("thumb.jpg", 900, 600, "");
  large = wm_thumbnail_make_all (corpus_path ("cache"), hash, corpus_path ("thumb.jpg"),
                                 NULL, NULL);
  g_assert_cmpint (large->width, ==, 900);
  kept = wm_cache_path (corpus_path ("cache"), "thumbnail", hash, "-384.jpg");
  g_assert_true (g_file_test (kept, G_FILE_TEST_EXISTS));

  /* Still a JPEG to everyone else, checksum or not. */
  corpus_run ("djpeg -outfile /dev/null %s", kept);
}

static void
test_cache_paths (void)
{
  g_assert_null (wm_cache_path (NULL, "tiles", hash, ".x"));
  g_assert_null (wm_cache_path ("/c", "tiles", NULL, ".x"));
  g_assert_null (wm_cache_path ("/c", "tiles", "../../etc/passwd", ".x"));
}

static void
test_trim (void)
{
  g_autofree char *left = NULL;

  corpus_run ("rm -rf cache; mkdir -p cache/preview/aa cache/tiles/bb");
  corpus_run ("for i in 1 2 3 4; do head -c 1000 /dev/zero > cache/preview/aa/$i; "
              "touch -d \"2026-01-0$i\" cache/preview/aa/$i; done; "
              "head -c 1000 /dev/zero > cache/tiles/bb/new");
  wm_cache_trim (corpus_path ("cache"), 100000);
  left = corpus_read ("find cache -type f | wc -l");
  g_assert_cmpstr (left, ==, "5\n");

  /* Down to nine tenths of 3000: the two newest stay. */
  wm_cache_trim (corpus_path ("cache"), 3000);
  g_free (left);
  left = corpus_read ("find cache -type f | sort | tr '\\n' ' '");
  g_assert_cmpstr (left, ==, "cache/preview/aa/4 cache/tiles/bb/new ");
}

int
main (int argc, char **argv)
{
  int result;

  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  wm_photo_start ();
  corpus_begin ();

  g_test_add_func ("/photo/tiles/strips", test_strips);
  g_test_add_func ("/photo/tiles/async", test_async);
  g_test_add_func ("/photo/tiles/orientations", test_orientations);
  g_test_add_func ("/photo/tiles/other-formats", test_other_formats);
  g_test_add_func ("/photo/tiles/coarse", test_coarse);
  g_test_add_func ("/photo/tiles/damaged-cache", test_damaged_cache);
  g_test_add_func ("/photo/tiles/gone", test_gone);
  g_test_add_func ("/photo/tiles/cancel-waiting", test_cancel_waiting);
  g_test_add_func ("/photo/tiles/unreadable", test_unreadable);
  g_test_add_func ("/photo/tiles/levels", test_levels);
  g_test_add_func ("/photo/tiles/memory-bound", test_memory_bound);
  g_test_add_func ("/photo/tiles/thumbnails", test_thumbnails);
  g_test_add_func ("/photo/tiles/cache-paths", test_cache_paths);
  g_test_add_func ("/photo/tiles/trim", test_trim);

  result = g_test_run ();
  corpus_end ();
  wm_photo_stop ();
  return result;
}
