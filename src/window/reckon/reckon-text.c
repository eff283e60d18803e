/* reckon-text.c: the answer of a topic in words
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/reckon/reckon-text.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#include "reckon/day.h"
#include "reckon/length.h"
#include "window/labels.h"

/* Figures of a number without an uncertainty, and how many of an answer go into a note.
 */
#define FIGURES "%.4g"
#define MAX_NOTED 4

static char *
date_text (double day)
{
  WmDate date = wm_day_to_date ((long)day);
  g_autofree char *iso =
      g_strdup_printf ("%04d-%02d-%02d", date.year, date.month, date.day);

  return wm_label_long_date (iso);
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

char *
wm_reckon_capital (const char *text)
{
  g_autofree char *first =
      *text != '\0' ? g_utf8_strup (text, g_utf8_next_char (text) - text) : g_strdup ("");

  return g_strconcat (first, *text != '\0' ? g_utf8_next_char (text) : "", NULL);
}

char *
wm_reckon_unit (const char *unit)
{
  /* Signs are the same everywhere, words are not. */
  static const char *const words[] = { N_ ("years"), N_ ("months"), N_ ("mm/year") };
  GString *text;

  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    if (g_str_equal (unit, words[i]))
      return g_strdup (_ (words[i]));
  text = g_string_new (unit);

  g_string_replace (text, "m2", "m²", 0);
  g_string_replace (text, "m3", "m³", 0);
  g_string_replace (text, "m4", "m⁴", 0);
  if (g_str_equal (text->str, "deg"))
    g_string_assign (text, "°");
  return g_string_free (text, FALSE);
}

char *
wm_reckon_sentence (const WmTopicAnswer *answer, const WmTopicItem *item)
{
  g_autofree char *word = word_text (answer, item->word);
  g_autofree char *large = wm_reckon_capital (word);
  gboolean is_whole = g_str_has_suffix (word, ".");
  /* A second case of the same question says which it is. */
  gboolean is_second = g_str_has_prefix (item->output->name, "annealed");
  g_autofree char *name = NULL;

  if (!is_second && (is_whole || g_str_equal (item->output->text, "in words")))
    return g_strconcat (large, is_whole ? "" : ".", NULL);
  name = wm_reckon_capital (_ (item->output->text));
  if (is_whole)
    return g_strdup_printf ("%s: %s", name, word);
  /* Translators: what, and the word for it: "Severity: repair." */
  return g_strdup_printf (_ ("%s: %s."), name, word);
}

/* Shares and chances without a unit are read more easily by the hundred. */
static gboolean
is_share (const WmTopicOutput *output)
{
  return *output->unit == '\0'
         && (g_str_has_suffix (output->name, "_left")
             || g_str_has_suffix (output->name, "share")
             || g_str_equal (output->name, "chance")
             || g_str_equal (output->name, "at_least")
             || g_str_equal (output->name, "at_most")
             || strstr (output->name, "low") != NULL
             || strstr (output->name, "high") != NULL);
}

char *
wm_reckon_item_text (const WmTopicAnswer *answer, const WmTopicItem *item,
                     const char *currency)
{
  const WmTopicOutput *output = item->output;
  double factor = is_share (output) ? 100 : 1;
  g_autofree char *unit = wm_reckon_unit (is_share (output) ? "%" : output->unit);
  double value = item->value.value * factor, u = item->value.u * factor;
  double rounded;
  int decimals;

  if (item->word != NULL)
    return word_text (answer, item->word);
  if (item->note[0] != '\0')
    return g_strdup (item->note);
  if (g_str_equal (unit, "date"))
    return date_text (value);
  if (g_str_equal (unit, "minor units"))
    return wm_label_money ((gint64)llround (value), currency);
  if (u <= 0.0)
    return g_strdup_printf (FIGURES "%s%s", value, *unit != '\0' ? "\u00a0" : "", unit);

  /* As wm_length_text () has it, with the decimal sign of the system. */
  decimals = wm_length_decimals (WM_COVERAGE_FACTOR * u, &rounded);
  return g_strdup_printf ("%.*f\u00a0±\u00a0%.*f%s%s", decimals, value, decimals, rounded,
                          *unit != '\0' ? "\u00a0" : "", unit);
}

char *
wm_reckon_note_text (const WmTopicAnswer *answer, const char *currency)
{
  GString *note = g_string_new (_ (answer->topic->title));
  int noted = 0;

  g_string_append (note, ": ");
  for (int pass = 0; pass < 2; pass++)
    for (int i = 0; i < answer->n_items; i++)
      {
        const WmTopicItem *item = &answer->items[i];
        g_autofree char *text = NULL;

        /* Sentences first, then the first numbers; rows of a plot are not for a note. */
        if ((item->word != NULL) != (pass == 0) || (item->output->is_row && pass == 1)
            || (pass == 1 && noted++ >= MAX_NOTED))
          continue;
        text = pass == 0 ? wm_reckon_sentence (answer, item)
                         : wm_reckon_item_text (answer, item, currency);
        if (pass == 0)
          g_string_append_printf (note, "%s ", text);
        else
          g_string_append_printf (note, "%s%s %s", noted > 1 ? "; " : "",
                                  _ (item->output->text), text);
      }
  g_string_append_c (note, '.');
  return g_string_free (note, FALSE);
}

char *
wm_reckon_typed (const WmTopicInput *input, const char *text)
{
  char *typed = g_strstrip (g_strdup (text));

  if ((input->kind == WM_INPUT_NUMBER || input->kind == WM_INPUT_WHOLE)
      && strchr (typed, '.') == NULL)
    g_strdelimit (typed, ",", '.');
  return typed;
}
