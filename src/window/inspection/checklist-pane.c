/* checklist-pane.c: the checklist beside the photo, grouped by part
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/inspection/checklist-pane.h"

#include <glib/gi18n.h>

#include "trade/trade.h"
#include "window/action-table.h"
#include "window/inspection/check-details.h"
#include "window/inspection/check-row.h"
#include "window/inspection/checks.h"
#include "window/inspection/progress-rule.h"
#include "window/resource.h"

/* Room kept above and below a row that is scrolled to, view px. */
#define SCROLL_MARGIN 12

/* As long as a row takes to open (look book, "Motion": 150 ms), and a frame or two. */
#define SCROLL_US 220000

struct _WmChecklistPane
{
  AdwBin parent_instance;

  GtkStack *stack;
  GtkLabel *progress_label;
  WmProgressRule *progress_rule;
  GtkScrolledWindow *scroller;
  GtkBox *groups;
  GtkLabel *state_label;
  GtkWidget *conclude;

  WmCheckDetails *details;
  GPtrArray *checks;
  GPtrArray *rows;   /* WmCheckRow, one a check; borrowed */
  GPtrArray *counts; /* GtkLabel of each check's group; borrowed */
  char *layout;      /* parts in order: what the rows were made for */
  int open;
  int scroll_to; /* row to bring into sight once it has its size, or -1 */
  gint64 scroll_until_us;
  guint scroll_tick;
  char *concluded;
};

enum
{
  NOTE_CHANGED,
  OTHER_WORD_CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (WmChecklistPane, wm_checklist_pane, ADW_TYPE_BIN)

static WmCheck *
get_check (WmChecklistPane *self, guint index)
{
  return g_ptr_array_index (self->checks, index);
}

/* ---- rows ------------------------------------------------------------------- */

static char *
describe_layout (GPtrArray *checks)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < checks->len; i++)
    {
      WmCheck *check = g_ptr_array_index (checks, i);

      g_string_append_printf (text, "%s\n", check->part != NULL ? check->part : "");
    }
  return g_string_free (text, FALSE);
}

static GtkWidget *
make_group_head (const char *part, GtkLabel **count)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *label = gtk_label_new (wm_trade_text (part));

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_add_css_class (label, "group-label");
  *count = GTK_LABEL (gtk_label_new (NULL));
  gtk_widget_add_css_class (GTK_WIDGET (*count), "group-count");
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (*count));
  gtk_widget_add_css_class (box, "check-group");
  return box;
}

static void
make_rows (WmChecklistPane *self)
{
  const char *part = NULL;
  GtkWidget *child, *card = NULL;
  GtkLabel *count = NULL;

  g_ptr_array_set_size (self->rows, 0);
  g_ptr_array_set_size (self->counts, 0);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->groups))) != NULL)
    gtk_box_remove (self->groups, child);

  for (guint i = 0; i < self->checks->len; i++)
    {
      WmCheck *check = get_check (self, i);
      GtkWidget *row = GTK_WIDGET (wm_check_row_new (i));

      if (card == NULL || g_strcmp0 (part, check->part) != 0)
        {
          part = check->part;
          gtk_box_append (self->groups, make_group_head (part, &count));
          card = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
          gtk_widget_add_css_class (card, "card-list");
          gtk_widget_set_overflow (card, GTK_OVERFLOW_HIDDEN);
          gtk_box_append (self->groups, card);
        }
      gtk_box_append (GTK_BOX (card), row);
      g_ptr_array_add (self->rows, row);
      g_ptr_array_add (self->counts, count);
    }
}

static void
show_progress (WmChecklistPane *self)
{
  WmChecksProgress all = wm_checks_progress (self->checks);
  g_autofree guint8 *severities = g_new0 (guint8, self->checks->len + 1);
  g_autofree char *text =
      g_strdup_printf (_ ("%u of %u looked at"), all.n_looked_at, all.n_checks);

  for (guint i = 0; i < self->checks->len; i++)
    {
      WmCheck *check = get_check (self, i);
      WmChecksProgress part = wm_checks_progress_of_part (self->checks, check->part);
      g_autofree char *count =
          g_strdup_printf (_ ("%u of %u"), part.n_looked_at, part.n_checks);

      severities[i] = check->severity;
      gtk_label_set_text (g_ptr_array_index (self->counts, i), count);
    }
  gtk_label_set_text (self->progress_label, text);
  wm_progress_rule_set (self->progress_rule, severities, self->checks->len, self->open);
}

static void
show_state (WmChecklistPane *self)
{
  WmChecksProgress all = wm_checks_progress (self->checks);
  guint n_open = all.n_checks - all.n_looked_at;
  g_autofree char *text = NULL;

  if (self->concluded != NULL)
    text = g_strdup (self->concluded);
  else if (all.n_looked_at == 0)
    text = g_strdup (_ ("Nothing looked at yet"));
  else if (n_open > 0)
    text = g_strdup_printf (ngettext ("%u not looked at", "%u not looked at", n_open),
                            n_open);
  else if (all.n_findings == 0)
    text = g_strdup (_ ("No findings. The piece can go straight to hand-back."));
  else
    text = g_strdup_printf (ngettext ("All looked at, %u finding",
                                      "All looked at, %u findings", all.n_findings),
                            all.n_findings);
  gtk_label_set_text (self->state_label, text);
  gtk_button_set_label (GTK_BUTTON (self->conclude), self->concluded != NULL
                                                         ? _ ("Open again")
                                                         : _ ("Call it inspected"));
  if (self->concluded == NULL && n_open == 0 && all.n_checks > 0)
    gtk_widget_add_css_class (self->conclude, "suggested-action");
  else
    gtk_widget_remove_css_class (self->conclude, "suggested-action");
}

/* ---- scrolling ---------------------------------------------------------------- */

/* Brings the row into sight; FALSE when there is none. */
static gboolean
scroll_to_row (WmChecklistPane *self)
{
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (self->scroller);
  double value = gtk_adjustment_get_value (adjustment);
  double page = gtk_adjustment_get_page_size (adjustment), top, bottom;
  graphene_rect_t bounds;

  if (self->scroll_to < 0 || (guint)self->scroll_to >= self->rows->len
      || !gtk_widget_compute_bounds (g_ptr_array_index (self->rows, self->scroll_to),
                                     GTK_WIDGET (self->groups), &bounds))
    return FALSE;
  top = bounds.origin.y - SCROLL_MARGIN;
  bottom = bounds.origin.y + bounds.size.height + SCROLL_MARGIN;
  if (top < value)
    gtk_adjustment_set_value (adjustment, top);
  else if (bottom > value + page)
    gtk_adjustment_set_value (adjustment, MIN (bottom - page, top));
  return TRUE;
}

/* A row that has just opened grows for a while: it is followed until it has. */
static gboolean
on_scroll_tick (GtkWidget *widget, GdkFrameClock *clock, gpointer user_data)
{
  WmChecklistPane *self = WM_CHECKLIST_PANE (widget);

  if (scroll_to_row (self)
      && gdk_frame_clock_get_frame_time (clock) < self->scroll_until_us)
    return G_SOURCE_CONTINUE;
  self->scroll_tick = 0;
  return G_SOURCE_REMOVE;
}

void
wm_checklist_pane_show_row (WmChecklistPane *self, int index, gboolean with_focus)
{
  if (index < 0 || (guint)index >= self->rows->len)
    return;
  self->scroll_to = index;
  self->scroll_until_us = g_get_monotonic_time () + SCROLL_US;
  if (self->scroll_tick == 0)
    self->scroll_tick =
        gtk_widget_add_tick_callback (GTK_WIDGET (self), on_scroll_tick, NULL, NULL);
  if (with_focus)
    wm_check_row_focus (g_ptr_array_index (self->rows, index));
}

/* Enter on the open check goes on, though a button has the focus there; a note that is
 * typed and other rows keep it. */
static gboolean
on_key_pressed (GtkEventControllerKey *controller, guint keyval, guint keycode,
                GdkModifierType state, WmChecklistPane *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;

  if ((keyval != GDK_KEY_Return && keyval != GDK_KEY_KP_Enter
       && keyval != GDK_KEY_ISO_Enter)
      || (state & gtk_accelerator_get_default_mod_mask ()) != 0 || focus == NULL
      || self->open < 0 || GTK_IS_EDITABLE (focus)
      || !gtk_widget_is_ancestor (focus, g_ptr_array_index (self->rows, self->open)))
    return GDK_EVENT_PROPAGATE;
  gtk_widget_activate_action (GTK_WIDGET (self), "inspection.next-open", NULL);
  return GDK_EVENT_STOP;
}

/* ---- widget ------------------------------------------------------------------- */

static void
on_note_changed (WmCheckDetails *details, const char *note, WmChecklistPane *self)
{
  g_signal_emit (self, signals[NOTE_CHANGED], 0, note);
}

static void
on_other_word_changed (WmCheckDetails *details, const char *note, WmChecklistPane *self)
{
  g_signal_emit (self, signals[OTHER_WORD_CHANGED], 0, note);
}

static void
wm_checklist_pane_dispose (GObject *object)
{
  WmChecklistPane *self = WM_CHECKLIST_PANE (object);

  if (self->scroll_tick != 0)
    gtk_widget_remove_tick_callback (GTK_WIDGET (self), self->scroll_tick);
  self->scroll_tick = 0;
  /* Before the template takes its child away behind the bin. */
  adw_bin_set_child (ADW_BIN (object), NULL);
  gtk_widget_dispose_template (GTK_WIDGET (object), WM_TYPE_CHECKLIST_PANE);
  g_clear_object (&self->details);
  g_clear_pointer (&self->checks, g_ptr_array_unref);
  g_clear_pointer (&self->rows, g_ptr_array_unref);
  g_clear_pointer (&self->counts, g_ptr_array_unref);
  G_OBJECT_CLASS (wm_checklist_pane_parent_class)->dispose (object);
}

static void
wm_checklist_pane_finalize (GObject *object)
{
  g_free (WM_CHECKLIST_PANE (object)->layout);
  g_free (WM_CHECKLIST_PANE (object)->concluded);
  G_OBJECT_CLASS (wm_checklist_pane_parent_class)->finalize (object);
}

static void
wm_checklist_pane_class_init (WmChecklistPaneClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_checklist_pane_dispose;
  G_OBJECT_CLASS (klass)->finalize = wm_checklist_pane_finalize;
  g_type_ensure (WM_TYPE_PROGRESS_RULE);

  signals[NOTE_CHANGED] =
      g_signal_new ("note-changed", WM_TYPE_CHECKLIST_PANE, G_SIGNAL_RUN_LAST, 0, NULL,
                    NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);

  signals[OTHER_WORD_CHANGED] =
      g_signal_new ("other-word-changed", WM_TYPE_CHECKLIST_PANE, G_SIGNAL_RUN_LAST, 0,
                    NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);

  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "checklist-pane.ui");
  gtk_widget_class_bind_template_child (widget_class, WmChecklistPane, stack);
  gtk_widget_class_bind_template_child (widget_class, WmChecklistPane, progress_label);
  gtk_widget_class_bind_template_child (widget_class, WmChecklistPane, progress_rule);
  gtk_widget_class_bind_template_child (widget_class, WmChecklistPane, scroller);
  gtk_widget_class_bind_template_child (widget_class, WmChecklistPane, groups);
  gtk_widget_class_bind_template_child (widget_class, WmChecklistPane, state_label);
  gtk_widget_class_bind_template_child (widget_class, WmChecklistPane, conclude);
}

static void
wm_checklist_pane_init (WmChecklistPane *self)
{
  GtkEventController *key = gtk_event_controller_key_new ();

  self->open = self->scroll_to = -1;
  self->rows = g_ptr_array_new ();
  self->counts = g_ptr_array_new ();
  self->checks = g_ptr_array_new_with_free_func (g_object_unref);
  gtk_widget_init_template (GTK_WIDGET (self));
  self->details = g_object_ref_sink (wm_check_details_new ());
  g_signal_connect (self->details, "note-changed", G_CALLBACK (on_note_changed), self);
  g_signal_connect (self->details, "other-word-changed",
                    G_CALLBACK (on_other_word_changed), self);
  wm_action_name_widget (self->conclude, "inspection.conclude");
  /* Inside the scroller, which would scroll at the 1 and the 3 of a number pad without
   * Num Lock (End, Page Down). */
  wm_action_add_keys (GTK_WIDGET (self->groups), WM_PLACE_CHECKLIST);
  gtk_event_controller_set_propagation_phase (key, GTK_PHASE_CAPTURE);
  g_signal_connect (key, "key-pressed", G_CALLBACK (on_key_pressed), self);
  gtk_widget_add_controller (GTK_WIDGET (self), key);
}

void
wm_checklist_pane_set_checks (WmChecklistPane *self, GPtrArray *checks)
{
  g_autofree char *layout = describe_layout (checks);

  g_ptr_array_ref (checks);
  g_ptr_array_unref (self->checks);
  self->checks = checks;
  gtk_stack_set_visible_child_name (self->stack, checks->len > 0 ? "list" : "empty");

  if (g_strcmp0 (layout, self->layout) != 0)
    {
      if (self->open >= 0 && (guint)self->open < self->rows->len)
        wm_check_row_open (g_ptr_array_index (self->rows, self->open), NULL);
      self->open = -1;
      g_free (self->layout);
      self->layout = g_steal_pointer (&layout);
      make_rows (self);
    }
  for (guint i = 0; i < checks->len; i++)
    wm_check_row_show (g_ptr_array_index (self->rows, i), get_check (self, i));
  show_progress (self);
  show_state (self);
}

void
wm_checklist_pane_open (WmChecklistPane *self, int index, const WmChecklistItem *item,
                        WmMeasurement *reading, guint n_marks)
{
  int before = self->open;

  g_return_if_fail (index < (int)self->rows->len);

  if (index >= 0)
    wm_check_details_show (self->details, get_check (self, index), item, reading,
                           n_marks);
  if (index == before)
    return;
  self->open = index;
  if (before >= 0)
    {
      wm_check_row_open (g_ptr_array_index (self->rows, before), NULL);
      wm_check_row_show (g_ptr_array_index (self->rows, before),
                         get_check (self, before));
    }
  if (index >= 0)
    {
      wm_check_row_open (g_ptr_array_index (self->rows, index),
                         GTK_WIDGET (self->details));
      wm_check_row_show (g_ptr_array_index (self->rows, index), get_check (self, index));
    }
  show_progress (self);
}

void
wm_checklist_pane_set_concluded (WmChecklistPane *self, const char *words)
{
  g_free (self->concluded);
  self->concluded = g_strdup (words);
  show_state (self);
}

void
wm_checklist_pane_leave (WmChecklistPane *self)
{
  if (self->open >= 0)
    wm_check_details_leave (self->details);
}

void
wm_checklist_pane_focus_note (WmChecklistPane *self)
{
  if (self->open >= 0)
    wm_check_details_focus_note (self->details);
}

gboolean
wm_checklist_pane_focus_other_word (WmChecklistPane *self)
{
  return self->open >= 0 && wm_check_details_focus_other_word (self->details);
}
