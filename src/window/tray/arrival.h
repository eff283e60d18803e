/* arrival.h: one file of the watched folder on its way to being a photo
 *
 * A file that is still being copied is waited for: it is read only when it has kept
 * its size and time for a while, and a picture that ends too early is read again
 * until it has not grown for WM_ARRIVAL_PATIENCE_S. The clock is given, so that this
 * can be tested without waiting.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gio/gio.h>

#include "photo/judge.h"
#include "photo/likeness.h"

/* Still for so long before it is read, and given up after; s (our choice: a phone's
 * sync folder pauses for seconds, not for a minute). */
#define WM_ARRIVAL_STILL_S 1
#define WM_ARRIVAL_PATIENCE_S 60

typedef enum
{
  WM_ARRIVAL_WAITING, /* may still be coming */
  WM_ARRIVAL_READING,
  WM_ARRIVAL_READY,
  WM_ARRIVAL_BROKEN, /* a picture, but not a whole one; @reason says why */
  WM_ARRIVAL_IGNORED /* no picture at all */
} WmArrivalState;

typedef struct
{
  char *path;
  char *name; /* fit to be shown */
  gint64 size;
  gint64 changed_us;
  gint64 still_since_us;
  gint64 retry_at_us;
  WmArrivalState state;
  gboolean aside;   /* no longer offered */
  gboolean taken;   /* because it came in */
  gboolean chosen;  /* comes in with the next "take in" */
  gboolean touched; /* chosen or not by hand: then left so */

  /* Of a ready one. */
  gint64 taken_at_us; /* by EXIF, else by the file */
  WmPixels *pixels;   /* a small picture */
  WmLikeness likeness;
  WmJudgement judgement;
  guint group, place, group_size; /* as burst-rule.h says */

  char *reason; /* whole sentences */
} WmArrival;

WmArrival *
wm_arrival_new (const char *path, gint64 size, gint64 changed_us, gint64 now_us);
void wm_arrival_free (WmArrival *self);

/* The file was looked at again. Returns: whether it is to be read now. */
gboolean wm_arrival_look (WmArrival *self, gint64 size, gint64 changed_us, gint64 now_us);

/* What reading a file gave; made off the main thread. */
typedef struct
{
  gint64 taken_at_us; /* 0: the file does not say */
  WmPixels *pixels;
  WmLikeness likeness;
  WmJudgement judgement;
} WmArrivalFacts;

/* Reads it whole, in a process of its own first. Blocks. NULL with the error set. */
WmArrivalFacts *
wm_arrival_read (const char *path, GCancellable *cancellable, GError **error);
void wm_arrival_facts_free (WmArrivalFacts *facts);

/* Takes what reading gave: @facts (nullable) stays the caller's; else @error. */
void wm_arrival_take (WmArrival *self, const WmArrivalFacts *facts, const GError *error,
                      gint64 now_us);
