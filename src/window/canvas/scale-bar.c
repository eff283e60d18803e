/* scale-bar.c: how long a millimetre is in the view
 *
 * The ornament of the look book, here a true scale: a hairline with ten divisions.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/canvas/scale-bar.h"

#include <glib/gi18n.h>
#include <math.h>

/* View px; the bar of the look book's pictures is 124 long. */
#define LONGEST 124.0
#define RULE_HEIGHT 8

struct _WmScaleBar
{
  GtkWidget parent_instance;

  GtkWidget *label;
  double px_per_mm;
  double length_mm;
  gboolean middle_only;
};

G_DEFINE_FINAL_TYPE (WmScaleBar, wm_scale_bar, GTK_TYPE_WIDGET)

static int
get_length_px (WmScaleBar *self)
{
  return isfinite (self->length_mm) ? round (self->length_mm * self->px_per_mm) : 0;
}

static void
wm_scale_bar_measure (GtkWidget *widget, GtkOrientation orientation, int for_size,
                      int *minimum, int *natural, int *minimum_baseline,
                      int *natural_baseline)
{
  WmScaleBar *self = WM_SCALE_BAR (widget);
  int label_minimum, label_natural;

  gtk_widget_measure (self->label, orientation, -1, &label_minimum, &label_natural, NULL,
                      NULL);
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    *minimum = *natural = MAX (get_length_px (self) + 1, label_natural);
  else
    *minimum = *natural = RULE_HEIGHT + 2 + label_natural;
}

static void
wm_scale_bar_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  GtkAllocation box = { 0, RULE_HEIGHT + 2, width, height - RULE_HEIGHT - 2 };

  gtk_widget_size_allocate (WM_SCALE_BAR (widget)->label, &box, -1);
}

static void
wm_scale_bar_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  WmScaleBar *self = WM_SCALE_BAR (widget);
  int length = get_length_px (self);
  int left = (gtk_widget_get_width (widget) - length - 1) / 2;
  GdkRGBA colour;

  gtk_style_context_get_color (gtk_widget_get_style_context (widget), &colour);
  gtk_snapshot_append_color (snapshot, &colour,
                             &GRAPHENE_RECT_INIT (left, 0, length + 1, 1));
  for (int i = 0; i <= 10; i++)
    {
      int tick = i % 10 == 0 ? 7 : i % 5 == 0 ? 5 : 3;

      gtk_snapshot_append_color (
          snapshot, &colour,
          &GRAPHENE_RECT_INIT (left + round (length * i / 10.0), 0, 1, tick));
    }
  gtk_widget_snapshot_child (widget, self->label, snapshot);
}

static void
wm_scale_bar_dispose (GObject *object)
{
  g_clear_pointer (&WM_SCALE_BAR (object)->label, gtk_widget_unparent);
  G_OBJECT_CLASS (wm_scale_bar_parent_class)->dispose (object);
}

static void
wm_scale_bar_class_init (WmScaleBarClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_scale_bar_dispose;
  widget_class->measure = wm_scale_bar_measure;
  widget_class->size_allocate = wm_scale_bar_size_allocate;
  widget_class->snapshot = wm_scale_bar_snapshot;
  gtk_widget_class_set_css_name (widget_class, "scalebar");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
wm_scale_bar_init (WmScaleBar *self)
{
  self->px_per_mm = self->length_mm = NAN;
  self->label = gtk_label_new (NULL);
  gtk_widget_set_parent (self->label, GTK_WIDGET (self));
  gtk_widget_set_can_target (GTK_WIDGET (self), FALSE);
}

double
wm_scale_bar_choose (double px_per_mm, double longest_px)
{
  static const double steps[] = { 5, 2, 1 };
  double longest_mm = longest_px / px_per_mm, decade;

  if (!isfinite (longest_mm) || longest_mm <= 0)
    return NAN;
  decade = pow (10, floor (log10 (longest_mm)));
  for (guint i = 0; i < G_N_ELEMENTS (steps); i++)
    if (steps[i] * decade <= longest_mm * (1 + 1e-9))
      return steps[i] * decade;
  return decade;
}

void
wm_scale_bar_set_px_per_mm (WmScaleBar *self, double px_per_mm)
{
  g_autofree char *text = NULL, *name = NULL;

  self->px_per_mm = px_per_mm;
  self->length_mm = wm_scale_bar_choose (px_per_mm, LONGEST);
  if (isfinite (self->length_mm))
    {
      text = self->middle_only
                 ? g_strdup_printf (_ ("%g mm in the middle"), self->length_mm)
                 : g_strdup_printf (_ ("%g mm"), self->length_mm);
      name = g_strdup_printf (_ ("Scale bar, %s"), text);
      gtk_label_set_text (GTK_LABEL (self->label), text);
      gtk_accessible_update_property (GTK_ACCESSIBLE (self),
                                      GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
    }
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

void
wm_scale_bar_set_middle_only (WmScaleBar *self, gboolean middle_only)
{
  if (self->middle_only == middle_only)
    return;
  self->middle_only = middle_only;
  wm_scale_bar_set_px_per_mm (self, self->px_per_mm);
}
