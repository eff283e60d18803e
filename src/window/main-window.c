/* main-window.c: the window: pieces at the left, the shown piece at the right
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/main-window.h"

#include <glib/gi18n.h>

#include "window/action-table.h"
#include "window/compare/pairer.h"
#include "window/diary/diary-page.h"
#include "window/moment-page.h"
#include "window/moments.h"
#include "window/people/person-picker.h"
#include "window/resource.h"
#include "window/window-actions.h"
#include "window/window-state.h"

/* Widths at normal text size (look book, section 5), px. */
#define NORMAL_FROM 1240
#define WIDE_FROM 2200

struct _WmMainWindow
{
  AdwApplicationWindow parent_instance;

  AdwToastOverlay *toasts;
  AdwFlap *flap;
  GtkWidget *show_pieces;
  WmPiecesPane *pieces;
  GtkWidget *pieces_toggle;
  GtkWidget *menu_button;
  GtkWidget *person_button;
  GtkWidget *report_button;
  GtkStack *titles;
  AdwWindowTitle *title;
  GtkBox *moments_box;
  GtkStack *pages;
  AdwStatusPage *welcome;
  WmDiaryPage *diary;
  WmPieceBar *piece_bar;
  GtkStack *moment_stack;

  WmSession *session;
  GtkWidget *moment_buttons[WM_N_MOMENTS];
  GtkWidget *moment_labels[WM_N_MOMENTS];
  GtkWidget *moment_pages[WM_N_MOMENTS]; /* made when first shown */
  const WmMomentRow *moment;
  WmRoom room;
  guint room_id;
  gboolean pieces_wanted;
  gboolean folding;
};

G_DEFINE_FINAL_TYPE (WmMainWindow, wm_main_window, ADW_TYPE_APPLICATION_WINDOW)

/* ---- room --------------------------------------------------------------------- */

/* Text at 200 percent needs the room of a window of half the width. */
static double
get_text_scale (WmMainWindow *self)
{
  int dpi = 0;

  g_object_get (gtk_widget_get_settings (GTK_WIDGET (self)), "gtk-xft-dpi", &dpi, NULL);
  return dpi > 0 ? dpi / 1024.0 / 96.0 : 1.0;
}

static gboolean
is_piece_shown (WmMainWindow *self)
{
  return g_strcmp0 (gtk_stack_get_visible_child_name (self->pages), "piece") == 0;
}

static void
fold_pieces (WmMainWindow *self)
{
  gboolean folded = self->room == WM_ROOM_NARROW
                    || (self->room == WM_ROOM_NORMAL && is_piece_shown (self));
  AdwFlapFoldPolicy policy =
      folded ? ADW_FLAP_FOLD_POLICY_ALWAYS : ADW_FLAP_FOLD_POLICY_NEVER;

  if (adw_flap_get_fold_policy (self->flap) == policy)
    return;

  /* Folded the pieces lie over the page, so they go; unfolded they come back unless
   * they were hidden by hand. */
  self->folding = TRUE;
  adw_flap_set_fold_policy (self->flap, policy);
  adw_flap_set_reveal_flap (self->flap, !folded && self->pieces_wanted);
  self->folding = FALSE;
}

static void
show_moment_labels (WmMainWindow *self)
{
  for (int i = 0; i < WM_N_MOMENTS; i++)
    gtk_widget_set_visible (self->moment_labels[i],
                            self->room != WM_ROOM_NARROW
                                || self->moment == &wm_moments ()[i]);
  if (self->room == WM_ROOM_NARROW)
    gtk_widget_add_css_class (GTK_WIDGET (self->moments_box), "icons");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self->moments_box), "icons");
}

static void
take_room (WmMainWindow *self, WmRoom room)
{
  self->room = room;
  show_moment_labels (self);
  wm_piece_bar_set_room (self->piece_bar, room);
  for (int i = 0; i < WM_N_MOMENTS; i++)
    if (self->moment_pages[i] != NULL)
      wm_moment_page_set_room (WM_MOMENT_PAGE (self->moment_pages[i]), room);
  fold_pieces (self);
}

static WmRoom
find_room (WmMainWindow *self, int width)
{
  double scaled = width / get_text_scale (self);

  return scaled >= WIDE_FROM     ? WM_ROOM_WIDE
         : scaled >= NORMAL_FROM ? WM_ROOM_NORMAL
                                 : WM_ROOM_NARROW;
}

/* Widgets may not ask for another size while sizes are being given out. */
static gboolean
take_room_soon (gpointer data)
{
  WmMainWindow *self = data;
  WmRoom room = find_room (self, gtk_widget_get_width (GTK_WIDGET (self)));

  self->room_id = 0;
  if (room != self->room)
    take_room (self, room);
  return G_SOURCE_REMOVE;
}

static void
wm_main_window_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  WmMainWindow *self = WM_MAIN_WINDOW (widget);

  GTK_WIDGET_CLASS (wm_main_window_parent_class)
      ->size_allocate (widget, width, height, baseline);
  if (find_room (self, width) != self->room && self->room_id == 0)
    self->room_id = g_idle_add_full (G_PRIORITY_HIGH_IDLE, take_room_soon, self, NULL);
}

/* ---- moments -------------------------------------------------------------------- */

static WmMomentPage *
get_shown_page (WmMainWindow *self)
{
  int i;

  if (self->moment == NULL || !is_piece_shown (self))
    return NULL;
  i = self->moment - wm_moments ();
  return self->moment_pages[i] == NULL ? NULL : WM_MOMENT_PAGE (self->moment_pages[i]);
}

static GtkWidget *
get_page (WmMainWindow *self, int i)
{
  const WmMomentRow *row = &wm_moments ()[i];

  if (self->moment_pages[i] == NULL && row->get_type != NULL)
    {
      self->moment_pages[i] = g_object_new (row->get_type (), NULL);
      gtk_stack_add_named (self->moment_stack, self->moment_pages[i], row->word);
      wm_moment_page_set_room (WM_MOMENT_PAGE (self->moment_pages[i]), self->room);
    }
  return self->moment_pages[i];
}

static void
make_moment_buttons (WmMainWindow *self)
{
  for (int i = 0; i < WM_N_MOMENTS; i++)
    {
      const WmMomentRow *row = &wm_moments ()[i];
      GtkWidget *button = gtk_toggle_button_new ();
      GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
      GtkWidget *label = gtk_label_new (_ (row->title));
      g_autofree char *action = g_strdup_printf ("win.moment::%s", row->word);

      gtk_box_append (GTK_BOX (box), gtk_image_new_from_icon_name (row->icon_name));
      gtk_box_append (GTK_BOX (box), label);
      gtk_button_set_child (GTK_BUTTON (button), box);
      gtk_actionable_set_detailed_action_name (GTK_ACTIONABLE (button), action);
      gtk_widget_add_css_class (button, "flat");
      wm_action_name_widget (button, action);
      gtk_box_append (self->moments_box, button);
      self->moment_buttons[i] = button;
      self->moment_labels[i] = label;
    }
}

/* ---- what is shown ----------------------------------------------------------------- */

static void
set_action_state (WmMainWindow *self, const char *name, GVariant *state)
{
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (self), name);

  g_simple_action_set_state (G_SIMPLE_ACTION (action), state);
}

static void
show_welcome (WmMainWindow *self)
{
  gboolean empty =
      wm_archive_count (wm_session_get_archive (self->session), WM_PIECES_ALL, NULL) == 0;

  adw_status_page_set_title (self->welcome,
                             empty ? _ ("No pieces yet") : _ ("Choose a piece"));
  adw_status_page_set_description (self->welcome,
                                   empty ? _ ("Take in the first one.")
                                         : _ ("Pick one of them, or take in a new one."));
  /* Only where the list does not stand beside this page. */
  gtk_widget_set_visible (self->show_pieces, !empty && adw_flap_get_folded (self->flap));
}

static void
show_title (WmMainWindow *self)
{
  WmPiece *piece = wm_session_get_piece (self->session);
  gboolean shown = is_piece_shown (self);
  const char *name = gtk_stack_get_visible_child_name (self->pages);

  gtk_stack_set_visible_child_name (self->titles, shown ? "moments" : "title");
  adw_window_title_set_title (self->title,
                              g_strcmp0 (name, "diary") == 0 ? _ ("Diary") : "Wearmark");
  gtk_window_set_title (GTK_WINDOW (self), shown && piece != NULL && piece->number != NULL
                                               ? piece->number
                                               : "Wearmark");
}

static void
on_visit_changed (WmSession *session, WmMainWindow *self)
{
  WmVisit *visit = wm_session_get_visit (session);

  wm_window_actions_refresh (self);
  if (wm_session_get_piece (session) == NULL)
    {
      show_welcome (self);
      wm_main_window_show_page (self, "welcome");
      return;
    }

  wm_main_window_show_page (self, "piece");
  wm_main_window_show_moment (self, visit == NULL ? WM_MOMENT_TAKE_IN : visit->moment);
}

static void
on_rows_changed (WmSession *session, const WmChange *change, WmMainWindow *self)
{
  WmMomentPage *page = get_shown_page (self);

  wm_window_actions_refresh (self);
  if (page != NULL)
    wm_moment_page_rows_changed (page, session, change);
}

static void
on_person_changed (WmSession *session, WmMainWindow *self)
{
  WmPerson *person = wm_session_get_person (session);
  GtkWidget *face;

  if (person == NULL)
    face = gtk_image_new_from_icon_name ("avatar-default-symbolic");
  else
    face = adw_avatar_new (24, person->name, TRUE);
  gtk_menu_button_set_child (GTK_MENU_BUTTON (self->person_button), face);
}

static void
on_toast (WmSession *session, AdwToast *toast, WmMainWindow *self)
{
  adw_toast_overlay_add_toast (self->toasts, g_object_ref (toast));
}

/* The visit remembers where the jeweller left off; that is no edit to undo later. */
static void
on_go_to_moment (WmSession *session, const char *word, WmMainWindow *self)
{
  wm_main_window_show_page (self, "piece");
  wm_main_window_show_moment (self, word);
}

static void
on_piece_chosen (WmPiecesPane *pane, WmMainWindow *self)
{
  wm_main_window_show_page (self, "piece");
  if (adw_flap_get_folded (self->flap))
    adw_flap_set_reveal_flap (self->flap, FALSE);
}

/* The content has its own toggle only while the pane does not show one beside it. */
static void
on_flap_changed (WmMainWindow *self)
{
  if (!self->folding && !adw_flap_get_folded (self->flap))
    self->pieces_wanted = adw_flap_get_reveal_flap (self->flap);
  gtk_widget_set_visible (self->pieces_toggle, !adw_flap_get_reveal_flap (self->flap)
                                                   || adw_flap_get_folded (self->flap));
  if (self->session != NULL)
    show_welcome (self);
}

/* Keys of the shown page work wherever the focus is, unless what has it took them. */
static gboolean
on_key_pressed (GtkEventControllerKey *controller, guint keyval, guint keycode,
                GdkModifierType state, WmMainWindow *self)
{
  WmMomentPage *page = get_shown_page (self);
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (self));

  if (page == NULL || GTK_IS_TEXT (focus) || GTK_IS_TEXT_VIEW (focus)
      || (focus != NULL && gtk_widget_is_ancestor (focus, GTK_WIDGET (page))))
    return GDK_EVENT_PROPAGATE;
  return gtk_event_controller_key_forward (controller, GTK_WIDGET (page));
}

static gboolean
on_close_request (GtkWindow *window)
{
  WmMainWindow *self = WM_MAIN_WINDOW (window);
  WmMomentPage *page = get_shown_page (self);

  if (page != NULL)
    wm_moment_page_leave (page);
  wm_window_state_save (window, self->session);
  return GDK_EVENT_PROPAGATE;
}

/* ---- overrides ----------------------------------------------------------------------
 */

static void
wm_main_window_dispose (GObject *object)
{
  WmMainWindow *self = WM_MAIN_WINDOW (object);

  g_clear_handle_id (&self->room_id, g_source_remove);
  if (self->session != NULL)
    g_signal_handlers_disconnect_by_data (self->session, self);
  g_clear_object (&self->session);
  gtk_widget_dispose_template (GTK_WIDGET (self), WM_TYPE_MAIN_WINDOW);

  G_OBJECT_CLASS (wm_main_window_parent_class)->dispose (object);
}

static void
wm_main_window_class_init (WmMainWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_main_window_dispose;
  widget_class->size_allocate = wm_main_window_size_allocate;
  GTK_WINDOW_CLASS (klass)->close_request = on_close_request;

  g_type_ensure (WM_TYPE_DIARY_PAGE);
  g_type_ensure (WM_TYPE_PIECES_PANE);
  g_type_ensure (WM_TYPE_PIECE_BAR);
  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "main-window.ui");
  gtk_widget_class_bind_template_child (widget_class, WmMainWindow, toasts);
  gtk_widget_class_bind_template_child (widget_class, WmMainWindow, flap);
  gtk_widget_class_bind_template_child (widget_class, WmMainWindow, show_pieces);
  gtk_widget_class_bind_template_child (widget_class, WmMainWindow, pieces);
  gtk_widget_class_bind_template_child (widget_class, WmMainWindow, pieces_toggle);
  gtk_widget_class_bind_template_child (widget_class, WmMainWindow, menu_button);
  gtk_widget_class_bind_template_child (widget_class, WmMainWindow, person_button);
  gtk_widget_class_bind_template_child (widget_class, WmMainWindow, report_button);
  gtk_widget_class_bind_template_child (widget_class, WmMainWindow, titles);
  gtk_widget_class_bind_template_child (widget_class, WmMainWindow, title);
  gtk_widget_class_bind_template_child (widget_class, WmMainWindow, moments_box);
  gtk_widget_class_bind_template_child (widget_class, WmMainWindow, pages);
  gtk_widget_class_bind_template_child (widget_class, WmMainWindow, welcome);
  gtk_widget_class_bind_template_child (widget_class, WmMainWindow, diary);
  gtk_widget_class_bind_template_child (widget_class, WmMainWindow, piece_bar);
  gtk_widget_class_bind_template_child (widget_class, WmMainWindow, moment_stack);
}

static void
wm_main_window_init (WmMainWindow *self)
{
  g_autoptr (GMenuModel) menu = wm_action_make_menu ();
  GtkEventController *keys = gtk_event_controller_key_new ();

  gtk_widget_init_template (GTK_WIDGET (self));
  self->room = WM_ROOM_NARROW;
  self->pieces_wanted = TRUE;
  g_signal_connect (keys, "key-pressed", G_CALLBACK (on_key_pressed), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  gtk_menu_button_set_menu_model (GTK_MENU_BUTTON (self->menu_button), menu);
  wm_action_name_widget (self->menu_button, "win.menu");
  wm_action_name_widget (self->pieces_toggle, "win.pieces");
  wm_action_name_widget (self->person_button, "win.now-working");
  wm_action_name_widget (self->report_button, "win.show-report");
  g_signal_connect_swapped (self->flap, "notify::reveal-flap",
                            G_CALLBACK (on_flap_changed), self);
  g_signal_connect_swapped (self->flap, "notify::folded", G_CALLBACK (on_flap_changed),
                            self);
  g_signal_connect (self->pieces, "chosen", G_CALLBACK (on_piece_chosen), self);
}

/* ---- public --------------------------------------------------------------------------
 */

WmMainWindow *
wm_main_window_new (GtkApplication *application, WmSession *session)
{
  WmMainWindow *self =
      g_object_new (WM_TYPE_MAIN_WINDOW, "application", application, NULL);

  self->session = g_object_ref (session);
  wm_window_actions_add (self);
  make_moment_buttons (self);
  show_moment_labels (self);
  wm_pieces_pane_set_session (self->pieces, session);
  wm_piece_bar_set_session (self->piece_bar, session);
  wm_piece_bar_set_room (self->piece_bar, self->room);

  g_signal_connect (session, "visit-changed", G_CALLBACK (on_visit_changed), self);
  wm_pairer_of (self->session); /* photos of the shown piece are aligned from now on */
  g_signal_connect (session, "rows-changed", G_CALLBACK (on_rows_changed), self);
  g_signal_connect (session, "toast", G_CALLBACK (on_toast), self);
  g_signal_connect (session, "person-changed", G_CALLBACK (on_person_changed), self);
  gtk_menu_button_set_popover (GTK_MENU_BUTTON (self->person_button),
                               GTK_WIDGET (wm_person_picker_new (session)));
  on_person_changed (session, self);
  g_signal_connect (session, "go-to-moment", G_CALLBACK (on_go_to_moment), self);
  wm_window_state_restore (GTK_WINDOW (self), session);
  on_visit_changed (session, self);

  return self;
}

WmSession *
wm_main_window_get_session (WmMainWindow *self)
{
  return self->session;
}

void
wm_main_window_show_page (WmMainWindow *self, const char *name)
{
  WmMomentPage *before = get_shown_page (self);

  if (before != NULL && g_strcmp0 (name, "piece") != 0)
    wm_moment_page_leave (before);
  if (g_str_equal (name, "diary"))
    wm_diary_page_show (self->diary, self->session);
  gtk_stack_set_visible_child_name (self->pages, name);
  set_action_state (self, "diary", g_variant_new_boolean (g_str_equal (name, "diary")));
  show_title (self);
  fold_pieces (self);
}

void
wm_main_window_show_moment (WmMainWindow *self, const char *word)
{
  const WmMomentRow *row = wm_moments_find (word);
  WmMomentPage *before = get_shown_page (self);
  GtkWidget *page;

  if (row == NULL)
    row = wm_moments ();
  page = get_page (self, row - wm_moments ());
  if (page == NULL)
    return;

  if (before != NULL)
    wm_moment_page_leave (before);
  self->moment = row;
  wm_moment_page_show_visit (WM_MOMENT_PAGE (page), self->session);
  gtk_stack_set_visible_child (self->moment_stack, page);
  set_action_state (self, "moment", g_variant_new_string (row->word));
  show_moment_labels (self);
  fold_pieces (self);
}

AdwFlap *
wm_main_window_get_flap (WmMainWindow *self)
{
  return self->flap;
}

WmPiecesPane *
wm_main_window_get_pieces (WmMainWindow *self)
{
  return self->pieces;
}

WmPieceBar *
wm_main_window_get_piece_bar (WmMainWindow *self)
{
  return self->piece_bar;
}

GtkMenuButton *
wm_main_window_get_menu_button (WmMainWindow *self)
{
  return GTK_MENU_BUTTON (self->menu_button);
}

GtkMenuButton *
wm_main_window_get_person_button (WmMainWindow *self)
{
  return GTK_MENU_BUTTON (self->person_button);
}
