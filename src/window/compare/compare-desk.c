/* compare-desk.c: pairs, what is shown, actions
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>
#include <math.h>

#include "window/action-table.h"
#include "window/compare/desk-private.h"
#include "window/compare/pairer-keep.h"
#include "window/resource.h"

enum
{
  FINDING_CHOSEN,
  CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (WmCompareDesk, wm_compare_desk, ADW_TYPE_BIN)

const WmPair *
wm_desk_get_pair (WmCompareDesk *self)
{
  return self->current >= 0 ? &g_array_index (self->pairs, WmPair, self->current) : NULL;
}

gboolean
wm_desk_can_write (WmCompareDesk *self)
{
  return self->session != NULL && !wm_session_is_read_only (self->session);
}

void
wm_desk_tell (WmCompareDesk *self)
{
  wm_desk_update_actions (self);
  g_signal_emit (self, signals[CHANGED], 0);
}

void
wm_desk_choose_finding (WmCompareDesk *self, const WmId *check_id)
{
  if (wm_id_equal (check_id, &self->check_id))
    return;
  self->check_id = *check_id;
  g_signal_emit (self, signals[FINDING_CHOSEN], 0, check_id);
}

void
wm_desk_show_pair (WmCompareDesk *self, int index)
{
  if (self->by_hand)
    wm_desk_end_points (self);
  self->current = index;
  wm_desk_note (self, NULL);
  wm_desk_load_marks (self);
  wm_desk_show (self);
  wm_desk_tell (self);
}

/* ---- pairs ------------------------------------------------------------------------ */

static void
list_pairs (WmCompareDesk *self)
{
  g_autoptr (GArray) past = NULL;

  g_clear_pointer (&self->pairs, g_array_unref);
  g_clear_pointer (&self->earlier, g_ptr_array_unref);
  if (self->data == NULL)
    {
      self->pairs = g_array_new (FALSE, TRUE, sizeof (WmPair));
      return;
    }
  self->pairs = wm_pairer_list (self->data->photos, self->data->pairings);
  past = wm_pairer_list_past (self->session, self->data->photos, self->data->pairings,
                              &self->earlier);
  g_array_append_vals (self->pairs, past->data, past->len);
}

static int
find_pair (WmCompareDesk *self, const WmId *before_id, const WmId *after_id)
{
  int half = -1;

  for (guint i = 0; i < self->pairs->len; i++)
    {
      const WmPair *pair = &g_array_index (self->pairs, WmPair, i);

      if (!wm_id_equal (wm_record_get_id (WM_RECORD (pair->before)), before_id))
        continue;
      if (wm_id_equal (wm_record_get_id (WM_RECORD (pair->after)), after_id))
        return i;
      half = i; /* the before photo has got another one */
    }
  return half;
}

static void
on_pairer_changed (WmPairer *pairer, WmCompareDesk *self)
{
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
set_session (WmCompareDesk *self, WmSession *session)
{
  if (self->session == session)
    return;
  if (self->pairer != NULL)
    g_signal_handlers_disconnect_by_data (self->pairer, self);
  g_set_object (&self->session, session);
  g_set_object (&self->pairer, wm_pairer_of (session));
  g_signal_connect (self->pairer, "changed", G_CALLBACK (on_pairer_changed), self);
}

static gboolean
is_same_visit (WmVisitData *a, WmVisitData *b)
{
  return a != NULL && b != NULL
         && wm_id_equal (wm_record_get_id (WM_RECORD (a->visit)),
                         wm_record_get_id (WM_RECORD (b->visit)));
}

void
wm_compare_desk_show (WmCompareDesk *self, WmSession *session, WmVisitData *data)
{
  gboolean same = is_same_visit (self->data, data);
  WmVisitData *old = self->data;

  set_session (self, session);
  self->data = data != NULL ? wm_visit_data_ref (data) : NULL;
  list_pairs (self);
  g_clear_pointer (&old, wm_visit_data_unref);
  if (!same)
    {
      if (self->by_hand)
        wm_desk_end_points (self);
      self->check_id = WM_ID_NONE;
      wm_desk_note (self, NULL);
    }
  self->current = same ? find_pair (self, &self->shown_before, &self->shown_after) : -1;
  if (self->current < 0 && self->pairs->len > 0)
    self->current = 0;
  if (self->by_hand && self->current < 0)
    wm_desk_end_points (self);
  wm_desk_load_marks (self);
  wm_desk_show (self);
  wm_desk_tell (self);
}

void
wm_compare_desk_get_meeting (WmCompareDesk *self, WmMeeting *out)
{
  const WmPair *pair = wm_desk_get_pair (self);

  *out = (WmMeeting) { .fit_px = NAN, .overlap = NAN, .note = self->note };
  if (pair == NULL)
    return;
  out->has_pair = TRUE;
  out->can_write = wm_desk_can_write (self);
  out->is_by_hand_now = self->by_hand;
  out->n_before = self->points[0]->len;
  out->n_after = self->points[1]->len;
  out->is_aligned = self->by_hand ? self->has_live : self->is_laid;
  out->is_refining = self->is_refining;
  out->is_refined = self->is_refined;
  out->pairing = pair->pairing;
  out->n_waiting = wm_desk_count_waiting (self);
  out->state =
      wm_pairer_get_state (self->pairer, wm_record_get_id (WM_RECORD (pair->before)),
                           wm_record_get_id (WM_RECORD (pair->after)), &out->progress);
  if (self->by_hand)
    out->fit_px = self->has_live ? self->live_fit_px : NAN;
  else if (pair->pairing != NULL)
    {
      out->fit_px = pair->pairing->residual_px;
      out->overlap = pair->pairing->overlap;
    }
}

static gboolean
shows_check (WmCompareDesk *self, const WmPair *pair, const WmId *check_id)
{
  for (guint i = 0; i < self->data->marks->len; i++)
    {
      WmMark *mark = g_ptr_array_index (self->data->marks, i);

      if (wm_id_equal (&mark->check_id, check_id)
          && (wm_id_equal (&mark->photo_id, wm_record_get_id (WM_RECORD (pair->before)))
              || wm_id_equal (&mark->photo_id,
                              wm_record_get_id (WM_RECORD (pair->after)))))
        return TRUE;
    }
  return FALSE;
}

void
wm_compare_desk_choose (WmCompareDesk *self, const WmId *check_id)
{
  const WmPair *pair = wm_desk_get_pair (self);

  self->check_id = *check_id;
  if (pair == NULL || self->by_hand)
    return;
  for (guint i = 0; !shows_check (self, pair, check_id) && i < self->pairs->len; i++)
    if (shows_check (self, &g_array_index (self->pairs, WmPair, i), check_id))
      {
        wm_desk_show_pair (self, i);
        return;
      }
  wm_desk_show_marks (self);
}

/* ---- actions
 * --------------------------------------------------------------------------- */

static int
get_step (GVariant *parameter)
{
  return g_str_equal (g_variant_get_string (parameter, NULL), "next") ? 1 : -1;
}

static void
on_pair (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  WmCompareDesk *self = user_data;
  int n = self->pairs->len;

  if (n > 0)
    wm_desk_show_pair (self, (self->current + get_step (parameter) + n) % n);
}

static void
on_finding (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  WmCompareDesk *self = user_data;
  GPtrArray *findings = self->data != NULL ? self->data->findings : NULL;
  int n = findings != NULL ? findings->len : 0;
  int step = get_step (parameter);
  int at = step > 0 ? -1 : 0;
  const WmId *id;

  if (n == 0)
    return;
  for (int i = 0; i < n; i++)
    if (wm_id_equal (
            wm_record_get_id (WM_RECORD (((WmFinding *)findings->pdata[i])->check)),
            &self->check_id))
      at = i;
  at = (at + step + n) % n;
  id = wm_record_get_id (WM_RECORD (((WmFinding *)findings->pdata[at])->check));
  wm_desk_choose_finding (self, id);
}

static void
on_accept (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  wm_desk_accept (user_data);
}

static void
on_carry (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  wm_desk_carry (user_data);
}

static void
on_choose (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  gtk_menu_button_popup (GTK_MENU_BUTTON (WM_COMPARE_DESK (user_data)->choose));
}

static void
on_by_hand (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  wm_desk_begin_points (user_data);
}

static void
on_refine (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  wm_desk_refine (user_data);
}

static void
on_confirm (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  WmCompareDesk *self = user_data;
  const WmPair *pair = wm_desk_get_pair (self);

  if (self->by_hand)
    wm_desk_keep_points (self);
  else if (pair != NULL && pair->pairing != NULL)
    wm_session_change (self->session, N_ ("Confirm how the photos meet"), pair->pairing,
                       "reason", WM_PAIRING_CONFIRMED, NULL);
}

static void
on_again (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  WmCompareDesk *self = user_data;

  if (wm_desk_get_pair (self) != NULL)
    wm_pairer_again (self->pairer, wm_desk_get_pair (self));
}

static void
on_stop (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  WmCompareDesk *self = user_data;

  if (self->by_hand && !self->is_refining)
    {
      wm_desk_end_points (self);
      wm_desk_show (self);
      wm_desk_tell (self);
    }
  else
    wm_pairer_stop (self->pairer);
}

static const GActionEntry entries[] = {
  { "pair", on_pair, "s" }, { "finding", on_finding, "s" }, { "accept", on_accept },
  { "carry", on_carry },    { "choose", on_choose },        { "by-hand", on_by_hand },
  { "refine", on_refine },  { "confirm", on_confirm },      { "again", on_again },
  { "stop", on_stop },
};

static void
enable (WmCompareDesk *self, const char *name, gboolean enabled)
{
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (self->actions), name);

  g_simple_action_set_enabled (G_SIMPLE_ACTION (action), enabled);
}

void
wm_desk_update_actions (WmCompareDesk *self)
{
  const WmPair *pair = wm_desk_get_pair (self);
  gboolean can_write = pair != NULL && wm_desk_can_write (self);
  gboolean hand =
      pair != NULL && pair->pairing != NULL && wm_pairing_is_by_hand (pair->pairing);

  enable (self, "pair", self->pairs->len > 1);
  enable (self, "choose", self->pairs->len > 0);
  enable (self, "by-hand", can_write && !self->by_hand);
  enable (self, "refine",
          can_write && self->by_hand && self->has_live && !self->is_refining
              && !self->is_refined);
  enable (self, "confirm",
          can_write
              && (self->by_hand ? self->has_live && !self->is_refining
                                : self->is_laid && !hand));
  enable (self, "again", can_write && !self->by_hand && !hand);
  enable (self, "accept",
          can_write && !self->by_hand && wm_desk_count_waiting (self) > 0);
  enable (self, "carry", can_write && !self->by_hand && self->is_laid);
  gtk_widget_set_visible (self->mode_points, self->by_hand);
}

void
wm_compare_desk_lend_actions (WmCompareDesk *self, GtkWidget *page)
{
  gtk_widget_insert_action_group (page, "desk", G_ACTION_GROUP (self->actions));
  gtk_widget_insert_action_group (page, "compare",
                                  wm_compare_view_get_actions (self->view));
  gtk_widget_insert_action_group (
      page, "canvas", wm_canvas_get_actions (wm_compare_view_get_before (self->view)));
}

static void
on_popover_shown (GtkWidget *popover, WmCompareDesk *self)
{
  wm_desk_fill_choices (self);
}

/* What the bar and the keys ask for; the photos may not allow it yet. */
static void
on_mode_changed (WmCompareView *view, WmCompareDesk *self)
{
  WmCompareMode mode = wm_compare_view_get_mode (view);

  if (self->showing)
    return;
  if (mode != WM_COMPARE_POINTS)
    self->wanted_mode = mode;
  self->wants_points = mode == WM_COMPARE_POINTS;
  if (self->by_hand)
    wm_desk_set_loupe (self, self->wants_points);
  wm_desk_show (self);
}

/* One loupe for both photos: whichever the pointer is on. */
static void
on_loupe_changed (GActionGroup *group, const char *name, GVariant *state,
                  WmCompareDesk *self)
{
  g_action_group_change_action_state (
      wm_canvas_get_actions (wm_compare_view_get_after (self->view)), "loupe", state);
}

/* ---- overrides
 * --------------------------------------------------------------------------- */

static void
wm_compare_desk_dispose (GObject *object)
{
  WmCompareDesk *self = WM_COMPARE_DESK (object);

  if (self->pairer != NULL)
    g_signal_handlers_disconnect_by_data (self->pairer, self);
  g_clear_object (&self->pairer);
  adw_bin_set_child (ADW_BIN (self), NULL);
  gtk_widget_dispose_template (GTK_WIDGET (self), WM_TYPE_COMPARE_DESK);
  g_clear_object (&self->before_layer);
  g_clear_object (&self->after_layer);
  g_clear_object (&self->live_layers[0]);
  g_clear_object (&self->live_layers[1]);
  g_clear_object (&self->session);
  g_clear_object (&self->actions);
  g_clear_pointer (&self->data, wm_visit_data_unref);
  g_clear_pointer (&self->earlier, g_ptr_array_unref);
  g_clear_pointer (&self->pairs, g_array_unref);
  g_clear_pointer (&self->marks, g_ptr_array_unref);
  g_clear_pointer (&self->points[0], g_array_unref);
  g_clear_pointer (&self->points[1], g_array_unref);
  g_clear_pointer (&self->note, g_free);
  G_OBJECT_CLASS (wm_compare_desk_parent_class)->dispose (object);
}

#define bind(name)                                                                       \
  gtk_widget_class_bind_template_child (widget_class, WmCompareDesk, name)

static void
wm_compare_desk_class_init (WmCompareDeskClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_compare_desk_dispose;
  g_type_ensure (WM_TYPE_COMPARE_VIEW);
  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "compare-desk.ui");
  bind (stack);
  bind (empty);
  bind (empty_add);
  bind (view);
  bind (before_card);
  bind (after_card);
  bind (hint_card);
  bind (mode_bar);
  bind (choose);
  bind (popover);
  bind (before_title);
  bind (before_facts);
  bind (after_title);
  bind (after_facts);
  bind (hint);
  bind (mode_points);
  bind (mode_side);
  bind (mode_seam);
  bind (mode_blink);
  bind (mode_difference);
  bind (loupe);
  bind (choices);

  signals[FINDING_CHOSEN] =
      g_signal_new ("finding-chosen", WM_TYPE_COMPARE_DESK, G_SIGNAL_RUN_LAST, 0, NULL,
                    NULL, NULL, G_TYPE_NONE, 1, G_TYPE_POINTER);
  signals[CHANGED] = g_signal_new ("changed", WM_TYPE_COMPARE_DESK, G_SIGNAL_RUN_LAST, 0,
                                   NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
name_buttons (WmCompareDesk *self)
{
  static const char *const words[] = { "side", "seam", "blink", "difference" };
  GtkWidget *buttons[] = { self->mode_side, self->mode_seam, self->mode_blink,
                           self->mode_difference };

  for (guint i = 0; i < G_N_ELEMENTS (buttons); i++)
    {
      g_autofree char *name = g_strdup_printf ("compare.mode::%s", words[i]);

      wm_action_name_widget (buttons[i], name);
    }
  wm_action_name_widget (self->loupe, "canvas.loupe");
  wm_action_name_widget (self->choose, "desk.choose");
}

static void
wm_compare_desk_init (WmCompareDesk *self)
{
  GtkWidget *covers[4];

  gtk_widget_init_template (GTK_WIDGET (self));
  self->current = -1;
  self->wanted_mode = WM_COMPARE_SEAM;
  self->pairs = g_array_new (FALSE, TRUE, sizeof (WmPair));
  self->marks = g_ptr_array_new_with_free_func (g_object_unref);
  self->points[0] = g_array_new (FALSE, FALSE, sizeof (WmPoint));
  self->points[1] = g_array_new (FALSE, FALSE, sizeof (WmPoint));
  self->actions = g_simple_action_group_new ();
  g_action_map_add_action_entries (G_ACTION_MAP (self->actions), entries,
                                   G_N_ELEMENTS (entries), self);
  wm_compare_desk_lend_actions (self, GTK_WIDGET (self));
  wm_desk_init_marks (self);
  name_buttons (self);
  g_signal_connect (self->popover, "show", G_CALLBACK (on_popover_shown), self);
  g_signal_connect (self->view, "mode-changed", G_CALLBACK (on_mode_changed), self);
  g_signal_connect (wm_canvas_get_actions (wm_compare_view_get_before (self->view)),
                    "action-state-changed::loupe", G_CALLBACK (on_loupe_changed), self);
  covers[0] = self->before_card;
  covers[1] = self->after_card;
  covers[2] = self->mode_bar;
  covers[3] = self->hint_card;
  for (guint i = 0; i < 4; i++)
    {
      wm_canvas_add_cover (wm_compare_view_get_before (self->view), covers[i]);
      wm_canvas_add_cover (wm_compare_view_get_after (self->view), covers[i]);
    }
  wm_canvas_watch_loupe_key (wm_compare_view_get_before (self->view), GTK_WIDGET (self));
}
