/* ruled-line.c: a line across with a tick a millimetre, as on a rule
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/ruled-line.h"

#include "window/gauge-rule.h"

struct _WmRuledLine
{
  GtkWidget parent_instance;
};

/* Exact: 25.4 mm an inch, 96 logical px an inch (CSS). */
#define PX_PER_MM (96.0 / 25.4)

G_DEFINE_FINAL_TYPE (WmRuledLine, wm_ruled_line, GTK_TYPE_WIDGET)

static void
wm_ruled_line_measure (GtkWidget *widget, GtkOrientation orientation, int for_size,
                       int *minimum, int *natural, int *minimum_baseline,
                       int *natural_baseline)
{
  *minimum = *natural = orientation == GTK_ORIENTATION_VERTICAL ? WM_TICK_LONG + 2 : 20;
}

static void
wm_ruled_line_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  int width = gtk_widget_get_width (widget);
  GdkRGBA colour;
  GtkStyleContext *context = gtk_widget_get_style_context (widget);

  if (!gtk_style_context_lookup_color (context, "wm_tick", &colour))
    gtk_style_context_get_color (context, &colour);
  wm_gauge_rule_line (snapshot, 0, width - 1, 0, &colour);
  for (int mm = 0; mm * PX_PER_MM < width; mm++)
    wm_gauge_rule_tick (snapshot, mm * PX_PER_MM, 0,
                        mm % 10 == 0  ? WM_TICK_LONG
                        : mm % 5 == 0 ? WM_TICK_MIDDLE
                                      : WM_TICK_SHORT,
                        &colour);
}

static void
wm_ruled_line_class_init (WmRuledLineClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  widget_class->measure = wm_ruled_line_measure;
  widget_class->snapshot = wm_ruled_line_snapshot;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
wm_ruled_line_init (WmRuledLine *self)
{
}
