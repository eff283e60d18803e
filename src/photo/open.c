/* open.c: foreign bytes as a libvips image
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/open.h"

#include "photo/photo-start.h"

#include <string.h>

/* Words by which libvips and the libraries below it say that bytes are missing. */
static const char *const truncation_words[] = {
  "truncated",  "premature",  "end of file", "end of stream",
  "not enough", "too few",    "read error",  "unexpected end",
  "read past",  "beyond end", "out of order"
};

void
wm_vips_set_error (GError **error, const char *name, GCancellable *cancellable)
{
  g_autofree char *said = vips_error_buffer_copy ();
  g_autofree char *lower = g_ascii_strdown (said, -1);
  WmPhotoErrorCode code = WM_PHOTO_ERROR_LYING;

  if (g_cancellable_set_error_if_cancelled (cancellable, error))
    return;

  for (gsize i = 0; i < G_N_ELEMENTS (truncation_words); i++)
    if (strstr (lower, truncation_words[i]) != NULL)
      code = WM_PHOTO_ERROR_TRUNCATED;
  if (strstr (lower, "out of memory") != NULL || strstr (lower, "unable to malloc"))
    code = WM_PHOTO_ERROR_NO_MEMORY;
  if (strstr (lower, "unsupported") != NULL || strstr (lower, "not configured") != NULL
      || strstr (lower, "no such operation") != NULL
      || strstr (lower, "operation is blocked") != NULL)
    code = WM_PHOTO_ERROR_NOT_READ_HERE;

  wm_photo_set_error (error, code, name, NULL);
}

WmVipsImage *
wm_photo_open (WmSource *source, WmPhotoFormat format, gboolean is_strict, GError **error)
{
  VipsSource *bytes;
  VipsImage *image = NULL;
  VipsFailOn fail_on = is_strict ? VIPS_FAIL_ON_TRUNCATED : VIPS_FAIL_ON_NONE;
  int failed = 1;

  wm_photo_start ();

  bytes = wm_source_to_vips (source);
  if (bytes == NULL)
    {
      wm_vips_set_error (error, source->name, NULL);
      return NULL;
    }

#define LOAD(loader)                                                                     \
  loader (bytes, &image, "access", VIPS_ACCESS_SEQUENTIAL, "fail_on", fail_on, NULL)
  switch (format)
    {
    case WM_PHOTO_JPEG:
      failed = LOAD (vips_jpegload_source);
      break;
    case WM_PHOTO_PNG:
      failed = LOAD (vips_pngload_source);
      break;
    case WM_PHOTO_TIFF:
      failed = LOAD (vips_tiffload_source);
      break;
    case WM_PHOTO_WEBP:
      failed = LOAD (vips_webpload_source);
      break;
    case WM_PHOTO_HEIC:
    case WM_PHOTO_AVIF:
      failed = LOAD (vips_heifload_source);
      break;
    default:
      break;
    }
#undef LOAD

  g_object_unref (bytes);
  if (failed)
    {
      wm_vips_set_error (error, source->name, NULL);
      return NULL;
    }

  return image;
}

/* Each step takes the image over and gives the next, or keeps the old one when it
 * can not be done: a photo with a broken profile is still shown. */
static void
step (VipsImage **image, VipsImage **next, int failed)
{
  if (failed)
    {
      vips_error_clear ();
      return;
    }

  g_object_unref (*image);
  *image = g_steal_pointer (next);
}

static double
white_of (VipsImage *image)
{
  if (image->Type == VIPS_INTERPRETATION_RGB16
      || image->Type == VIPS_INTERPRETATION_GREY16)
    return 65535;
  if (image->Type == VIPS_INTERPRETATION_scRGB)
    return 1.0;

  return 255;
}

static void
to_srgb (VipsImage **image)
{
  VipsImage *next = NULL;
  VipsArrayDouble *white;

  if (vips_image_hasalpha (*image))
    {
      white = vips_array_double_newv (1, white_of (*image));
      step (image, &next, vips_flatten (*image, &next, "background", white, NULL));
      vips_area_unref (VIPS_AREA (white));
    }

  if (vips_image_get_typeof (*image, VIPS_META_ICC_NAME) != 0
      || (*image)->Type == VIPS_INTERPRETATION_CMYK)
    {
      int failed = vips_icc_transform (
          *image, &next, "srgb", "embedded", TRUE, "input_profile",
          (*image)->Type == VIPS_INTERPRETATION_CMYK ? "cmyk" : "srgb", "intent",
          VIPS_INTENT_RELATIVE, "depth", 8, NULL);

      step (image, &next, failed);
    }

  step (image, &next, vips_colourspace (*image, &next, VIPS_INTERPRETATION_sRGB, NULL));
}

static gboolean
make_three_bytes (VipsImage **image)
{
  VipsImage *next = NULL;
  VipsImage *three[3];

  if ((*image)->Bands > 3)
    {
      if (vips_extract_band (*image, &next, 0, "n", 3, NULL))
        return FALSE;
    }
  else if ((*image)->Bands < 3)
    {
      if (vips_extract_band (*image, &next, 0, NULL))
        return FALSE;
      three[0] = three[1] = three[2] = next;
      next = NULL;
      if (vips_bandjoin (three, &next, 3, NULL))
        {
          g_object_unref (three[0]);
          return FALSE;
        }
      g_object_unref (three[0]);
    }
  if (next != NULL)
    {
      g_object_unref (*image);
      *image = next;
    }

  next = NULL;
  if ((*image)->BandFmt != VIPS_FORMAT_UCHAR)
    {
      if (vips_cast (*image, &next, VIPS_FORMAT_UCHAR, NULL))
        return FALSE;
      g_object_unref (*image);
      *image = next;
    }

  return TRUE;
}

WmVipsImage *
wm_photo_open_srgb (WmSource *source, WmPhotoFormat format, gboolean is_strict,
                    GError **error)
{
  VipsImage *image = wm_photo_open (source, format, is_strict, error);

  if (image == NULL)
    return NULL;

  to_srgb (&image);
  if (!make_three_bytes (&image))
    {
      wm_vips_set_error (error, source->name, NULL);
      g_object_unref (image);
      return NULL;
    }

  return image;
}

WmVipsImage *
wm_vips_scale_to (WmVipsImage *in, int width, int height, const char *name,
                  GError **error)
{
  VipsImage *scaled = NULL;
  VipsImage *cut = NULL;
  int failed;

  if (in->Xsize == width && in->Ysize == height)
    return in;

  failed = vips_resize (in, &scaled, (double)width / in->Xsize, "vscale",
                        (double)height / in->Ysize, NULL);
  g_object_unref (in);

  /* libvips rounds the size its own way: hold it to ours. */
  if (!failed && (scaled->Xsize != width || scaled->Ysize != height))
    {
      failed = vips_embed (scaled, &cut, 0, 0, width, height, "extend", VIPS_EXTEND_COPY,
                           NULL);
      g_object_unref (scaled);
      scaled = cut;
    }
  if (failed)
    {
      wm_vips_set_error (error, name, NULL);
      return NULL;
    }

  return scaled;
}

static void
on_progress (VipsImage *image, VipsProgress *progress, GCancellable *cancellable)
{
  if (g_cancellable_is_cancelled (cancellable))
    vips_image_set_kill (image, TRUE);
}

static int
take_region (VipsRegion *region, VipsRect *area, void *user_data)
{
  WmPixels *pixels = user_data;
  int bands = region->im->Bands;

  for (int y = area->top; y < area->top + area->height; y++)
    {
      const guint8 *from = VIPS_REGION_ADDR (region, area->left, y);
      guint8 *to = pixels->data + y * pixels->stride + (gsize)area->left * 4;

      if (bands == 4)
        memcpy (to, from, (gsize)area->width * 4);
      else
        for (int x = 0; x < area->width; x++, from += 3, to += 4)
          {
            to[0] = from[2];
            to[1] = from[1];
            to[2] = from[0];
            to[3] = 255;
          }
    }

  return 0;
}

WmPixels *
wm_vips_to_pixels (WmVipsImage *image, const char *name, GCancellable *cancellable,
                   GError **error)
{
  g_autoptr (WmPixels) pixels = wm_pixels_new (image->Xsize, image->Ysize);
  int failed;

  if (pixels == NULL)
    {
      wm_photo_set_error (error, WM_PHOTO_ERROR_NO_MEMORY, name, NULL);
      return NULL;
    }

  if (cancellable != NULL)
    {
      vips_image_set_progress (image, TRUE);
      g_signal_connect (image, "eval", G_CALLBACK (on_progress), cancellable);
    }

  failed = vips_sink_disc (image, take_region, pixels);
  if (cancellable != NULL)
    {
      g_signal_handlers_disconnect_by_func (image, on_progress, cancellable);
      vips_image_set_progress (image, FALSE);
    }
  if (failed)
    {
      wm_vips_set_error (error, name, cancellable);
      return NULL;
    }

  return g_steal_pointer (&pixels);
}

WmVipsImage *
wm_pixels_to_vips (WmPixels *pixels)
{
  wm_photo_start ();
  return vips_image_new_from_memory (pixels->data, pixels->stride * (gsize)pixels->height,
                                     pixels->width, pixels->height, 4, VIPS_FORMAT_UCHAR);
}
