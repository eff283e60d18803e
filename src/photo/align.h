/* align.h: bringing two photos of the same piece into register
 *
 * The matrix carries a place on the after photo to the same place of the piece
 * on the before photo. It belongs to the piece, not to the cloth under it: the
 * cloth may have stayed while the piece was put back turned, or be another one.
 *
 * Places are photo pixels of the upright photo (reckon/point.h). Every call
 * here may take tens to hundreds of milliseconds: call it off the main thread.
 * All calls are safe on any thread and keep no state between them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gio/gio.h>

#include "reckon/point.h"
#include "reckon/result.h"

/* Why the answer is what it is. Names for JSON: wm_align_reason_name(). */
typedef enum
{
  WM_ALIGN_FOUND,      /* aligned, and every check of the answer held */
  WM_ALIGN_TOO_PLAIN,  /* too little on a photo to hold on to */
  WM_ALIGN_NO_MATCH,   /* nothing found that fits both: perhaps two pieces */
  WM_ALIGN_UNSURE,     /* something fits, but not well enough to be trusted */
  WM_ALIGN_AMBIGUOUS,  /* fits in more than one way (a plain round bangle) */
  WM_ALIGN_START_KEPT, /* wm_align_refine() only: the start fits as well */
  WM_ALIGN_WANDERED    /* the same: a better fit, but too far from the start */
} WmAlignReason;

/* Version of the way answers are found: raised with every change that can give
 * another answer, so that a kept answer can be told to be an older one's. */
#define WM_ALIGN_ENGINE_VERSION 3

/**
 * WmAlignment:
 * @aligned: the program vouches for @matrix
 * @matrix: after pixels to before pixels, row by row, matrix[8] is 1;
 *   the identity when there is no answer
 * @residual_px: median disagreement of the places of the piece that were
 *   compared, pixels of the before photo; 0 when there is no answer
 * @overlap: share of the before photo that the after photo covers, 0 to 1
 * @places: how many places of the piece were found again
 * @places_tried: out of so many that were looked for
 * @reason: why
 */
typedef struct
{
  gboolean aligned;
  double matrix[9];
  double residual_px;
  double overlap;
  int places;
  int places_tried;
  WmAlignReason reason;
} WmAlignment;

/**
 * WmAlignImage:
 *
 * Pixels to align: 8 bits a band; 1 band (grey), 3 (red, green, blue) or 4 (as
 * WmPixels: blue, green, red, and one that is not looked at); rows @stride bytes
 * apart. Borrowed, never written.
 */
typedef struct
{
  const guint8 *pixels;
  int width;
  int height;
  gsize stride;
  int bands;
} WmAlignImage;

/* Called on the working thread, @done from 0 to 1, never running back. */
typedef void (*WmAlignProgress) (double done, gpointer user_data);

/* Photos are worked on at most so long on their longer side. The demand on the
 * fit (under 3 pixels on the piece) is stated for a photo of this size. */
#define WM_ALIGN_WORK_PX 1600

/**
 * wm_align_photos:
 * @before_path, @after_path: photo files
 * @progress: (nullable): told how far the work is
 * @out: (out): written on success; photos that can not be aligned are a
 *   success with @aligned FALSE
 *
 * Returns: FALSE with @error when a file can not be read or the work was
 *   cancelled (G_IO_ERROR_CANCELLED)
 */
gboolean wm_align_photos (const char *before_path, const char *after_path,
                          GCancellable *cancellable, WmAlignProgress progress,
                          gpointer user_data, WmAlignment *out, GError **error);

/**
 * wm_align_images:
 *
 * As wm_align_photos(), for pixels in memory, best about 1600 px wide; larger
 * ones are reduced for the work. @matrix is in pixels of the images given.
 *
 * Returns: FALSE with @error when cancelled or when an image has no pixels
 */
gboolean wm_align_images (const WmAlignImage *before, const WmAlignImage *after,
                          GCancellable *cancellable, WmAlignProgress progress,
                          gpointer user_data, WmAlignment *out, GError **error);

/**
 * wm_align_from_points:
 * @before, @after: the same @n places on both photos
 * @n: 2 or more; 2 give a similarity (shift, turn, size), 3 an affine matrix, 4 a
 *   projective one, more the best fit of that
 * @matrix: (out): after pixels to before pixels; written on success only
 * @residual_px: (out) (optional): root mean square of what the fit leaves over,
 *   before pixels; 0 with up to 4 points, which always fit exactly
 *
 * Returns: WM_OK; WM_TOO_FEW; WM_NOT_A_NUMBER; WM_DEGENERATE when places
 *   coincide or lie on one line, or when the points would turn the photo
 *   over (two pairs exchanged)
 */
WmResult wm_align_from_points (const WmPoint *before, const WmPoint *after, int n,
                               double matrix[9], double *residual_px);

/**
 * wm_align_refine:
 * @start: after pixels to before pixels, from the jeweller's points
 * @out: (out): @aligned says whether the program found a measurably better fit
 *   near @start that passes its checks; otherwise @matrix is @start again and
 *   @reason says why. The jeweller's word stays final either way.
 *
 * Looks for the best fit near a start placed by hand (a few percent of the
 * photo's width away).
 *
 * Returns: FALSE with @error when a file can not be read or cancelled
 */
gboolean
wm_align_refine (const char *before_path, const char *after_path, const double start[9],
                 GCancellable *cancellable, WmAlignProgress progress, gpointer user_data,
                 WmAlignment *out, GError **error);

/* How far a refinement may carry a point away from where the hand put it, share of
 * the photo's longer side: as far as it looks (32 pixels of 1600). Farther, it has
 * slipped to something else. */
#define WM_ALIGN_MOST_SLIP 0.02

/**
 * wm_align_by_hand:
 * @before, @after: the same @n places on both photos, as for wm_align_from_points()
 * @hand_px: (out) (optional): root mean square distance, before pixels, between
 *   the hand's points on the before photo and where @out->matrix carries those of
 *   the after photo
 * @out: (out): @aligned TRUE: the points refined; otherwise @matrix is what
 *   wm_align_from_points() gives and @reason says why (WM_ALIGN_WANDERED: what was
 *   found lay farther than WM_ALIGN_MOST_SLIP from one of the points)
 *
 * Returns: FALSE with @error when a file can not be read, the work was cancelled or
 *   the points determine no matrix (G_IO_ERROR_INVALID_ARGUMENT)
 */
gboolean
wm_align_by_hand (const char *before_path, const char *after_path, const WmPoint *before,
                  const WmPoint *after, int n, GCancellable *cancellable,
                  WmAlignProgress progress, gpointer user_data, WmAlignment *out,
                  double *hand_px, GError **error);

/* Root mean square distance of @before from @after carried through @matrix. */
double wm_align_measure_points (const double matrix[9], const WmPoint *before,
                                const WmPoint *after, int n);

/* As wm_align_refine(), for pixels in memory. */
gboolean wm_align_refine_images (const WmAlignImage *before, const WmAlignImage *after,
                                 const double start[9], GCancellable *cancellable,
                                 WmAlignProgress progress, gpointer user_data,
                                 WmAlignment *out, GError **error);

/**
 * wm_align_reason_name:
 *
 * Returns: stable word for JSON: "found", "too-plain", "no-match", "unsure",
 *   "ambiguous", "start-kept", "wandered"
 */
const char *wm_align_reason_name (WmAlignReason reason);

/**
 * wm_align_reason_text:
 *
 * Returns: one English sentence for the jeweller with what to do next, marked
 *   for translation: pass it through gettext where it is shown
 */
const char *wm_align_reason_text (WmAlignReason reason);

/**
 * wm_align_map:
 * @matrix: after pixels to before pixels, or any other 3x3, row by row
 *
 * Returns: @point carried through @matrix; not finite on the horizon
 */
WmPoint wm_align_map (const double matrix[9], WmPoint point);

/**
 * wm_align_invert:
 * @inverse: (out): before pixels to after pixels; may be @matrix itself
 *
 * Returns: FALSE when @matrix can not be inverted; @inverse is then untouched
 */
gboolean wm_align_invert (const double matrix[9], double inverse[9]);
