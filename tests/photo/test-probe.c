/* test-probe.c: what files say about themselves, and files that lie
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/load.h"
#include "photo/photo-start.h"
#include "photo/probe.h"

#include "corpus.h"

#include <glib/gstdio.h>
#include <locale.h>
#include <string.h>
#include <unistd.h>

static WmPhotoFacts *
probe (const char *name)
{
  g_autoptr (GError) error = NULL;
  WmPhotoFacts *facts = wm_photo_probe_file (corpus_path (name), &error);

  g_assert_no_error (error);
  g_assert_nonnull (facts);
  return facts;
}

/* The message names the file and is more than its name. */
static void
assert_refused (const char *name, const char *shown, WmPhotoErrorCode code,
                gboolean whole)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (WmPhotoFacts) facts = wm_photo_probe_file (corpus_path (name), &error);

  if (whole && facts != NULL)
    g_assert_false (wm_photo_check_whole (corpus_path (name), NULL, &error));
  else
    g_assert_null (facts);

  g_assert_error (error, WM_PHOTO_ERROR, (int)code);
  g_assert_nonnull (strstr (error->message, shown));
  g_assert_cmpuint (strlen (error->message), >, strlen (shown) + 20);
  g_assert_null (strchr (error->message, '\n'));
  g_assert_true (g_utf8_validate (error->message, -1, NULL));
}

static void
test_formats (void)
{
  static const struct
  {
    const char *name;
    WmPhotoFormat format;
  } files[] = { { "a.jpg", WM_PHOTO_JPEG },  { "a.png", WM_PHOTO_PNG },
                { "a.tif", WM_PHOTO_TIFF },  { "a.webp", WM_PHOTO_WEBP },
                { "a.heic", WM_PHOTO_HEIC }, { "a.avif", WM_PHOTO_AVIF } };

  for (gsize i = 0; i < G_N_ELEMENTS (files); i++)
    {
      g_autofree char *command = g_strdup_printf ("convert -size 64x48 xc:red -seed 1 "
                                                  "+noise gaussian %s",
                                                  files[i].name);
      g_autofree char *said = NULL;
      g_autoptr (WmPhotoFacts) facts = NULL;
      int width = 0, height = 0;

      if (!corpus_can (command))
        {
          g_test_message ("ImageMagick writes no %s here", files[i].name);
          continue;
        }
      facts = probe (files[i].name);
      said = corpus_read ("identify -format '%%w %%h' '%s[0]'", files[i].name);
      g_assert_cmpint (sscanf (said, "%d %d", &width, &height), ==, 2);

      g_assert_cmpint (facts->format, ==, files[i].format);
      g_assert_cmpint (facts->coded_width, ==, width);
      g_assert_cmpint (facts->coded_height, ==, height);
      g_assert_cmpint (facts->orientation, ==, 1);
      g_assert_true (wm_photo_check_whole (corpus_path (files[i].name), NULL, NULL));
    }
}

/* exiftool writes, we read. */
static void
test_exif (void)
{
  g_autoptr (WmPhotoFacts) facts = NULL;
  g_autoptr (WmPhotoFacts) local = NULL;

  corpus_make_scene ("exif.jpg", 80, 60, "-density 300 -units PixelsPerInch");
  corpus_run ("exiftool -q -overwrite_original -n -Orientation=6 "
              "'-DateTimeOriginal=2026:03:14 15:09:26' -OffsetTimeOriginal=+05:30 "
              "-GPSLatitude=1 -GPSLatitudeRef=N exif.jpg");
  facts = probe ("exif.jpg");
  g_assert_cmpint (facts->orientation, ==, 6);
  g_assert_cmpint (facts->width, ==, 60);
  g_assert_cmpint (facts->height, ==, 80);
  g_assert_cmpfloat_with_epsilon (facts->dpi, 300, 0.01);
  g_assert_true (facts->has_gps);
  g_assert_true (facts->has_taken_at);
  g_assert_true (facts->offset_known);
  g_assert_cmpint (facts->offset_s, ==, 19800);
  /* date -u -d '2026-03-14T15:09:26+05:30' +%s */
  g_assert_cmpint (facts->taken_at_us, ==, G_GINT64_CONSTANT (1773481166000000));

  corpus_run ("exiftool -q -overwrite_original -OffsetTimeOriginal= -GPS:all= exif.jpg");
  local = probe ("exif.jpg");
  g_assert_true (local->has_taken_at);
  g_assert_false (local->offset_known);
}

static void
test_exif_senseless (void)
{
  g_autoptr (WmPhotoFacts) facts = NULL;

  corpus_make_scene ("odd.jpg", 40, 30, "");
  corpus_run ("exiftool -q -overwrite_original -n -Orientation=1 "
              "'-DateTimeOriginal=0000:00:00 00:00:00' odd.jpg");
  /* Orientation 9 and 0 mean nothing: as stored. */
  corpus_run ("perl -0777 -pe 's/(\\x01\\x12\\x00\\x03\\x00\\x00\\x00\\x01\\x00)\\x01/"
              "$1\\x09/; s/(\\x12\\x01\\x03\\x00\\x01\\x00\\x00\\x00)\\x01/$1\\x09/' "
              "odd.jpg > odd9.jpg; cmp odd.jpg odd9.jpg && exit 1 || exit 0");
  facts = probe ("odd9.jpg");
  g_assert_cmpint (facts->orientation, ==, 1);
  g_assert_false (facts->has_taken_at);
}

static void
test_metadata_formats (void)
{
  static const char *const names[] = { "m.png", "m.tif", "m.webp" };

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autoptr (WmPhotoFacts) facts = NULL;

      corpus_make_scene (names[i], 50, 30, "");
      corpus_run ("exiftool -q -overwrite_original -n -EXIF:Orientation=8 "
                  "'-EXIF:DateTimeOriginal=2026:01:02 03:04:05' "
                  "-EXIF:OffsetTimeOriginal=-08:00 %s",
                  names[i]);
      facts = probe (names[i]);
      g_test_message ("%s", names[i]);
      g_assert_cmpint (facts->orientation, ==, 8);
      g_assert_cmpint (facts->width, ==, 30);
      g_assert_true (facts->has_taken_at);
      g_assert_cmpint (facts->taken_at_us, ==, G_GINT64_CONSTANT (1767351845000000));
    }
}

static void
test_bad_places (void)
{
  g_mkdir (corpus_path ("folder.jpg"), 0755);
  assert_refused ("folder.jpg", "folder.jpg", WM_PHOTO_ERROR_WRONG_KIND, FALSE);
  assert_refused ("gone.jpg", "gone.jpg", WM_PHOTO_ERROR_NOT_FOUND, FALSE);

  corpus_write ("empty.jpg", "", 0);
  assert_refused ("empty.jpg", "empty.jpg", WM_PHOTO_ERROR_EMPTY, FALSE);

  corpus_run ("mkfifo pipe.jpg");
  assert_refused ("pipe.jpg", "pipe.jpg", WM_PHOTO_ERROR_WRONG_KIND, FALSE);

  corpus_make_scene ("locked.jpg", 20, 20, "");
  g_chmod (corpus_path ("locked.jpg"), 0);

  /* Permissions do not bind root: be nobody for this one. */
  if (geteuid () == 0)
    g_assert_cmpint (seteuid (65534), ==, 0);
  assert_refused ("locked.jpg", "locked.jpg", WM_PHOTO_ERROR_NO_PERMISSION, FALSE);
  if (getuid () == 0)
    g_assert_cmpint (seteuid (0), ==, 0);
}

static void
test_wrong_kinds (void)
{
  static const struct
  {
    const char *name;
    const char *bytes;
    gsize length;
    WmPhotoErrorCode code;
  } files[] = {
    { "bill.jpg", "%PDF-1.7\nnothing", 16, WM_PHOTO_ERROR_WRONG_KIND },
    { "pack.jpg", "PK\003\004nothing at all", 18, WM_PHOTO_ERROR_WRONG_KIND },
    { "film.jpg", "\0\0\0\030ftypmp42\0\0\0\0", 16, WM_PHOTO_ERROR_WRONG_KIND },
    { "page.jpg", "<!DOCTYPE html><p>", 18, WM_PHOTO_ERROR_WRONG_KIND },
    { "note.jpg", "just some words", 15, WM_PHOTO_ERROR_NOT_A_PICTURE },
    { "one.jpg", "\377", 1, WM_PHOTO_ERROR_NOT_A_PICTURE },
    { "drawing.jpg", "<svg xmlns=''/>", 15, WM_PHOTO_ERROR_NOT_READ_HERE },
    { "anim.jpg", "GIF89a\1\0\1\0\0\0\0", 13, WM_PHOTO_ERROR_NOT_READ_HERE }
  };

  for (gsize i = 0; i < G_N_ELEMENTS (files); i++)
    {
      corpus_write (files[i].name, files[i].bytes, files[i].length);
      assert_refused (files[i].name, files[i].name, files[i].code, FALSE);
    }
}

/* Wrong endings are no lies: what counts is what is inside. */
static void
test_wrong_ending (void)
{
  g_autoptr (WmPhotoFacts) facts = NULL;

  corpus_run ("convert -size 30x20 xc:blue png:really.jpg");
  facts = probe ("really.jpg");
  g_assert_cmpint (facts->format, ==, WM_PHOTO_PNG);
}

static void
test_truncated (void)
{
  static const char *const names[] = { "t.jpg", "p.jpg",  "t.png",
                                       "t.tif", "t.webp", "t.heic" };
  static const double parts[] = { 0.3, 0.6, 0.95 };

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree guint8 *bytes = NULL;
      gsize length;

      corpus_make_scene (names[i], 400, 300,
                         g_str_has_prefix (names[i], "p") ? "-interlace JPEG" : "");
      bytes = corpus_load (names[i], &length);
      g_assert_true (wm_photo_check_whole (corpus_path (names[i]), NULL, NULL));

      for (gsize p = 0; p < G_N_ELEMENTS (parts); p++)
        {
          g_autoptr (GError) error = NULL;

          corpus_write ("cut.jpg", bytes, (gsize)((double)length * parts[p]));
          g_test_message ("%s cut at %g", names[i], parts[p]);
          g_assert_false (wm_photo_check_whole (corpus_path ("cut.jpg"), NULL, &error));
          g_assert_true (
              g_error_matches (error, WM_PHOTO_ERROR, WM_PHOTO_ERROR_TRUNCATED)
              || (i > 2
                  && g_error_matches (error, WM_PHOTO_ERROR, WM_PHOTO_ERROR_LYING)));
          g_assert_nonnull (strstr (error->message, "cut.jpg"));
        }
    }
}

static void
put_16 (guint8 *at, int value)
{
  at[0] = value >> 8;
  at[1] = value & 255;
}

/* The height and width in a JPEG's frame header, for the test to falsify. */
static guint8 *
find_frame (guint8 *bytes, gsize length)
{
  for (gsize i = 0; i + 9 < length; i++)
    if (bytes[i] == 0xFF && bytes[i + 1] == 0xC0)
      return bytes + i + 5;

  g_assert_not_reached ();
}

static void
test_lying (void)
{
  g_autofree guint8 *jpeg = NULL;
  g_autofree guint8 *png = NULL;
  gsize length;

  /* Says 20,000 x 20,000 and has the bytes of 64 x 48. */
  corpus_make_scene ("l.jpg", 64, 48, "");
  jpeg = corpus_load ("l.jpg", &length);
  put_16 (find_frame (jpeg, length), 20000);
  put_16 (find_frame (jpeg, length) + 2, 20000);
  corpus_write ("liar.jpg", jpeg, length);
  assert_refused ("liar.jpg", "liar.jpg", WM_PHOTO_ERROR_LYING, FALSE);

  /* The largest a JPEG can say. */
  put_16 (find_frame (jpeg, length), 65535);
  put_16 (find_frame (jpeg, length) + 2, 65535);
  corpus_write ("huge.jpg", jpeg, length);
  {
    g_autoptr (GError) error = NULL;

    g_assert_null (wm_photo_probe_file (corpus_path ("huge.jpg"), &error));
    g_assert_true (g_error_matches (error, WM_PHOTO_ERROR, WM_PHOTO_ERROR_LYING)
                   || g_error_matches (error, WM_PHOTO_ERROR, WM_PHOTO_ERROR_TOO_LARGE));
  }

  /* No pixels at all. */
  put_16 (find_frame (jpeg, length), 0);
  corpus_write ("flat.jpg", jpeg, length);
  assert_refused ("flat.jpg", "flat.jpg", WM_PHOTO_ERROR_LYING, FALSE);

  corpus_make_scene ("l.png", 64, 48, "");
  png = corpus_load ("l.png", &length);
  put_16 (png + 18, 20000);
  put_16 (png + 22, 20000);
  corpus_write ("liar.png", png, length);
  assert_refused ("liar.png", "liar.png", WM_PHOTO_ERROR_LYING, TRUE);
}

/* A small file that really unpacks to far too many pixels. */
static void
test_too_large (void)
{
  corpus_run (
      "python3 -c \"import zlib, struct\n"
      "def chunk (t, b):\n"
      "  return struct.pack ('>I', len (b)) + t + b + struct.pack ('>I', zlib.crc32 (t + "
      "b))\n"
      "rows = zlib.compress (bytes ((40000 // 8 + 1) * 20000), 9)\n"
      "open ('bomb.png', 'wb').write (bytes ([137]) + b'PNG\\r\\n' + bytes ([26, 10])\n"
      "  + chunk (b'IHDR', struct.pack ('>IIBBBBB', 40000, 20000, 1, 0, 0, 0, 0))\n"
      "  + chunk (b'IDAT', rows) + chunk (b'IEND', b''))\"");
  corpus_run ("pngcheck -q bomb.png");
  assert_refused ("bomb.png", "bomb.png", WM_PHOTO_ERROR_TOO_LARGE, FALSE);
}

static void
test_names (void)
{
  static const char *const names[] = { "with space.jpg", "two\nlines.jpg",
                                       "-rf.jpg",        "not\377utf8.jpg",
                                       "emoji💍.jpg",     "quote'\"$(x).jpg",
                                       "opt[page=2].jpg" };

  corpus_make_scene ("plain.jpg", 32, 24, "");
  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree guint8 *bytes = NULL;
      g_autofree char *shown = wm_photo_display_name (names[i]);
      g_autoptr (WmPhotoFacts) facts = NULL;
      g_autoptr (WmPixels) pixels = NULL;
      gsize length;

      bytes = corpus_load ("plain.jpg", &length);
      corpus_write (names[i], bytes, length);
      facts = probe (names[i]);
      g_assert_cmpint (facts->width, ==, 32);
      pixels = wm_photo_load_fit (corpus_path (names[i]), 32, 32, NULL, NULL);
      g_assert_nonnull (pixels);
      g_assert_true (g_utf8_validate (shown, -1, NULL));
      g_assert_null (strchr (shown, '\n'));

      corpus_write (names[i], "", 0);
      assert_refused (names[i], shown, WM_PHOTO_ERROR_EMPTY, FALSE);
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

  g_test_add_func ("/photo/probe/formats", test_formats);
  g_test_add_func ("/photo/probe/exif", test_exif);
  g_test_add_func ("/photo/probe/exif-senseless", test_exif_senseless);
  g_test_add_func ("/photo/probe/metadata-formats", test_metadata_formats);
  g_test_add_func ("/photo/probe/bad-places", test_bad_places);
  g_test_add_func ("/photo/probe/wrong-kinds", test_wrong_kinds);
  g_test_add_func ("/photo/probe/wrong-ending", test_wrong_ending);
  g_test_add_func ("/photo/probe/truncated", test_truncated);
  g_test_add_func ("/photo/probe/lying", test_lying);
  g_test_add_func ("/photo/probe/too-large", test_too_large);
  g_test_add_func ("/photo/probe/names", test_names);

  result = g_test_run ();
  corpus_end ();
  wm_photo_stop ();
  return result;
}
