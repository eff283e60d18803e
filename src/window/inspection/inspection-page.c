/* inspection-page.c: the inspection page: what is shown
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/inspection/inspection-page.h"

#include <glib/gi18n.h>
#include <math.h>

#include "record/make-checks.h"
#include "report/photo-scale.h"
#include "window/action-table.h"
#include "window/inspection/inspection-private.h"
#include "window/photo-words.h"
#include "window/resource.h"
#include "window/labels.h"

static void wm_inspection_page_moment_init (WmMomentPageInterface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (WmInspectionPage, wm_inspection_page, ADW_TYPE_BIN,
                               G_IMPLEMENT_INTERFACE (WM_TYPE_MOMENT_PAGE,
                                                      wm_inspection_page_moment_init))

/* Width of the checklist, view px (look book, section 5). */
static const int pane_widths[] = {
  [WM_ROOM_NARROW] = 348,
  [WM_ROOM_NORMAL] = 384,
  [WM_ROOM_WIDE] = 460,
};

/* ---- lists ---------------------------------------------------------------------- */

gpointer
wm_inspection_find (GPtrArray *list, const WmId *id)
{
  for (guint i = 0; i < list->len; i++)
    if (wm_id_equal (wm_record_get_id (g_ptr_array_index (list, i)), id))
      return g_ptr_array_index (list, i);
  return NULL;
}

void
wm_inspection_replace (GPtrArray *list, gpointer record)
{
  for (guint i = 0; i < list->len; i++)
    if (wm_id_equal (wm_record_get_id (g_ptr_array_index (list, i)),
                     wm_record_get_id (record)))
      {
        /* It may be the very one that is there. */
        g_object_ref (record);
        g_object_unref (g_ptr_array_index (list, i));
        g_ptr_array_index (list, i) = record;
        return;
      }
  g_ptr_array_add (list, g_object_ref (record));
}

WmPhoto *
wm_inspection_get_photo (WmInspectionPage *self)
{
  return wm_inspection_find (self->photos, &self->photo_id);
}

/* Reads one kind of the visit; empty, and told, when that fails. */
static GPtrArray *
read_kind (WmInspectionPage *self, WmKind kind)
{
  g_autoptr (GError) error = NULL;
  WmArchive *archive = wm_session_get_archive (self->session);
  GPtrArray *list = wm_archive_list_of_visit (archive, kind, &self->visit_id, &error);

  if (list != NULL)
    return list;
  wm_session_toast_error (self->session, error);
  return g_ptr_array_new_with_free_func (g_object_unref);
}

static void
take_list (GPtrArray **list, GPtrArray *now)
{
  g_clear_pointer (list, g_ptr_array_unref);
  *list = now;
}

static void
read_checks (WmInspectionPage *self)
{
  WmPiece *piece = wm_session_get_piece (self->session);
  WmTrade *trade = wm_session_get_trade (self->session);
  GPtrArray *made;

  take_list (&self->checks, read_kind (self, WM_KIND_CHECK));
  self->checks_are_new = FALSE;
  if (self->checks->len > 0 || piece == NULL || trade == NULL)
    return;
  /* Not begun: shown from the tables, and kept with the first answer or mark. */
  made = wm_make_checks (trade, piece->type, &self->visit_id);
  self->checks_are_new = made->len > 0;
  take_list (&self->checks, made);
}

void
wm_inspection_reload (WmInspectionPage *self)
{
  int open = wm_checks_find (self->checks, &self->open_id);

  if (self->session == NULL || wm_session_get_visit_id (self->session) == NULL)
    return;
  self->visit_id = *wm_session_get_visit_id (self->session);
  read_checks (self);
  take_list (&self->photos, read_kind (self, WM_KIND_PHOTO));
  take_list (&self->marks, read_kind (self, WM_KIND_MARK));
  take_list (&self->measurements, read_kind (self, WM_KIND_MEASUREMENT));
  wm_inspection_sort_photos (self->photos);

  /* A list made from the tables again has other keys: the place is the same. */
  if (wm_checks_find (self->checks, &self->open_id) < 0)
    self->open_id = self->checks_are_new && open >= 0 && open < (int)self->checks->len
                        ? *wm_record_get_id (g_ptr_array_index (self->checks, open))
                        : WM_ID_NONE;
  if (!wm_id_is_none (&self->tying)
      && wm_inspection_find (self->marks, &self->tying) == NULL)
    wm_inspection_stop_waiting (self);
  wm_inspection_show (self);
}

static void
on_kept (WmSession *session, gboolean kept, gpointer user_data)
{
  g_autoptr (WmInspectionPage) self = user_data;

  self->n_pending--;
  /* All is on disk, or an edit was refused and told: show what is there. */
  if (self->session == session && (self->n_pending == 0 || !kept))
    wm_inspection_reload (self);
}

void
wm_inspection_commit (WmInspectionPage *self, WmEdit *edit)
{
  self->n_pending++;
  wm_session_commit_then (self->session, edit, on_kept, g_object_ref (self));
}

/* ---- the photo -------------------------------------------------------------------- */

static void
show_photo_card (WmInspectionPage *self, WmPhoto *photo)
{
  g_autofree char *title = wm_photo_title (wm_session_get_trade (self->session), photo);
  g_autofree char *verdict = wm_photo_verdict_words (photo);
  g_autofree char *advice = wm_photo_verdict_advice (photo);
  g_autofree char *taken = wm_label_moment (photo->taken_at_s);
  g_autofree char *name = NULL;
  gboolean has_date = taken != NULL && *taken != '\0';
  g_autofree char *facts = g_strdup_printf ("%s%s%s", has_date ? taken : "",
                                            has_date && verdict != NULL ? "  ·  " : "",
                                            verdict != NULL ? verdict : "");

  gtk_label_set_text (self->photo_title, title);
  gtk_label_set_text (self->photo_facts, facts);
  gtk_widget_set_visible (GTK_WIDGET (self->photo_facts), *facts != '\0');
  gtk_widget_set_tooltip_text (self->photo_card, advice);
  name = g_strdup_printf ("%s, %s", title, facts);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->canvas),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static void
show_scale (WmInspectionPage *self)
{
  WmPhoto *photo = wm_inspection_get_photo (self);
  double px_per_mm = photo != NULL ? wm_photo_scale_px_per_mm (photo) : NAN;
  double zoom = wm_canvas_get_view (self->canvas)->zoom;
  WmPhotoScale scale;

  wm_scale_bar_set_px_per_mm (self->scale_bar, px_per_mm * zoom);
  wm_scale_bar_set_middle_only (
      self->scale_bar, isfinite (px_per_mm) && wm_photo_scale_read (photo, &scale)
                           && !wm_photo_scale_is_even (&scale));
  gtk_widget_set_visible (self->scale_card, isfinite (px_per_mm));
}

static void
on_view_changed (WmCanvas *canvas, WmInspectionPage *self)
{
  double percent = 100 * wm_canvas_get_pixel_zoom (canvas);
  g_autofree char *text =
      g_strdup_printf (percent < 9.95 ? _ ("%.1f %%") : _ ("%.0f %%"), percent);

  gtk_label_set_text (self->zoom_label, text);
  show_scale (self);
}

static void
show_problem (WmInspectionPage *self, const char *text)
{
  adw_status_page_set_icon_name (self->empty, "dialog-warning-symbolic");
  adw_status_page_set_title (self->empty, _ ("This photo can not be shown"));
  adw_status_page_set_description (self->empty, text);
  gtk_widget_set_visible (adw_status_page_get_child (self->empty), FALSE);
  gtk_stack_set_visible_child_name (self->stack, "empty");
}

static void
on_failed (WmCanvas *canvas, const GError *error, WmInspectionPage *self)
{
  g_autofree char *text =
      g_markup_printf_escaped (_ ("%s Its marks are kept."), error->message);

  show_problem (self, text);
}

static void
show_no_photo (WmInspectionPage *self)
{
  adw_status_page_set_icon_name (self->empty, "wm-add-photo-symbolic");
  adw_status_page_set_title (self->empty, _ ("No photo yet"));
  adw_status_page_set_description (self->empty, _ ("Drop one here or press Ctrl+O."));
  gtk_widget_set_visible (adw_status_page_get_child (self->empty), TRUE);
  gtk_stack_set_visible_child_name (self->stack, "empty");
}

static void
load_photo (WmInspectionPage *self, WmPhoto *photo)
{
  WmArchive *archive = wm_session_get_archive (self->session);
  g_autofree char *path = wm_archive_photo_path (archive, photo);
  g_autoptr (GError) error = NULL;
  g_autoptr (WmTileLayer) layer = wm_tile_layer_new (
      path, photo->sha256, wm_archive_get_cache_folder (archive), &error);

  self->canvas_photo_id = *wm_record_get_id (WM_RECORD (photo));
  wm_canvas_set_layer (self->canvas, layer, photo->quarter_turns);
  if (layer == NULL)
    on_failed (self->canvas, error, self);
  else
    gtk_stack_set_visible_child_name (self->stack, "photo");
  wm_inspection_judge_place (self, NULL);
  if (self->shows_tint)
    wm_inspection_show_tint (self);
}

void
wm_inspection_show_photo (WmInspectionPage *self, const WmId *id)
{
  WmPhoto *photo = id != NULL ? wm_inspection_find (self->photos, id) : NULL;

  if (photo == NULL && self->photos->len > 0)
    photo = g_ptr_array_index (self->photos, 0);
  self->photo_id = photo != NULL ? *wm_record_get_id (WM_RECORD (photo)) : WM_ID_NONE;
  if (photo == NULL)
    {
      self->canvas_photo_id = WM_ID_NONE;
      wm_canvas_set_layer (self->canvas, NULL, 0);
      show_no_photo (self);
    }
  else
    {
      if (!wm_id_equal (&self->canvas_photo_id, &self->photo_id))
        load_photo (self, photo);
      wm_canvas_set_turns (self->canvas, photo->quarter_turns);
      show_photo_card (self, photo);
    }
  wm_inspection_show_marks (self);
  wm_inspection_select_mark_of_open (self);
  show_scale (self);
}

void
wm_inspection_hint (WmInspectionPage *self, const char *text)
{
  gtk_label_set_text (self->hint, text != NULL ? text : "");
  gtk_widget_set_visible (self->hint_card, text != NULL);
}

void
wm_inspection_show (WmInspectionPage *self)
{
  g_autofree char *concluded = wm_inspection_concluded_words (self);

  wm_checklist_pane_set_checks (self->pane, self->checks);
  wm_checklist_pane_set_concluded (self->pane, concluded);
  wm_inspection_show_open_check (self);
  wm_inspection_show_photo (self, &self->photo_id);
  wm_inspection_show_strip (self);
  wm_inspection_scale_reloaded (self);
  wm_inspection_show_measuring (self);
  wm_inspection_update_actions (self);
}

/* ---- a page of a moment -------------------------------------------------------------
 */

static void
forget_visit (WmInspectionPage *self)
{
  take_list (&self->checks, g_ptr_array_new_with_free_func (g_object_unref));
  take_list (&self->photos, g_ptr_array_new_with_free_func (g_object_unref));
  take_list (&self->marks, g_ptr_array_new_with_free_func (g_object_unref));
  take_list (&self->measurements, g_ptr_array_new_with_free_func (g_object_unref));
  self->visit_id = self->open_id = self->photo_id = self->tying = WM_ID_NONE;
  self->measured_id = WM_ID_NONE;
  self->take_when_tied = FALSE;
  if (self->session != NULL)
    wm_inspection_leave_measuring (self);
  wm_inspection_hint (self, NULL);
}

static void
show_visit (WmMomentPage *page, WmSession *session)
{
  WmInspectionPage *self = WM_INSPECTION_PAGE (page);
  const WmId *visit_id = wm_session_get_visit_id (session);
  gboolean read_only = wm_session_is_read_only (session);

  g_set_object (&self->session, session);
  wm_inspection_watch (self);
  wm_canvas_set_mode (self->canvas, read_only ? WM_CANVAS_LOOKING : WM_CANVAS_MARKING);
  if (visit_id == NULL || !wm_id_equal (visit_id, &self->visit_id))
    forget_visit (self);
  if (visit_id == NULL)
    wm_inspection_show (self);
  else
    wm_inspection_reload (self);
  /* Number keys are answers at once, without a click. */
  if (self->checks->len > 0)
    wm_checklist_pane_show_row (
        self->pane, MAX (wm_checks_find (self->checks, &self->open_id), 0), TRUE);
  /* A canvas without a photo is not in view, and a key pressed on it would be lost. */
  else if (self->photos->len > 0)
    gtk_widget_grab_focus (GTK_WIDGET (self->canvas));
  else
    gtk_widget_child_focus (GTK_WIDGET (self), GTK_DIR_TAB_FORWARD);
}

static void
rows_changed (WmMomentPage *page, WmSession *session, const WmChange *change)
{
  static const WmKind kinds[] = { WM_KIND_VISIT, WM_KIND_PIECE, WM_KIND_PHOTO,
                                  WM_KIND_CHECK, WM_KIND_MARK,  WM_KIND_MEASUREMENT };

  if (wm_change_touches (change, WM_KIND_SETTING))
    wm_inspection_watch (WM_INSPECTION_PAGE (page));
  /* What is on disk is behind what is shown while edits are on their way: reading it
   * now would take answers back for a moment, and give a number twice. */
  if (WM_INSPECTION_PAGE (page)->n_pending > 0)
    return;
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (wm_change_touches (change, kinds[i]))
      {
        wm_inspection_reload (WM_INSPECTION_PAGE (page));
        return;
      }
}

static void
set_room (WmMomentPage *page, WmRoom room)
{
  WmInspectionPage *self = WM_INSPECTION_PAGE (page);

  self->room = room;
  /* Beside the marking bar there is no room for it then. */
  gtk_widget_set_halign (self->scale_card,
                         room == WM_ROOM_NARROW ? GTK_ALIGN_END : GTK_ALIGN_START);
  gtk_widget_set_valign (self->scale_card,
                         room == WM_ROOM_NARROW ? GTK_ALIGN_START : GTK_ALIGN_END);
  /* As wide for every pane: the photo does not move when another one comes. */
  adw_clamp_set_maximum_size (self->beside_clamp, pane_widths[room]);
  adw_clamp_set_tightening_threshold (self->beside_clamp, pane_widths[room]);
  gtk_widget_set_size_request (GTK_WIDGET (self->panes), pane_widths[room], -1);
  gtk_widget_set_size_request (GTK_WIDGET (self->pane), pane_widths[room], -1);
  wm_photo_strip_set_room (self->strip, room);
  wm_photo_tray_set_room (self->tray, room);
  if (self->session != NULL)
    wm_inspection_show_strip (self);
}

static void
leave (WmMomentPage *page)
{
  wm_checklist_pane_leave (WM_INSPECTION_PAGE (page)->pane);
}

static void
wm_inspection_page_moment_init (WmMomentPageInterface *iface)
{
  iface->show_visit = show_visit;
  iface->rows_changed = rows_changed;
  iface->set_room = set_room;
  iface->leave = leave;
}

/* ---- widget -------------------------------------------------------------------------
 */

static void
name_buttons (WmInspectionPage *self)
{
  wm_action_name_widget (self->tool_spot, "canvas.tool::spot");
  wm_action_name_widget (self->tool_line, "canvas.tool::line");
  wm_action_name_widget (self->tool_outline, "canvas.tool::outline");
  wm_action_name_widget (self->tool_span, "canvas.tool::span");
  wm_action_name_widget (self->loupe, "canvas.loupe");
  wm_action_name_widget (self->turn_right, "canvas.turn-right");
  wm_action_name_widget (self->zoom_out, "canvas.zoom-out");
  wm_action_name_widget (self->zoom_in, "canvas.zoom-in");
  wm_action_name_widget (self->zoom_fit, "canvas.fit");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->marking_bar),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Marking"), -1);
}

static void
wm_inspection_page_dispose (GObject *object)
{
  WmInspectionPage *self = WM_INSPECTION_PAGE (object);

  wm_inspection_drop_import (self);
  if (self->arrivals != NULL)
    wm_arrivals_set_folder (self->arrivals, NULL);
  wm_inspection_dispose_measuring (self);
  if (self->mark_menu != NULL)
    gtk_widget_unparent (self->mark_menu);
  self->mark_menu = NULL;
  /* Before the template takes its child away behind the bin. */
  adw_bin_set_child (ADW_BIN (object), NULL);
  gtk_widget_dispose_template (GTK_WIDGET (object), WM_TYPE_INSPECTION_PAGE);
  g_clear_pointer (&self->checks, g_ptr_array_unref);
  g_clear_pointer (&self->photos, g_ptr_array_unref);
  g_clear_pointer (&self->marks, g_ptr_array_unref);
  g_clear_pointer (&self->measurements, g_ptr_array_unref);
  g_clear_object (&self->arrivals);
  g_clear_object (&self->actions);
  g_clear_object (&self->photo_actions);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (wm_inspection_page_parent_class)->dispose (object);
}

#define BIND(member)                                                                     \
  gtk_widget_class_bind_template_child (widget_class, WmInspectionPage, member)

static void
bind_children (GtkWidgetClass *widget_class)
{
  BIND (stack);
  BIND (overlay);
  BIND (canvas);
  BIND (photo_card);
  BIND (hint_card);
  BIND (scale_card);
  BIND (marking_bar);
  BIND (photo_title);
  BIND (photo_facts);
  BIND (hint);
  BIND (zoom_label);
  BIND (tool_spot);
  BIND (tool_line);
  BIND (tool_outline);
  BIND (tool_span);
  BIND (loupe);
  BIND (turn_right);
  BIND (zoom_out);
  BIND (zoom_fit);
  BIND (zoom_in);
  BIND (empty);
  BIND (scale_bar);
  BIND (tray);
  BIND (strip);
  BIND (beside_clamp);
  BIND (panes);
  BIND (pane);
  BIND (scale_pane);
  BIND (measuring_pane);
}

static void
wm_inspection_page_class_init (WmInspectionPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_inspection_page_dispose;
  g_type_ensure (WM_TYPE_CANVAS);
  g_type_ensure (WM_TYPE_SCALE_BAR);
  g_type_ensure (WM_TYPE_PHOTO_TRAY);
  g_type_ensure (WM_TYPE_PHOTO_STRIP);
  g_type_ensure (WM_TYPE_CHECKLIST_PANE);
  g_type_ensure (WM_TYPE_SCALE_PANE);
  g_type_ensure (WM_TYPE_MEASURING_PANE);
  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "inspection-page.ui");
  bind_children (widget_class);
}

static void
wm_inspection_page_init (WmInspectionPage *self)
{
  GtkWidget *widget = GTK_WIDGET (self);

  gtk_widget_init_template (widget);
  forget_visit (self);
  wm_inspection_init_checks (self);
  wm_inspection_init_measuring (self);
  wm_inspection_init_marks (self);
  wm_inspection_init_photos (self);
  wm_inspection_init_tray (self);
  wm_inspection_init_stack (self);
  wm_inspection_init_picture (self);
  wm_inspection_init_focus (self);
  gtk_widget_insert_action_group (widget, "canvas", wm_canvas_get_actions (self->canvas));
  name_buttons (self);

  wm_canvas_add_cover (self->canvas, self->photo_card);
  wm_canvas_add_cover (self->canvas, self->hint_card);
  wm_canvas_add_cover (self->canvas, self->scale_card);
  wm_canvas_add_cover (self->canvas, self->marking_bar);
  g_signal_connect (self->canvas, "view-changed", G_CALLBACK (on_view_changed), self);
  g_signal_connect (self->canvas, "failed", G_CALLBACK (on_failed), self);

  wm_action_add_keys (widget, WM_PLACE_PHOTOS);
  wm_action_add_keys (widget, WM_PLACE_CHECKLIST);
  wm_action_add_keys (GTK_WIDGET (self->canvas), WM_PLACE_CANVAS);
  wm_canvas_watch_loupe_key (self->canvas, widget);
}
