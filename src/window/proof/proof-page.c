/* proof-page.c: every finding tested again after the work, and photographed
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/proof/proof-page.h"

#include <glib/gi18n.h>

#include "report/visit-data.h"
#include "window/action-table.h"
#include "window/compare/close-up-pair.h"
#include "window/compare/compare-desk.h"
#include "window/compare/meet-card.h"
#include "window/proof/proof-card.h"
#include "window/record-box.h"
#include "window/resource.h"
#include "window/take-in/arrival-photos.h"
#include "window/template.h"

struct _WmProofPage
{
  GtkWidget parent_instance;

  WmCompareDesk *desk;
  GtkWidget *pane, *findings_box, *live_box;
  WmCompareView *live;
  WmCloseUpPair *close_ups;
  WmMeetCard *meet;
  GtkLabel *count;
  GtkWidget *empty;
  GtkBox *cards;
  WmProofCard *final;
  GtkLabel *photo_count;
  WmArrivalPhotos *photos;

  WmSession *session;
  WmVisitData *data;
  WmId open_id;         /* the finding that is looked at, or none */
  gboolean is_unfolded; /* with its severity and tests */
};

static void page_iface_init (WmMomentPageInterface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (WmProofPage, wm_proof_page, GTK_TYPE_WIDGET,
                               G_IMPLEMENT_INTERFACE (WM_TYPE_MOMENT_PAGE,
                                                      page_iface_init))

/* ---- which tests fit ----------------------------------------------------------------
 */

static void
add_tests (GPtrArray *tests, WmTrade *trade, const char *const *keys)
{
  for (guint i = 0; keys != NULL && keys[i] != NULL; i++)
    {
      const WmFinalTest *test = wm_trade_find_test (trade, keys[i]);

      if (test != NULL && !g_ptr_array_find (tests, test, NULL))
        g_ptr_array_add (tests, (gpointer)test);
    }
}

static const WmRemedyRow *
find_remedy (WmTrade *trade, const char *name)
{
  for (const WmRemedyRow *const *row = wm_trade_list_remedies (trade, NULL); *row; row++)
    if (g_strcmp0 ((*row)->name, name) == 0)
      return *row;
  return NULL;
}

/* Those that prove what was done, then those of the mechanism. */
static GPtrArray *
list_tests_of_finding (WmTrade *trade, const WmFinding *finding)
{
  GPtrArray *tests = g_ptr_array_new ();
  const WmChecklistItem *item = NULL;

  if (trade == NULL)
    return tests;
  for (guint i = 0; i < finding->remedies->len; i++)
    {
      const WmRemedyRow *row =
          find_remedy (trade, ((WmRemedy *)finding->remedies->pdata[i])->what);

      if (row != NULL)
        add_tests (tests, trade, row->tests);
    }
  if (finding->check->item != NULL)
    item = wm_trade_find_item (trade, finding->check->item);
  if (item != NULL)
    add_tests (tests, trade, item->tests);
  return tests;
}

/* Of every mechanism the kind of piece has. */
static GPtrArray *
list_tests_of_piece (WmTrade *trade, WmVisitData *data)
{
  GPtrArray *tests = g_ptr_array_new ();

  for (guint i = 0; trade != NULL && i < data->checks->len; i++)
    {
      WmCheck *check = data->checks->pdata[i];
      const WmChecklistItem *item =
          check->item == NULL ? NULL : wm_trade_find_item (trade, check->item);

      if (item != NULL && check->severity != WM_SEVERITY_NOT_PRESENT)
        add_tests (tests, trade, item->tests);
    }
  return tests;
}

/* ---- showing
 * --------------------------------------------------------------------------- */

static const WmFinding *
find_open (WmProofPage *self)
{
  for (guint i = 0; self->data != NULL && i < self->data->findings->len; i++)
    {
      WmFinding *finding = self->data->findings->pdata[i];

      if (wm_id_equal (wm_record_get_id (WM_RECORD (finding->check)), &self->open_id))
        return finding;
    }
  return NULL;
}

static void
show_open (WmProofPage *self)
{
  for (GtkWidget *card = gtk_widget_get_first_child (GTK_WIDGET (self->cards));
       card != NULL; card = gtk_widget_get_next_sibling (card))
    {
      WmCheck *check = wm_proof_card_get_check (WM_PROOF_CARD (card));

      wm_proof_card_set_open (
          WM_PROOF_CARD (card),
          check != NULL
              && wm_id_equal (wm_record_get_id (WM_RECORD (check)), &self->open_id),
          self->is_unfolded);
    }
  if (self->data != NULL)
    wm_close_up_pair_show (self->close_ups, self->session, self->data, find_open (self));
}

static void
open_finding (WmProofPage *self, const WmId *id)
{
  self->open_id = *id;
  show_open (self);
}

/* A click unfolds it, another one folds it again. */
static void
on_card_chosen (WmProofCard *card, WmProofPage *self)
{
  const WmId id = *wm_record_get_id (WM_RECORD (wm_proof_card_get_check (card)));

  self->is_unfolded = !wm_id_equal (&id, &self->open_id) || !self->is_unfolded;
  open_finding (self, &id);
  wm_compare_desk_choose (self->desk, &id);
}

static void
on_finding_chosen (WmCompareDesk *desk, WmId *id, WmProofPage *self)
{
  open_finding (self, id);
  wm_compare_desk_choose (self->desk, id);
}

/* The small picture beside the points follows them. */
static void
show_live (WmProofPage *self, const WmMeeting *meeting)
{
  WmTileLayer *before = NULL, *after = NULL;
  int turns = 0;
  gboolean shown = meeting->is_by_hand_now && meeting->is_aligned
                   && wm_compare_desk_get_live (self->desk, &before, &after, &turns);

  gtk_widget_set_visible (self->live_box, shown);
  if (!shown)
    before = after = NULL;
  if (before == wm_canvas_get_layer (wm_compare_view_get_before (self->live))
      && after == wm_canvas_get_layer (wm_compare_view_get_after (self->live)))
    wm_compare_view_redraw (self->live);
  else
    wm_compare_view_set_layers (self->live, before, turns, after, turns);
}

static void
on_desk_changed (WmCompareDesk *desk, WmProofPage *self)
{
  WmMeeting meeting;

  wm_compare_desk_get_meeting (desk, &meeting);
  wm_meet_card_show (self->meet, &meeting);
  /* While points are placed only they count: what they make comes first. */
  gtk_widget_set_visible (self->findings_box, !meeting.is_by_hand_now);
  if (meeting.state != WM_PAIRER_AT_WORK)
    show_live (self, &meeting);
}

static GtkWidget *
make_card (gpointer record, gpointer user_data)
{
  GtkWidget *card = wm_proof_card_new ();

  g_signal_connect (card, "chosen", G_CALLBACK (on_card_chosen), user_data);
  return card;
}

static void
show_card (GtkWidget *child, gpointer record, gpointer user_data)
{
  WmProofPage *self = user_data;

  for (guint i = 0; i < self->data->findings->len; i++)
    {
      WmFinding *finding = self->data->findings->pdata[i];
      g_autoptr (GPtrArray) tests = NULL;

      if (finding->check != record)
        continue;
      tests = list_tests_of_finding (wm_session_get_trade (self->session), finding);
      wm_proof_card_show (WM_PROOF_CARD (child), self->session, finding->check,
                          finding->proofs, tests);
    }
}

static void
show_final (WmProofPage *self, WmVisitData *data)
{
  g_autoptr (GPtrArray) proofs = g_ptr_array_new ();
  g_autoptr (GPtrArray) tests =
      list_tests_of_piece (wm_session_get_trade (self->session), data);

  for (guint i = 0; i < data->proofs->len; i++)
    if (wm_id_is_none (&((WmProof *)data->proofs->pdata[i])->check_id))
      g_ptr_array_add (proofs, data->proofs->pdata[i]);
  wm_proof_card_show (self->final, self->session, NULL, proofs, tests);
}

static void
show_findings (WmProofPage *self, WmVisitData *data)
{
  g_autoptr (GPtrArray) checks = g_ptr_array_new ();
  g_autofree char *count = NULL;
  guint n_proved = 0;

  for (guint i = 0; i < data->findings->len; i++)
    {
      WmCheck *check = ((WmFinding *)data->findings->pdata[i])->check;

      g_ptr_array_add (checks, check);
      n_proved += check->after_severity != WM_SEVERITY_NOT_LOOKED_AT;
    }
  wm_record_box_show (self->cards, checks, make_card, show_card, self);
  count = g_strdup_printf (_ ("%u of %u looked at again"), n_proved, checks->len);
  gtk_label_set_label (self->count, checks->len > 0 ? count : "");
  gtk_widget_set_visible (self->empty, checks->len == 0);
}

static void
show_visit (WmMomentPage *page, WmSession *session)
{
  WmProofPage *self = WM_PROOF_PAGE (page);
  const WmId *visit_id = wm_session_get_visit_id (session);
  g_autoptr (WmVisitData) data = NULL;
  g_autofree char *count = NULL;
  gboolean is_new;
  guint n_photos;

  g_set_object (&self->session, session);
  n_photos = wm_arrival_photos_show (self->photos, session);
  count = g_strdup_printf (ngettext ("%u photo", "%u photos", n_photos), n_photos);
  gtk_label_set_label (self->photo_count, n_photos > 0 ? count : "");
  if (visit_id != NULL)
    data = wm_visit_data_load (wm_session_get_archive (session),
                               wm_session_get_trade (session), visit_id, NULL);
  if (data == NULL)
    return;

  g_clear_pointer (&self->data, wm_visit_data_unref);
  self->data = wm_visit_data_ref (data);
  show_findings (self, data);
  show_final (self, data);
  is_new = find_open (self) == NULL;
  if (is_new)
    self->open_id = data->findings->len > 0 ? *wm_record_get_id (
                        WM_RECORD (((WmFinding *)data->findings->pdata[0])->check))
                                            : WM_ID_NONE;
  wm_compare_desk_show (self->desk, session, data);
  if (is_new)
    wm_compare_desk_choose (self->desk, &self->open_id);
  show_open (self);
}

static void
set_room (WmMomentPage *page, WmRoom room)
{
  WmProofPage *self = WM_PROOF_PAGE (page);

  /* Look book, section 5. */
  gtk_widget_set_size_request (self->pane,
                               room == WM_ROOM_NARROW ? 348
                               : room == WM_ROOM_WIDE ? 460
                                                      : 384,
                               -1);
}

static void
leave (WmMomentPage *page)
{
  WmProofPage *self = WM_PROOF_PAGE (page);

  for (GtkWidget *card = gtk_widget_get_first_child (GTK_WIDGET (self->cards));
       card != NULL; card = gtk_widget_get_next_sibling (card))
    wm_proof_card_leave (WM_PROOF_CARD (card));
  wm_proof_card_leave (self->final);
}

static void
page_iface_init (WmMomentPageInterface *iface)
{
  iface->show_visit = show_visit;
  iface->set_room = set_room;
  iface->leave = leave;
}

/* ---- overrides
 * -------------------------------------------------------------------------- */

static void
add_photo_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  wm_arrival_photos_choose (WM_PROOF_PAGE (widget)->photos);
}

static void
to_hand_back_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  wm_session_move_on (WM_PROOF_PAGE (widget)->session, WM_MOMENT_HAND_BACK);
}

static void
wm_proof_page_dispose (GObject *object)
{
  WmProofPage *self = WM_PROOF_PAGE (object);

  wm_template_dispose (GTK_WIDGET (self), WM_TYPE_PROOF_PAGE);
  g_clear_object (&self->session);
  g_clear_pointer (&self->data, wm_visit_data_unref);

  G_OBJECT_CLASS (wm_proof_page_parent_class)->dispose (object);
}

static void
wm_proof_page_class_init (WmProofPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_proof_page_dispose;

  g_type_ensure (WM_TYPE_ARRIVAL_PHOTOS);
  g_type_ensure (WM_TYPE_CLOSE_UP_PAIR);
  g_type_ensure (WM_TYPE_COMPARE_DESK);
  g_type_ensure (WM_TYPE_COMPARE_VIEW);
  g_type_ensure (WM_TYPE_MEET_CARD);
  g_type_ensure (WM_TYPE_PROOF_CARD);
  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "proof-page.ui");
  gtk_widget_class_bind_template_child (widget_class, WmProofPage, desk);
  gtk_widget_class_bind_template_child (widget_class, WmProofPage, pane);
  gtk_widget_class_bind_template_child (widget_class, WmProofPage, findings_box);
  gtk_widget_class_bind_template_child (widget_class, WmProofPage, live_box);
  gtk_widget_class_bind_template_child (widget_class, WmProofPage, live);
  gtk_widget_class_bind_template_child (widget_class, WmProofPage, close_ups);
  gtk_widget_class_bind_template_child (widget_class, WmProofPage, meet);
  gtk_widget_class_bind_template_child (widget_class, WmProofPage, count);
  gtk_widget_class_bind_template_child (widget_class, WmProofPage, empty);
  gtk_widget_class_bind_template_child (widget_class, WmProofPage, cards);
  gtk_widget_class_bind_template_child (widget_class, WmProofPage, final);
  gtk_widget_class_bind_template_child (widget_class, WmProofPage, photo_count);
  gtk_widget_class_bind_template_child (widget_class, WmProofPage, photos);
  gtk_widget_class_install_action (widget_class, "proof.add-photo", NULL,
                                   add_photo_action);
  gtk_widget_class_install_action (widget_class, "proof.to-hand-back", NULL,
                                   to_hand_back_action);
}

static void
wm_proof_page_init (WmProofPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  wm_action_add_keys (GTK_WIDGET (self), WM_PLACE_PROOF);
  wm_action_add_keys (GTK_WIDGET (self), WM_PLACE_COMPARE);
  wm_compare_desk_lend_actions (self->desk, GTK_WIDGET (self));
  g_signal_connect (self->desk, "changed", G_CALLBACK (on_desk_changed), self);
  g_signal_connect (self->desk, "finding-chosen", G_CALLBACK (on_finding_chosen), self);
}
