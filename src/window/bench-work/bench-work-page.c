/* bench-work-page.c: what is done about each finding, by whom, for how much
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/bench-work/bench-work-page.h"

#include <adwaita.h>
#include <glib/gi18n.h>

#include "reckon/severity.h"
#include "report/visit-data.h"
#include "window/action-table.h"
#include "window/bench-work/remedy-card.h"
#include "window/columns.h"
#include "window/form/form-value.h"
#include "window/labels.h"
#include "window/record-box.h"
#include "window/resource.h"
#include "window/template.h"

struct _WmBenchWorkPage
{
  GtkWidget parent_instance;

  GtkStack *stack;
  AdwStatusPage *empty;
  GtkLabel *count;
  GtkBox *cards;
  GtkBox *sums;
  GtkLabel *limit;

  WmSession *session;
  WmVisitData *data; /* during a showing only */
};

/* What all remedies of the visit come to. */
typedef struct
{
  guint n, n_done;
  gint64 agreed_minor, open_minor, declined_minor;
  gint64 minutes;
} Sums;

static void page_iface_init (WmMomentPageInterface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (WmBenchWorkPage, wm_bench_work_page, GTK_TYPE_WIDGET,
                               G_IMPLEMENT_INTERFACE (WM_TYPE_MOMENT_PAGE,
                                                      page_iface_init))

/* ---- sums ------------------------------------------------------------------------- */

static Sums
add_up (GPtrArray *remedies)
{
  Sums sums = { 0 };

  for (guint i = 0; i < remedies->len; i++)
    {
      WmRemedy *remedy = remedies->pdata[i];
      gint64 price = remedy->price_minor == WM_UNKNOWN ? 0 : remedy->price_minor;

      sums.n++;
      sums.n_done += remedy->done_at_s != WM_UNKNOWN;
      if (g_strcmp0 (remedy->answer, "declined") == 0)
        {
          sums.declined_minor += price;
          continue;
        }
      sums.minutes += remedy->minutes == WM_UNKNOWN ? 0 : remedy->minutes;
      if (g_strcmp0 (remedy->answer, "agreed") == 0)
        sums.agreed_minor += price;
      else
        sums.open_minor += price;
    }

  return sums;
}

static void
add_sum (WmBenchWorkPage *self, const char *title, char *value)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *name = gtk_label_new (title);
  GtkWidget *figure = gtk_label_new (value);

  gtk_label_set_xalign (GTK_LABEL (name), 0);
  gtk_widget_set_hexpand (name, TRUE);
  gtk_widget_add_css_class (name, "dim-label");
  gtk_widget_add_css_class (figure, "row-title");
  gtk_box_append (GTK_BOX (line), name);
  gtk_box_append (GTK_BOX (line), figure);
  gtk_widget_add_css_class (line, "card-line");
  if (gtk_widget_get_first_child (GTK_WIDGET (self->sums)) != NULL)
    gtk_box_append (self->sums, gtk_separator_new (GTK_ORIENTATION_HORIZONTAL));
  gtk_box_append (self->sums, line);
  g_free (value);
}

static void
show_sums (WmBenchWorkPage *self, WmVisitData *data)
{
  Sums sums = add_up (data->remedies);
  g_autofree char *currency = wm_form_currency (self->session);
  g_autofree char *done = g_strdup_printf (_ ("%u of %u done"), sums.n_done, sums.n);
  g_autofree char *limit = NULL, *warning = NULL;
  gint64 most = data->visit->price_limit_minor;
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->sums))) != NULL)
    gtk_box_remove (self->sums, child);
  add_sum (self, _ ("Agreed"), wm_label_money (sums.agreed_minor, currency));
  add_sum (self, _ ("Not answered yet"), wm_label_money (sums.open_minor, currency));
  if (sums.declined_minor > 0)
    add_sum (self, _ ("Declined"), wm_label_money (sums.declined_minor, currency));
  if (sums.minutes > 0)
    add_sum (self, _ ("Time"),
             g_strdup_printf (ngettext ("%d minute", "%d minutes", (int)sums.minutes),
                              (int)sums.minutes));
  gtk_label_set_label (self->count, sums.n > 0 ? done : "");

  if (most != WM_UNKNOWN && sums.agreed_minor + sums.open_minor > most)
    {
      limit = wm_label_money (most, currency);
      warning = g_strdup_printf (_ ("Over the owner's limit of %s: ask before going on."),
                                 limit);
    }
  gtk_label_set_label (self->limit, warning == NULL ? "" : warning);
  gtk_widget_set_visible (GTK_WIDGET (self->limit), warning != NULL);
}

/* ---- cards ----------------------------------------------------------------------------
 */

static GtkWidget *
make_card (gpointer record, gpointer user_data)
{
  return wm_remedy_card_new (WM_BENCH_WORK_PAGE (user_data)->session);
}

static void
show_card (GtkWidget *child, gpointer record, gpointer user_data)
{
  WmVisitData *data = WM_BENCH_WORK_PAGE (user_data)->data;

  for (guint i = 0; i < data->findings->len; i++)
    {
      WmFinding *finding = data->findings->pdata[i];

      if (finding->check == record)
        wm_remedy_card_show (WM_REMEDY_CARD (child), finding);
    }
}

static gboolean
is_open (WmVisitData *data)
{
  return wm_visit_data_count (data, WM_SEVERITY_NOT_LOOKED_AT) > 0;
}

static void
show_visit (WmMomentPage *page, WmSession *session)
{
  WmBenchWorkPage *self = WM_BENCH_WORK_PAGE (page);
  const WmId *visit_id = wm_session_get_visit_id (session);
  g_autoptr (WmVisitData) data = NULL;
  g_autoptr (GPtrArray) checks = g_ptr_array_new ();

  g_set_object (&self->session, session);
  if (visit_id == NULL)
    return;
  data = wm_visit_data_load (wm_session_get_archive (session),
                             wm_session_get_trade (session), visit_id, NULL);
  if (data == NULL)
    return;

  self->data = data;
  for (guint i = 0; i < data->findings->len; i++)
    g_ptr_array_add (checks, ((WmFinding *)data->findings->pdata[i])->check);
  wm_record_box_show (self->cards, checks, make_card, show_card, self);
  show_sums (self, data);
  self->data = NULL;

  adw_status_page_set_title (self->empty, is_open (data) ? _ ("No findings so far")
                                                         : _ ("No findings"));
  adw_status_page_set_description (
      self->empty, is_open (data)
                       ? _ ("Some checks are not looked at yet. Findings appear here.")
                       : _ ("The piece can go straight to hand-back."));
  gtk_stack_set_visible_child_name (self->stack, checks->len > 0 ? "cards" : "empty");
}

static void
leave (WmMomentPage *page)
{
  WmBenchWorkPage *self = WM_BENCH_WORK_PAGE (page);

  for (GtkWidget *card = gtk_widget_get_first_child (GTK_WIDGET (self->cards));
       card != NULL; card = gtk_widget_get_next_sibling (card))
    wm_remedy_card_leave (WM_REMEDY_CARD (card));
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
to_proof_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  wm_session_move_on (WM_BENCH_WORK_PAGE (widget)->session, WM_MOMENT_PROOF);
}

static void
to_hand_back_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  wm_session_move_on (WM_BENCH_WORK_PAGE (widget)->session, WM_MOMENT_HAND_BACK);
}

static void
wm_bench_work_page_dispose (GObject *object)
{
  WmBenchWorkPage *self = WM_BENCH_WORK_PAGE (object);

  wm_template_dispose (GTK_WIDGET (self), WM_TYPE_BENCH_WORK_PAGE);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (wm_bench_work_page_parent_class)->dispose (object);
}

static void
wm_bench_work_page_class_init (WmBenchWorkPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_bench_work_page_dispose;

  g_type_ensure (WM_TYPE_COLUMNS);
  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "bench-work-page.ui");
  gtk_widget_class_bind_template_child (widget_class, WmBenchWorkPage, stack);
  gtk_widget_class_bind_template_child (widget_class, WmBenchWorkPage, empty);
  gtk_widget_class_bind_template_child (widget_class, WmBenchWorkPage, count);
  gtk_widget_class_bind_template_child (widget_class, WmBenchWorkPage, cards);
  gtk_widget_class_bind_template_child (widget_class, WmBenchWorkPage, sums);
  gtk_widget_class_bind_template_child (widget_class, WmBenchWorkPage, limit);
  gtk_widget_class_install_action (widget_class, "work.to-proof", NULL, to_proof_action);
  gtk_widget_class_install_action (widget_class, "work.to-hand-back", NULL,
                                   to_hand_back_action);
}

static void
wm_bench_work_page_init (WmBenchWorkPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  wm_action_add_keys (GTK_WIDGET (self), WM_PLACE_WORK);
}
