/* hand-back-page.c: the report, the next check, and the piece goes home
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/hand-back/hand-back-page.h"

#include <glib/gi18n.h>

#include "report/visit-data.h"
#include "window/action-table.h"
#include "window/columns.h"
#include "window/form/form-field.h"
#include "window/hand-back/report-view.h"
#include "window/labels.h"
#include "window/resource.h"
#include "window/template.h"
#include "window/wear/next-check-card.h"
#include "window/wear/wear-list.h"

#define N_FIELDS 4
#define PLOT_HEIGHT 168 /* view px: beside a page of the report */

struct _WmHandBackPage
{
  GtkWidget parent_instance;

  WmReportView *report;
  WmFormField *mass_in;
  WmFormField *mass_out;
  GtkLabel *difference;
  WmFormField *next_on;
  WmFormField *next_reason;
  WmNextCheckCard *suggestion;
  GtkBox *wear;
  GtkLabel *hints;
  GtkLabel *state;
  GtkWidget *give_back;
  GtkWidget *open_again;

  WmSession *session;
};

static void page_iface_init (WmMomentPageInterface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (WmHandBackPage, wm_hand_back_page, GTK_TYPE_WIDGET,
                               G_IMPLEMENT_INTERFACE (WM_TYPE_MOMENT_PAGE,
                                                      page_iface_init))

static void
list_fields (WmHandBackPage *self, WmFormField *fields[N_FIELDS])
{
  fields[0] = self->mass_in;
  fields[1] = self->mass_out;
  fields[2] = self->next_on;
  fields[3] = self->next_reason;
}

/* ---- weight ---------------------------------------------------------------------------
 */

static void
show_difference (WmHandBackPage *self, WmVisit *visit)
{
  gint64 difference;
  g_autofree char *amount = NULL, *text = NULL;

  gtk_widget_set_visible (GTK_WIDGET (self->difference), FALSE);
  if (visit->mass_in_mg == WM_UNKNOWN || visit->mass_out_mg == WM_UNKNOWN)
    return;

  difference = visit->mass_out_mg - visit->mass_in_mg;
  amount = wm_label_mass (ABS (difference));
  if (difference == 0)
    text = g_strdup (_ ("The same as on arrival."));
  else
    text =
        g_strdup_printf (difference < 0 ? _ ("%s less than on arrival: tell the customer"
                                             " why.")
                                        : _ ("%s more than on arrival."),
                         amount);
  gtk_label_set_label (self->difference, text);
  gtk_widget_set_visible (GTK_WIDGET (self->difference), TRUE);
}

/* ---- next check
 * ------------------------------------------------------------------------- */

/* The rule of report/outlook.h; without it the page works as well. */
static void
show_outlook (WmHandBackPage *self)
{
  WmTrade *trade = wm_session_get_trade (self->session);
  const WmId *visit_id = wm_session_get_visit_id (self->session);
  g_autoptr (WmOutlook) outlook =
      trade != NULL && visit_id != NULL ? wm_outlook_load (
          wm_session_get_archive (self->session), trade, visit_id, wm_wear_today (), NULL)
                                        : NULL;

  wm_next_check_card_show (self->suggestion, self->session, outlook);
  gtk_widget_set_visible (GTK_WIDGET (self->wear), outlook != NULL);
  if (outlook != NULL)
    wm_wear_list_fill (self->wear, outlook, trade, PLOT_HEIGHT, NULL);
}

static void
take_date_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  WmHandBackPage *self = WM_HAND_BACK_PAGE (widget);

  if (self->session != NULL)
    wm_next_check_take (self->session);
}

/* ---- state
 * --------------------------------------------------------------------------------- */

static void
add_hint (GString *hints, guint n, const char *one, const char *many)
{
  if (n == 0)
    return;
  if (hints->len > 0)
    g_string_append_c (hints, '\n');
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
  g_string_append_printf (hints, n == 1 ? one : many, n);
#pragma GCC diagnostic pop
}

/* What would stand open on the report; nothing forbids handing the piece back. */
static void
show_hints (WmHandBackPage *self, WmVisitData *data)
{
  g_autoptr (GString) hints = g_string_new (NULL);
  guint n_open = wm_visit_data_count (data, WM_SEVERITY_NOT_LOOKED_AT), n_unproved = 0;

  for (guint i = 0; i < data->findings->len; i++)
    {
      WmCheck *check = ((WmFinding *)data->findings->pdata[i])->check;

      n_unproved += check->after_severity == WM_SEVERITY_NOT_LOOKED_AT;
    }
  add_hint (hints, n_open, _ ("%u check is not looked at."),
            _ ("%u checks are not looked at."));
  add_hint (hints, n_unproved, _ ("%u finding is not looked at again after the work."),
            _ ("%u findings are not looked at again after the work."));
  add_hint (hints, data->visit->next_check_on == NULL,
            _ ("There is no date yet for the"
               " next check."),
            "");
  gtk_label_set_label (self->hints, hints->str);
  gtk_widget_set_visible (GTK_WIDGET (self->hints),
                          hints->len > 0 && data->visit->handed_back_at_s == WM_UNKNOWN);
}

static void
show_state (WmHandBackPage *self, WmVisitData *data)
{
  WmVisit *visit = data->visit;
  gboolean back = visit->handed_back_at_s != WM_UNKNOWN;
  gboolean can_write = !wm_session_is_read_only (self->session);
  const char *by = wm_visit_data_get_name (data, &visit->handed_back_by);
  g_autofree char *day = wm_label_moment (visit->handed_back_at_s);
  g_autofree char *text = NULL;

  if (back && by != NULL)
    text = g_strdup_printf (_ ("Handed back %s by %s"), day, by);
  else if (back)
    text = g_strdup_printf (_ ("Handed back %s"), day);
  gtk_label_set_label (self->state, text == NULL ? "" : text);
  gtk_widget_set_visible (GTK_WIDGET (self->state), back);
  gtk_widget_set_visible (self->give_back, !back && can_write);
  gtk_widget_set_visible (self->open_again, back && can_write);
}

static void
show_visit (WmMomentPage *page, WmSession *session)
{
  WmHandBackPage *self = WM_HAND_BACK_PAGE (page);
  const WmId *visit_id = wm_session_get_visit_id (session);
  WmVisit *visit = wm_session_get_visit (session);
  WmFormField *fields[N_FIELDS];
  g_autoptr (WmVisitData) data = NULL;

  g_set_object (&self->session, session);
  list_fields (self, fields);
  for (int i = 0; i < N_FIELDS; i++)
    wm_form_field_bind (fields[i], session, visit);
  if (visit_id != NULL)
    data = wm_visit_data_load (wm_session_get_archive (session),
                               wm_session_get_trade (session), visit_id, NULL);
  if (data == NULL)
    return;

  show_difference (self, visit);
  show_outlook (self);
  show_hints (self, data);
  show_state (self, data);
  wm_report_view_show (self->report, session);
}

static void
leave (WmMomentPage *page)
{
  WmFormField *fields[N_FIELDS];

  list_fields (WM_HAND_BACK_PAGE (page), fields);
  for (int i = 0; i < N_FIELDS; i++)
    wm_form_field_leave (fields[i]);
}

static void
page_iface_init (WmMomentPageInterface *iface)
{
  iface->show_visit = show_visit;
  iface->leave = leave;
}

/* ---- overrides
 * ------------------------------------------------------------------------------- */

static void
set_handed_back (WmHandBackPage *self, gboolean back)
{
  WmVisit *visit = wm_session_get_visit (self->session);
  const WmId *by = wm_session_get_by (self->session);
  g_autoptr (WmVisit) copy = NULL;

  if (visit == NULL || wm_session_is_read_only (self->session)
      || (visit->handed_back_at_s != WM_UNKNOWN) == back)
    return;
  leave (WM_MOMENT_PAGE (self));
  copy = wm_session_copy (self->session, visit);
  copy->handed_back_at_s = back ? g_get_real_time () / G_USEC_PER_SEC : WM_UNKNOWN;
  copy->handed_back_by = back && by != NULL ? *by : WM_ID_NONE;
  wm_record_set_text (WM_RECORD (copy), "moment", WM_MOMENT_HAND_BACK);
  wm_session_keep (self->session,
                   back ? N_ ("Hand back") : N_ ("Not handed back after all"), copy);
}

static void
give_back_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  set_handed_back (WM_HAND_BACK_PAGE (widget), TRUE);
}

static void
open_again_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  set_handed_back (WM_HAND_BACK_PAGE (widget), FALSE);
}

static void
wm_hand_back_page_dispose (GObject *object)
{
  WmHandBackPage *self = WM_HAND_BACK_PAGE (object);

  wm_template_dispose (GTK_WIDGET (self), WM_TYPE_HAND_BACK_PAGE);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (wm_hand_back_page_parent_class)->dispose (object);
}

static void
wm_hand_back_page_class_init (WmHandBackPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_hand_back_page_dispose;

  g_type_ensure (WM_TYPE_COLUMNS);
  g_type_ensure (WM_TYPE_FORM_FIELD);
  g_type_ensure (WM_TYPE_NEXT_CHECK_CARD);
  g_type_ensure (WM_TYPE_REPORT_VIEW);
  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "hand-back-page.ui");
  gtk_widget_class_bind_template_child (widget_class, WmHandBackPage, report);
  gtk_widget_class_bind_template_child (widget_class, WmHandBackPage, mass_in);
  gtk_widget_class_bind_template_child (widget_class, WmHandBackPage, mass_out);
  gtk_widget_class_bind_template_child (widget_class, WmHandBackPage, difference);
  gtk_widget_class_bind_template_child (widget_class, WmHandBackPage, next_on);
  gtk_widget_class_bind_template_child (widget_class, WmHandBackPage, next_reason);
  gtk_widget_class_bind_template_child (widget_class, WmHandBackPage, suggestion);
  gtk_widget_class_bind_template_child (widget_class, WmHandBackPage, wear);
  gtk_widget_class_bind_template_child (widget_class, WmHandBackPage, hints);
  gtk_widget_class_bind_template_child (widget_class, WmHandBackPage, state);
  gtk_widget_class_bind_template_child (widget_class, WmHandBackPage, give_back);
  gtk_widget_class_bind_template_child (widget_class, WmHandBackPage, open_again);
  gtk_widget_class_install_action (widget_class, "hand-back.give-back", NULL,
                                   give_back_action);
  gtk_widget_class_install_action (widget_class, "hand-back.take-date", NULL,
                                   take_date_action);
  gtk_widget_class_install_action (widget_class, "hand-back.open-again", NULL,
                                   open_again_action);
}

static void
wm_hand_back_page_init (WmHandBackPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  wm_action_add_keys (GTK_WIDGET (self), WM_PLACE_HAND_BACK);
}
