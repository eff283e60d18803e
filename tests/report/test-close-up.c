/* test-close-up.c: the same place before and after, under matrices that are known
 *
 * Expected values: worked by hand from the matrices written here; the fixture's photos
 * have a scale of 40 px a mm.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "report/close-up.h"
#include "photo/align.h"
#include "report/pairs.h"
#include "tests/report/fixture.h"

#include <math.h>

#define BOX_WIDTH 85.0
#define BOX_HEIGHT 56.0

static void
pair (Fixture *f, const double *matrix)
{
  g_autoptr (WmPairing) pairing = wm_pairing_new ();

  pairing->before_photo_id = *wm_record_get_id (WM_RECORD (f->before));
  pairing->after_photo_id = *wm_record_get_id (WM_RECORD (f->after));
  wm_record_set_text (WM_RECORD (pairing), "made_by", WM_PAIRING_BY_PROGRAM);
  wm_pairing_set_matrix (pairing, matrix);
  fixture_put (f, pairing);
}

static WmVisitData *
load (Fixture *f)
{
  g_autoptr (GError) error = NULL;
  WmVisitData *data = wm_visit_data_load (
      f->archive, f->trade, wm_record_get_id (WM_RECORD (f->visit)), &error);

  g_assert_no_error (error);
  return data;
}

static WmPoint
in_box (const WmCloseUp *close, double x, double y)
{
  cairo_matrix_transform_point (&close->view.to_box, &x, &y);
  return (WmPoint) { x, y };
}

static void
assert_near (WmPoint got, WmPoint wanted, double within)
{
  if (hypot (got.x - wanted.x, got.y - wanted.y) > within)
    g_error ("%.3f, %.3f is not %.3f, %.3f", got.x, got.y, wanted.x, wanted.y);
}

/* Every place of the piece in the box falls on the same place of both boxes. */
static void
assert_in_register (const WmCloseUps *close, const double matrix[9], double within)
{
  double inverse[9];

  g_assert_true (close->before.is_there);
  g_assert_true (close->after.is_there);
  g_assert_true (close->in_register);
  g_assert_true (close->same_scale);
  g_assert_true (wm_align_invert (matrix, inverse));
  for (int dx = -100; dx <= 100; dx += 100)
    for (int dy = -80; dy <= 80; dy += 80)
      {
        WmPoint before = { close->centre.x + dx, close->centre.y + dy };
        WmPoint after = wm_align_map (inverse, before);

        assert_near (in_box (&close->after, after.x, after.y),
                     in_box (&close->before, before.x, before.y), within);
      }
}

/* Turned by 30 degrees, 1.25 times nearer, moved. */
static void
test_turned (Fixture *f, gconstpointer unused)
{
  const double c = cos (G_PI / 6) / 1.25, s = sin (G_PI / 6) / 1.25;
  const double matrix[9] = { c, -s, 210, s, c, -140, 0, 0, 1 };
  g_autoptr (WmVisitData) data = NULL;

  pair (f, matrix);
  data = load (f);
  for (guint i = 0; i < data->findings->len; i++)
    {
      WmCloseUps close;

      wm_close_ups_find (data, data->findings->pdata[i], BOX_WIDTH, BOX_HEIGHT, &close);
      assert_in_register (&close, matrix, 1e-6);
      g_assert_nonnull (close.after.mark);
    }
}

/* A tilt: the best turn and scale about the middle; the middle itself is exact. */
static void
test_tilted (Fixture *f, gconstpointer unused)
{
  const double matrix[9] = { 0.98, 0.05, 12, -0.04, 1.02, -9, 4e-5, -3e-5, 1 };
  g_autoptr (WmVisitData) data = NULL;
  double inverse[9];
  WmCloseUps close;
  WmPoint after;

  pair (f, matrix);
  data = load (f);
  wm_close_ups_find (data, data->findings->pdata[0], BOX_WIDTH, BOX_HEIGHT, &close);
  assert_in_register (&close, matrix, 0.25);
  wm_align_invert (matrix, inverse);
  after = wm_align_map (inverse, close.centre);
  assert_near (in_box (&close.after, after.x, after.y),
               in_box (&close.before, close.centre.x, close.centre.y), 1e-3);
}

/* Held another way by the jeweller: both boxes turn. */
static void
test_held_turned (Fixture *f, gconstpointer unused)
{
  const double shift[9] = { 1, 0, 30, 0, 1, 20, 0, 0, 1 };
  g_autoptr (WmVisitData) data = NULL;
  WmCloseUps close;

  f->before->quarter_turns = 1;
  fixture_put (f, f->before);
  pair (f, shift);
  data = load (f);
  wm_close_ups_find (data, data->findings->pdata[0], BOX_WIDTH, BOX_HEIGHT, &close);
  assert_in_register (&close, shift, 1e-6);
  /* Clockwise: right on the photo is down in the box. */
  g_assert_cmpfloat (close.after.view.to_box.yx, >, 0.01);
  g_assert_cmpfloat (fabs (close.after.view.to_box.xx), <, 1e-9);
}

/* Refused, or not looked at: each about its own mark, at one true scale. */
static void
test_not_aligned (Fixture *f, gconstpointer refused)
{
  g_autoptr (WmVisitData) data = NULL;
  WmCloseUps close;

  f->after->scale_mm = 20; /* 80 px a mm: twice as near */
  fixture_put (f, f->after);
  if (refused != NULL)
    pair (f, NULL);
  data = load (f);
  wm_close_ups_find (data, data->findings->pdata[0], BOX_WIDTH, BOX_HEIGHT, &close);
  g_assert_true (close.before.is_there);
  g_assert_true (close.after.is_there);
  g_assert_false (close.in_register);
  g_assert_true (close.same_scale);
  g_assert_cmpfloat_with_epsilon (close.after.view.to_box.xx,
                                  close.before.view.to_box.xx / 2, 1e-9);
}

/* In register a place shows after the work without a mark there; a mark that waits to be
 * accepted counts as none. */
static void
test_without_mark (Fixture *f, gconstpointer unused)
{
  const double shift[9] = { 1, 0, 30, 0, 1, 20, 0, 0, 1 };
  g_autoptr (GPtrArray) marks =
      wm_archive_list (f->archive, WM_KIND_MARK, "photo_id",
                       wm_record_get_id (WM_RECORD (f->after)), NULL);
  g_autoptr (WmVisitData) data = NULL;
  WmCloseUps close;

  for (guint i = 0; i < marks->len; i++)
    {
      WmMark *mark = marks->pdata[i];

      mark->confirmed = FALSE;
      mark->carried_from = *wm_record_get_id (WM_RECORD (mark));
      fixture_put (f, mark);
    }
  pair (f, shift);
  data = load (f);
  wm_close_ups_find (data, data->findings->pdata[0], BOX_WIDTH, BOX_HEIGHT, &close);
  assert_in_register (&close, shift, 1e-6);
  g_assert_null (close.after.mark);
}

static const int yes = 1;

#define add(path, data, test)                                                            \
  g_test_add (path, Fixture, data, fixture_set_up, test, fixture_tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add ("/report/close-up/turned", NULL, test_turned);
  add ("/report/close-up/tilted", NULL, test_tilted);
  add ("/report/close-up/held-turned", NULL, test_held_turned);
  add ("/report/close-up/not-looked-at", NULL, test_not_aligned);
  add ("/report/close-up/refused", &yes, test_not_aligned);
  add ("/report/close-up/without-mark", NULL, test_without_mark);
  return g_test_run ();
}
