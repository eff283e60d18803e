/* check-row.c: one check of the list
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/inspection/check-row.h"

#include <glib/gi18n.h>

#include "photo/mark-look.h"
#include "trade/trade.h"
#include "window/glyph.h"
#include "window/inspection/checks.h"
#include "window/resource.h"

struct _WmCheckRow
{
  AdwBin parent_instance;

  GtkWidget *head;
  WmGlyph *glyph;
  GtkLabel *title, *word, *second;
  GtkRevealer *revealer;
};

G_DEFINE_FINAL_TYPE (WmCheckRow, wm_check_row, ADW_TYPE_BIN)

static void
wm_check_row_dispose (GObject *object)
{
  WmCheckRow *self = WM_CHECK_ROW (object);

  /* The details are the pane's, for another row. */
  if (self->revealer != NULL)
    gtk_revealer_set_child (self->revealer, NULL);
  /* Before the template takes its child away behind the bin. */
  adw_bin_set_child (ADW_BIN (object), NULL);
  gtk_widget_dispose_template (GTK_WIDGET (object), WM_TYPE_CHECK_ROW);
  G_OBJECT_CLASS (wm_check_row_parent_class)->dispose (object);
}

static void
wm_check_row_class_init (WmCheckRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_check_row_dispose;
  g_type_ensure (WM_TYPE_GLYPH);
  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "check-row.ui");
  gtk_widget_class_bind_template_child (widget_class, WmCheckRow, head);
  gtk_widget_class_bind_template_child (widget_class, WmCheckRow, glyph);
  gtk_widget_class_bind_template_child (widget_class, WmCheckRow, title);
  gtk_widget_class_bind_template_child (widget_class, WmCheckRow, word);
  gtk_widget_class_bind_template_child (widget_class, WmCheckRow, second);
  gtk_widget_class_bind_template_child (widget_class, WmCheckRow, revealer);
}

static void
wm_check_row_init (WmCheckRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  wm_glyph_set_radius (self->glyph, WM_MARK_R_ROW);
}

WmCheckRow *
wm_check_row_new (int index)
{
  WmCheckRow *self = g_object_new (WM_TYPE_CHECK_ROW, NULL);

  gtk_actionable_set_action_target (GTK_ACTIONABLE (self->head), "i", index);
  return self;
}

static gboolean
is_open (WmCheckRow *self)
{
  return gtk_revealer_get_child (self->revealer) != NULL;
}

static const char *
get_second_line (WmCheckRow *self, WmCheck *check)
{
  if (!is_open (self) && check->note != NULL)
    return check->note;
  if (!is_open (self) && check->severity == WM_SEVERITY_NOT_LOOKED_AT)
    return _ ("Not looked at");
  return check->look != NULL ? wm_trade_text (check->look) : "";
}

void
wm_check_row_show (WmCheckRow *self, WmCheck *check)
{
  const char *title = wm_trade_text (wm_check_heading (check));
  const char *second = get_second_line (self, check);
  gboolean looked_at = check->severity != WM_SEVERITY_NOT_LOOKED_AT;
  const char *word = looked_at ? wm_severity_word (check->severity) : "";
  g_autofree char *name =
      g_strdup_printf ("%s, %s", title, looked_at ? word : _ ("not looked at"));

  wm_glyph_set_severity (self->glyph, check->severity);
  wm_glyph_set_number (self->glyph, check->number > 0 ? check->number : 0);
  gtk_label_set_text (self->title, title);
  gtk_label_set_text (self->word, word);
  gtk_label_set_text (self->second, second);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->second),
                               check->note != NULL ? check->note : NULL);
  if (wm_severity_is_finding (check->severity))
    gtk_widget_add_css_class (GTK_WIDGET (self->title), "finding");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self->title), "finding");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->head),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, name,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, second, -1);
}

void
wm_check_row_open (WmCheckRow *self, GtkWidget *details)
{
  gtk_revealer_set_child (self->revealer, details);
  gtk_revealer_set_reveal_child (self->revealer, details != NULL);
  if (details != NULL)
    gtk_widget_add_css_class (GTK_WIDGET (self), "open");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self), "open");
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->head), GTK_ACCESSIBLE_STATE_EXPANDED,
                               details != NULL, -1);
}

void
wm_check_row_focus (WmCheckRow *self)
{
  gtk_widget_grab_focus (self->head);
}
