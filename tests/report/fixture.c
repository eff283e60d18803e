/* fixture.c: an archive with one invented piece, two photos and three findings
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "fixture.h"

#include <cairo.h>
#include <glib/gstdio.h>

#include "photo/jpeg-out.h"
#include "photo/photo-start.h"
#include "record/make-checks.h"

#define WIDTH 1800
#define HEIGHT 1200

void
fixture_put (Fixture *f, gpointer record)
{
  g_autoptr (WmEdit) edit =
      wm_edit_new ("Test", wm_record_get_id (WM_RECORD (f->piece)), NULL);
  g_autoptr (GError) error = NULL;

  wm_edit_put (edit, record);
  wm_archive_commit (f->archive, edit, &error);
  g_assert_no_error (error);
}

/* A ring on grey, with a dot at 1200, 400 that a test can find again. */
static char *
write_photo (Fixture *f, const char *name, double shade)
{
  g_autoptr (WmPixels) pixels = wm_pixels_new (WIDTH, HEIGHT);
  cairo_surface_t *surface = wm_pixels_get_surface (pixels);
  cairo_t *cr = cairo_create (surface);
  g_autoptr (GBytes) jpeg = NULL;
  g_autoptr (GError) error = NULL;
  char *path = g_build_filename (f->folder, name, NULL);
  gsize size;
  const char *data;

  cairo_set_source_rgb (cr, shade, shade, shade);
  cairo_paint (cr);
  cairo_set_source_rgb (cr, 0.8, 0.65, 0.3);
  cairo_set_line_width (cr, 60);
  cairo_arc (cr, 900, 600, 400, 0, 2 * G_PI);
  cairo_stroke (cr);
  cairo_set_source_rgb (cr, 0, 0.3, 0.9);
  cairo_arc (cr, 1200, 400, 40, 0, 2 * G_PI);
  cairo_fill (cr);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  cairo_surface_destroy (surface);
  jpeg = wm_jpeg_encode (pixels, 90, &error);
  g_assert_no_error (error);
  data = g_bytes_get_data (jpeg, &size);
  g_assert_true (g_file_set_contents (path, data, (gssize)size, NULL));
  return path;
}

static WmPhoto *
add_photo (Fixture *f, const char *name, const char *moment, double shade)
{
  g_autofree char *path = write_photo (f, name, shade);
  g_autofree char *sha256 = NULL;
  g_autoptr (GError) error = NULL;
  gint64 size;
  WmPhoto *photo = wm_photo_new ();

  wm_archive_store_photo (f->archive, path, "jpeg", NULL, &sha256, &size, &error);
  g_assert_no_error (error);
  g_object_set (photo, "visit-id", wm_record_get_id (WM_RECORD (f->visit)), "moment",
                moment, "sha256", sha256, "format", "jpeg", "byte-size", size, "width",
                (gint64)WIDTH, "height", (gint64)HEIGHT, "orientation", (gint64)1,
                "taken-at-s", (gint64)1795680000, "scale-x1", 100.0, "scale-y1", 1100.0,
                "scale-x2", 1700.0, "scale-y2", 1100.0, "scale-mm", 40.0, NULL);
  fixture_put (f, photo);
  return photo;
}

static void
add_people_and_piece (Fixture *f)
{
  g_autoptr (WmEdit) edit = NULL;
  g_autoptr (GError) error = NULL;

  f->piece = wm_piece_new ();
  f->owner = wm_person_new ();
  f->visit = wm_visit_new ();
  g_object_set (f->owner, "role", WM_ROLE_OWNER, "name", "Ludo Brandis", "phone",
                "0170 555 019", "note", "pays late", NULL);
  g_object_set (f->piece, "number", "2026-0007-X", "type", "ring_claw", "owner-id",
                wm_record_get_id (WM_RECORD (f->owner)), "metal", "au750y", "fineness",
                (gint64)750, "unlike", "a K scratched inside the band", "shop-note",
                "check his credit", NULL);
  g_object_set (f->visit, "piece-id", wm_record_get_id (WM_RECORD (f->piece)),
                "taken-in-at-s", (gint64)1795680000, "wishes", "It catches on wool.",
                "mass-in-mg", (gint64)4210, "shop-note", "hurry", NULL);

  edit = wm_edit_new ("Take in", wm_record_get_id (WM_RECORD (f->piece)), NULL);
  wm_edit_put (edit, f->owner);
  wm_edit_put (edit, f->piece);
  wm_edit_put (edit, f->visit);
  g_assert_true (wm_archive_put_setting (f->archive, edit, WM_SETTING_SHOP_NAME,
                                         "Ostrey Lane Bench", &error));
  wm_archive_commit (f->archive, edit, &error);
  g_assert_no_error (error);
}

static void
add_finding (Fixture *f, guint index, gint64 number, WmSeverity severity,
             const char *points)
{
  WmCheck *check = g_ptr_array_index (f->checks, index);
  WmPhoto *photos[] = { f->before, f->after };

  g_object_set (check, "number", number, "severity", (gint64)severity, "after-severity",
                (gint64)WM_SEVERITY_SOUND, NULL);
  fixture_put (f, check);
  for (int i = 0; i < 2; i++)
    {
      g_autoptr (WmMark) mark = wm_mark_new ();

      g_object_set (mark, "photo-id", wm_record_get_id (WM_RECORD (photos[i])),
                    "check-id", wm_record_get_id (WM_RECORD (check)), "shape",
                    WM_MARK_SPOT, "points", points, "confirmed", TRUE, NULL);
      fixture_put (f, mark);
    }
}

void
fixture_set_up (Fixture *f, gconstpointer unused)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *archive_folder = NULL;

  wm_photo_start ();
  f->folder = g_dir_make_tmp ("wm-report-XXXXXX", &error);
  g_assert_no_error (error);
  archive_folder = g_build_filename (f->folder, "archive", NULL);
  f->trade = wm_trade_new_with_shop (NULL, NULL, &error);
  g_assert_no_error (error);
  f->archive = wm_archive_open (archive_folder, WM_ARCHIVE_CREATE, &error);
  g_assert_no_error (error);

  add_people_and_piece (f);
  f->before = add_photo (f, "before.jpg", WM_PHOTO_BEFORE, 0.4);
  f->after = add_photo (f, "after.jpg", WM_PHOTO_AFTER, 0.45);
  f->checks =
      wm_make_checks (f->trade, "ring_claw", wm_record_get_id (WM_RECORD (f->visit)));
  g_assert_cmpuint (f->checks->len, >, 7);
  for (guint i = 0; i < f->checks->len; i++)
    {
      /* All but the last two are looked at and sound. */
      if (i + 2 < f->checks->len)
        g_object_set (g_ptr_array_index (f->checks, i), "severity",
                      (gint64)WM_SEVERITY_SOUND, NULL);
      fixture_put (f, g_ptr_array_index (f->checks, i));
    }
  add_finding (f, 0, 1, WM_SEVERITY_WATCH, "1200,400");
  add_finding (f, 3, 2, WM_SEVERITY_NO_WEAR, "500,600");
  add_finding (f, 5, 3, WM_SEVERITY_REPAIR, "900,1000");
}

static void
remove_tree (const char *path)
{
  g_autoptr (GDir) dir = g_dir_open (path, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *child = g_build_filename (path, name, NULL);

      if (g_file_test (child, G_FILE_TEST_IS_DIR))
        remove_tree (child);
      else
        g_unlink (child);
    }
  g_rmdir (path);
}

void
fixture_tear_down (Fixture *f, gconstpointer unused)
{
  g_ptr_array_unref (f->checks);
  g_object_unref (f->before);
  g_object_unref (f->after);
  g_object_unref (f->visit);
  g_object_unref (f->piece);
  g_object_unref (f->owner);
  wm_archive_close (f->archive);
  g_object_unref (f->archive);
  wm_trade_unref (f->trade);
  remove_tree (f->folder);
  g_free (f->folder);
}

char *
fixture_run (const char *const *argv)
{
  g_autofree char *errors = NULL;
  g_autoptr (GError) error = NULL;
  char *output = NULL;
  int status = -1;

  g_spawn_sync (NULL, (char **)argv, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, &output,
                &errors, &status, &error);
  g_assert_no_error (error);
  if (status != 0)
    g_error ("%s ended with %d: %s", argv[0], status, errors);
  return output;
}
