/* quote-pane.c: the quote: a row a remedy, the customer's answers, the sums
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/bench-work/quote-pane.h"

#include <glib/gi18n.h>

#include "trade/trade.h"
#include "window/bench-work/quote-row-view.h"
#include "window/form/form-value.h"
#include "window/labels.h"
#include "window/record-box.h"
#include "window/resource.h"

struct _WmQuotePane
{
  AdwBin parent_instance;

  GtkBox *rows;
  GtkBox *sums;
  GtkLabel *warning;
  GtkLabel *left_undone;
  GtkWidget *none;

  WmSession *session;
  WmVisitQuote *quote;
};

G_DEFINE_FINAL_TYPE (WmQuotePane, wm_quote_pane, ADW_TYPE_BIN)

static GtkWidget *
make_row (gpointer record, gpointer user_data)
{
  return wm_quote_row_view_new (((WmQuotePane *)user_data)->session);
}

static void
show_row (GtkWidget *child, gpointer record, gpointer user_data)
{
  WmQuotePane *self = user_data;

  wm_quote_row_view_show (WM_QUOTE_ROW_VIEW (child),
                          wm_visit_quote_find (self->quote, wm_record_get_id (record)),
                          &self->quote->terms);
}

static void
add_sum (WmQuotePane *self, const char *title, gint64 minor, gboolean strong)
{
  g_autofree char *currency = wm_form_currency (self->session);
  g_autofree char *value = wm_label_money (minor, currency);
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *name = gtk_label_new (title);
  GtkWidget *figure = gtk_label_new (value);

  gtk_label_set_xalign (GTK_LABEL (name), 0);
  gtk_widget_set_hexpand (name, TRUE);
  gtk_widget_add_css_class (name, strong ? "row-title" : "dim-label");
  gtk_widget_add_css_class (figure, "row-title");
  if (strong)
    {
      gtk_widget_add_css_class (name, "finding");
      gtk_widget_add_css_class (figure, "finding");
    }
  gtk_box_append (GTK_BOX (line), name);
  gtk_box_append (GTK_BOX (line), figure);
  gtk_widget_add_css_class (line, "card-line");
  gtk_box_append (self->sums, line);
}

static void
show_sums (WmQuotePane *self)
{
  const WmVisitQuote *quote = self->quote;
  g_autofree char *tax =
      g_strdup_printf (_ ("Tax, %g %%"), (double)quote->terms.tax_bp / 100.0);
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->sums))) != NULL)
    gtk_box_remove (self->sums, child);
  if (quote->is_refused)
    return;
  add_sum (self, _ ("Agreed"), quote->agreed.net_minor, FALSE);
  add_sum (self, _ ("Not answered yet"), quote->open_minor, FALSE);
  add_sum (self, _ ("Declined, not counted"), quote->declined_minor, FALSE);
  if (quote->terms.tax_bp > 0)
    add_sum (self, tax, quote->all.tax_minor, FALSE);
  add_sum (self, _ ("Total, all that is not declined"), quote->all.total_minor, TRUE);
  add_sum (self, _ ("Total agreed so far"), quote->agreed.total_minor, TRUE);
}

static void
show_warning (WmQuotePane *self)
{
  const WmVisitQuote *quote = self->quote;
  g_autoptr (GString) text = g_string_new (NULL);

  if (quote->is_refused)
    g_string_append (text,
                     _ ("A number is too large to be reckoned with: look at minutes, "
                        "weights and prices."));
  if (quote->is_over_limit)
    {
      g_autofree char *currency = wm_form_currency (self->session);
      g_autofree char *limit = wm_label_money (quote->terms.limit_minor, currency);

      g_string_append_printf (
          text, _ ("Over the owner's limit of %s: ask before going on."), limit);
    }
  if (quote->n_unpriced > 0)
    {
      if (text->len > 0)
        g_string_append_c (text, '\n');
      g_string_append_printf (text,
                              ngettext ("%u line has no price yet.",
                                        "%u lines have no price yet.", quote->n_unpriced),
                              quote->n_unpriced);
    }
  gtk_label_set_label (self->warning, text->str);
  gtk_widget_set_visible (GTK_WIDGET (self->warning), text->len > 0);
}

static void
show_left_undone (WmQuotePane *self)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < self->quote->rows->len; i++)
    {
      const WmQuoteRow *row = self->quote->rows->pdata[i];

      if (!row->is_declined)
        continue;
      g_string_append_printf (text, "\n%s", wm_trade_text (row->remedy->what));
      if (row->check != NULL && row->check->if_left != NULL)
        g_string_append_printf (text, _ (": if it is left: %s"),
                                wm_trade_text (row->check->if_left));
    }
  if (text->len > 0)
    g_string_prepend (text, _ ("What we do not do:"));
  gtk_label_set_label (self->left_undone, text->str);
  gtk_widget_set_visible (GTK_WIDGET (self->left_undone), text->len > 0);
}

void
wm_quote_pane_show (WmQuotePane *self, WmSession *session, WmVisitQuote *quote)
{
  g_autoptr (GPtrArray) remedies = g_ptr_array_new ();

  g_set_object (&self->session, session);
  g_clear_pointer (&self->quote, wm_visit_quote_free);
  self->quote = quote;
  for (guint i = 0; i < quote->rows->len; i++)
    g_ptr_array_add (remedies, ((WmQuoteRow *)quote->rows->pdata[i])->remedy);
  wm_record_box_show (self->rows, remedies, make_row, show_row, self);
  gtk_widget_set_visible (self->none, remedies->len == 0);
  show_sums (self);
  show_warning (self);
  show_left_undone (self);
}

void
wm_quote_pane_leave (WmQuotePane *self)
{
  for (GtkWidget *row = gtk_widget_get_first_child (GTK_WIDGET (self->rows)); row != NULL;
       row = gtk_widget_get_next_sibling (row))
    wm_quote_row_view_leave (WM_QUOTE_ROW_VIEW (row));
}

static void
wm_quote_pane_dispose (GObject *object)
{
  WmQuotePane *self = WM_QUOTE_PANE (object);

  adw_bin_set_child (ADW_BIN (self), NULL);
  gtk_widget_dispose_template (GTK_WIDGET (self), WM_TYPE_QUOTE_PANE);
  g_clear_pointer (&self->quote, wm_visit_quote_free);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (wm_quote_pane_parent_class)->dispose (object);
}

static void
wm_quote_pane_class_init (WmQuotePaneClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_quote_pane_dispose;

  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "quote-pane.ui");
  gtk_widget_class_bind_template_child (widget_class, WmQuotePane, rows);
  gtk_widget_class_bind_template_child (widget_class, WmQuotePane, sums);
  gtk_widget_class_bind_template_child (widget_class, WmQuotePane, warning);
  gtk_widget_class_bind_template_child (widget_class, WmQuotePane, left_undone);
  gtk_widget_class_bind_template_child (widget_class, WmQuotePane, none);
}

static void
wm_quote_pane_init (WmQuotePane *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
