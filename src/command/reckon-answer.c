/* reckon-answer.c: the answer of a topic as JSON and as lines
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "command/reckon-answer.h"

#include <glib/gi18n.h>
#include <math.h>

#include "reckon/day.h"
#include "reckon/length.h"

static void
add_string (JsonBuilder *builder, const char *key, const char *text)
{
  json_builder_set_member_name (builder, key);
  json_builder_add_string_value (builder, text);
}

static void
add_double (JsonBuilder *builder, const char *key, double number)
{
  json_builder_set_member_name (builder, key);
  json_builder_add_double_value (builder, number);
}

static char *
day_text (double day)
{
  WmDate date = wm_day_to_date ((long)day);

  return g_strdup_printf ("%04d-%02d-%02d", date.year, date.month, date.day);
}

/* A sentence may hold "%d" for the answer's months. */
static char *
word_text (const WmTopicAnswer *answer, const char *word)
{
  const WmTopicItem *months = wm_topic_item (answer, "months", 0);
  g_autofree char *number =
      g_strdup_printf ("%.0f", months != NULL ? months->value.value : 0.0);
  GString *text = g_string_new (_ (word));

  g_string_replace (text, "%d", number, 0);
  return g_string_free (text, FALSE);
}

/* ---- JSON
 * ------------------------------------------------------------------------------ */

static void
add_rows (JsonBuilder *builder, const WmTopicInput *input, const WmTopicGiven *given)
{
  json_builder_set_member_name (builder, "rows");
  json_builder_begin_array (builder);
  for (int r = 0; r < given->n_rows; r++)
    {
      json_builder_begin_array (builder);
      for (int c = 0; c < given->n_columns; c++)
        {
          double number = given->numbers[r * given->n_columns + c];

          if (isnan (number))
            json_builder_add_null_value (builder);
          else if (c == 0 && input->choices != NULL)
            json_builder_add_string_value (builder, input->choices[(int)number]);
          else
            json_builder_add_double_value (builder, number);
        }
      json_builder_end_array (builder);
    }
  json_builder_end_array (builder);
  if (given->labels == NULL)
    return;

  json_builder_set_member_name (builder, "names");
  json_builder_begin_array (builder);
  for (int r = 0; r < given->n_rows; r++)
    json_builder_add_string_value (builder, given->labels[r]);
  json_builder_end_array (builder);
}

static void
add_input (JsonBuilder *builder, const WmTopicInput *input, const WmTopicGiven *given)
{
  double value = given->is_given ? given->value.value : input->fallback;

  json_builder_set_member_name (builder, input->name);
  json_builder_begin_object (builder);
  if (input->kind == WM_INPUT_ROWS)
    add_rows (builder, input, given);
  else if (input->kind == WM_INPUT_CHOICE)
    add_string (builder, "value", input->choices[(int)value]);
  else if (input->kind == WM_INPUT_DATE)
    {
      g_autofree char *text = day_text (value);

      add_string (builder, "value", text);
    }
  else if (!given->is_given && value < 0.0)
    {
      /* No default that could be written as a number. */
      json_builder_set_member_name (builder, "value");
      json_builder_add_null_value (builder);
    }
  else
    {
      add_double (builder, "value", value);
      add_double (builder, "standard_uncertainty",
                  given->is_given ? given->value.u : 0.0);
    }
  add_string (builder, "unit", input->unit);
  json_builder_set_member_name (builder, "given");
  json_builder_add_boolean_value (builder, given->is_given);
  json_builder_end_object (builder);
}

static void
add_item (JsonBuilder *builder, const WmTopicAnswer *answer, const WmTopicItem *item)
{
  g_autofree char *word = item->word != NULL ? word_text (answer, item->word) : NULL;

  json_builder_begin_object (builder);
  if (word != NULL)
    add_string (builder, "text", word);
  else if (item->note[0] != '\0')
    add_string (builder, "text", item->note);
  else if (g_str_equal (item->output->unit, "date"))
    {
      g_autofree char *text = day_text (item->value.value);

      add_string (builder, "value", text);
    }
  else
    {
      add_double (builder, "value", item->value.value);
      add_double (builder, "standard_uncertainty", item->value.u);
      add_double (builder, "expanded_uncertainty", WM_COVERAGE_FACTOR * item->value.u);
      add_string (builder, "unit", item->output->unit);
    }
  json_builder_end_object (builder);
}

/* One result: an object, or for rows a list with null where a row has none. */
static void
add_output (JsonBuilder *builder, const WmTopicAnswer *answer,
            const WmTopicOutput *output)
{
  int last = -1;

  for (int i = 0; i < answer->n_items; i++)
    if (answer->items[i].output == output)
      last = MAX (last, answer->items[i].row);

  if (last < 0)
    return;

  json_builder_set_member_name (builder, output->name);
  if (output->is_row)
    json_builder_begin_array (builder);
  for (int row = 0; row <= last; row++)
    {
      const WmTopicItem *item = wm_topic_item (answer, output->name, row);

      if (item != NULL)
        add_item (builder, answer, item);
      else
        json_builder_add_null_value (builder);
    }
  if (output->is_row)
    json_builder_end_array (builder);
}

JsonNode *
wm_reckon_answer_to_json (const WmTopicInputs *inputs, const WmTopicAnswer *answer)
{
  const WmTopic *topic = answer->topic;
  g_autoptr (JsonBuilder) builder = json_builder_new ();

  json_builder_begin_object (builder);
  add_string (builder, "topic", topic->name);
  add_string (builder, "title", _ (topic->title));
  json_builder_set_member_name (builder, "inputs");
  json_builder_begin_object (builder);
  for (int i = 0; i < topic->n_inputs; i++)
    add_input (builder, &topic->inputs[i], &inputs->given[i]);
  json_builder_end_object (builder);
  json_builder_set_member_name (builder, "results");
  json_builder_begin_object (builder);
  for (int i = 0; i < topic->n_outputs; i++)
    add_output (builder, answer, &topic->outputs[i]);
  json_builder_end_object (builder);
  add_string (builder, "validity", _ (topic->validity));
  add_string (builder, "source", _ (topic->source));
  json_builder_end_object (builder);
  return json_builder_get_root (builder);
}

/* ---- lines
 * ----------------------------------------------------------------------------- */

static char *
item_text (const WmTopicAnswer *answer, const WmTopicItem *item)
{
  char text[WM_LENGTH_TEXT_MAX];

  if (item->word != NULL)
    return word_text (answer, item->word);
  if (item->note[0] != '\0')
    return g_strdup (item->note);
  if (g_str_equal (item->output->unit, "date"))
    return day_text (item->value.value);
  if (item->value.u <= 0.0)
    return g_strdup_printf ("%.6g %s", item->value.value, item->output->unit);

  wm_length_text (item->value.value, WM_COVERAGE_FACTOR * item->value.u,
                  item->output->unit, text);
  return g_strdup (text);
}

static char *
input_text (const WmTopicInput *input, const WmTopicGiven *given)
{
  double value = given->is_given ? given->value.value : input->fallback;

  switch (input->kind)
    {
    case WM_INPUT_ROWS:
      return g_strdup_printf (ngettext ("%d row", "%d rows", given->n_rows),
                              given->n_rows);
    case WM_INPUT_CHOICE:
      return g_strdup (input->choices[(int)value]);
    case WM_INPUT_DATE:
      return day_text (value);
    case WM_INPUT_WHOLE:
    case WM_INPUT_NUMBER:
    default:
      if (given->is_given && given->value.u > 0.0)
        return g_strdup_printf ("%.6g %s (u %.2g)", value, input->unit, given->value.u);
      return g_strdup_printf ("%.6g %s", value, input->unit);
    }
}

/* Columns padded by characters, not by bytes: the words may be in any language. */
static void
print_line (WmCall *call, const char *left, const char *right)
{
  glong width = g_utf8_strlen (left, -1);

  wm_call_print (call, "  %s%*s  %s\n", left, (int)MAX (0, 44 - width), "", right);
}

void
wm_reckon_answer_print (WmCall *call, const WmTopicInputs *inputs,
                        const WmTopicAnswer *answer)
{
  const WmTopic *topic = answer->topic;

  wm_call_print (call, "%s\n\n", _ (topic->title));
  for (int i = 0; i < topic->n_inputs; i++)
    {
      g_autofree char *text = input_text (&topic->inputs[i], &inputs->given[i]);

      /* A default of 0 means "not given" almost everywhere: no line for it. */
      if (inputs->given[i].is_given || topic->inputs[i].fallback > 0.0)
        print_line (call, _ (topic->inputs[i].text), text);
    }

  wm_call_print (call, "\n");
  for (int i = 0; i < answer->n_items; i++)
    {
      const WmTopicItem *item = &answer->items[i];
      g_autofree char *text = item_text (answer, item);
      g_autofree char *label =
          item->output->is_row
              ? g_strdup_printf ("%d. %s", item->row + 1, _ (item->output->text))
              : g_strdup (_ (item->output->text));

      print_line (call, label, text);
    }

  wm_call_print (call, "\n%s\n%s %s\n", _ (topic->validity), _ ("Source:"),
                 _ (topic->source));
}
