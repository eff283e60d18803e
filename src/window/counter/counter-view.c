/* counter-view.c: what the customer sees, in a window of its own
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/counter/counter-view.h"

#include <glib/gi18n.h>
#include <math.h>

#include "photo/mark-look.h"
#include "report/blocks.h"
#include "window/action-table.h"
#include "window/counter/counter-photo.h"
#include "window/counter/counter-rule.h"
#include "window/counter/counter-words.h"
#include "window/glyph.h"
#include "window/inspection/wire-section.h"
#include "window/resource.h"

/* How long Escape is held to leave: the length of a deliberate press, well above a tap.
 */
#define LEAVE_MS 1000

/* A finger on the head of the page leaves it too, without a keyboard: long enough that
 * nobody rests a finger there by chance (common practice, no source). */
#define LEAVE_PRESS_MS 3000

/* Diameter of the wire section here, view px (look book, picture 06). */
#define SECTION 108

struct _WmCounterView
{
  GtkWindow parent_instance;

  GtkWidget *head, *photos, *before_box, *after_box, *sections, *tests_box;
  GtkWidget *section_before_box, *section_after_box, *arrow, *leave_hint, *state_row;
  GtkLabel *piece, *shop, *heading, *before_label, *after_label, *state, *story;
  GtkLabel *section_before_label, *section_after_label, *tests_title, *tests, *come_back;
  GtkLabel *place, *limits;
  WmCanvas *before, *after;
  WmScaleBar *before_bar, *after_bar;
  WmWireSection *section_before, *section_after;
  WmGlyph *glyph_before, *glyph_after;
  WmCounterRule *top_rule, *rule;

  WmVisitData *data;
  WmLanguage *language;
  char *cache_folder;
  guint page;
  guint leave_timeout;
  gboolean is_leaving;
};

G_DEFINE_FINAL_TYPE (WmCounterView, wm_counter_view, GTK_TYPE_WINDOW)

/* ---- showing ------------------------------------------------------------------------
 */

static void
set_text (GtkLabel *label, char *text)
{
  gtk_label_set_text (label, text);
  gtk_widget_set_visible (GTK_WIDGET (label), *text != '\0');
  g_free (text);
}

static void
show_section (GtkWidget *box, WmWireSection *section, double ratio)
{
  gtk_widget_set_visible (box, isfinite (ratio));
  if (isfinite (ratio))
    wm_wire_section_set_ratio (section, ratio);
}

static void
show_sections (WmCounterView *self, const WmFinding *finding)
{
  double before = finding != NULL ? wm_counter_ratio (finding, WM_PHOTO_BEFORE) : NAN;
  double after = finding != NULL ? wm_counter_ratio (finding, WM_PHOTO_AFTER) : NAN;

  gtk_widget_set_visible (self->sections, isfinite (before) || isfinite (after));
  show_section (self->section_before_box, self->section_before, before);
  show_section (self->section_after_box, self->section_after, after);
}

static void
show_finding (WmCounterView *self, const WmFinding *finding)
{
  gboolean has_after = wm_counter_has_after (finding);
  char *sentence = wm_finding_sentence (self->language, finding);

  set_text (self->heading, sentence);
  gtk_widget_set_visible (self->state_row, TRUE);
  wm_glyph_set_severity (self->glyph_before, finding->check->severity);
  gtk_widget_set_visible (self->arrow, has_after);
  gtk_widget_set_visible (GTK_WIDGET (self->glyph_after), has_after);
  wm_glyph_set_severity (self->glyph_after, finding->check->after_severity);
  set_text (self->state, wm_counter_state (self->language, finding));
  set_text (self->story, wm_counter_story (self->language, self->data, finding));
  show_sections (self, finding);

  wm_counter_photo_show (self->before, self->before_bar, self->data, self->cache_folder,
                         finding, WM_PHOTO_BEFORE);
  gtk_widget_set_visible (self->before_box, wm_canvas_get_layer (self->before) != NULL);
  /* Until it was looked at again there is no after to show. */
  if (has_after)
    wm_counter_photo_show (self->after, self->after_bar, self->data, self->cache_folder,
                           finding, WM_PHOTO_AFTER);
  gtk_widget_set_visible (self->after_box,
                          has_after && wm_canvas_get_layer (self->after) != NULL);

  set_text (self->tests, wm_counter_tests (self->language, finding));
  gtk_label_set_text (self->tests_title,
                      wm_say (self->language, N_ ("How we tested it")));
  gtk_widget_set_visible (GTK_WIDGET (self->tests_title),
                          gtk_widget_get_visible (GTK_WIDGET (self->tests)));
}

/* Behind the findings, or alone when there are none. */
static void
show_rest (WmCounterView *self)
{
  g_autofree char *open = wm_counter_rest_open (self->language, self->data);
  g_autofree char *sound = wm_counter_rest_sound (self->language, self->data);
  g_auto (GStrv) names = g_strsplit (sound, "\n", -1);

  set_text (self->heading, wm_counter_rest_title (self->language, self->data));
  gtk_widget_set_visible (self->state_row, FALSE);
  set_text (self->story, g_strjoinv (" · ", names));
  show_sections (self, NULL);
  wm_counter_photo_show (self->before, self->before_bar, self->data, self->cache_folder,
                         NULL, WM_PHOTO_BEFORE);
  gtk_widget_set_visible (self->before_box, wm_canvas_get_layer (self->before) != NULL);
  wm_counter_photo_show (self->after, self->after_bar, self->data, self->cache_folder,
                         NULL, WM_PHOTO_AFTER);
  gtk_widget_set_visible (self->after_box, wm_canvas_get_layer (self->after) != NULL);

  gtk_label_set_text (self->tests_title, wm_say (self->language, N_ ("Not looked at")));
  gtk_widget_set_visible (GTK_WIDGET (self->tests_title), *open != '\0');
  set_text (self->tests, g_steal_pointer (&open));
}

static char **
list_page_names (WmCounterView *self)
{
  GPtrArray *names = g_ptr_array_new ();

  for (guint i = 0; i < self->data->findings->len; i++)
    g_ptr_array_add (names,
                     wm_finding_sentence (self->language,
                                          g_ptr_array_index (self->data->findings, i)));
  g_ptr_array_add (names, wm_counter_rest_title (self->language, self->data));
  g_ptr_array_add (names, NULL);
  return (char **)g_ptr_array_free (names, FALSE);
}

static void
show_place (WmCounterView *self)
{
  guint n = self->data->findings->len;
  g_auto (GStrv) names = list_page_names (self);
  g_autofree char *place = NULL;

  if (self->page < n)
    place = g_strdup_printf (wm_say (self->language, N_ ("Finding %u of %u")),
                             self->page + 1, n);
  gtk_label_set_text (self->place, place != NULL ? place : "");
  gtk_widget_set_visible (GTK_WIDGET (self->rule), n > 0);
  wm_counter_rule_set (self->rule, self->data->findings, (const char *const *)names,
                       self->page);
}

guint
wm_counter_view_get_page (WmCounterView *self)
{
  return self->page;
}

guint
wm_counter_view_get_n_pages (WmCounterView *self)
{
  return self->data->findings->len + 1;
}

void
wm_counter_view_show_page (WmCounterView *self, guint page)
{
  if (page >= wm_counter_view_get_n_pages (self))
    return;
  self->page = page;
  if (page < self->data->findings->len)
    show_finding (self, g_ptr_array_index (self->data->findings, page));
  else
    show_rest (self);
  set_text (self->come_back, wm_counter_come_back (self->language, self->data));
  gtk_widget_set_visible (self->tests_box,
                          gtk_widget_get_visible (GTK_WIDGET (self->tests))
                              || gtk_widget_get_visible (GTK_WIDGET (self->come_back)));
  show_place (self);
}

static void
step (WmCounterView *self, int by)
{
  int page = (int)self->page + by;

  if (page >= 0)
    wm_counter_view_show_page (self, page);
}

/* ---- going from finding to finding ----------------------------------------------------
 */

static void
next_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  step (WM_COUNTER_VIEW (widget), 1);
}

static void
previous_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  step (WM_COUNTER_VIEW (widget), -1);
}

static void
on_chosen (WmCounterRule *rule, int page, WmCounterView *self)
{
  wm_counter_view_show_page (self, page);
}

/* Touched on the left quarter it goes back, anywhere else on. */
static void
on_released (GtkGestureClick *gesture, int n_press, double x, double y,
             WmCounterView *self)
{
  step (self, x < gtk_widget_get_width (GTK_WIDGET (self)) / 4.0 ? -1 : 1);
}

/* ---- leaving --------------------------------------------------------------------------
 */

static void
leave (WmCounterView *self)
{
  self->is_leaving = TRUE;
  gtk_window_close (GTK_WINDOW (self));
}

static void
leave_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  leave (WM_COUNTER_VIEW (widget));
}

static gboolean
on_leave_timeout (gpointer user_data)
{
  WmCounterView *self = user_data;

  self->leave_timeout = 0;
  leave (self);
  return G_SOURCE_REMOVE;
}

static gboolean
on_key_pressed (GtkEventControllerKey *controller, guint keyval, guint keycode,
                GdkModifierType state, WmCounterView *self)
{
  if (keyval != GDK_KEY_Escape)
    return GDK_EVENT_PROPAGATE;
  if (self->leave_timeout == 0)
    {
      self->leave_timeout = g_timeout_add (LEAVE_MS, on_leave_timeout, self);
      gtk_widget_set_visible (self->leave_hint, TRUE);
    }
  return GDK_EVENT_STOP;
}

static void
on_key_released (GtkEventControllerKey *controller, guint keyval, guint keycode,
                 GdkModifierType state, WmCounterView *self)
{
  if (keyval != GDK_KEY_Escape)
    return;
  g_clear_handle_id (&self->leave_timeout, g_source_remove);
  gtk_widget_set_visible (self->leave_hint, FALSE);
}

static void
on_head_pressed (GtkGestureClick *gesture, int n_press, double x, double y,
                 WmCounterView *self)
{
  if (self->leave_timeout == 0)
    self->leave_timeout = g_timeout_add (LEAVE_PRESS_MS, on_leave_timeout, self);
}

static void
on_head_let_go (GtkGesture *gesture, GdkEventSequence *sequence, WmCounterView *self)
{
  g_clear_handle_id (&self->leave_timeout, g_source_remove);
}

static gboolean
wm_counter_view_close_request (GtkWindow *window)
{
  /* A customer's Alt+F4 does not show the bench. */
  if (!WM_COUNTER_VIEW (window)->is_leaving)
    return GDK_EVENT_STOP;
  return GTK_WINDOW_CLASS (wm_counter_view_parent_class)->close_request (window);
}

/* ---- widget
 * ---------------------------------------------------------------------------- */

static void
wm_counter_view_dispose (GObject *object)
{
  WmCounterView *self = WM_COUNTER_VIEW (object);

  g_clear_handle_id (&self->leave_timeout, g_source_remove);
  gtk_widget_dispose_template (GTK_WIDGET (object), WM_TYPE_COUNTER_VIEW);
  g_clear_pointer (&self->data, wm_visit_data_unref);
  g_clear_pointer (&self->language, wm_language_unref);
  g_clear_pointer (&self->cache_folder, g_free);
  G_OBJECT_CLASS (wm_counter_view_parent_class)->dispose (object);
}

#define BIND(member)                                                                     \
  gtk_widget_class_bind_template_child (widget_class, WmCounterView, member)

static void
bind_children (GtkWidgetClass *widget_class)
{
  BIND (head);
  BIND (photos);
  BIND (before_box);
  BIND (after_box);
  BIND (sections);
  BIND (tests_box);
  BIND (section_before_box);
  BIND (section_after_box);
  BIND (arrow);
  BIND (leave_hint);
  BIND (state_row);
  BIND (piece);
  BIND (shop);
  BIND (heading);
  BIND (before_label);
  BIND (after_label);
  BIND (state);
  BIND (story);
  BIND (section_before_label);
  BIND (section_after_label);
  BIND (tests_title);
  BIND (tests);
  BIND (come_back);
  BIND (place);
  BIND (limits);
  BIND (before);
  BIND (before_bar);
  BIND (after_bar);
  BIND (after);
  BIND (section_before);
  BIND (section_after);
  BIND (glyph_before);
  BIND (glyph_after);
  BIND (top_rule);
  BIND (rule);
}

static void
wm_counter_view_class_init (WmCounterViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_counter_view_dispose;
  GTK_WINDOW_CLASS (klass)->close_request = wm_counter_view_close_request;
  g_type_ensure (WM_TYPE_CANVAS);
  g_type_ensure (WM_TYPE_SCALE_BAR);
  g_type_ensure (WM_TYPE_COUNTER_RULE);
  g_type_ensure (WM_TYPE_GLYPH);
  g_type_ensure (WM_TYPE_WIRE_SECTION);
  gtk_widget_class_install_action (widget_class, "counter.next", NULL, next_action);
  gtk_widget_class_install_action (widget_class, "counter.previous", NULL,
                                   previous_action);
  gtk_widget_class_install_action (widget_class, "counter.leave", NULL, leave_action);
  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "counter-view.ui");
  bind_children (widget_class);
}

static void
add_controllers (WmCounterView *self)
{
  GtkGesture *click = gtk_gesture_click_new ();
  GtkGesture *press = gtk_gesture_click_new ();
  GtkEventController *key = gtk_event_controller_key_new ();

  g_signal_connect (click, "released", G_CALLBACK (on_released), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
  g_signal_connect (press, "pressed", G_CALLBACK (on_head_pressed), self);
  g_signal_connect (press, "end", G_CALLBACK (on_head_let_go), self);
  g_signal_connect (press, "cancel", G_CALLBACK (on_head_let_go), self);
  gtk_widget_add_controller (self->head, GTK_EVENT_CONTROLLER (press));
  gtk_event_controller_set_propagation_phase (key, GTK_PHASE_CAPTURE);
  g_signal_connect (key, "key-pressed", G_CALLBACK (on_key_pressed), self);
  g_signal_connect (key, "key-released", G_CALLBACK (on_key_released), self);
  gtk_widget_add_controller (GTK_WIDGET (self), key);
}

static void
wm_counter_view_init (WmCounterView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  wm_canvas_set_mode (self->before, WM_CANVAS_STILL);
  wm_canvas_set_mode (self->after, WM_CANVAS_STILL);
  wm_counter_photo_init (self->before, self->before_bar);
  wm_counter_photo_init (self->after, self->after_bar);
  wm_canvas_set_radius (self->before, WM_MARK_R_COUNTER);
  wm_canvas_set_radius (self->after, WM_MARK_R_COUNTER);
  wm_canvas_add_cover (self->before, GTK_WIDGET (self->before_label));
  wm_canvas_add_cover (self->after, GTK_WIDGET (self->after_label));
  wm_wire_section_set_diameter (self->section_before, SECTION);
  wm_wire_section_set_diameter (self->section_after, SECTION);
  wm_glyph_set_radius (self->glyph_before, 15);
  wm_glyph_set_radius (self->glyph_after, 15);
  wm_counter_rule_set_plain (self->top_rule);
  g_signal_connect (self->rule, "chosen", G_CALLBACK (on_chosen), self);
  add_controllers (self);
  wm_action_add_keys (GTK_WIDGET (self), WM_PLACE_COUNTER);
}

/* ---- opening
 * ---------------------------------------------------------------------------- */

static void
show_data (WmCounterView *self, WmVisitData *data)
{
  const char *language = data->owner != NULL ? data->owner->language : NULL;

  g_clear_pointer (&self->data, wm_visit_data_unref);
  g_clear_pointer (&self->language, wm_language_unref);
  self->data = wm_visit_data_ref (data);
  /* The customer's language; the shop's own where none is said. */
  self->language =
      wm_language_new (language != NULL ? language : g_get_language_names ()[0]);
  set_text (self->piece, wm_counter_piece (self->language, data));
  gtk_label_set_text (self->shop, data->shop_name);
  gtk_label_set_text (self->before_label, wm_say (self->language, N_ ("Before")));
  gtk_label_set_text (self->after_label, wm_say (self->language, N_ ("After")));
  gtk_label_set_text (self->section_before_label, wm_say (self->language, N_ ("before")));
  gtk_label_set_text (self->section_after_label, wm_say (self->language, N_ ("now")));
  gtk_label_set_text (
      self->limits,
      wm_say (self->language, N_ ("A look through the loupe shows what can be seen.")));
  gtk_window_set_title (GTK_WINDOW (self), gtk_label_get_text (self->piece));
  wm_counter_view_show_page (self, 0);
}

/* The monitor that does not show the jeweller's window, if there is one. */
static GdkMonitor *
find_second_monitor (GtkWindow *over)
{
  GdkDisplay *display = gtk_widget_get_display (GTK_WIDGET (over));
  GdkSurface *surface = gtk_native_get_surface (GTK_NATIVE (over));
  GListModel *monitors = gdk_display_get_monitors (display);
  GdkMonitor *own =
      surface != NULL ? gdk_display_get_monitor_at_surface (display, surface) : NULL;

  for (guint i = 0; i < g_list_model_get_n_items (monitors); i++)
    {
      g_autoptr (GdkMonitor) monitor = g_list_model_get_item (monitors, i);

      if (own != NULL && monitor != own)
        return g_steal_pointer (&monitor);
    }
  return NULL;
}

static void
on_over_gone (GtkWidget *over, WmCounterView *self)
{
  gtk_window_destroy (GTK_WINDOW (self));
}

static void
on_destroyed (WmCounterView *self, GtkWindow *over)
{
  g_object_set_data (G_OBJECT (over), "wm-counter-view", NULL);
}

void
wm_counter_view_open (GtkWindow *over, WmSession *session)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (WmVisitData) data = NULL;
  g_autoptr (GdkMonitor) monitor = find_second_monitor (over);
  WmCounterView *self = g_object_get_data (G_OBJECT (over), "wm-counter-view");

  if (wm_session_get_visit_id (session) == NULL)
    return;
  data = wm_visit_data_load (wm_session_get_archive (session),
                             wm_session_get_trade (session),
                             wm_session_get_visit_id (session), &error);
  if (data == NULL)
    {
      wm_session_toast_error (session, error);
      return;
    }
  if (self == NULL)
    {
      /* Not of the application: its keys (quit, other pieces) do nothing here. */
      self = g_object_new (WM_TYPE_COUNTER_VIEW, NULL);
      self->cache_folder =
          g_strdup (wm_archive_get_cache_folder (wm_session_get_archive (session)));
      g_object_set_data (G_OBJECT (over), "wm-counter-view", self);
      g_signal_connect_object (over, "destroy", G_CALLBACK (on_over_gone), self, 0);
      g_signal_connect_object (self, "destroy", G_CALLBACK (on_destroyed), over, 0);
    }
  show_data (self, data);
  if (monitor != NULL)
    gtk_window_fullscreen_on_monitor (GTK_WINDOW (self), monitor);
  else
    gtk_window_fullscreen (GTK_WINDOW (self));
  gtk_window_present (GTK_WINDOW (self));
}
