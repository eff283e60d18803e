/* pairer.h: photos brought into register in the background
 *
 * One for a session. Looks at the photos of the shown visit whenever they change, aligns
 * the pairs that nothing is known of (or that an older engine answered) one after the
 * other on a worker, and keeps each answer, yes or no, with the pair. What a person made
 * is never touched. The last visit's photos are paired with those of today's arrival.
 * Main thread only.
 *
 * Signal: changed (void)    something is under way, or no more
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/align.h"
#include "report/pairs.h"
#include "window/session.h"

typedef enum
{
  WM_PAIRER_IDLE,    /* nothing to do for this pair */
  WM_PAIRER_WAITING, /* its turn comes */
  WM_PAIRER_AT_WORK,
  WM_PAIRER_STOPPED, /* by hand */
  WM_PAIRER_FAILED   /* a photo can not be read */
} WmPairerState;

#define WM_TYPE_PAIRER (wm_pairer_get_type ())
G_DECLARE_FINAL_TYPE (WmPairer, wm_pairer, WM, PAIRER, GObject)

/* The one of @session, made when it is first asked for. (transfer none) */
WmPairer *wm_pairer_of (WmSession *session);

/* @progress (out): 0 to 1 while at work */
WmPairerState wm_pairer_get_state (WmPairer *self, const WmId *before_id,
                                   const WmId *after_id, double *progress);

/* The pairs of the shown visit, before and after the work. Borrowed records live as
 * long as @data. (transfer full) (element-type WmPair) */
GArray *wm_pairer_list (GPtrArray *photos, GPtrArray *pairings);

/* Stops what is under way for this pair; it is not begun again by itself. */
void wm_pairer_stop (WmPairer *self);
/* Looks at this pair again, whatever is known. */
void wm_pairer_again (WmPairer *self, const WmPair *pair);
/* @after is the photo that belongs to @before: an edit of the jeweller, once the program
 * has looked at the two. */
void wm_pairer_choose (WmPairer *self, WmPhoto *before, WmPhoto *after);

/* Told what the engine made of the points; @error (nullable): it could not look. */
typedef void (*WmPairerRefined) (const WmAlignment *alignment, const GError *error,
                                 gpointer user_data);
/* Starts from a matrix made by hand. @user_data is an object, kept meanwhile. */
void wm_pairer_refine (WmPairer *self, WmPhoto *before, WmPhoto *after,
                       const double start[9], WmPairerRefined told, GObject *user_data);

/* Puts the marks that a fresh pairing carries from @pair->before into @edit. */
guint wm_pairer_put_carried (WmSession *session, WmEdit *edit, const WmPair *pair,
                             const double matrix[9]);
