/* test-tray.c: new photos of a watched folder: waited for, grouped, never touched
 *
 * The photos are copies of the sample pieces' and of parts of their files; what is a
 * whole picture is the photo room's judgement, tested there.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

#include "photo/photo-error.h"
#include "window/tray/arrivals.h"

#define S G_USEC_PER_SEC

/* ---- bursts ------------------------------------------------------------------ */

/* A checker of @phase: two phases have nothing in common. */
static WmLikeness
make_likeness (int phase)
{
  WmLikeness likeness = { .columns = WM_LIKENESS_SIDE, .rows = WM_LIKENESS_SIDE };

  for (int y = 0; y < WM_LIKENESS_SIDE; y++)
    for (int x = 0; x < WM_LIKENESS_SIDE; x++)
      likeness.grey[y * WM_LIKENESS_SIDE + x] =
          ((phase ? x : y) * 7 % 48) * 4 + (x * y * (phase + 3)) % 29;
  return likeness;
}

static void
test_groups (void)
{
  WmLikeness front = make_likeness (0), back = make_likeness (1);
  /* Two seconds apart and alike; then another side at once; then the same side again,
   * but ten seconds later. */
  WmBurstFrame frames[] = { { 0, &front, 0.4 },
                            { 2 * S, &front, 0.9 },
                            { 4 * S, &front, NAN },
                            { 5 * S, &back, 0.2 },
                            { 15 * S, &back, 0.8 } };
  guint groups[5], places[5];

  wm_burst_group (frames, 5, groups, places);
  g_assert_cmpuint (groups[0], ==, 0);
  g_assert_cmpuint (groups[1], ==, 0);
  g_assert_cmpuint (groups[2], ==, 0);
  g_assert_cmpuint (groups[3], ==, 1);
  g_assert_cmpuint (groups[4], ==, 2);
  g_assert_cmpuint (places[1], ==, 0);
  g_assert_cmpuint (places[0], ==, 1);
  g_assert_cmpuint (places[2], ==, 2);
  g_assert_cmpuint (places[3], ==, 0);
  g_assert_cmpuint (places[4], ==, 0);
}

/* ---- waiting ------------------------------------------------------------------- */

static void
test_growing (void)
{
  WmArrival *arrival = wm_arrival_new ("/somewhere/a.jpg", 1000, 7, 0);

  /* Growing all the time, it is never read, however long that takes. */
  for (int i = 1; i < 200; i++)
    g_assert_false (wm_arrival_look (arrival, 1000 + i, 7 + i, i * S));
  g_assert_false (wm_arrival_look (arrival, 1199, 206, 199 * S + S / 2));
  g_assert_true (wm_arrival_look (arrival, 1199, 206, 200 * S));
  /* Once. */
  g_assert_false (wm_arrival_look (arrival, 1199, 206, 201 * S));
  wm_arrival_free (arrival);
}

static void
test_truncated (void)
{
  WmArrival *arrival = wm_arrival_new ("/somewhere/a.jpg", 1000, 7, 0);
  g_autoptr (GError) error = g_error_new_literal (
      WM_PHOTO_ERROR, WM_PHOTO_ERROR_TRUNCATED, "It ends too early.");
  gint64 now = S;

  g_assert_true (wm_arrival_look (arrival, 1000, 7, now));
  wm_arrival_take (arrival, NULL, error, now);
  g_assert_cmpint (arrival->state, ==, WM_ARRIVAL_WAITING);
  g_assert_null (arrival->reason);

  /* It is tried again, but not at every look, and not for ever. */
  g_assert_false (wm_arrival_look (arrival, 1000, 7, now + S));
  while (arrival->state == WM_ARRIVAL_WAITING && now < 1000 * S)
    {
      now += S;
      if (wm_arrival_look (arrival, 1000, 7, now))
        wm_arrival_take (arrival, NULL, error, now);
    }
  g_assert_cmpint (arrival->state, ==, WM_ARRIVAL_BROKEN);
  g_assert_cmpint (now, >=, WM_ARRIVAL_PATIENCE_S * S);
  g_assert_cmpint (now, <, (WM_ARRIVAL_PATIENCE_S + 10) * S);
  g_assert_cmpstr (arrival->reason, ==, "It ends too early.");

  /* The rest comes after all. */
  g_assert_false (wm_arrival_look (arrival, 2000, 9, now + S));
  g_assert_true (wm_arrival_look (arrival, 2000, 9, now + 3 * S));
  wm_arrival_free (arrival);
}

static void
test_no_picture (void)
{
  WmArrival *arrival = wm_arrival_new ("/somewhere/list.txt", 10, 7, 0);
  g_autoptr (GError) error =
      g_error_new_literal (WM_PHOTO_ERROR, WM_PHOTO_ERROR_NOT_A_PICTURE, "No picture.");

  for (gint64 now = S; now < 100 * S; now += S)
    if (wm_arrival_look (arrival, 10, 7, now))
      wm_arrival_take (arrival, NULL, error, now);
  g_assert_cmpint (arrival->state, ==, WM_ARRIVAL_IGNORED);
  wm_arrival_free (arrival);
}

/* ---- a real folder -------------------------------------------------------------- */

static GBytes *
read_sample (const char *name)
{
  g_autofree char *path = g_build_filename (g_getenv ("WM_SOURCE_DIR"), "sample-pieces",
                                            "photos", name, NULL);
  char *data;
  gsize length;
  g_autoptr (GError) error = NULL;

  g_file_get_contents (path, &data, &length, &error);
  g_assert_no_error (error);
  return g_bytes_new_take (data, length);
}

static char *
put (const char *folder, const char *name, GBytes *bytes, gsize length)
{
  char *path = g_build_filename (folder, name, NULL);

  g_assert_true (g_file_set_contents_full (path, g_bytes_get_data (bytes, NULL), length,
                                           G_FILE_SET_CONTENTS_NONE, 0600, NULL));
  return path;
}

static void
wait_for (WmArrivals *arrivals, guint n)
{
  gint64 end = g_get_monotonic_time () + 60 * S;

  while (g_get_monotonic_time () < end)
    {
      g_autoptr (GPtrArray) list = wm_arrivals_list (arrivals);

      if (list->len == n)
        return;
      g_main_context_iteration (NULL, TRUE);
    }
  g_error ("waited a minute for %u photos", n);
}

static void
spin (gint64 us)
{
  gint64 end = g_get_monotonic_time () + us;

  while (g_get_monotonic_time () < end)
    g_main_context_iteration (NULL, TRUE);
}

static void
test_folder (void)
{
  g_autofree char *folder = g_dir_make_tmp ("wm-watched-XXXXXX", NULL);
  g_autoptr (GBytes) photo = read_sample ("ring/before-top.jpg");
  g_autoptr (WmArrivals) arrivals = wm_arrivals_new ();
  g_autofree char *earlier = put (folder, "earlier.jpg", photo, g_bytes_get_size (photo));
  g_autofree char *half = NULL;
  g_autofree char *text = NULL;
  g_autofree char *hidden = NULL;
  GStatBuf before, after;

  wm_arrivals_set_folder (arrivals, folder);
  spin (S / 2);
  half = put (folder, "half.jpg", photo, g_bytes_get_size (photo) / 2);
  text = put (folder, "list.txt", photo, 0);
  hidden = put (folder, ".sync-1234.jpg", photo, g_bytes_get_size (photo));
  spin (4 * S);
  {
    g_autoptr (GPtrArray) list = wm_arrivals_list (arrivals);

    g_assert_cmpuint (list->len, ==, 0);
  }

  /* The other half comes. */
  g_free (put (folder, "half.jpg", photo, g_bytes_get_size (photo)));
  g_assert_cmpint (g_stat (half, &before), ==, 0);
  wait_for (arrivals, 1);
  {
    g_autoptr (GPtrArray) list = wm_arrivals_list (arrivals);
    WmArrival *arrival = g_ptr_array_index (list, 0);

    g_assert_cmpstr (arrival->name, ==, "half.jpg");
    g_assert_true (arrival->chosen);
    g_assert_nonnull (arrival->pixels);
    wm_arrivals_put_aside (arrivals, arrival, FALSE);
  }
  wait_for (arrivals, 0);
  g_assert_cmpuint (wm_arrivals_bring_back (arrivals), ==, 1);
  wait_for (arrivals, 1);

  /* Looked at and read, and not changed. */
  g_assert_cmpint (g_stat (half, &after), ==, 0);
  g_assert_cmpint (before.st_mtime, ==, after.st_mtime);
  g_assert_cmpint (before.st_size, ==, after.st_size);

  g_unlink (half);
  wait_for (arrivals, 0);
  wm_arrivals_set_folder (arrivals, NULL);
  g_unlink (text);
  g_unlink (hidden);
  g_unlink (earlier);
  g_assert_cmpint (g_rmdir (folder), ==, 0);
}

static void
test_no_folder (void)
{
  g_autoptr (WmArrivals) arrivals = wm_arrivals_new ();
  gint64 end = g_get_monotonic_time () + 20 * S;

  wm_arrivals_set_folder (arrivals, "/no/such/folder");
  while (wm_arrivals_get_problem (arrivals) == NULL && g_get_monotonic_time () < end)
    g_main_context_iteration (NULL, TRUE);
  g_assert_nonnull (strstr (wm_arrivals_get_problem (arrivals), "/no/such/folder"));
  wm_arrivals_set_folder (arrivals, NULL);
  g_assert_null (wm_arrivals_get_problem (arrivals));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/window/tray/burst", test_groups);
  g_test_add_func ("/window/tray/growing", test_growing);
  g_test_add_func ("/window/tray/truncated", test_truncated);
  g_test_add_func ("/window/tray/no-picture", test_no_picture);
  g_test_add_func ("/window/tray/folder", test_folder);
  g_test_add_func ("/window/tray/no-folder", test_no_folder);
  return g_test_run ();
}
