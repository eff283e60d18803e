/* pixels.h: a block of pixels in memory, the one form in which this room
 * hands pictures out
 *
 * Four bytes a pixel: blue, green, red, alpha, premultiplied, sRGB, upright,
 * top row first. That is GDK_MEMORY_B8G8R8A8_PREMULTIPLIED everywhere and
 * CAIRO_FORMAT_ARGB32 on little-endian machines (the build refuses others).
 * Photos are always opaque (alpha 255): transparent places are shown on white.
 * Filled by its maker, then only read; counted references, any thread.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <cairo.h>
#include <glib.h>

typedef struct
{
  int width;    /* px, at least 1 */
  int height;   /* px, at least 1 */
  gsize stride; /* bytes from one row to the next, width * 4 */
  guint8 *data; /* stride * height bytes */
} WmPixels;

/* Returns NULL when there is not enough memory or a side is outside 1..65535;
 * the pixels are transparent black. */
WmPixels *wm_pixels_new (int width, int height);
WmPixels *wm_pixels_ref (WmPixels *self);
void wm_pixels_unref (WmPixels *self);

/* Both share the pixels and hold a reference to them: nothing is copied. The
 * bytes are for gdk_memory_texture_new (). The surface is the caller's. */
GBytes *wm_pixels_get_bytes (WmPixels *self);
cairo_surface_t *wm_pixels_get_surface (WmPixels *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (WmPixels, wm_pixels_unref)
