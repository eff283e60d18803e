/* take-in-page.c: a piece is received, with the customer present
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/take-in/take-in-page.h"

#include <glib/gi18n.h>

#include "window/action-table.h"
#include "window/columns.h"
#include "window/form/form-field.h"
#include "window/resource.h"
#include "window/take-in/arrival-photos.h"
#include "window/take-in/condition-card.h"
#include "window/take-in/take-in-facts.h"
#include "window/take-in/ticket-card.h"
#include "window/template.h"

struct _WmTakeInPage
{
  GtkWidget parent_instance;

  WmTakeInFacts *facts;
  GtkLabel *photo_count;
  WmArrivalPhotos *photos;
  WmConditionCard *condition;
  WmFormField *shop_note;
  WmTicketCard *ticket;
  GtkWidget *next_hint;
  GtkWidget *to_inspection;

  WmSession *session;
  WmId shown_id; /* of the visit shown last */
};

static void page_iface_init (WmMomentPageInterface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (WmTakeInPage, wm_take_in_page, GTK_TYPE_WIDGET,
                               G_IMPLEMENT_INTERFACE (WM_TYPE_MOMENT_PAGE,
                                                      page_iface_init))

static void
show_photo_count (WmTakeInPage *self, guint n)
{
  g_autofree char *text = g_strdup_printf (ngettext ("%u photo", "%u photos", n), n);

  gtk_label_set_label (self->photo_count, n > 0 ? text : "");
}

static void
show_visit (WmMomentPage *page, WmSession *session)
{
  WmTakeInPage *self = WM_TAKE_IN_PAGE (page);
  WmVisit *visit = wm_session_get_visit (session);
  gboolean other;

  g_set_object (&self->session, session);
  wm_take_in_facts_show (self->facts, session);
  show_photo_count (self, wm_arrival_photos_show (self->photos, session));
  wm_condition_card_show (self->condition, session);
  wm_form_field_bind (self->shop_note, session, visit);
  wm_ticket_card_show (self->ticket, session);
  gtk_widget_set_visible (self->next_hint, visit != NULL
                                               && !wm_session_is_read_only (session)
                                               && visit->handed_back_at_s == WM_UNKNOWN);

  other = visit != NULL
          && !wm_id_equal (&self->shown_id, wm_record_get_id (WM_RECORD (visit)));
  if (other)
    {
      self->shown_id = *wm_record_get_id (WM_RECORD (visit));
      wm_take_in_facts_begin (self->facts);
    }
}

static void
leave (WmMomentPage *page)
{
  WmTakeInPage *self = WM_TAKE_IN_PAGE (page);

  wm_take_in_facts_leave (self->facts);
  wm_condition_card_leave (self->condition);
  wm_form_field_leave (self->shop_note);
}

static void
page_iface_init (WmMomentPageInterface *iface)
{
  iface->show_visit = show_visit;
  iface->leave = leave;
}

static void
add_photo_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  wm_arrival_photos_choose (WM_TAKE_IN_PAGE (widget)->photos);
}

static void
add_stones_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  wm_take_in_facts_add_stones (WM_TAKE_IN_PAGE (widget)->facts);
}

static void
other_owner_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  wm_take_in_facts_ask_owner (WM_TAKE_IN_PAGE (widget)->facts);
}

/* A visit that is further on stays there: only the page changes. */
static void
to_inspection_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  WmTakeInPage *self = WM_TAKE_IN_PAGE (widget);
  WmVisit *visit = wm_session_get_visit (self->session);

  if (visit != NULL && g_strcmp0 (visit->moment, WM_MOMENT_TAKE_IN) == 0
      && !wm_session_is_read_only (self->session))
    wm_session_move_on (self->session, WM_MOMENT_INSPECTION);
  else
    wm_session_go_to_moment (self->session, WM_MOMENT_INSPECTION);
}

static void
wm_take_in_page_dispose (GObject *object)
{
  WmTakeInPage *self = WM_TAKE_IN_PAGE (object);

  wm_template_dispose (GTK_WIDGET (self), WM_TYPE_TAKE_IN_PAGE);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (wm_take_in_page_parent_class)->dispose (object);
}

static void
wm_take_in_page_class_init (WmTakeInPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_take_in_page_dispose;

  g_type_ensure (WM_TYPE_ARRIVAL_PHOTOS);
  g_type_ensure (WM_TYPE_COLUMNS);
  g_type_ensure (WM_TYPE_CONDITION_CARD);
  g_type_ensure (WM_TYPE_FORM_FIELD);
  g_type_ensure (WM_TYPE_TAKE_IN_FACTS);
  g_type_ensure (WM_TYPE_TICKET_CARD);
  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "take-in-page.ui");
  gtk_widget_class_bind_template_child (widget_class, WmTakeInPage, facts);
  gtk_widget_class_bind_template_child (widget_class, WmTakeInPage, photo_count);
  gtk_widget_class_bind_template_child (widget_class, WmTakeInPage, photos);
  gtk_widget_class_bind_template_child (widget_class, WmTakeInPage, condition);
  gtk_widget_class_bind_template_child (widget_class, WmTakeInPage, shop_note);
  gtk_widget_class_bind_template_child (widget_class, WmTakeInPage, ticket);
  gtk_widget_class_bind_template_child (widget_class, WmTakeInPage, next_hint);
  gtk_widget_class_bind_template_child (widget_class, WmTakeInPage, to_inspection);
  gtk_widget_class_install_action (widget_class, "take-in.add-photo", NULL,
                                   add_photo_action);
  gtk_widget_class_install_action (widget_class, "take-in.add-stones", NULL,
                                   add_stones_action);
  gtk_widget_class_install_action (widget_class, "take-in.other-owner", NULL,
                                   other_owner_action);
  gtk_widget_class_install_action (widget_class, "take-in.to-inspection", NULL,
                                   to_inspection_action);
}

static void
wm_take_in_page_init (WmTakeInPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  wm_action_add_keys (GTK_WIDGET (self), WM_PLACE_TAKE_IN);
}
