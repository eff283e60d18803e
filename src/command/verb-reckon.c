/* verb-reckon.c: reckon TOPIC name=value...: one computation, with unit, uncertainty,
 * source
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#include "command/reckon-answer.h"
#include "command/reckon-tables.h"
#include "command/verbs.h"

/* ---- the topics
 * ------------------------------------------------------------------------ */

static void
add_string (JsonBuilder *builder, const char *key, const char *text)
{
  json_builder_set_member_name (builder, key);
  json_builder_add_string_value (builder, text);
}

static void
add_topic_input (JsonBuilder *builder, const WmTopicInput *input)
{
  json_builder_begin_object (builder);
  add_string (builder, "name", input->name);
  add_string (builder, "unit", input->unit);
  add_string (builder, "text", _ (input->text));
  json_builder_set_member_name (builder, "required");
  json_builder_add_boolean_value (builder, isnan (input->fallback));
  if (input->kind == WM_INPUT_NUMBER || input->kind == WM_INPUT_WHOLE)
    {
      json_builder_set_member_name (builder, "range");
      json_builder_begin_array (builder);
      json_builder_add_double_value (builder, input->low);
      json_builder_add_double_value (builder, input->high);
      json_builder_end_array (builder);
    }
  if (input->choices != NULL)
    {
      json_builder_set_member_name (builder, "choices");
      json_builder_begin_array (builder);
      for (int i = 0; input->choices[i] != NULL; i++)
        json_builder_add_string_value (builder, input->choices[i]);
      json_builder_end_array (builder);
    }
  json_builder_end_object (builder);
}

static JsonNode *
describe_topics (void)
{
  g_autoptr (JsonBuilder) builder = json_builder_new ();
  int n = 0;
  const WmTopic *const *topics = wm_topic_list (&n);

  json_builder_begin_array (builder);
  for (int i = 0; i < n; i++)
    {
      json_builder_begin_object (builder);
      add_string (builder, "topic", topics[i]->name);
      add_string (builder, "title", _ (topics[i]->title));
      json_builder_set_member_name (builder, "inputs");
      json_builder_begin_array (builder);
      for (int k = 0; k < topics[i]->n_inputs; k++)
        add_topic_input (builder, &topics[i]->inputs[k]);
      json_builder_end_array (builder);
      json_builder_set_member_name (builder, "results");
      json_builder_begin_array (builder);
      for (int k = 0; k < topics[i]->n_outputs; k++)
        json_builder_add_string_value (builder, topics[i]->outputs[k].name);
      json_builder_end_array (builder);
      add_string (builder, "source", _ (topics[i]->source));
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
  return json_builder_get_root (builder);
}

static WmExit
list_topics (WmCall *call)
{
  int n = 0;
  const WmTopic *const *topics = wm_topic_list (&n);

  if (wm_call_wants_json (call))
    {
      wm_call_print_json (call, describe_topics ());
      return WM_EXIT_DONE;
    }

  for (int i = 0; i < n; i++)
    wm_call_print (call, "%-16s  %s\n", topics[i]->name, _ (topics[i]->title));
  wm_call_print (call, "\n%s\n",
                 _ ("“wearmark reckon TOPIC” alone shows what a topic asks for."));
  return WM_EXIT_DONE;
}

/* Required or with its default, unit and choices: one line an input. */
static void
show_inputs (WmCall *call, const WmTopic *topic)
{
  wm_call_print (call, "%s: %s\n\n", topic->name, _ (topic->title));
  for (int i = 0; i < topic->n_inputs; i++)
    {
      const WmTopicInput *input = &topic->inputs[i];
      g_autofree char *choices =
          input->choices != NULL ? g_strjoinv ("|", (char **)input->choices) : NULL;
      g_autofree char *given = isnan (input->fallback)        ? g_strdup (_ ("required"))
                               : input->kind == WM_INPUT_ROWS ? g_strdup (_ ("optional"))
                               : input->kind == WM_INPUT_CHOICE
                                   ? g_strdup (input->choices[(int)input->fallback])
                                   : g_strdup_printf ("%g", input->fallback);

      wm_call_print (call, "  %-18s %-12s %-10s %s%s%s\n", input->name, input->unit,
                     given, _ (input->text), choices != NULL ? ": " : "",
                     choices != NULL ? choices : "");
    }
  wm_call_print (call, "\n%s\n%s\n", _ (topic->validity), _ (topic->source));
}

/* ---- one topic
 * ------------------------------------------------------------------------- */

static WmExit
tell_refusal (WmCall *call, const WmTopic *topic, WmResult result, const char *which)
{
  g_autofree char *shown = wm_shown_path (which != NULL ? which : topic->name);
  gboolean is_misuse = result == WM_MISSING;

  /* A choice that does not exist is refused like a number; a name is misuse. */
  for (int i = 0; result == WM_UNKNOWN_INPUT; i++)
    {
      if (i == topic->n_inputs)
        {
          is_misuse = TRUE;
          break;
        }
      if (g_strcmp0 (topic->inputs[i].name, which) == 0)
        break;
    }

  if (is_misuse)
    return wm_call_misused (call,
                            _ ("%s %s. “wearmark reckon %s” shows what it asks for."),
                            shown, _ (wm_result_text (result)), topic->name);
  return wm_call_fail (call, _ ("%s %s. Nothing was reckoned."), shown,
                       _ (wm_result_text (result)));
}

/* One name=value; "metal" waits until all else is there. */
static WmExit
take_input (WmCall *call, WmTopicInputs *inputs, const char *name, const char *text,
            const char **metal)
{
  g_autofree char *expanded = NULL;
  const char *which = NULL;
  WmResult result;

  if (g_str_equal (name, "metal") && wm_reckon_takes_metal (inputs->topic))
    {
      *metal = text;
      return WM_EXIT_DONE;
    }

  expanded = wm_reckon_expand_keys (call, inputs->topic, name, text);
  if (expanded == NULL)
    return WM_EXIT_FAILED;

  result = wm_topic_set (inputs, name, expanded, &which);
  return result == WM_OK ? WM_EXIT_DONE
                         : tell_refusal (call, inputs->topic, result, which);
}

/* Takes every name=value; what is wrong has been told when this is not WM_EXIT_DONE. */
static WmExit
take_inputs (WmCall *call, WmTopicInputs *inputs)
{
  const char *metal = NULL;

  for (guint i = 1; i < wm_call_count_operands (call); i++)
    {
      const char *operand = wm_call_get_operand (call, i);
      const char *equals = strchr (operand, '=');
      g_autofree char *name = NULL;
      WmExit taken;

      if (equals == NULL || equals == operand)
        {
          g_autofree char *shown = wm_shown_path (operand);

          return wm_call_misused (call, _ ("“%s” is not of the form name=value."), shown);
        }

      name = g_strndup (operand, equals - operand);
      taken = take_input (call, inputs, name, equals + 1, &metal);
      if (taken != WM_EXIT_DONE)
        return taken;
    }

  return metal != NULL ? wm_reckon_set_metal (call, inputs, metal) : WM_EXIT_DONE;
}

static WmExit
run (WmCall *call)
{
  const char *name = wm_call_get_operand (call, 0);
  const WmTopic *topic = name != NULL ? wm_topic_find (name) : NULL;
  g_autofree WmTopicInputs *inputs = NULL;
  g_autofree WmTopicAnswer *answer = NULL;
  const char *which = NULL;
  WmResult result;
  WmExit taken;

  if (name == NULL)
    return list_topics (call);

  if (topic == NULL)
    {
      g_autofree char *shown = wm_shown_path (name);

      return wm_call_misused (
          call, _ ("There is no topic “%s”. “wearmark reckon” lists them."), shown);
    }

  if (wm_call_count_operands (call) == 1 && !wm_call_wants_json (call))
    {
      show_inputs (call, topic);
      return WM_EXIT_DONE;
    }

  inputs = g_new0 (WmTopicInputs, 1);
  answer = g_new0 (WmTopicAnswer, 1);
  wm_topic_begin (inputs, topic);
  taken = take_inputs (call, inputs);
  if (taken != WM_EXIT_DONE)
    return taken;

  result = wm_topic_run (inputs, answer, &which);
  if (result != WM_OK)
    return tell_refusal (call, topic, result, which);

  if (wm_call_wants_json (call))
    wm_call_print_json (call, wm_reckon_answer_to_json (inputs, answer));
  else
    wm_reckon_answer_print (call, inputs, answer);
  return WM_EXIT_DONE;
}

const WmVerb wm_verb_reckon = {
  .name = "reckon",
  .operands = N_ ("[TOPIC [NAME=VALUE…]]"),
  .max_operands = G_MAXUINT,
  .summary = N_ ("one computation with unit, uncertainty and source; alone: all topics"),
  .run = run,
};
