/* cut-texture.c: a texture that can be drawn part by part, each by its own map
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/canvas/cut-texture.h"

#include <math.h>

/* Parts overlap by this many px, so that no hairline shows between them. */
#define OVERLAP 1

typedef struct
{
  int x, y, width, height; /* px of the whole texture */
} Part;

static GdkTexture *
make_texture (WmCutTexture *self, const Part *part)
{
  gsize offset = (gsize)part->y * self->stride + (gsize)part->x * 4;
  gsize size = (gsize)(part->height - 1) * self->stride + (gsize)part->width * 4;
  g_autoptr (GBytes) bytes = g_bytes_new_from_bytes (self->bytes, offset, size);

  return gdk_memory_texture_new (part->width, part->height,
                                 GDK_MEMORY_B8G8R8A8_PREMULTIPLIED, bytes, self->stride);
}

void
wm_cut_texture_init (WmCutTexture *self, WmPixels *pixels)
{
  *self = (WmCutTexture) { .bytes = wm_pixels_get_bytes (pixels),
                           .width = pixels->width,
                           .height = pixels->height,
                           .stride = pixels->stride };
  self->whole = make_texture (self, &(Part) { 0, 0, pixels->width, pixels->height });
}

static void
clear_parts (WmCutTexture *self)
{
  for (int i = 0; i < self->n_parts * self->n_parts; i++)
    g_clear_object (&self->parts[i]);
  g_clear_pointer (&self->parts, g_free);
  self->n_parts = 0;
}

void
wm_cut_texture_clear (WmCutTexture *self)
{
  clear_parts (self);
  g_clear_object (&self->whole);
  g_clear_pointer (&self->bytes, g_bytes_unref);
}

static Part
get_part (WmCutTexture *self, int n, int column, int row)
{
  int x1 = column * self->width / n, x2 = (column + 1) * self->width / n;
  int y1 = row * self->height / n, y2 = (row + 1) * self->height / n;

  x1 = MAX (x1 - OVERLAP, 0);
  y1 = MAX (y1 - OVERLAP, 0);
  x2 = MIN (x2 + OVERLAP, self->width);
  y2 = MIN (y2 + OVERLAP, self->height);
  return (Part) { x1, y1, x2 - x1, y2 - y1 };
}

static gboolean
is_in_sight (const WmAffine *map, const double box[4], const WmViewTransform *view)
{
  double left = G_MAXDOUBLE, top = G_MAXDOUBLE, right = -G_MAXDOUBLE,
         bottom = -G_MAXDOUBLE;

  for (int i = 0; i < 4; i++)
    {
      double x = box[0] + (i & 1 ? box[2] : 0), y = box[1] + (i & 2 ? box[3] : 0);
      double vx = map->xx * x + map->xy * y + map->x0;
      double vy = map->yx * x + map->yy * y + map->y0;

      left = MIN (left, vx);
      right = MAX (right, vx);
      top = MIN (top, vy);
      bottom = MAX (bottom, vy);
    }
  return right > 0 && bottom > 0 && left < view->view_width && top < view->view_height;
}

/* As moves, a turn, a slant and two scales: of these GTK knows that they are flat, and
 * only flat maps are drawn by all its renderers. */
static void
append (GtkSnapshot *snapshot, GdkTexture *texture, const WmAffine *map,
        const double box[4])
{
  double scale_x = hypot (map->xx, map->yx);
  double det = map->xx * map->yy - map->xy * map->yx;
  double scale_y = scale_x > 0 ? det / scale_x : 0;
  double slant = det != 0 ? (map->xx * map->xy + map->yx * map->yy) / det : 0;
  GskTransform *transform = NULL;

  if (!(scale_x > 0) || !(fabs (scale_y) > 0))
    return;
  transform = gsk_transform_translate (
      NULL, &GRAPHENE_POINT_INIT (map->xx * box[0] + map->xy * box[1] + map->x0,
                                  map->yx * box[0] + map->yy * box[1] + map->y0));
  transform = gsk_transform_rotate (transform, atan2 (map->yx, map->xx) * 180 / G_PI);
  transform = gsk_transform_skew (transform, atan (slant) * 180 / G_PI, 0);
  transform = gsk_transform_scale (transform, scale_x, scale_y);
  gtk_snapshot_save (snapshot);
  gtk_snapshot_transform (snapshot, transform);
  gsk_transform_unref (transform);
  gtk_snapshot_append_texture (snapshot, texture,
                               &GRAPHENE_RECT_INIT (0, 0, box[2], box[3]));
  gtk_snapshot_restore (snapshot);
}

void
wm_cut_texture_snapshot (WmCutTexture *self, GtkSnapshot *snapshot, const WmFrameMap *map,
                         const WmViewTransform *view, const double box[4])
{
  int n = wm_frame_map_parts (map, box, MAX (self->width, self->height));
  double px = box[2] / self->width, py = box[3] / self->height;

  if (n != self->n_parts)
    {
      clear_parts (self);
      self->n_parts = n;
      self->parts = g_new0 (GdkTexture *, n * n);
    }
  for (int row = 0; row < n; row++)
    for (int column = 0; column < n; column++)
      {
        Part part = get_part (self, n, column, row);
        double cut[4] = { box[0] + part.x * px, box[1] + part.y * py, part.width * px,
                          part.height * py };
        WmPoint middle = { cut[0] + cut[2] / 2, cut[1] + cut[3] / 2 };
        GdkTexture **texture = &self->parts[row * n + column];
        WmAffine near;

        if (!wm_frame_map_near (map, view, middle, &near)
            || !is_in_sight (&near, cut, view))
          continue;
        if (*texture == NULL)
          *texture = n == 1 ? g_object_ref (self->whole) : make_texture (self, &part);
        append (snapshot, *texture, &near, cut);
      }
}
