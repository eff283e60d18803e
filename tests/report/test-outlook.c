/* test-outlook.c: wear over the visits and the next check, from records
 *
 * The line and its dates against the reckoning reference's worked cases W1 and W6 (NumPy
 * and SciPy); intervals and factors against the tables.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <math.h>
#include <string.h>

#include "fixture.h"
#include "record/make-checks.h"
#include "report/outlook.h"

#define DAY_S 86400
/* A year of the line's axis, in days. */
#define YEAR 365.2425

static long
day_number (int year, int month, int day)
{
  long number;

  g_assert_cmpint (wm_day_from_date ((WmDate) { year, month, day }, &number), ==, WM_OK);
  return number;
}

/* Bottom of the shank: "do not wear" under 0.8 mm (tables). */
static const char item[] = "rg01";

static WmVisit *
add_visit (Fixture *f, double at_years, double left_mm, double u_mm, double made_mm,
           WmCheck **out_check)
{
  WmVisit *visit = wm_visit_new ();
  g_autoptr (WmCheck) check = wm_check_new ();
  g_autoptr (WmMeasurement) reading = wm_measurement_new ();
  gint64 at_s =
      (gint64)(day_number (2024, 1, 15) + lround (at_years * YEAR)) * DAY_S + DAY_S / 2;

  g_object_set (visit, "piece-id", wm_record_get_id (WM_RECORD (f->piece)),
                "taken-in-at-s", at_s, NULL);
  fixture_put (f, visit);
  g_object_set (check, "visit-id", wm_record_get_id (WM_RECORD (visit)), "item", item,
                "title", "Bottom of shank", "severity", (gint64)WM_SEVERITY_SOUND, NULL);
  fixture_put (f, check);
  g_object_set (reading, "check-id", wm_record_get_id (WM_RECORD (check)), "quantity",
                "thickness", "value-mm", left_mm, "uncertainty-mm", u_mm, "as-made-mm",
                made_mm, "moment", WM_PHOTO_BEFORE, "measured-at-s", at_s, NULL);
  fixture_put (f, reading);
  if (out_check != NULL)
    *out_check = g_object_ref (check);
  return visit;
}

static WmOutlook *
load (Fixture *f, WmVisit *visit, long today)
{
  g_autoptr (GError) error = NULL;
  WmOutlook *out = wm_outlook_load (f->archive, f->trade,
                                    wm_record_get_id (WM_RECORD (visit)), today, &error);

  g_assert_no_error (error);
  return out;
}

/* Case W1: 1.42, 1.33, 1.25 at 0, 1.5, 3 years, u 0.02, least 0.80 (made 2.00 x 0.40):
 * loss 0.056667, central 10.911765, careful 8.803592 years. Days are whole, so the times
 * are off by up to half a day. */
static void
test_three_visits (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmVisit) one = add_visit (f, 0, 1.42, 0.02, 1.50, NULL);
  g_autoptr (WmVisit) two = add_visit (f, 1.5, 1.33, 0.02, 1.50, NULL);
  g_autoptr (WmVisit) three = add_visit (f, 3, 1.25, 0.02, 1.50, NULL);
  g_autoptr (WmOutlook) early = load (f, two, day_number (2025, 7, 20));
  g_autoptr (WmOutlook) out = load (f, three, day_number (2027, 1, 20));
  g_autoptr (WmLanguage) english = wm_language_new ("en");
  g_autofree char *since = NULL, *said = NULL;
  const WmWear *wear;
  double start = day_number (2024, 1, 15) / YEAR;

  g_assert_cmpuint (out->wears->len, ==, 1);
  wear = out->wears->pdata[0];
  g_assert_cmpint (wear->n_fit, ==, 3);
  g_assert_true (wear->has_forecast);
  g_assert_cmpfloat_with_epsilon (wear->minimum_mm, 0.80, 1e-12);
  g_assert_cmpfloat_with_epsilon (wear->forecast.loss_mm_year.value, 0.056667, 1e-4);
  g_assert_cmpfloat_with_epsilon (wear->forecast.central_years - start, 10.911765, 0.02);
  g_assert_cmpfloat_with_epsilon (wear->forecast.careful_years - start, 8.803592, 0.02);
  /* Far away: the customary interval is what stays. Nothing shortens it here. */
  g_assert_cmpint (out->next.reason, ==, WM_CHECK_CUSTOMARY);
  g_assert_null (out->decides);

  since = wm_wear_since_last (wear, english);
  /* 1.33 - 1.25, and twice the root of two of 0.02. */
  g_assert_cmpstr (since, ==, "0.08\u00a0±\u00a00.06\u00a0mm less than on 16 July 2025");
  said = wm_wear_sentence (wear, english);
  g_assert_nonnull (strstr (said, "0.06\u00a0±\u00a00.02\u00a0mm thinner a year"));
  g_assert_nonnull (strstr (said, "2032"));
  /* An earlier visit knows nothing of a later one. */
  g_assert_cmpint (((WmWear *)early->wears->pdata[0])->n_fit, ==, 2);
}

/* Case W6: fast wear, 3 months. */
static void
test_fast_wear (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmVisit) one = add_visit (f, 0, 1.10, 0.015, 1.15, NULL);
  g_autoptr (WmVisit) two = add_visit (f, 0.5, 1.02, 0.015, 1.15, NULL);
  g_autoptr (WmVisit) three = add_visit (f, 1, 0.95, 0.015, 1.15, NULL);
  g_autoptr (WmOutlook) out = load (f, three, day_number (2025, 1, 14));
  g_autoptr (WmLanguage) english = wm_language_new ("en");
  g_autofree char *sentence = wm_outlook_sentence (out, english);

  g_assert_cmpint (out->next.reason, ==, WM_CHECK_FORECAST);
  g_assert_cmpint (out->next.months, ==, 3);
  g_assert_cmpstr (out->due_on, ==, "2025-04-14");
  g_assert_true (out->decides == out->wears->pdata[0]);
  g_assert_nonnull (strstr (sentence, "In 3 months"));
  g_assert_nonnull (strstr (sentence, "0.15\u00a0mm thinner a year"));
}

static void
add_remedy (Fixture *f, WmCheck *check, const char *answer, gint64 done_at_s)
{
  g_autoptr (WmRemedy) remedy = wm_remedy_new ();

  g_object_set (remedy, "check-id", wm_record_get_id (WM_RECORD (check)), "what",
                "New half shank", "answer", answer, "done-at-s", done_at_s, NULL);
  fixture_put (f, remedy);
}

/* What was mended starts anew, and the old wear has no say in the next date. */
static void
test_mended (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmCheck) check = NULL;
  g_autoptr (WmVisit) one = add_visit (f, 0, 1.10, 0.015, 1.15, NULL);
  g_autoptr (WmVisit) two = add_visit (f, 1, 0.95, 0.015, 1.15, &check);
  g_autoptr (WmVisit) three = NULL;
  g_autoptr (WmOutlook) at_two = NULL, at_three = NULL;
  const WmWear *wear;

  add_remedy (f, check, "agreed", two->taken_in_at_s);
  at_two = load (f, two, day_number (2025, 1, 14));
  wear = at_two->wears->pdata[0];
  g_assert_true (wear->is_renewed);
  g_assert_true (wear->has_forecast); /* why it was mended can still be shown */
  g_assert_cmpint (at_two->next.reason, !=, WM_CHECK_FORECAST);

  three = add_visit (f, 2, 1.90, 0.015, 2.00, NULL);
  at_three = load (f, three, day_number (2026, 1, 14));
  wear = at_three->wears->pdata[0];
  g_assert_false (wear->is_renewed);
  g_assert_cmpint (wear->n_fit, ==, 1);
  g_assert_false (wear->has_forecast);
}

/* The shop's own months, never exceeded; watch and a refusal each halve them. */
static void
test_interval (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmCheck) check = NULL;
  g_autoptr (WmVisit) one = add_visit (f, 0, 1.95, 0.02, 2.00, &check);
  g_autoptr (WmLanguage) english = wm_language_new ("en");
  const WmPieceType *type = wm_trade_find_piece_type (f->trade, "ring_claw");
  g_autoptr (WmOutlook) usual = load (f, one, day_number (2024, 1, 15));
  g_autoptr (WmOutlook) shop = NULL, watched = NULL;
  g_autoptr (WmEdit) edit = wm_edit_new ("Settings", NULL, NULL);
  g_autoptr (GError) error = NULL;
  g_autofree char *name = wm_outlook_setting ("ring_claw", WM_WORN_UNSAID);
  g_autofree char *sentence = NULL;

  g_assert_cmpint (usual->months, ==, (int)type->months_daily.low);
  g_assert_false (usual->is_shop_rule);
  g_assert_cmpint (usual->next.months, ==, usual->months);

  g_assert_cmpstr (name, ==, "check-months-ring_claw-daily");
  g_assert_true (wm_archive_put_setting (f->archive, edit, name, "10", &error));
  g_assert_true (wm_archive_commit (f->archive, edit, &error));
  shop = load (f, one, day_number (2024, 1, 15));
  g_assert_true (shop->is_shop_rule);
  g_assert_cmpint (shop->next.months, ==, 10);

  g_object_set (check, "severity", (gint64)WM_SEVERITY_WATCH, NULL);
  fixture_put (f, check);
  add_remedy (f, check, "declined", WM_UNKNOWN);
  watched = load (f, one, day_number (2024, 1, 15));
  /* 10 x 0.5 x 0.5 = 2.5, rounded down, not under the tables' floor of 2. */
  g_assert_cmpint (watched->next.months, ==, 2);
  g_assert_cmpstr (watched->due_on, ==, "2024-03-15");
  sentence = wm_outlook_sentence (watched, english);
  g_assert_cmpstr (sentence, ==,
                   "In 2 months instead of the usual 10: one place is to be watched; a "
                   "repair that was advised was not done.");
}

static void
test_worn_words (void)
{
  static const struct
  {
    const char *text;
    WmWorn worn;
  } cases[] = {
    { NULL, WM_WORN_UNSAID },
    { "", WM_WORN_UNSAID },
    { "daily, next to a watch", WM_WORN_DAILY },
    { "Often", WM_WORN_OFTEN },
    { "gelegentlich, am Mantel", WM_WORN_SELDOM },
    { "häufig", WM_WORN_OFTEN },
    { "soften", WM_WORN_UNSAID },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    g_assert_cmpint (wm_outlook_read_worn (cases[i].text), ==, cases[i].worn);
}

int
main (int argc, char **argv)
{
  g_setenv ("TZ", "UTC", TRUE);
  g_test_init (&argc, &argv, NULL);
#define ADD(path, function)                                                              \
  g_test_add (path, Fixture, NULL, fixture_set_up, function, fixture_tear_down)
  ADD ("/report/outlook/three-visits", test_three_visits);
  ADD ("/report/outlook/fast-wear", test_fast_wear);
  ADD ("/report/outlook/mended", test_mended);
  ADD ("/report/outlook/interval", test_interval);
  g_test_add_func ("/report/outlook/worn-words", test_worn_words);
  return g_test_run ();
}
