/* topics.c: the list of computations, and asking one of them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/topics.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "reckon/day.h"
#include "reckon/topic-text.h"

/* One row a computation, in the order in which they are listed. */
#define TOPICS(row)                                                                      \
  row (photo_length) row (photo_plane) row (edge) row (section) row (ring_load)          \
      row (line_fit) row (forecast) row (wear_once) row (next_check) row (severity)      \
          row (tongue) row (notch) row (catch) row (joint) row (bridge) row (stock)      \
              row (strip) row (wire) row (drawn) row (refill) row (alloy)                \
                  row (heat_plan) row (heat_order) row (heat_fall) row (chance_equal)    \
                      row (chance_series) row (chance_wear) row (chance_margin)          \
                          row (evidence) row (value_at_risk) row (stone_weight)          \
                              row (ring_size) row (quote)

#define DECLARE(name) extern const WmTopic wm_topic_##name;
#define ADDRESS(name) &wm_topic_##name,

TOPICS (DECLARE)

static const WmTopic *const topics[] = { TOPICS (ADDRESS) };

const WmTopic *const *
wm_topic_list (int *n)
{
  *n = WM_TOPIC_ROWS_OF (topics);
  return topics;
}

const WmTopic *
wm_topic_find (const char *name)
{
  for (int i = 0; i < WM_TOPIC_ROWS_OF (topics); i++)
    if (strcmp (topics[i]->name, name) == 0)
      return topics[i];

  return NULL;
}

void
wm_topic_begin (WmTopicInputs *inputs, const WmTopic *topic)
{
  memset (inputs->given, 0, sizeof inputs->given);
  inputs->topic = topic;
  inputs->n_numbers = 0;
  inputs->n_labels = 0;
}

static int
find_input (const WmTopic *topic, const char *name)
{
  for (int i = 0; i < topic->n_inputs; i++)
    if (strcmp (topic->inputs[i].name, name) == 0)
      return i;

  return -1;
}

static int
count_columns (const char *unit)
{
  int n = 1;

  for (; *unit != '\0'; unit++)
    n += *unit == ':';

  return n;
}

/* One field of a row: a number, a date, a word of the first column, or not known. */
static WmResult
read_field (const WmTopicInput *input, const char *text, int length, int column,
            double *number, int *is_date)
{
  const char *end = text;
  long day = 0;
  int choice = column == 0 ? wm_text_choice (text, length, input->choices) : -1;
  WmResult result;

  *number = NAN;
  if (length == 0 || (length == 1 && *text == '-'))
    return WM_OK;

  if (choice >= 0)
    {
      *number = choice;
      return WM_OK;
    }

  result = wm_text_date (text, length, &day);
  if (result == WM_OK)
    {
      *number = day / WM_DAYS_PER_YEAR;
      *is_date = 1;
    }

  if (result != WM_NOT_A_NUMBER)
    return result;

  if (column == 0 && input->choices != NULL)
    return WM_UNKNOWN_INPUT;

  if (!wm_text_number (&end, number) || end != text + length)
    return WM_NOT_A_NUMBER;

  return WM_OK;
}

/* The name before "@", if any, into @label; returns where the row's fields begin. */
static const char *
read_label (const char *text, const char *end, char *label)
{
  const char *at = memchr (text, '@', end - text);
  int length = at != NULL ? (int)(at - text) : 0;

  if (length >= WM_TOPIC_LABEL_SIZE)
    length = WM_TOPIC_LABEL_SIZE - 1;

  memcpy (label, text, length);
  label[length] = '\0';
  return at != NULL ? at + 1 : text;
}

/* All fields of one row; @text moves to its end. */
static WmResult
read_row (const WmTopicInput *input, const char **text, const char *end, int n_columns,
          double *row, int *has_dates)
{
  const char *p = *text;

  for (int column = 0; column < n_columns; column++)
    {
      int length = p < end ? (int)strcspn (p, ":,") : 0;
      WmResult result = read_field (input, p, length, column, &row[column], has_dates);

      if (result != WM_OK)
        return result;

      p += length;
      if (*p == ':' && p < end && column + 1 < n_columns)
        p++;
    }

  *text = p;
  return p == end ? WM_OK : WM_NOT_A_NUMBER;
}

static WmResult
read_rows (WmTopicInputs *inputs, int index, const char *text)
{
  const WmTopicInput *input = &inputs->topic->inputs[index];
  WmTopicGiven given = { .is_given = 1, .n_columns = count_columns (input->unit) };
  int start = inputs->n_numbers;
  int first_label = inputs->n_labels;
  int has_labels = strchr (text, '@') != NULL;
  char unnamed[WM_TOPIC_LABEL_SIZE];

  while (*text != '\0')
    {
      const char *end = text + strcspn (text, ",");
      WmResult result;

      if (inputs->n_numbers + given.n_columns > WM_TOPIC_MAX_NUMBERS
          || (has_labels && inputs->n_labels >= WM_TOPIC_MAX_LABELS))
        return WM_OUT_OF_RANGE;

      text = read_label (text, end,
                         has_labels ? inputs->labels[inputs->n_labels++] : unnamed);
      result = read_row (input, &text, end, given.n_columns,
                         &inputs->numbers[inputs->n_numbers], &given.has_dates);
      if (result != WM_OK)
        return result;

      inputs->n_numbers += given.n_columns;
      given.n_rows++;
      text += *text == ',';
    }

  given.numbers = &inputs->numbers[start];
  given.labels = has_labels ? &inputs->labels[first_label] : NULL;
  inputs->given[index] = given;
  return WM_OK;
}

static WmResult
read_single (const WmTopicInput *input, const char *text, WmValue *value)
{
  long day = 0;
  int choice;
  WmResult result;

  switch (input->kind)
    {
    case WM_INPUT_CHOICE:
      choice = wm_text_choice (text, (int)strlen (text), input->choices);
      *value = wm_exact (choice);
      return choice >= 0 ? WM_OK : WM_UNKNOWN_INPUT;

    case WM_INPUT_DATE:
      result = wm_text_date (text, (int)strlen (text), &day);
      *value = wm_exact (day);
      return result;

    case WM_INPUT_WHOLE:
      result = wm_text_value (text, input->unit, value);
      if (result == WM_OK && (value->value != floor (value->value) || value->u != 0.0))
        return WM_NOT_A_NUMBER;
      return result;

    case WM_INPUT_NUMBER:
    case WM_INPUT_ROWS:
    default:
      return wm_text_value (text, input->unit, value);
    }
}

WmResult
wm_topic_set (WmTopicInputs *inputs, const char *name, const char *text,
              const char **which)
{
  int index = find_input (inputs->topic, name);
  WmTopicGiven given = { .is_given = 1 };
  WmResult result;

  if (index < 0)
    return wm_refuse (WM_UNKNOWN_INPUT, name, which);

  if (inputs->topic->inputs[index].kind == WM_INPUT_ROWS)
    result = read_rows (inputs, index, text);
  else
    {
      result = read_single (&inputs->topic->inputs[index], text, &given.value);
      if (result == WM_OK)
        inputs->given[index] = given;
    }

  return result == WM_OK ? WM_OK
                         : wm_refuse (result, inputs->topic->inputs[index].name, which);
}

WmResult
wm_topic_set_value (WmTopicInputs *inputs, const char *name, WmValue value,
                    const char **which)
{
  int index = find_input (inputs->topic, name);
  const WmTopicGiven given = { .is_given = 1, .value = value };

  if (index < 0 || inputs->topic->inputs[index].kind == WM_INPUT_ROWS)
    return wm_refuse (WM_UNKNOWN_INPUT, name, which);

  inputs->given[index] = given;
  return WM_OK;
}

static int
count_choices (const WmTopicInput *input)
{
  int n = 0;

  while (input->choices != NULL && input->choices[n] != NULL)
    n++;

  return n;
}

/* Fills in the default, or says what is wrong with what was given. */
static WmResult
settle_input (const WmTopicInput *input, WmTopicGiven *given, const char **which)
{
  const WmInputBound bound = WM_FROM (input->name, given->value, input->low, input->high);

  if (!given->is_given && isnan (input->fallback))
    return wm_refuse (WM_MISSING, input->name, which);

  if (!given->is_given)
    {
      given->value = wm_exact (input->fallback);
      return WM_OK;
    }

  switch (input->kind)
    {
    case WM_INPUT_CHOICE:
      if (!(given->value.value >= 0.0 && given->value.value < count_choices (input)))
        return wm_refuse (WM_UNKNOWN_INPUT, input->name, which);
      return WM_OK;

    case WM_INPUT_NUMBER:
    case WM_INPUT_WHOLE:
      return wm_bounds_check (&bound, 1, which);

    case WM_INPUT_DATE:
    case WM_INPUT_ROWS:
    default:
      return WM_OK;
    }
}

WmResult
wm_topic_run (const WmTopicInputs *inputs, WmTopicAnswer *out, const char **which)
{
  const WmTopic *topic = inputs->topic;
  WmTopicGiven given[WM_TOPIC_MAX_INPUTS];

  for (int i = 0; i < topic->n_inputs; i++)
    {
      WmResult result;

      given[i] = inputs->given[i];
      result = settle_input (&topic->inputs[i], &given[i], which);
      if (result != WM_OK)
        return result;
    }

  out->topic = topic;
  out->n_items = 0;
  out->is_full = 0;
  {
    WmResult result = topic->run (given, out, which);

    if (result == WM_OK && out->is_full)
      return wm_refuse (WM_TOO_BIG, topic->inputs[0].name, which);

    return result;
  }
}

const WmTopicItem *
wm_topic_item (const WmTopicAnswer *answer, const char *name, int row)
{
  for (int i = 0; i < answer->n_items; i++)
    if (answer->items[i].row == row && strcmp (answer->items[i].output->name, name) == 0)
      return &answer->items[i];

  return NULL;
}

/* A full answer is noted and refused as a whole. */
static WmTopicItem *
add_item (WmTopicAnswer *out, int output, int row)
{
  WmTopicItem *item;

  if (out->n_items >= WM_TOPIC_MAX_ITEMS)
    {
      out->is_full = 1;
      out->n_items--;
    }

  item = &out->items[out->n_items++];
  memset (item, 0, sizeof *item);
  item->output = &out->topic->outputs[output];
  item->row = row;
  item->value = wm_exact (NAN);
  return item;
}

void
wm_answer_value (WmTopicAnswer *out, int output, int row, WmValue value)
{
  add_item (out, output, row)->value = value;
}

void
wm_answer_number (WmTopicAnswer *out, int output, int row, double number)
{
  add_item (out, output, row)->value = wm_exact (number);
}

void
wm_answer_word (WmTopicAnswer *out, int output, int row, const char *word)
{
  add_item (out, output, row)->word = word;
}

void
wm_answer_note (WmTopicAnswer *out, int output, int row, const char *note)
{
  WmTopicItem *item = add_item (out, output, row);

  snprintf (item->note, sizeof item->note, "%s", note);
}
