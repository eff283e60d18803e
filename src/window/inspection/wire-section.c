/* wire-section.c: what is left of a worn thickness, to scale
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/inspection/wire-section.h"

#include <glib/gi18n.h>
#include <math.h>

#include "photo/mark-look.h"

#define LINE 1.5 /* view px */

struct _WmWireSection
{
  GtkWidget parent_instance;

  double ratio;
  int diameter;
};

G_DEFINE_FINAL_TYPE (WmWireSection, wm_wire_section, GTK_TYPE_WIDGET)

static void
set_source (cairo_t *cr, const GdkRGBA *colour, double alpha)
{
  cairo_set_source_rgba (cr, colour->red, colour->green, colour->blue,
                         colour->alpha * alpha);
}

static void
draw (WmWireSection *self, cairo_t *cr, double size)
{
  GdkRGBA text;
  double r = size / 2 - LINE, middle = size / 2;
  double top = middle + r - 2 * r * self->ratio; /* worn away above this */
  const double dash[2] = { 2.5, 2.5 };

  gtk_style_context_get_color (gtk_widget_get_style_context (GTK_WIDGET (self)), &text);
  cairo_set_line_width (cr, 1);
  cairo_set_dash (cr, dash, 2, 0);
  set_source (cr, &text, 0.8);
  cairo_arc (cr, middle, middle, r, 0, 2 * G_PI);
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0);

  cairo_save (cr);
  cairo_rectangle (cr, 0, top, size, size - top);
  cairo_clip (cr);
  cairo_arc (cr, middle, middle, r, 0, 2 * G_PI);
  cairo_set_source_rgba (cr, wm_mark_gauge.red, wm_mark_gauge.green, wm_mark_gauge.blue,
                         0.5);
  cairo_fill_preserve (cr);
  set_source (cr, &text, 1);
  cairo_set_line_width (cr, LINE);
  cairo_stroke (cr);
  cairo_restore (cr);
  if (self->ratio < 1)
    {
      double half = sqrt (MAX (r * r - (top - middle) * (top - middle), 0));

      set_source (cr, &text, 1);
      cairo_set_line_width (cr, LINE);
      cairo_move_to (cr, middle - half, top);
      cairo_line_to (cr, middle + half, top);
      cairo_stroke (cr);
    }
}

static void
wm_wire_section_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  WmWireSection *self = WM_WIRE_SECTION (widget);
  double size = MIN (gtk_widget_get_width (widget), gtk_widget_get_height (widget));
  cairo_t *cr =
      gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, size, size));

  draw (self, cr, size);
  cairo_destroy (cr);
}

static void
wm_wire_section_measure (GtkWidget *widget, GtkOrientation orientation, int for_size,
                         int *minimum, int *natural, int *minimum_baseline,
                         int *natural_baseline)
{
  *minimum = *natural = WM_WIRE_SECTION (widget)->diameter;
}

static void
wm_wire_section_class_init (WmWireSectionClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  widget_class->snapshot = wm_wire_section_snapshot;
  widget_class->measure = wm_wire_section_measure;
  gtk_widget_class_set_css_name (widget_class, "wiresection");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
wm_wire_section_init (WmWireSection *self)
{
  self->ratio = 1;
  self->diameter = 52;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Section of the wire, what is left filled"), -1);
}

GtkWidget *
wm_wire_section_new (void)
{
  return g_object_new (WM_TYPE_WIRE_SECTION, NULL);
}

void
wm_wire_section_set_ratio (WmWireSection *self, double ratio)
{
  self->ratio = CLAMP (ratio, 0, 1);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
wm_wire_section_set_diameter (WmWireSection *self, int diameter)
{
  self->diameter = diameter;
  gtk_widget_queue_resize (GTK_WIDGET (self));
}
