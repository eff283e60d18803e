/* progress-rule.c: how far the checklist is: one tick a check
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/inspection/progress-rule.h"

#include <glib/gi18n.h>
#include <math.h>

#include "reckon/severity.h"

/* View px, as in the look book's pictures. */
#define HEIGHT 20
#define TALL 15
#define SHORT 9
#define DOT 2
#define WIDEST 4

struct _WmProgressRule
{
  GtkWidget parent_instance;

  guint8 *severities;
  guint n_checks;
  int current;
};

G_DEFINE_FINAL_TYPE (WmProgressRule, wm_progress_rule, GTK_TYPE_WIDGET)

static GdkRGBA
lookup (GtkStyleContext *style, const char *name)
{
  GdkRGBA colour;

  if (!gtk_style_context_lookup_color (style, name, &colour))
    gtk_style_context_get_color (style, &colour);
  return colour;
}

static void
wm_progress_rule_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  WmProgressRule *self = WM_PROGRESS_RULE (widget);
  GtkStyleContext *style = gtk_widget_get_style_context (widget);
  GdkRGBA text, tick = lookup (style, "wm_tick");
  GdkRGBA accent = lookup (style, "accent_color");
  double step = gtk_widget_get_width (widget) / (double)MAX (self->n_checks, 1);
  int thick = CLAMP (floor (step * 0.4), 1, WIDEST);
  int bottom = HEIGHT - 3;

  gtk_style_context_get_color (style, &text);
  for (guint i = 0; i < self->n_checks; i++)
    {
      WmSeverity severity = self->severities[i];
      gboolean is_finding = wm_severity_is_finding (severity);
      gboolean is_open = severity == WM_SEVERITY_NOT_LOOKED_AT;
      int length = is_finding ? TALL : is_open ? DOT : SHORT;
      int width = is_open ? MIN (DOT, thick) : thick;
      int x = floor ((i + 0.5) * step - width / 2.0);

      gtk_snapshot_append_color (snapshot, is_finding ? &text : &tick,
                                 &GRAPHENE_RECT_INIT (x, bottom - length, width, length));
      if ((int)i == self->current)
        gtk_snapshot_append_color (
            snapshot, &accent,
            &GRAPHENE_RECT_INIT (floor ((i + 0.5) * step - thick / 2.0) - 1, HEIGHT - 2,
                                 thick + 2, 2));
    }
}

static void
wm_progress_rule_measure (GtkWidget *widget, GtkOrientation orientation, int for_size,
                          int *minimum, int *natural, int *minimum_baseline,
                          int *natural_baseline)
{
  *minimum = orientation == GTK_ORIENTATION_VERTICAL ? HEIGHT : 60;
  *natural = orientation == GTK_ORIENTATION_VERTICAL ? HEIGHT : 300;
}

static void
wm_progress_rule_finalize (GObject *object)
{
  g_free (WM_PROGRESS_RULE (object)->severities);
  G_OBJECT_CLASS (wm_progress_rule_parent_class)->finalize (object);
}

static void
wm_progress_rule_class_init (WmProgressRuleClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = wm_progress_rule_finalize;
  widget_class->snapshot = wm_progress_rule_snapshot;
  widget_class->measure = wm_progress_rule_measure;
  gtk_widget_class_set_css_name (widget_class, "progressrule");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
wm_progress_rule_init (WmProgressRule *self)
{
  self->current = -1;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Progress, one tick a check"), -1);
}

void
wm_progress_rule_set (WmProgressRule *self, const guint8 *severities, guint n_checks,
                      int current)
{
  g_free (self->severities);
  self->severities = g_memdup2 (severities, n_checks);
  self->n_checks = n_checks;
  self->current = current;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
