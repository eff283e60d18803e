/* bench-report.c: a report with 12 photos against cairo alone passing the same bytes
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <cairo-pdf.h>
#include <glib/gstdio.h>

#include "bench.h"
#include "photo/jpeg-out.h"
#include "photo/photo-start.h"
#include "record/make-checks.h"
#include "report/report.h"

#define N_PHOTOS 12
#define WIDTH 4000
#define HEIGHT 3000

typedef struct
{
  char *folder;
  WmArchive *archive;
  WmTrade *trade;
  WmVisit *visit;
  GPtrArray *paths;
  WmReportSize size;
  gsize bytes;
  guint pages;
} Bench;

/* Something like a macro photo in how well it compresses: soft shapes and noise. */
static char *
write_photo (Bench *bench, int nth)
{
  g_autoptr (WmPixels) pixels = wm_pixels_new (WIDTH, HEIGHT);
  g_autoptr (GRand) random = g_rand_new_with_seed ((guint32)nth + 1);
  g_autoptr (GBytes) jpeg = NULL;
  char *path = g_strdup_printf ("%s/%02d.jpg", bench->folder, nth);
  gsize size;
  const char *data;

  for (int y = 0; y < HEIGHT; y++)
    for (int x = 0; x < WIDTH; x++)
      {
        guint8 *pixel = pixels->data + (gsize)y * pixels->stride + 4 * (gsize)x;
        guint noise = g_rand_int (random) & 7;
        int ring = (x - 2000) * (x - 2000) / 4000 + (y - 1500) * (y - 1500) / 4000;

        pixel[0] = (guint8)((ring < 300 && ring > 200 ? 60 : 110) + noise);
        pixel[1] = (guint8)((ring < 300 && ring > 200 ? 160 : 108) + noise);
        pixel[2] = (guint8)((ring < 300 && ring > 200 ? 205 : 106) + noise);
        pixel[3] = 255;
      }
  jpeg = wm_jpeg_encode (pixels, 88, NULL);
  data = g_bytes_get_data (jpeg, &size);
  g_assert_true (g_file_set_contents (path, data, (gssize)size, NULL));
  return path;
}

static void
add_photo (Bench *bench, WmEdit *edit, int nth, WmCheck *check)
{
  g_autofree char *sha256 = NULL;
  gint64 size;
  g_autoptr (WmPhoto) photo = wm_photo_new ();
  g_autoptr (WmMark) mark = wm_mark_new ();
  char *path = write_photo (bench, nth);

  g_ptr_array_add (bench->paths, path);
  g_assert_true (
      wm_archive_store_photo (bench->archive, path, "jpeg", NULL, &sha256, &size, NULL));
  g_object_set (photo, "visit-id", wm_record_get_id (WM_RECORD (bench->visit)), "moment",
                nth % 2 == 0 ? WM_PHOTO_BEFORE : WM_PHOTO_AFTER, "position", (gint64)nth,
                "sha256", sha256, "format", "jpeg", "byte-size", size, "width",
                (gint64)WIDTH, "height", (gint64)HEIGHT, "orientation", (gint64)1, NULL);
  g_object_set (mark, "photo-id", wm_record_get_id (WM_RECORD (photo)), "check-id",
                wm_record_get_id (WM_RECORD (check)), "shape", WM_MARK_SPOT, "points",
                "2100,1200", "confirmed", TRUE, NULL);
  wm_edit_put (edit, photo);
  wm_edit_put (edit, mark);
}

static void
fill (Bench *bench)
{
  g_autoptr (WmPiece) piece = wm_piece_new ();
  g_autoptr (GPtrArray) checks = NULL;
  g_autoptr (WmEdit) edit =
      wm_edit_new ("Bench", wm_record_get_id (WM_RECORD (piece)), NULL);
  g_autoptr (GError) error = NULL;

  bench->visit = wm_visit_new ();
  g_object_set (piece, "number", "2026-0001-A", "type", "ring_claw", NULL);
  g_object_set (bench->visit, "piece-id", wm_record_get_id (WM_RECORD (piece)), NULL);
  checks = wm_make_checks (bench->trade, "ring_claw",
                           wm_record_get_id (WM_RECORD (bench->visit)));
  wm_edit_put (edit, piece);
  wm_edit_put (edit, bench->visit);
  for (guint i = 0; i < checks->len; i++)
    {
      g_object_set (checks->pdata[i], "severity",
                    (gint64)(i < N_PHOTOS / 2 ? WM_SEVERITY_REPAIR : WM_SEVERITY_SOUND),
                    "number", (gint64)i + 1, NULL);
      wm_edit_put (edit, checks->pdata[i]);
    }
  for (int i = 0; i < N_PHOTOS; i++)
    add_photo (bench, edit, i, checks->pdata[i / 2]);
  if (!wm_archive_commit (bench->archive, edit, &error))
    g_error ("%s", error->message);
}

static void
run_ours (gpointer data)
{
  Bench *bench = data;
  WmReportOptions options = { .size = bench->size };
  g_autoptr (WmReport) report =
      wm_report_new (bench->archive, bench->trade,
                     wm_record_get_id (WM_RECORD (bench->visit)), &options, NULL);
  g_autoptr (GBytes) pdf = wm_report_make_pdf (report, NULL);

  bench->bytes = g_bytes_get_size (pdf);
  bench->pages = wm_report_get_n_pages (report);
}

static cairo_status_t
append_bytes (void *closure, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

/* The peer: the same photos, nothing else, on as many pages. */
static void
run_peer (gpointer data)
{
  Bench *bench = data;
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  cairo_surface_t *pdf =
      cairo_pdf_surface_create_for_stream (append_bytes, bytes, 595.276, 841.89);
  cairo_t *cr = cairo_create (pdf);

  for (guint i = 0; i < bench->paths->len; i++)
    {
      cairo_surface_t *photo =
          cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH, HEIGHT);
      char *jpeg;
      gsize size;

      g_assert_true (g_file_get_contents (bench->paths->pdata[i], &jpeg, &size, NULL));
      cairo_surface_set_mime_data (photo, CAIRO_MIME_TYPE_JPEG, (guchar *)jpeg, size,
                                   g_free, jpeg);
      cairo_save (cr);
      cairo_scale (cr, 0.06, 0.06);
      cairo_set_source_surface (cr, photo, 0, 0);
      cairo_paint (cr);
      cairo_restore (cr);
      cairo_surface_destroy (photo);
      if (i % 3 == 2)
        cairo_show_page (cr);
    }
  cairo_destroy (cr);
  cairo_surface_finish (pdf);
  cairo_surface_destroy (pdf);
}

int
main (void)
{
  Bench bench = { 0 };
  g_autofree char *folder = NULL;
  double ours_s;
  double peer_s;
  gsize photos = 0;
  double start;

  wm_photo_start ();
  bench.folder = g_dir_make_tmp ("wm-bench-XXXXXX", NULL);
  folder = g_build_filename (bench.folder, "archive", NULL);
  bench.paths = g_ptr_array_new_with_free_func (g_free);
  bench.trade = wm_trade_new_with_shop (NULL, NULL, NULL);
  bench.archive = wm_archive_open (folder, WM_ARCHIVE_CREATE, NULL);
  fill (&bench);
  for (guint i = 0; i < bench.paths->len; i++)
    {
      GStatBuf status;

      g_assert_cmpint (g_stat (bench.paths->pdata[i], &status), ==, 0);
      photos += (gsize)status.st_size;
    }

  bench_in_turn (run_ours, run_peer, &bench, 3, FALSE, &ours_s, &peer_s);
  bench_print_ms ("report for print, 12 photos, against cairo alone", ours_s, peer_s,
                  "at most 1.3");
  g_print ("size of that report\t%.2f MB\t%.2f MB\t%.3f\tthe photos' own\n",
           1e-6 * (double)bench.bytes, 1e-6 * (double)photos,
           (double)bench.bytes / (double)photos);
  bench.size = WM_REPORT_MAIL;
  start = bench_cpu_s ();
  run_ours (&bench);
  g_print ("the same for mail (%u pages)\t%.2f MB\t%.2f s CPU\t\tunder 4 MB\n",
           bench.pages, 1e-6 * (double)bench.bytes, bench_cpu_s () - start);

  wm_archive_close (bench.archive);
  {
    const char *argv[] = { "rm", "-rf", bench.folder, NULL };

    g_spawn_sync (NULL, (char **)argv, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, NULL, NULL,
                  NULL, NULL);
  }
  return 0;
}
