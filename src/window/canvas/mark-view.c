/* mark-view.c: one mark on the photo as a widget
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/canvas/mark-view.h"

#include <math.h>

#include "photo/mark-draw.h"
#include "photo/pixels.h"

/* A shift of the drawing against its box smaller than this is not painted again: less
 * than can be seen with soft edges. */
#define SAME_PX 0.05

struct _WmMarkView
{
  GtkWidget parent_instance;

  WmMarkValue *value;
  GArray *points;    /* WmPoint, view px */
  WmMarkLook look;   /* view px; points borrowed from the array above */
  GtkAllocation box; /* in the canvas */

  GdkTexture *texture;
  GArray *painted_points; /* as painted, relative to the painted box */
  WmMarkLook painted;     /* its value is borrowed no longer: painted_value is */
  char *painted_value;
  int painted_width, painted_height, painted_scale;
};

G_DEFINE_FINAL_TYPE (WmMarkView, wm_mark_view, GTK_TYPE_WIDGET)

static gboolean
is_near (WmPoint a, WmPoint b)
{
  return fabs (a.x - b.x) < SAME_PX && fabs (a.y - b.y) < SAME_PX;
}

static WmPoint
in_box (WmMarkView *self, WmPoint p)
{
  return (WmPoint) { p.x - self->box.x, p.y - self->box.y };
}

/* Whether the texture still shows the look. */
static gboolean
is_painted (WmMarkView *self)
{
  const WmMarkLook *a = &self->look, *b = &self->painted;

  if (self->texture == NULL
      || self->painted_scale != gtk_widget_get_scale_factor (GTK_WIDGET (self))
      || self->box.width != self->painted_width
      || self->box.height != self->painted_height || a->severity != b->severity
      || a->shape != b->shape || a->radius != b->radius || a->number != b->number
      || a->state != b->state || a->n_points != b->n_points
      || g_strcmp0 (a->value, self->painted_value) != 0
      || !is_near (in_box (self, a->disc), b->disc))
    return FALSE;
  for (guint i = 0; i < a->n_points; i++)
    if (!is_near (in_box (self, a->points[i]),
                  g_array_index (self->painted_points, WmPoint, i)))
      return FALSE;
  return TRUE;
}

static void
remember_painted (WmMarkView *self, int scale)
{
  g_array_set_size (self->painted_points, 0);
  for (guint i = 0; i < self->look.n_points; i++)
    {
      WmPoint p = in_box (self, self->look.points[i]);

      g_array_append_val (self->painted_points, p);
    }
  self->painted = self->look;
  self->painted.points = NULL;
  self->painted.value = NULL;
  g_free (self->painted_value);
  self->painted_value = g_strdup (self->look.value);
  self->painted.disc = in_box (self, self->look.disc);
  self->painted_width = self->box.width;
  self->painted_height = self->box.height;
  self->painted_scale = scale;
}

static void
paint (WmMarkView *self)
{
  int scale = gtk_widget_get_scale_factor (GTK_WIDGET (self));
  g_autoptr (WmPixels) pixels =
      wm_pixels_new (self->box.width * scale, self->box.height * scale);
  g_autoptr (GBytes) bytes = NULL;
  cairo_surface_t *surface;
  cairo_t *cr;
  WmMarkStyle style;

  g_clear_object (&self->texture);
  if (pixels == NULL)
    return;

  surface = wm_pixels_get_surface (pixels);
  cr = cairo_create (surface);
  cairo_scale (cr, scale, scale);
  cairo_translate (cr, -self->box.x, -self->box.y);
  wm_mark_style_init (&style);
  style.px = 1.0 / scale;
  wm_mark_draw (cr, &self->look, &style);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  cairo_surface_destroy (surface);

  bytes = wm_pixels_get_bytes (pixels);
  self->texture =
      gdk_memory_texture_new (pixels->width, pixels->height,
                              GDK_MEMORY_B8G8R8A8_PREMULTIPLIED, bytes, pixels->stride);
  remember_painted (self, scale);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* The whole ink, cut to the canvas: an outline round a big part at high zoom would
 * otherwise need a texture of the size of the photo. */
static void
find_box (WmMarkView *self, double view_width, double view_height)
{
  WmMarkStyle style;
  double ink[4];
  int x1, y1, x2, y2;

  wm_mark_style_init (&style);
  wm_mark_extents (&self->look, &style, ink);
  x1 = floor (CLAMP (ink[0], -1, view_width));
  y1 = floor (CLAMP (ink[1], -1, view_height));
  x2 = ceil (CLAMP (ink[0] + ink[2], 0, view_width + 1));
  y2 = ceil (CLAMP (ink[1] + ink[3], 0, view_height + 1));
  self->box = (GtkAllocation) { x1, y1, MAX (x2 - x1, 1), MAX (y2 - y1, 1) };
}

static void
wm_mark_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  WmMarkView *self = WM_MARK_VIEW (widget);

  if (self->texture != NULL)
    gtk_snapshot_append_texture (
        snapshot, self->texture,
        &GRAPHENE_RECT_INIT (0, 0, self->painted_width, self->painted_height));
}

static void
on_focus_changed (GtkWidget *widget)
{
  /* The canvas draws the focus; it places its marks again. */
  GtkWidget *canvas = gtk_widget_get_parent (widget);

  if (canvas != NULL)
    gtk_widget_queue_allocate (canvas);
}

static void
wm_mark_view_finalize (GObject *object)
{
  WmMarkView *self = WM_MARK_VIEW (object);

  g_clear_pointer (&self->value, wm_mark_value_free);
  g_clear_pointer (&self->points, g_array_unref);
  g_clear_pointer (&self->painted_points, g_array_unref);
  g_free (self->painted_value);
  g_clear_object (&self->texture);
  G_OBJECT_CLASS (wm_mark_view_parent_class)->finalize (object);
}

static void
wm_mark_view_class_init (WmMarkViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = wm_mark_view_finalize;
  widget_class->snapshot = wm_mark_view_snapshot;
  gtk_widget_class_set_css_name (widget_class, "mark");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_BUTTON);
}

static void
wm_mark_view_init (WmMarkView *self)
{
  self->points = g_array_new (FALSE, FALSE, sizeof (WmPoint));
  self->painted_points = g_array_new (FALSE, FALSE, sizeof (WmPoint));
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_can_target (GTK_WIDGET (self), FALSE);
  g_signal_connect (self, "notify::has-focus", G_CALLBACK (on_focus_changed), NULL);
}

WmMarkView *
wm_mark_view_new (const WmMarkValue *value)
{
  WmMarkView *self = g_object_new (WM_TYPE_MARK_VIEW, NULL);

  wm_mark_view_set_value (self, value);
  return self;
}

const WmMarkValue *
wm_mark_view_get_value (WmMarkView *self)
{
  return self->value;
}

void
wm_mark_view_set_value (WmMarkView *self, const WmMarkValue *value)
{
  WmMarkValue *copy = wm_mark_value_copy (value);

  wm_mark_value_free (self->value);
  self->value = copy;
  self->look.value = NULL; /* was the old one's */
  gtk_widget_set_focusable (GTK_WIDGET (self), !copy->is_ghost);
  if (copy->name != NULL)
    gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                    copy->name, -1);
}

void
wm_mark_view_place (WmMarkView *self, const WmPoint *points, WmPoint disc, double radius,
                    guint state, double view_width, double view_height)
{
  g_array_set_size (self->points, 0);
  g_array_append_vals (self->points, points, self->value->points->len);

  if (self->value->is_ghost)
    state |= WM_MARK_CARRIED;
  if (self->value->is_unconfirmed)
    state |= WM_MARK_UNCONFIRMED;
  if (self->value->is_measuring)
    state |= WM_MARK_MEASURING;
  if (self->value->is_bare)
    state |= WM_MARK_BARE;
  self->look = (WmMarkLook) { .severity = self->value->severity,
                              .shape = self->value->shape,
                              .points = (const WmPoint *)self->points->data,
                              .n_points = self->points->len,
                              .disc = disc,
                              .radius = radius,
                              .number = self->value->number,
                              .value = self->value->value,
                              .state = state };
  find_box (self, view_width, view_height);
  if (!is_painted (self))
    paint (self);
}

const WmMarkLook *
wm_mark_view_get_look (WmMarkView *self)
{
  return &self->look;
}

void
wm_mark_view_get_allocation_box (WmMarkView *self, GtkAllocation *box)
{
  *box = self->box;
}
