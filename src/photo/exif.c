/* exif.c: the few EXIF entries that matter here
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/exif.h"

#include <stdio.h>
#include <string.h>

/* More than any camera writes (about 60 in the largest directory we have seen);
 * a directory that claims more is read this far. */
#define EXIF_MAX_ENTRIES 512

enum
{
  TAG_NEW_SUBFILE_TYPE = 0x00FE,
  TAG_ORIENTATION = 0x0112,
  TAG_X_RESOLUTION = 0x011A,
  TAG_RESOLUTION_UNIT = 0x0128,
  TAG_EXIF_DIRECTORY = 0x8769,
  TAG_GPS_DIRECTORY = 0x8825,
  TAG_DATE_TIME_ORIGINAL = 0x9003,
  TAG_OFFSET_TIME_ORIGINAL = 0x9011,
  TAG_DNG_VERSION = 0xC612
};

enum
{
  TYPE_ASCII = 2,
  TYPE_SHORT = 3,
  TYPE_LONG = 4,
  TYPE_RATIONAL = 5
};

typedef struct
{
  WmSource *source;
  gint64 base;
  gint64 length;
  gboolean is_big_endian;
} Reader;

typedef struct
{
  guint16 tag;
  guint16 type;
  guint32 count;
  guint8 value[4];
} Entry;

static gboolean
read_at (Reader *reader, guint32 offset, void *buffer, gsize length)
{
  if ((gint64)offset + (gint64)length > reader->length)
    return FALSE;

  return wm_source_read_exactly (reader->source, reader->base + offset, buffer, length);
}

static guint16
get_16 (Reader *reader, const guint8 *b)
{
  return reader->is_big_endian ? b[0] << 8 | b[1] : b[1] << 8 | b[0];
}

static guint32
get_32 (Reader *reader, const guint8 *b)
{
  return reader->is_big_endian
             ? (guint32)b[0] << 24 | (guint32)b[1] << 16 | (guint32)b[2] << 8 | b[3]
             : (guint32)b[3] << 24 | (guint32)b[2] << 16 | (guint32)b[1] << 8 | b[0];
}

static guint32
entry_number (Reader *reader, const Entry *entry)
{
  return entry->type == TYPE_SHORT ? get_16 (reader, entry->value)
                                   : get_32 (reader, entry->value);
}

/* Copies an ASCII entry; a text that does not fit or is not plain ASCII stays "". */
static void
read_text (Reader *reader, const Entry *entry, char *out, gsize size)
{
  char text[32] = { 0 };

  if (entry->type != TYPE_ASCII || entry->count == 0 || entry->count > sizeof text - 1)
    return;
  if (entry->count <= 4)
    memcpy (text, entry->value, entry->count);
  else if (!read_at (reader, get_32 (reader, entry->value), text, entry->count))
    return;

  g_strchomp (text);
  if (strlen (text) < size && g_str_is_ascii (text))
    g_strlcpy (out, text, size);
}

static double
read_rational (Reader *reader, const Entry *entry)
{
  guint8 b[8];
  guint32 over, under;

  if (entry->type != TYPE_RATIONAL
      || !read_at (reader, get_32 (reader, entry->value), b, sizeof b))
    return 0;

  over = get_32 (reader, b);
  under = get_32 (reader, b + 4);
  return under == 0 ? 0 : (double)over / under;
}

static void
take_entry (Reader *reader, const Entry *entry, WmExif *out, guint32 *exif_at)
{
  guint32 number = entry_number (reader, entry);

  switch (entry->tag)
    {
    case TAG_NEW_SUBFILE_TYPE:
      out->is_raw |= (number & 1) != 0;
      break;
    case TAG_DNG_VERSION:
      out->is_raw = TRUE;
      break;
    case TAG_ORIENTATION:
      if (number >= 1 && number <= 8)
        out->orientation = (int)number;
      break;
    case TAG_X_RESOLUTION:
      out->x_resolution = read_rational (reader, entry);
      break;
    case TAG_RESOLUTION_UNIT:
      out->resolution_unit = number == 2 || number == 3 ? (int)number : 0;
      break;
    case TAG_EXIF_DIRECTORY:
      *exif_at = number;
      break;
    case TAG_GPS_DIRECTORY:
      out->has_gps = TRUE;
      break;
    case TAG_DATE_TIME_ORIGINAL:
      read_text (reader, entry, out->taken, sizeof out->taken);
      break;
    case TAG_OFFSET_TIME_ORIGINAL:
      read_text (reader, entry, out->taken_offset, sizeof out->taken_offset);
      break;
    default:
      break;
    }
}

static gboolean
read_directory (Reader *reader, guint32 offset, WmExif *out, guint32 *exif_at)
{
  guint8 b[12];
  guint count;

  if (!read_at (reader, offset, b, 2))
    return FALSE;

  count = MIN (get_16 (reader, b), EXIF_MAX_ENTRIES);
  for (guint i = 0; i < count; i++)
    {
      Entry entry;

      if (!read_at (reader, offset + 2 + 12 * i, b, 12))
        return i > 0;
      entry.tag = get_16 (reader, b);
      entry.type = get_16 (reader, b + 2);
      entry.count = get_32 (reader, b + 4);
      memcpy (entry.value, b + 8, 4);
      take_entry (reader, &entry, out, exif_at);
    }

  return TRUE;
}

gboolean
wm_exif_read (WmSource *source, gint64 base, gint64 length, WmExif *out)
{
  Reader reader = { .source = source, .base = base, .length = length };
  guint8 b[8];
  guint32 exif_at = 0, ignored = 0;

  memset (out, 0, sizeof *out);
  if (!read_at (&reader, 0, b, sizeof b))
    return FALSE;
  if (memcmp (b, "II*\0", 4) != 0 && memcmp (b, "MM\0*", 4) != 0)
    return FALSE;

  reader.is_big_endian = b[0] == 'M';
  if (!read_directory (&reader, get_32 (&reader, b + 4), out, &exif_at))
    return FALSE;
  if (exif_at != 0)
    read_directory (&reader, exif_at, out, &ignored);

  return TRUE;
}

static gboolean
parse_offset (const char *text, int *offset_s)
{
  int hours, minutes;

  if (strlen (text) != 6 || (text[0] != '+' && text[0] != '-')
      || sscanf (text + 1, "%2d:%2d", &hours, &minutes) != 2)
    return FALSE;
  /* The widest civil offsets are -12:00 and +14:00. */
  if (hours < 0 || hours > 14 || minutes < 0 || minutes > 59)
    return FALSE;

  *offset_s = (text[0] == '-' ? -60 : 60) * (hours * 60 + minutes);
  return TRUE;
}

gboolean
wm_exif_get_taken (const WmExif *exif, gint64 *taken_us, gboolean *offset_known,
                   int *offset_s)
{
  g_autoptr (GTimeZone) zone = NULL;
  g_autoptr (GDateTime) when = NULL;
  int year, month, day, hour, minute, second;

  if (strlen (exif->taken) != 19
      || sscanf (exif->taken, "%4d:%2d:%2d %2d:%2d:%2d", &year, &month, &day, &hour,
                 &minute, &second)
             != 6)
    return FALSE;

  *offset_known = parse_offset (exif->taken_offset, offset_s);
  if (*offset_known)
    zone = g_time_zone_new_offset (*offset_s);
  else
    zone = g_time_zone_new_local ();

  /* GLib returns NULL for what is no date; a blank clock writes 0000:00:00. */
  when = g_date_time_new (zone, year, month, day, hour, minute, second);
  if (when == NULL)
    return FALSE;

  *taken_us = g_date_time_to_unix (when) * G_USEC_PER_SEC;
  return TRUE;
}
