/* quote-row-view.c: one remedy on the quote: time, metal, parts, price, answer
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/bench-work/quote-row-view.h"

#include <glib/gi18n.h>

#include "trade/trade.h"
#include "window/bench-work/shop-prices.h"
#include "window/form/form-choice.h"
#include "window/form/form-field.h"
#include "window/labels.h"
#include "window/record-box.h"
#include "window/resource.h"
#include "window/template.h"

struct _WmQuoteRowView
{
  GtkWidget parent_instance;

  GtkLabel *title;
  GtkLabel *sum;
  GtkLabel *lines;
  WmFormField *minutes;
  WmFormField *price;
  WmFormChoice *answer;
  GtkBox *materials;
  GtkWidget *add_metal;
  GtkWidget *add_part;
  GtkWidget *use_lines;

  WmSession *session;
  WmRemedy *remedy;
  gint64 lines_minor;
  guint n_materials;
};

G_DEFINE_FINAL_TYPE (WmQuoteRowView, wm_quote_row_view, GTK_TYPE_WIDGET)

/* ---- edits ------------------------------------------------------------------------- */

static void
add_material (WmQuoteRowView *self, gboolean is_metal)
{
  g_autoptr (WmMaterial) material = wm_material_new ();
  WmPiece *piece = wm_session_get_piece (self->session);
  WmEdit *edit = wm_session_begin (self->session, is_metal ? N_ ("Metal on the quote")
                                                           : N_ ("Part on the quote"));

  g_object_set (material, "remedy-id", wm_record_get_id (WM_RECORD (self->remedy)),
                "position", (gint64)self->n_materials, NULL);
  if (is_metal && piece != NULL && piece->metal != NULL)
    g_object_set (material, "metal", piece->metal, "gram-price-minor",
                  wm_shop_gram_price (self->session, piece->metal), NULL);
  else if (is_metal)
    wm_record_set_text (WM_RECORD (material), "metal", _ ("metal"));
  wm_session_put (self->session, edit, material);
  wm_session_commit (self->session, edit);
}

static void
on_add_metal (GtkButton *button, WmQuoteRowView *self)
{
  add_material (self, TRUE);
}

static void
on_add_part (GtkButton *button, WmQuoteRowView *self)
{
  add_material (self, FALSE);
}

static void
on_use_lines (GtkButton *button, WmQuoteRowView *self)
{
  wm_session_change (self->session, N_ ("Price from its lines"), self->remedy,
                     "price_minor", self->lines_minor, NULL);
}

/* What the customer answers to is a sum: from then on it stays, whatever rate or metal
 * price the shop has later. */
static gboolean
on_answer_chosen (WmFormChoice *choice, const char *key, WmQuoteRowView *self)
{
  if (key == NULL || self->remedy->price_minor != WM_UNKNOWN
      || self->lines_minor == WM_UNKNOWN)
    return FALSE;
  wm_session_change (self->session, N_ ("Customer's answer"), self->remedy, "answer", key,
                     "price_minor", self->lines_minor, NULL);
  return TRUE;
}

static void
on_remove_material (GtkButton *button, WmQuoteRowView *self)
{
  WmEdit *edit = wm_session_begin (self->session, N_ ("Remove from the quote"));

  wm_edit_remove (edit, g_object_get_data (G_OBJECT (button), "material"));
  wm_session_commit (self->session, edit);
}

/* Metal's own price goes with its mass and gram price, in the same edit. */
static void
on_keeping (WmFormField *field, WmRecord *copy, gpointer unused)
{
  WmMaterial *material = WM_MATERIAL (copy);

  if (material->metal != NULL)
    g_object_set (copy, "price-minor", wm_material_price (material), NULL);
}

/* ---- material lines ---------------------------------------------------------------- */

static const struct
{
  const char *title; /* N_() */
  const char *field;
  WmFormKind kind;
  gboolean of_metal, of_part;
} columns[] = {
  { N_ ("What"), "what", WM_FORM_TEXT, FALSE, TRUE },
  { N_ ("Metal"), "metal", WM_FORM_METAL, TRUE, FALSE },
  { N_ ("Weight of metal"), "mass_mg", WM_FORM_MASS, TRUE, FALSE },
  { N_ ("Price a gram"), "gram_price_minor", WM_FORM_MONEY, TRUE, FALSE },
  { N_ ("Price"), "price_minor", WM_FORM_MONEY, FALSE, TRUE },
};

static GtkWidget *
make_material (gpointer record, gpointer user_data)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  GtkWidget *remove = gtk_button_new_from_icon_name ("user-trash-symbolic");
  gboolean is_metal = ((WmMaterial *)record)->metal != NULL;

  gtk_widget_add_css_class (box, "form-row");
  for (guint i = 0; i < G_N_ELEMENTS (columns); i++)
    if (is_metal ? columns[i].of_metal : columns[i].of_part)
      {
        GtkWidget *field =
            g_object_new (WM_TYPE_FORM_FIELD, "title", _ (columns[i].title), "field",
                          columns[i].field, "kind", columns[i].kind, NULL);

        gtk_widget_set_hexpand (field, TRUE);
        g_signal_connect (field, "keeping", G_CALLBACK (on_keeping), NULL);
        gtk_box_append (GTK_BOX (box), field);
      }
  gtk_widget_add_css_class (remove, "flat");
  gtk_widget_set_valign (remove, GTK_ALIGN_CENTER);
  gtk_widget_set_margin_end (remove, 9);
  gtk_widget_set_tooltip_text (remove, _ ("Remove this line"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (remove), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Remove this line"), -1);
  g_signal_connect (remove, "clicked", G_CALLBACK (on_remove_material), user_data);
  gtk_box_append (GTK_BOX (box), remove);
  return box;
}

static void
show_material (GtkWidget *box, gpointer record, gpointer user_data)
{
  WmQuoteRowView *self = user_data;

  for (GtkWidget *child = gtk_widget_get_first_child (box); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (WM_IS_FORM_FIELD (child))
      wm_form_field_bind (WM_FORM_FIELD (child), self->session, record);
    else
      {
        g_object_set_data_full (G_OBJECT (child), "material", g_object_ref (record),
                                g_object_unref);
        gtk_widget_set_visible (child, !wm_session_is_read_only (self->session));
      }
}

/* ---- showing ----------------------------------------------------------------------- */

/* "35 min at 54.00 EUR an hour: 31.50 EUR · metal and parts: 16.02 EUR" */
static void
show_lines (WmQuoteRowView *self, const WmQuoteRow *row, const WmQuoteTerms *terms,
            const char *currency)
{
  g_autoptr (GString) text = g_string_new (NULL);

  if (row->lacks_rate)
    g_string_append (text, _ ("No hourly rate in the settings: the time has no price."));
  else if (row->remedy->minutes != WM_UNKNOWN)
    {
      g_autofree char *rate = wm_label_money (terms->rate_minor, currency);
      g_autofree char *labour = wm_label_money (row->labour_minor, currency);

      g_string_append_printf (text, _ ("%d min at %s an hour: %s"),
                              (int)row->remedy->minutes, rate, labour);
    }
  if (row->materials->len > 0)
    {
      g_autofree char *material = wm_label_money (row->material_minor, currency);

      g_string_append (text, text->len > 0 ? " · " : "");
      g_string_append_printf (text, _ ("metal and parts: %s"), material);
    }
  if (row->lacks_gram_price)
    g_string_append_printf (text, "%s%s", text->len > 0 ? " · " : "",
                            _ ("a line lacks its weight or price"));
  if (row->differs)
    {
      g_autofree char *lines = wm_label_money (row->lines_minor, currency);

      g_string_append (text, "\n");
      g_string_append_printf (
          text, _ ("The price was typed or agreed; its lines come to %s now."), lines);
    }
  gtk_label_set_label (self->lines, text->str);
  gtk_widget_set_visible (GTK_WIDGET (self->lines), text->len > 0);
}

void
wm_quote_row_view_show (WmQuoteRowView *self, const WmQuoteRow *row,
                        const WmQuoteTerms *terms)
{
  g_autofree char *currency = wm_form_currency (self->session);
  g_autofree char *sum = row->price_minor == WM_UNKNOWN
                             ? g_strdup (_ ("no price yet"))
                             : wm_label_money (row->price_minor, currency);
  gboolean can_write = !wm_session_is_read_only (self->session);

  g_set_object (&self->remedy, row->remedy);
  self->lines_minor = row->lines_minor;
  self->n_materials = row->materials->len;
  gtk_label_set_label (self->title, wm_trade_text (row->remedy->what));
  gtk_label_set_label (self->sum, sum);
  wm_form_field_bind (self->minutes, self->session, row->remedy);
  wm_form_field_bind (self->price, self->session, row->remedy);
  wm_form_choice_bind (self->answer, self->session, row->remedy);
  wm_record_box_show (self->materials, row->materials, make_material, show_material,
                      self);
  show_lines (self, row, terms, currency);
  gtk_widget_set_visible (self->use_lines, can_write && row->differs);
  gtk_widget_set_visible (self->add_metal, can_write);
  gtk_widget_set_visible (self->add_part, can_write);
}

void
wm_quote_row_view_leave (WmQuoteRowView *self)
{
  wm_form_field_leave (self->minutes);
  wm_form_field_leave (self->price);
  for (GtkWidget *box = gtk_widget_get_first_child (GTK_WIDGET (self->materials));
       box != NULL; box = gtk_widget_get_next_sibling (box))
    for (GtkWidget *child = gtk_widget_get_first_child (box); child != NULL;
         child = gtk_widget_get_next_sibling (child))
      if (WM_IS_FORM_FIELD (child))
        wm_form_field_leave (WM_FORM_FIELD (child));
}

/* ---- overrides --------------------------------------------------------------------- */

static void
wm_quote_row_view_dispose (GObject *object)
{
  WmQuoteRowView *self = WM_QUOTE_ROW_VIEW (object);

  wm_template_dispose (GTK_WIDGET (self), WM_TYPE_QUOTE_ROW_VIEW);
  g_clear_object (&self->remedy);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (wm_quote_row_view_parent_class)->dispose (object);
}

static void
wm_quote_row_view_class_init (WmQuoteRowViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_quote_row_view_dispose;

  g_type_ensure (WM_TYPE_FORM_CHOICE);
  g_type_ensure (WM_TYPE_FORM_FIELD);
  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "quote-row-view.ui");
  gtk_widget_class_bind_template_child (widget_class, WmQuoteRowView, title);
  gtk_widget_class_bind_template_child (widget_class, WmQuoteRowView, sum);
  gtk_widget_class_bind_template_child (widget_class, WmQuoteRowView, lines);
  gtk_widget_class_bind_template_child (widget_class, WmQuoteRowView, minutes);
  gtk_widget_class_bind_template_child (widget_class, WmQuoteRowView, price);
  gtk_widget_class_bind_template_child (widget_class, WmQuoteRowView, answer);
  gtk_widget_class_bind_template_child (widget_class, WmQuoteRowView, materials);
  gtk_widget_class_bind_template_child (widget_class, WmQuoteRowView, add_metal);
  gtk_widget_class_bind_template_child (widget_class, WmQuoteRowView, add_part);
  gtk_widget_class_bind_template_child (widget_class, WmQuoteRowView, use_lines);
  gtk_widget_class_bind_template_callback (widget_class, on_add_metal);
  gtk_widget_class_bind_template_callback (widget_class, on_add_part);
  gtk_widget_class_bind_template_callback (widget_class, on_use_lines);
  gtk_widget_class_bind_template_callback (widget_class, on_answer_chosen);
}

static void
wm_quote_row_view_init (WmQuoteRowView *self)
{
  static const char *const keys[] = { "agreed", "declined" };
  const char *names[] = { _ ("agreed"), _ ("declined") };

  gtk_widget_init_template (GTK_WIDGET (self));
  wm_form_choice_set_choices (self->answer, keys, names, G_N_ELEMENTS (keys));
}

GtkWidget *
wm_quote_row_view_new (WmSession *session)
{
  WmQuoteRowView *self = g_object_new (WM_TYPE_QUOTE_ROW_VIEW, NULL);

  self->session = g_object_ref (session);
  return GTK_WIDGET (self);
}
