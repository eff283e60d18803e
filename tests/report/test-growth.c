/* test-growth.c: the same place measured on two visits
 *
 * Expected values: worked by hand from GUM 5.2.2 (reckon/growth.h); 2 is the coverage
 * factor of GUM 6.3.3.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "report/growth.h"
#include "tests/report/fixture.h"

#include <math.h>

static WmMeasurement *
measure (Fixture *f, WmCheck *check, const char *quantity, const char *moment, double mm,
         double u_mm)
{
  WmMeasurement *measurement = wm_measurement_new ();

  g_object_set (measurement, "check-id", wm_record_get_id (WM_RECORD (check)), "quantity",
                quantity, "moment", moment, "value-mm", mm, "uncertainty-mm", u_mm,
                "method", "gauge", NULL);
  fixture_put (f, measurement);
  return measurement;
}

/* A visit two years before that of the fixture, with a check of the same item. */
static WmCheck *
add_earlier (Fixture *f, gint64 years)
{
  g_autoptr (WmVisit) visit = wm_visit_new ();
  WmCheck *check = wm_check_new ();

  g_object_set (visit, "piece-id", wm_record_get_id (WM_RECORD (f->piece)),
                "taken-in-at-s", f->visit->taken_in_at_s - years * 31556952, NULL);
  fixture_put (f, visit);
  g_object_set (check, "visit-id", wm_record_get_id (WM_RECORD (visit)), "item",
                ((WmCheck *)f->checks->pdata[0])->item, "title", "Claw tips", NULL);
  fixture_put (f, check);
  return check;
}

static WmVisitData *
load (Fixture *f)
{
  return wm_visit_data_load (f->archive, f->trade,
                             wm_record_get_id (WM_RECORD (f->visit)), NULL);
}

static void
test_nothing (Fixture *f, gconstpointer unused)
{
  WmCheck *check = f->checks->pdata[0];
  g_autoptr (WmCheck) old = add_earlier (f, 2);
  g_autoptr (WmMeasurement) now =
      measure (f, check, "thickness", WM_PHOTO_BEFORE, 0.62, 0.03);
  g_autoptr (WmMeasurement) other =
      measure (f, old, "width", WM_PHOTO_BEFORE, 0.71, 0.04);
  g_autoptr (WmMeasurement) unsure =
      measure (f, old, "thickness", WM_PHOTO_BEFORE, 0.71, NAN);
  g_autoptr (WmVisitData) data = load (f);

  /* Another quantity, and a reading without an uncertainty, compare with nothing. */
  g_assert_null (wm_growth_words (f->archive, data, check, NULL));
}

static void
test_thinner (Fixture *f, gconstpointer unused)
{
  WmCheck *check = f->checks->pdata[0];
  g_autoptr (WmCheck) older = add_earlier (f, 4);
  g_autoptr (WmCheck) old = add_earlier (f, 2);
  g_autoptr (WmMeasurement) first =
      measure (f, older, "thickness", WM_PHOTO_BEFORE, 0.95, 0.01);
  g_autoptr (WmMeasurement) then =
      measure (f, old, "thickness", WM_PHOTO_BEFORE, 0.80, 0.03);
  g_autoptr (WmMeasurement) now =
      measure (f, check, "thickness", WM_PHOTO_BEFORE, 0.62, 0.04);
  g_autoptr (WmVisitData) data = load (f);
  g_autofree char *words = wm_growth_words (f->archive, data, check, NULL);
  WmGrowthFound found;

  g_assert_true (wm_growth_find (f->archive, data, check, &found));
  g_assert_cmpfloat_with_epsilon (found.growth.change.value, -0.18, 1e-9);
  g_assert_cmpfloat_with_epsilon (found.growth.change.u, 0.05, 1e-9);
  g_assert_false (found.shares_scale);
  wm_growth_found_clear (&found);
  /* 1795680000 is in November 2026. */
  g_assert_cmpstr (words, ==,
                   "0.62 ± 0.08 mm, in 2024 0.80 ± 0.06 mm: 0.18 ± 0.10 mm thinner.");
}

/* What the work left counts, not what was found before it. */
static void
test_after_the_work (Fixture *f, gconstpointer unused)
{
  WmCheck *check = f->checks->pdata[0];
  g_autoptr (WmCheck) old = add_earlier (f, 2);
  g_autoptr (WmMeasurement) worn =
      measure (f, old, "thickness", WM_PHOTO_BEFORE, 0.40, 0.02);
  g_autoptr (WmMeasurement) mended =
      measure (f, old, "thickness", WM_PHOTO_AFTER, 0.63, 0.02);
  g_autoptr (WmMeasurement) now =
      measure (f, check, "thickness", WM_PHOTO_BEFORE, 0.62, 0.02);
  g_autoptr (WmVisitData) data = load (f);
  g_autofree char *words = wm_growth_words (f->archive, data, check, NULL);

  g_assert_cmpstr (words, ==,
                   "0.62 ± 0.04 mm, in 2024 0.63 ± 0.04 mm: no change beyond ± 0.06 mm "
                   "can be told.");
}

#define add(path, test)                                                                  \
  g_test_add (path, Fixture, NULL, fixture_set_up, test, fixture_tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add ("/report/growth/nothing", test_nothing);
  add ("/report/growth/thinner", test_thinner);
  add ("/report/growth/after-the-work", test_after_the_work);
  return g_test_run ();
}
