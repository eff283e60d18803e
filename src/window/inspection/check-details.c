/* check-details.c: what the open check holds: answer, reading, advice, note
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/inspection/check-details.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#include "photo/mark-look.h"
#include "trade/trade.h"
#include "window/action-table.h"
#include "window/glyph.h"
#include "window/inspection/wire-section.h"
#include "window/measuring/wear-reading.h"
#include "window/resource.h"

struct _WmCheckDetails
{
  AdwBin parent_instance;

  GtkWidget *severities;
  GtkWidget *reading;
  WmWireSection *section;
  GtkLabel *reading_value, *reading_left;
  GtkLabel *levels_label, *levels;
  GtkLabel *if_left_label, *if_left;
  GtkLabel *next_step_label, *next_step;
  GtkWidget *note;
  GtkWidget *suggestion, *take_suggestion, *other_word;
  GtkLabel *suggestion_text;
  GtkWidget *measure, *by_gauge;
  GtkWidget *not_present, *take_back;
  GtkLabel *marks_label;

  char *shown_note, *shown_other_word;
};

enum
{
  NOTE_CHANGED,
  OTHER_WORD_CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (WmCheckDetails, wm_check_details, ADW_TYPE_BIN)

static const struct
{
  WmSeverity severity;
  const char *target; /* of inspection.answer */
} choices[] = {
  { WM_SEVERITY_SOUND, "sound" },
  { WM_SEVERITY_WATCH, "watch" },
  { WM_SEVERITY_REPAIR, "repair" },
  { WM_SEVERITY_NO_WEAR, "no-wear" },
};

/* Glyph over word, as in the look book: one of four. */
static GtkWidget *
make_choice (guint index)
{
  GtkWidget *button = gtk_toggle_button_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *glyph = wm_glyph_new (choices[index].severity, 7.5);
  GtkWidget *word = gtk_label_new (wm_severity_word (choices[index].severity));
  g_autofree char *name =
      g_strdup_printf ("inspection.answer::%s", choices[index].target);

  gtk_widget_set_halign (glyph, GTK_ALIGN_CENTER);
  gtk_label_set_ellipsize (GTK_LABEL (word), PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (word, "choice-word");
  gtk_box_append (GTK_BOX (box), glyph);
  gtk_box_append (GTK_BOX (box), word);
  gtk_button_set_child (GTK_BUTTON (button), box);
  gtk_actionable_set_detailed_action_name (GTK_ACTIONABLE (button), name);
  wm_action_name_widget (button, name);
  gtk_widget_add_css_class (button, "flat");
  return button;
}

static void
tell_note (WmCheckDetails *self)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->note));

  if (g_strcmp0 (text, self->shown_note) == 0)
    return;
  g_free (self->shown_note);
  self->shown_note = g_strdup (text);
  g_signal_emit (self, signals[NOTE_CHANGED], 0, text);
}

static void
tell_other_word (WmCheckDetails *self)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->other_word));

  if (g_strcmp0 (text, self->shown_other_word) == 0)
    return;
  g_free (self->shown_other_word);
  self->shown_other_word = g_strdup (text);
  g_signal_emit (self, signals[OTHER_WORD_CHANGED], 0, text);
}

static void
on_other_word_activated (GtkEntry *entry, WmCheckDetails *self)
{
  tell_other_word (self);
  gtk_widget_child_focus (self->severities, GTK_DIR_TAB_FORWARD);
}

static void
on_other_word_left (GtkEventControllerFocus *controller, WmCheckDetails *self)
{
  tell_other_word (self);
}

static void
on_note_activated (GtkEntry *entry, WmCheckDetails *self)
{
  tell_note (self);
  /* Back to where the number keys are answers. */
  gtk_widget_child_focus (self->severities, GTK_DIR_TAB_FORWARD);
}

static void
on_note_left (GtkEventControllerFocus *controller, WmCheckDetails *self)
{
  tell_note (self);
}

static void
wm_check_details_dispose (GObject *object)
{
  /* Before the template takes its child away behind the bin. */
  adw_bin_set_child (ADW_BIN (object), NULL);
  gtk_widget_dispose_template (GTK_WIDGET (object), WM_TYPE_CHECK_DETAILS);
  G_OBJECT_CLASS (wm_check_details_parent_class)->dispose (object);
}

static void
wm_check_details_finalize (GObject *object)
{
  g_free (WM_CHECK_DETAILS (object)->shown_note);
  g_free (WM_CHECK_DETAILS (object)->shown_other_word);
  G_OBJECT_CLASS (wm_check_details_parent_class)->finalize (object);
}

static void
wm_check_details_class_init (WmCheckDetailsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_check_details_dispose;
  G_OBJECT_CLASS (klass)->finalize = wm_check_details_finalize;
  g_type_ensure (WM_TYPE_WIRE_SECTION);

  signals[NOTE_CHANGED] =
      g_signal_new ("note-changed", WM_TYPE_CHECK_DETAILS, G_SIGNAL_RUN_LAST, 0, NULL,
                    NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);

  signals[OTHER_WORD_CHANGED] =
      g_signal_new ("other-word-changed", WM_TYPE_CHECK_DETAILS, G_SIGNAL_RUN_LAST, 0,
                    NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);

  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "check-details.ui");
  gtk_widget_class_bind_template_child (widget_class, WmCheckDetails, severities);
  gtk_widget_class_bind_template_child (widget_class, WmCheckDetails, reading);
  gtk_widget_class_bind_template_child (widget_class, WmCheckDetails, section);
  gtk_widget_class_bind_template_child (widget_class, WmCheckDetails, reading_value);
  gtk_widget_class_bind_template_child (widget_class, WmCheckDetails, reading_left);
  gtk_widget_class_bind_template_child (widget_class, WmCheckDetails, levels_label);
  gtk_widget_class_bind_template_child (widget_class, WmCheckDetails, levels);
  gtk_widget_class_bind_template_child (widget_class, WmCheckDetails, if_left_label);
  gtk_widget_class_bind_template_child (widget_class, WmCheckDetails, if_left);
  gtk_widget_class_bind_template_child (widget_class, WmCheckDetails, next_step_label);
  gtk_widget_class_bind_template_child (widget_class, WmCheckDetails, next_step);
  gtk_widget_class_bind_template_child (widget_class, WmCheckDetails, note);
  gtk_widget_class_bind_template_child (widget_class, WmCheckDetails, suggestion);
  gtk_widget_class_bind_template_child (widget_class, WmCheckDetails, suggestion_text);
  gtk_widget_class_bind_template_child (widget_class, WmCheckDetails, take_suggestion);
  gtk_widget_class_bind_template_child (widget_class, WmCheckDetails, other_word);
  gtk_widget_class_bind_template_child (widget_class, WmCheckDetails, measure);
  gtk_widget_class_bind_template_child (widget_class, WmCheckDetails, by_gauge);
  gtk_widget_class_bind_template_child (widget_class, WmCheckDetails, not_present);
  gtk_widget_class_bind_template_child (widget_class, WmCheckDetails, take_back);
  gtk_widget_class_bind_template_child (widget_class, WmCheckDetails, marks_label);
  gtk_widget_class_bind_template_callback (widget_class, on_note_activated);
  gtk_widget_class_bind_template_callback (widget_class, on_other_word_activated);
}

static void
wm_check_details_init (WmCheckDetails *self)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();
  GtkEventController *other = gtk_event_controller_focus_new ();

  gtk_widget_init_template (GTK_WIDGET (self));
  for (guint i = 0; i < G_N_ELEMENTS (choices); i++)
    gtk_box_append (GTK_BOX (self->severities), make_choice (i));
  wm_action_name_widget (self->not_present, "inspection.answer::not-present");
  wm_action_name_widget (self->take_back, "inspection.answer::not-looked-at");
  g_signal_connect (focus, "leave", G_CALLBACK (on_note_left), self);
  gtk_widget_add_controller (self->note, focus);
  g_signal_connect (other, "leave", G_CALLBACK (on_other_word_left), self);
  gtk_widget_add_controller (self->other_word, other);
  wm_action_name_widget (self->take_suggestion, "inspection.take-suggestion");
  wm_action_name_widget (self->measure, "canvas.tool::span");
  wm_action_name_widget (self->by_gauge, "inspection.by-gauge");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->other_word),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Why another word than the numbers"), -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->severities),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Severity"), -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->note),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Note"), -1);
}

WmCheckDetails *
wm_check_details_new (void)
{
  return g_object_new (WM_TYPE_CHECK_DETAILS, NULL);
}

static void
show_fact (GtkLabel *label, GtkLabel *text, const char *words)
{
  gboolean has = words != NULL && *words != '\0';

  gtk_label_set_text (text, has ? words : "");
  gtk_widget_set_visible (GTK_WIDGET (label), has);
  gtk_widget_set_visible (GTK_WIDGET (text), has);
}

/* The usual remedy: the first line of those kept with the check. */
static char *
get_next_step (WmCheck *check)
{
  g_auto (GStrv) lines =
      check->remedies != NULL ? g_strsplit (check->remedies, "\n", 2) : NULL;
  const char *first = lines != NULL && lines[0] != NULL ? wm_trade_text (lines[0]) : "";
  g_autofree char *initial = NULL;

  if (*first == '\0')
    return g_strdup ("");
  initial = g_utf8_strup (first, g_utf8_next_char (first) - first);
  return g_strconcat (initial, g_utf8_next_char (first), NULL);
}

static void
show_reading (WmCheckDetails *self, WmMeasurement *reading)
{
  g_autofree char *value = NULL, *left = NULL;
  gboolean has_left;

  gtk_widget_set_visible (self->reading, reading != NULL);
  if (reading == NULL)
    return;
  value = wm_worn_value_text (reading->value_mm, reading->uncertainty_mm);
  gtk_label_set_text (self->reading_value, value);
  has_left = isfinite (reading->as_made_mm) && reading->as_made_mm > 0;
  gtk_widget_set_visible (GTK_WIDGET (self->section), has_left);
  gtk_widget_set_visible (GTK_WIDGET (self->reading_left), has_left);
  if (!has_left)
    return;
  left = g_strdup_printf (_ ("of %.2f as made: %.0f %% left"), reading->as_made_mm,
                          100 * reading->value_mm / reading->as_made_mm);
  gtk_label_set_text (self->reading_left, left);
  wm_wire_section_set_ratio (self->section, reading->value_mm / reading->as_made_mm);
}

static gboolean
is_other_word (WmCheck *check)
{
  return check->suggested != WM_SEVERITY_NOT_LOOKED_AT
         && check->severity != WM_SEVERITY_NOT_LOOKED_AT
         && check->severity != check->suggested;
}

/* What the numbers point to: never more than said. */
static void
show_suggestion (WmCheckDetails *self, WmCheck *check)
{
  gboolean has = check->suggested != WM_SEVERITY_NOT_LOOKED_AT;
  const char *word = wm_severity_word (check->suggested);
  g_autofree char *text = NULL;

  gtk_widget_set_visible (self->suggestion, has);
  gtk_widget_set_visible (self->take_suggestion, check->severity != check->suggested);
  gtk_widget_set_visible (self->other_word, is_other_word (check));
  if (has)
    text = check->suggested_reason != NULL
               ? g_strdup_printf (_ ("The numbers say %s. %s"), word,
                                  check->suggested_reason)
               : g_strdup_printf (_ ("The numbers say %s"), word);
  gtk_label_set_text (self->suggestion_text, text != NULL ? text : "");
  g_free (self->shown_other_word);
  self->shown_other_word =
      g_strdup (check->other_word_note != NULL ? check->other_word_note : "");
  if (gtk_widget_get_focus_child (self->other_word) == NULL)
    gtk_editable_set_text (GTK_EDITABLE (self->other_word), self->shown_other_word);
}

void
wm_check_details_show (WmCheckDetails *self, WmCheck *check, const WmChecklistItem *item,
                       WmMeasurement *reading, guint n_marks)
{
  g_autofree char *next_step = get_next_step (check);
  g_autofree char *marks = NULL;

  show_fact (self->levels_label, self->levels,
             item != NULL ? wm_trade_text (item->threshold) : NULL);
  show_fact (self->if_left_label, self->if_left, wm_trade_text (check->if_left));
  show_fact (self->next_step_label, self->next_step, next_step);
  show_reading (self, reading);
  show_suggestion (self, check);

  if (n_marks > 0)
    marks = g_strdup_printf (ngettext ("%u mark", "%u marks", n_marks), n_marks);
  gtk_label_set_text (self->marks_label,
                      marks != NULL ? marks : _ ("no mark: click the place"));

  gtk_widget_set_sensitive (self->take_back,
                            check->severity != WM_SEVERITY_NOT_LOOKED_AT);
  g_free (self->shown_note);
  self->shown_note = g_strdup (check->note != NULL ? check->note : "");
  /* What is being typed is not taken away by a change from elsewhere. */
  if (gtk_widget_get_focus_child (self->note) == NULL)
    gtk_editable_set_text (GTK_EDITABLE (self->note), self->shown_note);
}

void
wm_check_details_leave (WmCheckDetails *self)
{
  tell_note (self);
  tell_other_word (self);
}

void
wm_check_details_focus_note (WmCheckDetails *self)
{
  gtk_widget_grab_focus (self->note);
}

gboolean
wm_check_details_focus_other_word (WmCheckDetails *self)
{
  return gtk_widget_get_visible (self->other_word)
         && gtk_widget_grab_focus (self->other_word);
}
