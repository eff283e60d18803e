/* row-source.c: a photo as rows from the top down
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/row-source.h"

#include "photo/jpeg-read.h"
#include "photo/load.h"
#include "photo/open.h"
#include "photo/probe-source.h"

#include <math.h>
#include <string.h>

/* Exactly one of reader, region and pixels is set. */
struct _WmRowSource
{
  WmSource *source;
  WmPhotoFacts *facts;
  GCancellable *cancellable;
  int width, height;
  int next;
  WmJpegReader *reader;
  VipsRegion *region;
  WmVipsImage *image;
  WmPixels *pixels;
};

static VipsImage *
turn_image (VipsImage *image, int orientation)
{
  static const struct
  {
    int is_flipped; /* left to right, first */
    VipsAngle angle;
  } ways[9] = { { 0, VIPS_ANGLE_D0 },   { 0, VIPS_ANGLE_D0 },   { 1, VIPS_ANGLE_D0 },
                { 0, VIPS_ANGLE_D180 }, { 1, VIPS_ANGLE_D180 }, { 1, VIPS_ANGLE_D270 },
                { 0, VIPS_ANGLE_D90 },  { 1, VIPS_ANGLE_D90 },  { 0, VIPS_ANGLE_D270 } };
  VipsImage *flipped = NULL;
  VipsImage *turned = NULL;

  if (ways[orientation].is_flipped
          ? vips_flip (image, &flipped, VIPS_DIRECTION_HORIZONTAL, NULL)
          : vips_copy (image, &flipped, NULL))
    return NULL;
  if (vips_rot (flipped, &turned, ways[orientation].angle, NULL))
    turned = NULL;
  g_object_unref (flipped);
  return turned;
}

/* A large photo that has to be turned is unpacked into a temporary file, which
 * libvips removes again, and read from there in its new order. */
static gboolean
unpack_and_turn (WmRowSource *self, GError **error)
{
  g_autoptr (WmVipsImage) waiting = vips_image_new_temp_file ("%s.v");
  VipsImage *turned;

  if (waiting == NULL || vips_image_write (self->image, waiting)
      || (turned = turn_image (waiting, self->facts->orientation)) == NULL)
    {
      wm_vips_set_error (error, self->source->name, self->cancellable);
      return FALSE;
    }

  g_object_unref (self->image);
  self->image = turned;
  return TRUE;
}

static gboolean
open_streaming (WmRowSource *self, GError **error)
{
  gboolean is_turned = self->facts->orientation > 4;

  self->image = wm_photo_open_srgb (self->source, self->facts->format, FALSE, error);
  if (self->image != NULL)
    self->image = wm_vips_scale_to (
        g_steal_pointer (&self->image), is_turned ? self->height : self->width,
        is_turned ? self->width : self->height, self->source->name, error);
  if (self->image == NULL)
    return FALSE;
  if (self->facts->orientation != 1 && !unpack_and_turn (self, error))
    return FALSE;

  self->region = vips_region_new (self->image);
  return TRUE;
}

/* The DCT scale that gives exactly the wanted size, or 0. */
static int
exact_denom (const WmRowSource *self)
{
  for (int denom = 1; denom <= 8; denom *= 2)
    if ((self->facts->coded_width - 1) / denom + 1 == self->width
        && (self->facts->coded_height - 1) / denom + 1 == self->height)
      return denom;

  return 0;
}

static gboolean
open_rows (WmRowSource *self, const char *path, GError **error)
{
  gboolean is_small = (gint64)self->width * self->height <= WM_ROWS_IN_MEMORY;
  gboolean is_jpeg = wm_jpeg_is_usual (self->facts);
  int denom = exact_denom (self);

  if (is_jpeg && self->facts->orientation == 1 && denom != 0)
    {
      self->reader =
          wm_jpeg_reader_new (self->source, denom, NULL, self->cancellable, error);
      return self->reader != NULL;
    }

  if (is_small && (is_jpeg || self->facts->orientation != 1))
    {
      self->pixels =
          wm_photo_load_fit (path, self->width, self->height, self->cancellable, error);
      if (self->pixels == NULL)
        return FALSE;
      self->width = self->pixels->width;
      self->height = self->pixels->height;
      return TRUE;
    }

  return open_streaming (self, error);
}

WmRowSource *
wm_row_source_new (const char *path, int long_side, GCancellable *cancellable,
                   GError **error)
{
  g_autoptr (WmRowSource) self = g_new0 (WmRowSource, 1);
  double scale;

  g_set_object (&self->cancellable, cancellable);
  self->source = wm_source_open (path, error);
  if (self->source != NULL)
    self->facts = wm_photo_probe_source (self->source, error);
  if (self->facts == NULL)
    return NULL;

  scale = (double)long_side / MAX (self->facts->width, self->facts->height);
  if (long_side <= 0 || scale > 1)
    scale = 1;
  self->width = MAX (1, (int)lround (self->facts->width * scale));
  self->height = MAX (1, (int)lround (self->facts->height * scale));

  return open_rows (self, path, error) ? g_steal_pointer (&self) : NULL;
}

void
wm_row_source_free (WmRowSource *self)
{
  if (self == NULL)
    return;
  g_clear_object (&self->region);
  g_clear_object (&self->image);
  g_clear_pointer (&self->reader, wm_jpeg_reader_free);
  g_clear_pointer (&self->pixels, wm_pixels_unref);
  g_clear_pointer (&self->facts, wm_photo_facts_free);
  g_clear_pointer (&self->source, wm_source_free);
  g_clear_object (&self->cancellable);
  g_free (self);
}

int
wm_row_source_get_width (WmRowSource *self)
{
  return self->width;
}

int
wm_row_source_get_height (WmRowSource *self)
{
  return self->height;
}

double
wm_row_source_get_scale (WmRowSource *self)
{
  return (double)self->width / self->facts->width;
}

static gboolean
read_region (WmRowSource *self, WmPixels *strip, int rows, GError **error)
{
  VipsRect area = { 0, self->next, self->width, rows };

  if (vips_region_prepare (self->region, &area))
    {
      wm_vips_set_error (error, self->source->name, self->cancellable);
      return FALSE;
    }

  for (int y = 0; y < rows; y++)
    {
      const guint8 *from = VIPS_REGION_ADDR (self->region, 0, self->next + y);
      guint8 *to = strip->data + y * strip->stride;

      for (int x = 0; x < self->width; x++, from += 3, to += 4)
        {
          to[0] = from[2];
          to[1] = from[1];
          to[2] = from[0];
          to[3] = 255;
        }
    }

  return TRUE;
}

gboolean
wm_row_source_read (WmRowSource *self, WmPixels *strip, int rows, GError **error)
{
  if (g_cancellable_set_error_if_cancelled (self->cancellable, error))
    return FALSE;

  g_return_val_if_fail (strip->width == self->width, FALSE);
  g_return_val_if_fail (rows <= strip->height && self->next + rows <= self->height,
                        FALSE);

  if (self->reader != NULL)
    {
      if (!wm_jpeg_reader_read (self->reader, strip->data, strip->stride, rows, error))
        return FALSE;
    }
  else if (self->region != NULL)
    {
      if (!read_region (self, strip, rows, error))
        return FALSE;
    }
  else
    memcpy (strip->data, self->pixels->data + (gsize)self->next * self->pixels->stride,
            (gsize)rows * strip->stride);

  self->next += rows;
  return TRUE;
}
