/* next-check-card.c: the suggested date of the next check, with its reason
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/wear/next-check-card.h"

#include <glib/gi18n.h>
#include <string.h>

#include "window/action-table.h"
#include "window/labels.h"
#include "window/resource.h"
#include "window/template.h"
#include "window/wear/wear-list.h"

struct _WmNextCheckCard
{
  GtkWidget parent_instance;

  GtkLabel *date, *reason, *basis, *later;
  GtkWidget *take;
};

G_DEFINE_FINAL_TYPE (WmNextCheckCard, wm_next_check_card, GTK_TYPE_WIDGET)

static void
wm_next_check_card_dispose (GObject *object)
{
  wm_template_dispose (GTK_WIDGET (object), WM_TYPE_NEXT_CHECK_CARD);

  G_OBJECT_CLASS (wm_next_check_card_parent_class)->dispose (object);
}

static void
wm_next_check_card_class_init (WmNextCheckCardClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_next_check_card_dispose;

  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "next-check-card.ui");
  gtk_widget_class_bind_template_child (widget_class, WmNextCheckCard, date);
  gtk_widget_class_bind_template_child (widget_class, WmNextCheckCard, reason);
  gtk_widget_class_bind_template_child (widget_class, WmNextCheckCard, basis);
  gtk_widget_class_bind_template_child (widget_class, WmNextCheckCard, later);
  gtk_widget_class_bind_template_child (widget_class, WmNextCheckCard, take);
}

static void
wm_next_check_card_init (WmNextCheckCard *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  wm_action_name_widget (self->take, "hand-back.take-date");
}

/* What the months are, how the piece is taken to be worn, and who says so. */
static char *
describe_basis (const WmOutlook *outlook)
{
  static const char *const worn[] = {
    [WM_WORN_UNSAID] = N_ ("not said how often it is worn, taken as daily"),
    [WM_WORN_DAILY] = N_ ("worn daily"),
    [WM_WORN_OFTEN] = N_ ("worn often"),
    [WM_WORN_SELDOM] = N_ ("worn now and then"),
  };
  const char *source = outlook->is_shop_rule     ? _ ("setting of this shop")
                       : outlook->source != NULL ? wm_trade_text (outlook->source)
                                                 : "";

  /* Translators: months, how often worn, source */
  return g_strdup_printf (
      _ ("Usual for this kind of piece: %d months (%s; %s). Never later "
         "than that."),
      outlook->months, _ (worn[outlook->worn]), source);
}

void
wm_next_check_card_show (WmNextCheckCard *self, WmSession *session,
                         const WmOutlook *outlook)
{
  WmVisit *visit = wm_session_get_visit (session);
  g_autofree char *date = NULL, *reason = NULL, *basis = NULL;
  g_autoptr (WmLanguage) language = wm_language_new (g_get_language_names ()[0]);
  gboolean has = outlook != NULL && outlook->has_next && visit != NULL;

  gtk_widget_set_visible (GTK_WIDGET (self), has);
  if (!has)
    return;
  date = wm_label_long_date (outlook->due_on);
  reason = wm_outlook_sentence (outlook, language);
  basis = describe_basis (outlook);
  gtk_label_set_label (self->date, date);
  gtk_label_set_label (self->reason, reason);
  gtk_label_set_label (self->basis, basis);
  /* Dates are text that sorts as time does. */
  gtk_widget_set_visible (GTK_WIDGET (self->later),
                          visit->next_check_on != NULL
                              && strcmp (visit->next_check_on, outlook->due_on) > 0);
  gtk_widget_set_visible (self->take,
                          !wm_session_is_read_only (session)
                              && g_strcmp0 (visit->next_check_on, outlook->due_on) != 0);
}

void
wm_next_check_take (WmSession *session)
{
  WmVisit *visit = wm_session_get_visit (session);
  WmTrade *trade = wm_session_get_trade (session);
  WmPiece *piece = wm_session_get_piece (session);
  WmArchive *archive = wm_session_get_archive (session);
  g_autoptr (WmOutlook) outlook = NULL;
  g_autoptr (WmPerson) owner = NULL;
  g_autoptr (WmLanguage) language = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *reason = NULL;

  if (visit == NULL || trade == NULL || wm_session_is_read_only (session))
    return;
  outlook = wm_outlook_load (archive, trade, wm_session_get_visit_id (session),
                             wm_wear_today (), &error);
  if (outlook == NULL)
    {
      wm_session_toast_error (session, error);
      return;
    }
  if (!outlook->has_next)
    return;
  if (!wm_id_is_none (&piece->owner_id))
    owner = wm_archive_get (archive, WM_KIND_PERSON, &piece->owner_id, NULL);
  language = wm_language_new (owner != NULL ? owner->language : NULL);
  reason = wm_outlook_sentence (outlook, language);
  wm_session_change (session, N_ ("Next check"), visit, "next_check_on", outlook->due_on,
                     "next_check_reason", reason, NULL);
}
