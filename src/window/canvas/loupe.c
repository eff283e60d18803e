/* loupe.c: a round magnifier over the photo
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/canvas/loupe.h"

#include <glib/gi18n.h>
#include <math.h>

#include "photo/mark-look.h"

#define RING 3.0 /* light ring round the glass, view px */

struct _WmLoupe
{
  GtkWidget parent_instance;

  WmTileLayer *layer;
  WmViewTransform view;
  WmLoupeJaw jaw;
  PangoLayout *factor; /* "× 10", or NULL */
};

G_DEFINE_FINAL_TYPE (WmLoupe, wm_loupe, GTK_TYPE_WIDGET)

/* A bar of blue with a dark edge, seen on any metal; the view is turned already. */
static void
append_bar (GtkSnapshot *snapshot, double x, double y, double width, double height)
{
  const GdkRGBA edge = { wm_mark_edge.red, wm_mark_edge.green, wm_mark_edge.blue, 1 };
  const GdkRGBA blue = { wm_mark_gauge.red, wm_mark_gauge.green, wm_mark_gauge.blue, 1 };

  gtk_snapshot_append_color (snapshot, &edge,
                             &GRAPHENE_RECT_INIT (x - 1, y - 1, width + 2, height + 2));
  gtk_snapshot_append_color (snapshot, &blue, &GRAPHENE_RECT_INIT (x, y, width, height));
}

static void
snapshot_jaw (WmLoupe *self, GtkSnapshot *snapshot)
{
  double r = WM_LOUPE_RADIUS;

  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT (r, r));
  if (self->jaw.kind == WM_LOUPE_JAW)
    {
      gtk_snapshot_rotate (snapshot, self->jaw.towards * 180 / G_PI);
      append_bar (snapshot, 8, -0.5, r - 8, 1);
      /* Its dark edge ends at the place: what is measured is not covered. */
      append_bar (snapshot, -6, -0.48 * r, 5, 0.96 * r);
    }
  else
    for (int i = 0; i < 4; i++)
      {
        gtk_snapshot_rotate (snapshot, 90);
        append_bar (snapshot, 0.12 * r, -0.5, 0.5 * r, 1);
      }
  gtk_snapshot_restore (snapshot);
}

static void
snapshot_factor (WmLoupe *self, GtkSnapshot *snapshot)
{
  const GdkRGBA plate = { 0.118, 0.118, 0.118, 0.9 }, white = { 1, 1, 1, 1 };
  int width, height;
  double x, y;
  GskRoundedRect plate_box;

  pango_layout_get_pixel_size (self->factor, &width, &height);
  x = round (WM_LOUPE_RADIUS - width / 2.0);
  y = round (1.72 * WM_LOUPE_RADIUS - height / 2.0);
  gsk_rounded_rect_init_from_rect (
      &plate_box, &GRAPHENE_RECT_INIT (x - 8, y - 3, width + 16, height + 6), 5);
  gtk_snapshot_push_rounded_clip (snapshot, &plate_box);
  gtk_snapshot_append_color (snapshot, &plate, &plate_box.bounds);
  gtk_snapshot_pop (snapshot);
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT (x, y));
  gtk_snapshot_append_layout (snapshot, self->factor, &white);
  gtk_snapshot_restore (snapshot);
}

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
  if (self->jaw.kind != WM_LOUPE_PLAIN)
    snapshot_jaw (self, snapshot);
  if (self->factor != NULL)
    snapshot_factor (self, snapshot);
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
  g_clear_object (&WM_LOUPE (object)->factor);
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

double
wm_loupe_measuring_zoom (double zoom, double scale)
{
  double true_pixels = 1 / scale;

  return MAX (CLAMP (10 * zoom, 3 * true_pixels, 8 * true_pixels), 2 * zoom);
}

static void
look (WmLoupe *self, WmTileLayer *layer, const WmViewTransform *view, WmPoint photo,
      double zoom)
{
  g_set_object (&self->layer, layer);
  self->view = *view;
  self->view.view_width = self->view.view_height = 2 * WM_LOUPE_RADIUS;
  self->view.centre = photo;
  self->view.zoom = zoom;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
wm_loupe_look_at (WmLoupe *self, WmTileLayer *layer, const WmViewTransform *view,
                  WmPoint photo)
{
  self->jaw.kind = WM_LOUPE_PLAIN;
  g_clear_object (&self->factor);
  look (self, layer, view, photo,
        wm_loupe_zoom (view->zoom, gtk_widget_get_scale_factor (GTK_WIDGET (self))));
}

void
wm_loupe_measure_at (WmLoupe *self, WmTileLayer *layer, const WmViewTransform *view,
                     WmPoint photo, WmLoupeJaw jaw)
{
  double scale = gtk_widget_get_scale_factor (GTK_WIDGET (self));
  double zoom = wm_loupe_measuring_zoom (view->zoom, scale);
  g_autofree char *text = g_strdup_printf ("× %.0f", zoom / view->zoom);

  self->jaw = jaw;
  if (self->factor == NULL)
    self->factor = gtk_widget_create_pango_layout (GTK_WIDGET (self), NULL);
  if (g_strcmp0 (text, pango_layout_get_text (self->factor)) != 0)
    pango_layout_set_text (self->factor, text, -1);
  look (self, layer, view, photo, zoom);
}

const WmViewTransform *
wm_loupe_get_view (WmLoupe *self)
{
  return &self->view;
}
