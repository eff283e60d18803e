/* test-topics.c: every computation by name
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/topics.h"

#include <string.h>

#include "reckon/stone-weight.h"

#include "near.h"
#include "topic-examples.h"

static WmTopicInputs inputs;
static WmTopicAnswer answer;

static void
fill (const TopicExample *example)
{
  const WmTopic *topic = wm_topic_find (example->topic);

  g_assert_nonnull (topic);
  wm_topic_begin (&inputs, topic);
  for (int i = 0; i + 1 < MAX_GIVEN && example->given[i] != NULL; i += 2)
    g_assert_cmpint (
        wm_topic_set (&inputs, example->given[i], example->given[i + 1], NULL), ==,
        WM_OK);
}

static void
test_examples (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (topic_examples); i++)
    {
      const TopicExample *e = &topic_examples[i];
      const char *which = NULL;

      g_test_message ("%s", e->topic);
      fill (e);
      g_assert_cmpint (wm_topic_run (&inputs, &answer, &which), ==, WM_OK);
      for (int k = 0; k < MAX_ASKED && e->asked[k].name != NULL; k++)
        {
          const WmTopicItem *item =
              wm_topic_item (&answer, e->asked[k].name, e->asked[k].row);

          g_assert_nonnull (item);
          wm_assert_near (item->value.value, e->asked[k].value, e->asked[k].allowed);
        }
    }
}

/* Each topic has an example, names nowhere repeat, every text is there. */
static void
test_table_is_whole (void)
{
  int n = 0;
  const WmTopic *const *topics = wm_topic_list (&n);

  g_assert_cmpint (n, ==, (int)G_N_ELEMENTS (topic_examples));
  for (int i = 0; i < n; i++)
    {
      const WmTopic *t = topics[i];
      int examples = 0;

      g_assert_true (wm_topic_find (t->name) == t);
      g_assert_cmpint (t->n_inputs, <=, WM_TOPIC_MAX_INPUTS);
      g_assert_cmpuint (strlen (t->title), >, 3);
      g_assert_cmpuint (strlen (t->source), >, 3);
      g_assert_cmpuint (strlen (t->validity), >, 3);
      for (gsize e = 0; e < G_N_ELEMENTS (topic_examples); e++)
        examples += strcmp (topic_examples[e].topic, t->name) == 0;
      g_assert_cmpint (examples, ==, 1);

      for (int k = 0; k < t->n_inputs; k++)
        {
          g_assert_nonnull (t->inputs[k].unit);
          g_assert_cmpuint (strlen (t->inputs[k].text), >, 0);
          g_assert_true (t->inputs[k].kind != WM_INPUT_CHOICE
                         || t->inputs[k].choices != NULL);
          for (int other = 0; other < k; other++)
            g_assert_cmpstr (t->inputs[k].name, !=, t->inputs[other].name);
        }

      for (int k = 0; k < t->n_outputs; k++)
        for (int other = 0; other < k; other++)
          g_assert_cmpstr (t->outputs[k].name, !=, t->outputs[other].name);
    }
}

/* Leaving out any required input is refused by its name. */
static void
test_missing_is_named (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (topic_examples); i++)
    {
      const WmTopic *topic = wm_topic_find (topic_examples[i].topic);

      for (int k = 0; k < topic->n_inputs; k++)
        {
          const char *which = NULL;

          if (!isnan (topic->inputs[k].fallback))
            continue;

          fill (&topic_examples[i]);
          inputs.given[k].is_given = 0;
          g_assert_cmpint (wm_topic_run (&inputs, &answer, &which), ==, WM_MISSING);
          g_assert_cmpstr (which, ==, topic->inputs[k].name);
        }
    }
}

/* Text that is no number, another unit, a number far out: refused by name, each. */
static void
test_bad_text_is_named (void)
{
  static const char *const bad[] = { "nan", "inf", "", "abc", "1.2.3", "0x10", "1;2" };

  for (gsize i = 0; i < G_N_ELEMENTS (topic_examples); i++)
    {
      const WmTopic *topic = wm_topic_find (topic_examples[i].topic);

      for (int k = 0; k < topic->n_inputs; k++)
        {
          const WmTopicInput *input = &topic->inputs[k];
          const char *which = NULL;
          WmResult result = WM_OK;

          for (gsize b = 0; b < G_N_ELEMENTS (bad); b++)
            {
              fill (&topic_examples[i]);
              which = NULL;
              result = wm_topic_set (&inputs, input->name, bad[b], &which);
              if (input->kind == WM_INPUT_ROWS && bad[b][0] == '\0')
                continue;
              g_assert_cmpint (result, !=, WM_OK);
              g_assert_cmpstr (which, ==, input->name);
            }

          if (input->kind != WM_INPUT_NUMBER && input->kind != WM_INPUT_WHOLE)
            continue;

          g_assert_cmpint (wm_topic_set (&inputs, input->name, "1 parsec", &which), ==,
                           WM_WRONG_UNIT);
          fill (&topic_examples[i]);
          g_assert_cmpint (wm_topic_set (&inputs, input->name, "1e30", NULL), ==, WM_OK);
          g_assert_cmpint (wm_topic_run (&inputs, &answer, &which), ==, WM_OUT_OF_RANGE);
          g_assert_cmpstr (which, ==, input->name);
          fill (&topic_examples[i]);
          g_assert_cmpint (
              wm_topic_set_value (&inputs, input->name, wm_exact (NAN), NULL), ==, WM_OK);
          g_assert_cmpint (wm_topic_run (&inputs, &answer, &which), ==, WM_NOT_A_NUMBER);
          g_assert_cmpstr (which, ==, input->name);
        }
    }
}

/* Whatever numbers come, an answer is finite or there is none; nothing crashes. */
static void
test_random_numbers (void)
{
  GRand *random = g_rand_new_with_seed (20261125);

  for (int run = 0; run < 60000; run++)
    {
      const TopicExample *e =
          &topic_examples[g_rand_int_range (random, 0, G_N_ELEMENTS (topic_examples))];
      const WmTopic *topic = wm_topic_find (e->topic);
      const char *which = NULL;

      fill (e);
      for (int k = 0; k < topic->n_inputs; k++)
        {
          double size = exp (g_rand_double_range (random, -25, 15));
          WmValue value = { g_rand_boolean (random) ? size : -size,
                            size * g_rand_double_range (random, -0.1, 1.2) };

          if (topic->inputs[k].kind == WM_INPUT_NUMBER
              && g_rand_int_range (random, 0, 3) == 0)
            wm_topic_set_value (&inputs, topic->inputs[k].name, value, NULL);
        }

      if (wm_topic_run (&inputs, &answer, &which) != WM_OK)
        {
          g_assert_nonnull (which);
          continue;
        }

      for (int k = 0; k < answer.n_items; k++)
        if (!isfinite (answer.items[k].value.value)
            || !isfinite (answer.items[k].value.u))
          {
            if (answer.items[k].word == NULL && answer.items[k].note[0] == '\0')
              g_error ("%s: %s is %g ± %g", e->topic, answer.items[k].output->name,
                       answer.items[k].value.value, answer.items[k].value.u);
          }
    }

  g_rand_free (random);
}

/* Whatever is typed: refused by name or read; a text that is read gives finite numbers.
 */
static void
test_random_text (void)
{
  static const char alphabet[] = "0123456789.,:;-+±eE@ abcdkmnstuvy\n\t%=/";
  GRand *random = g_rand_new_with_seed (4711);

  for (int run = 0; run < 200000; run++)
    {
      const TopicExample *e =
          &topic_examples[g_rand_int_range (random, 0, G_N_ELEMENTS (topic_examples))];
      const WmTopic *topic = wm_topic_find (e->topic);
      int k = g_rand_int_range (random, 0, topic->n_inputs);
      int length = g_rand_int_range (random, 0, 30);
      char text[31];
      const char *which = NULL;

      for (int i = 0; i < length; i++)
        text[i] = alphabet[g_rand_int_range (random, 0, sizeof alphabet - 1)];
      text[length] = '\0';

      wm_topic_begin (&inputs, topic);
      if (wm_topic_set (&inputs, topic->inputs[k].name, text, &which) != WM_OK)
        {
          g_assert_cmpstr (which, ==, topic->inputs[k].name);
          continue;
        }

      g_assert_true (isfinite (inputs.given[k].value.value));
      g_assert_cmpint (inputs.n_numbers, <=, WM_TOPIC_MAX_NUMBERS);
      for (int i = 0; i < inputs.n_numbers; i++)
        g_assert_false (isinf (inputs.numbers[i]));
    }

  g_rand_free (random);
}

static void
test_dated_visits (void)
{
  const WmTopicItem *item;

  wm_topic_begin (&inputs, wm_topic_find ("forecast"));
  g_assert_cmpint (wm_topic_set (&inputs, "visits",
                                 "2023-11-25:1.42:0.02,2025-05-26:1.33:0.02,"
                                 "2026-11-25:1.25:0.02",
                                 NULL),
                   ==, WM_OK);
  g_assert_cmpint (wm_topic_set (&inputs, "minimum", "0.80mm", NULL), ==, WM_OK);
  g_assert_cmpint (wm_topic_run (&inputs, &answer, NULL), ==, WM_OK);
  item = wm_topic_item (&answer, "careful_on", 0);
  g_assert_nonnull (item);
  wm_assert_near (wm_topic_item (&answer, "careful", 0)->value.value, 8.8036, 0.01);
  /* About 8.80 years after the first visit: September 2032. */
  wm_assert_near (item->value.value, 19686 + 8.8036 * 365.2425, 3);
}

static void
test_rows_are_strict (void)
{
  const char *which = NULL;
  char *many = g_strnfill (2 * 5000, '1');

  wm_topic_begin (&inputs, wm_topic_find ("forecast"));
  g_assert_cmpint (wm_topic_set (&inputs, "visits", "0:1:0.1:7", &which), ==,
                   WM_NOT_A_NUMBER);
  g_assert_cmpint (wm_topic_set (&inputs, "visits", "2023-02-30:1:0.1", &which), ==,
                   WM_OUT_OF_RANGE);
  g_assert_cmpint (wm_topic_set (&inputs, "visits", "0:one:0.1", &which), ==,
                   WM_NOT_A_NUMBER);
  g_assert_cmpint (wm_topic_set (&inputs, "nonsense", "1", &which), ==, WM_UNKNOWN_INPUT);
  g_assert_cmpstr (which, ==, "nonsense");

  for (int i = 1; i < 10000; i += 2)
    many[i] = ',';
  wm_topic_begin (&inputs, wm_topic_find ("chance-series"));
  g_assert_cmpint (wm_topic_set (&inputs, "p", many, &which), ==, WM_OUT_OF_RANGE);
  g_assert_cmpstr (which, ==, "p");
  g_free (many);

  wm_topic_begin (&inputs, wm_topic_find ("stock"));
  g_assert_cmpint (wm_topic_set (&inputs, "shape", "cube", &which), ==, WM_UNKNOWN_INPUT);
  g_assert_cmpstr (which, ==, "shape");
  wm_topic_begin (&inputs, wm_topic_find ("chance"));
  g_assert_cmpint (wm_topic_set (&inputs, "count", "2.5", &which), ==, WM_NOT_A_NUMBER);
}

static void
test_rows_keep_their_names (void)
{
  wm_topic_begin (&inputs, wm_topic_find ("heat-plan"));
  wm_topic_set (&inputs, "metal_solidus", "802", NULL);
  wm_topic_set (&inputs, "lowest_solder", "615", NULL);
  g_assert_cmpint (wm_topic_set (&inputs, "solders", "ag_h@740:775,690:705", NULL), ==,
                   WM_OK);
  g_assert_cmpint (wm_topic_set (&inputs, "stones",
                                 "a name longer than there is room for@never", NULL),
                   ==, WM_OK);
  g_assert_cmpint (wm_topic_run (&inputs, &answer, NULL), ==, WM_OK);
  g_assert_cmpstr (wm_topic_item (&answer, "solder", 0)->note, ==, "ag_h");
  g_assert_null (wm_topic_item (&answer, "solder", 1));
  wm_assert_near (wm_topic_item (&answer, "working", 0)->value.value, 805, 0);
  g_assert_cmpstr (wm_topic_item (&answer, "stone_name", 0)->note, ==,
                   "a name longer than ther");
}

/* The largest heat plan fits into the answer. */
static void
test_largest_answer (void)
{
  GString *solders = g_string_new ("600:610");
  GString *stones = g_string_new ("never");

  for (int i = 1; i < 64; i++)
    {
      g_string_append (solders, ",600:610");
      g_string_append (stones, ",stay:700:900");
    }

  fill (&topic_examples[0]);
  wm_topic_begin (&inputs, wm_topic_find ("heat-plan"));
  wm_topic_set (&inputs, "metal_solidus", "802", NULL);
  wm_topic_set (&inputs, "lowest_solder", "615", NULL);
  wm_topic_set (&inputs, "joints", "unknown", NULL);
  g_assert_cmpint (wm_topic_set (&inputs, "solders", solders->str, NULL), ==, WM_OK);
  g_assert_cmpint (wm_topic_set (&inputs, "stones", stones->str, NULL), ==, WM_OK);
  g_assert_cmpint (wm_topic_run (&inputs, &answer, NULL), ==, WM_OK);
  g_assert_nonnull (wm_topic_item (&answer, "stone", 63));
  g_string_free (solders, TRUE);
  g_string_free (stones, TRUE);
}

static void
test_choices_match_the_cuts (void)
{
  const WmTopicInput *cut = &wm_topic_find ("stone-weight")->inputs[0];

  for (int c = 0; c < WM_N_STONE_CUTS; c++)
    g_assert_cmpstr (cut->choices[c], ==, wm_stone_cut_key (c));

  g_assert_null (cut->choices[WM_N_STONE_CUTS]);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reckon/topics/examples", test_examples);
  g_test_add_func ("/reckon/topics/table-is-whole", test_table_is_whole);
  g_test_add_func ("/reckon/topics/missing-is-named", test_missing_is_named);
  g_test_add_func ("/reckon/topics/bad-text-is-named", test_bad_text_is_named);
  g_test_add_func ("/reckon/topics/random-numbers", test_random_numbers);
  g_test_add_func ("/reckon/topics/random-text", test_random_text);
  g_test_add_func ("/reckon/topics/dated-visits", test_dated_visits);
  g_test_add_func ("/reckon/topics/rows-are-strict", test_rows_are_strict);
  g_test_add_func ("/reckon/topics/rows-keep-their-names", test_rows_keep_their_names);
  g_test_add_func ("/reckon/topics/largest-answer", test_largest_answer);
  g_test_add_func ("/reckon/topics/choices-match-the-cuts", test_choices_match_the_cuts);
  return g_test_run ();
}
