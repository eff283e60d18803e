/* test-reckon-text.c: answers of computations in words
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <math.h>
#include <string.h>

#include "window/reckon/reckon-text.h"

typedef struct
{
  const char *name, *text;
} Given;

static WmTopicAnswer *
run (const char *topic, const Given *given, int n)
{
  g_autofree WmTopicInputs *inputs = g_new0 (WmTopicInputs, 1);
  WmTopicAnswer *answer = g_new0 (WmTopicAnswer, 1);
  const char *which = NULL;

  wm_topic_begin (inputs, wm_topic_find (topic));
  for (int i = 0; i < n; i++)
    g_assert_cmpint (wm_topic_set (inputs, given[i].name, given[i].text, &which), ==,
                     WM_OK);
  g_assert_cmpint (wm_topic_run (inputs, answer, &which), ==, WM_OK);
  return answer;
}

static void
check_item (const WmTopicAnswer *answer, const char *name, const char *wanted)
{
  const WmTopicItem *item = wm_topic_item (answer, name, 0);
  g_autofree char *text = NULL;

  g_assert_nonnull (item);
  text = wm_reckon_item_text (answer, item, "EUR");
  g_assert_cmpstr (text, ==, wanted);
}

/* Shares by the hundred: t/d 0.7 keeps 0.747684 of the area, 0.523161 of the strength in
 * bending (reckoning reference, section 2). */
static void
test_shares (void)
{
  const Given given[] = { { "shape", "flatted" },
                          { "made_height", "1.2" },
                          { "height", "0.84" } };
  g_autofree WmTopicAnswer *answer = run ("section", given, G_N_ELEMENTS (given));
  g_autofree char *note = wm_reckon_note_text (answer, "EUR");

  check_item (answer, "area_left", "74.77\u00a0%");
  check_item (answer, "bending_left", "52.32\u00a0%");
  g_assert_true (g_str_has_prefix (note, "What is left of a worn section: "));
  g_assert_nonnull (strstr (note, "74.77"));
}

/* Money in the currency's own units: a tenth of 6 800.00. */
static void
test_money (void)
{
  const Given given[] = { { "items", "0.1:680000" } };
  g_autofree WmTopicAnswer *answer = run ("value-at-risk", given, 1);
  const WmTopicItem *item = wm_topic_item (answer, "loss", 0);
  g_autofree char *text = wm_reckon_item_text (answer, item, "EUR");

  g_assert_true (g_str_has_prefix (text, "680.00"));
  g_assert_nonnull (strstr (text, "EUR"));
}

/* The tongue's two cases are told apart. */
static void
test_cases (void)
{
  const Given given[] = { { "width", "4" },
                          { "thickness", "0.35" },
                          { "length", "9" },
                          { "press", "0.3" },
                          { "modulus_mpa", "170000" },
                          { "yield_mpa", "400" },
                          { "yield_annealed_mpa", "200" } };
  g_autofree WmTopicAnswer *answer = run ("tongue", given, G_N_ELEMENTS (given));
  g_autofree char *hard = wm_reckon_sentence (answer, wm_topic_item (answer, "says", 0));
  g_autofree char *soft =
      wm_reckon_sentence (answer, wm_topic_item (answer, "annealed_says", 0));

  g_assert_cmpstr (hard, ==, "It springs back.");
  g_assert_cmpstr (
      soft, ==,
      "Annealed by soldering: It takes a set: raise it again, harden it, test"
      " it.");
}

static void
test_typed (void)
{
  const WmTopic *topic = wm_topic_find ("forecast");
  g_autofree char *rows = wm_reckon_typed (&topic->inputs[0], " 0:1.42:0.02,1:1.3:0.02 ");
  g_autofree char *number = wm_reckon_typed (&topic->inputs[1], "0,80");
  g_autofree char *area = wm_reckon_unit ("mm2");
  g_autofree char *angle = wm_reckon_unit ("deg");

  /* Commas part rows; in a number they are the decimal sign. */
  g_assert_cmpstr (rows, ==, "0:1.42:0.02,1:1.3:0.02");
  g_assert_cmpstr (number, ==, "0.80");
  g_assert_cmpstr (area, ==, "mm²");
  g_assert_cmpstr (angle, ==, "°");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/window/reckon-text/shares", test_shares);
  g_test_add_func ("/window/reckon-text/money", test_money);
  g_test_add_func ("/window/reckon-text/cases", test_cases);
  g_test_add_func ("/window/reckon-text/typed", test_typed);
  return g_test_run ();
}
