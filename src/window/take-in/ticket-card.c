/* ticket-card.c: what the ticket of this visit says
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/take-in/ticket-card.h"

#include <glib/gi18n.h>

#include "window/labels.h"
#include "window/resource.h"
#include "window/ruled-line.h"
#include "window/template.h"

struct _WmTicketCard
{
  GtkWidget parent_instance;

  GtkLabel *shop;
  GtkLabel *number;
  GtkLabel *piece;
  GtkLabel *day;
  GtkLabel *promised;
  GtkLabel *taken_by;
};

G_DEFINE_FINAL_TYPE (WmTicketCard, wm_ticket_card, GTK_TYPE_WIDGET)

static void
show_line (GtkLabel *label, const char *text)
{
  gtk_label_set_label (label, text == NULL ? "" : text);
  gtk_widget_set_visible (GTK_WIDGET (label), text != NULL && text[0] != '\0');
}

static void
show_visit (WmTicketCard *self, WmArchive *archive, WmVisit *visit)
{
  g_autofree char *day = wm_label_day (visit->taken_in_at_s);
  g_autofree char *promised_on = wm_label_date (visit->promised_on);
  g_autofree char *promised = NULL, *taken_by = NULL;
  g_autoptr (WmPerson) person = NULL;

  if (promised_on[0] != '\0')
    promised = g_strdup_printf (_ ("Promised for %s"), promised_on);
  if (!wm_id_is_none (&visit->taken_in_by))
    person = wm_archive_get (archive, WM_KIND_PERSON, &visit->taken_in_by, NULL);
  if (person != NULL)
    taken_by = g_strdup_printf (_ ("Taken in by %s"), person->name);
  show_line (self->day, day);
  show_line (self->promised, promised);
  show_line (self->taken_by, taken_by);
}

void
wm_ticket_card_show (WmTicketCard *self, WmSession *session)
{
  WmArchive *archive = wm_session_get_archive (session);
  WmPiece *piece = wm_session_get_piece (session);
  WmVisit *visit = wm_session_get_visit (session);
  g_autofree char *shop = wm_archive_get_setting (archive, WM_SETTING_SHOP_NAME);
  g_autofree char *type = NULL;

  show_line (self->shop, shop);
  if (piece == NULL || visit == NULL)
    return;
  type = wm_label_type (session, piece->type);
  show_line (self->number, piece->number);
  show_line (self->piece, type);
  show_visit (self, archive, visit);
}

static void
wm_ticket_card_dispose (GObject *object)
{
  wm_template_dispose (GTK_WIDGET (object), WM_TYPE_TICKET_CARD);

  G_OBJECT_CLASS (wm_ticket_card_parent_class)->dispose (object);
}

static void
wm_ticket_card_class_init (WmTicketCardClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_ticket_card_dispose;

  g_type_ensure (WM_TYPE_RULED_LINE);
  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "ticket-card.ui");
  gtk_widget_class_bind_template_child (widget_class, WmTicketCard, shop);
  gtk_widget_class_bind_template_child (widget_class, WmTicketCard, number);
  gtk_widget_class_bind_template_child (widget_class, WmTicketCard, piece);
  gtk_widget_class_bind_template_child (widget_class, WmTicketCard, day);
  gtk_widget_class_bind_template_child (widget_class, WmTicketCard, promised);
  gtk_widget_class_bind_template_child (widget_class, WmTicketCard, taken_by);
}

static void
wm_ticket_card_init (WmTicketCard *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
