/* seam-handle.c: the round handle that pulls the seam between two photos
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/compare/seam-handle.h"

#include <glib/gi18n.h>

/* Disc and arrows within the target, px (picture 04). */
#define DISC 42.0
#define ARROW_GAP 6.0
#define ARROW_LENGTH 7.0
#define ARROW_HALF 5.0

struct _WmSeamHandle
{
  GtkWidget parent_instance;
};

enum
{
  PULLED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (WmSeamHandle, wm_seam_handle, GTK_TYPE_WIDGET)

static void
draw_arrow (cairo_t *cr, double x, double direction)
{
  cairo_move_to (cr, x + direction * ARROW_LENGTH, 0);
  cairo_line_to (cr, x, -ARROW_HALF);
  cairo_line_to (cr, x, ARROW_HALF);
  cairo_close_path (cr);
  cairo_fill (cr);
}

static void
wm_seam_handle_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  int size = WM_SEAM_TARGET;
  cairo_t *cr = gtk_snapshot_append_cairo (
      snapshot, &GRAPHENE_RECT_INIT (-3, -3, size + 6, size + 6));

  cairo_translate (cr, size / 2.0, size / 2.0);
  if (gtk_widget_has_visible_focus (widget))
    {
      cairo_set_source_rgb (cr, 0x56 / 255.0, 0xB4 / 255.0, 0xE9 / 255.0);
      cairo_arc (cr, 0, 0, DISC / 2 + 2, 0, 2 * G_PI);
      cairo_set_line_width (cr, 2.4);
      cairo_stroke (cr);
    }
  cairo_arc (cr, 0, 0, DISC / 2 - 0.5, 0, 2 * G_PI);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_fill_preserve (cr);
  cairo_set_source_rgb (cr, 0x1A / 255.0, 0x1A / 255.0, 0x1A / 255.0);
  cairo_set_line_width (cr, 1.4);
  cairo_stroke (cr);
  draw_arrow (cr, ARROW_GAP, 1);
  draw_arrow (cr, -ARROW_GAP, -1);
  cairo_destroy (cr);
}

static void
wm_seam_handle_measure (GtkWidget *widget, GtkOrientation orientation, int for_size,
                        int *minimum, int *natural, int *minimum_baseline,
                        int *natural_baseline)
{
  *minimum = *natural = WM_SEAM_TARGET;
}

static void
on_drag_begin (GtkGestureDrag *gesture, double x, double y, WmSeamHandle *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self));
  gtk_gesture_set_state (GTK_GESTURE (gesture), GTK_EVENT_SEQUENCE_CLAIMED);
}

/* The handle moves along with the pointer, so the offset is always small. */
static void
on_drag_update (GtkGestureDrag *gesture, double dx, double dy, WmSeamHandle *self)
{
  if (dx != 0)
    g_signal_emit (self, signals[PULLED], 0, dx);
}

static void
wm_seam_handle_class_init (WmSeamHandleClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  widget_class->snapshot = wm_seam_handle_snapshot;
  widget_class->measure = wm_seam_handle_measure;
  gtk_widget_class_set_css_name (widget_class, "seam-handle");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_SLIDER);
  signals[PULLED] = g_signal_new ("pulled", WM_TYPE_SEAM_HANDLE, G_SIGNAL_RUN_LAST, 0,
                                  NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_DOUBLE);
}

static void
wm_seam_handle_init (WmSeamHandle *self)
{
  GtkGesture *drag = gtk_gesture_drag_new ();

  g_signal_connect (drag, "drag-begin", G_CALLBACK (on_drag_begin), self);
  g_signal_connect (drag, "drag-update", G_CALLBACK (on_drag_update), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (drag));
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), "ew-resize");
  gtk_widget_set_tooltip_text (GTK_WIDGET (self), _ ("Seam: drag it, or arrow keys"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Seam between before and after"),
                                  GTK_ACCESSIBLE_PROPERTY_VALUE_MIN, 0.0,
                                  GTK_ACCESSIBLE_PROPERTY_VALUE_MAX, 100.0, -1);
}

GtkWidget *
wm_seam_handle_new (void)
{
  return g_object_new (WM_TYPE_SEAM_HANDLE, NULL);
}

void
wm_seam_handle_set_place (WmSeamHandle *self, double place)
{
  g_autofree char *words = g_strdup_printf (_ ("%.0f %% from the left"), place * 100);

  gtk_accessible_update_property (GTK_ACCESSIBLE (self),
                                  GTK_ACCESSIBLE_PROPERTY_VALUE_NOW, place * 100,
                                  GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT, words, -1);
}
