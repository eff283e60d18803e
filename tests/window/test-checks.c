/* test-checks.c: a whole checklist gone through without a widget
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/inspection/checks.h"

#define NOW_S G_GINT64_CONSTANT (1795683600)

static GPtrArray *
make_checks (guint n)
{
  GPtrArray *checks = g_ptr_array_new_with_free_func (g_object_unref);

  for (guint i = 0; i < n; i++)
    {
      WmCheck *check = wm_check_new ();

      check->position = i;
      wm_record_set_text (WM_RECORD (check), "part", i < 2 ? "Clasp" : "Row");
      wm_record_set_text (WM_RECORD (check), "title", "End ring");
      wm_record_set_text (WM_RECORD (check), "fault", "Worn end ring");
      g_ptr_array_add (checks, check);
    }
  return checks;
}

static void
answer (GPtrArray *checks, guint index, WmSeverity severity)
{
  g_assert_true (wm_check_answer (g_ptr_array_index (checks, index), severity, NOW_S,
                                  NULL, wm_checks_next_number (checks)));
}

static void
test_next_open_goes_round (void)
{
  g_autoptr (GPtrArray) checks = make_checks (4);

  g_assert_cmpint (wm_checks_next_open (checks, -1), ==, 0);
  g_assert_cmpint (wm_checks_next_open (checks, 0), ==, 1);
  answer (checks, 1, WM_SEVERITY_SOUND);
  g_assert_cmpint (wm_checks_next_open (checks, 0), ==, 2);
  g_assert_cmpint (wm_checks_next_open (checks, 3), ==, 0);
  answer (checks, 0, WM_SEVERITY_SOUND);
  answer (checks, 2, WM_SEVERITY_NOT_PRESENT);
  /* Only the one we are on is left. */
  g_assert_cmpint (wm_checks_next_open (checks, 3), ==, 3);
  answer (checks, 3, WM_SEVERITY_WATCH);
  g_assert_cmpint (wm_checks_next_open (checks, 3), ==, -1);
}

static void
test_empty_list (void)
{
  g_autoptr (GPtrArray) checks = make_checks (0);

  g_assert_cmpint (wm_checks_next_open (checks, -1), ==, -1);
  g_assert_cmpint (wm_checks_step (checks, -1, 1), ==, -1);
  g_assert_true (wm_checks_can_conclude (checks, NULL));
}

static void
test_steps_stay_on_the_list (void)
{
  g_autoptr (GPtrArray) checks = make_checks (3);

  g_assert_cmpint (wm_checks_step (checks, -1, 1), ==, 0);
  g_assert_cmpint (wm_checks_step (checks, -1, -1), ==, 2);
  g_assert_cmpint (wm_checks_step (checks, 0, -1), ==, 0);
  g_assert_cmpint (wm_checks_step (checks, 1, 1), ==, 2);
  g_assert_cmpint (wm_checks_step (checks, 2, 1), ==, 2);
}

static void
test_numbers_are_never_given_again (void)
{
  g_autoptr (GPtrArray) checks = make_checks (4);
  WmCheck *first = g_ptr_array_index (checks, 0);
  WmCheck *third = g_ptr_array_index (checks, 2);

  answer (checks, 0, WM_SEVERITY_REPAIR);
  answer (checks, 1, WM_SEVERITY_SOUND);
  g_assert_cmpint (first->number, ==, 1);
  /* Sound has none, until a mark is tied to it. */
  g_assert_cmpint (((WmCheck *)g_ptr_array_index (checks, 1))->number, ==, WM_UNKNOWN);
  answer (checks, 2, WM_SEVERITY_NO_WEAR);
  g_assert_cmpint (third->number, ==, 2);

  /* No finding any more: it keeps its figure, and the next gets a new one. */
  answer (checks, 2, WM_SEVERITY_SOUND);
  g_assert_cmpint (third->number, ==, 2);
  g_assert_true (wm_check_give_number (g_ptr_array_index (checks, 3),
                                       wm_checks_next_number (checks)));
  g_assert_cmpint (((WmCheck *)g_ptr_array_index (checks, 3))->number, ==, 3);
  g_assert_false (wm_check_give_number (g_ptr_array_index (checks, 3), 9));
}

static void
test_answer_says_who_and_when (void)
{
  g_autoptr (GPtrArray) checks = make_checks (1);
  WmCheck *check = g_ptr_array_index (checks, 0);
  WmId by = wm_id_new ();

  g_assert_true (wm_check_answer (check, WM_SEVERITY_WATCH, NOW_S, &by, 1));
  g_assert_cmpint (check->answered_at_s, ==, NOW_S);
  g_assert_true (wm_id_equal (&check->answered_by, &by));
  g_assert_false (wm_check_answer (check, WM_SEVERITY_WATCH, NOW_S + 5, &by, 2));
  g_assert_cmpint (check->answered_at_s, ==, NOW_S);

  g_assert_true (wm_check_answer (check, WM_SEVERITY_NOT_LOOKED_AT, NOW_S, &by, 2));
  g_assert_cmpint (check->answered_at_s, ==, WM_UNKNOWN);
  g_assert_true (wm_id_is_none (&check->answered_by));
  g_assert_cmpint (check->number, ==, 1);
}

static void
test_progress (void)
{
  g_autoptr (GPtrArray) checks = make_checks (5);
  WmChecksProgress all, clasp;

  answer (checks, 0, WM_SEVERITY_SOUND);
  answer (checks, 2, WM_SEVERITY_NOT_PRESENT);
  answer (checks, 3, WM_SEVERITY_REPAIR);
  all = wm_checks_progress (checks);
  g_assert_cmpuint (all.n_checks, ==, 5);
  g_assert_cmpuint (all.n_looked_at, ==, 3);
  g_assert_cmpuint (all.n_findings, ==, 1);
  clasp = wm_checks_progress_of_part (checks, "Clasp");
  g_assert_cmpuint (clasp.n_checks, ==, 2);
  g_assert_cmpuint (clasp.n_looked_at, ==, 1);
}

static void
test_conclude_needs_a_reason (void)
{
  g_autoptr (GPtrArray) checks = make_checks (2);

  answer (checks, 0, WM_SEVERITY_SOUND);
  g_assert_false (wm_checks_can_conclude (checks, NULL));
  g_assert_false (wm_checks_can_conclude (checks, ""));
  g_assert_false (wm_checks_can_conclude (checks, " \n"));
  g_assert_true (wm_checks_can_conclude (checks, "Back closed; not opened"));
  answer (checks, 1, WM_SEVERITY_SOUND);
  g_assert_true (wm_checks_can_conclude (checks, NULL));
}

static void
test_heading (void)
{
  g_autoptr (GPtrArray) checks = make_checks (1);

  g_assert_cmpstr (wm_check_heading (g_ptr_array_index (checks, 0)), ==, "End ring");
  answer (checks, 0, WM_SEVERITY_WATCH);
  g_assert_cmpstr (wm_check_heading (g_ptr_array_index (checks, 0)), ==, "Worn end ring");
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/window/checks/next-open", test_next_open_goes_round);
  g_test_add_func ("/window/checks/empty", test_empty_list);
  g_test_add_func ("/window/checks/step", test_steps_stay_on_the_list);
  g_test_add_func ("/window/checks/number", test_numbers_are_never_given_again);
  g_test_add_func ("/window/checks/answer", test_answer_says_who_and_when);
  g_test_add_func ("/window/checks/progress", test_progress);
  g_test_add_func ("/window/checks/conclude", test_conclude_needs_a_reason);
  g_test_add_func ("/window/checks/heading", test_heading);
  return g_test_run ();
}
