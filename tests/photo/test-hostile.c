/* test-hostile.c: mangled files of every kind: refused or shown, never a crash
 *
 * The same every time (a fixed seed); tests/fuzz looks further. Under the sanitizers
 * every read out of bounds and every leak fails this test.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/jpeg-out.h"
#include "photo/judge.h"
#include "photo/load.h"
#include "photo/photo-start.h"
#include "photo/strips.h"

#include "corpus.h"

#include <locale.h>
#include <string.h>

static const char *const names[] = { "h.jpg", "hp.jpg", "h.png", "hi.png",
                                     "h.tif", "h.webp", "h.heic" };

static void
make_seed (gsize i)
{
  const char *options = "";

  if (strcmp (names[i], "hp.jpg") == 0)
    options = "-interlace JPEG";
  else if (strcmp (names[i], "hi.png") == 0)
    options = "-interlace PNG";
  corpus_make_scene (names[i], 120, 90, options);
  if (i < 4)
    corpus_run ("exiftool -q -overwrite_original -n -EXIF:Orientation=6 "
                "'-EXIF:DateTimeOriginal=2026:03:14 15:09:26' %s",
                names[i]);
}

/* Either pixels or a reason, and a message that names the file. */
static void
try_bytes (const guint8 *data, gsize length)
{
  g_autoptr (GBytes) bytes = g_bytes_new (data, length);
  g_autoptr (GError) error = NULL;
  g_autoptr (WmPixels) pixels = NULL;

  pixels = wm_photo_load_bytes_fit (bytes, "mangled", 200, 200, NULL, &error);
  g_assert_true ((pixels == NULL) == (error != NULL));
  if (error != NULL)
    {
      g_assert_true (error->domain == WM_PHOTO_ERROR);
      g_assert_nonnull (strstr (error->message, "mangled"));
    }
}

/* Cut after every so many bytes. */
static void
test_cut (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree guint8 *data = NULL;
      gsize length;

      make_seed (i);
      data = corpus_load (names[i], &length);
      for (gsize at = 1; at < length; at += MAX (1, length / 60))
        try_bytes (data, at);
    }
}

/* Bytes changed at random, half of them in the header, where it matters most. */
static void
test_changed (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (123);

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree guint8 *data = NULL;
      gsize length;

      make_seed (i);
      data = corpus_load (names[i], &length);
      for (int round = 0; round < 120; round++)
        {
          g_autofree guint8 *copy = g_memdup2 (data, length);
          int changes = g_rand_int_range (rand, 1, 12);

          for (int c = 0; c < changes; c++)
            {
              gsize within = c % 2 ? length : MIN (length, 400);

              copy[g_rand_int_range (rand, 0, (gint32)within)] =
                  (guint8)g_rand_int_range (rand, 0, 256);
            }
          try_bytes (copy, length);
        }
    }
}

/* The readers that work on files, met with mangled ones. */
static void
test_files (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (321);

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree guint8 *data = NULL;
      gsize length;

      make_seed (i);
      data = corpus_load (names[i], &length);
      for (int round = 0; round < 25; round++)
        {
          g_autofree guint8 *copy = g_memdup2 (data, length);
          g_autoptr (WmPixels) region = NULL;
          g_autoptr (GBytes) stripped = NULL;
          WmJudgement judgement;

          for (int c = 0; c < 6; c++)
            copy[g_rand_int_range (rand, 0, (gint32)length)] =
                (guint8)g_rand_int_range (rand, 0, 256);
          corpus_write ("mangled.jpg", copy, length);

          wm_photo_check_whole (corpus_path ("mangled.jpg"), NULL, NULL);
          wm_photo_judge (corpus_path ("mangled.jpg"), &judgement, NULL, NULL);
          region = wm_photo_load_region (corpus_path ("mangled.jpg"), 10, 10, 40, 40, 80,
                                         80, NULL, NULL);
          wm_jpeg_can_pass_through (corpus_path ("mangled.jpg"));
          stripped = wm_jpeg_load_stripped (corpus_path ("mangled.jpg"), NULL);
        }
    }
}

/* Strips with any byte changed: a picture or none. */
static void
test_strips (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (77);
  g_autofree guint8 *data = NULL;
  g_autoptr (GBytes) jpeg = NULL;
  g_autoptr (WmSource) source = NULL;
  g_autoptr (GBytes) built = NULL;
  gsize length;
  const guint8 *bytes;

  make_seed (0);
  data = corpus_load (names[0], &length);
  jpeg = g_bytes_new (data, length);
  source = wm_source_new_bytes (jpeg, "h.jpg", NULL);
  built = wm_strips_build (source, NULL, NULL);
  g_assert_nonnull (built);
  bytes = g_bytes_get_data (built, &length);

  for (int round = 0; round < 400; round++)
    {
      g_autofree guint8 *copy = g_memdup2 (bytes, length);
      g_autoptr (GBytes) mangled = NULL;
      g_autoptr (WmStrips) strips = NULL;
      WmRect window = { 0, 0, 120, 90 };

      copy[g_rand_int_range (rand, 0, (gint32)MIN (length, round % 2 ? length : 700))] =
          (guint8)g_rand_int_range (rand, 0, 256);
      mangled = g_bytes_new (copy, length);
      strips = wm_strips_new (mangled, 120, 90);
      if (strips != NULL)
        {
          g_autoptr (WmPixels) pixels = wm_strips_decode (strips, 1, &window, NULL, NULL);
        }
    }
}

/* A header of endless segments, EXIF that points at itself, a profile that is none. */
static void
test_crafted (void)
{
  g_autoptr (GByteArray) segments = g_byte_array_new ();
  static const guint8 soi[] = { 0xFF, 0xD8 };
  static const guint8 empty_comment[] = { 0xFF, 0xFE, 0, 2 };
  static const guint8 full_comment[] = { 0xFF, 0xFE, 0, 3, 'x' };
  static const guint8 tiff[] = { 'I', 'I', '*', 0, 8, 0, 0, 0, 1, 0, 0x69, 0x87, 4,
                                 0,   1,   0,   0, 0, 8, 0, 0, 0, 8, 0,    0,    0 };

  g_byte_array_append (segments, soi, 2);
  for (int i = 0; i < 100000; i++)
    g_byte_array_append (segments, full_comment, 5);
  try_bytes (segments->data, segments->len);

  g_byte_array_set_size (segments, 2);
  for (int i = 0; i < 100000; i++)
    g_byte_array_append (segments, empty_comment, 4);
  try_bytes (segments->data, segments->len);

  g_byte_array_set_size (segments, 0);
  g_byte_array_set_size (segments, 1000000);
  memset (segments->data, 0xFF, segments->len);
  segments->data[1] = 0xD8;
  try_bytes (segments->data, segments->len);

  try_bytes (tiff, sizeof tiff);

  corpus_make_scene ("icc.jpg", 60, 40, "");
  corpus_run (
      "convert -size 40x40 -seed 2 plasma: no.png && cp no.png no.icc && "
      "exiftool -q -m -overwrite_original '-icc_profile<=no.icc' icc.jpg || true");
  {
    g_autoptr (WmPixels) pixels =
        wm_photo_load_fit (corpus_path ("icc.jpg"), 60, 60, NULL, NULL);

    g_assert_nonnull (pixels);
  }
}

int
main (int argc, char **argv)
{
  int result;

  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  wm_photo_start ();
  corpus_begin ();

  g_test_add_func ("/photo/hostile/cut", test_cut);
  g_test_add_func ("/photo/hostile/changed", test_changed);
  g_test_add_func ("/photo/hostile/files", test_files);
  g_test_add_func ("/photo/hostile/strips", test_strips);
  g_test_add_func ("/photo/hostile/crafted", test_crafted);

  result = g_test_run ();
  corpus_end ();
  wm_photo_stop ();
  return result;
}
