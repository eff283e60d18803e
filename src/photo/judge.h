/* judge.h: is this photo good enough to show what it is to show?
 *
 * Focus is measured on edges only, by blurring each a little more (focus.h; the
 * reblur idea of the reckoning reference, section 8): so a plain polished bangle is
 * judged by its few edges and not by its bare metal, and grain does not pass for
 * sharpness. judge.c says on which photos the limits were chosen.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/pixels.h"
#include "reckon/point.h"

#include <gio/gio.h>

typedef enum
{
  WM_VERDICT_GOOD,
  WM_VERDICT_USABLE,
  WM_VERDICT_RETAKE
} WmVerdict;

typedef enum
{
  WM_REASON_SOFT = 1 << 0,     /* focus is a little soft */
  WM_REASON_BLURRED = 1 << 1,  /* out of focus */
  WM_REASON_SHAKEN = 1 << 2,   /* blurred along one direction */
  WM_REASON_BLOWN = 1 << 3,    /* large areas burnt out to white */
  WM_REASON_BLOCKED = 1 << 4,  /* large areas lost in black */
  WM_REASON_SMALL = 1 << 5,    /* too few pixels */
  WM_REASON_NO_DETAIL = 1 << 6 /* nothing in the picture to judge focus by */
} WmReason;

typedef struct
{
  double focus;          /* 0 blurred .. 1 sharp; NAN when there is no detail */
  double reblur;         /* slope kept by a second blur, 0.5 sharp .. 1; or NAN */
  double clipped_bright; /* share of pixels at the top in every channel, 0..1 */
  double clipped_dark;   /* share of pixels at the bottom in every channel, 0..1 */
  double shake;          /* 0 even .. 1 blurred along one direction only */
  double shake_degrees;  /* direction of the movement, 0..180 from east, y down */
  WmVerdict verdict;
  guint reasons; /* WmReason together; 0 when good */
} WmJudgement;

/**
 * wm_photo_judge:
 *
 * Judges a file, on a view of 2400 px or more (true pixels up to 4800). Takes some
 * tenths of a second: off the interface thread.
 */
gboolean wm_photo_judge (const char *path, WmJudgement *out, GCancellable *cancellable,
                         GError **error);

/**
 * wm_photo_judge_pixels:
 * @pixels: at true pixels, or scaled down by @scale
 * @scale: photo px per pixel of @pixels, at least 1 (a scaled view hides blur:
 *   the result then holds for the view only)
 */
void wm_photo_judge_pixels (WmPixels *pixels, double scale, WmJudgement *out);

/**
 * wm_photo_focus_at:
 * @place: photo px
 * @radius: photo px around it, 16 to 512
 *
 * Focus around one mark. Returns NAN in @focus where there is no detail.
 */
gboolean wm_photo_focus_at (const char *path, WmPoint place, double radius, double *focus,
                            GCancellable *cancellable, GError **error);

/* What the verdicts on a whole photo call soft, and out of focus, of a @focus as it is
 * given for a place or a block. NAN, nothing to judge by, is neither. */
gboolean wm_focus_is_soft (double focus);
gboolean wm_focus_is_blurred (double focus);

/**
 * wm_focus_map:
 * @pixels: at true pixels or scaled
 * @block: px, 8 to 256
 *
 * Returns: (transfer full): one byte a block, row by row, *@columns by *@rows:
 * 0 no detail, 1 blurred .. 255 sharp; for the focus tint
 */
guint8 *wm_focus_map (WmPixels *pixels, int block, int *columns, int *rows);

/* "good", "usable", "retake": stable, for --json and archives. */
const char *wm_verdict_code (WmVerdict verdict);

/* Translated: "sharp, well lit" ... the one line beside the photo. */
char *wm_judgement_summary (const WmJudgement *judgement);

/* NULL-terminated stable codes: "soft" "blurred" "shaken" "blown" "blocked" "small"
 * "no-detail". (transfer container) */
const char **wm_judgement_reason_codes (const WmJudgement *judgement);

/* Translated: what is wrong, and what to do about it, for one reason. */
const char *wm_reason_words (WmReason reason);
const char *wm_reason_advice (WmReason reason);
