/* reckon-form.c: one computation as a form: inputs, and the answer as they are typed
 *
 * The rows come from the topic's table, so there is no template: one entry or list an
 * input, one line an output.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/reckon/reckon-form.h"

#include <glib/gi18n.h>
#include <math.h>

#include "window/reckon/reckon-text.h"

/* Rows of an answer beyond these are samples of a plot. */
#define MAX_ROWS_SHOWN 12

struct _WmReckonForm
{
  AdwBin parent_instance;

  GtkBox *box;
  AdwPreferencesGroup *inputs_group, *answer_group;
  GtkLabel *says;
  GtkWidget *rows[WM_TOPIC_MAX_INPUTS];
  GPtrArray *lines; /* rows of the answer */

  const WmTopic *topic;
  WmTopicInputs *inputs;
  WmTopicAnswer *answer;
  gboolean has_answer;
  gboolean is_filling;
  char *currency;
};

enum
{
  ANSWERED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (WmReckonForm, wm_reckon_form, ADW_TYPE_BIN)

/* ---- the answer -------------------------------------------------------------------- */

static void
clear_lines (WmReckonForm *self)
{
  for (guint i = 0; i < self->lines->len; i++)
    adw_preferences_group_remove (self->answer_group, self->lines->pdata[i]);
  g_ptr_array_set_size (self->lines, 0);
}

static void
add_line (WmReckonForm *self, const WmTopicItem *item)
{
  GtkWidget *line = adw_action_row_new ();
  g_autofree char *text = wm_reckon_item_text (self->answer, item, self->currency);
  g_autofree char *title = wm_reckon_capital (_ (item->output->text));
  GtkWidget *value = gtk_label_new (text);

  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (line), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (line), title);
  gtk_widget_add_css_class (value, "reckon-value");
  gtk_label_set_selectable (GTK_LABEL (value), TRUE);
  gtk_label_set_xalign (GTK_LABEL (value), 1);
  adw_action_row_add_suffix (ADW_ACTION_ROW (line), value);
  adw_preferences_group_add (self->answer_group, line);
  g_ptr_array_add (self->lines, line);
}

static void
show_answer (WmReckonForm *self)
{
  g_autoptr (GString) says = g_string_new (NULL);

  for (int i = 0; i < self->answer->n_items; i++)
    {
      const WmTopicItem *item = &self->answer->items[i];
      g_autofree char *text = NULL;

      if (item->word == NULL)
        {
          /* A plot's samples are drawn elsewhere (F6). */
          if (!g_str_has_prefix (item->output->name, "plot_")
              && item->row < MAX_ROWS_SHOWN)
            add_line (self, item);
          continue;
        }
      text = wm_reckon_sentence (self->answer, item);
      g_string_append_printf (says, "%s%s", says->len > 0 ? "\n" : "", text);
    }
  gtk_label_set_label (self->says, says->str);
  gtk_widget_remove_css_class (GTK_WIDGET (self->says), "caution");
  gtk_widget_add_css_class (GTK_WIDGET (self->says), "reckon-says");
}

/* The row of an input, by the name that a refusal gives. */
static int
find_input (WmReckonForm *self, const char *name)
{
  for (int i = 0; i < self->topic->n_inputs; i++)
    if (g_strcmp0 (self->topic->inputs[i].name, name) == 0)
      return i;
  return -1;
}

static void
show_refusal (WmReckonForm *self, WmResult result, const char *which)
{
  int at = find_input (self, which);
  const char *name = at >= 0 ? _ (self->topic->inputs[at].text) : which;
  g_autofree char *text = NULL;

  if (result == WM_MISSING)
    /* Translators: an input of a computation: "thickness left" is still needed. */
    text = g_strdup_printf (_ ("“%s” is still needed."), name);
  else
    text = g_strdup_printf ("%s: %s.", name != NULL ? name : "",
                            _ (wm_result_text (result)));
  if (at >= 0 && result != WM_MISSING)
    gtk_widget_add_css_class (self->rows[at], "error");
  gtk_label_set_label (self->says, text);
  gtk_widget_remove_css_class (GTK_WIDGET (self->says), "reckon-says");
  gtk_widget_add_css_class (GTK_WIDGET (self->says), "caution");
}

/* ---- reading the form ----------------------------------------------------------------
 */

static WmResult
take_input (WmReckonForm *self, int i, const char **which)
{
  const WmTopicInput *input = &self->topic->inputs[i];
  g_autofree char *text = NULL;

  if (ADW_IS_COMBO_ROW (self->rows[i]))
    {
      guint chosen = adw_combo_row_get_selected (ADW_COMBO_ROW (self->rows[i]));

      /* Without a default the first line is "not said". */
      if (isnan (input->fallback) && chosen-- == 0)
        return WM_OK;
      return wm_topic_set_value (self->inputs, input->name, wm_exact (chosen), which);
    }
  text = wm_reckon_typed (input, gtk_editable_get_text (GTK_EDITABLE (self->rows[i])));
  return *text != '\0' ? wm_topic_set (self->inputs, input->name, text, which) : WM_OK;
}

static void
reckon (WmReckonForm *self)
{
  const char *which = NULL;
  WmResult result = WM_OK;

  if (self->is_filling || self->topic == NULL)
    return;
  clear_lines (self);
  wm_topic_begin (self->inputs, self->topic);
  for (int i = 0; i < self->topic->n_inputs; i++)
    gtk_widget_remove_css_class (self->rows[i], "error");
  for (int i = 0; i < self->topic->n_inputs && result == WM_OK; i++)
    result = take_input (self, i, &which);
  if (result == WM_OK)
    result = wm_topic_run (self->inputs, self->answer, &which);
  self->has_answer = result == WM_OK;
  if (self->has_answer)
    show_answer (self);
  else
    show_refusal (self, result, which);
  gtk_widget_set_visible (GTK_WIDGET (self->answer_group), self->lines->len > 0);
  gtk_widget_set_visible (GTK_WIDGET (self->says),
                          *gtk_label_get_label (self->says) != '\0');
  g_signal_emit (self, signals[ANSWERED], 0);
}

static void
on_input_changed (WmReckonForm *self)
{
  reckon (self);
}

/* ---- making the form ------------------------------------------------------------------
 */

/* "thickness as made, mm" */
static char *
title_of (const WmTopicInput *input)
{
  g_autofree char *title = wm_reckon_capital (_ (input->text));
  g_autofree char *unit = wm_reckon_unit (input->unit);

  /* Of rows and dates the words and the hint say it. */
  return *unit != '\0' && input->kind != WM_INPUT_DATE && input->kind != WM_INPUT_ROWS
             ? g_strdup_printf ("%s, %s", title, unit)
             : g_steal_pointer (&title);
}

static char *
hint_of (const WmTopicInput *input)
{
  switch (input->kind)
    {
    case WM_INPUT_ROWS:
      return g_strdup (
          _ ("Rows apart by commas, what belongs together by colons; dates as "
             "2026-11-25."));
    case WM_INPUT_DATE:
      return g_strdup (_ ("A date, as 2026-11-25."));
    case WM_INPUT_NUMBER:
    case WM_INPUT_WHOLE:
      return g_strdup_printf (_ ("From %g to %g; its standard uncertainty behind ±."),
                              input->low, input->high);
    default:
      return NULL;
    }
}

static GtkWidget *
make_choice (WmReckonForm *self, const WmTopicInput *input)
{
  GtkWidget *row = adw_combo_row_new ();
  g_autoptr (GtkStringList) list = gtk_string_list_new (NULL);

  if (isnan (input->fallback))
    gtk_string_list_append (list, _ ("not said"));
  for (int i = 0; input->choices[i] != NULL; i++)
    gtk_string_list_append (list, input->choices[i]);
  adw_combo_row_set_model (ADW_COMBO_ROW (row), G_LIST_MODEL (list));
  if (!isnan (input->fallback))
    adw_combo_row_set_selected (ADW_COMBO_ROW (row), (guint)input->fallback);
  g_signal_connect_swapped (row, "notify::selected", G_CALLBACK (on_input_changed), self);
  return row;
}

static GtkWidget *
make_input (WmReckonForm *self, const WmTopicInput *input)
{
  GtkWidget *row;
  g_autofree char *title = title_of (input);
  g_autofree char *hint = hint_of (input);

  if (input->kind == WM_INPUT_CHOICE)
    row = make_choice (self, input);
  else
    {
      row = adw_entry_row_new ();
      g_signal_connect_swapped (row, "changed", G_CALLBACK (on_input_changed), self);
    }
  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (row), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), title);
  gtk_widget_set_tooltip_text (row, hint);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  title, -1);
  return row;
}

static void
fill_input (WmReckonForm *self, int i, const WmPrefill *prefill)
{
  const WmTopicInput *input = &self->topic->inputs[i];
  g_autofree char *text =
      prefill != NULL ? wm_prefill_text (prefill, self->topic, input) : NULL;

  /* What is assumed when nothing is said is shown, so that it can be seen and changed. */
  if (text == NULL && !ADW_IS_COMBO_ROW (self->rows[i]) && input->fallback > 0
      && (input->kind == WM_INPUT_NUMBER || input->kind == WM_INPUT_WHOLE))
    text = g_strdup_printf ("%g", input->fallback);
  if (text == NULL)
    return;
  if (!ADW_IS_COMBO_ROW (self->rows[i]))
    {
      gtk_editable_set_text (GTK_EDITABLE (self->rows[i]), text);
      return;
    }
  for (guint k = 0; input->choices[k] != NULL; k++)
    if (g_str_equal (input->choices[k], text))
      adw_combo_row_set_selected (ADW_COMBO_ROW (self->rows[i]),
                                  k + isnan (input->fallback));
}

static GtkWidget *
add_text (WmReckonForm *self, const char *text, const char *css)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, css);
  gtk_box_append (self->box, label);
  return label;
}

void
wm_reckon_form_show (WmReckonForm *self, const WmTopic *topic, const WmPrefill *prefill)
{
  g_autofree char *source = NULL;

  self->is_filling = TRUE;
  self->topic = topic;
  g_free (self->currency);
  self->currency = g_strdup (prefill != NULL ? prefill->piece->currency : NULL);
  g_ptr_array_set_size (self->lines, 0);
  self->box = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 18));
  gtk_widget_add_css_class (GTK_WIDGET (self->box), "page");

  add_text (self, _ (topic->title), "page-title");
  self->says = GTK_LABEL (add_text (self, "", "caution"));
  self->answer_group = ADW_PREFERENCES_GROUP (adw_preferences_group_new ());
  adw_preferences_group_set_title (self->answer_group, _ ("Answer"));
  gtk_box_append (self->box, GTK_WIDGET (self->answer_group));
  self->inputs_group = ADW_PREFERENCES_GROUP (adw_preferences_group_new ());
  adw_preferences_group_set_title (self->inputs_group, _ ("From"));
  gtk_box_append (self->box, GTK_WIDGET (self->inputs_group));
  for (int i = 0; i < topic->n_inputs; i++)
    {
      self->rows[i] = make_input (self, &topic->inputs[i]);
      adw_preferences_group_add (self->inputs_group, self->rows[i]);
      fill_input (self, i, prefill);
    }
  /* Translators: when a number may be believed, and where its formula is from */
  source =
      g_strdup_printf (_ ("%s\nSource: %s. Uncertainties shown are expanded (k = 2)."),
                       _ (topic->validity), _ (topic->source));
  add_text (self, source, "second-line");
  adw_bin_set_child (ADW_BIN (self), GTK_WIDGET (self->box));
  self->is_filling = FALSE;
  reckon (self);
}

char *
wm_reckon_form_get_note (WmReckonForm *self)
{
  return self->has_answer ? wm_reckon_note_text (self->answer, self->currency) : NULL;
}

static void
wm_reckon_form_finalize (GObject *object)
{
  WmReckonForm *self = WM_RECKON_FORM (object);

  g_ptr_array_unref (self->lines);
  g_free (self->inputs);
  g_free (self->answer);
  g_free (self->currency);

  G_OBJECT_CLASS (wm_reckon_form_parent_class)->finalize (object);
}

static void
wm_reckon_form_class_init (WmReckonFormClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = wm_reckon_form_finalize;
  signals[ANSWERED] = g_signal_new ("answered", WM_TYPE_RECKON_FORM, G_SIGNAL_RUN_LAST, 0,
                                    NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
wm_reckon_form_init (WmReckonForm *self)
{
  self->lines = g_ptr_array_new ();
  self->inputs = g_new0 (WmTopicInputs, 1);
  self->answer = g_new0 (WmTopicAnswer, 1);
}

GtkWidget *
wm_reckon_form_new (void)
{
  return g_object_new (WM_TYPE_RECKON_FORM, NULL);
}
