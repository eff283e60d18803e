/* finding-head.c: a finding in one line: glyph and number, what it is, how bad
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/finding-head.h"

#include <glib/gi18n.h>

#include "photo/mark-look.h"
#include "trade/trade.h"
#include "window/glyph.h"
#include "window/resource.h"
#include "window/template.h"

struct _WmFindingHead
{
  GtkWidget parent_instance;

  WmGlyph *glyph;
  GtkWidget *arrow;
  WmGlyph *after_glyph;
  GtkLabel *title;
  GtkLabel *second;
  GtkLabel *word;
};

G_DEFINE_FINAL_TYPE (WmFindingHead, wm_finding_head, GTK_TYPE_WIDGET)

static void
wm_finding_head_dispose (GObject *object)
{
  wm_template_dispose (GTK_WIDGET (object), WM_TYPE_FINDING_HEAD);

  G_OBJECT_CLASS (wm_finding_head_parent_class)->dispose (object);
}

static void
wm_finding_head_class_init (WmFindingHeadClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_finding_head_dispose;

  g_type_ensure (WM_TYPE_GLYPH);
  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "finding-head.ui");
  gtk_widget_class_bind_template_child (widget_class, WmFindingHead, glyph);
  gtk_widget_class_bind_template_child (widget_class, WmFindingHead, arrow);
  gtk_widget_class_bind_template_child (widget_class, WmFindingHead, after_glyph);
  gtk_widget_class_bind_template_child (widget_class, WmFindingHead, title);
  gtk_widget_class_bind_template_child (widget_class, WmFindingHead, second);
  gtk_widget_class_bind_template_child (widget_class, WmFindingHead, word);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
wm_finding_head_init (WmFindingHead *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  wm_glyph_set_radius (self->glyph, WM_MARK_R_ROW);
  wm_glyph_set_radius (self->after_glyph, WM_MARK_R_ROW);
}

GtkWidget *
wm_finding_head_new (void)
{
  return g_object_new (WM_TYPE_FINDING_HEAD, NULL);
}

void
wm_finding_head_set_brief (WmFindingHead *self)
{
  gtk_widget_set_visible (GTK_WIDGET (self->word), FALSE);
  gtk_label_set_wrap (self->second, FALSE);
  gtk_label_set_ellipsize (self->second, PANGO_ELLIPSIZE_END);
}

static void
show_words (WmFindingHead *self, WmCheck *check, gboolean story)
{
  g_autofree char *words = NULL, *spoken = NULL;
  const char *title = wm_trade_text (check->fault != NULL ? check->fault : check->title);

  words = story ? g_strdup_printf ("%s → %s", wm_severity_word (check->severity),
                                   wm_severity_word (check->after_severity))
                : g_strdup (wm_severity_word (check->severity));
  gtk_label_set_label (self->title, title);
  gtk_label_set_label (self->word, words);
  spoken = g_strdup_printf ("%s, %s", title, words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  spoken, -1);
}

void
wm_finding_head_show (WmFindingHead *self, WmCheck *check, gboolean story)
{
  const char *second = check->note != NULL ? check->note : wm_trade_text (check->if_left);

  wm_glyph_set_severity (self->glyph, check->severity);
  wm_glyph_set_number (self->glyph, check->number == WM_UNKNOWN ? 0 : (int)check->number);
  wm_glyph_set_severity (self->after_glyph, check->after_severity);
  gtk_widget_set_visible (self->arrow, story);
  gtk_widget_set_visible (GTK_WIDGET (self->after_glyph), story);
  gtk_label_set_label (self->second, second == NULL ? "" : second);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->second), second);
  gtk_widget_set_visible (GTK_WIDGET (self->second), second != NULL);
  show_words (self, check, story);
}
