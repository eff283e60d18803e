/* bench-work-page.c: what is done about each finding, by whom, for how much
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/bench-work/bench-print.h"
#include "window/bench-work/bench-work-page.h"

#include <adwaita.h>
#include <glib/gi18n.h>

#include "reckon/severity.h"
#include "report/visit-data.h"
#include "window/action-table.h"
#include "window/bench-work/plan-pane.h"
#include "window/bench-work/quote-pane.h"
#include "window/bench-work/remedy-card.h"
#include "window/bench-work/shop-prices.h"
#include "window/columns.h"
#include "window/form/form-value.h"
#include "window/glyph.h"
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
  GtkListBox *parts;
  GtkBox *in_plan;
  GtkStack *part;
  WmPlanPane *plan;
  WmQuotePane *quote;

  WmSession *session;
  WmVisitData *data;    /* during a showing only */
  WmBenchPlan *showing; /* likewise */
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
        wm_remedy_card_show (WM_REMEDY_CARD (child), finding,
                             WM_BENCH_WORK_PAGE (user_data)->showing);
    }
}

/* ---- side list --------------------------------------------------------------------- */

static const struct
{
  const char *name;
  const char *title; /* N_() */
  const char *icon;
} part_rows[] = {
  { "remedies", N_ ("Remedies"), "wm-remedy-symbolic" },
  { "plan", N_ ("Heat plan"), "wm-heat-plan-symbolic" },
  { "quote", N_ ("Quote"), "wm-quote-symbolic" },
};

static void
add_parts (WmBenchWorkPage *self)
{
  for (guint i = 0; i < G_N_ELEMENTS (part_rows); i++)
    {
      GtkWidget *row = gtk_list_box_row_new ();
      GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

      gtk_box_append (GTK_BOX (line), gtk_image_new_from_icon_name (part_rows[i].icon));
      gtk_box_append (GTK_BOX (line), gtk_label_new (_ (part_rows[i].title)));
      gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), line);
      gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                      _ (part_rows[i].title), -1);
      gtk_list_box_append (self->parts, row);
    }
  gtk_list_box_select_row (self->parts, gtk_list_box_get_row_at_index (self->parts, 0));
}

static void
on_part_selected (GtkListBox *list, GtkListBoxRow *row, WmBenchWorkPage *self)
{
  if (row != NULL)
    gtk_stack_set_visible_child_name (self->part,
                                      part_rows[gtk_list_box_row_get_index (row)].name);
}

static void
show_part_action (GtkWidget *widget, const char *name, GVariant *part)
{
  WmBenchWorkPage *self = WM_BENCH_WORK_PAGE (widget);

  for (guint i = 0; i < G_N_ELEMENTS (part_rows); i++)
    if (g_str_equal (part_rows[i].name, g_variant_get_string (part, NULL)))
      gtk_list_box_select_row (self->parts,
                               gtk_list_box_get_row_at_index (self->parts, (int)i));
}

/* The finding's card, under Remedies. */
static void
on_finding_clicked (GtkButton *button, WmBenchWorkPage *self)
{
  guint index = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "index"));
  GtkWidget *card = gtk_widget_get_first_child (GTK_WIDGET (self->cards));

  gtk_list_box_select_row (self->parts, gtk_list_box_get_row_at_index (self->parts, 0));
  while (card != NULL && index-- > 0)
    card = gtk_widget_get_next_sibling (card);
  if (card != NULL)
    gtk_widget_child_focus (card, GTK_DIR_TAB_FORWARD);
}

static void
show_in_plan (WmBenchWorkPage *self, WmVisitData *data)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->in_plan))) != NULL)
    gtk_box_remove (self->in_plan, child);
  for (guint i = 0; i < data->findings->len; i++)
    {
      WmCheck *check = ((WmFinding *)data->findings->pdata[i])->check;
      const char *title = wm_trade_text (check->title);
      GtkWidget *button = gtk_button_new ();
      GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 9);
      GtkWidget *glyph = g_object_new (WM_TYPE_GLYPH, NULL);
      GtkWidget *label = gtk_label_new (title);

      wm_glyph_set_radius (WM_GLYPH (glyph), 9);
      wm_glyph_set_severity (WM_GLYPH (glyph), check->severity);
      wm_glyph_set_number (WM_GLYPH (glyph),
                           check->number == WM_UNKNOWN ? 0 : (int)check->number);
      gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
      gtk_box_append (GTK_BOX (line), glyph);
      gtk_box_append (GTK_BOX (line), label);
      gtk_button_set_child (GTK_BUTTON (button), line);
      gtk_widget_add_css_class (button, "flat");
      gtk_widget_add_css_class (button, "plan-finding");
      gtk_widget_set_tooltip_text (button, title);
      g_object_set_data (G_OBJECT (button), "index", GUINT_TO_POINTER (i));
      g_signal_connect (button, "clicked", G_CALLBACK (on_finding_clicked), self);
      gtk_accessible_update_property (GTK_ACCESSIBLE (button),
                                      GTK_ACCESSIBLE_PROPERTY_LABEL, title, -1);
      gtk_box_append (self->in_plan, button);
    }
}

static WmVisitQuote *
make_quote (WmBenchWorkPage *self, WmVisitData *data)
{
  g_autoptr (GPtrArray) materials =
      wm_archive_list_of_visit (wm_session_get_archive (self->session), WM_KIND_MATERIAL,
                                wm_session_get_visit_id (self->session), NULL);
  g_autoptr (GPtrArray) none = g_ptr_array_new ();
  WmQuoteTerms terms;

  wm_shop_terms (self->session, &terms);
  return wm_visit_quote_new (&terms, data->checks, data->remedies,
                             materials != NULL ? materials : none);
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
  self->showing = wm_bench_plan_new (data->trade, data->piece, data->stones, data->checks,
                                     data->measurements, data->remedies);
  for (guint i = 0; i < data->findings->len; i++)
    g_ptr_array_add (checks, ((WmFinding *)data->findings->pdata[i])->check);
  wm_record_box_show (self->cards, checks, make_card, show_card, self);
  show_sums (self, data);
  wm_plan_pane_show (self->plan, session, g_steal_pointer (&self->showing));
  wm_quote_pane_show (self->quote, session, make_quote (self, data));
  show_in_plan (self, data);
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
  wm_plan_pane_leave (self->plan);
  wm_quote_pane_leave (self->quote);
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
print_action (GtkWidget *widget, const char *name, GVariant *part)
{
  WmSession *session = WM_BENCH_WORK_PAGE (widget)->session;
  GtkWindow *parent = GTK_WINDOW (gtk_widget_get_root (widget));

  if (session == NULL)
    return;
  if (g_str_equal (g_variant_get_string (part, NULL), "quote"))
    wm_bench_print_quote (parent, session);
  else
    wm_bench_print_plan (parent, session);
}

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
  g_type_ensure (WM_TYPE_PLAN_PANE);
  g_type_ensure (WM_TYPE_QUOTE_PANE);
  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "bench-work-page.ui");
  gtk_widget_class_bind_template_child (widget_class, WmBenchWorkPage, stack);
  gtk_widget_class_bind_template_child (widget_class, WmBenchWorkPage, empty);
  gtk_widget_class_bind_template_child (widget_class, WmBenchWorkPage, count);
  gtk_widget_class_bind_template_child (widget_class, WmBenchWorkPage, cards);
  gtk_widget_class_bind_template_child (widget_class, WmBenchWorkPage, sums);
  gtk_widget_class_bind_template_child (widget_class, WmBenchWorkPage, limit);
  gtk_widget_class_bind_template_child (widget_class, WmBenchWorkPage, parts);
  gtk_widget_class_bind_template_child (widget_class, WmBenchWorkPage, in_plan);
  gtk_widget_class_bind_template_child (widget_class, WmBenchWorkPage, part);
  gtk_widget_class_bind_template_child (widget_class, WmBenchWorkPage, plan);
  gtk_widget_class_bind_template_child (widget_class, WmBenchWorkPage, quote);
  gtk_widget_class_bind_template_callback (widget_class, on_part_selected);
  gtk_widget_class_install_action (widget_class, "work.show", "s", show_part_action);
  gtk_widget_class_install_action (widget_class, "work.print", "s", print_action);
  gtk_widget_class_install_action (widget_class, "work.to-proof", NULL, to_proof_action);
  gtk_widget_class_install_action (widget_class, "work.to-hand-back", NULL,
                                   to_hand_back_action);
}

static void
wm_bench_work_page_init (WmBenchWorkPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  add_parts (self);
  wm_action_add_keys (GTK_WIDGET (self), WM_PLACE_WORK);
}
