/* reckon-window.c: every computation of the trade, with what the open piece says
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/reckon/reckon-window.h"

#include <glib/gi18n.h>

#include "trade/trade.h"
#include "window/action-table.h"
#include "window/escape.h"
#include "window/open-check.h"
#include "window/reckon/reckon-form.h"
#include "window/wear/wear-list.h"

/* What has a page of its own is not listed: photos, heat plan, quote. */
static const struct
{
  const char *heading; /* N_(); NULL: the same as above */
  const char *topic;
} listed[] = {
  { N_ ("Spring and catch"), "tongue" },
  { NULL, "notch" },
  { NULL, "catch" },
  { N_ ("Joint"), "joint" },
  { NULL, "bridge" },
  { NULL, "refill" },
  { N_ ("What is left"), "section" },
  { NULL, "ring-load" },
  { NULL, "severity" },
  { N_ ("Wear"), "forecast" },
  { NULL, "wear-once" },
  { NULL, "next-check" },
  { N_ ("Chance and value"), "evidence" },
  { NULL, "chance" },
  { NULL, "chance-series" },
  { NULL, "chance-margin" },
  { NULL, "chance-wear" },
  { NULL, "value-at-risk" },
  { N_ ("Stones and sizes"), "stone-weight" },
  { NULL, "ring-size" },
  { N_ ("Stock"), "stock" },
  { NULL, "strip" },
  { NULL, "wire-for-strip" },
  { NULL, "drawn-wire" },
  { NULL, "alloy-density" },
};

struct _WmReckonWindow
{
  AdwWindow parent_instance;

  GtkListBox *topics;
  GtkDropDown *checks;
  GtkWidget *to_note;
  WmReckonForm *form;
  AdwToastOverlay *toasts;

  WmSession *session;
  GPtrArray *all_checks; /* WmCheck; findings first */
};

G_DEFINE_FINAL_TYPE (WmReckonWindow, wm_reckon_window, ADW_TYPE_WINDOW)

static WmCheck *
get_check (WmReckonWindow *self)
{
  guint chosen = gtk_drop_down_get_selected (self->checks);

  /* The first line is "no check". */
  return chosen > 0 && chosen <= self->all_checks->len
             ? self->all_checks->pdata[chosen - 1]
             : NULL;
}

static void
show_topic (WmReckonWindow *self)
{
  GtkListBoxRow *row = gtk_list_box_get_selected_row (self->topics);
  const WmId *visit_id = wm_session_get_visit_id (self->session);
  WmTrade *trade = wm_session_get_trade (self->session);
  WmCheck *check = get_check (self);
  g_autoptr (WmPrefill) prefill = NULL;
  g_autoptr (GError) error = NULL;

  if (row == NULL)
    return;
  if (visit_id != NULL && trade != NULL)
    prefill = wm_prefill_new (wm_session_get_archive (self->session), trade, visit_id,
                              check != NULL ? wm_record_get_id (WM_RECORD (check)) : NULL,
                              wm_wear_today (), &error);
  if (error != NULL)
    wm_session_toast_error (self->session, error);
  wm_reckon_form_show (self->form,
                       wm_topic_find (listed[gtk_list_box_row_get_index (row)].topic),
                       prefill);
}

static void
on_answered (WmReckonWindow *self)
{
  g_autofree char *note = wm_reckon_form_get_note (self->form);

  gtk_widget_set_sensitive (self->to_note,
                            note != NULL && get_check (self) != NULL
                                && !wm_session_is_read_only (self->session));
}

/* One edit: behind what the note says already. */
static void
to_note_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  WmReckonWindow *self = WM_RECKON_WINDOW (widget);
  WmCheck *check = get_check (self);
  g_autofree char *note = wm_reckon_form_get_note (self->form);
  g_autoptr (WmCheck) copy = NULL;
  g_autofree char *joined = NULL;

  if (check == NULL || note == NULL || wm_session_is_read_only (self->session))
    return;
  copy = wm_archive_get (wm_session_get_archive (self->session), WM_KIND_CHECK,
                         wm_record_get_id (WM_RECORD (check)), NULL);
  if (copy == NULL)
    return;
  /* A sentence of its own behind what is there. */
  joined = copy->note == NULL
               ? g_strdup (note)
               : g_strdup_printf ("%s%s %s", copy->note,
                                  g_str_has_suffix (copy->note, ".") ? "" : ".", note);
  wm_session_change (self->session, N_ ("Reckoned, into the note"), copy, "note", joined,
                     NULL);
  adw_toast_overlay_add_toast (self->toasts, adw_toast_new (_ ("Put into the note.")));
}

/* ---- making it ----------------------------------------------------------------------
 */

static void
set_header (GtkListBoxRow *row, GtkListBoxRow *before, gpointer unused)
{
  const char *heading = listed[gtk_list_box_row_get_index (row)].heading;
  GtkWidget *label;

  if (heading == NULL || gtk_list_box_row_get_header (row) != NULL)
    return;
  label = gtk_label_new (_ (heading));
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, "group-label");
  gtk_widget_add_css_class (label, "reckon-heading");
  gtk_list_box_row_set_header (row, label);
}

static GtkWidget *
make_topics (WmReckonWindow *self)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  self->topics = GTK_LIST_BOX (gtk_list_box_new ());
  gtk_list_box_set_selection_mode (self->topics, GTK_SELECTION_BROWSE);
  gtk_widget_add_css_class (GTK_WIDGET (self->topics), "navigation-sidebar");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->topics),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Computations"), -1);
  for (guint i = 0; i < G_N_ELEMENTS (listed); i++)
    {
      const WmTopic *topic = wm_topic_find (listed[i].topic);
      GtkWidget *label = gtk_label_new (_ (topic->title));

      gtk_label_set_xalign (GTK_LABEL (label), 0);
      gtk_label_set_wrap (GTK_LABEL (label), TRUE);
      gtk_list_box_append (self->topics, label);
    }
  gtk_list_box_set_header_func (self->topics, set_header, NULL, NULL);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled),
                                 GTK_WIDGET (self->topics));
  gtk_widget_set_size_request (scrolled, 248, -1);
  gtk_widget_add_css_class (scrolled, "pieces-pane");
  return scrolled;
}

static int
compare_checks (gconstpointer a, gconstpointer b)
{
  const WmCheck *one = *(WmCheck *const *)a, *two = *(WmCheck *const *)b;
  gboolean is_one = wm_severity_is_finding ((WmSeverity)one->severity);
  gboolean is_two = wm_severity_is_finding ((WmSeverity)two->severity);

  if (is_one != is_two)
    return is_two - is_one;
  return one->position < two->position ? -1 : one->position > two->position;
}

/* The open check, else the worst; as a line of the list. */
static guint
find_first (WmReckonWindow *self)
{
  WmId open = wm_open_check_get (self->session);

  for (guint i = 0; i < self->all_checks->len; i++)
    if (wm_id_equal (wm_record_get_id (self->all_checks->pdata[i]), &open))
      return i + 1;
  return self->all_checks->len > 0;
}

static void
fill_checks (WmReckonWindow *self)
{
  const WmId *visit_id = wm_session_get_visit_id (self->session);
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);

  if (visit_id != NULL)
    self->all_checks = wm_archive_list (wm_session_get_archive (self->session),
                                        WM_KIND_CHECK, "visit_id", visit_id, NULL);
  if (self->all_checks == NULL)
    self->all_checks = g_ptr_array_new_with_free_func (g_object_unref);
  g_ptr_array_sort (self->all_checks, compare_checks);
  gtk_string_list_append (names, _ ("no check"));
  for (guint i = 0; i < self->all_checks->len; i++)
    {
      WmCheck *check = self->all_checks->pdata[i];
      gboolean is_finding = wm_severity_is_finding ((WmSeverity)check->severity);

      gtk_string_list_append (names, wm_trade_text (is_finding && check->fault != NULL
                                                        ? check->fault
                                                    : check->title != NULL ? check->title
                                                                           : ""));
    }
  gtk_drop_down_set_model (self->checks, G_LIST_MODEL (names));
  gtk_drop_down_set_selected (self->checks, find_first (self));
}

static GtkWidget *
make_bar (WmReckonWindow *self)
{
  GtkWidget *bar = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *label = gtk_label_new (_ ("Check"));

  gtk_widget_add_css_class (bar, "reckon-bar");
  gtk_widget_add_css_class (label, "dim-label");
  gtk_box_append (GTK_BOX (bar), label);
  self->checks = GTK_DROP_DOWN (gtk_drop_down_new (NULL, NULL));
  gtk_widget_set_hexpand (GTK_WIDGET (self->checks), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->checks),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Check"), -1);
  gtk_box_append (GTK_BOX (bar), GTK_WIDGET (self->checks));
  self->to_note = gtk_button_new_with_label (_ ("Put into its note"));
  gtk_actionable_set_action_name (GTK_ACTIONABLE (self->to_note), "reckon.to-note");
  wm_action_name_widget (self->to_note, "reckon.to-note");
  gtk_box_append (GTK_BOX (bar), self->to_note);
  return bar;
}

static GtkWidget *
make_form (WmReckonWindow *self)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  GtkWidget *clamp = adw_clamp_new ();

  self->form = WM_RECKON_FORM (wm_reckon_form_new ());
  adw_clamp_set_maximum_size (ADW_CLAMP (clamp), 640);
  adw_clamp_set_child (ADW_CLAMP (clamp), GTK_WIDGET (self->form));
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), clamp);
  gtk_widget_set_vexpand (scrolled, TRUE);
  gtk_widget_set_hexpand (scrolled, TRUE);
  return scrolled;
}

static void
wm_reckon_window_dispose (GObject *object)
{
  WmReckonWindow *self = WM_RECKON_WINDOW (object);

  /* Lists tell of another choice while they go. */
  if (self->session != NULL)
    {
      g_signal_handlers_disconnect_by_data (self->topics, self);
      g_signal_handlers_disconnect_by_data (self->checks, self);
      g_signal_handlers_disconnect_by_data (self->form, self);
    }
  g_clear_object (&self->session);
  g_clear_pointer (&self->all_checks, g_ptr_array_unref);

  G_OBJECT_CLASS (wm_reckon_window_parent_class)->dispose (object);
}

static void
wm_reckon_window_class_init (WmReckonWindowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = wm_reckon_window_dispose;
  gtk_widget_class_install_action (GTK_WIDGET_CLASS (klass), "reckon.to-note", NULL,
                                   to_note_action);
}

static void
wm_reckon_window_init (WmReckonWindow *self)
{
  GtkWidget *all = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *sides = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  GtkWidget *right = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  self->toasts = ADW_TOAST_OVERLAY (adw_toast_overlay_new ());
  gtk_box_append (GTK_BOX (all), adw_header_bar_new ());
  gtk_box_append (GTK_BOX (sides), make_topics (self));
  gtk_box_append (GTK_BOX (right), make_bar (self));
  gtk_box_append (GTK_BOX (right), make_form (self));
  gtk_box_append (GTK_BOX (sides), right);
  adw_toast_overlay_set_child (self->toasts, sides);
  gtk_widget_set_vexpand (GTK_WIDGET (self->toasts), TRUE);
  gtk_box_append (GTK_BOX (all), GTK_WIDGET (self->toasts));
  adw_window_set_content (ADW_WINDOW (self), all);
  wm_action_add_keys (GTK_WIDGET (self), WM_PLACE_RECKON);
  wm_close_on_escape (GTK_WIDGET (self));
}

void
wm_reckon_window_open (GtkWindow *parent, WmSession *session)
{
  WmReckonWindow *self = g_object_new (WM_TYPE_RECKON_WINDOW, "transient-for", parent,
                                       "modal", TRUE, "title", _ ("At the bench: reckon"),
                                       "default-width", 960, "default-height", 700, NULL);

  self->session = g_object_ref (session);
  fill_checks (self);
  g_signal_connect_swapped (self->form, "answered", G_CALLBACK (on_answered), self);
  g_signal_connect_swapped (self->checks, "notify::selected", G_CALLBACK (show_topic),
                            self);
  g_signal_connect_swapped (self->topics, "row-selected", G_CALLBACK (show_topic), self);
  gtk_list_box_select_row (self->topics, gtk_list_box_get_row_at_index (self->topics, 0));
  gtk_window_present (GTK_WINDOW (self));
}
