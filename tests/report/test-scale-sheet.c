/* test-scale-sheet.c: the printed sheet, photographed by a known camera and found again
 *
 * The page is drawn to pixels and seen by a pinhole camera of known pose, with blur,
 * noise and uneven light. What the finder says is compared with the pose: points of the
 * field in mm, against where they truly are.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <cairo.h>
#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

#include "photo/jpeg-out.h"
#include "photo/photo-start.h"
#include "photo/pixels.h"
#include "photo/sheet-find.h"
#include "reckon/edge.h"
#include "reckon/plane.h"
#include "report/scale-sheet.h"

#define PAGE_PX_PER_MM 12.0
#define WIDTH 1400
#define HEIGHT 1050

static char *folder;

/* ---- the page as light --------------------------------------------------------- */

typedef struct
{
  int width, height;
  float *light; /* 0..1 */
} Page;

static Page *
draw_page (WmPaper paper)
{
  Page *page = g_new0 (Page, 1);
  g_autoptr (WmLanguage) english = wm_language_new ("en");
  double width, height;
  cairo_surface_t *surface;
  cairo_t *cr;
  const guint8 *data;
  int stride;

  wm_paper_get_size_mm (paper, &width, &height);
  page->width = (int)(width * PAGE_PX_PER_MM);
  page->height = (int)(height * PAGE_PX_PER_MM);
  surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, page->width, page->height);
  cr = cairo_create (surface);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  cairo_scale (cr, PAGE_PX_PER_MM / WM_POINTS_PER_MM, PAGE_PX_PER_MM / WM_POINTS_PER_MM);
  wm_scale_sheet_draw (paper, english, cr);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  data = cairo_image_surface_get_data (surface);
  stride = cairo_image_surface_get_stride (surface);
  page->light = g_new (float, (gsize)page->width * page->height);
  for (int y = 0; y < page->height; y++)
    for (int x = 0; x < page->width; x++)
      page->light[(gsize)y * page->width + x] =
          (float)wm_linear_from_srgb (data[y * stride + 4 * x + 1] / 255.0);
  cairo_surface_destroy (surface);
  return page;
}

static void
free_page (Page *page)
{
  g_free (page->light);
  g_free (page);
}

/* Grey cloth beside the paper. Printed black is no full black, paper no full white. */
static double
light_of_page (const Page *page, double x_mm, double y_mm)
{
  double x = x_mm * PAGE_PX_PER_MM - 0.5, y = y_mm * PAGE_PX_PER_MM - 0.5;
  int ix = (int)floor (x), iy = (int)floor (y);
  double fx = x - ix, fy = y - iy;
  const float *at;

  if (ix < 0 || iy < 0 || ix + 1 >= page->width || iy + 1 >= page->height)
    return 0.12;
  at = page->light + (gsize)iy * page->width + ix;
  return 0.04
         + 0.76
               * ((1 - fy) * ((1 - fx) * at[0] + fx * at[1])
                  + fy * ((1 - fx) * at[page->width] + fx * at[page->width + 1]));
}

/* ---- the camera ---------------------------------------------------------------- */

/* matrix: page mm to photo px. */
typedef struct
{
  double matrix[9];
  double inverse[9];
} Camera;

static WmPoint
map (const double m[9], double x, double y)
{
  double w = m[6] * x + m[7] * y + m[8];

  return (WmPoint) { (m[0] * x + m[1] * y + m[2]) / w, (m[3] * x + m[4] * y + m[5]) / w };
}

static void
invert (const double m[9], double out[9])
{
  const double a[9] = { m[4] * m[8] - m[5] * m[7], m[2] * m[7] - m[1] * m[8],
                        m[1] * m[5] - m[2] * m[4], m[5] * m[6] - m[3] * m[8],
                        m[0] * m[8] - m[2] * m[6], m[2] * m[3] - m[0] * m[5],
                        m[3] * m[7] - m[4] * m[6], m[1] * m[6] - m[0] * m[7],
                        m[0] * m[4] - m[1] * m[3] };

  memcpy (out, a, sizeof a);
}

/* A pinhole camera above @at (page mm): rolled, tilted, the field filling @fill of the
 * photo's width. */
static void
aim (Camera *camera, WmPoint at, double field_mm, double fill, double tilt, double toward,
     double roll)
{
  const double focal = 1.4 * WIDTH;
  double distance = focal * field_mm / (fill * WIDTH);
  /* Rotation: turn the sheet by toward, lean it by tilt, turn back, roll. */
  double ct = cos (toward), st = sin (toward), c = cos (tilt), s = sin (tilt);
  double cr = cos (roll - toward), sr = sin (roll - toward);
  /* Sheet axes in the camera's. */
  double x[3] = { cr * ct - sr * c * st, sr * ct + cr * c * st, s * st };
  double y[3] = { -cr * st - sr * c * ct, -sr * st + cr * c * ct, s * ct };
  double m[9];

  for (int i = 0; i < 3; i++)
    {
      double t = i == 2 ? distance : 0;

      m[3 * i] = x[i];
      m[3 * i + 1] = y[i];
      m[3 * i + 2] = t - x[i] * at.x - y[i] * at.y;
    }
  for (int k = 0; k < 3; k++)
    {
      camera->matrix[k] = focal * m[k] + WIDTH / 2.0 * m[6 + k];
      camera->matrix[3 + k] = focal * m[3 + k] + HEIGHT / 2.0 * m[6 + k];
      camera->matrix[6 + k] = m[6 + k];
    }
  invert (camera->matrix, camera->inverse);
}

/* IEC 61966-2-1, by a table fine enough for 8 bits. */
static double
coded (double light)
{
  static double table[8193];

  if (table[8192] == 0)
    for (int i = 0; i <= 8192; i++)
      {
        double v = i / 8192.0;

        table[i] = v <= 0.0031308 ? 12.92 * v : 1.055 * pow (v, 1 / 2.4) - 0.055;
      }
  return table[(int)(CLAMP (light, 0.0, 1.0) * 8192 + 0.5)];
}

static void
blur (float *light, double sigma)
{
  int reach = (int)ceil (3 * sigma);
  g_autofree float *row = g_new (float, MAX (WIDTH, HEIGHT));
  g_autofree double *kernel = g_new (double, reach + 1);
  double sum = 0;

  if (sigma <= 0)
    return;
  for (int i = 0; i <= reach; i++)
    {
      kernel[i] = exp (-0.5 * i * i / (sigma * sigma));
      sum += i == 0 ? kernel[i] : 2 * kernel[i];
    }
  for (int pass = 0; pass < 2; pass++)
    {
      int lines = pass == 0 ? HEIGHT : WIDTH, n = pass == 0 ? WIDTH : HEIGHT;
      int step = pass == 0 ? 1 : WIDTH, next = pass == 0 ? WIDTH : 1;

      for (int line = 0; line < lines; line++)
        {
          float *at = light + (gsize)line * next;

          for (int i = 0; i < n; i++)
            {
              double value = kernel[0] * at[i * step];

              for (int k = 1; k <= reach; k++)
                value += kernel[k]
                         * (at[CLAMP (i - k, 0, n - 1) * step]
                            + at[CLAMP (i + k, 0, n - 1) * step]);
              row[i] = (float)(value / sum);
            }
          for (int i = 0; i < n; i++)
            at[i * step] = row[i];
        }
    }
}

typedef struct
{
  double sigma_px; /* blur */
  double noise;    /* standard deviation, steps of 255 */
  double uneven;   /* light falls by so much across the photo */
  gboolean is_mirrored;
  WmPoint cover; /* page mm: a dark blot of 12 mm over this place; NaN: none */
} Weather;

static char *
photograph (const Page *page, const Camera *camera, const Weather *weather, GRand *rand)
{
  g_autofree float *light = g_new (float, (gsize)WIDTH *HEIGHT);
  g_autoptr (WmPixels) pixels = wm_pixels_new (WIDTH, HEIGHT);
  g_autoptr (GBytes) jpeg = NULL;
  char *path = g_build_filename (folder, "photo.jpg", NULL);
  gsize size;
  const char *data;

  for (int y = 0; y < HEIGHT; y++)
    for (int x = 0; x < WIDTH; x++)
      {
        double sum = 0;

        for (int k = 0; k < 4; k++)
          {
            WmPoint mm = map (camera->inverse, x + 0.25 + 0.5 * (k & 1),
                              y + 0.25 + 0.5 * (k >> 1));

            sum += hypot (mm.x - weather->cover.x, mm.y - weather->cover.y) < 12
                       ? 0.05
                       : light_of_page (page, mm.x, mm.y);
          }
        light[(gsize)y * WIDTH + (weather->is_mirrored ? WIDTH - 1 - x : x)] =
            (float)(sum / 4 * (1 - weather->uneven * x / WIDTH));
      }
  blur (light, weather->sigma_px);
  for (int y = 0; y < HEIGHT; y++)
    for (int x = 0; x < WIDTH; x++)
      {
        /* Near enough to a normal distribution: the sum of four. */
        double noise = 0;
        double value;
        guint8 *at = pixels->data + y * pixels->stride + 4 * x;

        for (int k = 0; k < 4; k++)
          noise += g_rand_double_range (rand, -1, 1);
        value = 255 * coded (light[(gsize)y * WIDTH + x])
                + weather->noise * noise * sqrt (0.75);
        at[0] = at[1] = at[2] = (guint8)CLAMP (value + 0.5, 0, 255);
        at[3] = 255;
      }
  jpeg = wm_jpeg_encode (pixels, 90, NULL);
  g_assert_nonnull (jpeg);
  data = g_bytes_get_data (jpeg, &size);
  g_assert_true (g_file_set_contents (path, data, (gssize)size, NULL));
  return path;
}

static WmSheetPlace
find (const char *path, double check_mm)
{
  WmSheetPlace place;
  g_autoptr (GError) error = NULL;

  wm_sheet_find (path, check_mm, &place, NULL, &error);
  g_assert_no_error (error);
  return place;
}

/* ---- many poses ------------------------------------------------------------------ */

typedef struct
{
  int n;              /* points */
  double sum2, worst; /* of the error over the field's width */
  int within;         /* twice the stated uncertainty, on lengths */
  int lengths;
} Score;

/* A grid of points of the field: by the plane in mm, against the truth. */
static void
judge (Score *score, const WmSheetPlace *place, const Camera *camera, WmPoint origin)
{
  const WmSheetForm *form = wm_sheet_form (place->field);
  WmPlane plane = { .width_mm = wm_exact (place->width_mm),
                    .height_mm = wm_exact (place->height_mm),
                    .u_corner_px = place->u_corner_px };
  const char *which = NULL;
  WmPoint ends[2];
  WmLength length;

  memcpy (plane.corners, place->corners, sizeof plane.corners);
  g_assert_cmpint (wm_plane_solve (&plane, &which), ==, WM_OK);
  for (int i = 0; i < 25; i++)
    {
      WmPoint mm = { form->width_mm * (0.1 + 0.2 * (i % 5)),
                     form->height_mm * (0.1 + 0.2 * (i / 5)) };
      WmPoint px = map (camera->matrix, origin.x + mm.x, origin.y + mm.y), got;
      double off;

      g_assert_cmpint (wm_plane_map (&plane, px, &got), ==, WM_OK);
      off = hypot (got.x - mm.x, got.y - mm.y) / form->width_mm;
      score->n++;
      score->sum2 += off * off;
      score->worst = MAX (score->worst, off);
      if (i == 6)
        ends[0] = px;
      if (i == 18)
        ends[1] = px;
    }
  /* Ends known exactly: what is left is the sheet's own part of the uncertainty. */
  g_assert_cmpint (
      wm_plane_measure (&plane, NULL, ends[0], ends[1], 0.0, &length, &which), ==, WM_OK);
  score->lengths++;
  score->within +=
      fabs (length.value_mm - hypot (0.4 * form->width_mm, 0.4 * form->height_mm))
      <= 2 * length.u_mm;
}

static WmPoint
middle_of (WmPaper paper, WmSheetField field)
{
  WmPoint at = wm_scale_sheet_origin (paper, field);

  return (WmPoint) { at.x + wm_sheet_form (field)->width_mm / 2,
                     at.y + wm_sheet_form (field)->height_mm / 2 };
}

#define N_POSES 100

static void
test_poses (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (20261125);
  Page *pages[2] = { draw_page (WM_PAPER_A4), draw_page (WM_PAPER_LETTER) };
  Score scores[2] = { { 0 } }; /* with four marks, with three */

  for (int i = 0; i < N_POSES; i++)
    {
      WmPaper paper = i % 2 == 0 ? WM_PAPER_A4 : WM_PAPER_LETTER;
      WmSheetField field = i % 4 < 2 ? WM_SHEET_LARGE : WM_SHEET_SMALL;
      WmPoint origin = wm_scale_sheet_origin (paper, field);
      Weather weather = { .sigma_px = g_rand_double_range (rand, 0, 2.0),
                          .noise = g_rand_double_range (rand, 0, 6),
                          .uneven = g_rand_double_range (rand, 0, 0.7),
                          .cover = { NAN, NAN } };
      double tilt = g_rand_double_range (rand, 0, 35) * G_PI / 180;
      double roll =
          g_rand_double_range (rand, -25, 25) * G_PI / 180 + (i % 8 == 7) * G_PI;
      gboolean is_covered = i % 5 == 4;
      Camera camera;
      WmSheetPlace place;
      g_autofree char *path = NULL;

      if (is_covered)
        {
          WmPoint mark = wm_sheet_mark_origin (field, g_rand_int_range (rand, 0, 4));

          weather.cover =
              (WmPoint) { origin.x + mark.x + wm_sheet_form (field)->mark_mm / 2,
                          origin.y + mark.y + wm_sheet_form (field)->mark_mm / 2 };
        }
      aim (&camera, middle_of (paper, field), wm_sheet_form (field)->width_mm,
           g_rand_double_range (rand, 0.45, 0.6), tilt,
           g_rand_double_range (rand, -G_PI, G_PI), roll);
      path = photograph (pages[paper == WM_PAPER_LETTER], &camera, &weather, rand);
      place = find (path, WM_SHEET_CHECK_MM);
      if (place.answer != WM_SHEET_FOUND || place.field != field)
        {
          g_autofree char *kept = g_strdup_printf ("/tmp/sheet-fail-%d.jpg", i);

          if (g_getenv ("WM_KEEP_PHOTOS") != NULL)
            g_rename (path, kept);
          g_error ("pose %d: answer %d, field %d (tilt %.0f, blur %.1f, noise %.1f)", i,
                   place.answer, place.field, tilt * 180 / G_PI, weather.sigma_px,
                   weather.noise);
        }
      g_assert_cmpint (place.n_marks, ==, is_covered ? 3 : 4);
      /* The lean is that in the field's middle, near which the camera aims. */
      g_assert_cmpfloat (fabs (place.tilt_deg - tilt * 180 / G_PI), <, 5);
      judge (&scores[is_covered], &place, &camera, origin);
    }
  for (int i = 0; i < 2; i++)
    g_test_message (
        "%d photos with %d marks: points off by %.5f of the field's width rms,"
        " %.5f at most; %d lengths within the stated uncertainty (k = 2)",
        scores[i].lengths, 4 - i, sqrt (scores[i].sum2 / scores[i].n), scores[i].worst,
        scores[i].within);
  /* The worst place of the worst photo: three hundredths of a millimetre on a hundred;
   * towards a mark that is covered two tenths. And a stated uncertainty that holds nearly
   * always (it includes more than chance). */
  g_assert_cmpfloat (scores[0].worst, <, 0.0003);
  g_assert_cmpfloat (scores[1].worst, <, 0.002);
  g_assert_cmpint (scores[0].within + scores[1].within, >=, N_POSES * 95 / 100);
  free_page (pages[0]);
  free_page (pages[1]);
}

/* The printer made it smaller; the measured rule puts it right. */
static void
test_printed_smaller (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (4);
  Page *page = draw_page (WM_PAPER_A4);
  Weather weather = { .cover = { NAN, NAN } };
  WmPoint at = middle_of (WM_PAPER_A4, WM_SHEET_LARGE);
  g_autofree char *path = NULL;
  Camera camera;
  WmSheetPlace place;

  aim (&camera, at, 160, 0.7, 0, 0, 0);
  path = photograph (page, &camera, &weather, rand);
  place = find (path, 96.5);
  g_assert_cmpint (place.answer, ==, WM_SHEET_FOUND);
  g_assert_cmpfloat_with_epsilon (place.width_mm, 160 * 0.965, 1e-9);
  g_assert_cmpfloat_with_epsilon (place.height_mm, 110 * 0.965, 1e-9);
  free_page (page);
}

/* A mirror image, two marks, and a page of text only: each said for what it is. */
static void
test_refusals (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (5);
  Page *page = draw_page (WM_PAPER_A4);
  WmPoint at = middle_of (WM_PAPER_A4, WM_SHEET_LARGE);
  Weather mirrored = { .is_mirrored = TRUE, .cover = { NAN, NAN } };
  Weather plain = { .cover = { NAN, NAN } };
  Camera camera;
  g_autofree char *path = NULL;

  aim (&camera, at, 160, 0.7, 0, 0, 0);
  path = photograph (page, &camera, &mirrored, rand);
  g_assert_cmpint (find (path, 100).answer, ==, WM_SHEET_NO_FIELD);

  g_clear_pointer (&path, g_free);
  /* Only the left half of the field. */
  aim (&camera, (WmPoint) { at.x - 90, at.y }, 160, 0.95, 0, 0, 0);
  path = photograph (page, &camera, &plain, rand);
  g_assert_cmpint (find (path, 100).answer, ==, WM_SHEET_TOO_FEW);

  g_clear_pointer (&path, g_free);
  aim (&camera, (WmPoint) { at.x + 60, 250 }, 60, 0.9, 0, 0, 0);
  path = photograph (page, &camera, &plain, rand);
  g_assert_cmpint (find (path, 100).answer, ==, WM_SHEET_NONE);
  free_page (page);
}

/* No photo of the sample pieces shows a sheet. */
static void
test_sample_photos (void)
{
  g_autofree char *root =
      g_build_filename (g_getenv ("WM_SOURCE_DIR"), "sample-pieces", "photos", NULL);
  g_autoptr (GDir) kinds = g_dir_open (root, 0, NULL);
  const char *kind;
  int n = 0;

  g_assert_nonnull (kinds);
  while ((kind = g_dir_read_name (kinds)) != NULL)
    {
      g_autofree char *one = g_build_filename (root, kind, NULL);
      g_autoptr (GDir) photos = g_dir_open (one, 0, NULL);
      const char *name;

      while (photos != NULL && (name = g_dir_read_name (photos)) != NULL)
        if (g_str_has_suffix (name, ".jpg"))
          {
            g_autofree char *path = g_build_filename (one, name, NULL);

            if (find (path, 100).answer == WM_SHEET_FOUND)
              g_error ("a sheet found on %s", name);
            n++;
          }
    }
  g_test_message ("%d sample photos, no sheet on any", n);
  g_assert_cmpint (n, >=, 28);
}

int
main (int argc, char **argv)
{
  int status;
  g_autofree char *photo = NULL;

  g_test_init (&argc, &argv, NULL);
  wm_photo_start ();
  folder = g_dir_make_tmp ("wm-sheet-XXXXXX", NULL);
  g_test_add_func ("/report/scale-sheet/poses", test_poses);
  g_test_add_func ("/report/scale-sheet/printed-smaller", test_printed_smaller);
  g_test_add_func ("/report/scale-sheet/refusals", test_refusals);
  g_test_add_func ("/report/scale-sheet/sample-photos", test_sample_photos);
  status = g_test_run ();
  photo = g_build_filename (folder, "photo.jpg", NULL);
  g_unlink (photo);
  g_rmdir (folder);
  g_free (folder);
  return status;
}
