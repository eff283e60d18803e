/* test-reckon-prefill.c: what the record says, as inputs of the computations
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <string.h>

#include "fixture.h"
#include "report/reckon-prefill.h"

static WmPrefill *
load (Fixture *f, WmCheck *check)
{
  g_autoptr (GError) error = NULL;
  WmPrefill *prefill = wm_prefill_new (
      f->archive, f->trade, wm_record_get_id (WM_RECORD (f->visit)),
      check != NULL ? wm_record_get_id (WM_RECORD (check)) : NULL, 20782, &error);

  g_assert_no_error (error);
  return prefill;
}

static char *
text_of (const WmPrefill *prefill, const char *topic_name, const char *name)
{
  const WmTopic *topic = wm_topic_find (topic_name);

  for (int i = 0; i < topic->n_inputs; i++)
    if (g_str_equal (topic->inputs[i].name, name))
      return wm_prefill_text (prefill, topic, &topic->inputs[i]);
  g_error ("%s has no %s", topic_name, name);
}

#define CHECK_TEXT(prefill, topic, name, wanted)                                         \
  do                                                                                     \
    {                                                                                    \
      g_autofree char *text_got = text_of (prefill, topic, name);                        \
      g_assert_cmpstr (text_got, ==, wanted);                                            \
    }                                                                                    \
  while (0)

static void
test_values (Fixture *f, gconstpointer unused)
{
  WmCheck *check = f->checks->pdata[0];
  g_autoptr (WmMeasurement) reading = wm_measurement_new ();
  g_autoptr (WmStoneGroup) stones = wm_stone_group_new ();
  g_autoptr (WmPrefill) prefill = NULL, bare = NULL;

  g_object_set (reading, "check-id", wm_record_get_id (WM_RECORD (check)), "quantity",
                "thickness", "value-mm", 0.52, "uncertainty-mm", 0.02, "as-made-mm", 0.90,
                "section", "round", "moment", WM_PHOTO_BEFORE, NULL);
  fixture_put (f, reading);
  g_object_set (stones, "piece-id", wm_record_get_id (WM_RECORD (f->piece)), "species",
                "diamond", "count", (gint64)12, "cut", "baguette_tapered", "length-mm",
                3.1, NULL);
  fixture_put (f, stones);
  g_object_set (f->piece, "declared-minor", (gint64)680000, "currency", "EUR", NULL);
  fixture_put (f, f->piece);
  prefill = load (f, check);
  bare = load (f, NULL);

  CHECK_TEXT (prefill, "section", "shape", "flatted");
  CHECK_TEXT (prefill, "section", "made_height", "0.9");
  CHECK_TEXT (prefill, "section", "height", "0.52±0.02");
  CHECK_TEXT (prefill, "stone-weight", "cut", "tapered");
  CHECK_TEXT (prefill, "stone-weight", "length", "3.1");
  CHECK_TEXT (prefill, "chance", "count", "12");
  /* One answer of this item in the archive: seen, watch is no failure. */
  CHECK_TEXT (prefill, "evidence", "seen", "1");
  CHECK_TEXT (prefill, "evidence", "failed", "0");
  /* One case is no chance. */
  CHECK_TEXT (prefill, "value-at-risk", "items", NULL);
  CHECK_TEXT (bare, "section", "height", NULL);
  CHECK_TEXT (bare, "evidence", "seen", NULL);
}

/* What is filled in is always text that the topic takes. */
static void
test_all_taken (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmPrefill) prefill = load (f, f->checks->pdata[0]);
  int n = 0, filled = 0;
  const WmTopic *const *topics = wm_topic_list (&n);
  g_autofree WmTopicInputs *inputs = g_new0 (WmTopicInputs, 1);

  for (int t = 0; t < n; t++)
    {
      wm_topic_begin (inputs, topics[t]);
      for (int i = 0; i < topics[t]->n_inputs; i++)
        {
          const WmTopicInput *input = &topics[t]->inputs[i];
          g_autofree char *text = wm_prefill_text (prefill, topics[t], input);
          const char *which = NULL;

          if (text == NULL)
            continue;
          filled++;
          g_assert_cmpint (wm_topic_set (inputs, input->name, text, &which), ==, WM_OK);
        }
    }
  g_test_message ("%d inputs filled", filled);
  g_assert_cmpint (filled, >=, 10);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add ("/report/reckon-prefill/values", Fixture, NULL, fixture_set_up, test_values,
              fixture_tear_down);
  g_test_add ("/report/reckon-prefill/all-taken", Fixture, NULL, fixture_set_up,
              test_all_taken, fixture_tear_down);
  return g_test_run ();
}
