/* id.c: time-ordered 128-bit keys
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "record/id.h"

#include <string.h>

/* RFC 9562, section 5.7: 48 bits of milliseconds, 4 of version, 12 and 62 of
 * ours. The 12 bits count within one millisecond (section 6.2, method 1). */
#define WM_SEQUENCE_MAX 0xfff

static GMutex last_lock;
static gint64 last_ms;
static guint last_sequence;

/* The next pair of time and sequence, always above the one before it. */
static void
take_tick (gint64 *out_ms, guint *out_sequence)
{
  gint64 now_ms = g_get_real_time () / 1000;

  g_mutex_lock (&last_lock);
  if (now_ms > last_ms)
    {
      last_ms = now_ms;
      last_sequence = 0;
    }
  else if (last_sequence < WM_SEQUENCE_MAX)
    {
      last_sequence++;
    }
  else
    {
      last_ms++;
      last_sequence = 0;
    }
  *out_ms = last_ms;
  *out_sequence = last_sequence;
  g_mutex_unlock (&last_lock);
}

WmId
wm_id_new (void)
{
  WmId id;
  gint64 ms;
  guint sequence;
  guint32 random[2] = { g_random_int (), g_random_int () };

  take_tick (&ms, &sequence);
  for (int i = 0; i < 6; i++)
    id.bytes[i] = (guint8)(ms >> (40 - 8 * i));
  id.bytes[6] = (guint8)(0x70 | sequence >> 8);
  id.bytes[7] = (guint8)sequence;
  memcpy (id.bytes + 8, random, 8);
  id.bytes[8] = (guint8)(0x80 | (id.bytes[8] & 0x3f));
  return id;
}

gboolean
wm_id_is_none (const WmId *id)
{
  static const WmId none = WM_ID_NONE;

  return memcmp (id, &none, sizeof none) == 0;
}

int
wm_id_compare (const WmId *a, const WmId *b)
{
  return memcmp (a->bytes, b->bytes, sizeof a->bytes);
}

gboolean
wm_id_equal (const WmId *a, const WmId *b)
{
  return wm_id_compare (a, b) == 0;
}

guint
wm_id_hash (gconstpointer id)
{
  guint32 word;

  /* The last bytes are the random ones. */
  memcpy (&word, ((const WmId *)id)->bytes + 12, sizeof word);
  return word;
}

gboolean
wm_id_equal_func (gconstpointer a, gconstpointer b)
{
  return wm_id_equal (a, b);
}

char *
wm_id_to_string (const WmId *id)
{
  GString *text = g_string_sized_new (36);

  for (int i = 0; i < 16; i++)
    {
      if (i == 4 || i == 6 || i == 8 || i == 10)
        g_string_append_c (text, '-');
      g_string_append_printf (text, "%02x", id->bytes[i]);
    }
  return g_string_free (text, FALSE);
}

gboolean
wm_id_from_string (const char *text, WmId *out_id)
{
  WmId id;

  if (text == NULL || strlen (text) != 36 || !g_uuid_string_is_valid (text))
    return FALSE;

  for (int i = 0; i < 16; i++)
    {
      if (*text == '-')
        text++;
      id.bytes[i] =
          (guint8)(g_ascii_xdigit_value (text[0]) << 4 | g_ascii_xdigit_value (text[1]));
      text += 2;
    }
  *out_id = id;
  return TRUE;
}
