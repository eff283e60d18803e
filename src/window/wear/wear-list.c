/* wear-list.c: every measured part of a piece and how it wears
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/wear/wear-list.h"

#include <glib/gi18n.h>

#include "window/wear/wear-plot-view.h"

static GtkWidget *
add_label (GtkWidget *box, const char *text, const char *css)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  if (css != NULL)
    gtk_widget_add_css_class (label, css);
  gtk_box_append (GTK_BOX (box), label);
  return label;
}

/* "Least allowed: where the levels of the checklist say do not wear (our own proposal)"
 */
static char *
describe_least (const WmWear *wear, WmTrade *trade)
{
  g_autofree char *sources = wm_trade_describe_sources (trade, wear->sources, NULL);

  if (!wear->has_forecast)
    return g_strdup_printf (_ ("Least allowed: where the checklist says “do not wear”"
                               " (%s)."),
                            sources);
  return g_strdup_printf (
      _ ("Least allowed: where the checklist says “do not wear” (%s). "
         "Band: 95 %% to one side; readings with twice their standard "
         "uncertainty."),
      sources);
}

static void
add_wear (GtkBox *box, const WmWear *wear, WmTrade *trade, WmLanguage *language,
          int plot_height)
{
  GtkWidget *card = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  g_autofree char *sentence = wm_wear_sentence (wear, language);
  g_autofree char *since = wm_wear_since_last (wear, language);
  g_autofree char *least = describe_least (wear, trade);
  g_autofree char *words =
      g_strdup_printf ("%s: %s", wm_trade_text (wear->title), sentence);
  GtkWidget *plot = wm_wear_plot_view_new (wear, plot_height, words);

  gtk_widget_add_css_class (card, "card-list");
  gtk_widget_add_css_class (card, "wear-card");
  add_label (card, wm_trade_text (wear->title), "row-title");
  gtk_box_append (GTK_BOX (card), plot);
  if (since != NULL)
    add_label (card, since, NULL);
  add_label (card, sentence, NULL);
  if (wear->is_renewed)
    add_label (card, _ ("Mended in this visit: what is drawn is how it was until then."),
               "second-line");
  add_label (card, least, "second-line");
  gtk_box_append (box, card);
}

void
wm_wear_list_fill (GtkBox *box, const WmOutlook *outlook, WmTrade *trade, int plot_height,
                   const WmId *first)
{
  const WmWear *top = first != NULL ? wm_outlook_find (outlook, first) : NULL;
  g_autoptr (WmLanguage) language = wm_language_new (g_get_language_names ()[0]);
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (box))) != NULL)
    gtk_box_remove (box, child);
  if (top != NULL)
    add_wear (box, top, trade, language, plot_height);
  for (guint i = 0; i < outlook->wears->len; i++)
    if (outlook->wears->pdata[i] != top)
      add_wear (box, outlook->wears->pdata[i], trade, language, plot_height);
  if (outlook->wears->len == 0)
    add_label (GTK_WIDGET (box),
               _ ("Nothing was measured yet that gets thinner. Measure the same place at "
                  "each visit, and its wear over the years is shown here."),
               "empty-line");
}

long
wm_wear_today (void)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  WmDate date = { g_date_time_get_year (now), g_date_time_get_month (now),
                  g_date_time_get_day_of_month (now) };
  long day = 0;

  wm_day_from_date (date, &day);
  return day;
}
