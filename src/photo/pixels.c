/* pixels.c: a block of pixels in memory
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/pixels.h"

#if G_BYTE_ORDER != G_LITTLE_ENDIAN
#  error "WmPixels are laid out for little-endian machines"
#endif

typedef struct
{
  WmPixels pixels;
  gint references;
} Counted;

static const cairo_user_data_key_t surface_key;

WmPixels *
wm_pixels_new (int width, int height)
{
  Counted *self;

  if (width < 1 || height < 1 || width > 65535 || height > 65535)
    return NULL;

  self = g_new0 (Counted, 1);
  self->references = 1;
  self->pixels.width = width;
  self->pixels.height = height;
  self->pixels.stride = (gsize)width * 4;
  self->pixels.data = g_try_malloc0 (self->pixels.stride * (gsize)height);
  if (self->pixels.data == NULL)
    g_clear_pointer (&self, g_free);

  return (WmPixels *)self;
}

WmPixels *
wm_pixels_ref (WmPixels *self)
{
  g_atomic_int_inc (&((Counted *)self)->references);
  return self;
}

void
wm_pixels_unref (WmPixels *self)
{
  if (self == NULL || !g_atomic_int_dec_and_test (&((Counted *)self)->references))
    return;

  g_free (self->data);
  g_free (self);
}

GBytes *
wm_pixels_get_bytes (WmPixels *self)
{
  return g_bytes_new_with_free_func (self->data, self->stride * (gsize)self->height,
                                     (GDestroyNotify)wm_pixels_unref,
                                     wm_pixels_ref (self));
}

cairo_surface_t *
wm_pixels_get_surface (WmPixels *self)
{
  cairo_surface_t *surface = cairo_image_surface_create_for_data (
      self->data, CAIRO_FORMAT_ARGB32, self->width, self->height, (int)self->stride);

  if (cairo_surface_set_user_data (surface, &surface_key, wm_pixels_ref (self),
                                   (cairo_destroy_func_t)wm_pixels_unref)
      != CAIRO_STATUS_SUCCESS)
    wm_pixels_unref (self);

  return surface;
}
