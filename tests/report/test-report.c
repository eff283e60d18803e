/* test-report.c: the report's pages, read back by qpdf and poppler
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <cairo.h>
#include <math.h>
#include <string.h>

#include "fixture.h"
#include "photo/jpeg-out.h"
#include "report/report.h"
#include "report/words.h"

static WmReport *
make_report (Fixture *f, WmReportSize size, WmPaper paper)
{
  g_autoptr (GError) error = NULL;
  WmReportOptions options = { .paper = paper, .size = size };
  WmReport *report = wm_report_new (
      f->archive, f->trade, wm_record_get_id (WM_RECORD (f->visit)), &options, &error);

  g_assert_no_error (error);
  return report;
}

static char *
write_pdf (Fixture *f, WmReportSize size, WmPaper paper)
{
  g_autoptr (WmReport) report = make_report (f, size, paper);
  g_autoptr (GError) error = NULL;
  char *path = g_build_filename (f->folder, "report.pdf", NULL);

  wm_report_write_pdf (report, path, &error);
  g_assert_no_error (error);
  return path;
}

static char *
read_text (const char *path)
{
  const char *argv[] = { "pdftotext", "-layout", path, "-", NULL };

  return fixture_run (argv);
}

/* ISO 32000 structure, as qpdf sees it; sizes of ISO 216 A4 and ANSI Letter, in points.
 */
static void
test_sound_pdf (Fixture *f, gconstpointer unused)
{
  static const struct
  {
    WmPaper paper;
    const char *size;
  } papers[] = { { WM_PAPER_A4, "595.276 x 841.89 pts (A4)" },
                 { WM_PAPER_LETTER, "612 x 792 pts (letter)" } };

  for (guint i = 0; i < G_N_ELEMENTS (papers); i++)
    {
      g_autofree char *path = write_pdf (f, WM_REPORT_PRINT, papers[i].paper);
      const char *check[] = { "qpdf", "--check", path, NULL };
      const char *info[] = { "pdfinfo", path, NULL };
      const char *fonts[] = { "pdffonts", path, NULL };
      g_autofree char *checked = fixture_run (check);
      g_autofree char *facts = fixture_run (info);
      g_autofree char *font_list = fixture_run (fonts);

      g_assert_nonnull (strstr (checked, "No syntax or stream encoding errors found"));
      g_assert_nonnull (strstr (facts, papers[i].size));
      g_assert_nonnull (strstr (facts, "Tagged:          yes"));
      g_assert_nonnull (strstr (facts, "2026-0007-X, Ring with claws"));
      /* Embedded and a subset: "emb sub uni" read "yes yes yes". */
      g_assert_nonnull (strstr (font_list, "yes yes yes"));
      g_assert_null (strstr (font_list, " no  no "));
    }
}

/* What the record says stands on the paper; what is for the shop only does not. */
static void
test_tells_the_record (Fixture *f, gconstpointer unused)
{
  g_autofree char *path = write_pdf (f, WM_REPORT_PRINT, WM_PAPER_A4);
  g_autofree char *text = read_text (path);
  g_autoptr (WmLanguage) english = wm_language_new ("en");
  static const char *const there[] = { "Ostrey Lane Bench",
                                       "2026-0007-X",
                                       "Ludo Brandis",
                                       "It catches on wool.",
                                       "a K scratched inside the band",
                                       "4.21",
                                       "(750)",
                                       "Before and after",
                                       "do not wear",
                                       "Page 1 of" };
  static const char *const not_there[] = { "pays late", "check his credit", "hurry",
                                           "0170 555 019" };
  guint open = 0;

  for (guint i = 0; i < G_N_ELEMENTS (there); i++)
    if (strstr (text, there[i]) == NULL)
      g_error ("not on the paper: %s", there[i]);
  for (guint i = 0; i < G_N_ELEMENTS (not_there); i++)
    g_assert_null (strstr (text, not_there[i]));

  /* Each finding's sentence, and nothing claimed that was not looked at. */
  for (guint i = 0; i < f->checks->len; i++)
    {
      WmCheck *check = g_ptr_array_index (f->checks, i);

      if (wm_severity_is_finding (check->severity))
        {
          g_auto (GStrv) words = g_strsplit (check->customer, " ", 3);

          g_assert_nonnull (strstr (text, words[0]));
        }
    }
  for (const char *at = text; (at = strstr (at, "not looked at")) != NULL; at++)
    open++;
  g_assert_cmpuint (open, ==, 2);
}

/* A photo shown four times is carried once, byte for byte (its JPEG data), when printed;
 * as pictures of the size of their places when mailed. */
static void
test_photos (Fixture *f, gconstpointer unused)
{
  g_autofree char *print = write_pdf (f, WM_REPORT_PRINT, WM_PAPER_A4);
  const char *list[] = { "pdfimages", "-list", print, NULL };
  g_autofree char *printed = fixture_run (list);
  g_autofree char *mail = NULL;
  g_autofree char *mailed = NULL;
  guint whole = 0;
  guint parts = 0;
  g_autoptr (GHashTable) objects =
      g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_auto (GStrv) lines = g_strsplit (printed, "\n", -1);

  for (guint i = 2; lines[i] != NULL && *lines[i] != '\0'; i++)
    {
      int width;
      int height;
      char enc[16];
      int object;

      g_assert_cmpint (sscanf (lines[i], "%*d %*d %*s %d %d %*s %*d %*d %15s %*s %d",
                               &width, &height, enc, &object),
                       ==, 4);
      g_assert_cmpstr (enc, ==, "jpeg");
      g_assert_cmpint (width, ==, 1800);
      g_assert_cmpint (height, ==, 1200);
      g_hash_table_add (objects, g_strdup_printf ("%d", object));
      whole++;
    }
  g_assert_cmpuint (whole, ==, 2 + 3 * 2); /* overviews, then two a finding */
  g_assert_cmpuint (g_hash_table_size (objects), ==, 2);

  mail = write_pdf (f, WM_REPORT_MAIL, WM_PAPER_A4);
  list[2] = mail;
  mailed = fixture_run (list);
  for (const char *at = mailed; (at = strstr (at, "jpeg")) != NULL; at++)
    parts++;
  g_assert_cmpuint (parts, ==, 2 + 3 * 2);
  g_assert_null (strstr (mailed, " 1800 "));
}

/* The bytes in the PDF are the photo's own picture data. */
static void
test_passes_bytes_through (Fixture *f, gconstpointer unused)
{
  g_autofree char *path = write_pdf (f, WM_REPORT_PRINT, WM_PAPER_A4);
  g_autofree char *prefix = g_build_filename (f->folder, "out", NULL);
  g_autofree char *first = g_strconcat (prefix, "-000.jpg", NULL);
  const char *argv[] = { "pdfimages", "-j", "-f", "1", "-l", "1", path, prefix, NULL };
  g_autofree char *done = fixture_run (argv);
  g_autofree char *original = wm_archive_photo_path (f->archive, f->before);
  g_autofree char *a = NULL;
  g_autofree char *b = NULL;
  gsize a_size;
  gsize b_size;

  g_assert_nonnull (done);
  g_assert_true (g_file_get_contents (first, &a, &a_size, NULL));
  g_assert_true (g_file_get_contents (original, &b, &b_size, NULL));
  g_assert_cmpmem (a, a_size, b, b_size);
}

static cairo_surface_t *
draw_page (WmReport *report, guint page, double scale)
{
  double width;
  double height;
  cairo_surface_t *surface;
  cairo_t *cr;

  wm_report_get_page_size_mm (report, &width, &height);
  surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24,
                                        (int)(width * WM_POINTS_PER_MM * scale),
                                        (int)(height * WM_POINTS_PER_MM * scale));
  cr = cairo_create (surface);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  cairo_scale (cr, scale, scale);
  wm_report_draw_page (report, page, cr);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  return surface;
}

static guint32
get_pixel (cairo_surface_t *surface, double x_mm, double y_mm, double scale)
{
  const guint8 *data = cairo_image_surface_get_data (surface);
  int x = (int)(x_mm * WM_POINTS_PER_MM * scale);
  int y = (int)(y_mm * WM_POINTS_PER_MM * scale);

  return *(const guint32 *)(data + y * cairo_image_surface_get_stride (surface) + 4 * x)
         & 0xffffff;
}

/* On a screen the photos are there too: the blue dot of the photo lies in the first
 * overview at the same share of it, and the tip of mark 1 does not hide it. */
static void
test_draws_on_screen (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmReport) report = make_report (f, WM_REPORT_PRINT, WM_PAPER_A4);
  cairo_surface_t *surface = draw_page (report, 0, 2.0);
  guint blue = 0;

  for (double y = 40; y < 150; y += 0.25)
    for (double x = 18; x < 105; x += 0.25)
      {
        guint32 pixel = get_pixel (surface, x, y, 2.0);

        if ((pixel & 0xff) > 180 && (pixel >> 16) < 60)
          blue++;
      }
  cairo_surface_destroy (surface);
  /* 40 px of radius at 1800 px for 85 mm: 1.9 mm, so 11 square mm, 16 samples each. */
  g_assert_cmpuint (blue, >, 100);
  g_assert_cmpuint (blue, <, 260);
}

/* Longer than a cairo surface can be: a strip put together from many pictures. */
static void
test_very_long_photo (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmPixels) pixels = wm_pixels_new (33000, 60);
  g_autoptr (GBytes) jpeg = wm_jpeg_encode (pixels, 85, NULL);
  g_autofree char *file = g_build_filename (f->folder, "long.jpg", NULL);
  g_autofree char *sha256 = NULL;
  g_autofree char *path = NULL;
  g_autofree char *text = NULL;
  gint64 byte_size;

  g_assert_true (g_file_set_contents (file, g_bytes_get_data (jpeg, NULL),
                                      (gssize)g_bytes_get_size (jpeg), NULL));
  g_assert_true (
      wm_archive_store_photo (f->archive, file, "jpeg", NULL, &sha256, &byte_size, NULL));
  g_object_set (f->before, "sha256", sha256, "byte-size", byte_size, "width",
                (gint64)33000, "height", (gint64)60, NULL);
  fixture_put (f, f->before);
  path = write_pdf (f, WM_REPORT_PRINT, WM_PAPER_A4);
  text = read_text (path);
  g_assert_null (strstr (text, "missing or damaged"));
  g_assert_nonnull (strstr (text, "Ludo Brandis"));
}

static void
test_missing_photo (Fixture *f, gconstpointer unused)
{
  g_autofree char *original = wm_archive_photo_path (f->archive, f->before);
  g_autofree char *path = NULL;
  g_autofree char *text = NULL;

  g_assert_cmpint (remove (original), ==, 0);
  path = write_pdf (f, WM_REPORT_PRINT, WM_PAPER_A4);
  text = read_text (path);
  g_assert_nonnull (strstr (text, "The file of this photo is missing or damaged."));
  g_assert_nonnull (strstr (text, "Ludo Brandis"));
}

/* A note longer than a page is printed to its last word, below it what comes next. */
static void
test_long_note (Fixture *f, gconstpointer unused)
{
  g_autoptr (GString) note = g_string_new (NULL);
  g_autofree char *path = NULL;
  g_autofree char *text = NULL;

  for (int i = 1; i <= 900; i++)
    g_string_append_printf (note, "w%03d ", i);
  g_object_set (g_ptr_array_index (f->checks, 3), "note", note->str, NULL);
  fixture_put (f, g_ptr_array_index (f->checks, 3));
  path = write_pdf (f, WM_REPORT_PRINT, WM_PAPER_LETTER);
  text = read_text (path);
  for (int i = 1; i <= 900; i++)
    {
      g_autofree char *word = g_strdup_printf ("w%03d", i);

      if (strstr (text, word) == NULL)
        g_error ("not on the paper: %s", word);
    }
  g_assert_nonnull (strstr (text, "Received, with thanks"));
}

static gboolean
is_warned (Fixture *f)
{
  g_autofree char *path = write_pdf (f, WM_REPORT_PRINT, WM_PAPER_A4);
  g_autofree char *text = read_text (path);

  return strstr (text, "Please keep this piece off") != NULL;
}

/* What is still not to be worn is said, after photos or none; what was mended is not. */
static void
test_warns_of_what_is_left (Fixture *f, gconstpointer unused)
{
  WmCheck *check = g_ptr_array_index (f->checks, 3);

  g_assert_cmpint (check->severity, ==, WM_SEVERITY_NO_WEAR);
  g_assert_false (is_warned (f));
  g_object_set (check, "after-severity", (gint64)WM_SEVERITY_NO_WEAR, NULL);
  fixture_put (f, check);
  g_assert_true (is_warned (f));
  g_object_set (check, "after-severity", (gint64)WM_SEVERITY_NOT_LOOKED_AT, NULL);
  fixture_put (f, check);
  g_assert_true (is_warned (f));
}

static void
test_cancelled (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmReport) report = make_report (f, WM_REPORT_PRINT, WM_PAPER_A4);
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GError) error = NULL;
  g_autofree char *path = g_build_filename (f->folder, "never.pdf", NULL);

  g_cancellable_cancel (cancellable);
  wm_report_set_cancellable (report, cancellable);
  g_assert_false (wm_report_write_pdf (report, path, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
  g_assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
}

static void
test_unwritable (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmReport) report = make_report (f, WM_REPORT_MAIL, WM_PAPER_A4);
  g_autoptr (GError) error = NULL;
  g_autofree char *path = g_build_filename (f->folder, "no-such", "report.pdf", NULL);

  g_assert_false (wm_report_write_pdf (report, path, &error));
  g_assert_error (error, G_FILE_ERROR, G_FILE_ERROR_NOENT);
  g_assert_true (g_str_has_prefix (error->message, "“report.pdf” could not be written"));
}

static void
test_unknown_visit (Fixture *f, gconstpointer unused)
{
  g_autoptr (GError) error = NULL;
  WmId nobody = wm_id_new ();

  g_assert_null (wm_report_new (f->archive, f->trade, &nobody, NULL, &error));
  g_assert_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_NOT_FOUND);
}

#define ADD(path, test)                                                                  \
  g_test_add ("/report/report/" path, Fixture, NULL, fixture_set_up, test,               \
              fixture_tear_down)

/* The column "Measured": a wire worn flat to 0.52 of 0.90 mm. Shares of the circular
 * segment at t/d = 0.578 (reckoning reference, section 2, by polygon integration): area
 * 0.600, strength in bending 0.342, stiffness 0.221. */
static void
test_measured (Fixture *f, gconstpointer unused)
{
  WmCheck *check = f->checks->pdata[0];
  g_autoptr (WmMeasurement) reading = wm_measurement_new ();
  g_autofree char *path = NULL, *text = NULL, *squeezed = NULL;
  g_autoptr (GRegex) blanks = g_regex_new ("[\\s\\x{a0}]+", 0, 0, NULL);
  static const char *const there[] = { "0.52 ± 0.04 mm", "of 0.9 mm as made: 58 % left",
                                       "pull 60 %, bending 34 %, stiffness 22 %",
                                       "The numbers alone point to: repair; the jeweller"
                                       " says: watch.",
                                       "Only one place, and she wears it seldom." };

  g_object_set (reading, "check-id", wm_record_get_id (WM_RECORD (check)), "quantity",
                "thickness", "value-mm", 0.52, "uncertainty-mm", 0.02, "as-made-mm", 0.90,
                "section", "round", "moment", WM_PHOTO_BEFORE, NULL);
  fixture_put (f, reading);
  g_object_set (check, "suggested", (gint64)WM_SEVERITY_REPAIR, "other-word-note",
                "Only one place, and she wears it seldom.", NULL);
  fixture_put (f, check);
  path = write_pdf (f, WM_REPORT_PRINT, WM_PAPER_A4);
  /* In the order of the page's text: column by column, not line by line. */
  const char *argv[] = { "pdftotext", path, "-", NULL };
  text = fixture_run (argv);
  squeezed = g_regex_replace (blanks, text, -1, 0, " ", 0, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (there); i++)
    if (strstr (squeezed, there[i]) == NULL)
      g_error ("not on the paper: %s in %s", there[i], squeezed);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  ADD ("sound-pdf", test_sound_pdf);
  ADD ("tells-the-record", test_tells_the_record);
  ADD ("measured", test_measured);
  ADD ("photos", test_photos);
  ADD ("passes-bytes-through", test_passes_bytes_through);
  ADD ("draws-on-screen", test_draws_on_screen);
  ADD ("very-long-photo", test_very_long_photo);
  ADD ("missing-photo", test_missing_photo);
  ADD ("long-note", test_long_note);
  ADD ("warns-of-what-is-left", test_warns_of_what_is_left);
  ADD ("cancelled", test_cancelled);
  ADD ("unwritable", test_unwritable);
  ADD ("unknown-visit", test_unknown_visit);
  return g_test_run ();
}
