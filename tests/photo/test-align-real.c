/* test-align-real.c: real photos with a published truth, files, and warping
 *
 * The pictures are those of Debian's package opencv-doc (4.6.0+dfsg-12), not kept
 * here. graf1 and graf3 are a wall seen from two places, with the homography of
 * H1to3p.xml (Mikolajczyk et al. 2005), good to 2 to 3 px at the corners: asked for
 * are 4 px there and 1.2 px in the mean. leuvenA and leuvenB are a building, not one
 * plane: no matrix is right for it, and none may be vouched for.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <math.h>
#include <string.h>

#include <glib/gstdio.h>

#include "photo/align-matrix.h"
#include "photo/load.h"
#include "photo/photo-start.h"
#include "photo/png-write.h"
#include "photo/warp.h"

#define PICTURES "/usr/share/doc/opencv-doc/examples/data"

/* Before (graf1) to after (graf3), indices of pixels. */
static const double graf_truth[9] = { 0.76285898,    -0.29922929,    225.67123,
                                      0.33443473,    1.0143901,      -76.999973,
                                      3.4663091e-04, -1.4364524e-05, 1 };

/* NULL after a skip. */
static char *
find_picture (const char *name)
{
  char *path = g_build_filename (PICTURES, name, NULL);

  if (g_file_test (path, G_FILE_TEST_EXISTS))
    return path;
  g_test_skip (
      "not measured: install the Debian package opencv-doc for the published pairs");
  g_free (path);
  return NULL;
}

/* Indices count the middle of the first pixel 0, photo px count it 0.5. */
static void
to_photo_px (const double index[9], double m[9])
{
  const double in[9] = { 1, 0, -0.5, 0, 1, -0.5, 0, 0, 1 };
  const double out[9] = { 1, 0, 0.5, 0, 1, 0.5, 0, 0, 1 };

  wm_matrix_multiply (out, index, m);
  wm_matrix_multiply (m, in, m);
}

/* Root mean square over the corners, and mean over a 21 x 21 grid of the places
 * whose true image lies inside the after photo. */
static void
measure (const double truth[9], const double got[9], int width, int height,
         double *corners, double *mean)
{
  double sum = 0, square = 0;
  int inside = 0;

  for (int k = 0; k < 441; k++)
    {
      WmPoint p = { width * (k % 21) / 20.0, height * (k / 21) / 20.0 };
      WmPoint a = wm_align_map (truth, p);
      WmPoint b = wm_align_map (got, p);
      double off = hypot (a.x - b.x, a.y - b.y);

      if ((k % 21) % 20 == 0 && (k / 21) % 20 == 0)
        square += off * off / 4;
      if (a.x < 0 || a.y < 0 || a.x > width || a.y > height)
        continue;
      sum += off;
      inside++;
    }
  *corners = sqrt (square);
  *mean = sum / inside;
}

static void
test_graf (void)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *before = find_picture ("graf1.png");
  g_autofree char *after = find_picture ("graf3.png");
  double truth[9], got[9], corners, mean;
  WmAlignment out;

  if (before == NULL || after == NULL)
    return;
  g_assert_true (wm_align_photos (before, after, NULL, NULL, NULL, &out, &error));
  g_assert_true (out.aligned);
  g_assert_true (wm_align_invert (out.matrix, got));
  to_photo_px (graf_truth, truth);
  measure (truth, got, 800, 640, &corners, &mean);
  g_test_message ("corners %.2f px, mean %.2f px", corners, mean);
  g_assert_cmpfloat (corners, <, 4);
  g_assert_cmpfloat (mean, <, 1.2);
}

static void
test_leuven (void)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *before = find_picture ("leuvenA.jpg");
  g_autofree char *after = find_picture ("leuvenB.jpg");
  WmAlignment out;

  if (before == NULL || after == NULL)
    return;
  g_assert_true (wm_align_photos (before, after, NULL, NULL, NULL, &out, &error));
  g_test_message ("%s", wm_align_reason_name (out.reason));
  g_assert_false (out.aligned);
}

/* Reckoning-reference 9.3, graf1: exact truths of made pairs S2, S3 and S4. The
 * reference feature methods reach 0.04 to 2.4 px before, 0.004 to 0.014 after their
 * refinement; half a pixel is asked for. Their noise and blur are left out here:
 * only gain and bias are made. */
static void
test_made_pairs (void)
{
  static const struct
  {
    double truth[9];
    double gain, bias;
  } made[] = {
    { { 1.05637013, -0.238518235, 76.2342044, 0.227561357, 1.03945006, -123.256942,
        1.43085032e-5, -3.59738321e-5, 1 },
      1.15,
      -8 },
    { { 0.695645887, -0.524451168, 339.639229, 0.485829524, 0.653273988, -129.096033,
        2.99907451e-5, -1.02293922e-4, 1 },
      0.8,
      20 },
    { { -1, 0, 807, 0, -1, 644, 0, 0, 1 }, 1, 0 },
  };
  g_autoptr (GError) error = NULL;
  g_autofree char *path = find_picture ("graf1.png");
  g_autoptr (WmPixels) before = NULL;

  if (path == NULL)
    return;
  before = wm_photo_load_fit (path, 1600, 1600, NULL, &error);
  g_assert_no_error (error);
  WmAlignImage b = { before->data, before->width, before->height, before->stride, 4 };
  for (gsize k = 0; k < G_N_ELEMENTS (made); k++)
    {
      double truth[9], got[9], corners, mean;
      WmAlignment out;

      to_photo_px (made[k].truth, truth);
      g_autoptr (WmPixels) after = wm_warp_region (before, 1, truth, 0, 0, 1, 800, 640);
      for (gsize i = 0; i < after->stride * 640; i++)
        after->data[i] =
            (guint8)CLAMP (made[k].gain * after->data[i] + made[k].bias, 0, 255);
      WmAlignImage a = { after->data, 800, 640, after->stride, 4 };

      g_assert_true (wm_align_images (&b, &a, NULL, NULL, NULL, &out, &error));
      g_assert_true (out.aligned);
      wm_align_invert (out.matrix, got);
      measure (truth, got, 800, 640, &corners, &mean);
      g_test_message ("made pair %d: corners %.3f px", (int)k + 2, corners);
      g_assert_cmpfloat (corners, <, 0.5);
    }
}

static WmPixels *
make_pattern (int width, int height)
{
  WmPixels *p = wm_pixels_new (width, height);

  for (int y = 0; y < height; y++)
    for (int x = 0; x < width; x++)
      {
        guint8 *at = p->data + (gsize)y * p->stride + (gsize)x * 4;

        at[0] = (guint8)(x * 5);
        at[1] = (guint8)(y * 7);
        at[2] = (guint8)((x ^ y) * 3);
        at[3] = 255;
      }
  return p;
}

static void
test_warp_region (void)
{
  const double shift[9] = { 1, 0, 3, 0, 1, -2, 0, 0, 1 };
  const double flat[9] = { 0 };
  g_autoptr (WmPixels) source = make_pattern (40, 30);
  g_autoptr (WmPixels) same = wm_warp_region (source, 1, shift, 3, -2, 1, 40, 30);
  g_autoptr (WmPixels) moved = wm_warp_region (source, 1, shift, 0, 0, 1, 40, 30);
  g_autoptr (WmPixels) half = wm_warp_region (source, 1, shift, 3, -2, 2, 20, 15);
  guint8 mean;

  /* the part of the frame where the photo lies is the photo, byte for byte */
  g_assert_cmpmem (same->data, same->stride * 30, source->data, source->stride * 30);
  /* (0, 0) of the frame is (-3, 2) of the photo: outside; (3, 0) is (0, 2) */
  g_assert_cmpint (moved->data[3], ==, 0);
  g_assert_cmpmem (moved->data + 12, 4, source->data + 2 * source->stride, 4);
  /* at half size: the mean of four */
  mean = (guint8)((source->data[0] + source->data[4] + source->data[source->stride]
                   + source->data[source->stride + 4] + 2)
                  / 4);
  g_assert_cmpint (ABS (half->data[0] - mean), <=, 1);

  g_assert_null (wm_warp_region (source, 1, flat, 0, 0, 1, 10, 10));
  g_assert_null (wm_warp_region (source, 1, shift, 0, 0, 0, 10, 10));
  g_assert_null (wm_warp_region (source, 1, shift, 0, 0, 1, 0, 10));
  g_assert_null (wm_warp_region (source, 0, shift, 0, 0, 1, 10, 10));
}

static void
test_files (void)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *folder = g_dir_make_tmp ("wm-align-XXXXXX", &error);
  g_autofree char *before = g_build_filename (folder, "before.png", NULL);
  g_autofree char *after = g_build_filename (folder, "after.png", NULL);
  g_autofree char *warped = g_build_filename (folder, "warped.png", NULL);
  g_autofree char *nowhere = g_build_filename (folder, "no", "warped.png", NULL);
  const double shift[9] = { 1, 0, 3, 0, 1, -2, 0, 0, 1 };
  const double identity[9] = { 1, 0, 0, 0, 1, 0, 0, 0, 1 };
  g_autoptr (WmPixels) frame = make_pattern (50, 20);
  g_autoptr (WmPixels) source = make_pattern (40, 30);
  g_autoptr (WmPixels) read = NULL;
  WmAlignment out;

  g_assert_true (wm_pixels_write_png (frame, before, NULL, &error));
  g_assert_true (wm_pixels_write_png (source, after, NULL, &error));
  g_assert_true (wm_warp_photo (before, after, shift, warped, NULL, &error));
  read = wm_photo_load_fit (warped, 1000, 1000, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpint (read->width, ==, 50);
  g_assert_cmpint (read->height, ==, 20);
  g_assert_cmpint (read->data[0], ==, 255); /* white where nothing is */
  g_assert_cmpmem (read->data + 12, 4, source->data + 2 * source->stride, 4);

  g_assert_false (wm_warp_photo (before, after, shift, nowhere, NULL, &error));
  g_assert_nonnull (error);
  g_clear_error (&error);
  g_assert_false (wm_warp_photo (before, nowhere, shift, warped, NULL, &error));
  g_assert_error (error, WM_PHOTO_ERROR, WM_PHOTO_ERROR_NOT_FOUND);
  g_clear_error (&error);

  /* far too small to align: a no, not an error */
  g_assert_true (wm_align_photos (before, after, NULL, NULL, NULL, &out, &error));
  g_assert_cmpint (out.reason, ==, WM_ALIGN_TOO_PLAIN);
  g_assert_true (wm_align_refine (before, after, shift, NULL, NULL, NULL, &out, &error));
  g_assert_false (out.aligned);
  g_assert_cmpmem (out.matrix, sizeof shift, shift, sizeof shift);
  g_assert_false (wm_align_photos (before, nowhere, NULL, NULL, NULL, &out, &error));
  g_assert_error (error, WM_PHOTO_ERROR, WM_PHOTO_ERROR_NOT_FOUND);
  g_clear_error (&error);
  g_assert_false (
      wm_align_refine (nowhere, after, identity, NULL, NULL, NULL, &out, &error));
  g_assert_error (error, WM_PHOTO_ERROR, WM_PHOTO_ERROR_NOT_FOUND);

  g_remove (before);
  g_remove (after);
  g_remove (warped);
  g_rmdir (folder);
}

int
main (int argc, char **argv)
{
  int status;

  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/photo/align/real/graf", test_graf);
  g_test_add_func ("/photo/align/real/leuven", test_leuven);
  g_test_add_func ("/photo/align/real/made-pairs", test_made_pairs);
  g_test_add_func ("/photo/warp/region", test_warp_region);
  g_test_add_func ("/photo/align/files", test_files);
  status = g_test_run ();
  wm_photo_stop ();
  return status;
}
