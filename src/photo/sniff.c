/* sniff.c: what kind of file this is, by its first bytes
 *
 * The signatures are those of the formats' own specifications, from memory;
 * tests/photo meets each with a file made by another program.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/sniff.h"

#include <glib/gi18n-lib.h>
#include <string.h>

typedef struct
{
  const char *bytes;
  gsize length;
  gsize at;
  const char *what; /* N_() */
} Signature;

static const Signature not_photos[] = {
  { "%PDF-", 5, 0, N_ ("it is a PDF document") },
  { "PK\003\004", 4, 0, N_ ("it is a ZIP archive or an office document") },
  { "7z\274\257", 4, 0, N_ ("it is an archive") },
  { "\037\213", 2, 0, N_ ("it is a compressed file") },
  { "\177ELF", 4, 0, N_ ("it is a program") },
  { "\032\105\337\243", 4, 0, N_ ("it is a film") },
  { "OggS", 4, 0, N_ ("it is a film or a sound") },
  { "ID3", 3, 0, N_ ("it is a sound") },
  { "WAVE", 4, 8, N_ ("it is a sound") },
  { "AVI ", 4, 8, N_ ("it is a film") },
  { "SQLite format 3", 15, 0, N_ ("it is a database") },
  { "<!DOCTYPE", 9, 0, N_ ("it is a web page") },
  { "<html", 5, 0, N_ ("it is a web page") },
  { "#!", 2, 0, N_ ("it is a script") }
};

static const Signature other_pictures[] = { { "GIF8", 4, 0, "GIF" },
                                            { "BM", 2, 0, "BMP" },
                                            { "8BPS", 4, 0, "PSD" },
                                            { "\0\0\0\014jP  ", 8, 0, "JPEG 2000" },
                                            { "\377\012", 2, 0, "JPEG XL" },
                                            { "\0\0\0\014JXL ", 8, 0, "JPEG XL" },
                                            { "<svg", 4, 0, "SVG" },
                                            { "<?xml", 5, 0, "XML" },
                                            { "gimp xcf", 8, 0, "XCF" },
                                            { "II*\0\020\0\0\0CR", 10, 0, "CR2" },
                                            { "FUJIFILMCCD-RAW", 15, 0, "RAF" },
                                            { "IIRO", 4, 0, "ORF" },
                                            { "IIU\0", 4, 0, "RW2" } };

static const char *const heic_brands[] = { "heic", "heix", "heim", "heis", "mif1" };
static const char *const avif_brands[] = { "avif", "avis" };

static gboolean
matches (const guint8 *head, gsize got, const Signature *signature)
{
  return got >= signature->at + signature->length
         && memcmp (head + signature->at, signature->bytes, signature->length) == 0;
}

static gboolean
is_brand (const guint8 *head, const char *const *brands, gsize count)
{
  for (gsize i = 0; i < count; i++)
    if (memcmp (head + 8, brands[i], 4) == 0)
      return TRUE;

  return FALSE;
}

/* "mif1" says only "a still picture": the compatible brands say which coding. */
static WmPhotoFormat
heif_format (const guint8 *head, gsize got)
{
  if (is_brand (head, avif_brands, G_N_ELEMENTS (avif_brands)))
    return WM_PHOTO_AVIF;
  for (gsize at = 16; at + 4 <= got && at < 48; at += 4)
    if (memcmp (head + at, "avif", 4) == 0)
      return WM_PHOTO_AVIF;

  return WM_PHOTO_HEIC;
}

static gboolean
sniff_photo (const guint8 *head, gsize got, WmPhotoFormat *format)
{
  if (got >= 3 && memcmp (head, "\377\330\377", 3) == 0)
    *format = WM_PHOTO_JPEG;
  else if (got >= 8 && memcmp (head, "\211PNG\r\n\032\n", 8) == 0)
    *format = WM_PHOTO_PNG;
  else if (got >= 4
           && (memcmp (head, "II*\0", 4) == 0 || memcmp (head, "MM\0*", 4) == 0
               || memcmp (head, "II+\0", 4) == 0 || memcmp (head, "MM\0+", 4) == 0))
    *format = WM_PHOTO_TIFF;
  else if (got >= 12 && memcmp (head, "RIFF", 4) == 0
           && memcmp (head + 8, "WEBP", 4) == 0)
    *format = WM_PHOTO_WEBP;
  else if (got >= 12 && memcmp (head + 4, "ftyp", 4) == 0
           && (is_brand (head, heic_brands, G_N_ELEMENTS (heic_brands))
               || is_brand (head, avif_brands, G_N_ELEMENTS (avif_brands))))
    *format = heif_format (head, got);
  else
    return FALSE;

  return TRUE;
}

gboolean
wm_photo_sniff (WmSource *source, WmPhotoFormat *format, GError **error)
{
  guint8 head[64] = { 0 };
  gsize got = wm_source_read (source, 0, head, sizeof head);

  for (gsize i = 0; i < G_N_ELEMENTS (other_pictures); i++)
    if (matches (head, got, &other_pictures[i]))
      {
        wm_photo_set_error (error, WM_PHOTO_ERROR_NOT_READ_HERE, source->name,
                            other_pictures[i].what);
        return FALSE;
      }

  if (sniff_photo (head, got, format))
    return TRUE;

  for (gsize i = 0; i < G_N_ELEMENTS (not_photos); i++)
    if (matches (head, got, &not_photos[i]))
      {
        wm_photo_set_error (error, WM_PHOTO_ERROR_WRONG_KIND, source->name,
                            _ (not_photos[i].what));
        return FALSE;
      }

  if (got >= 12 && memcmp (head + 4, "ftyp", 4) == 0)
    wm_photo_set_error (error, WM_PHOTO_ERROR_WRONG_KIND, source->name,
                        _ ("it is a film"));
  else
    wm_photo_set_error (error, WM_PHOTO_ERROR_NOT_A_PICTURE, source->name, NULL);

  return FALSE;
}
