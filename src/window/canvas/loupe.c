/* loupe.c: a round magnifier over the photo
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/canvas/loupe.h"

#include <glib/gi18n.h>

#define RING 3.0 /* light ring round the glass, view px */

struct _WmLoupe
{
  GtkWidget parent_instance;

  WmTileLayer *layer;
  WmViewTransform view;
};

G_DEFINE_FINAL_TYPE (WmLoupe, wm_loupe, GTK_TYPE_WIDGET)

static void
snapshot_glass (WmLoupe *self, GtkSnapshot *snapshot)
{
  const GdkRGBA mat = { 0.08, 0.08, 0.08, 1 };
  const GdkRGBA light = { 1, 1, 1, 1 }, edge = { 0.1, 0.1, 0.1, 1 };
  float size = 2 * WM_LOUPE_RADIUS, line = RING, thin = 1;
  GskRoundedRect round;
  const graphene_rect_t bounds = GRAPHENE_RECT_INIT (0, 0, size, size);
  double scale = gtk_widget_get_scale_factor (GTK_WIDGET (self));

  gsk_rounded_rect_init_from_rect (&round, &bounds, WM_LOUPE_RADIUS);
  gtk_snapshot_append_outset_shadow (snapshot, &round, &(GdkRGBA) { 0, 0, 0, 0.45 }, 0, 2,
                                     0, 10);
  gtk_snapshot_push_rounded_clip (snapshot, &round);
  gtk_snapshot_append_color (snapshot, &mat, &bounds);
  wm_tile_layer_snapshot (self->layer, snapshot, &self->view, scale);
  gtk_snapshot_pop (snapshot);
  gtk_snapshot_append_border (snapshot, &round, (float[4]) { line, line, line, line },
                              (GdkRGBA[4]) { light, light, light, light });
  gtk_snapshot_append_border (snapshot, &round, (float[4]) { thin, thin, thin, thin },
                              (GdkRGBA[4]) { edge, edge, edge, edge });
}

static void
wm_loupe_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  WmLoupe *self = WM_LOUPE (widget);

  if (self->layer != NULL)
    snapshot_glass (self, snapshot);
}

static void
wm_loupe_measure (GtkWidget *widget, GtkOrientation orientation, int for_size,
                  int *minimum, int *natural, int *minimum_baseline,
                  int *natural_baseline)
{
  *minimum = *natural = 2 * WM_LOUPE_RADIUS;
}

static void
wm_loupe_dispose (GObject *object)
{
  g_clear_object (&WM_LOUPE (object)->layer);
  G_OBJECT_CLASS (wm_loupe_parent_class)->dispose (object);
}

static void
wm_loupe_class_init (WmLoupeClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_loupe_dispose;
  widget_class->snapshot = wm_loupe_snapshot;
  widget_class->measure = wm_loupe_measure;
  gtk_widget_class_set_css_name (widget_class, "loupe");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
wm_loupe_init (WmLoupe *self)
{
  gtk_widget_set_can_target (GTK_WIDGET (self), FALSE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Loupe"), -1);
}

WmLoupe *
wm_loupe_new (void)
{
  return g_object_new (WM_TYPE_LOUPE, NULL);
}

double
wm_loupe_zoom (double zoom, double scale)
{
  double true_pixels = 1 / scale;

  return MAX (CLAMP (10 * zoom, true_pixels, 2 * true_pixels), 2 * zoom);
}

void
wm_loupe_look_at (WmLoupe *self, WmTileLayer *layer, const WmViewTransform *view,
                  WmPoint photo)
{
  g_set_object (&self->layer, layer);
  self->view = *view;
  self->view.view_width = self->view.view_height = 2 * WM_LOUPE_RADIUS;
  self->view.centre = photo;
  self->view.zoom =
      wm_loupe_zoom (view->zoom, gtk_widget_get_scale_factor (GTK_WIDGET (self)));
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

const WmViewTransform *
wm_loupe_get_view (WmLoupe *self)
{
  return &self->view;
}
