/* probe.c: what a file says about its picture
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/probe.h"

#include "photo/exif.h"
#include "photo/jpeg-segments.h"
#include "photo/open.h"
#include "photo/png-chunks.h"
#include "photo/probe-source.h"
#include "photo/sniff.h"

#include <glib/gi18n-lib.h>
#include <string.h>

typedef struct
{
  const char *name, *suffix, *mime;
} FormatNames;

static const FormatNames format_names[] = {
  [WM_PHOTO_JPEG] = { "jpeg", ".jpg", "image/jpeg" },
  [WM_PHOTO_PNG] = { "png", ".png", "image/png" },
  [WM_PHOTO_TIFF] = { "tiff", ".tif", "image/tiff" },
  [WM_PHOTO_WEBP] = { "webp", ".webp", "image/webp" },
  [WM_PHOTO_HEIC] = { "heic", ".heic", "image/heic" },
  [WM_PHOTO_AVIF] = { "avif", ".avif", "image/avif" }
};

static gboolean
refuse (WmSource *source, WmPhotoErrorCode code, const char *detail, GError **error)
{
  wm_photo_set_error (error, code, source->name, detail);
  return FALSE;
}

static void
take_exif (WmPhotoFacts *facts, const WmExif *exif)
{
  if (exif->orientation != 0)
    facts->orientation = exif->orientation;
  if (exif->x_resolution > 0 && facts->dpi <= 0)
    facts->dpi = exif->x_resolution * (exif->resolution_unit == 3 ? 2.54 : 1.0);
  facts->has_gps |= exif->has_gps;
  if (!facts->has_taken_at)
    facts->has_taken_at = wm_exif_get_taken (exif, &facts->taken_at_us,
                                             &facts->offset_known, &facts->offset_s);
}

static void
read_exif_at (WmSource *source, gint64 at, gint64 length, WmPhotoFacts *facts)
{
  WmExif exif;

  if (wm_exif_read (source, at, length, &exif))
    take_exif (facts, &exif);
}

/* Whether so many compressed bytes can hold so many blocks at all: Huffman codes
 * have at least one bit, and every block has at least one code. */
static gboolean
has_bytes_for_blocks (const WmJpegHeader *header, gint64 scan_bytes)
{
  gint64 mcus = (gint64)((header->width - 1) / (8 * header->max_h) + 1)
                * ((header->height - 1) / (8 * header->max_v) + 1);

  return scan_bytes >= mcus * header->blocks_per_mcu / 8;
}

static gboolean
ends_with_eoi (WmSource *source)
{
  guint8 tail[256];
  gsize want = MIN ((gint64)sizeof tail, source->size);
  gsize got = wm_source_read (source, source->size - want, tail, want);

  for (gsize i = 0; i + 1 < got; i++)
    if (tail[i] == 0xFF && tail[i + 1] == 0xD9)
      return TRUE;

  return FALSE;
}

static gboolean
probe_jpeg (WmSource *source, WmPhotoFacts *facts, GError **error)
{
  WmJpegHeader header;
  gboolean is_arithmetic;

  if (!wm_jpeg_header_read (source, &header, error))
    return FALSE;

  is_arithmetic = header.sof == 0xC9 || header.sof == 0xCA;
  if (header.precision != 8 || (header.sof > 0xC2 && !is_arithmetic))
    return refuse (source, WM_PHOTO_ERROR_NOT_READ_HERE,
                   _ ("a JPEG of a rare kind: lossless or more than 8 bit"), error);
  if (header.width == 0 || header.height == 0)
    return refuse (source, WM_PHOTO_ERROR_LYING, NULL, error);

  facts->coded_width = header.width;
  facts->coded_height = header.height;
  facts->is_progressive = header.sof == 0xC2 || header.sof == 0xCA;
  facts->is_grey = header.components == 1;
  facts->is_cmyk = header.components == 4;
  facts->has_icc = header.has_icc;
  facts->dpi = header.dpi;
  if (header.exif_at != 0)
    read_exif_at (source, header.exif_at, header.exif_length, facts);

  if (!is_arithmetic && !has_bytes_for_blocks (&header, source->size - header.scan_at))
    return refuse (
        source, ends_with_eoi (source) ? WM_PHOTO_ERROR_LYING : WM_PHOTO_ERROR_TRUNCATED,
        NULL, error);

  return TRUE;
}

static gboolean
probe_png (WmSource *source, WmPhotoFacts *facts, GError **error)
{
  WmPngHeader header;

  if (!wm_png_header_read (source, &header, error))
    return FALSE;

  facts->coded_width = (int)header.width;
  facts->coded_height = (int)header.height;
  facts->is_progressive = header.is_interlaced;
  facts->is_grey = (header.colour_type & 2) == 0;
  facts->has_icc = header.has_icc;
  facts->pages = header.frames;
  facts->dpi = header.dpi;
  if (header.exif_at != 0)
    read_exif_at (source, header.exif_at, header.exif_length, facts);

  return TRUE;
}

static void
read_vips_exif (WmVipsImage *image, WmPhotoFacts *facts)
{
  const void *data = NULL;
  gsize size = 0;
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (WmSource) blob = NULL;

  if (vips_image_get_typeof (image, VIPS_META_EXIF_NAME) == 0
      || vips_image_get_blob (image, VIPS_META_EXIF_NAME, &data, &size) || size < 8)
    return;

  if (memcmp (data, "Exif\0", 5) == 0)
    {
      data = (const guint8 *)data + 6;
      size -= 6;
    }
  bytes = g_bytes_new_static (data, size);
  blob = wm_source_new_bytes (bytes, "exif", NULL);
  if (blob != NULL)
    read_exif_at (blob, 0, (gint64)size, facts);
}

/* TIFF, WebP, HEIC and AVIF: the libraries' own readers of the header. */
static gboolean
probe_with_vips (WmSource *source, WmPhotoFacts *facts, GError **error)
{
  g_autoptr (WmVipsImage) image = NULL;
  WmExif exif;
  gboolean has_exif =
      facts->format == WM_PHOTO_TIFF && wm_exif_read (source, 0, source->size, &exif);

  if (has_exif && exif.is_raw)
    return refuse (source, WM_PHOTO_ERROR_NOT_READ_HERE, _ ("a camera's raw file"),
                   error);

  image = wm_photo_open (source, facts->format, FALSE, error);
  if (image == NULL)
    return FALSE;

  facts->coded_width = image->Xsize;
  facts->coded_height = image->Ysize;
  facts->is_grey = image->Bands < 3;
  facts->is_cmyk = image->Type == VIPS_INTERPRETATION_CMYK;
  facts->has_icc = vips_image_get_typeof (image, VIPS_META_ICC_NAME) != 0;
  facts->pages = MAX (1, vips_image_get_n_pages (image));

  if (has_exif)
    take_exif (facts, &exif);
  else
    read_vips_exif (image, facts);

  /* libheif has turned the picture already, whatever the EXIF in it says. */
  if (facts->format == WM_PHOTO_HEIC || facts->format == WM_PHOTO_AVIF)
    facts->orientation = 1;

  return TRUE;
}

static gboolean
check_size (WmSource *source, const WmPhotoFacts *facts, GError **error)
{
  gint64 pixels = (gint64)facts->coded_width * facts->coded_height;
  gboolean is_whole = facts->is_progressive || facts->format == WM_PHOTO_WEBP
                      || facts->format == WM_PHOTO_HEIC || facts->format == WM_PHOTO_AVIF;
  g_autofree char *size = g_strdup_printf (_ ("it says it is %d × %d pixels"),
                                           facts->coded_width, facts->coded_height);

  if (facts->coded_width > WM_PHOTO_MAX_SIDE || facts->coded_height > WM_PHOTO_MAX_SIDE
      || pixels > (is_whole ? WM_PHOTO_MAX_PIXELS_WHOLE : WM_PHOTO_MAX_PIXELS))
    return refuse (source, WM_PHOTO_ERROR_TOO_LARGE, size, error);
  if (pixels < 1)
    return refuse (source, WM_PHOTO_ERROR_LYING, size, error);

  return TRUE;
}

WmPhotoFacts *
wm_photo_probe_source (WmSource *source, GError **error)
{
  g_autoptr (WmPhotoFacts) facts = g_new0 (WmPhotoFacts, 1);
  gboolean done;

  facts->orientation = 1;
  facts->pages = 1;
  facts->file_size = source->size;
  if (!wm_photo_sniff (source, &facts->format, error))
    return NULL;

  if (facts->format == WM_PHOTO_JPEG)
    done = probe_jpeg (source, facts, error);
  else if (facts->format == WM_PHOTO_PNG)
    done = probe_png (source, facts, error);
  else
    done = probe_with_vips (source, facts, error);
  if (!done || !check_size (source, facts, error))
    return NULL;

  facts->width = facts->orientation > 4 ? facts->coded_height : facts->coded_width;
  facts->height = facts->orientation > 4 ? facts->coded_width : facts->coded_height;
  return g_steal_pointer (&facts);
}

WmPhotoFacts *
wm_photo_probe_file (const char *path, GError **error)
{
  g_autoptr (WmSource) source = wm_source_open (path, error);

  return source == NULL ? NULL : wm_photo_probe_source (source, error);
}

WmPhotoFacts *
wm_photo_probe_bytes (GBytes *bytes, const char *name, GError **error)
{
  g_autoptr (WmSource) source = wm_source_new_bytes (bytes, name, error);

  return source == NULL ? NULL : wm_photo_probe_source (source, error);
}

WmPhotoFacts *
wm_photo_facts_copy (const WmPhotoFacts *facts)
{
  return g_memdup2 (facts, sizeof *facts);
}

void
wm_photo_facts_free (WmPhotoFacts *facts)
{
  g_free (facts);
}

const char *
wm_photo_format_name (WmPhotoFormat format)
{
  return format_names[format].name;
}

const char *
wm_photo_format_suffix (WmPhotoFormat format)
{
  return format_names[format].suffix;
}

const char *
wm_photo_format_mime (WmPhotoFormat format)
{
  return format_names[format].mime;
}
