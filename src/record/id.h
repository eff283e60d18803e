/* id.h: time-ordered 128-bit keys (RFC 9562, version 7)
 *
 * Time-ordered, so that inserting stays fast in a big archive; 128 random-enough
 * bits, so that archives of several workstations can be merged. Keys are for
 * the program; people read piece numbers (trade/number.h).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

/* Plain value; all zero bytes mean "none". */
typedef struct
{
  guint8 bytes[16];
} WmId;

#define WM_ID_NONE ((WmId) { { 0 } })

/**
 * wm_id_new:
 *
 * A key never given before in this process; later keys compare greater, also
 * within one millisecond and when the clock is set back. Safe on any thread.
 */
WmId wm_id_new (void);

gboolean wm_id_is_none (const WmId *id);
gboolean wm_id_equal (const WmId *a, const WmId *b);
int wm_id_compare (const WmId *a, const WmId *b);
guint wm_id_hash (gconstpointer id);
gboolean wm_id_equal_func (gconstpointer a, gconstpointer b);

/* The 36 characters of RFC 9562, section 4, lower case. Caller frees. */
char *wm_id_to_string (const WmId *id);

/* FALSE, and @out_id untouched, if @text is not such a string (either case). */
gboolean wm_id_from_string (const char *text, WmId *out_id);
