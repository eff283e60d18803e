/* test-jpeg-out.c: JPEG bytes passed through, stripped and made
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/jpeg-out.h"
#include "photo/load.h"
#include "photo/photo-start.h"

#include "corpus.h"

#include <locale.h>
#include <string.h>

static void
test_pass_through (void)
{
  corpus_make_scene ("base.jpg", 80, 60, "");
  corpus_make_scene ("prog.jpg", 80, 60, "-interlace JPEG");
  corpus_make_scene ("grey.jpg", 80, 60, "-colorspace Gray");
  corpus_make_scene ("turned.jpg", 80, 60, "");
  corpus_run ("exiftool -q -overwrite_original -n -Orientation=6 turned.jpg");
  corpus_make_scene ("cmyk.jpg", 80, 60, "-colorspace CMYK");
  corpus_make_scene ("not.png", 80, 60, "");

  g_assert_true (wm_jpeg_can_pass_through (corpus_path ("base.jpg")));
  g_assert_true (wm_jpeg_can_pass_through (corpus_path ("prog.jpg")));
  g_assert_true (wm_jpeg_can_pass_through (corpus_path ("grey.jpg")));
  g_assert_false (wm_jpeg_can_pass_through (corpus_path ("turned.jpg")));
  g_assert_false (wm_jpeg_can_pass_through (corpus_path ("cmyk.jpg")));
  g_assert_false (wm_jpeg_can_pass_through (corpus_path ("not.png")));
  g_assert_false (wm_jpeg_can_pass_through (corpus_path ("gone.jpg")));

  corpus_run ("exiftool -q -overwrite_original "
              "'-icc_profile<=/usr/share/color/icc/ghostscript/srgb.icc' prog.jpg && "
              "exiftool -q -overwrite_original "
              "'-icc_profile<=/usr/share/color/icc/ghostscript/a98.icc' base.jpg");
  g_assert_true (wm_jpeg_can_pass_through (corpus_path ("prog.jpg")));
  g_assert_false (wm_jpeg_can_pass_through (corpus_path ("base.jpg")));
}

/* exiftool finds nothing that tells where, when and with what; the picture is the
 * same bit for bit. */
static void
test_stripped (void)
{
  static const char *const kinds[] = { "", "-interlace JPEG" };

  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      g_autoptr (GBytes) bytes = NULL;
      g_autoptr (GError) error = NULL;
      g_autofree char *said = NULL;
      g_autoptr (WmPixels) before = NULL;
      g_autoptr (WmPixels) after = NULL;
      gsize length;
      const void *data;

      corpus_make_scene ("full.jpg", 120, 90, kinds[i]);
      corpus_run ("exiftool -q -overwrite_original -n -GPSLatitude=47.5 "
                  "-GPSLatitudeRef=N -Make=Camera -XMP:Creator=Somebody "
                  "-IPTC:City=Somewhere -Comment=secret "
                  "'-DateTimeOriginal=2026:03:14 15:09:26' full.jpg");
      /* A second picture after the end, as phones add. */
      corpus_run ("cp full.jpg tail.jpg && cat tail.jpg >> full.jpg");

      bytes = wm_jpeg_load_stripped (corpus_path ("full.jpg"), &error);
      g_assert_no_error (error);
      data = g_bytes_get_data (bytes, &length);
      corpus_write ("stripped.jpg", data, length);

      said = corpus_read ("exiftool -a -G1 stripped.jpg");
      g_assert_null (strstr (said, "GPS"));
      g_assert_null (strstr (said, "XMP"));
      g_assert_null (strstr (said, "IPTC"));
      g_assert_null (strstr (said, "ExifIFD"));
      g_assert_null (strstr (said, "secret"));
      g_assert_null (g_strstr_len (data, (gssize)length, "Somewhere"));

      before = corpus_magick_pixels ("full.jpg", "");
      after = corpus_magick_pixels ("stripped.jpg", "");
      g_assert_cmpint (corpus_difference (before, after, NULL), ==, 0);
    }
}

static void
test_mail (void)
{
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *said = NULL;
  g_autoptr (WmPixels) theirs = NULL;
  g_autoptr (WmPixels) ours = NULL;
  double mean;
  int width, height;
  gsize length;
  const void *data;

  corpus_make_scene ("mail.jpg", 1200, 800, "-quality 95");
  corpus_run ("exiftool -q -overwrite_original -n -Orientation=6 -GPSLatitude=47.5 "
              "-GPSLatitudeRef=N mail.jpg");
  bytes =
      wm_jpeg_for_mail (corpus_path ("mail.jpg"), 600, 85, &width, &height, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpint (width, ==, 400);
  g_assert_cmpint (height, ==, 600);

  data = g_bytes_get_data (bytes, &length);
  corpus_write ("mailed.jpg", data, length);
  said = corpus_read ("exiftool -a -G1 mailed.jpg");
  g_assert_null (strstr (said, "GPS"));
  g_assert_null (strstr (said, "Orientation"));
  g_assert_nonnull (strstr (said, "Baseline"));

  theirs = corpus_magick_pixels ("mailed.jpg", "");
  ours = wm_photo_load_fit (corpus_path ("mail.jpg"), 600, 600, NULL, NULL);
  corpus_difference (ours, theirs, &mean);
  /* Quality 85 with halved colour, on a scene full of fine edges. */
  g_assert_cmpfloat (mean, <, 5.0);
}

int
main (int argc, char **argv)
{
  int result;

  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  wm_photo_start ();
  corpus_begin ();

  g_test_add_func ("/photo/jpeg-out/pass-through", test_pass_through);
  g_test_add_func ("/photo/jpeg-out/stripped", test_stripped);
  g_test_add_func ("/photo/jpeg-out/mail", test_mail);

  result = g_test_run ();
  corpus_end ();
  wm_photo_stop ();
  return result;
}
