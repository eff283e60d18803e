/* inspection-checks.c: answering, opening, concluding
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>

#include "window/action-table.h"
#include "window/inspection/inspection-private.h"
#include "window/labels.h"
#include "window/open-check.h"

static const struct
{
  const char *word; /* target of inspection.answer */
  WmSeverity severity;
} answers[] = {
  { "not-looked-at", WM_SEVERITY_NOT_LOOKED_AT },
  { "sound", WM_SEVERITY_SOUND },
  { "watch", WM_SEVERITY_WATCH },
  { "repair", WM_SEVERITY_REPAIR },
  { "no-wear", WM_SEVERITY_NO_WEAR },
  { "not-present", WM_SEVERITY_NOT_PRESENT },
};

static int
get_open (WmInspectionPage *self)
{
  return wm_checks_find (self->checks, &self->open_id);
}

static WmCheck *
get_open_check (WmInspectionPage *self)
{
  int open = get_open (self);

  return open < 0 ? NULL : g_ptr_array_index (self->checks, open);
}

/* ---- edits --------------------------------------------------------------------------
 */

void
wm_inspection_put_check (WmInspectionPage *self, WmEdit *edit, WmCheck *check)
{
  if (self->checks_are_new)
    for (guint i = 0; i < self->checks->len; i++)
      {
        WmRecord *other = g_ptr_array_index (self->checks, i);

        if (!wm_id_equal (wm_record_get_id (other), wm_record_get_id (WM_RECORD (check))))
          wm_session_put (self->session, edit, other);
      }
  self->checks_are_new = FALSE;
  wm_session_put (self->session, edit, check);
  wm_inspection_replace (self->checks, check);
}

void
wm_inspection_answer (WmInspectionPage *self, WmSeverity severity)
{
  WmCheck *open = get_open_check (self);
  g_autoptr (WmCheck) check = NULL;
  WmEdit *edit;

  if (open == NULL)
    {
      if (self->session != NULL)
        wm_session_toast (self->session,
                          _ ("Choose a check first, or press Enter for the next one."));
      return;
    }
  check = wm_session_copy (self->session, open);
  if (!wm_check_answer (check, severity, g_get_real_time () / G_USEC_PER_SEC,
                        wm_session_get_by (self->session),
                        wm_checks_next_number (self->checks)))
    return;
  edit = wm_session_begin (self->session, severity == WM_SEVERITY_NOT_LOOKED_AT
                                              ? N_ ("Take back answer")
                                              : N_ ("Answer check"));
  wm_inspection_put_check (self, edit, check);
  wm_inspection_commit (self, edit);
  wm_inspection_show (self);
}

void
wm_inspection_change_note (WmInspectionPage *self, const char *note)
{
  WmCheck *open = get_open_check (self);
  g_autoptr (WmCheck) check = NULL;
  WmEdit *edit;

  if (open == NULL)
    return;
  check = wm_session_copy (self->session, open);
  wm_record_set_text (WM_RECORD (check), "note", note);
  edit = wm_session_begin (self->session, N_ ("Change note"));
  wm_inspection_put_check (self, edit, check);
  wm_inspection_commit (self, edit);
}

static void
change_other_word (WmInspectionPage *self, const char *note)
{
  WmCheck *open = get_open_check (self);
  g_autoptr (WmCheck) check = NULL;
  WmEdit *edit;

  if (open == NULL)
    return;
  check = wm_session_copy (self->session, open);
  wm_record_set_text (WM_RECORD (check), "other-word-note", note);
  edit = wm_session_begin (self->session, N_ ("Why another word than the numbers"));
  wm_inspection_put_check (self, edit, check);
  wm_inspection_commit (self, edit);
}

static void
on_other_word_changed (WmChecklistPane *pane, const char *note, WmInspectionPage *self)
{
  change_other_word (self, note);
}

static void
on_note_changed (WmChecklistPane *pane, const char *note, WmInspectionPage *self)
{
  wm_inspection_change_note (self, note);
}

/* ---- opening --------------------------------------------------------------------------
 */

WmMeasurement *
wm_inspection_find_reading (WmInspectionPage *self, const WmId *check_id)
{
  WmMeasurement *last = NULL;

  for (guint i = 0; i < self->measurements->len; i++)
    {
      WmMeasurement *measurement = g_ptr_array_index (self->measurements, i);

      if (wm_id_equal (&measurement->check_id, check_id)
          && g_strcmp0 (measurement->moment, WM_PHOTO_AFTER) != 0)
        last = measurement;
    }
  return last;
}

static void
update_answer_state (WmInspectionPage *self, WmCheck *open)
{
  WmSeverity severity = open != NULL ? open->severity : WM_SEVERITY_NOT_LOOKED_AT;
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (self->actions), "answer");

  for (guint i = 0; i < G_N_ELEMENTS (answers); i++)
    if (answers[i].severity == severity)
      g_simple_action_set_state (G_SIMPLE_ACTION (action),
                                 g_variant_new_string (answers[i].word));
}

void
wm_inspection_show_open_check (WmInspectionPage *self)
{
  WmCheck *open = get_open_check (self);
  const WmChecklistItem *item = NULL;
  WmTrade *trade = self->session != NULL ? wm_session_get_trade (self->session) : NULL;

  if (open != NULL && trade != NULL)
    item = wm_trade_find_item (trade, open->item);
  wm_checklist_pane_open (
      self->pane, get_open (self), item,
      open != NULL ? wm_inspection_find_reading (self, &self->open_id) : NULL,
      open != NULL ? wm_inspection_count_marks_of_check (self, &self->open_id) : 0);
  update_answer_state (self, open);
}

void
wm_inspection_open_check (WmInspectionPage *self, int index, gboolean with_focus)
{
  wm_checklist_pane_leave (self->pane);
  self->open_id = index >= 0 ? *wm_record_get_id (g_ptr_array_index (self->checks, index))
                             : WM_ID_NONE;
  if (self->session != NULL)
    wm_open_check_set (self->session, &self->open_id);
  wm_inspection_show_open_check (self);
  wm_inspection_select_mark_of_open (self);
  wm_checklist_pane_show_row (self->pane, index, with_focus);
  wm_inspection_update_actions (self);
}

/* ---- actions --------------------------------------------------------------------------
 */

static void
on_open_check (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  WmInspectionPage *self = user_data;
  int index = g_variant_get_int32 (parameter);

  if (index < 0 || index >= (int)self->checks->len)
    return;
  /* A second click on the open one closes it, unless a mark waits for it. */
  if (!wm_inspection_tie_waiting (self, index) && index == get_open (self))
    index = -1;
  wm_inspection_open_check (self, index, TRUE);
}

static void
on_answer (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  const char *word = g_variant_get_string (parameter, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (answers); i++)
    if (g_str_equal (word, answers[i].word))
      wm_inspection_answer (user_data, answers[i].severity);
}

static void
on_next_open (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  WmInspectionPage *self = user_data;
  int next;

  /* Enter ends a form that is being drawn. */
  if (wm_canvas_is_drawing (self->canvas))
    {
      g_action_group_activate_action (wm_canvas_get_actions (self->canvas), "finish",
                                      NULL);
      return;
    }
  if (self->beside == WM_BESIDE_SCALE)
    {
      wm_inspection_use_scale (self);
      return;
    }
  if (self->beside == WM_BESIDE_MEASURING)
    {
      wm_inspection_take_value (self);
      return;
    }
  /* The check a waiting mark was brought to with the keys is the chosen one. */
  if (get_open (self) >= 0 && wm_inspection_tie_waiting (self, get_open (self)))
    {
      wm_inspection_show_open_check (self);
      return;
    }
  next = wm_checks_next_open (self->checks, get_open (self));
  if (next >= 0)
    wm_inspection_open_check (self, next, TRUE);
  else if (self->session != NULL && self->checks->len > 0)
    wm_session_toast (self->session, _ ("Everything was looked at."));
}

static void
step (WmInspectionPage *self, int by)
{
  int next = wm_checks_step (self->checks, get_open (self), by);

  if (next >= 0)
    wm_inspection_open_check (self, next, TRUE);
}

static void
on_next_check (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  step (user_data, 1);
}

static void
on_previous_check (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  step (user_data, -1);
}

static void
on_note (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  wm_checklist_pane_focus_note (WM_INSPECTION_PAGE (user_data)->pane);
}

static void
on_take_suggestion (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  WmInspectionPage *self = user_data;
  WmCheck *open = get_open_check (self);

  if (open != NULL && open->suggested != WM_SEVERITY_NOT_LOOKED_AT)
    wm_inspection_answer (self, open->suggested);
  else if (self->session != NULL)
    wm_session_toast (self->session, _ ("There are no numbers for this check yet."));
}

static void
on_other_word (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  WmInspectionPage *self = user_data;

  if (!wm_checklist_pane_focus_other_word (self->pane) && self->session != NULL)
    wm_session_toast (self->session, _ ("The word is the one the numbers point to, or "
                                        "there are no numbers."));
}

/* Escape takes back one thing at a time, the newest first. */
static void
on_cancel (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  WmInspectionPage *self = user_data;

  if (wm_canvas_is_drawing (self->canvas)
      || (wm_id_is_none (&self->tying)
          && !wm_id_is_none (wm_canvas_get_selected (self->canvas))
          && wm_id_is_none (&self->open_id)))
    g_action_group_activate_action (wm_canvas_get_actions (self->canvas), "cancel", NULL);
  else if (!wm_id_is_none (&self->tying))
    wm_inspection_stop_waiting (self);
  else if (self->beside != WM_BESIDE_CHECKLIST)
    wm_inspection_leave_measuring (self);
  else if (!wm_id_is_none (&self->open_id))
    wm_inspection_open_check (self, -1, FALSE);
}

static void
on_go_to_take_in (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  wm_session_go_to_moment (WM_INSPECTION_PAGE (user_data)->session, WM_MOMENT_TAKE_IN);
}

/* ---- concluding -----------------------------------------------------------------------
 */

static void
conclude (WmInspectionPage *self, const char *reason)
{
  WmVisit *shown = wm_session_get_visit (self->session);
  g_autoptr (WmVisit) visit = wm_session_copy (self->session, shown);
  WmEdit *edit = wm_session_begin (self->session, N_ ("Call it inspected"));
  const WmId *by = wm_session_get_by (self->session);

  visit->inspected_at_s = g_get_real_time () / G_USEC_PER_SEC;
  visit->inspected_by = by != NULL ? *by : WM_ID_NONE;
  wm_record_set_text (WM_RECORD (visit), "open-reason", reason);
  if (self->checks_are_new && self->checks->len > 0)
    wm_inspection_put_check (self, edit, g_ptr_array_index (self->checks, 0));
  wm_session_put (self->session, edit, visit);
  wm_inspection_commit (self, edit);
  wm_session_toast (self->session, reason == NULL
                                       ? _ ("Inspected, everything looked at.")
                                       : _ ("Inspected, with the reason kept."));
}

static void
reopen (WmInspectionPage *self)
{
  wm_session_change (self->session, N_ ("Open the inspection again"),
                     wm_session_get_visit (self->session), "inspected-at-s", WM_UNKNOWN,
                     NULL);
}

static void
on_reason_typed (GtkEditable *editable, AdwMessageDialog *dialog)
{
  g_autofree char *text = g_strstrip (g_strdup (gtk_editable_get_text (editable)));

  adw_message_dialog_set_response_enabled (dialog, "conclude", *text != '\0');
}

static void
on_ready_reason (GtkButton *button, GtkEditable *entry)
{
  gtk_editable_set_text (entry, gtk_button_get_label (button));
  gtk_widget_grab_focus (GTK_WIDGET (entry));
}

static void
on_reason_answered (AdwMessageDialog *dialog, const char *response, gpointer user_data)
{
  WmInspectionPage *self = user_data;
  GtkEditable *entry = g_object_get_data (G_OBJECT (dialog), "reason");
  g_autofree char *text = g_strstrip (g_strdup (gtk_editable_get_text (entry)));

  if (g_str_equal (response, "conclude") && wm_checks_can_conclude (self->checks, text))
    conclude (self, text);
}

/* Reasons that come up most; the words can be changed before they are kept. */
static const char *const ready_reasons[] = {
  N_ ("The customer asked for one part only"),
  N_ ("Closed back, not opened"),
  N_ ("To be looked at after cleaning"),
};

static void
ask_why (WmInspectionPage *self, guint n_open)
{
  g_autofree char *heading = g_strdup_printf (
      ngettext ("%u check was not looked at", "%u checks were not looked at", n_open),
      n_open);
  GtkWidget *dialog = adw_message_dialog_new (
      GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))), heading,
      _ ("Say why. The report prints the reason, and these checks as not looked at."));
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *entry = gtk_entry_new ();

  gtk_entry_set_placeholder_text (GTK_ENTRY (entry), _ ("Why"));
  gtk_entry_set_activates_default (GTK_ENTRY (entry), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Why"), -1);
  gtk_box_append (GTK_BOX (box), entry);
  for (guint i = 0; i < G_N_ELEMENTS (ready_reasons); i++)
    {
      GtkWidget *button = gtk_button_new_with_label (_ (ready_reasons[i]));

      gtk_widget_add_css_class (button, "flat");
      g_signal_connect (button, "clicked", G_CALLBACK (on_ready_reason), entry);
      gtk_box_append (GTK_BOX (box), button);
    }
  adw_message_dialog_set_extra_child (ADW_MESSAGE_DIALOG (dialog), box);
  adw_message_dialog_add_responses (ADW_MESSAGE_DIALOG (dialog), "cancel",
                                    _ ("Go on looking"), "conclude",
                                    _ ("Call it inspected"), NULL);
  adw_message_dialog_set_response_appearance (ADW_MESSAGE_DIALOG (dialog), "conclude",
                                              ADW_RESPONSE_SUGGESTED);
  adw_message_dialog_set_default_response (ADW_MESSAGE_DIALOG (dialog), "conclude");
  adw_message_dialog_set_response_enabled (ADW_MESSAGE_DIALOG (dialog), "conclude",
                                           FALSE);
  g_object_set_data (G_OBJECT (dialog), "reason", entry);
  g_signal_connect_object (entry, "changed", G_CALLBACK (on_reason_typed), dialog, 0);
  g_signal_connect_object (dialog, "response", G_CALLBACK (on_reason_answered), self, 0);
  gtk_window_present (GTK_WINDOW (dialog));
  gtk_widget_grab_focus (entry);
}

static void
on_conclude (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  WmInspectionPage *self = user_data;
  WmVisit *visit = self->session != NULL ? wm_session_get_visit (self->session) : NULL;
  WmChecksProgress progress = wm_checks_progress (self->checks);

  if (visit == NULL)
    return;
  wm_checklist_pane_leave (self->pane);
  if (visit->inspected_at_s != WM_UNKNOWN)
    reopen (self);
  else if (wm_checks_can_conclude (self->checks, NULL))
    conclude (self, NULL);
  else
    ask_why (self, progress.n_checks - progress.n_looked_at);
}

char *
wm_inspection_concluded_words (WmInspectionPage *self)
{
  WmVisit *visit = self->session != NULL ? wm_session_get_visit (self->session) : NULL;
  g_autoptr (WmPerson) person = NULL;
  g_autofree char *when = NULL;

  if (visit == NULL || visit->inspected_at_s == WM_UNKNOWN)
    return NULL;
  when = wm_label_moment (visit->inspected_at_s);
  if (!wm_id_is_none (&visit->inspected_by))
    person = wm_archive_get (wm_session_get_archive (self->session), WM_KIND_PERSON,
                             &visit->inspected_by, NULL);
  if (person != NULL && person->initials != NULL)
    return g_strdup_printf (_ ("Inspected %s by %s"), when, person->initials);
  return g_strdup_printf (_ ("Inspected %s"), when);
}

static const GActionEntry entries[] = {
  { "open-check", on_open_check, "i" },
  { "answer", on_answer, "s", "'not-looked-at'" },
  { "next-open", on_next_open },
  { "next-check", on_next_check },
  { "previous-check", on_previous_check },
  { "note", on_note },
  { "take-suggestion", on_take_suggestion },
  { "other-word", on_other_word },
  { "cancel", on_cancel },
  { "conclude", on_conclude },
  { "go-to-take-in", on_go_to_take_in },
};

static void
enable (GSimpleActionGroup *group, const char *const *names, guint n_names,
        gboolean enabled)
{
  for (guint i = 0; i < n_names; i++)
    g_simple_action_set_enabled (
        G_SIMPLE_ACTION (g_action_map_lookup_action (G_ACTION_MAP (group), names[i])),
        enabled);
}

void
wm_inspection_update_actions (WmInspectionPage *self)
{
  static const char *const writing[] = { "answer",          "conclude",   "note",
                                         "re-tie",          "by-gauge",   "snap",
                                         "unworn",          "take-value", "use-scale",
                                         "take-suggestion", "find-sheet", "remove-scale",
                                         "other-word" };
  static const char *const adding[] = { "add", "add-view", "paste" };
  static const char *const changing[] = { "step", "describe", "remove" };
  gboolean can_write = self->session != NULL && !wm_session_is_read_only (self->session)
                       && wm_session_get_visit (self->session) != NULL;

  enable (self->actions, writing, G_N_ELEMENTS (writing), can_write);
  enable (self->photo_actions, adding, G_N_ELEMENTS (adding), can_write);
  enable (self->photo_actions, changing, G_N_ELEMENTS (changing),
          can_write && wm_inspection_get_photo (self) != NULL);
}

void
wm_inspection_init_checks (WmInspectionPage *self)
{
  self->actions = g_simple_action_group_new ();
  g_action_map_add_action_entries (G_ACTION_MAP (self->actions), entries,
                                   G_N_ELEMENTS (entries), self);
  gtk_widget_insert_action_group (GTK_WIDGET (self), "inspection",
                                  G_ACTION_GROUP (self->actions));
  g_signal_connect (self->pane, "note-changed", G_CALLBACK (on_note_changed), self);
  g_signal_connect (self->pane, "other-word-changed", G_CALLBACK (on_other_word_changed),
                    self);
}
