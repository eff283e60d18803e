/* proof-page.c: every finding tested again after the work, and photographed
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/proof/proof-page.h"

#include <glib/gi18n.h>

#include "report/visit-data.h"
#include "window/action-table.h"
#include "window/columns.h"
#include "window/proof/proof-card.h"
#include "window/record-box.h"
#include "window/resource.h"
#include "window/take-in/arrival-photos.h"
#include "window/template.h"

struct _WmProofPage
{
  GtkWidget parent_instance;

  GtkLabel *count;
  GtkWidget *empty;
  GtkBox *cards;
  WmProofCard *final;
  GtkLabel *photo_count;
  WmArrivalPhotos *photos;

  WmSession *session;
  WmVisitData *data; /* during a showing only */
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

static GtkWidget *
make_card (gpointer record, gpointer user_data)
{
  return wm_proof_card_new ();
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

  self->data = data;
  show_findings (self, data);
  show_final (self, data);
  self->data = NULL;
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

  G_OBJECT_CLASS (wm_proof_page_parent_class)->dispose (object);
}

static void
wm_proof_page_class_init (WmProofPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_proof_page_dispose;

  g_type_ensure (WM_TYPE_ARRIVAL_PHOTOS);
  g_type_ensure (WM_TYPE_COLUMNS);
  g_type_ensure (WM_TYPE_PROOF_CARD);
  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "proof-page.ui");
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
}
